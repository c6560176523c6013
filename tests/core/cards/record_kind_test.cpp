// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cards/record_kind.h"
#include "tests/support/test_book.h"

#include <gtest/gtest.h>

namespace ohmwright {
namespace {

QString u(const char *text)
{
    return QString::fromUtf8(text);
}

class Cards : public testing::Test
{
protected:
    const RecordKind &kind(const char *table) { return *recordKind(table); }
    const Records &records() { return book.records(); }

    TestBook book;
};

TEST_F(Cards, KnowEveryRecordAndEveryFieldOfIt)
{
    EXPECT_EQ(recordKinds().size(), 39U);
    for (const RecordKind *one : recordKinds()) {
        EXPECT_FALSE(one->fields().empty()) << one->table();
        EXPECT_FALSE(one->word().isEmpty()) << one->table();
        for (const FieldFacts &f : one->fields()) {
            EXPECT_EQ(f.form == FieldForm::Choice, !f.words.isEmpty()) << f.name.toStdString();
            EXPECT_EQ(f.form == FieldForm::Reference, recordKind(f.refersTo) != nullptr);
        }
    }
    EXPECT_EQ(recordKind("nothing"), nullptr);
    EXPECT_EQ(kind("circuit").field(u("worst_voltage"))->bounds.measure, Measure::Voltage);
}

TEST_F(Cards, ANewRecordGetsAKeyFromItsNameAndAReadableStep)
{
    const auto first = kind("seller").save(*book, {}, {{u("name"), u("Müller Autoteile")}});
    OHMWRIGHT_ASSERT_OK(first);
    const auto second = kind("seller").save(*book, {}, {{u("name"), u("Müller Autoteile")}});
    OHMWRIGHT_ASSERT_OK(second);
    EXPECT_EQ(kind("seller").key(records(), *first), u("muller-autoteile"));
    EXPECT_EQ(kind("seller").key(records(), *second), u("muller-autoteile-2"));
    EXPECT_EQ(book->undoText(), u("Add the seller “Müller Autoteile”"));
}

TEST_F(Cards, ADonorIsCalledByMakeModelAndYear)
{
    const auto id = kind("donor").save(
        *book, {},
        {{u("make"), u("Sample")}, {u("year"), u("2018")}, {u("distance"), u("48000 km")}});
    OHMWRIGHT_ASSERT_OK(id);
    EXPECT_EQ(kind("donor").name(records(), *id), u("Sample 2018"));
    EXPECT_EQ(kind("donor").key(records(), *id), u("sample-2018"));
    EXPECT_EQ(kind("donor").texts(records(), *id)->at(u("distance")), u("48000 km"));
}

TEST_F(Cards, OnlyWhatWasChangedIsWritten)
{
    const auto id =
        kind("seller").save(*book, {}, {{u("name"), u("Yard")}, {u("place"), u("Harbour Road")}});
    OHMWRIGHT_ASSERT_OK(id);
    OHMWRIGHT_ASSERT_OK(kind("seller").save(*book, *id, {{u("kind"), u("dismantler")}}));
    const auto texts = kind("seller").texts(records(), *id);
    EXPECT_EQ(texts->at(u("place")), u("Harbour Road"));
    EXPECT_EQ(texts->at(u("kind")), u("dismantler"));
    EXPECT_EQ(book->undoText(), u("Change the seller “Yard”"));
}

TEST_F(Cards, EveryTextReadsBackAsItself)
{
    const auto circuit = kind("circuit").save(
        *book, {}, {{u("name"), u("Traction")}, {u("worst_voltage"), u("454 V")}});
    OHMWRIGHT_ASSERT_OK(circuit);
    for (const RecordKind *one : recordKinds())
        for (const std::int64_t id : one->ids(records())) {
            const FieldTexts before = *one->texts(records(), id);
            OHMWRIGHT_ASSERT_OK(one->save(*book, id, before));
            EXPECT_EQ(*one->texts(records(), id), before) << one->table();
        }
}

TEST_F(Cards, WhatCannotBeReadIsRefusedAtItsFieldAndNothingIsKept)
{
    const auto volts = kind("circuit").save(
        *book, {}, {{u("name"), u("Traction")}, {u("worst_voltage"), u("454 A")}});
    ASSERT_FALSE(volts);
    EXPECT_EQ(volts.error().where, u("worst_voltage"));
    const auto year =
        kind("donor").save(*book, {}, {{u("make"), u("Sample")}, {u("year"), u("1200")}});
    ASSERT_FALSE(year);
    EXPECT_EQ(year.error().where, u("year"));
    const auto name = kind("seller").save(*book, {}, {{u("place"), u("here")}});
    ASSERT_FALSE(name);
    EXPECT_EQ(name.error().where, u("name"));
    EXPECT_TRUE(records().all<Circuit>().rows().empty());
    EXPECT_TRUE(records().all<Donor>().rows().empty());
    EXPECT_FALSE(book->undoText());
}

TEST_F(Cards, AReferenceIsAKeyOfTheBook)
{
    Circuit circuit;
    circuit.name = u("Traction");
    circuit.key = u("traction");
    book.add(circuit);
    const auto id = kind("branch").save(
        *book, {}, {{u("name"), u("Pack to inverter")}, {u("circuit"), u("traction")}});
    OHMWRIGHT_ASSERT_OK(id);
    EXPECT_EQ(kind("branch").texts(records(), *id)->at(u("circuit")), u("traction"));
    const auto unknown =
        kind("branch").save(*book, {}, {{u("name"), u("Other")}, {u("circuit"), u("nowhere")}});
    ASSERT_FALSE(unknown);
    EXPECT_EQ(unknown.error().where, u("circuit"));
    const auto none = kind("branch").save(*book, {}, {{u("name"), u("Other")}});
    ASSERT_FALSE(none);
    EXPECT_EQ(none.error().where, u("circuit"));
}

TEST_F(Cards, ANewSellerIsMadeWithThePurchaseInOneStep)
{
    const auto id =
        kind("purchase")
            .save(*book, {}, {{u("seller"), u("+Harbour Breakers")}, {u("freight"), u("45")}});
    OHMWRIGHT_ASSERT_OK(id);
    ASSERT_EQ(records().all<Seller>().size(), 1U);
    EXPECT_EQ(records().all<Purchase>().rows().front().freight, euros(4500));
    EXPECT_TRUE(book->undoText()->contains(u("Harbour Breakers")));
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(records().all<Seller>().size(), 0U);
    EXPECT_EQ(records().all<Purchase>().size(), 0U);
}

TEST_F(Cards, AForeignPurchaseNeedsItsRateAndCountsItsSumsInItsCurrency)
{
    const FieldTexts typed{
        {u("seller"), u("+Yard")}, {u("currency"), u("SEK")}, {u("tax"), u("20")}};
    const auto refused = kind("purchase").save(*book, {}, typed);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().where, u("rate"));
    EXPECT_EQ(records().all<Seller>().size(), 0U);
    FieldTexts withRate = typed;
    withRate[u("rate")] = u("0.0881");
    const auto id = kind("purchase").save(*book, {}, withRate);
    OHMWRIGHT_ASSERT_OK(id);
    const Purchase &made = records().all<Purchase>().rows().front();
    EXPECT_EQ(made.tax, Money(2000, *Currency::fromCode(u"SEK")));
    EXPECT_EQ(made.freight, Money(0, *Currency::fromCode(u"SEK")));

    const RecordRef in{"purchase", *id, {}};
    OHMWRIGHT_ASSERT_OK(
        kind("purchase_item")
            .save(*book, {}, {{u("name"), u("Charger")}, {u("unit_price"), u("900")}}, in));
    EXPECT_EQ(records().all<PurchaseItem>().rows().front().unitPrice,
              Money(90000, *Currency::fromCode(u"SEK")));
    // its items are in the currency it had
    const auto other =
        kind("purchase")
            .save(*book, *id,
                  {{u("currency"), u("NOK")}, {u("tax"), u("")}, {u("rate"), u("0.0881")}});
    ASSERT_FALSE(other);
    EXPECT_FALSE(other.error().sentence.isEmpty());
}

TEST_F(Cards, APaymentIsAboveZeroAndNotAhead)
{
    const auto purchase = kind("purchase").save(*book, {}, {{u("seller"), u("+Yard")}});
    OHMWRIGHT_ASSERT_OK(purchase);
    const RecordRef in{"purchase", *purchase, {}};
    const auto paid = kind("payment").save(*book, {}, {{u("amount"), u("120")}}, in);
    OHMWRIGHT_ASSERT_OK(paid);
    EXPECT_EQ(kind("payment").holder(records(), *paid)->id, *purchase);
    const auto zero = kind("payment").save(*book, *paid, {{u("amount"), u("0")}});
    ASSERT_FALSE(zero);
    EXPECT_EQ(zero.error().where, u("amount"));
    const auto ahead = kind("payment").save(*book, *paid, {{u("paid_on"), u("+3d")}});
    ASSERT_FALSE(ahead);
    EXPECT_EQ(ahead.error().where, u("paid_on"));
    OHMWRIGHT_ASSERT_OK(kind("payment").remove(*book, *paid));
    EXPECT_EQ(records().all<Payment>().size(), 0U);
}

TEST_F(Cards, WhatIsReferredToStaysAndItIsSaidByWhom)
{
    Donor donor;
    donor.make = u("Sample");
    donor.key = u("sample");
    const Id<Donor> id = book.add(donor);
    Part part = namedPart(u("Inverter"));
    part.donor = id;
    const Id<Part> partId = book.add(part);
    const auto who = kind("donor").referring(records(), id.value());
    ASSERT_EQ(who.size(), 1U);
    EXPECT_EQ(who.front().name, u("Inverter"));
    EXPECT_EQ(who.front().id, partId.value());
    const Outcome refused = kind("donor").remove(*book, id.value());
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ProblemCode::NotAllowed);
    EXPECT_TRUE(refused.error().sentence.contains(u("the part “Inverter”")));
    EXPECT_NE(records().find(id), nullptr);
}

TEST_F(Cards, AConnectionToACircuitIsToldAsItsPart)
{
    Circuit circuit;
    circuit.name = u("Traction");
    const Id<Circuit> id = book.add(circuit);
    Connection connection;
    connection.part = book.add(namedPart(u("Heater")));
    connection.circuit = id;
    book.add(connection);
    const auto who = kind("circuit").referring(records(), id.value());
    ASSERT_EQ(who.size(), 1U);
    EXPECT_EQ(who.front().table, "part");
}

TEST_F(Cards, ATypeGoesWithItsRatingsInOneStepAndComesBackWithThem)
{
    PartType type;
    type.name = u("Inverter");
    const Id<PartType> id = book.add(type);
    Rating rating;
    rating.type = id;
    rating.value = amount("450 V");
    book.add(rating);
    OHMWRIGHT_ASSERT_OK(kind("part_type").remove(*book, id.value()));
    EXPECT_EQ(records().all<Rating>().size(), 0U);
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(records().all<Rating>().size(), 1U);
    EXPECT_EQ(records().all<PartType>().size(), 1U);
}

TEST_F(Cards, TheVehicleIsChangedButNeverRemoved)
{
    const std::int64_t id = kind("vehicle").ids(records()).front();
    OHMWRIGHT_ASSERT_OK(kind("vehicle").save(*book, id, {{u("front_left"), u("312 kg")}}));
    EXPECT_EQ(book->undoText(), u("Change the vehicle"));
    EXPECT_FALSE(kind("vehicle").remove(*book, id));
}

TEST_F(Cards, ARecordThatIsGoneIsSaidToBeGone)
{
    const auto saved = kind("seller").save(*book, 4711, {{u("name"), u("x")}});
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().code, ProblemCode::NotFound);
    EXPECT_FALSE(kind("seller").remove(*book, 4711));
}

} // namespace
} // namespace ohmwright
