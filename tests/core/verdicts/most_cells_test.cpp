// SPDX-License-Identifier: GPL-3.0-or-later
// How many cells in series a unit alone allows: its limit by the full voltage of the pack's cells,
// 4.2 V here, rounded down (arithmetic by hand). Every value is invented.
#include "core/verdicts/most_cells.h"
#include "tests/core/verdicts/electrical_book.h"

namespace ohmwright {
namespace {

class MostCellsRow : public ElectricalBook
{
protected:
    Id<Circuit> traction = circuit("traction", CircuitKind::Traction, CurrentKind::Dc, "");

    std::vector<ComparedCell> cells(const std::vector<ComparedId> &ids)
    {
        std::vector<ComparedUnit> units;
        for (const ComparedId &id : ids)
            units.push_back(*comparedUnit(records(), id));
        const auto row = mostCellsRow(inputs(), units);
        return row ? row->cells : std::vector<ComparedCell>();
    }
    Id<PartType> type(const char *name, const char *limit)
    {
        PartType made;
        made.make = QStringLiteral("Kestrin");
        made.partNumber = made.name = QString::fromLatin1(name);
        const Id<PartType> id = book.add(made);
        Rating rating;
        rating.type = id;
        rating.current = CurrentKind::Dc;
        rating.value = amount(limit);
        book.add(rating);
        return id;
    }
};

TEST_F(MostCellsRow, IsItsVoltageLimitByAFullCellRoundedDown)
{
    addPack(traction);
    const auto found = cells({type("A", "420 V"), type("C", "475 V")});
    ASSERT_EQ(found.size(), 2U);
    EXPECT_EQ(found[0].value, QStringLiteral("100")); // 420 / 4.2
    EXPECT_EQ(found[1].value, QStringLiteral("113")); // 475 / 4.2 = 113.1
    EXPECT_TRUE(found[1].from.contains(QStringLiteral("475\u00a0V at 4.2\u00a0V a cell")))
        << found[1].from.toStdString();
}

TEST_F(MostCellsRow, ARelayInsideLowersItAndAControlBoardOnTwelveVoltsDoesNot)
{
    addPack(traction);
    const Id<Circuit> low = circuit("low", CircuitKind::LowVoltage, CurrentKind::Dc, "15 V");
    const Id<Part> heater = part("Heater", PartRole::Heater, traction);
    rate(heater, kDcLimit, "480 V");
    EXPECT_EQ(cells({heater}).front().value, QStringLiteral("114"));
    const Id<Part> head = part("Head", {}, low, {}, heater);
    rate(head, kDcLimit, "16 V");
    const Id<Part> chip = part("Chip", {}, {}, {}, head);
    rate(chip, kDcLimit, "5 V");
    EXPECT_EQ(cells({heater}).front().value, QStringLiteral("114"));
    const Id<Part> relay = part("Relay", {}, traction, {}, head);
    rate(relay, kDcLimit, "400 V");
    const ComparedCell cell = cells({heater}).front();
    EXPECT_EQ(cell.value, QStringLiteral("95")); // 400 / 4.2 = 95.2
    EXPECT_TRUE(cell.from.contains(QStringLiteral("Heater › Head › Relay")))
        << cell.from.toStdString();
}

TEST_F(MostCellsRow, TellsWhatCouldStillLowerIt)
{
    addPack(traction);
    const Id<Part> box = part("Box", {}, traction);
    rate(box, kDcLimit, "500 V");
    part("Relay", {}, {}, {}, box); // on the circuit as its box is, no limit known
    const ComparedCell cell = cells({box}).front();
    EXPECT_EQ(cell.value, QStringLiteral("119"));
    EXPECT_TRUE(cell.from.contains(QStringLiteral("not known"))) << cell.from.toStdString();
    EXPECT_TRUE(cell.from.contains(QStringLiteral("Relay"))) << cell.from.toStdString();
}

TEST_F(MostCellsRow, ALimitInCellsCountsAsWell)
{
    addPack(traction);
    const Id<Part> management = part("Management");
    rate(management, limitOf(RatedQuantity::CellsInSeries), "96");
    rate(management, kDcLimit, "500 V");
    EXPECT_EQ(cells({management}).front().value, QStringLiteral("96"));
}

TEST_F(MostCellsRow, IsNotKnownWithoutAPackAndNotAskedOfABracket)
{
    const ComparedCell cell = cells({type("A", "420 V")}).front();
    EXPECT_TRUE(cell.value.isEmpty());
    EXPECT_TRUE(cell.from.contains(QStringLiteral("full voltage of a cell")));
    EXPECT_TRUE(cells({part("Bracket"), part("Plate")}).empty());
}

} // namespace
} // namespace ohmwright
