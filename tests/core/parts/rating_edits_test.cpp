// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/attachments.h"
#include "core/parts/rating_edits.h"
#include "tests/support/test_book.h"

#include <gtest/gtest.h>

namespace ohmwright {
namespace {

class RatingEdits : public testing::Test
{
protected:
    RatingEdits()
    {
        PartType row;
        row.name = QStringLiteral("Contactor");
        type = book.add(row);
    }

    Rating limit(const char *value)
    {
        Rating rating;
        rating.type = type;
        rating.current = CurrentKind::Dc;
        rating.value = amount(value);
        rating.evidence = Evidence::Datasheet;
        return rating;
    }

    TestBook book;
    Id<PartType> type;
};

TEST_F(RatingEdits, ATypeIsRatedAndItsPartsTakeIt)
{
    OHMWRIGHT_ASSERT_OK(saveRating(*book, limit("450 V")));
    ASSERT_EQ(figuresOf(book.records(), *book.records().find(type)).size(), 1U);
    Part part = namedPart(QStringLiteral("Main contactor"));
    part.type = type;
    const Id<Part> id = book.add(part);
    EXPECT_EQ(figuresOf(book.records(), *book.records().find(id)).front().value(), amount("450 V"));
}

TEST_F(RatingEdits, ARatingIsChangedInPlaceWithOneStep)
{
    const auto id = saveRating(*book, limit("450 V"));
    OHMWRIGHT_ASSERT_OK(id);
    Rating rating = *book.records().find(*id);
    rating.basis = RatingBasis::Peak;
    rating.duration = amount("30 s");
    OHMWRIGHT_ASSERT_OK(saveRating(*book, rating));
    EXPECT_EQ(book.records().all<Rating>().size(), 1U);
    EXPECT_EQ(book.records().find(*id)->duration, amount("30 s"));
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_FALSE(book.records().find(*id)->duration);
}

TEST_F(RatingEdits, OnlyOneOfClashingRatingsStandsAndForAReason)
{
    const auto low = saveRating(*book, limit("400 V"));
    const auto high = saveRating(*book, limit("450 V"));
    OHMWRIGHT_ASSERT_OK(low);
    OHMWRIGHT_ASSERT_OK(high);
    const Outcome none = settleRating(*book, *high, QStringLiteral("  "));
    ASSERT_FALSE(none);
    EXPECT_EQ(none.error().where, QStringLiteral("note"));
    OHMWRIGHT_ASSERT_OK(settleRating(*book, *low, QStringLiteral("old plate")));
    OHMWRIGHT_ASSERT_OK(settleRating(*book, *high, QStringLiteral("new datasheet")));
    EXPECT_FALSE(book.records().find(*low)->settled);
    EXPECT_TRUE(book.records().find(*high)->settled);
    OHMWRIGHT_ASSERT_OK(unsettleRating(*book, *high));
    EXPECT_FALSE(book.records().find(*high)->settled);
    OHMWRIGHT_ASSERT_OK(removeRating(*book, *high));
    EXPECT_FALSE(removeRating(*book, *high));
}

// The part's own stands before its type's; the type is other parts' too.
TEST_F(RatingEdits, SettlingAPartsOwnLeavesItsTypeAlone)
{
    const auto ofType = saveRating(*book, limit("400 V"));
    OHMWRIGHT_ASSERT_OK(ofType);
    OHMWRIGHT_ASSERT_OK(settleRating(*book, *ofType, QStringLiteral("datasheet")));
    Part part = namedPart(QStringLiteral("Contactor"));
    part.type = type;
    const Id<Part> id = book.add(part);
    Rating own = limit("350 V");
    own.type = {};
    own.part = id;
    const auto plate = saveRating(*book, own);
    OHMWRIGHT_ASSERT_OK(plate);
    OHMWRIGHT_ASSERT_OK(settleRating(*book, *plate, QStringLiteral("its own plate"), id));
    EXPECT_TRUE(book.records().find(*ofType)->settled);
    const auto inForce = [&] {
        return figuresOf(book.records(), *book.records().find(id)).front().value();
    };
    EXPECT_EQ(inForce(), amount("350 V"));
    OHMWRIGHT_ASSERT_OK(settleRating(*book, *ofType, QStringLiteral("the plate is wrong"), id));
    EXPECT_FALSE(book.records().find(*plate)->settled);
    EXPECT_EQ(inForce(), amount("400 V"));
}

TEST(AddLink, KeepsAWebAddressWithTheDayItWasRead)
{
    TestBook book;
    Attachment like;
    like.part = book.add(namedPart(QStringLiteral("Charger")));
    const QDate today = book.clock.today();
    const QString url = QStringLiteral("https://example.org/charger");
    OHMWRIGHT_ASSERT_OK(addLink(*book, url, {}, today, like));
    const Attachment &made = book.records().all<Attachment>().rows().front();
    EXPECT_EQ(made.title, url);
    EXPECT_EQ(made.readOn, today);
    EXPECT_EQ(made.part, like.part);
    EXPECT_EQ(addLink(*book, QStringLiteral("charger page"), {}, today, like).error().where,
              QStringLiteral("url"));
    EXPECT_EQ(addLink(*book, url, {}, {}, like).error().where, QStringLiteral("read_on"));
    EXPECT_EQ(addLink(*book, url, {}, today.addDays(1), like).error().where,
              QStringLiteral("read_on"));
    EXPECT_EQ(book.records().all<Attachment>().size(), 1U);
}

TEST(AddFiles, KeepPicturesAsPhotosAndAllElseAsDocuments)
{
    TestBook book;
    Attachment like;
    like.ofVehicle = true;
    OHMWRIGHT_ASSERT_OK(
        addFiles(*book,
                 {{"one", QStringLiteral("front.jpg"), QStringLiteral("image/jpeg")},
                  {"two", QStringLiteral("plate.pdf"), QStringLiteral("application/pdf")}},
                 like));
    ASSERT_EQ(book.records().all<Attachment>().size(), 2U);
    EXPECT_EQ(book.records().byKey<Attachment>(QStringLiteral("front-photo"))->kind,
              AttachmentKind::Photo);
    EXPECT_EQ(book.records().byKey<Attachment>(QStringLiteral("plate-paper"))->kind,
              AttachmentKind::Document);
    EXPECT_FALSE(readFiles({QStringLiteral("/nowhere/at/all.jpg")}));
}

} // namespace
} // namespace ohmwright
