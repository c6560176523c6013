// SPDX-License-Identifier: GPL-3.0-or-later
// Types and parts side by side. The units and their values are invented; that a missing value is
// not taken for an equal one is the point of it, and common practice, no published source.
#include "core/parts/compare.h"
#include "tests/support/test_book.h"

#include <algorithm>

namespace ohmwright {
namespace {

constexpr FigureName kDcVoltage{RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Continuous,
                                CurrentKind::Dc};
constexpr FigureName kAcVoltage{RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Continuous,
                                CurrentKind::Ac};
constexpr FigureName kPeakCurrent{RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak,
                                  CurrentKind::Dc};
constexpr FigureName kMass{RatedQuantity::Mass, RatingKind::Actual, RatingBasis::Nominal,
                           std::nullopt};

class CompareTest : public testing::Test
{
protected:
    TestBook book; // before what is put into it
    Id<PartType> early = type("0448-A", "Inverter, early case");
    Id<PartType> late = type("0448-C", "Inverter, late case");

    Id<PartType> type(const char *partNumber, const char *name)
    {
        PartType made;
        made.make = QStringLiteral("Kestrin");
        made.partNumber = QString::fromLatin1(partNumber);
        made.name = QString::fromLatin1(name);
        made.key = keyFrom(made.make + u' ' + made.partNumber);
        return book.add(made);
    }

    template <class Owner>
    void rate(Id<Owner> of, const FigureName &figure, const char *value,
              Evidence evidence = Evidence::Nameplate, const char *duration = "")
    {
        Rating rating;
        if constexpr (std::is_same_v<Owner, Part>)
            rating.part = of;
        else
            rating.type = of;
        rating.quantity = figure.quantity;
        rating.kind = figure.kind;
        rating.basis = figure.basis;
        rating.current = figure.current;
        if (*value)
            rating.value = amount(value);
        if (*duration)
            rating.duration = amount(duration);
        rating.evidence = evidence;
        rating.source = QStringLiteral("photo 3");
        book.add(rating);
    }

    Id<Part> part(const char *name, std::optional<Id<PartType>> of = {})
    {
        Part made = namedPart(QString::fromLatin1(name));
        made.key = keyFrom(made.name);
        made.type = of;
        return book.add(made);
    }

    SideBySide compared(const std::vector<ComparedId> &ids)
    {
        Result<SideBySide> made = compareUnits(book.records(), ids);
        EXPECT_TRUE(made.has_value());
        return made.value_or(SideBySide());
    }

    static const ComparedRow *row(const SideBySide &of, const QString &what)
    {
        const auto found = std::ranges::find(of.rows, what, &ComparedRow::what);
        return found == of.rows.end() ? nullptr : &*found;
    }
};

TEST_F(CompareTest, MarksWhatDiffersBetweenTwoSuffixes)
{
    rate(early, kDcVoltage, "420 V");
    rate(late, kDcVoltage, "475 V", Evidence::ServiceManual);
    rate(early, kMass, "8.2 kg");
    rate(late, kMass, "8.2 kg");
    const SideBySide both = compared({early, late});
    ASSERT_EQ(both.units.size(), 2U);
    EXPECT_EQ(both.units[1].under, QStringLiteral("type, Kestrin 0448-C"));
    EXPECT_EQ(both.units[1].head, QStringLiteral("0448-C, Inverter, late case"));
    ASSERT_EQ(both.rows.size(), 2U);
    const ComparedRow *voltage = row(both, QStringLiteral("DC voltage limit"));
    ASSERT_NE(voltage, nullptr);
    EXPECT_EQ(voltage->agreement, Agreement::Differs);
    EXPECT_EQ(voltage->cells[0].value, QStringLiteral("420\u00a0V"));
    EXPECT_EQ(voltage->cells[1].from, QStringLiteral("service manual, photo 3"));
    EXPECT_EQ(row(both, QStringLiteral("mass"))->agreement, Agreement::Same);
    EXPECT_EQ(summary(both), QStringLiteral("1 differ, 0 not known of all, 1 the same."));
}

TEST_F(CompareTest, WhatOneLacksIsNotKnownAndNeverTheSame)
{
    rate(early, kDcVoltage, "420 V");
    rate(late, kDcVoltage, ""); // looked for
    rate(late, kMass, "8 kg");
    const SideBySide both = compared({early, late});
    const ComparedRow *voltage = row(both, QStringLiteral("DC voltage limit"));
    EXPECT_EQ(voltage->agreement, Agreement::NotKnown);
    EXPECT_TRUE(voltage->cells[1].value.isEmpty());
    EXPECT_EQ(voltage->cells[1].from, QStringLiteral("looked for"));
    EXPECT_EQ(row(both, QStringLiteral("mass"))->agreement, Agreement::NotKnown);
    EXPECT_TRUE(row(both, QStringLiteral("mass"))->cells[0].from.isEmpty());
}

TEST_F(CompareTest, ALimitInAcSaysNothingOfOneInDc)
{
    rate(early, kDcVoltage, "400 V");
    rate(late, kAcVoltage, "400 V");
    const SideBySide both = compared({early, late});
    ASSERT_EQ(both.rows.size(), 2U);
    for (const ComparedRow &one : both.rows)
        EXPECT_EQ(one.agreement, Agreement::NotKnown) << one.what.toStdString();
}

TEST_F(CompareTest, PeaksAgreeOnlyForTheSameTime)
{
    rate(early, kPeakCurrent, "500 A", Evidence::Datasheet, "10 s");
    rate(late, kPeakCurrent, "500 A", Evidence::Datasheet, "30 s");
    const SideBySide both = compared({early, late});
    ASSERT_EQ(both.rows.size(), 2U) << "limits for other durations are other limits";
    EXPECT_EQ(both.rows[0].agreement, Agreement::NotKnown);
    EXPECT_EQ(both.rows[1].agreement, Agreement::NotKnown);
    EXPECT_EQ(both.rows[0].cells[0].value, QStringLiteral("500\u00a0A for 10\u00a0s"));
    const auto third = type("0448-D", "Inverter, third case");
    rate(third, kPeakCurrent, "0.5 kA", Evidence::Datasheet, "10 s");
    EXPECT_EQ(compared({early, third}).rows.front().agreement, Agreement::Same);
    const auto fourth = type("0448-E", "Inverter, fourth case");
    rate(fourth, kPeakCurrent, "500 A", Evidence::Datasheet);
    EXPECT_EQ(compared({early, fourth}).rows.front().agreement, Agreement::Differs)
        << "a peak of no known duration";
}

TEST_F(CompareTest, LimitsDifferByAnythingActualValuesOnlyBeyondGarageScales)
{
    rate(early, kDcVoltage, "400 V");
    rate(late, kDcVoltage, "401 V");
    rate(early, kMass, "8.2 kg");
    rate(late, kMass, "8.3 kg"); // 1.2 %
    const SideBySide both = compared({early, late});
    EXPECT_EQ(row(both, QStringLiteral("DC voltage limit"))->agreement, Agreement::Differs);
    EXPECT_EQ(row(both, QStringLiteral("mass"))->agreement, Agreement::Same);
}

TEST_F(CompareTest, APartTakesItsTypesFigureAndSaysSo)
{
    rate(late, kDcVoltage, "475 V");
    const auto old = part("Old inverter");
    const auto next = part("New inverter", late);
    rate(old, kDcVoltage, "420 V", Evidence::Seller);
    rate(old, kDcVoltage, "450 V", Evidence::Community);
    const SideBySide both = compared({old, next, late});
    ASSERT_EQ(both.units.size(), 3U);
    EXPECT_EQ(both.units[1].under, QStringLiteral("in hand, Kestrin 0448-C"));
    const ComparedRow &voltage = both.rows.front();
    EXPECT_TRUE(voltage.cells[0].clash);
    EXPECT_EQ(voltage.cells[0].value, QStringLiteral("420\u00a0V")) << "the safer of the two";
    EXPECT_TRUE(voltage.cells[1].ofType);
    EXPECT_FALSE(voltage.cells[2].ofType) << "a type has it itself";
    EXPECT_EQ(voltage.agreement, Agreement::Differs);
}

TEST_F(CompareTest, TwoKnownValuesThatDisagreeDifferWhateverAThirdLacks)
{
    const auto third = type("0448-D", "Inverter, third case");
    rate(early, kDcVoltage, "420 V");
    rate(third, kDcVoltage, "475 V");
    EXPECT_EQ(compared({early, late, third}).rows.front().agreement, Agreement::Differs);
}

TEST_F(CompareTest, TellsThePlugsOfPartsAndOfTheirTypes)
{
    const auto one = part("Inverter one", early);
    const auto other = part("Inverter other", late);
    const auto plug = [&](Id<Part> of, const char *connector) {
        Interface made;
        made.name = QStringLiteral("control");
        made.part = of;
        made.connector = QString::fromLatin1(connector);
        book.add(made);
    };
    plug(one, "35 pins, grey");
    plug(other, "35 pins,  Grey");
    const SideBySide parts = compared({one, other});
    ASSERT_NE(row(parts, QStringLiteral("connectors")), nullptr);
    EXPECT_EQ(row(parts, QStringLiteral("connectors"))->agreement, Agreement::Same);
    EXPECT_EQ(row(parts, QStringLiteral("bus")), nullptr) << "nobody says anything of it";
    const SideBySide types = compared({early, late});
    EXPECT_EQ(row(types, QStringLiteral("connectors"))->cells[0].from,
              QStringLiteral("on Inverter one"));
}

TEST_F(CompareTest, RefusesFewerThanTwoTheSameTwiceAndWhatIsGone)
{
    EXPECT_EQ(compareUnits(book.records(), {}).error().code, ProblemCode::BadInput);
    EXPECT_EQ(compareUnits(book.records(), {early}).error().code, ProblemCode::BadInput);
    const auto twice = compareUnits(book.records(), {early, late, early});
    ASSERT_FALSE(twice.has_value());
    EXPECT_TRUE(twice.error().sentence.contains(QLatin1String("Inverter, early case")));
    EXPECT_EQ(compareUnits(book.records(), {early, Id<Part>(12345)}).error().code,
              ProblemCode::NotFound);
}

TEST_F(CompareTest, TellsPartsOfOneNameApartByTheirKeys)
{
    Part made = namedPart(QStringLiteral("Relay"));
    made.key = QStringLiteral("relay-left");
    const auto left = book.add(made);
    made.key = QStringLiteral("relay-right");
    const auto right = book.add(made);
    const SideBySide both = compared({left, right, early});
    EXPECT_EQ(both.units[0].head, QStringLiteral("Relay (relay-left)"));
    EXPECT_EQ(both.units[1].head, QStringLiteral("Relay (relay-right)"));
    EXPECT_EQ(both.units[2].head, QStringLiteral("0448-A, Inverter, early case"));
    EXPECT_TRUE(both.rows.empty());
    EXPECT_EQ(summary(both), QStringLiteral("Nothing is recorded of any of them."));
}

TEST_F(CompareTest, FindsAUnitByItsKeyAndAsksWhereATypeAndAPartShareOne)
{
    const auto found = unitNamed(book.records(), QStringLiteral("kestrin-0448-a"));
    OHMWRIGHT_ASSERT_OK(found);
    EXPECT_EQ(*found, ComparedId(early));
    EXPECT_EQ(unitNamed(book.records(), QStringLiteral("no-such")).error().code,
              ProblemCode::NotFound);
    EXPECT_FALSE(unitNamed(book.records(), QStringLiteral("part:kestrin-0448-a")).has_value());
    const auto same = part("Kestrin 0448 A");
    EXPECT_EQ(unitNamed(book.records(), QStringLiteral("kestrin-0448-a")).error().code,
              ProblemCode::BadInput);
    const auto told = unitNamed(book.records(), QStringLiteral("part:kestrin-0448-a"));
    OHMWRIGHT_ASSERT_OK(told);
    EXPECT_EQ(*told, ComparedId(same));
}

} // namespace
} // namespace ohmwright
