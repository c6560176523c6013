// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright_checks_pictures FOLDER: draws the Checks page with an invented van, light and dark, and
// each kind of plot on screen and on paper, as PNG files. QT_SCALE_FACTOR=2 gives the same at 200
// %.
#include "tests/support/test_book.h"
#include "tests/ui/checks/sample_checks.h"
#include "ui/checks/check_sheet.h"
#include "ui/checks/checks_list.h"
#include "ui/checks/checks_page.h"
#include "ui/checks/given_table.h"
#include "ui/checks/plot_files.h"
#include "ui/checks/plot_scene.h"
#include "ui/shell/shell_window.h"
#include "ui/shell/theme.h"

#include <QApplication>
#include <QDir>
#include <QImage>
#include <QLineEdit>
#include <QPainter>
#include <QPixmap>
#include <QPushButton>
#include <QScrollBar>
#include <QTableView>
#include <QTest>

#include "resources/resources.h"

using namespace ohmwright;
using namespace ohmwright::ui;

namespace {

class NoOutside : public Outside
{
public:
    QStringList chooseFiles(QWidget *, const QString &, const QString &) override { return {}; }
    QString chooseSaveFile(QWidget *, const QString &, const QString &, const QString &) override
    {
        return {};
    }
    void openFile(const QString &) override {}
    void openAddress(const QUrl &) override {}
};

void drawPlots(const QDir &folder)
{
    const samples::Figures figures = samples::vanFigures();
    for (const Check &check : samples::vanChecks(figures))
        for (const Plot &plot : check.plots) {
            constexpr double kDotsPerPoint = 3;
            QImage page(QSize(480, 300) * kDotsPerPoint, QImage::Format_RGB32);
            page.fill(Qt::white);
            QPainter painter(&page);
            paintPlot(painter, QRectF(page.rect()), plot, kDotsPerPoint, true);
            painter.end();
            page.save(folder.filePath(
                QString(QStringLiteral("plot-") + check.id + QStringLiteral(".png"))));
            for (const char *ending : {".pdf", ".svg"})
                (void)savePlot(plot, folder.filePath(QString(QStringLiteral("plot-") + check.id +
                                                             QLatin1String(ending))));
        }
}

} // namespace

int main(int argc, char **argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    registerResources();
    QApplication app(argc, argv);
    // as a desktop with large letters: OHMWRIGHT_LETTERS=15 (points)
    if (const double points = qEnvironmentVariable("OHMWRIGHT_LETTERS").toDouble(); points > 0) {
        QFont letters = QApplication::font();
        letters.setPointSizeF(points);
        QApplication::setFont(letters);
    }
    const QDir folder(argc > 1 ? QString::fromLocal8Bit(argv[1]) : QStringLiteral("."));
    NoOutside outside;
    for (const Shade shade : {Shade::Light, Shade::Dark}) {
        TestBook book;
        samples::SampleSource source;
        Theme theme(shade);
        theme.applyTo(app);
        ShellWindow shell(theme);
        auto *page = new ChecksPage(*book, source, theme, outside);
        shell.addPage(page, QStringLiteral("Checks"), QStringLiteral("checks"),
                      QStringLiteral("checks"));
        shell.resize(1280, 800);
        shell.show();
        const QString name =
            shade == Shade::Light ? QStringLiteral("light") : QStringLiteral("dark");
        const auto draw = [&](const QString &what) {
            QTest::qWait(120);
            shell.grab().save(
                folder.filePath(QString(name + QLatin1Char('-') + what + QStringLiteral(".png"))));
        };
        for (const char *id : {"circuit_ratings", "precharge", "pack", "axle_loads", "drive",
                               "range", "grouping", "rotating_part", "discharge"}) {
            page->showCheck(QLatin1String(id));
            draw(QLatin1String(id));
            QScrollBar *bar = page->sheet().verticalScrollBar();
            for (int at = 1; at * 620 < bar->maximum() + 620 && at < 6; ++at) {
                bar->setValue(at * 620);
                draw(QString(QLatin1String(id) + QStringLiteral("-down") + QString::number(at)));
            }
        }
        page->showCheck(QStringLiteral("precharge"));
        auto *given = page->sheet().findChild<GivenTable *>();
        given->cell(QStringLiteral("precharge.resistance"))->startEditing(QStringLiteral("22 V"));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        draw(QStringLiteral("refused"));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
        for (auto *button : page->findChildren<QPushButton *>())
            if (button->isCheckable() && button->text().contains(QStringLiteral("Try")))
                button->click();
        draw(QStringLiteral("trying"));
        for (const auto &[field, typed] :
             {std::pair("precharge.resistance", "22 Ω"), std::pair("link.capacitance", "800 µF")}) {
            given = page->sheet().findChild<GivenTable *>();
            given->cell(QLatin1String(field))->startEditing(QString::fromUtf8(typed));
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
            QTest::qWait(30); // the old page is deleted
        }
        draw(QStringLiteral("tried"));
        shell.resize(1680, 1000);
        draw(QStringLiteral("wide"));
    }
    drawPlots(folder);
    return 0;
}
