// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/plot_files.h"

#include "ui/checks/plot_scene.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>
#include <QRegularExpression>
#include <QSaveFile>
#include <QSvgGenerator>

#include <algorithm>

namespace ohmwright::ui {

namespace {

// A figure as wide as the text of an A4 page, in points.
constexpr QSizeF kFigure(480, 300);
constexpr double kPointsPerInch = 72;
constexpr int kPdfDotsPerInch = 1440;
constexpr int kMarginMillimetres = 15;
constexpr double kTallestShare = 0.625; // height over width on a page of its own

QString tr(const char *text)
{
    return QCoreApplication::translate("ohmwright::ui::PlotFiles", text);
}

QByteArray asPdf(const Plot &plot)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setTitle(plot.title);
    writer.setResolution(kPdfDotsPerInch);
    writer.setPageSize(QPageSize(kFigure, QPageSize::Point));
    writer.setPageMargins(QMarginsF());
    QPainter painter(&writer);
    const double unit = kPdfDotsPerInch / kPointsPerInch;
    const QRectF page(QPointF(), kFigure * unit);
    constexpr double kEdge = 8; // points
    paintPlot(painter, page.adjusted(kEdge * unit, kEdge * unit, -kEdge * unit, -kEdge * unit),
              plot, unit, true);
    painter.end();
    return bytes;
}

} // namespace

QByteArray plotSvg(const Plot &plot)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator writer;
    writer.setOutputDevice(&buffer);
    writer.setTitle(plot.title);
    writer.setDescription(spokenPlot(plot));
    writer.setResolution(static_cast<int>(kPointsPerInch));
    writer.setSize(kFigure.toSize());
    writer.setViewBox(QRectF(QPointF(), kFigure));
    QPainter painter(&writer);
    paintPlot(painter, QRectF(QPointF(), kFigure).adjusted(8, 8, -8, -8), plot, 1, true);
    painter.end();
    // letters stay letters; a reader without ours takes some without serifs
    const QByteArray family = printLook().font.family().toUtf8();
    bytes.replace(QByteArray("font-family=\"" + family + "\""),
                  QByteArray("font-family=\"Inter, sans-serif\""));
    return bytes;
}

Outcome savePlot(const Plot &plot, const QString &path)
{
    const bool svg = path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive);
    const QByteArray bytes = svg ? plotSvg(plot) : asPdf(plot);
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit())
        return fail(ProblemCode::Io, tr("The plot could not be written to %1.").arg(path),
                    file.errorString(), path);
    return {};
}

void printPlot(const Plot &plot, QPrinter &printer)
{
    printer.setPageOrientation(QPageLayout::Landscape);
    printer.setPageMargins(
        QMarginsF(kMarginMillimetres, kMarginMillimetres, kMarginMillimetres, kMarginMillimetres),
        QPageLayout::Millimeter);
    QPainter painter(&printer);
    QRectF page(printer.pageLayout().paintRectPixels(printer.resolution()));
    page.moveTo(0, 0);
    page.setHeight(std::min(page.height(), page.width() * kTallestShare));
    // a page of its own is read from further away than a figure among text
    constexpr double kLarger = 1.4;
    paintPlot(painter, page, plot, printer.resolution() / kPointsPerInch * kLarger, true);
}

QString plotFileName(const Plot &plot)
{
    static const QRegularExpression kNotInNames(QStringLiteral("[\\\\/:*?\"<>|\\x00-\\x1f]+"));
    QString name = plot.title;
    name.replace(kNotInNames, QStringLiteral(" "));
    name = name.simplified();
    return QString((name.isEmpty() ? tr("Plot") : name) + QStringLiteral(".pdf"));
}

} // namespace ohmwright::ui
