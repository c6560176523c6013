// SPDX-License-Identifier: GPL-3.0-or-later
// Changes tried on a scratch copy of the demo's book: which verdicts turn, keeping, dropping; a
// part judged before it is in the book; and the list of thresholds against the checks themselves.
#include "core/checks/axle_loads.h"
#include "core/checks/bolted_flange.h"
#include "core/checks/bonding.h"
#include "core/checks/brakes.h"
#include "core/checks/brakes_measured.h"
#include "core/checks/cell_limits.h"
#include "core/checks/charging.h"
#include "core/checks/conductor.h"
#include "core/checks/discharge.h"
#include "core/checks/drive.h"
#include "core/checks/fit.h"
#include "core/checks/fuse.h"
#include "core/checks/grouping.h"
#include "core/checks/isolation.h"
#include "core/checks/low_voltage.h"
#include "core/checks/precharge.h"
#include "core/checks/precharge_measured.h"
#include "core/checks/restraint.h"
#include "core/checks/rotating_part.h"
#include "core/records/thresholds.h"
#include "core/verdicts/judge_candidate.h"
#include "core/verdicts/scratch.h"
#include "tests/support/demo_book.h"
#include "tests/support/test_book.h"

#include <set>

namespace ohmwright {
namespace {

class OnTheDemo : public testing::Test
{
protected:
    OnTheDemo()
    {
        const Outcome done =
            book->edit(QStringLiteral("load"), [&] { return book->replaceAll(demoRecords()); });
        EXPECT_TRUE(done.has_value());
    }

    // The relay inside the heater: 400 V DC where 453.6 V can stand.
    static QString relay()
    {
        return print(RatingAddress{
            QStringLiteral("heater-relay"),
            {RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Continuous, CurrentKind::Dc},
            {}});
    }

    static std::set<QString> failing(const std::vector<Check> &checks)
    {
        std::set<QString> titles;
        for (const Check &check : checks)
            if (check.verdict == Verdict::Fails)
                titles.insert(check.title);
        return titles;
    }

    TestBook book;
};

TEST_F(OnTheDemo, TheUnderratedRelayFailsItsCircuitThoughNominalWouldPass)
{
    bool found = false;
    for (const Check &check : judgeBook(book.records(), book.clock.today(), "circuit_ratings"))
        for (const Comparison &held : check.comparisons)
            if (held.verdict == Verdict::Fails) {
                found = true;
                EXPECT_EQ(held.limit, QStringLiteral("400\u00a0V"));
                EXPECT_TRUE(held.limitFrom.contains(QStringLiteral("Cabin heater")) ||
                            held.what.contains(QStringLiteral("Cabin heater")))
                    << "the path to it is shown: " << held.what.toStdString();
            }
    EXPECT_TRUE(found);
}

TEST_F(OnTheDemo, ABetterRelayTurnsTheVerdictOnTheCopyAlone)
{
    const auto scratch = Scratch::of(*book);
    OHMWRIGHT_ASSERT_OK(scratch);
    EXPECT_TRUE((*scratch)->turned().empty());
    const auto before = failing(judgeBook(book.records(), book.clock.today()));
    ASSERT_FALSE(before.empty());
    OHMWRIGHT_ASSERT_OK((*scratch)->set(relay(), QStringLiteral("600 V, nameplate")));
    EXPECT_NE(failing((*scratch)->checks()), before);
    EXPECT_FALSE((*scratch)->turned().empty());
    EXPECT_EQ(failing(judgeBook(book.records(), book.clock.today())), before)
        << "the book knows nothing of it";
    OHMWRIGHT_ASSERT_OK((*scratch)->set(relay(), QStringLiteral("500 V, nameplate")));
    EXPECT_EQ((*scratch)->tried().size(), 1U) << "twice the same figure is one change";
    const auto steps = book->history()->size();
    OHMWRIGHT_ASSERT_OK((*scratch)->keep(*book));
    EXPECT_EQ(book->history()->size(), steps + 1) << "kept as one step";
    EXPECT_EQ(judgeBook(book.records(), book.clock.today()), (*scratch)->checks());
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(failing(judgeBook(book.records(), book.clock.today())), before);
}

TEST_F(OnTheDemo, AnAssumptionCannotRaiseAPlatedLimitNotEvenForTrying)
{
    const auto scratch = Scratch::of(*book);
    OHMWRIGHT_ASSERT_OK(scratch);
    const Outcome refused = (*scratch)->set(relay(), QStringLiteral("600 V"));
    ASSERT_FALSE(refused);
    EXPECT_TRUE(refused.error().whatToDo.contains(QStringLiteral("nameplate")));
    EXPECT_TRUE((*scratch)->turned().empty());
    OHMWRIGHT_ASSERT_OK((*scratch)->set(relay(), QStringLiteral("300 V"))); // tightening is free
}

TEST_F(OnTheDemo, WhatIsRefusedOnTheCopyIsNotTried)
{
    const auto scratch = Scratch::of(*book);
    OHMWRIGHT_ASSERT_OK(scratch);
    EXPECT_FALSE((*scratch)->set(relay(), QStringLiteral("600 A")));
    EXPECT_TRUE((*scratch)->tried().empty());
}

TEST_F(OnTheDemo, KeepingTheVerdictsCurrentIsTheSameAsJudgingAnew)
{
    BookJudge judge;
    QObject::connect(&*book, &Book::changed, &*book,
                     [&](const Change &change) { judge.add(change); });
    const QDate today = book.clock.today();
    EXPECT_EQ(judge.checks(book.records(), today), judgeBook(book.records(), today));
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("Mass"), [&]() -> Outcome {
        MassEntry entry = book.records().all<MassEntry>().rows().front();
        entry.mass = amount("99 kg");
        return book->update(entry);
    }));
    EXPECT_EQ(judge.checks(book.records(), today), judgeBook(book.records(), today));
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(judge.checks(book.records(), today), judgeBook(book.records(), today));
}

TEST_F(OnTheDemo, APartIsJudgedBeforeItIsInTheBook)
{
    const Circuit &traction = *book.records().byKey<Circuit>(QStringLiteral("traction"));
    const BookInputs inputs(book.records(), book.clock.today());
    Rating limit;
    limit.current = CurrentKind::Dc;
    limit.evidence = Evidence::Nameplate;
    limit.value = amount("400 V");
    const auto weak = judgeCandidate(inputs, traction, QStringLiteral("Relay"), {limit});
    ASSERT_TRUE(weak);
    EXPECT_EQ(weak->verdict, Verdict::Fails);
    limit.value = amount("900 V");
    const auto strong = judgeCandidate(inputs, traction, QStringLiteral("Relay"), {limit});
    ASSERT_TRUE(strong);
    EXPECT_NE(strong->verdict, Verdict::Fails);
    EXPECT_FALSE(judgeCandidate(inputs, traction, QStringLiteral("Relay"), {}));
}

// Thresholds ----------------------------------------------------------------------------------

template <class Q>
constexpr std::optional<Measure> measureFor = std::nullopt; // a plain number: ratio or count
template <>
constexpr std::optional<Measure> measureFor<Voltage> = Measure::Voltage;
template <>
constexpr std::optional<Measure> measureFor<Current> = Measure::Current;
template <>
constexpr std::optional<Measure> measureFor<Resistance> = Measure::Resistance;
template <>
constexpr std::optional<Measure> measureFor<Energy> = Measure::Energy;
template <>
constexpr std::optional<Measure> measureFor<Duration> = Measure::Duration;
template <>
constexpr std::optional<Measure> measureFor<Temperature> = Measure::Temperature;
template <>
constexpr std::optional<Measure> measureFor<Speed> = Measure::Speed;
template <>
constexpr std::optional<Measure> measureFor<Pressure> = Measure::Pressure;
template <>
constexpr std::optional<Measure> measureFor<Force> = Measure::Force;
template <>
constexpr std::optional<Measure> measureFor<Acceleration> = Measure::Acceleration;
template <>
constexpr std::optional<Measure> measureFor<Length> = Measure::Length;

TEST(Thresholds, TheListAndTheChecksAgree)
{
    std::set<QString> met;
    const auto see = [&]<class Q>(const Threshold<Q> &threshold) {
        const ThresholdInfo *info = knownThreshold(threshold.name);
        ASSERT_TRUE(info) << threshold.name.toStdString();
        met.insert(threshold.name);
        if (measureFor<Q>)
            EXPECT_EQ(info->measure, *measureFor<Q>) << threshold.name.toStdString();
        else
            EXPECT_TRUE(info->measure == Measure::Ratio || info->measure == Measure::Count)
                << threshold.name.toStdString();
        EXPECT_EQ(info->tighter, threshold.tighter) << threshold.name.toStdString();
        if constexpr (requires { threshold.published.si(); })
            EXPECT_DOUBLE_EQ(info->published, threshold.published.si())
                << threshold.name.toStdString();
        else
            EXPECT_DOUBLE_EQ(info->published, threshold.published) << threshold.name.toStdString();
    };
    const auto each = [&](const auto &...thresholds) {
        (see(thresholds), ...);
    };
    const BondingInputs bonding;
    each(bonding.most, bonding.leastCurrent);
    const BrakesInputs brakes;
    each(brakes.deceleration, brakes.pedal, brakes.frontFirstTo, brakes.leastVacuum);
    const BrakesMeasuredInputs rollers;
    each(rollers.efficiency, rollers.imbalance, rollers.parking, rollers.road, rollers.pedal);
    const CellLimitsInputs cells;
    each(cells.chargeFloor);
    const ChargingInputs charging;
    each(charging.continuousShare);
    const ConductorInputs conductor;
    each(conductor.drop, conductor.peakDrop);
    const DischargeInputs discharge;
    each(discharge.touchDc, discharge.touchAc, discharge.passiveTime, discharge.activeTime,
         discharge.openedTime, discharge.yEnergy);
    const DriveInputs drive;
    each(drive.startGrade);
    const FitInputs fit;
    each(fit.clearance);
    const BoltedFlangeInputs flange;
    each(flange.slipSafety, flange.shearSafety);
    const FuseInputs fuse;
    each(fuse.clearing);
    const GroupingInputs grouping;
    each(grouping.standsOut, grouping.offMedian, grouping.lostInWeek, grouping.leastRest,
         grouping.capacitySpread, grouping.resistanceSpread);
    const IsolationInputs isolation;
    each(isolation.leastDc, isolation.leastAc);
    const LowVoltageInputs lowVoltage;
    each(lowVoltage.fuseShare, lowVoltage.reserve);
    const PrechargeInputs precharge;
    each(precharge.reached);
    const PrechargeMeasuredInputs measured;
    each(measured.reached, measured.deviation);
    const RestraintInputs restraint;
    each(restraint.forward, restraint.sideways, restraint.upward);
    const RotatingPartInputs rotating;
    each(rotating.leastOverspeed, rotating.safety, rotating.balanceGrade);
    EXPECT_EQ(met.size(), knownThresholds().size()) << "one in the list that no check holds to";
}

} // namespace
} // namespace ohmwright
