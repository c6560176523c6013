// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/guided_tests.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QVariant>

#include "resources/resources.h"

namespace ohmwright {

namespace {

QJsonObject firstPowerUp()
{
    registerResources();
    QFile file(QStringLiteral(":/ohmwright/first-power-up.json"));
    return file.open(QIODevice::ReadOnly) ? QJsonDocument::fromJson(file.readAll()).object()
                                          : QJsonObject();
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
        return firstPowerUp().value(QLatin1String("cautions")).toVariant().toStringList();
    case TestKind::Other:
        return {};
    }
    return {};
}

std::vector<TestStep> firstPowerUpSteps()
{
    std::vector<TestStep> steps;
    const QJsonArray array = firstPowerUp().value(QLatin1String("steps")).toArray();
    for (const auto &value : array) {
        const QJsonObject one = value.toObject();
        TestStep step;
        step.position = static_cast<int>(steps.size());
        step.name = one.value(QLatin1String("do")).toString();
        step.expected = one.value(QLatin1String("see")).toString();
        step.stopIf = one.value(QLatin1String("stop")).toString();
        steps.push_back(step);
    }
    return steps;
}

Outcome addGuidedSteps(Book &book, const TestRecord &test)
{
    if (test.kind != TestKind::FirstPowerUp || !book.records().of<TestStep>(test.id).empty())
        return {};
    for (TestStep step : firstPowerUpSteps()) {
        step.test = test.id;
        if (const Result<Id<TestStep>> made = book.insert(step); !made)
            return fail(made.error());
    }
    return {};
}

} // namespace ohmwright
