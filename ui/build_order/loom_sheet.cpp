// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_sheet.h"

#include "core/quantity/dates.h"
#include "core/sheet/save_file.h"
#include "ui/sheet/sheet_fonts.h"

#include <QBuffer>
#include <QFont>
#include <QMarginsF>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPdfWriter>
#include <QPen>
#include <QSvgGenerator>

#include <algorithm>
#include <cmath>
#include <utility>

namespace ohmwright::ui {

namespace {

constexpr double kPointsPerInch = 72;
// A scene unit is a screen's pixel; at full size 96 of them are an inch.
constexpr double kFullSize = 0.75; // points per unit
// Tiles are drawn so that it can still be read.
constexpr double kTileScale = 0.66;
constexpr double kMargin = 28; // points
// What has few tasks need not fill a large sheet with huge letters.
constexpr double kMostScale = kFullSize * 1.6;
// Between two bands, units; and so much more where a sheet has room left.
constexpr double kBetweenBands = 24;
constexpr double kMostBetween = 90;
// The sixth that must be gained by breaking branches, or leaving out what is done; and letters
// that need not be any larger, points.
constexpr double kHelpsMuch = 7.0 / 6;
constexpr double kLargeEnough = 7;
// What two tiles share, to be glued, units.
constexpr double kOverlap = 24;
constexpr int kResolution = 1200;

// On larger paper title and legend are larger, too; 1 on A3.
double headScale(QSizeF room)
{
    return std::clamp(std::sqrt(room.width() * room.height() / (1134 * 786.0)), 0.72, 2.2);
}

} // namespace

LoomSheet::LoomSheet(const plan::Network &network, const plan::LoomFacts &facts,
                     const LoomSheetOptions &options)
    : m_network(network), m_facts(facts), m_options(options),
      m_family(sheet::loadSheetFonts().text), m_painter(LoomPainter::forPaper(m_family))
{
    m_options.sheets = std::clamp(m_options.sheets, 1, kMostSheets);
    plan::LoomOptions how;
    how.by = options.by;
    how.like = options.like;
    m_loom = plan::layOutLoom(network, facts, m_painter.metrics(), how);
    m_options.like = nullptr;
    m_open = plan::leaveOutDone(network, facts);
    how.like = &m_loom;
    m_openLoom = plan::layOutLoom(m_open.network, m_open.facts, m_painter.metrics(), how);
    how.shareRuns = true;
    m_packed = plan::layOutLoom(network, facts, m_painter.metrics(), how);
    m_openPacked = plan::layOutLoom(m_open.network, m_open.facts, m_painter.metrics(), how);
}

Outcome LoomSheet::check() const
{
    if (m_network.tasks.empty())
        return fail(ProblemCode::NotAllowed, tr("There are no tasks to draw yet."));
    if (m_options.by == plan::LoomBy::Date && !m_facts.forecast)
        return fail(ProblemCode::NotAllowed,
                    tr("By date the chart needs the forecast, and there is none."));
    return {};
}

// From what one would rather see to what takes less room.
std::vector<LoomSheet::Picture> LoomSheet::pictures() const
{
    const bool some = m_open.leftOut > 0;
    std::vector<Picture> all;
    if (m_options.done != LoomDone::LeftOut || !some)
        all = {{&m_network, &m_loom, 0, &m_memory[0]}, {&m_network, &m_packed, 0, &m_memory[1]}};
    if (m_options.done != LoomDone::Whole && some)
        all.insert(all.end(), {{&m_open.network, &m_openLoom, m_open.leftOut, &m_memory[2]},
                               {&m_open.network, &m_openPacked, m_open.leftOut, &m_memory[3]}});
    return all;
}

LoomSheet::Picture LoomSheet::forUncut() const
{
    return pictures().front();
}

QRectF LoomSheet::extent(const Picture &picture) const
{
    return m_painter.extent(*picture.loom, 1);
}

LoomLegend LoomSheet::legendOf(const Picture &picture, bool cut) const
{
    LoomLegend legend(m_painter, *picture.network, *picture.loom);
    if (cut)
        legend.addCuts();
    if (picture.leftOut > 0)
        legend.addLeftOut(m_open.areas);
    return legend;
}

// Title, what it shows and when, and the legend; points at the size of A3.
double LoomSheet::headHeight(const LoomLegend &legend, double width) const
{
    return 34 + legend.paint(nullptr, {}, width / kFullSize) * kFullSize + 8;
}

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
    const QString title = m_options.title.isEmpty()
                              ? tr("Build order")
                              : tr("Build order: %1").arg(m_options.title.simplified());
    const QFontMetricsF metrics(large);
    painter.drawText(QPointF(0, 20), metrics.elidedText(title, Qt::ElideRight, width * 0.5));
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
void LoomSheet::paintPart(QPainter &painter, const Picture &picture, const QRectF &part,
                          bool clip) const
{
    painter.save();
    if (clip)
        painter.setClipRect(QRectF(QPointF(0, 0), part.size()), Qt::IntersectClip);
    painter.translate(-part.topLeft());
    LoomMarks marks;
    marks.focus = false;
    if (part.top() > extent(picture).top() + 1)
        marks.slideTop = part.top();
    m_painter.paint(painter, *picture.network, *picture.loom, marks, part, 1);
    painter.restore();
}

LoomSheet::Folded LoomSheet::foldedOf(const Picture &picture, QSizeF room, int sheets) const
{
    const double head = headScale(room);
    Folded result;
    result.picture = picture;
    // Cut or not, the head has the same height: the legend of cuts is a short one.
    result.head = headHeight(legendOf(picture, true), room.width() / head) * head;
    plan::LoomPaper paper;
    paper.room = QSizeF(room.width(), room.height() - result.head);
    paper.mostScale = kMostScale;
    paper.between = kBetweenBands;
    // one more sheet must make the letters larger, else it only makes gaps
    constexpr double kWorthASheet = 1.03;
    for (int most = 1; most <= sheets; ++most) {
        paper.sheets = static_cast<std::size_t>(most);
        plan::LoomFold fold = plan::foldLoom(*picture.loom, paper, picture.memory);
        if (most == 1 || fold.scale > result.fold.scale * kWorthASheet)
            result.fold = std::move(fold);
    }
    return result;
}

LoomSheet::Folded LoomSheet::folded(QSizeF room, int sheets) const
{
    std::vector<Folded> all;
    double best = 0;
    for (const Picture &picture : pictures()) {
        all.push_back(foldedOf(picture, room, sheets));
        best = std::max(best, all.back().fold.scale);
    }
    const double legible = kLegiblePoints / m_painter.smallestText();
    const double enough = std::min(
        {best, std::max(best / kHelpsMuch, legible), kLargeEnough / m_painter.smallestText()});
    return *std::find_if(all.begin(), all.end(),
                         [&](const Folded &one) { return one.fold.scale >= enough; });
}

LoomSheetMade LoomSheet::madeOf(const Folded &folded) const
{
    return {static_cast<int>(folded.fold.sheets), static_cast<int>(folded.fold.bands.size()),
            folded.picture.leftOut, m_painter.smallestText() * folded.fold.scale};
}

QPageLayout LoomSheet::layout(QPageSize::PageSizeId paper)
{
    return {QPageSize(paper), QPageLayout::Landscape, QMarginsF(kMargin, kMargin, kMargin, kMargin),
            QPageLayout::Point};
}

LoomSheetMade LoomSheet::wouldMake(QPageSize::PageSizeId paper, int sheets) const
{
    return madeOf(folded(layout(paper).paintRect(QPageLayout::Point).size(),
                         std::clamp(sheets, 1, kMostSheets)));
}

std::optional<LoomSheetMade> LoomSheet::legibleOn(QPageSize::PageSizeId paper, int most) const
{
    for (int sheets = 1; sheets <= most; ++sheets) {
        const LoomSheetMade made = wouldMake(paper, sheets);
        if (made.smallestText >= kLegiblePoints)
            return made;
    }
    return std::nullopt;
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
void LoomSheet::paintBand(QPainter &painter, const Picture &picture,
                          const plan::LoomBand &band) const
{
    painter.save();
    painter.translate(band.nameMargin - band.left, -band.loom.bounds.top());
    if (!band.first) {
        m_painter.paintNames(painter, *picture.network, band.loom, band.left);
        m_painter.paintNumbers(painter, band.in, band.left, true);
    }
    if (!band.last)
        m_painter.paintNumbers(painter, band.out, band.right, false);
    painter.setClipRect(band.loom.bounds, Qt::IntersectClip);
    LoomMarks marks;
    marks.focus = false;
    m_painter.paint(painter, *picture.network, band.loom, marks, band.loom.bounds, 1);
    painter.restore();
}

bool LoomSheet::paintFolded(QPagedPaintDevice &device, QPainter &painter, const QRectF &room,
                            LoomSheetMade &made) const
{
    const Folded picture = folded(room.size(), m_options.sheets);
    const plan::LoomFold &fold = picture.fold;
    made = madeOf(picture);
    const double head = headScale(room.size());
    const LoomLegend legend = legendOf(picture.picture, fold.bands.size() > 1);
    const double high = (room.height() - picture.head) / fold.scale;
    for (std::size_t sheet = 0; sheet < fold.sheets; ++sheet) {
        if (sheet > 0 && !device.newPage())
            return false;
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
            paintBand(painter, picture.picture, band);
            painter.translate(0, band.height() + between);
            first = false;
        }
        painter.restore();
    }
    return true;
}

bool LoomSheet::paintTiles(QPagedPaintDevice &device, QPainter &painter, const QRectF &room,
                           LoomSheetMade &made) const
{
    const double head = headScale(room.size());
    const Picture picture = forUncut();
    const LoomLegend legend = legendOf(picture, false);
    const double headRoom = headHeight(legend, room.width() / head) * head;
    const std::vector<QRectF> parts =
        tilesOf(picture, {room.width() / kTileScale, (room.height() - headRoom) / kTileScale});
    made = {static_cast<int>(parts.size()), 1, picture.leftOut,
            m_painter.smallestText() * kTileScale};
    int row = 0;
    int column = 0;
    for (std::size_t page = 0; page < parts.size(); ++page) {
        const QRectF &part = parts[page];
        if (page > 0 && !device.newPage())
            return false;
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
            painter.save();
            painter.setClipRect(QRectF(0, 0, LoomPainter::kNameMargin, part.height()));
            painter.translate(LoomPainter::kNameMargin - part.left(), -part.top());
            m_painter.paintNames(painter, *picture.network, *picture.loom, part.left());
            painter.restore();
            painter.translate(LoomPainter::kNameMargin, 0);
        }
        paintPart(painter, picture, part, true);
        painter.restore();
    }
    return true;
}

bool LoomSheet::paintOn(QPagedPaintDevice &device, LoomSheetMade &made) const
{
    QPainter painter;
    if (!painter.begin(&device))
        return false;
    const QRectF room(QPointF(0, 0), device.pageLayout().paintRect(QPageLayout::Point).size());
    painter.scale(device.logicalDpiX() / kPointsPerInch, device.logicalDpiY() / kPointsPerInch);
    const bool painted = m_options.tiles ? paintTiles(device, painter, room, made)
                                         : paintFolded(device, painter, room, made);
    return painted && painter.end();
}

Result<LoomSheetMade> LoomSheet::writePdf(const QString &path) const
{
    if (Outcome fine = check(); !fine)
        return fail(fine.error());
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    LoomSheetMade made;
    {
        QPdfWriter writer(&buffer);
        writer.setTitle(m_options.title.isEmpty()
                            ? tr("Build order")
                            : tr("Build order: %1").arg(m_options.title.simplified()));
        writer.setCreator(QStringLiteral("Ohmwright"));
        writer.setResolution(kResolution);
        writer.setPageLayout(layout(m_options.paper));
        if (!paintOn(writer, made))
            return fail(ProblemCode::Io, tr("The chart could not be drawn."));
    }
    if (Outcome saved = sheet::saveFile(path, bytes); !saved)
        return fail(saved.error());
    return made;
}

Result<LoomSheetMade> LoomSheet::writeSvg(const QString &path) const
{
    if (Outcome fine = check(); !fine)
        return fail(fine.error());
    const Picture picture = forUncut();
    const LoomLegend legend = legendOf(picture, false);
    const QRectF all = extent(picture);
    constexpr double kAround = 24;
    const double width = std::max(all.width(), 900.0);
    // Points of paper are units here.
    const double head = headHeight(legend, width * kFullSize) / kFullSize;
    const QSizeF size(width + 2 * kAround, all.height() + head + 2 * kAround);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setTitle(m_options.title.isEmpty()
                           ? tr("Build order")
                           : tr("Build order: %1").arg(m_options.title.simplified()));
    generator.setDescription(legend.text());
    generator.setResolution(96);
    generator.setSize(size.toSize());
    generator.setViewBox(QRectF(QPointF(0, 0), size));
    QPainter painter;
    if (!painter.begin(&generator))
        return fail(ProblemCode::Io, tr("The chart could not be drawn."));
    painter.fillRect(QRectF(QPointF(0, 0), size), LoomColours::print().paper);
    painter.translate(kAround, kAround);
    painter.save();
    painter.scale(1 / kFullSize, 1 / kFullSize);
    paintHead(painter, legend, width * kFullSize, {});
    painter.restore();
    painter.translate(0, head);
    paintPart(painter, picture, all, false);
    if (!painter.end())
        return fail(ProblemCode::Io, tr("The chart could not be drawn."));
    // The family is made by the program and known to nobody else.
    const QByteArray made = QByteArrayLiteral("font-family=\"") + m_family.toUtf8() + '"';
    bytes.replace(made, QByteArrayLiteral("font-family=\"Inter, Helvetica, Arial, sans-serif\""));
    if (Outcome saved = sheet::saveFile(path, bytes); !saved)
        return fail(saved.error());
    return LoomSheetMade{1, 1, picture.leftOut, m_painter.smallestText() * kFullSize};
}

Result<LoomSheetMade> LoomSheet::write(const QString &path) const
{
    if (path.endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive))
        return writePdf(path);
    if (path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive))
        return writeSvg(path);
    return fail(ProblemCode::BadInput,
                tr("The chart is written as .pdf or .svg, not as “%1”.").arg(path));
}

QString chartLetters(const LoomSheetMade &made)
{
    return LoomSheet::tr("letters %1\u00A0pt").arg(made.smallestText, 0, 'f', 1);
}

Result<QPageSize::PageSizeId> chartPaper(const QString &name)
{
    const QString wanted = name.trimmed().toUpper();
    for (const auto &[known, paper] :
         {std::pair("A4", QPageSize::A4), std::pair("A3", QPageSize::A3),
          std::pair("A2", QPageSize::A2), std::pair("A1", QPageSize::A1)}) {
        if (wanted == QLatin1String(known))
            return paper;
    }
    return fail(ProblemCode::BadInput,
                LoomSheet::tr("The paper is A4, A3, A2 or A1, not “%1”.").arg(name));
}

} // namespace ohmwright::ui
