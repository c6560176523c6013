// SPDX-License-Identifier: GPL-3.0-or-later
// Part life, deadlines, open questions, logging a part, consistency.
#include "core/parts/assembly.h"
#include "core/parts/consistency.h"
#include "core/parts/deadlines.h"
#include "core/parts/log_part.h"
#include "core/parts/questions.h"
#include "tests/support/test_book.h"

#include <gmock/gmock.h>

#include <random>

namespace ohmwright {
namespace {

using testing::HasSubstr;

// Life
// ---------------------------------------------------------------------------------------------

TEST(Life, GoesFromWantedToFittedWithEveryMoveDated)
{
    TestBook book;
    const Id<Part> id = book.add(namedPart(QStringLiteral("Motor"), PartState::Wanted));
    for (const PartState to :
         {PartState::Ordered, PartState::InHand, PartState::Tested, PartState::Fitted})
        OHMWRIGHT_ASSERT_OK(movePart(*book, id, to, book.clock.today()));
    EXPECT_EQ(book.records().find(id)->state, PartState::Fitted);
    EXPECT_EQ(book.records().of<PartMove>(id).size(), 5U);
    EXPECT_TRUE(findInconsistencies(book.records()).empty());
}

TEST(Life, RefusesToFitAnUntestedUnitButNotABolt)
{
    TestBook book;
    const Id<Part> motor = book.add(namedPart(QStringLiteral("Motor")));
    const Id<Part> bolt =
        book.add(namedPart(QStringLiteral("Bolt"), PartState::InHand, PartKind::Hardware));
    const Outcome refused = movePart(*book, motor, PartState::Fitted, book.clock.today());
    ASSERT_FALSE(refused.has_value());
    EXPECT_EQ(refused.error().code, ProblemCode::NotAllowed);
    EXPECT_THAT(refused.error().sentence.toStdString(),
                HasSubstr("must be tested before it is fitted"));
    OHMWRIGHT_ASSERT_OK(movePart(*book, bolt, PartState::Fitted, book.clock.today()));
}

TEST(Life, RefusesDatesAheadAndBeforeTheLastMove)
{
    TestBook book;
    const Id<Part> id = book.add(namedPart(QStringLiteral("Motor")));
    EXPECT_FALSE(movePart(*book, id, PartState::Tested, book.clock.today().addDays(1)).has_value());
    EXPECT_FALSE(
        movePart(*book, id, PartState::Tested, book.clock.today().addDays(-200)).has_value());
}

TEST(Life, EveryRandomWalkOfOfferedMovesIsLegal)
{
    std::mt19937 random(7);
    for (const PartKind kind : {PartKind::Unit, PartKind::Hardware}) {
        for (int walk = 0; walk < 50; ++walk) {
            PartState state = PartState::Wanted;
            for (int step = 0; step < 12; ++step) {
                const std::vector<PartState> next = movesFrom(kind, state);
                if (next.empty())
                    break;
                const PartState to = next[random() % next.size()];
                EXPECT_TRUE(mayMove(kind, state, to).has_value());
                EXPECT_FALSE(kind == PartKind::Unit && state == PartState::InHand &&
                             to == PartState::Fitted);
                state = to;
            }
        }
    }
}

// Deadlines
// ----------------------------------------------------------------------------------------

TEST(Deadlines, AreOpenOnTheLastDayAndOverTheDayAfter)
{
    Part part = namedPart(QStringLiteral("Charger"));
    part.warrantyUntil = QDate(2026, 6, 15);
    EXPECT_EQ(deadlinesOf(part, QDate(2026, 6, 15)).at(0).state, DeadlineState::EndingSoon);
    EXPECT_EQ(deadlinesOf(part, QDate(2026, 6, 15)).at(0).daysLeft, 0);
    EXPECT_EQ(deadlinesOf(part, QDate(2026, 6, 16)).at(0).state, DeadlineState::Over);
    EXPECT_EQ(deadlinesOf(part, QDate(2026, 1, 1)).at(0).state, DeadlineState::Running);
}

TEST(Deadlines, OfAnOpenedPartMayHaveEnded)
{
    Part part = namedPart(QStringLiteral("Charger"));
    part.warrantyUntil = QDate(2027, 1, 1);
    part.openedOn = QDate(2026, 5, 1);
    EXPECT_EQ(deadlinesOf(part, QDate(2026, 6, 15)).at(0).state, DeadlineState::MaybeEnded);
}

TEST(Rules, OpeningNeedsAReason)
{
    TestBook book;
    Part part = *book.records().find(book.add(namedPart(QStringLiteral("Charger"))));
    part.openedOn = book.clock.today();
    const Outcome opened = book->edit(QStringLiteral("open"), [&] { return book->update(part); });
    ASSERT_FALSE(opened.has_value());
    EXPECT_EQ(opened.error().where, QStringLiteral("opened_because"));
}

// Questions
// ----------------------------------------------------------------------------------------

Circuit traction()
{
    Circuit circuit;
    circuit.name = QStringLiteral("Traction");
    circuit.worstVoltage = amount("453.6 V");
    return circuit;
}

Id<Part> connected(TestBook &book, const QString &name, Id<Circuit> circuit)
{
    const Id<Part> id = book.add(namedPart(name));
    Connection connection;
    connection.part = id;
    connection.circuit = circuit;
    book.add(connection);
    return id;
}

TEST(Questions, ArePutByACircuitAndOnlyWhileNotKnown)
{
    TestBook book;
    const Id<Circuit> circuit = book.add(traction());
    book.add(namedPart(QStringLiteral("Loose part")));
    const Id<Part> id = connected(book, QStringLiteral("Contactor"), circuit);
    std::vector<Question> open = openQuestions(book.records());
    ASSERT_EQ(open.size(), 2U); // what voltage it withstands, and for the sheet its mass
    EXPECT_EQ(open[0].part, id);
    Rating rating;
    rating.part = id;
    rating.current = CurrentKind::Dc;
    rating.value = amount("500 V");
    book.add(rating);
    open = openQuestions(book.records());
    ASSERT_EQ(open.size(), 1U);
    EXPECT_EQ(open[0].figure.quantity, RatedQuantity::Mass);
}

TEST(Questions, OfPartsThatAreGoneAreNoQuestions)
{
    TestBook book;
    const Id<Part> id = connected(book, QStringLiteral("Contactor"), book.add(traction()));
    OHMWRIGHT_ASSERT_OK(movePart(*book, id, PartState::Sold, book.clock.today()));
    EXPECT_TRUE(openQuestions(book.records()).empty());
}

TEST(Questions, BecomeATaskThatHoldsUpWhatDependsOnThem)
{
    TestBook book;
    const Id<Part> id = connected(book, QStringLiteral("Contactor"), book.add(traction()));
    const Id<Task> fit = book.add(namedTask(QStringLiteral("Fit contactor box")));
    TaskNeed need;
    need.task = fit;
    need.kind = NeedKind::Part;
    need.part = id;
    book.add(need);
    const Result<Id<Task>> made = makeFindOutTask(*book, openQuestions(book.records()).front());
    OHMWRIGHT_ASSERT_OK(made);
    const auto needs = book.records().of<TaskNeed>(fit);
    ASSERT_EQ(needs.size(), 2U);
    EXPECT_EQ(needs[1].after, *made);
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(book.records().of<TaskNeed>(fit).size(), 1U);
}

TEST(Questions, AskedTwiceAreOneTask)
{
    TestBook book;
    connected(book, QStringLiteral("Contactor"), book.add(traction()));
    const Question question = openQuestions(book.records()).front();
    const Result<Id<Task>> first = makeFindOutTask(*book, question);
    const Result<Id<Task>> again = makeFindOutTask(*book, question);
    OHMWRIGHT_ASSERT_OK(first);
    OHMWRIGHT_ASSERT_OK(again);
    EXPECT_EQ(*first, *again);
    EXPECT_EQ(book.records().all<Task>().size(), 1U);
}

TEST(Questions, OfASubPartHoldUpWhatNeedsTheWholeUnit)
{
    TestBook book;
    const Id<Part> heater = book.add(namedPart(QStringLiteral("Heater")));
    const Id<Part> relay = connected(book, QStringLiteral("Relay"), book.add(traction()));
    Part inside = *book.records().find(relay);
    inside.partOf = heater;
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("in"), [&] { return book->update(inside); }));
    const Id<Task> fit = book.add(namedTask(QStringLiteral("Fit the heater")));
    TaskNeed need;
    need.task = fit;
    need.kind = NeedKind::Part;
    need.part = heater;
    book.add(need);
    const Result<Id<Task>> made =
        makeFindOutTask(*book, openQuestions(book.records(), relay).front());
    OHMWRIGHT_ASSERT_OK(made);
    const auto needs = book.records().of<TaskNeed>(fit);
    ASSERT_EQ(needs.size(), 2U);
    EXPECT_EQ(needs[1].after, *made);
}

// Assemblies
// ---------------------------------------------------------------------------------------

TEST(Assembly, GivesThePathToASubPart)
{
    TestBook book;
    const Id<Part> heater = book.add(namedPart(QStringLiteral("Heater")));
    Part board = namedPart(QStringLiteral("Board"));
    board.partOf = heater;
    const Id<Part> boardId = book.add(board);
    Part relay = namedPart(QStringLiteral("Relay"));
    relay.partOf = boardId;
    const Id<Part> relayId = book.add(relay);
    const AssemblyTree tree(book.records());
    EXPECT_EQ(tree.path(relayId), (QStringList{QStringLiteral("Heater"), QStringLiteral("Board"),
                                               QStringLiteral("Relay")}));
    EXPECT_EQ(tree.outermost(relayId), heater);
    EXPECT_EQ(tree.allWithin(heater).size(), 2U);
}

TEST(Consistency, NamesALoopOfParts)
{
    TestBook book;
    const Id<Part> a = book.add(namedPart(QStringLiteral("A")));
    Part b = namedPart(QStringLiteral("B"));
    b.partOf = a;
    const Id<Part> bId = book.add(b);
    Part looped = *book.records().find(a);
    looped.partOf = bId;
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("loop"), [&] { return book->update(looped); }));
    const auto found = findInconsistencies(book.records());
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].field, "part_of");
    EXPECT_THAT(found[0].sentence.toStdString(), HasSubstr("A in B in A"));
}

// Logging
// ------------------------------------------------------------------------------------------

LogEntry charger(const TestBook &book)
{
    Seller seller;
    seller.name = QStringLiteral("Harbour Salvage");
    seller.kind = SellerKind::Dismantler;
    Donor donor;
    donor.make = QStringLiteral("Calder");
    donor.model = QStringLiteral("Wren");
    LogPrice price;
    const Currency pound = *Currency::fromCode(u"GBP");
    price.seller = seller;
    price.unitPrice = Money(35000, pound);
    price.freight = Money(2500, pound);
    price.rate = *Rate::parse(u"1.1725", NumberStyle::pointDecimal());
    LogEntry entry;
    entry.name = QStringLiteral("Charger 6.6 kW");
    entry.on = book.clock.today();
    entry.donor = donor;
    entry.price = price;
    entry.warrantyDays = 90;
    entry.ratings.push_back(
        {{RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Continuous, CurrentKind::Dc},
         amount("430 V"),
         {},
         Evidence::Nameplate,
         QStringLiteral("plate"),
         {},
         {}});
    return entry;
}

TEST(LogPart, MakesEverythingInOneEditAndUndoTakesItAllBack)
{
    TestBook book;
    const Result<Id<Part>> id = logPart(*book, charger(book));
    OHMWRIGHT_ASSERT_OK(id);
    const Records &records = book.records();
    const Part &part = *records.find(*id);
    EXPECT_EQ(part.key, QStringLiteral("charger-6-6-kw"));
    EXPECT_EQ(part.warrantyUntil, QDate(2026, 6, 15).addDays(90));
    EXPECT_EQ(records.find(part.donor)->model, QStringLiteral("Wren"));
    const PurchaseItem &item = *records.find(part.bought);
    const Purchase &purchase = *records.find(item.purchase);
    EXPECT_EQ(records.find(purchase.seller)->name, QStringLiteral("Harbour Salvage"));
    EXPECT_EQ(records.of<Payment>(purchase.id).front().amount,
              Money(37500, *Currency::fromCode(u"GBP")));
    EXPECT_TRUE(findInconsistencies(records).empty());
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(records.all<Part>().size() + records.all<Seller>().size() +
                  records.all<Donor>().size() + records.all<Purchase>().size() +
                  records.all<Rating>().size(),
              0U);
}

TEST(LogPart, AForeignPriceNeedsARateAndNothingIsWrittenWithout)
{
    TestBook book;
    LogEntry entry = charger(book);
    entry.price->rate.reset();
    const Result<Id<Part>> id = logPart(*book, entry);
    ASSERT_FALSE(id.has_value());
    EXPECT_EQ(id.error().where, QStringLiteral("rate"));
    EXPECT_EQ(book.records().all<Seller>().size(), 0U);
}

TEST(LogPart, RefusesCostsOfAnOrderThatHasThemAlready)
{
    TestBook book;
    OHMWRIGHT_ASSERT_OK(logPart(*book, charger(book)));
    LogEntry entry = charger(book);
    entry.price->purchase = book.records().all<Purchase>().rows().front().id;
    for (Money LogPrice::*shared : {&LogPrice::freight, &LogPrice::duty, &LogPrice::tax}) {
        LogEntry one = entry;
        one.price->freight = one.price->duty = one.price->tax = {};
        (*one.price).*shared = Money(2500, *Currency::fromCode(u"GBP"));
        const Result<Id<Part>> id = logPart(*book, one);
        ASSERT_FALSE(id.has_value());
        EXPECT_TRUE(id.error().sentence.contains(QLatin1String("joins an order")));
    }
    EXPECT_EQ(book.records().all<Part>().size(), 1U);
    entry.price->freight = entry.price->duty = entry.price->tax = {};
    OHMWRIGHT_ASSERT_OK(logPart(*book, entry));
    EXPECT_EQ(book.records().all<Purchase>().size(), 1U);
    EXPECT_EQ(book.records().all<PurchaseItem>().size(), 2U);
}

TEST(LogPart, TakesTheNewestDayRate)
{
    TestBook book;
    DayRate rate;
    rate.currency = *Currency::fromCode(u"GBP");
    for (const auto &[day, text] :
         {std::pair(QDate(2026, 5, 1), u"1.15"), std::pair(QDate(2026, 6, 1), u"1.18"),
          std::pair(QDate(2026, 7, 1), u"1.2")}) {
        rate.on = day;
        rate.rate = *Rate::parse(text, NumberStyle::pointDecimal());
        book.add(rate);
    }
    LogEntry entry = charger(book);
    entry.price->rate.reset();
    OHMWRIGHT_ASSERT_OK(logPart(*book, entry));
    EXPECT_EQ(book.records().all<Purchase>().rows().front().rate.print(), QStringLiteral("1.18"));
}

} // namespace
} // namespace ohmwright
