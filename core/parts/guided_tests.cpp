// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/guided_tests.h"

#include "core/parts/keys.h"

#include <QCoreApplication>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QVariant>

#include "resources/resources.h"

namespace ohmwright {

namespace {

QJsonObject guide(const char *file)
{
    registerResources();
    QFile data(QStringLiteral(":/ohmwright/") + QLatin1String(file));
    return data.open(QIODevice::ReadOnly) ? QJsonDocument::fromJson(data.readAll()).object()
                                          : QJsonObject();
}

constexpr const char *kFirstPowerUp = "first-power-up.json";
constexpr const char *kAcceptance = "acceptance-checks.json";

QStringList cautionsOf(const char *file)
{
    return guide(file).value(QLatin1String("cautions")).toVariant().toStringList();
}

// A step may be for some roles alone, or for all but some; a module counts as a role of its own.
bool isFor(const QJsonObject &step, const QString &role)
{
    const auto names = [&](const char *list) {
        return step.value(QLatin1String(list)).toVariant().toStringList().contains(role);
    };
    return !names("unless") && (!step.contains(QLatin1String("roles")) || names("roles"));
}

std::vector<TestStep> stepsOf(const char *file, const QString &role)
{
    std::vector<TestStep> steps;
    const QJsonArray array = guide(file).value(QLatin1String("steps")).toArray();
    for (const auto &value : array) {
        const QJsonObject one = value.toObject();
        if (!isFor(one, role))
            continue;
        TestStep step;
        step.position = static_cast<int>(steps.size());
        step.name = one.value(QLatin1String("do")).toString();
        step.expected = one.value(QLatin1String("see")).toString();
        step.stopIf = one.value(QLatin1String("stop")).toString();
        steps.push_back(step);
    }
    return steps;
}

} // namespace

QStringList cautionsBefore(TestKind kind)
{
    switch (kind) {
    case TestKind::Isolation:
        return {QStringLiteral("live-measurement")};
    case TestKind::Bonding:
    case TestKind::Torque:
        return {QStringLiteral("high-voltage")};
    case TestKind::Precharge:
        return {QStringLiteral("live-measurement"), QStringLiteral("high-voltage")};
    case TestKind::Brakes:
        return {QStringLiteral("road-test"), QStringLiteral("brakes")};
    case TestKind::Charging:
        return {QStringLiteral("mains"), QStringLiteral("battery")};
    case TestKind::Coolant:
        return {QStringLiteral("coolant")};
    case TestKind::FirstPowerUp:
        return cautionsOf(kFirstPowerUp);
    case TestKind::Acceptance:
        return cautionsOf(kAcceptance);
    case TestKind::Other:
        return {};
    }
    return {};
}

std::vector<TestStep> firstPowerUpSteps()
{
    return stepsOf(kFirstPowerUp, {});
}

std::vector<TestStep> acceptanceSteps(const Part *part)
{
    QString role;
    if (part && part->role)
        role = wordOf(*part->role);
    else if (part && part->kind == PartKind::Module)
        role = wordOf(part->kind);
    return stepsOf(kAcceptance, role);
}

Outcome addGuidedSteps(Book &book, const TestRecord &test)
{
    const bool guided = test.kind == TestKind::FirstPowerUp || test.kind == TestKind::Acceptance;
    if (!guided || !book.records().of<TestStep>(test.id).empty())
        return {};
    const Part *part = book.records().find(test.part);
    for (TestStep step :
         test.kind == TestKind::Acceptance ? acceptanceSteps(part) : firstPowerUpSteps()) {
        step.test = test.id;
        if (const Result<Id<TestStep>> made = book.insert(step); !made)
            return fail(made.error());
    }
    return {};
}

Result<Id<TestRecord>> addAcceptanceChecks(Book &book, Id<Part> partId)
{
    const Part *part = book.records().find(partId);
    if (!part)
        return fail(ProblemCode::NotFound,
                    QCoreApplication::translate("GuidedTests", "That part is no longer there."));
    TestRecord test;
    test.name =
        QCoreApplication::translate("GuidedTests", "Acceptance checks of %1").arg(part->name);
    test.key = freshKey<TestRecord>(book.records(), test.name);
    test.kind = TestKind::Acceptance;
    test.part = partId;
    test.limitText = QCoreApplication::translate(
        "GuidedTests", "Every step as it should be seen; common practice, no published source");
    Id<TestRecord> made;
    const Outcome done = book.edit(test.name, [&]() -> Outcome {
        const Result<Id<TestRecord>> id = book.insert(test);
        if (!id)
            return fail(id.error());
        made = test.id = *id;
        return addGuidedSteps(book, test);
    });
    if (!done)
        return fail(done.error());
    return made;
}

} // namespace ohmwright
