// SPDX-License-Identifier: GPL-3.0-or-later
// A choice's card: its options side by side, and taking one with a reason.
#include "tests/core/forecast/six_tasks.h"
#include "tests/ui/driving.h"
#include "ui/bench/bench_page.h"
#include "ui/cards/record_card.h"
#include "ui/cards/record_list.h"
#include "ui/cards/record_pages.h"
#include "ui/cards/records_panel.h"
#include "ui/forecast/choice_options.h"
#include "ui/forecast/forecaster.h"
#include "ui/widgets/chip_row.h"

#include <QAbstractButton>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>

namespace ohmwright::ui {
namespace {

using namespace driving;

class OptionsOnTheCard : public testing::Test
{
protected:
    OptionsOnTheCard() : m_forecaster(*m_six.book)
    {
        m_forecaster.setSamples(200);
        m_joint = choice("Glue or rivets", {"Glue", "Rivets"});
        m_six.change<Task>(m_six.glue, [&](Task &t) { t.option = option("Glue"); });
        Part rivets = namedPart(QStringLiteral("Rivets"), PartState::Wanted, PartKind::Hardware);
        rivets.option = option("Rivets");
        m_six.book.add(rivets);
        m_pages = std::make_unique<RecordPages>(*m_six.book, m_themed.theme, new QWidget,
                                                QStringLiteral("Chart"),
                                                QStringList{QStringLiteral("choice")});
        m_panel = &m_pages->panel(QStringLiteral("choice"));
        m_options = new ChoiceOptions(*m_six.book, m_forecaster, m_themed.theme);
        m_panel->card().addOnTop(m_options, [this](std::int64_t id) { m_options->showChoice(id); });
        m_pages->resize(1280, 900);
        m_pages->showPanel(QStringLiteral("choice"));
        showActive(*m_pages);
    }

    Id<Choice> choice(const char *question, std::initializer_list<const char *> options)
    {
        Choice row;
        row.question = QLatin1String(question);
        const Id<Choice> id = m_six.book.add(row);
        for (const char *name : options) {
            ChoiceOption one;
            one.choice = id;
            one.name = QLatin1String(name);
            m_six.book.add(one);
        }
        return id;
    }
    Id<ChoiceOption> option(const char *name) const
    {
        for (const ChoiceOption &one : m_six.book.records().all<ChoiceOption>())
            if (one.name == QLatin1String(name))
                return one.id;
        return {};
    }
    QStringList shown() const
    {
        QStringList texts;
        for (const auto *label : m_options->findChildren<QLabel *>())
            if (label->isVisible())
                texts << label->text();
        return texts;
    }
    QPushButton *take(const char *name) const
    {
        for (auto *button : m_options->findChildren<QPushButton *>())
            if (button->isVisible() &&
                button->accessibleName() == QStringLiteral("Take “%1”").arg(QLatin1String(name)))
                return button;
        return nullptr;
    }
    void waitForForecast()
    {
        ASSERT_TRUE(QTest::qWaitFor(
            [&] { return m_forecaster.latest() && !m_forecaster.isBehind(); }, 20'000));
        QApplication::processEvents();
    }
    QString chip() const
    {
        for (auto *one : m_pages->switches().findChildren<QAbstractButton *>())
            if (spoken(one).contains(QStringLiteral("Choices")))
                return spoken(one);
        return {};
    }
    QStringList listed() const
    {
        QStringList rows;
        for (int row = 0; row < m_panel->list().model()->rowCount(); ++row)
            rows << m_panel->list().model()->index(row, 0).data().toString();
        return rows;
    }

    Themed m_themed;
    SixTasks m_six;
    Id<Choice> m_joint;
    Forecaster m_forecaster;
    std::unique_ptr<RecordPages> m_pages;
    RecordsPanel *m_panel = nullptr;
    ChoiceOptions *m_options = nullptr;
};

TEST_F(OptionsOnTheCard, SayThatTheForecastIsBeingWorkedOutThenTellEachOption)
{
    EXPECT_TRUE(shown().join(u'|').contains(QStringLiteral("being worked out")));
    EXPECT_NE(take("Glue"), nullptr) << "one need not wait for it";
    waitForForecast();
    const QString told = shown().join(u'|');
    EXPECT_FALSE(told.contains(QStringLiteral("being worked out")));
    EXPECT_TRUE(told.contains(QStringLiteral("1 task, 2.0\u00A0h"))) << told.toStdString();
    EXPECT_TRUE(told.contains(QStringLiteral("0.00\u00A0EUR and 1 part unpriced")));
    EXPECT_TRUE(told.contains(QStringLiteral("rolling at 50\u00A0%")));
    EXPECT_TRUE(told.contains(QStringLiteral("30 Jun 2026")));
    EXPECT_TRUE(told.contains(QStringLiteral("decide by")));
    EXPECT_TRUE(told.contains(QStringLiteral("unknown")));
    ASSERT_NE(take("Rivets"), nullptr);
    EXPECT_TRUE(take("Rivets")->accessibleDescription().contains(QStringLiteral("unpriced")));
}

TEST_F(OptionsOnTheCard, OneIsTakenWithAReasonInOneEdit)
{
    waitForForecast();
    QPushButton *rivets = take("Rivets");
    ASSERT_NE(rivets, nullptr);
    rivets->setFocus();
    press(Qt::Key_Space);
    EXPECT_FALSE(m_six.book.records().find(m_joint)->taken) << "the reason is asked for first";
    type(QStringLiteral("no curing"));
    press(Qt::Key_Return);
    const Choice decided = *m_six.book.records().find(m_joint);
    EXPECT_EQ(decided.taken, option("Rivets"));
    EXPECT_EQ(decided.decidedOn, m_six.book.clock.today());
    EXPECT_EQ(decided.because, QStringLiteral("no curing"));
    EXPECT_TRUE(shown().join(u'|').contains(QStringLiteral("“Rivets” was taken on")));
    EXPECT_EQ(take("Rivets"), nullptr);
    OHMWRIGHT_ASSERT_OK(m_six.book->undo());
    EXPECT_FALSE(m_six.book.records().find(m_joint)->taken);
    EXPECT_NE(take("Rivets"), nullptr);
}

TEST_F(OptionsOnTheCard, EscapeLeavesItOpen)
{
    waitForForecast();
    take("Glue")->setFocus();
    press(Qt::Key_Space);
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), take("Glue"));
    EXPECT_FALSE(m_six.book.records().find(m_joint)->taken);
}

TEST_F(OptionsOnTheCard, AnOptionWithoutAnythingSaysSo)
{
    choice("A brand new one", {"This way", "That way", "A third", "A fourth"});
    m_panel->list().setFocus();
    press(Qt::Key_Up); // by name it stands first
    waitForForecast();
    EXPECT_EQ(shown().count(QStringLiteral("nothing belongs to it yet")), 4);
    EXPECT_NE(take("A fourth"), nullptr) << "in a further band";
}

TEST_F(OptionsOnTheCard, TheChipCountsWhatIsOpenAndTheListGroupsIt)
{
    EXPECT_TRUE(chip().contains(u'1')) << chip().toStdString();
    choice("Another", {"This", "That"});
    EXPECT_TRUE(chip().contains(u'2')) << chip().toStdString();
    m_six.change<Choice>(m_joint, [&](Choice &c) {
        c.taken = option("Glue");
        c.decidedOn = QDate(2026, 6, 3);
    });
    EXPECT_TRUE(chip().contains(u'1')) << chip().toStdString();
    EXPECT_EQ(listed(), (QStringList{QStringLiteral("Open"), QStringLiteral("Another"),
                                     QStringLiteral("Decided"), QStringLiteral("Glue or rivets")}));
    EXPECT_EQ(detailOf(m_six.book.records(), *recordKind("choice"), m_joint.value()),
              QStringLiteral("Glue, taken on 3 Jun 2026"));
    // headings are passed over
    m_panel->list().setFocus();
    m_panel->list().selectRow(3);
    press(Qt::Key_Up);
    EXPECT_EQ(m_panel->list().currentIndex().row(), 1);
    press(Qt::Key_Down);
    EXPECT_EQ(m_panel->list().currentIndex().row(), 3);
}

TEST_F(OptionsOnTheCard, AnOptionToPickIsToldByItsQuestionNotItsKey)
{
    for (const KnownName &known : knownOf(m_six.book.records(), *recordKind("choice_option")))
        EXPECT_EQ(known.detail, QStringLiteral("Glue or rivets"));
}

TEST_F(OptionsOnTheCard, TheBenchKeepsItsPlacesWhileTheForecastIsMadeAnew)
{
    BenchPage bench(*m_six.book, m_forecaster, m_themed.theme);
    bench.resize(1200, 900);
    showActive(bench);
    const auto says = [&](const char *part) {
        for (const auto *label : bench.findChildren<QLabel *>())
            if (label->isVisible() && label->text().contains(QLatin1String(part)))
                return true;
        return false;
    };
    EXPECT_TRUE(says("The days are being worked out."));
    waitForForecast();
    QTest::qWait(30);
    EXPECT_FALSE(says("being"));
    m_six.change<Task>(m_six.strip, [](Task &t) { t.note = QStringLiteral("gently"); });
    QTest::qWait(30);
    EXPECT_TRUE(says("Order by"));
    EXPECT_TRUE(says("being made anew"));
    EXPECT_FALSE(says("worked out"));
    waitForForecast();
    QTest::qWait(30);
    EXPECT_FALSE(says("being made anew"));
}

} // namespace
} // namespace ohmwright::ui
