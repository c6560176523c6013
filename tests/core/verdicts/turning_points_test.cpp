// SPDX-License-Identifier: GPL-3.0-or-later
// What would turn a verdict is true of the very book: put there, it turns it.
#include "core/checks/worksheet.h"
#include "core/verdicts/edit_input.h"
#include "core/verdicts/judge_book.h"
#include "core/verdicts/turning_words.h"
#include "tests/support/demo_book.h"
#include "tests/support/test_book.h"

#include <algorithm>

namespace ohmwright {
namespace {

const QDate kToday(2026, 11, 23);

const Check *find(const std::vector<Check> &checks, const char *id, const char *subject)
{
    const auto found = std::ranges::find_if(checks, [&](const Check &check) {
        return check.id == QLatin1String(id) && check.subject == QLatin1String(subject);
    });
    return found == checks.end() ? nullptr : &*found;
}

const TurningPoint *pointOf(const std::vector<TurningPoint> &points, const char *input)
{
    const auto found = std::ranges::find_if(points, [&](const TurningPoint &point) {
        return point.input.contains(QLatin1String(input));
    });
    return found == points.end() ? nullptr : &*found;
}

// The verdict with that value typed over the point's, in a copy of the book.
std::optional<Verdict> typedIn(const Records &records, const Check &check,
                               const TurningPoint &point, double value)
{
    TestBook copy;
    EXPECT_TRUE(copy->edit(QStringLiteral("copy"), [&] { return copy->replaceAll(records); }));
    const QString typed = printAmount(Amount(value, point.value.unit()));
    const Outcome done =
        editInput(*copy, point.address, typed + QStringLiteral(", nameplate, tried"));
    EXPECT_TRUE(done) << point.input.toStdString() << " " << typed.toStdString();
    for (const Check &now : judgeBook(copy.records(), kToday, check.id.toStdString()))
        if (now.subject == check.subject && now.title == check.title)
            return now.verdict;
    return std::nullopt;
}

TEST(TurningPoints, OfTheRelayAreItsLimitAndNothingElse)
{
    const Records records = demoRecords();
    const std::vector<Check> checks = judgeBook(records, kToday, "circuit_ratings");
    const Check *traction = find(checks, "circuit_ratings", "traction");
    ASSERT_NE(traction, nullptr);
    const std::vector<TurningPoint> points = turningPoints(records, kToday, *traction);
    ASSERT_EQ(points.size(), 1U);
    EXPECT_TRUE(points[0].input.contains(QStringLiteral("Relay on the switch plate")));
    EXPECT_EQ(points[0].side, TurningPoint::Side::AtLeast);
    EXPECT_EQ(points[0].shown, show(volts(454), u"V")); // 453.6 V, three digits
    EXPECT_EQ(points[0].instead, show(volts(400), u"V"));
    const std::vector<ToldTurning> told = ohmwright::told(points, traction->verdict);
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].head, QStringLiteral("This alone, and it would not fail:"));
}

TEST(TurningPoints, OfWhatIsNotKnownTellWhatToBuy)
{
    const Records records = demoRecords();
    const std::vector<Check> checks = judgeBook(records, kToday, "precharge");
    ASSERT_EQ(checks.size(), 1U);
    ASSERT_EQ(checks[0].verdict, Verdict::Unknown);
    const std::vector<TurningPoint> points = turningPoints(records, kToday, checks[0]);
    const TurningPoint *pulse = pointOf(points, "energy the resistor takes");
    ASSERT_NE(pulse, nullptr);
    EXPECT_EQ(pulse->side, TurningPoint::Side::AtLeast);
    EXPECT_TRUE(pulse->instead.isEmpty());
    // the heat of one pulse, ½·C·U², as the check works it out
    const auto heat = std::ranges::find_if(checks[0].steps, [](const CheckStep &step) {
        return step.formula.contains(QStringLiteral("½·C·U²"));
    });
    ASSERT_NE(heat, checks[0].steps.end());
    const double joules = heat->result.split(QChar(QChar::Nbsp)).front().toDouble();
    EXPECT_NEAR(pulse->value.si(), joules, joules * 0.01);
}

// Slow, so of those checks alone whose inputs are of all kinds.
TEST(TurningPoints, AreTrueOfTheInventedVan)
{
    const Records records = demoRecords();
    std::size_t tried = 0;
    for (const char *id : {"circuit_ratings", "branch_ratings", "precharge", "discharge",
                           "charging", "drive", "range", "axle_loads", "brakes", "low_voltage"})
        for (const Check &check : judgeBook(records, kToday, id)) {
            for (const TurningPoint &point : turningPoints(records, kToday, check)) {
                const auto now = typedIn(records, check, point, point.value.number());
                ASSERT_TRUE(now) << check.title.toStdString();
                if (point.way == TurningPoint::Way::Spoilt) {
                    EXPECT_EQ(*now, Verdict::Fails)
                        << check.title.toStdString() << ": " << point.input.toStdString() << " "
                        << point.shown.toStdString();
                } else {
                    EXPECT_LT(*now, check.verdict)
                        << check.title.toStdString() << ": " << point.input.toStdString() << " "
                        << point.shown.toStdString();
                }
                ++tried;
            }
        }
    EXPECT_GT(tried, 20U);
}

TEST(TurningPoints, HaveNothingMendedWhereItHolds)
{
    const Records records = demoRecords();
    for (const Check &check : judgeBook(records, kToday)) {
        if (check.verdict != Verdict::Holds)
            continue;
        for (const TurningPoint &point : turningPoints(records, kToday, check))
            EXPECT_EQ(point.way, TurningPoint::Way::Spoilt) << check.title.toStdString();
    }
}

} // namespace
} // namespace ohmwright
