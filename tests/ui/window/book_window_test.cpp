// SPDX-License-Identifier: GPL-3.0-or-later
// The whole window on a book, by keyboard: pages, logging from anywhere, find, undo, two windows.
#include "tests/support/fake_outside.h"
#include "tests/support/test_book.h"
#include "tests/support/test_folder.h"
#include "tests/ui/driving.h"
#include "ui/build_order/loom_view.h"
#include "ui/history/history_model.h"
#include "ui/history/history_window.h"
#include "ui/parts/log_sheet.h"
#include "ui/parts/parts_page.h"
#include "ui/shell/book_window.h"
#include "ui/shell/shell_window.h"
#include "ui/shell/theme.h"

#include <QAccessible>
#include <QApplication>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QTableView>
#include <QTest>

namespace ohmwright::ui {
namespace {

class BookWindowTest : public testing::Test
{
protected:
    BookWindowTest()
    {
        theme.applyTo(*qApp);
        {
            TestBook made(path);
            made.add(namedPart(QStringLiteral("Motor")));
            made.add(namedPart(QStringLiteral("Inverter")));
            made.add(namedTask(QStringLiteral("Drives"), true));
        }
        window = std::make_unique<BookWindow>(std::move(*Book::open(path, clock)), theme, outside);
        window->shell().resize(1280, 800);
        window->shell().show();
        window->shell().activateWindow();
        QTest::qWait(20);
    }
    void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier)
    {
        QWidget *to = QApplication::focusWidget();
        QTest::keyClick(to ? to : &window->shell(), key, with);
        QTest::qWait(1);
    }

    TestFolder folder;
    QString path = folder.filePath(QStringLiteral("van.ohmwright"));
    FixedClock clock;
    Theme theme;
    FakeOutside outside;
    std::unique_ptr<BookWindow> window;
};

TEST_F(BookWindowTest, OpensOnTheBenchAndTurnsPagesByKey)
{
    EXPECT_EQ(window->shell().currentPage(), QStringLiteral("bench"));
    const QStringList keys{QStringLiteral("bench"),       QStringLiteral("parts"),
                           QStringLiteral("build_order"), QStringLiteral("budget"),
                           QStringLiteral("checks"),      QStringLiteral("sheet")};
    for (int i = 5; i >= 0; --i) {
        press(static_cast<Qt::Key>(Qt::Key_1 + i), Qt::ControlModifier);
        EXPECT_EQ(window->shell().currentPage(), keys[i]);
    }
}

TEST_F(BookWindowTest, GoesToTheLoomAndTheTableWhenTheirPagesAreTurnedTo)
{
    press(Qt::Key_3, Qt::ControlModifier);
    EXPECT_NE(qobject_cast<LoomView *>(QApplication::focusWidget()), nullptr);
    press(Qt::Key_2, Qt::ControlModifier);
    ASSERT_NE(QApplication::focusWidget(), nullptr);
    EXPECT_STREQ(QApplication::focusWidget()->metaObject()->className(), "QTableView");
}

TEST_F(BookWindowTest, LogsAPartFromEveryPage)
{
    for (int page = 0; page < 6; ++page) {
        press(static_cast<Qt::Key>(Qt::Key_1 + page), Qt::ControlModifier);
        press(Qt::Key_L, Qt::ControlModifier);
        EXPECT_EQ(window->shell().currentPage(), QStringLiteral("parts"));
        auto *parts = qobject_cast<PartsPage *>(window->shell().page(QStringLiteral("parts")));
        ASSERT_NE(parts, nullptr);
        EXPECT_TRUE(parts->logSheet().isVisible()) << "from page " << page;
        press(Qt::Key_Escape);
        EXPECT_FALSE(parts->logSheet().isVisible());
    }
}

// Along the window's own way through what is shown, not Qt's chain.
TEST_F(BookWindowTest, TheLogSheetGoesOnFromTheEvidenceToItsSource)
{
    press(Qt::Key_L, Qt::ControlModifier);
    const auto name = [] {
        return driving::spoken(QApplication::focusWidget());
    };
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("Inverter 2"));
    for (int i = 0; i < 30 && name() != QStringLiteral("Value"); ++i)
        press(Qt::Key_Tab);
    ASSERT_EQ(name(), QStringLiteral("Value"));
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("340 A"));
    QStringList after;
    for (int i = 0; i < 3; ++i) {
        press(Qt::Key_Tab);
        after << name();
    }
    // the first is the choice of evidence, which speaks its value
    EXPECT_EQ(after.mid(1),
              (QStringList{QStringLiteral("Source"), QStringLiteral("Read or measured on")}))
        << after.join(u'|').toStdString();
}

TEST_F(BookWindowTest, ShowsTheCheckAndFollowsItsRecords)
{
    const Result<Id<SafetySystem>> made = [&]() -> Result<Id<SafetySystem>> {
        Result<Id<SafetySystem>> id = Id<SafetySystem>();
        SafetySystem system;
        system.key = QStringLiteral("interlock");
        system.name = QStringLiteral("Interlock loop");
        const Outcome done = window->book().edit(QStringLiteral("Add"), [&]() -> Outcome {
            id = window->book().insert(system);
            return id ? Outcome() : Outcome(fail(id.error()));
        });
        return done ? id : Result<Id<SafetySystem>>(fail(done.error()));
    }();
    ASSERT_TRUE(made.has_value());
    press(Qt::Key_F, Qt::ControlModifier);
    for (const Qt::Key key : {Qt::Key_I, Qt::Key_N, Qt::Key_T, Qt::Key_E, Qt::Key_R, Qt::Key_L})
        QTest::keyClick(QApplication::focusWidget(), key);
    QTest::qWait(150);
    press(Qt::Key_Return);
    EXPECT_EQ(window->shell().currentPage(), QStringLiteral("checks"));
}

TEST_F(BookWindowTest, TellsTheHistoryByKeyAndFollowsTheBook)
{
    press(Qt::Key_H, Qt::ControlModifier);
    auto *history = window->shell().findChild<HistoryWindow *>();
    ASSERT_NE(history, nullptr);
    ASSERT_TRUE(history->isVisible());
    QAbstractItemModel &edits = *history->table().model();
    ASSERT_EQ(edits.rowCount(), 3);
    EXPECT_EQ(edits.index(0, HistoryModel::Edit).data().toString(), QStringLiteral("add"));
    EXPECT_TRUE(history->detail().startsWith(QStringLiteral("task “Drives” added")))
        << history->detail().toStdString();
    QTest::keyClick(&history->table(), Qt::Key_Down);
    EXPECT_TRUE(history->detail().contains(QStringLiteral("part “Inverter” added")))
        << history->detail().toStdString();
    EXPECT_EQ(history->focusWidget(), &history->table());

    ASSERT_TRUE(window->book().undo().has_value());
    QTest::qWait(20);
    EXPECT_EQ(edits.index(0, HistoryModel::Changed).data().toString(),
              QStringLiteral("Taken back."));
    EXPECT_TRUE(history->detail().contains(QStringLiteral("Inverter"))) << "the same edit is shown";
    QTest::keyClick(&history->table(), Qt::Key_Escape);
    EXPECT_FALSE(history->isVisible());
}

TEST_F(BookWindowTest, TellsTheHistoryOfOnePartFromItsCard)
{
    press(Qt::Key_2, Qt::ControlModifier);
    press(Qt::Key_Home);
    QPushButton *button = nullptr;
    for (auto *one : window->shell().findChildren<QPushButton *>())
        if (one->accessibleName().startsWith(QStringLiteral("History of ")))
            button = one;
    ASSERT_NE(button, nullptr);
    QTest::mouseClick(button, Qt::LeftButton);
    auto *history = window->shell().findChild<HistoryWindow *>();
    ASSERT_NE(history, nullptr);
    EXPECT_EQ(history->windowTitle(), button->accessibleName());
    EXPECT_EQ(history->table().model()->rowCount(), 1);
    QTest::keyClick(history->findChild<QPushButton *>(), Qt::Key_Space);
    EXPECT_EQ(history->table().model()->rowCount(), 3) << "of the whole book";
}

TEST_F(BookWindowTest, UndoesAndRedoesByKey)
{
    const std::size_t before = window->book().records().all<Task>().size();
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(window->book().records().all<Task>().size(), before - 1);
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(window->book().records().all<Task>().size(), before);
}

TEST_F(BookWindowTest, FindsAPartAndGoesToIt)
{
    press(Qt::Key_F, Qt::ControlModifier);
    for (const Qt::Key key : {Qt::Key_I, Qt::Key_N, Qt::Key_V, Qt::Key_E, Qt::Key_R})
        QTest::keyClick(QApplication::focusWidget(), key);
    QTest::qWait(150);
    press(Qt::Key_Return);
    EXPECT_EQ(window->shell().currentPage(), QStringLiteral("parts"));
}

TEST_F(BookWindowTest, SeesWhatAnotherWindowChanged)
{
    {
        const auto other = Book::open(path, clock);
        ASSERT_TRUE(other.has_value());
        Seller seller;
        seller.key = seller.name = QStringLiteral("yard");
        ASSERT_TRUE((*other)
                        ->edit(QStringLiteral("Add"),
                               [&]() -> Outcome {
                                   const auto id = (*other)->insert(seller);
                                   return id ? Outcome() : Outcome(fail(id.error()));
                               })
                        .has_value());
    }
    QTest::qWait(1300);
    EXPECT_EQ(window->book().records().all<Seller>().size(), 1U);
    EXPECT_FALSE(window->shell().messages().sentence().isEmpty());
}

// Full HD at twice the size is 960 by 540: pages scroll down there, but not sideways.
TEST_F(BookWindowTest, NoPageScrollsSidewaysOnFullHdAtTwiceTheSize)
{
    window->shell().resize(960, 540);
    for (int page = 0; page < 6; ++page) {
        press(static_cast<Qt::Key>(Qt::Key_1 + page), Qt::ControlModifier);
        QTest::qWait(30);
        const QWidget *shown = window->shell().page(window->shell().currentPage());
        const auto *scroll = qobject_cast<QScrollArea *>(shown->parentWidget()->parentWidget());
        ASSERT_NE(scroll, nullptr);
        EXPECT_EQ(scroll->horizontalScrollBar()->maximum(), 0)
            << "page " << page + 1 << ": at least " << shown->minimumSizeHint().width();
    }
}

// What can be stood in has a role a screen reader has a word for.
TEST_F(BookWindowTest, PagesToReadAreSaidToBeDocuments)
{
    for (const Qt::Key page : {Qt::Key_5, Qt::Key_6}) {
        press(page, Qt::ControlModifier);
        QTest::qWait(20);
        int documents = 0;
        for (QWidget *area : window->shell().findChildren<QAbstractScrollArea *>()) {
            if (!area->isVisible() || !(area->focusPolicy() & Qt::TabFocus))
                continue;
            QAccessibleInterface *spoken = QAccessible::queryAccessibleInterface(area);
            ASSERT_NE(spoken, nullptr);
            EXPECT_NE(spoken->role(), QAccessible::Client)
                << spoken->text(QAccessible::Name).toStdString();
            documents += spoken->role() == QAccessible::Document;
        }
        EXPECT_EQ(documents, 1);
    }
}

// Everything a person can reach by Tab says what it is.
TEST_F(BookWindowTest, EveryFocusableControlHasAName)
{
    for (int page = 0; page < 6; ++page) {
        press(static_cast<Qt::Key>(Qt::Key_1 + page), Qt::ControlModifier);
        QTest::qWait(20);
        for (QWidget *control : window->shell().findChildren<QWidget *>()) {
            if (!control->isVisible() || !(control->focusPolicy() & Qt::TabFocus))
                continue;
            QAccessibleInterface *spoken = QAccessible::queryAccessibleInterface(control);
            ASSERT_NE(spoken, nullptr);
            bool named = !spoken->text(QAccessible::Name).isEmpty();
            for (const auto &relation : spoken->relations(QAccessible::Label))
                named =
                    named || (relation.first && !relation.first->text(QAccessible::Name).isEmpty());
            EXPECT_TRUE(named) << "page " << page + 1 << ": " << control->metaObject()->className();
        }
    }
}

} // namespace
} // namespace ohmwright::ui
