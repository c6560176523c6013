// SPDX-License-Identifier: GPL-3.0-or-later
// The chart of the build order page on paper: as a file, or through the printer.
#include "ui/build_order/build_order_page.h"
#include "ui/build_order/loom_sheet.h"
#include "ui/build_order/loom_view.h"
#include "ui/shell/outside.h"
#include "ui/widgets/entry_form.h"

#include <QApplication>
#include <QFileInfo>
#include <QMenu>
#include <QPageLayout>
#include <QPagedPaintDevice>
#include <QPrintDialog>
#include <QPrinter>

#include <memory>

namespace ohmwright::ui {

// What the letters come to is told once it is written: trying every paper takes seconds.
void BuildOrderPage::fillPaperMenu(QMenu &menu, const QString &kind)
{
    const auto add = [&](const QString &words, std::optional<QPageSize::PageSizeId> paper,
                         bool tiles, int sheets) {
        connect(menu.addAction(words), &QAction::triggered, this,
                [this, kind, paper, tiles, sheets] { chooseAndSave(kind, paper, tiles, sheets); });
    };
    const auto paperOf = [](const QString &name) {
        return chartPaper(name).value_or(QPageSize::A3);
    };
    if (kind == QLatin1String("svg")) {
        add(tr("One picture, as large as it comes out…"), std::nullopt, false, 1);
        menu.addSeparator();
    }
    for (const char *letters : {"A4", "A3", "A2"}) {
        const QString name = QLatin1String(letters);
        add(tr("%1, as many sheets as reading takes…").arg(name), paperOf(name), false,
            kAsReadingTakes);
    }
    menu.addSeparator();
    for (const char *letters : {"A4", "A3", "A2", "A1"}) {
        const QString name = QLatin1String(letters);
        add(tr("%1, one sheet…").arg(name), paperOf(name), false, 1);
    }
    menu.addSeparator();
    add(tr("A4 pages to be glued together…"), QPageSize::A4, true, 1);
}

void BuildOrderPage::chooseAndSave(const QString &kind, std::optional<QPageSize::PageSizeId> paper,
                                   bool tiles, int sheets)
{
    const QString name = QFileInfo(m_book.path()).completeBaseName();
    QString path = m_outside->chooseSaveFile(
        this, tr("Save the chart"),
        (name.isEmpty() ? tr("build") : name) + QStringLiteral("-order.") + kind,
        kind == QLatin1String("svg") ? tr("SVG drawing (*.svg)") : tr("PDF file (*.pdf)"));
    if (path.isEmpty())
        return;
    if (QFileInfo(path).suffix().isEmpty())
        path += QLatin1Char('.') + kind;
    saveChart(path, paper, tiles, sheets);
}

// As it is laid out on the screen.
LoomSheetOptions BuildOrderPage::sheetOptions() const
{
    LoomSheetOptions how;
    how.title = m_book.records().build().title;
    how.today = m_book.clock().today();
    how.by = m_loom->by();
    how.risks = m_risks;
    how.like = &m_loom->loom();
    return how;
}

void BuildOrderPage::saveChart(const QString &path, std::optional<QPageSize::PageSizeId> paper,
                               bool tiles, int sheets)
{
    LoomSheetOptions how = sheetOptions();
    how.paper = paper;
    how.tiles = tiles;
    how.keepOthers = true; // the dialog asked about the one path alone
    how.sheets = sheets;
    QApplication::setOverrideCursor(Qt::WaitCursor); // folding a large build takes seconds
    const Result<LoomSheetMade> made =
        LoomSheet(m_loom->network(), m_loom->facts(), how).write(path);
    QApplication::restoreOverrideCursor();
    if (!made)
        emit said(told(made.error()), Tone::Problem);
    else
        emit said(tr("The chart is saved as %1, %2.").arg(chartFiles(*made), chartMade(*made)),
                  Tone::Told);
}

void BuildOrderPage::printOn(QPagedPaintDevice &device, const QString &name)
{
    LoomSheetOptions how = sheetOptions();
    how.sheets = kAsReadingTakes;
    QApplication::setOverrideCursor(Qt::WaitCursor);
    const Result<LoomSheetMade> made =
        LoomSheet(m_loom->network(), m_loom->facts(), how).print(device);
    QApplication::restoreOverrideCursor();
    if (!made)
        emit said(told(made.error()), Tone::Problem);
    else
        emit said(tr("The chart is sent to %1, %2.").arg(name, chartMade(*made)), Tone::Told);
}

void BuildOrderPage::printChart()
{
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setDocName(tr("Build order: %1").arg(m_book.records().build().title));
    printer->setPageOrientation(QPageLayout::Landscape);
    auto *dialog = new QPrintDialog(printer.get(), window());
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this,
            [this, printer] { printOn(*printer, printer->printerName()); });
    // the dialog works on the printer until it is gone, whatever becomes of this page
    connect(dialog, &QObject::destroyed, dialog, [printer] {});
    dialog->open();
}

} // namespace ohmwright::ui
