// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/driving.h"
#include "ui/shell/find_line.h"
#include "ui/shell/keys_window.h"
#include "ui/shell/shell_window.h"
#include "ui/shell/thumb_index.h"

#include <QAction>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QScrollArea>
#include <QSignalSpy>
#include <QTableView>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>

#include <gtest/gtest.h>

using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

struct SamplePage : public QWidget
{
    SamplePage()
    {
        auto *column = new QVBoxLayout(this);
        column->addWidget(first);
        column->addWidget(second);
        column->addStretch(1);
        first->setAccessibleName("first");
        second->setAccessibleName("second");
    }

    QLineEdit *first = new QLineEdit;
    QLineEdit *second = new QLineEdit;
};

class AShell : public testing::Test
{
protected:
    AShell()
    {
        shell.addPage(bench, "Bench", "bench", "bench");
        shell.addPage(parts, "Parts", "parts", "parts");
        shell.addPage(new QLabel("nothing here takes the focus"), "Checks", "checks", "checks");
        shell.setBookTitle("The grey van");
        shell.setUndoStep("log part “Inverter”");
        shell.resize(1000, 700);
        showActive(shell);
        bench->first->setFocus();
    }

    QToolButton *tool(const QString &name)
    {
        for (auto *button : shell.findChildren<QToolButton *>()) {
            if (spoken(button).startsWith(name))
                return button;
        }
        return nullptr;
    }

    Themed themed;
    ShellWindow shell{themed.theme};
    SamplePage *bench = new SamplePage;
    SamplePage *parts = new SamplePage;
};

} // namespace

TEST_F(AShell, turnsPagesWithControlOrAltAndANumber)
{
    const QSignalSpy shown(&shell, &ShellWindow::pageShown);
    press(Qt::Key_2, Qt::ControlModifier);
    EXPECT_EQ(shell.currentPage(), QStringLiteral("parts"));
    EXPECT_EQ(QApplication::focusWidget(), parts->first);
    press(Qt::Key_1, Qt::AltModifier);
    EXPECT_EQ(shell.currentPage(), QStringLiteral("bench"));
    ASSERT_EQ(shown.count(), 2);
    EXPECT_EQ(shown.at(0).at(0).toString(), QStringLiteral("parts"));
}

TEST_F(AShell, comesBackToTheControlOneWasIn)
{
    bench->second->setFocus();
    shell.showPage("parts");
    shell.showPage("bench");
    EXPECT_EQ(QApplication::focusWidget(), bench->second);
    shell.showPage("no such page");
    EXPECT_EQ(shell.currentPage(), QStringLiteral("bench"));
}

TEST_F(AShell, putsTheFocusOnTheIndexWhenAPageHasNothingToTakeIt)
{
    press(Qt::Key_3, Qt::ControlModifier);
    EXPECT_EQ(shell.currentPage(), QStringLiteral("checks"));
    EXPECT_EQ(QApplication::focusWidget(), &shell.thumbIndex());
    press(Qt::Key_Up);
    EXPECT_EQ(shell.currentPage(), QStringLiteral("parts"));
    EXPECT_EQ(QApplication::focusWidget(), &shell.thumbIndex()) << "arrows stay on the index";
    press(Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget(), parts->first);
}

TEST_F(AShell, goesWithTabFromTheTopLineOverThePageToTheIndex)
{
    ASSERT_NE(tool("Book"), nullptr);
    tool("Book")->setFocus();
    QList<QWidget *> stops;
    for (int i = 0; i < 6; ++i) {
        press(Qt::Key_Tab);
        stops << QApplication::focusWidget();
    }
    // redo is unavailable
    EXPECT_EQ(stops, (QList<QWidget *>{&shell.findLine(), tool("Undo"), tool("Dark"), bench->first,
                                       bench->second, &shell.thumbIndex()}));
}

TEST_F(AShell, keepsThatOrderForControlsAPageAddsLater)
{
    auto *late = new QPushButton("Late");
    bench->layout()->addWidget(late);
    late->show();
    bench->second->setFocus();
    press(Qt::Key_Tab);
    EXPECT_EQ(QApplication::focusWidget(), late);
}

TEST_F(AShell, namesEverythingThatTakesTheFocus)
{
    shell.setRedoStep("delete part “Pump”");
    shell.messages().sayWithAction("Logged.", "Show it", [] {});
    int named = 0;
    for (auto *widget : shell.findChildren<QWidget *>()) {
        if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible())
            continue;
        EXPECT_FALSE(spoken(widget).isEmpty()) << widget->metaObject()->className();
        ++named;
    }
    EXPECT_GE(named, 10);
    EXPECT_EQ(tool("Book")->accessibleName(), QStringLiteral("Book: The grey van"));
}

TEST_F(AShell, findsWithControlFAndWithASlashOutsideOfText)
{
    press(Qt::Key_F, Qt::ControlModifier);
    EXPECT_EQ(QApplication::focusWidget(), &shell.findLine());
    shell.thumbIndex().setFocus();
    press(Qt::Key_Slash);
    EXPECT_EQ(QApplication::focusWidget(), &shell.findLine());
    bench->first->setFocus();
    type("1/2");
    EXPECT_EQ(bench->first->text(), QStringLiteral("1/2"));
}

TEST_F(AShell, offersUndoAndRedoWithTheStepsText)
{
    const QSignalSpy undo(&shell, &ShellWindow::undoWanted);
    const QSignalSpy redo(&shell, &ShellWindow::redoWanted);
    EXPECT_EQ(tool("Undo")->toolTip(), QStringLiteral("Undo: log part “Inverter” (Ctrl+Z)"));
    EXPECT_EQ(tool("Nothing to redo")->isEnabled(), false);
    shell.thumbIndex().setFocus();
    press(Qt::Key_Z, Qt::ControlModifier);
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(undo.count(), 1);
    EXPECT_EQ(redo.count(), 0);
    shell.setRedoStep("log part “Inverter”");
    press(Qt::Key_Y, Qt::ControlModifier);
    EXPECT_EQ(redo.count(), 1);
    shell.setUndoStep({});
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(undo.count(), 1);
}

TEST_F(AShell, leavesUndoInALineToTheLine)
{
    const QSignalSpy undo(&shell, &ShellWindow::undoWanted);
    type("Pump");
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(undo.count(), 0);
    EXPECT_TRUE(bench->first->text().isEmpty());
}

TEST_F(AShell, switchesBetweenLightAndDarkByItsButton)
{
    tool("Dark")->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(themed.theme.shade(), Shade::Dark);
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return shell.palette().color(QPalette::Window) == tokensOf(Shade::Dark).paper; }));
    ASSERT_NE(tool("Light"), nullptr);
    press(Qt::Key_Space);
    EXPECT_EQ(themed.theme.shade(), Shade::Light);
}

TEST_F(AShell, saysASentenceThatEscapeDismisses)
{
    shell.say("Copied to the shelf.");
    EXPECT_EQ(shell.messages().sentence(), QStringLiteral("Copied to the shelf."));
    EXPECT_EQ(QApplication::focusWidget(), bench->first) << "a message takes nothing away";
    press(Qt::Key_Escape);
    EXPECT_TRUE(shell.messages().sentence().isEmpty());
    shell.say("The disk is full.", Tone::Problem);
    EXPECT_EQ(shell.messages().sentence(), QStringLiteral("Problem: The disk is full."));
}

TEST_F(AShell, doesTheOneThingAMessageOffersAndGivesTheFocusBack)
{
    int done = 0;
    shell.messages().sayWithAction("Logged.", "Show it", [&] { ++done; });
    press(Qt::Key_F6); // page to index
    press(Qt::Key_F6); // index to message
    press(Qt::Key_Space);
    EXPECT_EQ(done, 1);
    EXPECT_TRUE(shell.messages().sentence().isEmpty());
    EXPECT_EQ(QApplication::focusWidget(), bench->first);
}

TEST_F(AShell, goesRoundItsZonesBothWays)
{
    press(Qt::Key_F6);
    EXPECT_EQ(QApplication::focusWidget(), &shell.thumbIndex());
    press(Qt::Key_F6);
    EXPECT_EQ(QApplication::focusWidget(), &shell.findLine());
    press(Qt::Key_F6);
    EXPECT_EQ(QApplication::focusWidget(), bench->first);
    press(Qt::Key_F6, Qt::ShiftModifier);
    EXPECT_EQ(QApplication::focusWidget(), &shell.findLine());
}

TEST_F(AShell, opensTheBookMenuByKeyAndKeepsItsShortcutsEverywhere)
{
    QAction copy("Save a &copy…");
    copy.setShortcut(QKeySequence("Ctrl+Shift+S"));
    const QSignalSpy copied(&copy, &QAction::triggered);
    shell.setBookActions({&copy});
    press(Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(copied.count(), 1);
    bool opened = false;
    QTimer::singleShot(50, &shell, [&] {
        if (auto *menu = qobject_cast<QMenu *>(QApplication::activePopupWidget())) {
            opened = true;
            QTest::keyClick(menu, Qt::Key_Down);
            QTest::keyClick(menu, Qt::Key_Return);
        }
    });
    press(Qt::Key_F10);
    EXPECT_TRUE(opened);
    EXPECT_EQ(copied.count(), 2);
}

TEST_F(AShell, neverCutsAPageOffButScrollsIt)
{
    bench->setMinimumSize(900, 900);
    shell.resize(560, 400);
    QTest::qWait(1);
    EXPECT_TRUE(shell.thumbIndex().isCompact());
    EXPECT_GE(bench->width(), 900);
    shell.resize(1280, 800);
    QTest::qWait(1);
    EXPECT_FALSE(shell.thumbIndex().isCompact());
}

TEST_F(AShell, tellsItsKeysByF1AndGoesBackByEscape)
{
    press(Qt::Key_F1);
    auto *keys = shell.findChild<KeysWindow *>();
    ASSERT_NE(keys, nullptr);
    ASSERT_TRUE(keys->isVisible());
    const QAbstractItemModel &lines = *keys->table().model();
    bool found = false;
    for (int row = 0; row < lines.rowCount(); ++row)
        found = found || lines.index(row, 1).data().toString() == QStringLiteral("log a part");
    EXPECT_TRUE(found);
    QTest::keyClick(&keys->table(), Qt::Key_Escape);
    EXPECT_FALSE(keys->isVisible());
    showActive(shell);
    press(Qt::Key_F1);
    EXPECT_EQ(shell.findChildren<KeysWindow *>().size(), 1) << "the same one comes again";
}

TEST_F(AShell, showsATitleWithAnAmpersandAsItIs)
{
    shell.setBookTitle("Nuts & volts");
    EXPECT_EQ(tool("Book")->text(), QStringLiteral("Nuts && volts"));
    EXPECT_EQ(shell.windowTitle(), QStringLiteral("Nuts & volts – Ohmwright"));
    shell.setBookTitle({});
    EXPECT_EQ(tool("Book")->accessibleName(), QStringLiteral("Book: No book open"));
}
