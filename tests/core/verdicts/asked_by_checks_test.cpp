// SPDX-License-Identifier: GPL-3.0-or-later
// A rating that only a check asks for and nobody knows is an open question too.
#include "core/verdicts/asked_by_checks.h"
#include "core/verdicts/edit_input.h"
#include "core/verdicts/input_address.h"
#include "core/verdicts/judge_book.h"
#include "tests/support/demo_book.h"
#include "tests/support/test_book.h"

#include <gmock/gmock.h>

namespace ohmwright {
namespace {

class AskedByChecks : public testing::Test
{
protected:
    AskedByChecks() { cable = book.add(namedPart(QStringLiteral("Phase cables"))); }

    // A check that does not know the peak current the part takes.
    Check asking(const char *title) const
    {
        Check check;
        check.title = QString::fromUtf8(title);
        CheckInput input;
        input.origin.name = QStringLiteral("peak current limit of Phase cables");
        input.origin.field =
            print(RatingAddress{book.records().find(cable)->key, peak, std::nullopt});
        check.inputs.push_back(input);
        check.unknowns << input.origin.name;
        return check;
    }

    const FigureName peak{RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak,
                          CurrentKind::Ac};
    TestBook book;
    Id<Part> cable;
};

TEST_F(AskedByChecks, ARatingACheckCannotDoWithoutIsAQuestionOnceWithAllWhoAsk)
{
    const auto asked = askedByChecks(book.records(), {asking("Phases"), asking("Fuse")});
    ASSERT_EQ(asked.size(), 1U);
    EXPECT_EQ(asked[0].part, cable);
    EXPECT_EQ(asked[0].figure, peak);
    EXPECT_EQ(asked[0].askedBy,
              (QStringList{QStringLiteral("check Phases"), QStringLiteral("check Fuse")}));
}

TEST_F(AskedByChecks, WhatIsKnownOrGoneOrNoRatingIsNone)
{
    Check check = asking("Phases");
    check.unknowns.clear();
    EXPECT_TRUE(askedByChecks(book.records(), {check}).empty());
    check = asking("Phases");
    check.inputs[0].origin.field = print(FigureAddress{QStringLiteral("vehicle.mass"), {}, {}});
    EXPECT_TRUE(askedByChecks(book.records(), {check}).empty());
    Rating rating;
    rating.part = cable;
    rating.quantity = RatedQuantity::Current;
    rating.basis = RatingBasis::Peak;
    rating.current = CurrentKind::Ac;
    rating.value = amount("300 A");
    book.add(rating);
    EXPECT_TRUE(askedByChecks(book.records(), {asking("Phases")}).empty());
}

TEST_F(AskedByChecks, TheSameFigureAskedForByACircuitIsJoinedToIt)
{
    Question circuit;
    circuit.part = cable;
    circuit.figure = peak;
    circuit.askedBy << QStringLiteral("circuit Phases");
    Question mass = circuit;
    mass.figure = {RatedQuantity::Mass, RatingKind::Actual, RatingBasis::Nominal, std::nullopt};
    const auto both =
        joined(book.records(), {mass, circuit}, askedByChecks(book.records(), {asking("Phases")}));
    ASSERT_EQ(both.size(), 2U);
    EXPECT_EQ(both[0].figure, peak);
    EXPECT_EQ(both[0].askedBy.size(), 2);
}

TEST_F(AskedByChecks, WhatWasAnsweredOrTakenOutSinceIsNoLongerJoined)
{
    const auto asked = askedByChecks(book.records(), {asking("Phases")});
    ASSERT_EQ(joined(book.records(), {}, asked).size(), 1U);
    OHMWRIGHT_ASSERT_OK(movePart(*book, cable, PartState::Scrapped, book.clock.today()));
    EXPECT_TRUE(joined(book.records(), {}, asked).empty());
}

TEST_F(AskedByChecks, FoundOutFromTheCheckOrFromThePartItIsOneTask)
{
    const Check check = asking("Phases");
    EXPECT_FALSE(isBeingFoundOut(book.records(), check, check.unknowns.front()));
    const auto fromCheck = findOut(*book, check, check.unknowns.front());
    OHMWRIGHT_ASSERT_OK(fromCheck);
    EXPECT_TRUE(isBeingFoundOut(book.records(), check, check.unknowns.front()));
    const auto fromPart = makeFindOutTask(*book, askedByChecks(book.records(), {check}).front());
    OHMWRIGHT_ASSERT_OK(fromPart);
    EXPECT_EQ(*fromPart, *fromCheck);
}

// Every unknown input of the demo's checks that is a rating is on the list, and nothing else.
TEST(AskedByChecksOfTheDemo, EveryUnknownRatingIsAsked)
{
    const Records records = demoRecords();
    const std::vector<Check> checks = judgeBook(records, QDate(2026, 9, 6));
    const auto all = joined(records, openQuestions(records), askedByChecks(records, checks));
    EXPECT_GT(all.size(), openQuestions(records).size()) << "some only a check asks";
    for (const Check &check : checks)
        for (const CheckInput &input : check.inputs) {
            const auto question = questionBehind(records, check, input);
            if (!question)
                continue;
            EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const Question &one) {
                return one.part == question->part && one.figure == question->figure;
            })) << input.origin.name.toStdString();
        }
}

} // namespace
} // namespace ohmwright
