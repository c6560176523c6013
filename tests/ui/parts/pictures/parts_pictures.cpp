// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright_parts_pictures FOLDER: draws the Parts page with the demo's build, light and dark, as
// PNG files. QT_SCALE_FACTOR=2 gives the same at 200 %.
#include "core/interchange/interchange.h"
#include "tests/support/fake_outside.h"
#include "tests/support/fixed_clock.h"
#include "ui/parts/compare_page.h"
#include "ui/parts/log_sheet.h"
#include "ui/parts/part_detail.h"
#include "ui/parts/parts_list.h"
#include "ui/parts/parts_page.h"
#include "ui/parts/rating_line.h"
#include "ui/shell/shell_window.h"
#include "ui/shell/theme.h"
#include "ui/widgets/field.h"

#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QFile>
#include <QLineEdit>
#include <QPixmap>
#include <QScrollArea>
#include <QScrollBar>
#include <QTest>

#include "resources/resources.h"
#include <cstdio>

using namespace ohmwright;
using namespace ohmwright::ui;

namespace {

// The part with most to say.
QString fullestPart(const Records &records)
{
    QString key;
    std::size_t most = 0;
    for (const Part &part : records.all<Part>()) {
        const std::size_t much = records.of<Rating>(part.id).size() * 2 +
                                 records.of<Connection>(part.id).size() + (part.bought ? 1 : 0);
        if (much > most) {
            most = much;
            key = part.key;
        }
    }
    return key;
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
    auto book = Book::create({}, QStringLiteral("Demo"), Currency(), clock);
    QFile file(QStringLiteral(OHMWRIGHT_SOURCE_DIR "/demo/build.json"));
    if (!book || !file.open(QIODevice::ReadOnly))
        return 2;
    auto records = parse(file.readAll(), idsBefore(clock.nowUtc()));
    if (!records) {
        std::fprintf(stderr, "%s\n", qPrintable(records.error().sentence));
        return 2;
    }
    records->all<Attachment>().assign({}); // their bytes are drawn elsewhere
    const Outcome loaded =
        (*book)->edit(QStringLiteral("load"), [&] { return (*book)->replaceAll(*records); });
    if (!loaded) {
        std::fprintf(stderr, "%s\n", qPrintable(loaded.error().sentence));
        return 2;
    }
    FakeOutside outside;
    for (const Shade shade : {Shade::Light, Shade::Dark}) {
        Theme theme(shade);
        theme.applyTo(app);
        ShellWindow shell(theme);
        auto *page = new PartsPage(**book, theme, outside);
        shell.addPage(page, QStringLiteral("Parts"), QStringLiteral("parts"),
                      QStringLiteral("parts"));
        shell.resize(1280, 800);
        shell.show();
        const QString name =
            shade == Shade::Light ? QStringLiteral("light") : QStringLiteral("dark");
        const auto draw = [&](const char *what) {
            QTest::qWait(120);
            shell.grab().save(folder.filePath(
                QString(name + u'-' + QString::fromLatin1(what) + QStringLiteral(".png"))));
        };
        page->showPart(fullestPart((*book)->records()));
        draw("top");
        QScrollBar *bar = page->detail().verticalScrollBar();
        for (int at = 1; at * 700 < bar->maximum() + 700 && at < 6; ++at) {
            bar->setValue(at * 700);
            draw(qPrintable(QStringLiteral("down%1").arg(at)));
        }
        page->list().findChildren<QComboBox *>().back()->setCurrentIndex(2);
        draw("assemblies");
        const Records &all = (*book)->records();
        const auto ofType = [&](const char *key) -> ComparedId {
            return all.byKey<PartType>(QString::fromLatin1(key))->id;
        };
        page->showRecord(QStringLiteral("part_type"), QStringLiteral("kestrin-0448-a"));
        draw("type");
        page->compare(ofType("kestrin-0448-a"));
        draw("compare-one");
        page->comparison().begin({ofType("kestrin-0448-a"), ofType("kestrin-0448-c")});
        draw("compare");
        page->comparison().begin({ofType("ardenholt-rk-40"), ofType("ardenholt-rk-60"),
                                  all.byKey<Part>(QStringLiteral("heater-relay"))->id,
                                  all.byKey<Part>(QStringLiteral("heater"))->id});
        draw("compare-four");
        page->showPart(QStringLiteral("heater-relay"));
        draw("replaced");
        page->detail().verticalScrollBar()->setValue(900);
        draw("replaced-down");
        page->openLogSheet();
        draw("sheet");
        for (RatingLine *line : page->logSheet().findChildren<RatingLine *>())
            qobject_cast<QLineEdit *>(line->valueField().editor())
                ->setText(QStringLiteral("340 A DC"));
        QTest::qWait(50);
        auto *sheet = page->logSheet().findChild<QScrollArea *>();
        sheet->verticalScrollBar()->setValue(sheet->verticalScrollBar()->maximum());
        draw("sheet-figures");
        page->logSheet().save();
        draw("sheet-problem");
    }
    return 0;
}
