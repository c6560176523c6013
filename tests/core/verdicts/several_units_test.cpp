// SPDX-License-Identifier: GPL-3.0-or-later
// Two motors, modules of two types, a second pack: what is told of the first is not taken for all.
#include "core/checks/worksheet.h"
#include "core/verdicts/electrical_checks_of_book.h"
#include "core/verdicts/vehicle_checks_of_book.h"
#include "tests/core/verdicts/electrical_book.h"

#include <algorithm>
#include <cmath>

namespace ohmwright {
namespace {

class SeveralUnits : public ElectricalBook
{
protected:
    static constexpr FigureName kNoLoad{RatedQuantity::Voltage, RatingKind::Actual,
                                        RatingBasis::Nominal, CurrentKind::Ac};

    Id<Circuit> driven()
    {
        const Id<Circuit> traction =
            circuit("traction", CircuitKind::Traction, CurrentKind::Dc, "");
        addPack(traction);
        const Id<Part> inverter = part("Inverter", PartRole::Inverter, traction);
        rate(inverter, kDcLimit, "600 V");
        figure("inverter.regeneration_voltage", inverter, "410 V");
        word("inverter.boosts", inverter, "no");
        return traction;
    }
    Id<Part> motor(const char *name, const char *noLoad)
    {
        const Id<Part> made = part(name, PartRole::Motor);
        word("motor.magnets", made, "yes");
        figure("motor.no_load_speed", made, "6000 rpm");
        figure("motor.overspeed", made, "9000 rpm");
        if (*noLoad)
            rate(made, kNoLoad, noLoad);
        return made;
    }
    Check ratingsOf(Id<Circuit> circuit) const
    {
        for (Check &check : judgeCircuitRatingsOfBook(inputs()))
            if (check.subject == records().find(circuit)->key)
                return std::move(check);
        ADD_FAILURE() << "no check of the circuit";
        return {};
    }
};

TEST_F(SeveralUnits, TheSecondMotorsVoltageCountsLikeTheFirsts)
{
    const Id<Circuit> traction = driven();
    motor("First", "150 V");
    const WorstVoltage alone = worstVoltage(inputs(), *records().find(traction));
    EXPECT_NEAR(alone.known.value->si(), 410, 1e-9);
    motor("Second", "300 V");
    // 300 V·9000/6000 rms from line to line, by its peak on the link
    const WorstVoltage both = worstVoltage(inputs(), *records().find(traction));
    EXPECT_NEAR(both.known.value->si(), std::sqrt(2.0) * 450, 1e-6);
    EXPECT_EQ(ratingsOf(traction).verdict, Verdict::Fails); // 636 V on parts for 600 V
}

TEST_F(SeveralUnits, ASecondMotorOfWhichNothingIsKnownIsAskedFor)
{
    const Id<Circuit> traction = driven();
    motor("First", "150 V");
    motor("Second", "");
    const Check check = ratingsOf(traction);
    EXPECT_EQ(check.verdict, Verdict::Unknown);
    EXPECT_TRUE(check.unknowns.contains(QStringLiteral("no-load voltage of Second")))
        << check.unknowns.join(u'\n').toStdString();
}

TEST_F(SeveralUnits, MotorsOfOneGearboxAddTheirTorques)
{
    driven();
    const Id<Part> gearbox = part("Gearbox", PartRole::Gearbox);
    const FigureName torque{RatedQuantity::Torque, RatingKind::Limit, RatingBasis::Peak, {}};
    rate(gearbox, torque, "250 N·m");
    const Id<Part> first = motor("First", "150 V");
    const Id<Part> second = motor("Second", "150 V");
    rate(first, torque, "150 N·m");
    rate(second, torque, "120 N·m");
    const auto intoGearbox = [&](const Check &check) -> const Comparison * {
        const auto found = std::ranges::find_if(check.comparisons, [](const Comparison &c) {
            return c.what == QStringLiteral("torque into the gearbox");
        });
        return found == check.comparisons.end() ? nullptr : &*found;
    };
    for (const Check &check : judgeDriveOfBook(inputs()))
        EXPECT_TRUE(check.unknowns.join(u' ').contains(
            QStringLiteral("drives into the same gearbox as another motor")))
            << check.unknowns.join(u'\n').toStdString();
    word("motor.shares_gearbox", first, "yes");
    word("motor.shares_gearbox", second, "yes");
    for (const Check &check : judgeDriveOfBook(inputs())) {
        const Comparison *held = intoGearbox(check);
        ASSERT_NE(held, nullptr);
        EXPECT_EQ(held->value, show(Torque::fromSi(270), u"N·m"));
        EXPECT_EQ(held->verdict, Verdict::Fails);
    }
}

TEST_F(SeveralUnits, EachWithItsOwnGearboxIsHeldAlone)
{
    driven();
    const Id<Part> gearbox = part("Gearbox", PartRole::Gearbox);
    const FigureName torque{RatedQuantity::Torque, RatingKind::Limit, RatingBasis::Peak, {}};
    rate(gearbox, torque, "250 N·m");
    for (const char *name : {"First", "Second"}) {
        const Id<Part> made = motor(name, "150 V");
        rate(made, torque, "150 N·m");
        word("motor.shares_gearbox", made, "no");
    }
    for (const Check &check : judgeDriveOfBook(inputs()))
        for (const Comparison &held : check.comparisons)
            if (held.what == QStringLiteral("torque into the gearbox")) {
                EXPECT_EQ(held.value, show(Torque::fromSi(150), u"N·m"));
            }
}

TEST_F(SeveralUnits, ModulesOfTwoTypesAreNoPackAnybodyCanWork)
{
    const Id<Circuit> traction = driven();
    motor("Motor", "150 V");
    PartType other;
    other.key = other.name = QStringLiteral("other");
    other.kind = PartKind::Module;
    const Id<PartType> type = book.add(other);
    Part changed = *records().find(modules.back());
    changed.type = type;
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("type"), [&] { return book->update(changed); }));
    for (const Check &check : judgePackOfBook(inputs())) {
        EXPECT_EQ(check.verdict, Verdict::Unknown);
        EXPECT_TRUE(check.unknowns.join(u' ').contains(QStringLiteral("more than one type")))
            << check.unknowns.join(u'\n').toStdString();
    }
    EXPECT_GE(ratingsOf(traction).verdict, Verdict::Unknown);
}

TEST_F(SeveralUnits, ASecondPackIsNotTakenForNone)
{
    driven();
    const Id<Circuit> second =
        circuit("traction-2", CircuitKind::Traction, CurrentKind::Dc, "250 V");
    const Id<Part> other = part("Second tray", {}, second);
    const Id<Part> module = part("Module 2-1", {}, {}, {}, other, PartKind::Module);
    rate(module, kDcLimit, "600 V");
    figure("cell.full_voltage", module, "4.2 V");
    rate(part("Heater", PartRole::Heater, second), kDcLimit, "300 V");
    const Check check = ratingsOf(second);
    EXPECT_EQ(check.verdict, Verdict::Unknown) << check.sentence.toStdString();
    EXPECT_TRUE(check.unknowns.join(u' ').contains(QStringLiteral("second pack")))
        << check.unknowns.join(u'\n').toStdString();
}

} // namespace
} // namespace ohmwright
