// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright_loom_pictures FOLDER: draws the build-order chart of an invented van, by chain and by
// date, light and dark, near and far, and on paper. QT_SCALE_FACTOR=2 gives the same at 200 %.
#include "tests/core/plan/loom_networks.h"
#include "ui/build_order/loom_sheet.h"
#include "ui/build_order/loom_view.h"
#include "ui/sheet/sheet_fonts.h"

#include <QApplication>
#include <QDir>
#include <QFont>
#include <QKeyEvent>
#include <QPixmap>

#include "resources/resources.h"
#include <cstdio>

using namespace ohmwright;
using namespace ohmwright::ui;

namespace {

void press(QWidget &widget, int key, const QString &text = {},
           Qt::KeyboardModifiers with = Qt::NoModifier)
{
    QKeyEvent event(QEvent::KeyPress, key, with, text);
    QApplication::sendEvent(&widget, &event);
}

} // namespace

int main(int argc, char **argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    registerResources();
    const QApplication app(argc, argv);
    if (argc != 2) {
        std::fputs("usage: ohmwright_loom_pictures FOLDER\n", stderr);
        return 2;
    }
    const QDir folder(QString::fromLocal8Bit(argv[1]));
    QFont letters(sheet::loadSheetFonts().text);
    letters.setPixelSize(13);
    QApplication::setFont(letters);
    plan::Network network = plan::vanNetwork();
    // One task of an option not planned with.
    for (plan::Task &task : network.tasks) {
        if (!task.done && !task.milestone && task.after.size() == 1) {
            task.aside = task.done = true;
            break;
        }
    }
    const plan::LoomFacts facts = plan::inventedForecast(network);
    const LoomRisks risks{{"ba15", {10, "Pack built"}},
                          {"br12", {15, "Brakes bled"}},
                          {"lv04", {20, {}}},
                          {"tc09", {30, "Contactor box wired"}}};
    for (const bool dark : {false, true}) {
        LoomView view;
        view.resize(1280, 760);
        view.setColours(dark ? LoomColours::dark() : LoomColours::light());
        view.setNetwork(network, facts, risks);
        view.show();
        const QString tone = dark ? QStringLiteral("dark") : QStringLiteral("light");
        const auto shoot = [&](const QString &name) {
            QApplication::processEvents();
            view.grab().save(folder.filePath(name + QLatin1Char('_') + tone + ".png"));
        };
        for (const plan::LoomBy by : {plan::LoomBy::Chain, plan::LoomBy::Date}) {
            view.setBy(by);
            const QString name =
                by == plan::LoomBy::Date ? QStringLiteral("date") : QStringLiteral("chain");
            view.fitAll();
            shoot(name + "_whole");
            view.showEvening();
            shoot(name + "_evening");
            view.cancel();
            view.setZoom(1);
            press(view, Qt::Key_Slash, "/");
            for (const char letter : {'p', 'a', 'c', 'k'})
                press(view, Qt::Key_A, QString(QLatin1Char(letter)));
            shoot(name + "_find");
            press(view, Qt::Key_Return);
            press(view, Qt::Key_P, "p");
            shoot(name + "_before");
            press(view, Qt::Key_P, "p");
            view.cancel();
            shoot(name + "_near");
            view.setZoom(0.6);
            shoot(name + "_middle");
        }
        view.setNetwork(network, {});
        shoot(QStringLiteral("date_lacking"));
    }
    LoomSheetOptions how;
    how.title = QStringLiteral("Grey van");
    how.today = QDate(2026, 11, 27);
    how.risks = risks;
    for (const plan::LoomBy by : {plan::LoomBy::Chain, plan::LoomBy::Date}) {
        how.by = by;
        const QString name =
            by == plan::LoomBy::Date ? QStringLiteral("date") : QStringLiteral("chain");
        for (const auto &[paper, size] :
             {std::pair("a4", QPageSize::A4), {"a3", QPageSize::A3}, {"a1", QPageSize::A1}}) {
            how.paper = size;
            const auto made =
                LoomSheet(network, facts, how).write(folder.filePath(name + '_' + paper + ".pdf"));
            std::printf("%s %s: %d bands, smallest text %.1f pt\n", qPrintable(name), paper,
                        made ? made->bands : -1, made ? made->smallestText : 0);
        }
        if (!LoomSheet(network, facts, how).write(folder.filePath(name + ".svg")))
            std::fputs("no SVG\n", stderr);
        how.tiles = true;
        how.paper = QPageSize::A4;
        if (!LoomSheet(network, facts, how).write(folder.filePath(name + "_tiles.pdf")))
            std::fputs("no tiles\n", stderr);
        how.tiles = false;
    }
    return 0;
}
