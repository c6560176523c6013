// SPDX-License-Identifier: GPL-3.0-or-later
// Tab goes round the whole window on the demo book: on every page and every ledger it meets each
// control that is shown, once, and comes back; so does Shift+Tab, the other way round.
#include "core/cards/record_kind.h"
#include "tests/support/demo_book.h"
#include "tests/support/fake_outside.h"
#include "tests/support/test_book.h"
#include "tests/support/test_folder.h"
#include "tests/ui/driving.h"
#include "ui/cards/card_labels.h"
#include "ui/shell/book_window.h"
#include "ui/shell/shell_window.h"
#include "ui/shell/theme.h"
#include "ui/widgets/tab_order.h"

#include <QApplication>
#include <QTest>

#include <set>

namespace ohmwright::ui {
namespace {

class TabRound : public testing::Test
{
protected:
    TabRound()
    {
        {
            TestBook made(path);
            const Outcome loaded =
                made->edit(QStringLiteral("load"), [&] { return made->replaceAll(demoRecords()); });
            EXPECT_TRUE(loaded.has_value());
        }
        window = std::make_unique<BookWindow>(std::move(*Book::open(path, clock)), themed.theme,
                                              outside);
        driving::showActive(window->shell());
    }

    static void tab(Qt::KeyboardModifiers with = Qt::NoModifier)
    {
        QTest::keyClick(QApplication::focusWidget(), with ? Qt::Key_Backtab : Qt::Key_Tab, with);
    }
    static std::string nameOf(const QWidget *widget)
    {
        if (!widget)
            return "nothing";
        const QString name = QString::fromLatin1(widget->metaObject()->className()) + u' ' +
                             widget->accessibleName();
        return name.toStdString();
    }

    // From wherever the focus is; the names of what was left out in the failure.
    void goRound(const QString &place)
    {
        ShellWindow &shell = window->shell();
        for (const Qt::KeyboardModifiers with :
             {Qt::KeyboardModifiers(Qt::NoModifier), Qt::KeyboardModifiers(Qt::ShiftModifier)}) {
            constexpr int kMostSteps = 400;
            const QWidget *start = QApplication::focusWidget();
            std::set<const QWidget *> met;
            const QWidget *now = nullptr;
            for (int step = 0; now != start && step < kMostSteps; ++step) {
                tab(with);
                now = QApplication::focusWidget();
                ASSERT_NE(now, nullptr) << place.toStdString();
                ASSERT_TRUE(now->isVisible()) << place.toStdString() << ": " << nameOf(now);
                ASSERT_TRUE(met.insert(now).second)
                    << place.toStdString() << ": again at " << nameOf(now);
            }
            // what came into sight on the way, for a row was chosen, is met as well
            for (const QWidget *stop : tabStops(shell))
                EXPECT_TRUE(met.contains(stop))
                    << place.toStdString() << " never comes to " << nameOf(stop);
        }
    }

    TestFolder folder;
    QString path = folder.filePath(QStringLiteral("van.ohmwright"));
    FixedClock clock;
    driving::Themed themed;
    FakeOutside outside;
    std::unique_ptr<BookWindow> window;
};

TEST_F(TabRound, MeetsEveryControlOfEveryPage)
{
    for (const char *page : {"bench", "parts", "build_order", "budget", "checks", "sheet"}) {
        window->shell().showPage(QLatin1String(page));
        QTest::qWait(20);
        goRound(QLatin1String(page));
    }
}

TEST_F(TabRound, MeetsEveryControlOfEveryLedger)
{
    for (const CardLabels *labels : allCardLabels()) {
        const RecordKind &kind = *recordKind(labels->table);
        if (!kind.holders().empty() || kind.isSingle() ||
            kind.ids(window->book().records()).empty())
            continue;
        const QString table = QString::fromStdString(kind.table());
        const QString key =
            kind.key(window->book().records(), kind.ids(window->book().records()).front());
        emit window->shell().hitChosen(
            {{}, QStringLiteral("record:") + table + u':' + key, {}, {}, {}});
        QTest::qWait(5);
        goRound(table);
    }
}

} // namespace
} // namespace ohmwright::ui
