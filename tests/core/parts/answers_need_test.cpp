// SPDX-License-Identifier: GPL-3.0-or-later
// Which ratings answer a task's need of a figure.
#include "core/parts/figures.h"
#include "core/parts/questions.h"
#include "tests/support/test_book.h"

namespace ohmwright {
namespace {

class AnswersNeed : public testing::Test
{
protected:
    AnswersNeed()
    {
        m_part = book.add(namedPart(QStringLiteral("Fuse")));
        m_task = book.add(namedTask(QStringLiteral("Fit the fuse")));
        need.task = m_task;
        need.kind = NeedKind::Figure;
        need.part = m_part;
        need.quantity = RatedQuantity::Voltage;
    }

    void on(CurrentKind current)
    {
        Circuit circuit;
        circuit.name = wordOf(current);
        circuit.current = current;
        Connection connection;
        connection.part = m_part;
        connection.circuit = book.add(circuit);
        book.add(connection);
    }

    void rated(std::optional<CurrentKind> current, RatingKind kind = RatingKind::Limit)
    {
        Rating rating;
        rating.part = m_part;
        rating.kind = kind;
        rating.basis = kind == RatingKind::Limit ? RatingBasis::Continuous : RatingBasis::Nominal;
        rating.current = current;
        rating.value = amount("500 V");
        book.add(rating);
    }

    bool answered() const
    {
        return answersNeed(book.records(), *book.records().find(m_part), need);
    }

    TestBook book;
    TaskNeed need;
    Id<Part> m_part;
    Id<Task> m_task;
};

TEST_F(AnswersNeed, anAcRatingDoesNotAnswerForAPartOnDcAlone)
{
    on(CurrentKind::Dc);
    rated(CurrentKind::Ac);
    EXPECT_FALSE(answered());
    rated(CurrentKind::Dc);
    EXPECT_TRUE(answered());
}

TEST_F(AnswersNeed, aLimitThatDoesNotSayWhichDoesNotAnswerWhereItMatters)
{
    on(CurrentKind::Dc);
    rated(std::nullopt);
    EXPECT_FALSE(answered());
    rated(std::nullopt, RatingKind::Actual);
    EXPECT_TRUE(answered());
}

TEST_F(AnswersNeed, anyKindAnswersWhereCircuitsDifferOrThereAreNone)
{
    rated(CurrentKind::Ac);
    EXPECT_TRUE(answered());
    on(CurrentKind::Dc);
    EXPECT_FALSE(answered());
    on(CurrentKind::Ac);
    EXPECT_TRUE(answered());
}

TEST_F(AnswersNeed, theOpenQuestionAsksForTheKindTheCircuitsHave)
{
    on(CurrentKind::Dc);
    rated(CurrentKind::Ac);
    book.add(need);
    const std::vector<Question> questions = openQuestions(book.records(), m_part);
    const auto asked = std::find_if(questions.begin(), questions.end(), [](const Question &q) {
        return q.figure.quantity == RatedQuantity::Voltage;
    });
    ASSERT_NE(asked, questions.end());
    EXPECT_EQ(asked->figure.current, CurrentKind::Dc);
    EXPECT_EQ(asked->askedBy.size(), 2) << "one question, from the circuit and from the task";
}

} // namespace
} // namespace ohmwright
