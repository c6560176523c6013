// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright_cards_pictures FOLDER: draws the lists with their cards where they stand in the window,
// with the demo's build, light and dark, as PNG files. QT_SCALE_FACTOR=2 gives the same at 200 %.
#include "core/interchange/interchange.h"
#include "tests/support/fake_outside.h"
#include "tests/support/fixed_clock.h"
#include "ui/budget/budget_page.h"
#include "ui/cards/card_form.h"
#include "ui/cards/card_stack.h"
#include "ui/cards/record_card.h"
#include "ui/cards/record_pages.h"
#include "ui/cards/records_panel.h"
#include "ui/parts/part_detail.h"
#include "ui/parts/parts_page.h"
#include "ui/sheet/sheet_page.h"
#include "ui/shell/book_window.h"
#include "ui/shell/shell_window.h"
#include "ui/shell/theme.h"
#include "ui/widgets/entry_form.h"

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QLineEdit>
#include <QPixmap>
#include <QScrollArea>
#include <QScrollBar>
#include <QTableView>
#include <QTest>

#include "resources/resources.h"
#include <cstdio>

using namespace ohmwright;
using namespace ohmwright::ui;

namespace {

std::unique_ptr<Book> demo(const Clock &clock)
{
    auto book = Book::create({}, QStringLiteral("Demo"), Currency(), clock);
    QFile file(QStringLiteral(OHMWRIGHT_SOURCE_DIR "/demo/build.json"));
    if (!book || !file.open(QIODevice::ReadOnly))
        return nullptr;
    auto records = parse(file.readAll(), idsBefore(clock.nowUtc()));
    if (!records)
        return nullptr;
    const auto loaded =
        (*book)->edit(QStringLiteral("load"), [&] { return (*book)->replaceAll(*records); });
    return loaded ? std::move(*book) : nullptr;
}

QString firstKey(const Book &book, const char *table)
{
    const RecordKind *kind = recordKind(table);
    const auto ids = kind->ids(book.records());
    return ids.empty() ? QString() : kind->key(book.records(), ids.front());
}

} // namespace

int main(int argc, char **argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    registerResources();
    QApplication app(argc, argv);
    const QDir folder(argc > 1 ? QString::fromLocal8Bit(argv[1]) : QStringLiteral("."));
    const FixedClock clock(QDate(2026, 6, 15));
    FakeOutside outside;
    for (const Shade shade : {Shade::Light, Shade::Dark}) {
        Theme theme(shade);
        theme.applyTo(app);
        auto made = demo(clock);
        if (!made)
            return 2;
        BookWindow window(std::move(made), theme, outside);
        Book &book = window.book();
        ShellWindow &shell = window.shell();
        shell.resize(1280, 800);
        shell.show();
        const QString name =
            shade == Shade::Light ? QStringLiteral("light") : QStringLiteral("dark");
        const auto draw = [&](const char *what, int wait = 150) {
            QTest::qWait(wait);
            shell.grab().save(folder.filePath(
                QString(name + u'-' + QString::fromLatin1(what) + QStringLiteral(".png"))));
        };
        const auto scrollDown = [](QWidget &card) {
            for (QWidget *over = card.parentWidget(); over; over = over->parentWidget())
                if (auto *area = qobject_cast<QScrollArea *>(over)) {
                    area->verticalScrollBar()->setValue(area->verticalScrollBar()->maximum());
                    return;
                }
        };

        auto *parts = qobject_cast<PartsPage *>(shell.page(QStringLiteral("parts")));
        shell.showPage(QStringLiteral("parts"));
        draw("parts");
        for (const char *table : {"part_type", "donor", "seller", "circuit"}) {
            const QString key = QString::fromLatin1(table);
            parts->showRecord(key, firstKey(book, table));
            draw(table);
            RecordsPanel &panel = parts->pages().panel(key);
            QTest::qWait(50);
            scrollDown(panel.card());
            draw(qPrintable(QString(key + QStringLiteral("-down"))));
        }
        parts->showRecord(QStringLiteral("branch"), firstKey(book, "branch"));
        QTest::qWait(50);
        scrollDown(parts->pages().panel(QStringLiteral("circuit")).card());
        draw("branch");
        RecordsPanel &donors = parts->pages().showPanel(QStringLiteral("donor"));
        donors.beginNew();
        donors.card().save();
        draw("donor-problem");
        donors.card().discard();
        parts->pages().showPanel(QStringLiteral("seller")).list().setFocus();
        QTest::keyClick(&parts->pages().panel(QStringLiteral("seller")).list(), Qt::Key_Delete);
        draw("seller-named");

        auto *sheet = qobject_cast<SheetPage *>(shell.page(QStringLiteral("sheet")));
        shell.showPage(QStringLiteral("sheet"));
        draw("sheet", 2500);
        for (const char *table : {"build", "vehicle", "lost_function", "mass_entry", "letter",
                                  "test_record", "attachment"}) {
            sheet->showRecord(QString::fromLatin1(table), {});
            draw(qPrintable(QString(QStringLiteral("sheet-") + QString::fromLatin1(table))), 300);
        }

        auto *budget = qobject_cast<BudgetPage *>(shell.page(QStringLiteral("budget")));
        shell.showPage(QStringLiteral("budget"));
        auto *entries = budget->findChildren<QTableView *>().at(1);
        entries->selectRow(1);
        draw("budget");
        budget->showRecord(QStringLiteral("purchase"), firstKey(book, "purchase"));
        draw("purchase");
        scrollDown(budget->pages().panel(QStringLiteral("purchase")).card());
        draw("purchase-down");
        budget->showRecord(QStringLiteral("purchase_item"), firstKey(book, "purchase_item"));
        QTest::qWait(50);
        scrollDown(budget->pages().panel(QStringLiteral("purchase")).card());
        draw("item");
        budget->pages().showPanel(QStringLiteral("day_rate"));
        draw("day_rate");
    }
    return 0;
}
