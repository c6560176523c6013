// SPDX-License-Identifier: GPL-3.0-or-later
// The chart's sheets painted: title and legend, bands, tiles.
#include "core/quantity/dates.h"
#include "ui/build_order/loom_pages.h"
#include "ui/build_order/loom_sheet.h"
#include "ui/build_order/loom_sheet_sizes.h"

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QPen>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

// What two tiles share, to be glued, units.
constexpr double kOverlap = 24;

} // namespace

void LoomSheet::paintHead(QPainter &painter, const LoomLegend &legend, double width,
                          const QStringList &remarks) const
{
    const LoomColours colours = LoomColours::print();
    QFont large(m_family);
    large.setHintingPreference(QFont::PreferNoHinting);
    large.setPixelSize(19);
    large.setWeight(QFont::DemiBold);
    painter.setFont(large);
    painter.setPen(colours.ink);
    const QFontMetricsF metrics(large);
    painter.drawText(QPointF(0, 20), metrics.elidedText(title(), Qt::ElideRight, width * 0.5));
    QFont small(m_family);
    small.setHintingPreference(QFont::PreferNoHinting);
    small.setPixelSize(11);
    painter.setFont(small);
    QStringList right{m_options.by == plan::LoomBy::Date ? tr("by date") : tr("by chain")};
    const QDate today = m_loom.today.isNull() ? m_options.today : m_loom.today;
    if (today.isValid())
        right += tr("today, %1").arg(showDate(today));
    right += remarks;
    painter.setPen(colours.mute);
    painter.drawText(QRectF(width * 0.5, 4, width * 0.5, 20), Qt::AlignRight | Qt::AlignVCenter,
                     right.join(QStringLiteral(" · ")));
    painter.setPen(QPen(colours.ink, 0.8));
    painter.drawLine(QPointF(0, 28), QPointF(width, 28));
    painter.save();
    painter.translate(0, 32);
    painter.scale(kFullSize, kFullSize);
    legend.paint(&painter, {}, width / kFullSize);
    painter.restore();
}

// The painter stands at the part's top left corner, in scene units.
void LoomSheet::paintPart(QPainter &painter, const Picture &picture, const QRectF &part) const
{
    painter.save();
    painter.translate(-part.topLeft());
    LoomMarks marks;
    marks.focus = false;
    if (part.top() > extent(picture).top() + 1)
        marks.slideTop = part.top();
    m_painter.paint(painter, *picture.network, *picture.loom, marks, part, 1);
    painter.restore();
}

// What each tile shows, row by row. All but those on the left have a margin for names; what is cut
// through stands whole on one of two neighbours.
std::vector<QRectF> LoomSheet::tilesOf(const Picture &picture, QSizeF tile) const
{
    const QRectF all = extent(picture);
    const double shared = std::max(kOverlap, picture.loom->axisBand.height() + kOverlap);
    std::vector<std::pair<double, double>> columns;
    for (double left = all.left(); columns.empty() || columns.back().second < all.right();) {
        const double margin = columns.empty() ? 0 : LoomPainter::kNameMargin;
        columns.emplace_back(left, left + tile.width() - margin);
        left = columns.back().second - kOverlap;
    }
    std::vector<QRectF> tiles;
    double top = all.top();
    while (true) {
        for (const auto &[left, right] : columns)
            tiles.emplace_back(left, top, right - left, tile.height());
        if (top + tile.height() >= all.bottom())
            return tiles;
        top += tile.height() - shared;
    }
}

// The painter stands at the band's top left corner, in scene units.
void LoomSheet::paintBand(LoomPages &pages, const Picture &picture,
                          const plan::LoomBand &band) const
{
    QPainter &painter = pages.painter();
    painter.save();
    painter.translate(band.nameMargin - band.left, -band.loom.bounds.top());
    if (!band.first) {
        m_painter.paintNames(painter, *picture.network, band.loom, band.left);
        m_painter.paintNumbers(painter, band.in, band.left, true);
    }
    if (!band.last)
        m_painter.paintNumbers(painter, band.out, band.right, false);
    pages.paintCut(band.loom.bounds, [&](QPainter &within) {
        LoomMarks marks;
        marks.focus = false;
        m_painter.paint(within, *picture.network, band.loom, marks, band.loom.bounds, 1);
    });
    painter.restore();
}

bool LoomSheet::paintFolded(LoomPages &pages, LoomSheetMade &made) const
{
    const QSizeF room = pages.room();
    const Folded picture = folded(room, m_options.sheets);
    const plan::LoomFold &fold = picture.fold;
    made = madeOf(picture);
    if (fold.bands.empty()) // not even the smallest letters have room
        return false;
    const double head = headScale(room);
    const LoomLegend legend = legendOf(picture.picture, fold.bands.size() > 1);
    pages.describe(legend.text());
    const double high = (room.height() - picture.head) / fold.scale;
    for (std::size_t sheet = 0; sheet < fold.sheets; ++sheet) {
        if (!pages.begin())
            return false;
        QPainter &painter = pages.painter();
        QStringList remarks;
        if (fold.sheets > 1)
            remarks += tr("sheet %1 of %2").arg(sheet + 1).arg(fold.sheets);
        painter.save();
        painter.save();
        painter.scale(head, head);
        paintHead(painter, legend, room.width() / head, remarks);
        painter.restore();
        painter.translate(0, picture.head);
        painter.scale(fold.scale, fold.scale);
        double taken = 0;
        int bands = 0;
        for (const plan::LoomBand &band : fold.bands) {
            taken += band.sheet == sheet ? band.height() : 0;
            bands += band.sheet == sheet ? 1 : 0;
        }
        // What is left of the sheet stands between its bands.
        const double between =
            bands < 2 ? 0 : std::clamp((high - taken) / (bands - 1), kBetweenBands, kMostBetween);
        bool first = true;
        for (const plan::LoomBand &band : fold.bands) {
            if (band.sheet != sheet)
                continue;
            if (!first) {
                painter.setPen(QPen(LoomColours::print().mute, 0.8, Qt::DashLine));
                painter.drawLine(QPointF(0, -between / 2),
                                 QPointF(room.width() / fold.scale, -between / 2));
            }
            paintBand(pages, picture.picture, band);
            painter.translate(0, band.height() + between);
            first = false;
        }
        painter.restore();
    }
    return true;
}

bool LoomSheet::paintTiles(LoomPages &pages, LoomSheetMade &made) const
{
    const QSizeF room = pages.room();
    const double head = headScale(room);
    const Picture picture = forUncut();
    const LoomLegend legend = legendOf(picture, false);
    pages.describe(legend.text());
    const double headRoom = headHeight(legend, room.width() / head) * head;
    const std::vector<QRectF> parts =
        tilesOf(picture, {room.width() / kTileScale, (room.height() - headRoom) / kTileScale});
    made = {static_cast<int>(parts.size()),
            1,
            picture.leftOut,
            m_painter.smallestText() * kTileScale,
            {}};
    int row = 0;
    int column = 0;
    for (std::size_t page = 0; page < parts.size(); ++page) {
        const QRectF &part = parts[page];
        if (!pages.begin())
            return false;
        QPainter &painter = pages.painter();
        const bool first = page == 0 || part.top() > parts[page - 1].top();
        row += first ? 1 : 0;
        column = first ? 1 : column + 1;
        painter.save();
        painter.save();
        painter.scale(head, head);
        paintHead(painter, legend, room.width() / head,
                  {tr("page %1: row %2, column %3").arg(page + 1).arg(row).arg(column)});
        painter.restore();
        painter.translate(0, headRoom);
        painter.scale(kTileScale, kTileScale);
        if (column > 1) {
            const QRectF margin(0, 0, LoomPainter::kNameMargin, part.height());
            pages.paintCut(margin, [&](QPainter &within) {
                within.translate(LoomPainter::kNameMargin - part.left(), -part.top());
                m_painter.paintNames(within, *picture.network, *picture.loom, part.left());
            });
            painter.translate(LoomPainter::kNameMargin, 0);
        }
        pages.paintCut(QRectF(QPointF(0, 0), part.size()),
                       [&](QPainter &within) { paintPart(within, picture, part); });
        painter.restore();
    }
    return true;
}

// One picture at full size, with room around.
void LoomSheet::paintUncut(SvgPages &pages, const Picture &picture, const LoomLegend &legend,
                           LoomSheetMade &made) const
{
    QPainter &painter = pages.painter();
    pages.describe(legend.text());
    paintHead(painter, legend, pages.room().width(), {});
    painter.translate(0, headHeight(legend, pages.room().width()));
    painter.scale(kFullSize, kFullSize);
    paintPart(painter, picture, extent(picture));
    made = {1, 1, picture.leftOut, m_painter.smallestText() * kFullSize, {}};
}

} // namespace ohmwright::ui
