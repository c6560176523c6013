// SPDX-License-Identifier: GPL-3.0-or-later
// What hangs on a branch is taken where less was typed for it: by hand from Ohm's law, P = U·I.
#include "core/checks/worksheet.h"
#include "core/verdicts/branch_currents.h"
#include "tests/core/verdicts/electrical_book.h"

namespace ohmwright {
namespace {

class BranchCurrents : public ElectricalBook
{
protected:
    Id<Branch> branch(const char *key, Id<Circuit> of, const char *continuous,
                      const char *peak = "")
    {
        Branch made;
        made.key = made.name = QString::fromLatin1(key);
        made.circuit = of;
        made.continuousCurrent = amount(continuous);
        if (*peak)
            made.peakCurrent = amount(peak);
        return book.add(made);
    }
    Given<Current> continuous(Id<Branch> of) const
    {
        return continuousCurrentOf(inputs(), *records().find(of));
    }
    Id<Circuit> packOf()
    {
        const Id<Circuit> traction =
            circuit("traction", CircuitKind::Traction, CurrentKind::Dc, "");
        addPack(traction); // 8 · 12 cells: 288 V empty, 403.2 V full
        return traction;
    }
};

TEST_F(BranchCurrents, AHeaterTakesItsPowerAtTheLowestVoltage)
{
    const Id<Circuit> traction = packOf();
    const Id<Branch> feed = branch("feed", traction, "2 A");
    const Id<Part> heater = part("Heater", PartRole::Heater, traction, feed);
    rate(heater, limitOf(RatedQuantity::Power), "5 kW");
    const Given<Current> taken = continuous(feed);
    ASSERT_TRUE(taken.value);
    EXPECT_NEAR(taken.value->si(), 5000.0 / 288, 1e-6);
    EXPECT_TRUE(taken.origin.source.contains(QStringLiteral("Heater")));
    EXPECT_TRUE(taken.origin.source.contains(show(amperes(2), u"A")));
    // its address is the branch's own: there it can be put right
    EXPECT_EQ(taken.origin.field,
              continuousCurrentEntered(inputs(), *records().find(feed)).origin.field);
}

TEST_F(BranchCurrents, MoreThanItsUnitsTakeStandsAsTyped)
{
    const Id<Circuit> traction = packOf();
    const Id<Branch> feed = branch("feed", traction, "20 A");
    rate(part("Heater", PartRole::Heater, traction, feed), limitOf(RatedQuantity::Power), "5 kW");
    EXPECT_EQ(continuous(feed).value, amperes(20));
}

TEST_F(BranchCurrents, AChargerTakesFromTheMainsWhatItsCheckSaysAndGivesNoMoreThanItsLimit)
{
    const Id<Circuit> traction = packOf();
    const Id<Circuit> mains = circuit("mains", CircuitKind::ChargeInlet, CurrentKind::Ac, "253 V");
    const Id<Branch> out = branch("out", traction, "5 A");
    const Id<Branch> in = branch("in", mains, "10 A");
    const Id<Part> charger = part("Charger", PartRole::Charger, traction, out);
    Connection both;
    both.part = charger;
    both.circuit = mains;
    both.branch = in;
    book.add(both);
    rate(charger, actualOf(RatedQuantity::Power), "6.6 kW");
    figure("charging.mains_voltage", charger, "230 V");
    figure("charging.efficiency", charger, "92 %");
    figure("charging.power_factor", charger, "1");
    // 6.6 kW/(0.92·230 V); 6.6 kW/288 V
    EXPECT_NEAR(continuous(in).value->si(), 6600 / (0.92 * 230), 1e-6);
    EXPECT_NEAR(continuous(out).value->si(), 6600.0 / 288, 1e-6);
    rate(charger, kDcCurrent, "20 A");
    EXPECT_EQ(continuous(out).value, amperes(20));
    figure("charging.held_to", charger, "16 A"); // of 31.19 A: that share of the power
    EXPECT_NEAR(continuous(in).value->si(), 16, 1e-6);
    EXPECT_NEAR(continuous(out).value->si(), 0.92 * 230 * 16 / 288, 1e-6);
}

TEST_F(BranchCurrents, AConverterTakesFromThePackAndGivesTheTwelveVoltSide)
{
    const Id<Circuit> traction = packOf();
    const Id<Circuit> low = circuit("low", CircuitKind::LowVoltage, CurrentKind::Dc, "15 V");
    const Id<Branch> feed = branch("feed", traction, "1 A");
    const Id<Branch> out = branch("out", low, "20 A");
    const Id<Part> converter = part("Converter", PartRole::Converter, traction, feed);
    Connection both;
    both.part = converter;
    both.circuit = low;
    both.branch = out;
    book.add(both);
    rate(converter, actualOf(RatedQuantity::Power), "1.8 kW");
    rate(converter, kDcNominal, "14.4 V");
    EXPECT_NEAR(continuous(out).value->si(), 1800 / 14.4, 1e-6);
    EXPECT_NEAR(continuous(feed).value->si(), 1800 / 0.9 / 288, 1e-6); // 90 % assumed
    figure("converter.efficiency", converter, "80 %");
    EXPECT_NEAR(continuous(feed).value->si(), 1800 / 0.8 / 288, 1e-6);
}

TEST_F(BranchCurrents, PrechargeTakesTheFullPackAcrossItsResistor)
{
    const Id<Circuit> traction = packOf();
    const Id<Branch> precharge = branch("precharge", traction, "0 A", "0.5 A");
    const Id<Part> resistor = part("Resistor", PartRole::PrechargeResistor, traction, precharge);
    rate(resistor, actualOf(RatedQuantity::InternalResistance), "47 Ω");
    const auto peak = peakOf(inputs(), *records().find(precharge));
    ASSERT_TRUE(peak);
    EXPECT_NEAR(peak->current.value->si(), 403.2 / 47, 1e-6);
    EXPECT_FALSE(peak->isEntered);
    EXPECT_EQ(continuous(precharge).value, Current());
}

TEST_F(BranchCurrents, PhasesTakeWhatInverterAndMotorBothAllow)
{
    const Id<Circuit> phases = circuit("phases", CircuitKind::Phases, CurrentKind::Ac, "");
    const Id<Branch> cables = branch("cables", phases, "20 A", "30 A");
    const FigureName lasting{RatedQuantity::Current, RatingKind::Limit, RatingBasis::Continuous,
                             CurrentKind::Ac};
    const FigureName moment{RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak,
                            CurrentKind::Ac};
    const Id<Part> inverter = part("Inverter", PartRole::Inverter, phases, cables);
    rate(inverter, lasting, "160 A");
    rate(inverter, moment, "300 A", amount("20 s"));
    const Id<Part> motor = part("Motor", PartRole::Motor, phases, cables);
    rate(motor, lasting, "150 A");
    rate(motor, moment, "330 A", amount("30 s"));
    EXPECT_EQ(continuous(cables).value, amperes(150));
    const auto peak = peakOf(inputs(), *records().find(cables));
    ASSERT_TRUE(peak);
    EXPECT_EQ(peak->current.value, amperes(300));
    EXPECT_EQ(peak->lasts.value, seconds(20));
}

TEST_F(BranchCurrents, WhatTellsItsOwnCurrentTakesThat)
{
    const Id<Circuit> low = circuit("low", CircuitKind::LowVoltage, CurrentKind::Dc, "15 V");
    const Id<Branch> feed = branch("feed", low, "1 A");
    FigureName own = actualOf(RatedQuantity::Current);
    own.current = CurrentKind::Dc;
    rate(part("Pump", PartRole::Pump, low, feed), own, "4.1 A");
    rate(part("Fan", {}, low, feed), own, "2 A");
    EXPECT_NEAR(continuous(feed).value->si(), 6.1, 1e-9);
}

} // namespace
} // namespace ohmwright
