// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright_start_pictures FOLDER: draws the sheet a book is begun on, light and dark, wide and
// narrow, as PNG files. QT_SCALE_FACTOR=2 gives the same at 200 %.
#include "ui/shell/shell_window.h"
#include "ui/shell/theme.h"
#include "ui/start/start_sheet.h"

#include <QApplication>
#include <QDir>
#include <QPixmap>
#include <QTest>

#include "resources/resources.h"
#include <cstdio>

using namespace ohmwright;
using namespace ohmwright::ui;

int main(int argc, char **argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    registerResources();
    QApplication app(argc, argv);
    const QDir folder(argc > 1 ? QString::fromLocal8Bit(argv[1]) : QStringLiteral("."));
    for (const Shade shade : {Shade::Light, Shade::Dark}) {
        Theme theme(shade);
        theme.applyTo(app);
        ShellWindow shell(theme);
        auto *sheet = new StartSheet(theme);
        shell.addPage(sheet, QStringLiteral("New book"), QStringLiteral("book"),
                      QStringLiteral("new"));
        shell.setBookTitle(QStringLiteral("Ohmwright"));
        const auto keep = [&](const char *name) {
            QTest::qWait(60);
            const QString path = folder.filePath(
                QStringLiteral("%1-%2.png")
                    .arg(QLatin1String(name),
                         shade == Shade::Light ? QLatin1String("light") : QLatin1String("dark")));
            if (!shell.grab().save(path))
                std::fprintf(stderr, "cannot write %s\n", qPrintable(path));
        };
        shell.resize(1280, 800);
        shell.show();
        sheet->begin();
        keep("new-book");
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
        keep("new-book-unit");
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
        sheet->setProblem(QStringLiteral("There is already a file “van.ohmwright”."));
        keep("new-book-empty");
        sheet->begin();
        shell.resize(600, 900);
        keep("new-book-narrow");
    }
    return 0;
}
