// SPDX-License-Identifier: GPL-3.0-or-later
// Which rating is in force: limits and actual values, papers and hearsay, clashes, staleness.
// The rules are common practice, no published source.
#include "core/parts/figures.h"
#include "tests/support/test_book.h"

namespace ohmwright {
namespace {

const FigureName kVoltageLimit{RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Continuous,
                               CurrentKind::Dc};
const FigureName kMass{RatedQuantity::Mass, RatingKind::Actual, RatingBasis::Nominal, std::nullopt};

class FiguresTest : public testing::Test
{
protected:
    TestBook book; // before what is put into it
    Id<Part> part = book.add(namedPart(QStringLiteral("Inverter")));

    Id<Rating> rate(const FigureName &figure, const char *value, Evidence evidence,
                    std::optional<QDate> on = {}, bool settled = false)
    {
        Rating rating;
        rating.part = part;
        rating.quantity = figure.quantity;
        rating.kind = figure.kind;
        rating.basis = figure.basis;
        rating.current = figure.current;
        if (*value)
            rating.value = amount(value);
        rating.evidence = evidence;
        rating.on = on;
        rating.settled = settled;
        return book.add(rating);
    }
    Figure figure(const FigureName &name)
    {
        return figureFor(book.records(), *book.records().find(part), name);
    }
};

TEST_F(FiguresTest, NothingRecordedIsNotKnown)
{
    EXPECT_EQ(figure(kVoltageLimit).inForce, nullptr);
    EXPECT_FALSE(figure(kVoltageLimit).saidUnknown);
}

TEST_F(FiguresTest, AnUnknownValueIsKeptAndIsNotAValue)
{
    rate(kVoltageLimit, "", Evidence::Nameplate);
    EXPECT_EQ(figure(kVoltageLimit).inForce, nullptr);
    EXPECT_TRUE(figure(kVoltageLimit).saidUnknown);
}

TEST_F(FiguresTest, MeasuringNeverRaisesALimitThatPapersGive)
{
    rate(kVoltageLimit, "400 V", Evidence::Nameplate);
    rate(kVoltageLimit, "450 V", Evidence::Measured);
    const Figure f = figure(kVoltageLimit);
    EXPECT_EQ(*f.value(), amount("400 V"));
    EXPECT_FALSE(f.clash);
    EXPECT_EQ(f.all.size(), 2U);
}

TEST_F(FiguresTest, OfClashingPapersTheSaferStandsUntilSettled)
{
    rate(kVoltageLimit, "450 V", Evidence::Datasheet);
    rate(kVoltageLimit, "400 V", Evidence::Nameplate);
    EXPECT_EQ(*figure(kVoltageLimit).value(), amount("400 V"));
    EXPECT_TRUE(figure(kVoltageLimit).clash);
    Rating settled = *figure(kVoltageLimit).all.front();
    settled.settled = true;
    OHMWRIGHT_ASSERT_OK(
        book->edit(QStringLiteral("settle"), [&] { return book->update(settled); }));
    EXPECT_EQ(*figure(kVoltageLimit).value(), amount("450 V"));
    EXPECT_FALSE(figure(kVoltageLimit).clash);
}

TEST_F(FiguresTest, HearsayBelowThePlateClashesAndIsUsed)
{
    rate(kVoltageLimit, "450 V", Evidence::Nameplate);
    rate(kVoltageLimit, "420 V", Evidence::Community);
    EXPECT_EQ(*figure(kVoltageLimit).value(), amount("420 V"));
    EXPECT_TRUE(figure(kVoltageLimit).clash);
}

TEST_F(FiguresTest, SettlingOnHearsayCannotRaiseALimitAbovePapers)
{
    rate(kVoltageLimit, "400 V", Evidence::Nameplate);
    rate(kVoltageLimit, "480 V", Evidence::Seller, {}, true);
    EXPECT_EQ(*figure(kVoltageLimit).value(), amount("400 V"));
}

TEST_F(FiguresTest, TheSaferOfLowerLimitsIsTheHigher)
{
    const FigureName least{RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Least,
                           CurrentKind::Dc};
    rate(least, "200 V", Evidence::Datasheet);
    rate(least, "240 V", Evidence::ServiceManual);
    EXPECT_EQ(*figure(least).value(), amount("240 V"));
}

TEST_F(FiguresTest, DcAndAcLimitsNeverMix)
{
    FigureName ac = kVoltageLimit;
    ac.current = CurrentKind::Ac;
    rate(ac, "690 V", Evidence::Nameplate);
    EXPECT_EQ(figure(kVoltageLimit).inForce, nullptr);
}

TEST_F(FiguresTest, OfActualValuesTheNewestMeasurementLeads)
{
    rate(kMass, "40 kg", Evidence::Datasheet);
    rate(kMass, "43 kg", Evidence::Measured, QDate(2026, 1, 1));
    rate(kMass, "43.2 kg", Evidence::Measured, QDate(2026, 2, 1));
    EXPECT_EQ(*figure(kMass).value(), amount("43.2 kg"));
    EXPECT_TRUE(figure(kMass).clash);
}

TEST_F(FiguresTest, ReworkMakesOlderEvidenceStale)
{
    rate(kVoltageLimit, "400 V", Evidence::Nameplate, QDate(2026, 1, 1));
    Part reworked = *book.records().find(part);
    reworked.reworkedOn = QDate(2026, 3, 1);
    OHMWRIGHT_ASSERT_OK(
        book->edit(QStringLiteral("rework"), [&] { return book->update(reworked); }));
    EXPECT_TRUE(figure(kVoltageLimit).stale);
    rate(kVoltageLimit, "450 V", Evidence::Datasheet, QDate(2026, 4, 1));
    EXPECT_FALSE(figure(kVoltageLimit).stale);
    EXPECT_EQ(*figure(kVoltageLimit).value(), amount("450 V"));
}

TEST_F(FiguresTest, PapersFromBeforeTheReworkStillHoldALimitDown)
{
    rate(kVoltageLimit, "400 V", Evidence::Nameplate, QDate(2026, 1, 1));
    Part reworked = *book.records().find(part);
    reworked.reworkedOn = QDate(2026, 3, 1);
    OHMWRIGHT_ASSERT_OK(
        book->edit(QStringLiteral("rework"), [&] { return book->update(reworked); }));
    rate(kVoltageLimit, "600 V", Evidence::Measured, QDate(2026, 4, 1), true);
    EXPECT_EQ(*figure(kVoltageLimit).value(), amount("400 V"));
    EXPECT_TRUE(figure(kVoltageLimit).stale);
    rate(kVoltageLimit, "350 V", Evidence::Seller, QDate(2026, 4, 2));
    EXPECT_EQ(*figure(kVoltageLimit).value(), amount("350 V"));
}

TEST_F(FiguresTest, PeaksOfOtherDurationsAreOtherLimitsAndDoNotClash)
{
    const FigureName peak{RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak,
                          CurrentKind::Dc};
    for (const auto &[value, lasting] : {std::pair("500 A", "10 s"), std::pair("300 A", "60 s")}) {
        Rating rating;
        rating.part = part;
        rating.quantity = RatedQuantity::Current;
        rating.basis = RatingBasis::Peak;
        rating.current = CurrentKind::Dc;
        rating.value = amount(value);
        rating.duration = amount(lasting);
        rating.evidence = Evidence::Datasheet;
        book.add(rating);
    }
    const std::vector<Figure> figures = figuresOf(book.records(), *book.records().find(part));
    ASSERT_EQ(figures.size(), 2U);
    for (const Figure &one : figures)
        EXPECT_FALSE(one.clash);
    EXPECT_EQ(describe(figures[0].name), QStringLiteral("peak DC current limit for 10 s"));
    // asked for without a duration the lower one answers
    EXPECT_EQ(*figure(peak).value(), amount("300 A"));
    EXPECT_FALSE(figure(peak).clash);
}

TEST_F(FiguresTest, ATypesRatingsCountForItsParts)
{
    PartType type;
    type.name = QStringLiteral("Inverter C");
    const Id<PartType> typeId = book.add(type);
    Rating rating;
    rating.type = typeId;
    rating.current = CurrentKind::Dc;
    rating.value = amount("430 V");
    rating.evidence = Evidence::Datasheet;
    book.add(rating);
    Part typed = *book.records().find(part);
    typed.type = typeId;
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("type"), [&] { return book->update(typed); }));
    EXPECT_EQ(*figure(kVoltageLimit).value(), amount("430 V"));
}

} // namespace
} // namespace ohmwright
