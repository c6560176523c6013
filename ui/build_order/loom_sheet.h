// SPDX-License-Identifier: GPL-3.0-or-later
// The build-order chart on paper: PDF on A4 to A1, SVG, or a printer; ink on white, with title,
// today and legend. All lines and letters, no pixels.
//
// On one page the chart is folded into strips one below the other where that makes it larger; a
// strip repeats the names of the branches that run into it. Or tiled over pages, at a size that
// can be read, to be glued together.
#pragma once

#include "core/plan/loom.h"
#include "core/quantity/result.h"

#include <QCoreApplication>
#include <QDate>
#include <QPageSize>
#include <QRectF>
#include <QSizeF>
#include <QString>

#include <vector>

class QPagedPaintDevice;
class QPainter;

namespace ohmwright::ui {

class LoomPainter;

struct LoomSheetOptions
{
    QString title; // of the build
    QDate today;   // of printing
    plan::LoomBy by = plan::LoomBy::Chain;
    QPageSize::PageSizeId paper = QPageSize::A3; // landscape; not for SVG
    bool tiles = false;                          // likewise
    const plan::Loom *like = nullptr;            // branches as they lie there; read during the call
};

struct LoomSheetMade
{
    int pages = 1;
    int strips = 1;
    double smallestText = 0; // points; of SVG at its own size
};

class LoomSheet
{
    Q_DECLARE_TR_FUNCTIONS(LoomSheet)

public:
    // Needs a QGuiApplication and registerResources().
    LoomSheet(const plan::Network &network, const plan::LoomFacts &facts,
              const LoomSheetOptions &options);

    // By date without a forecast: NotAllowed, saying so. On failure an older file is left as it
    // was.
    [[nodiscard]] Result<LoomSheetMade> writePdf(const QString &path) const;
    [[nodiscard]] Result<LoomSheetMade> writeSvg(const QString &path) const;
    // By the ending: .pdf or .svg; BadInput for any other.
    [[nodiscard]] Result<LoomSheetMade> write(const QString &path) const;
    // On the device's own page, whatever its size; false if it refused a page.
    bool paintOn(QPagedPaintDevice &device, LoomSheetMade &made) const;

private:
    [[nodiscard]] Outcome check() const;
    [[nodiscard]] std::vector<double> cuts(int strips) const;
    [[nodiscard]] double scaleOf(int strips, QSizeF room) const;
    [[nodiscard]] std::vector<QRectF> tilesOf(QSizeF tile) const;
    void paintStrips(QPainter &painter, const LoomPainter &loomPainter, int strips,
                     double width) const;
    [[nodiscard]] double headHeight(double width) const;
    void paintHead(QPainter &painter, double width, const QString &remark) const;
    void paintPart(QPainter &painter, const LoomPainter &loomPainter, const QRectF &part,
                   bool clip) const;
    [[nodiscard]] QRectF extent() const;

    const plan::Network &m_network;
    const plan::LoomFacts &m_facts;
    LoomSheetOptions m_options;
    QString m_family;
    plan::Loom m_loom;
};

// "A4", … "A1", letters' case ignored; BadInput for any other.
Result<QPageSize::PageSizeId> chartPaper(const QString &name);

} // namespace ohmwright::ui
