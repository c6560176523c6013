// SPDX-License-Identifier: GPL-3.0-or-later
// Options of an open choice side by side, in the plan made by hand (six_tasks.h).
#include "core/forecast/choices.h"
#include "core/parts/options.h"
#include "tests/core/forecast/six_tasks.h"

namespace ohmwright::forecast {
namespace {

class ChoicesOfSixTasks : public testing::Test
{
protected:
    SixTasks m_six;
};

// Rivets take two hours and no waiting, glue as planned by hand: both end on day 15. Rivets may be
// begun on Saturday 27 (day 12) at the latest, for Tuesday is the fitting's; glue then too, as it
// must cure till then.
TEST_F(ChoicesOfSixTasks, optionsStandSideBySideWithADayToDecideBy)
{
    Choice choice;
    choice.key = QStringLiteral("joint");
    choice.question = QStringLiteral("Glue or rivets");
    const Id<Choice> id = m_six.book.add(choice);
    Id<ChoiceOption> options[2];
    for (int i = 0; i < 2; ++i) {
        ChoiceOption option;
        option.choice = id;
        option.key = i == 0 ? QStringLiteral("glue") : QStringLiteral("rivets");
        option.name = option.key;
        options[i] = m_six.book.add(option);
    }
    m_six.change<Task>(m_six.glue, [&](Task &t) { t.option = options[0]; });
    const Id<Task> rivets =
        m_six.add("rivets", 120, {m_six.strip}, [&](Task &t) { t.option = options[1]; });
    TaskNeed need;
    need.task = m_six.rolling;
    need.kind = NeedKind::Task;
    need.after = rivets;
    m_six.book.add(need);
    Part bolts = namedPart(QStringLiteral("Rivets"), PartState::Wanted, PartKind::Hardware);
    bolts.estimate = euros(2500);
    bolts.option = options[1];
    m_six.book.add(bolts);
    Settings settings;
    settings.samples = 100;
    const std::vector<ChoiceOutlook> open = openChoices(m_six.book.records(), kToday, settings, 80);
    ASSERT_EQ(open.size(), 1U);
    ASSERT_EQ(open[0].options.size(), 2U);
    for (const OptionOutlook &option : open[0].options) {
        EXPECT_EQ(option.openTasks, 1);
        EXPECT_EQ(option.ready80, 15);
        EXPECT_EQ(option.startBy, 12);
    }
    EXPECT_EQ(open[0].decideBy, 12);
    EXPECT_EQ(open[0].options[0].cost, euros(0));
    EXPECT_EQ(open[0].options[1].cost, euros(2500));
    OHMWRIGHT_ASSERT_OK(takeOption(*m_six.book, options[1], QStringLiteral(" no curing ")));
    const Choice decided = *m_six.book.records().find(id);
    EXPECT_EQ(decided.taken, options[1]);
    EXPECT_EQ(decided.decidedOn, m_six.book.clock.today());
    EXPECT_EQ(decided.because, QStringLiteral("no curing"));
    EXPECT_FALSE(takeOption(*m_six.book, options[0], {})) << "decided once";
    EXPECT_FALSE(takeOption(*m_six.book, Id<ChoiceOption>(12345), {}));
    OHMWRIGHT_ASSERT_OK(m_six.book->undo());
    EXPECT_FALSE(m_six.book.records().find(id)->taken) << "one edit";
    OHMWRIGHT_ASSERT_OK(m_six.book->redo());
    EXPECT_TRUE(openChoices(m_six.book.records(), kToday, settings, 80).empty());
    EXPECT_TRUE(m_six.book.records().find(m_six.glue)) << "the loser stays for the record";
}

} // namespace
} // namespace ohmwright::forecast
