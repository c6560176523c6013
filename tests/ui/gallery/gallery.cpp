// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright_gallery FOLDER: draws the shell with sample pages, light and dark, as PNG files.
// QT_SCALE_FACTOR=2 gives the same at 200 %.
#include "tests/ui/gallery/sample_pages.h"
#include "ui/shell/find_line.h"
#include "ui/shell/shell_window.h"
#include "ui/shell/theme.h"
#include "ui/shell/thumb_index.h"
#include "ui/widgets/pick_or_new.h"

#include <QAbstractItemView>
#include <QAction>
#include <QApplication>
#include <QCalendarWidget>
#include <QComboBox>
#include <QDateEdit>
#include <QDir>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMenu>
#include <QPixmap>
#include <QThread>

#include "resources/resources.h"
#include <cstdio>

namespace {

using namespace ohmwright::ui;

class SampleFinds : public FindSource
{
public:
    std::vector<FindHit> find(const QString &) override
    {
        return {{"Parts", "p1", "Inverter, front axle", "tested, shelf 3", "parts"},
                {"Parts", "p2", "Inverter, spare", "wanted", "parts"},
                {"Tasks", "t1", "Mount inverter", "can start", "build_order"},
                {"Sellers", "s1", "Invers Salvage", "dismantler, 3 parts", ""}};
    }
};

void settle()
{
    for (int i = 0; i < 20; ++i) {
        QApplication::processEvents();
        QThread::msleep(8);
    }
}

void typeInto(QWidget &widget, const QString &text)
{
    for (const QChar c : text) {
        QKeyEvent press(QEvent::KeyPress, 0, Qt::NoModifier, QString(c));
        QApplication::sendEvent(&widget, &press);
    }
    settle();
}

} // namespace

int main(int argc, char **argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    ohmwright::registerResources();
    QApplication app(argc, argv);
    if (argc != 2) {
        std::fputs("usage: ohmwright_gallery FOLDER\n", stderr);
        return 2;
    }
    const QDir folder(QString::fromLocal8Bit(argv[1]));
    Theme theme;
    theme.applyTo(app);
    ShellWindow shell(theme);
    shell.addPage(makeTablePage(theme), "Bench", "bench", "bench");
    shell.addPage(makeFormPage(theme), "Parts", "parts", "parts");
    shell.addPage(makeEmptyPage(theme), "Build order", "build_order", "order");
    shell.addPage(makeMoneyPage(theme), "Budget", "budget", "budget");
    shell.addPage(makeControlsPage(theme), "Checks", "checks", "checks");
    shell.addPage(makeEmptyPage(theme), "Build sheet", "sheet", "sheet");
    shell.setPageBadge("parts", "4 open", "4 open questions");
    shell.setPageBadge("order", "7 moves", "7 next moves");
    shell.setBookTitle("The grey van");
    shell.setUndoStep("log part “Inverter”");
    SampleFinds finds;
    shell.setFindSource(&finds);
    QAction make("New…");
    QAction copy("Save a copy…");
    copy.setShortcut(QKeySequence("Ctrl+Shift+S"));
    QAction load("Load…");
    load.setEnabled(false);
    shell.setBookActions({&make, &copy, nullptr, &load});
    shell.show();

    const auto shoot = [&](const QString &name) {
        settle();
        const QString path = folder.filePath(name + QStringLiteral(".png"));
        if (!shell.grab().save(path))
            std::fprintf(stderr, "could not write %s\n", qPrintable(path));
    };
    for (const Shade shade : {Shade::Light, Shade::Dark}) {
        theme.setShade(shade);
        const QString tone =
            shade == Shade::Light ? QStringLiteral("light") : QStringLiteral("dark");
        for (const QSize size : {QSize(1280, 800), QSize(1000, 700)}) {
            shell.resize(size);
            const QString end = QStringLiteral("_%1_%2").arg(tone).arg(size.width());
            for (const char *key : {"bench", "parts", "order", "budget", "checks"}) {
                shell.showPage(QString::fromLatin1(key));
                shoot(QString::fromLatin1(key) + end);
            }
        }
        shell.resize(1280, 800);
        shell.showPage("bench");
        shell.messages().sayWithAction(
            "Logged “Inverter, front axle”: 412.50 EUR, 1 open question.", "Show it", [] {});
        shell.findLine().begin();
        typeInto(shell.findLine(), "inv");
        shoot("find_" + tone);
        shell.findLine().clear();
        shell.thumbIndex().setFocus();
        shell.messages().say("The copy could not be written: the disk is full. Free some room and "
                             "try again.",
                             Tone::Problem);
        shoot("index_focus_" + tone);
        shell.messages().dismiss();
        shell.resize(700, 520);
        shoot("narrow_" + tone);
        shell.resize(1000, 700);
        shell.showPage("parts");
        if (auto *combo = shell.page("parts")->findChild<QComboBox *>()) {
            combo->showPopup();
            settle();
            combo->view()->window()->grab().save(folder.filePath("combo_" + tone + ".png"));
            combo->hidePopup();
        }
        if (auto *date = shell.page("parts")->findChild<QDateEdit *>())
            date->calendarWidget()->grab().save(folder.filePath("calendar_" + tone + ".png"));
        if (auto *pick = shell.findChild<PickOrNew *>()) {
            pick->setFocus();
            pick->clear();
            typeInto(*pick, "h");
            shoot("pick_" + tone);
        }
        if (auto *menu = shell.findChild<QMenu *>()) {
            menu->popup(QPoint(0, 0));
            settle();
            menu->setActiveAction(&copy);
            menu->grab().save(folder.filePath("menu_" + tone + ".png"));
            menu->close();
        }
    }
    return 0;
}
