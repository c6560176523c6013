// SPDX-License-Identifier: GPL-3.0-or-later
// The invented van: what its electrical checks come to. With OHMWRIGHT_TELL_CHECKS set, every one
// is printed, for whoever changes the van's figures.
#include "core/checks/worksheet.h"
#include "core/interchange/interchange.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/judges.h"
#include "tests/support/test_book.h"

#include <QFile>

#include <algorithm>
#include <iostream>

namespace ohmwright {
namespace {

class DemoElectrical : public testing::Test
{
protected:
    void SetUp() override
    {
        QFile file(QStringLiteral(OHMWRIGHT_SOURCE_DIR "/demo/build.json"));
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        Result<Records> read = parse(file.readAll(), [this] { return ++m_lastId; });
        OHMWRIGHT_ASSERT_OK(read);
        records = std::move(*read);
        const BookInputs in(records, QDate(2026, 11, 20));
        for (const Judge &judge : electricalJudges())
            std::ranges::move(judge.judge(in), std::back_inserter(checks));
        if (qEnvironmentVariableIsSet("OHMWRIGHT_TELL_CHECKS"))
            tell();
    }

    void tell() const
    {
        for (const Check &check : checks) {
            std::cout << check.id.toStdString() << " [" << check.subject.toStdString() << "] "
                      << wordOf(check.verdict).toStdString() << " | " << check.title.toStdString()
                      << " | " << check.sentence.toStdString() << "\n    "
                      << check.result.toStdString() << '\n';
            for (const Comparison &c : check.comparisons)
                if (c.verdict != Verdict::Holds)
                    std::cout << "    " << wordOf(c.verdict).toStdString() << ": "
                              << c.what.toStdString() << ' ' << c.value.toStdString() << ' '
                              << c.relation.toStdString() << ' ' << c.limit.toStdString() << " ("
                              << c.limitFrom.toStdString() << ")\n";
            for (const QStringList &list : {check.unknowns, check.doubts, check.refusals})
                for (const QString &line : list)
                    std::cout << "    ? " << line.toStdString() << '\n';
        }
    }

    const Check *find(const char *id, const char *subject) const
    {
        const auto found = std::ranges::find_if(checks, [&](const Check &check) {
            return check.id == QLatin1String(id) && check.subject == QLatin1String(subject);
        });
        return found == checks.end() ? nullptr : &*found;
    }

    Records records;
    std::vector<Check> checks;

private:
    std::int64_t m_lastId = 0;
};

TEST_F(DemoElectrical, TheRelayWithinTheHeaterFailsAndNothingElse)
{
    const Check *traction = find("circuit_ratings", "traction");
    ASSERT_NE(traction, nullptr);
    EXPECT_EQ(traction->verdict, Verdict::Fails);
    ASSERT_FALSE(traction->comparisons.empty());
    const Comparison &worst = traction->comparisons.front();
    EXPECT_EQ(worst.what, QStringLiteral("Cabin heater, 5 kW › Control head of the heater › Switch "
                                         "plate in the control head › Relay on the switch plate"));
    EXPECT_EQ(worst.value, show(volts(453.6), u"V"));
    EXPECT_EQ(worst.limit, show(volts(400), u"V"));
    // by papers and plates: what is assumed elsewhere has no part in it
    EXPECT_FALSE(traction->sentence.contains(QStringLiteral("resting on")))
        << traction->sentence.toStdString();
    EXPECT_FALSE(isWeak(*traction->weakest));
    const auto failing = std::ranges::count_if(
        traction->comparisons, [](const Comparison &c) { return c.verdict == Verdict::Fails; });
    EXPECT_EQ(failing, 1);
    for (const Check &check : checks) {
        if (&check == traction)
            continue;
        EXPECT_NE(check.verdict, Verdict::Fails) << check.title.toStdString();
    }
}

TEST_F(DemoElectrical, TheRelayAllowsFewerCellsThanThePackHas)
{
    const BookInputs in(records, QDate(2026, 11, 20));
    const MostCells most =
        mostCellsInSeries(in, *records.byKey<Circuit>(QStringLiteral("traction")));
    EXPECT_EQ(most.cells, 95); // 400 V / 4.2 V
    EXPECT_TRUE(most.decidedBy.endsWith(QLatin1String("Relay on the switch plate")));
}

} // namespace
} // namespace ohmwright
