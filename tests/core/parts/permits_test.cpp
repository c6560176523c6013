// SPDX-License-Identifier: GPL-3.0-or-later
// When a work permit gives leave, and the guided first power-up. Common practice, no published
// source, but for the touch limit (ISO 6469-3: 60 V DC).
#include "core/parts/cautions.h"
#include "core/parts/guided_tests.h"
#include "core/parts/permits.h"
#include "tests/support/test_book.h"

#include <gtest/gtest.h>

namespace ohmwright {
namespace {

const QDate kToday(2026, 3, 9);

WorkPermit whole()
{
    WorkPermit permit;
    permit.name = QStringLiteral("Close the pack");
    permit.glovesTestedOn = kToday.addMonths(-2);
    permit.glovesValidUntil = kToday.addMonths(4);
    permit.lockedOff = true;
    permit.waitMinutes = 10;
    permit.absenceProvenOn = kToday;
    permit.absenceReading = amount("0.4 V");
    permit.instrument = QStringLiteral("voltage detector 1000 V");
    permit.workedBy = QStringLiteral("A");
    permit.secondPerson = QStringLiteral("B");
    return permit;
}

TEST(Permits, OneThatHasEverythingHoldsThatDayAlone)
{
    EXPECT_TRUE(lackingOf(whole(), kToday).isEmpty());
    EXPECT_FALSE(lackingOf(whole(), kToday.addDays(1)).isEmpty());
}

TEST(Permits, EachThingThatIsMissingIsNamed)
{
    const auto lacks = [](auto take) {
        WorkPermit permit = whole();
        take(permit);
        return lackingOf(permit, kToday).size();
    };
    EXPECT_EQ(lacks([](WorkPermit &p) { p.glovesValidUntil = kToday.addDays(-1); }), 1);
    EXPECT_EQ(lacks([](WorkPermit &p) { p.glovesValidUntil.reset(); }), 1);
    EXPECT_EQ(lacks([](WorkPermit &p) { p.lockedOff = false; }), 1);
    EXPECT_EQ(lacks([](WorkPermit &p) { p.waitMinutes.reset(); }), 1);
    EXPECT_EQ(lacks([](WorkPermit &p) { p.absenceReading.reset(); }), 1);
    EXPECT_EQ(lacks([](WorkPermit &p) { p.absenceReading = amount("60 V"); }), 1);
    EXPECT_EQ(lacks([](WorkPermit &p) { p.absenceReading = amount("-80 V"); }), 1);
    EXPECT_EQ(lacks([](WorkPermit &p) { p.instrument.clear(); }), 1);
    EXPECT_EQ(lacks([](WorkPermit &p) { p.secondPerson = QStringLiteral(" "); }), 1);
    EXPECT_EQ(lacks([](WorkPermit &p) { p.closedOn = kToday; }), 1);
}

TEST(GuidedTests, AFirstPowerUpSaysWhatToDoToSeeAndWhenToStop)
{
    const std::vector<TestStep> steps = firstPowerUpSteps();
    ASSERT_GE(steps.size(), 8U);
    for (const TestStep &step : steps) {
        EXPECT_FALSE(step.name.isEmpty());
        EXPECT_FALSE(step.expected.isEmpty());
        EXPECT_FALSE(step.stopIf.isEmpty());
    }
}

TEST(GuidedTests, EveryCautionBeforeATestIsACard)
{
    for (std::size_t i = 0; i < EnumWords<TestKind>::words.size(); ++i)
        for (const QString &id : cautionsBefore(static_cast<TestKind>(i)))
            EXPECT_TRUE(cautionById(id)) << id.toStdString();
    EXPECT_TRUE(cautionsBefore(TestKind::Isolation).contains(QStringLiteral("live-measurement")));
}

TEST(GuidedTests, StepsComeOnceAndOnlyWithAGuidedTest)
{
    TestBook book;
    TestRecord row;
    row.name = QStringLiteral("First power-up");
    row.kind = TestKind::FirstPowerUp;
    const Id<TestRecord> guided = book.add(row);
    row.kind = TestKind::Torque;
    const Id<TestRecord> plain = book.add(row);
    for (int i = 0; i < 2; ++i)
        OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("steps"), [&]() -> Outcome {
            if (Outcome done = addGuidedSteps(*book, *book.records().find(guided)); !done)
                return done;
            return addGuidedSteps(*book, *book.records().find(plain));
        }));
    EXPECT_EQ(book.records().of<TestStep>(guided).size(), firstPowerUpSteps().size());
    EXPECT_TRUE(book.records().of<TestStep>(plain).empty());
}

} // namespace
} // namespace ohmwright
