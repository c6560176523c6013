// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_sheet.h"

#include "core/quantity/dates.h"
#include "core/sheet/save_file.h"
#include "ui/build_order/loom_legend.h"
#include "ui/build_order/loom_painter.h"
#include "ui/sheet/sheet_fonts.h"

#include <QBuffer>
#include <QFont>
#include <QMarginsF>
#include <QPageLayout>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPdfWriter>
#include <QPen>
#include <QSvgGenerator>

#include <algorithm>
#include <cmath>

namespace ohmwright::ui {

namespace {

constexpr double kPointsPerInch = 72;
// A scene unit is a screen's pixel; at full size 96 of them are an inch.
constexpr double kFullSize = 0.75; // points per unit
// The smallest text on the loom is this many units high.
constexpr double kSmallestText = 9;
// Tiles are drawn so that it can still be read.
constexpr double kTileScale = 0.66;
constexpr double kMargin = 28; // points
constexpr int kMostStrips = 6;
// Between two strips, units.
constexpr double kBetweenStrips = 26;
// What two tiles share, to be glued, units.
constexpr double kOverlap = 24;
constexpr int kResolution = 1200;

} // namespace

LoomSheet::LoomSheet(const plan::Network &network, const plan::LoomFacts &facts,
                     const LoomSheetOptions &options)
    : m_network(network), m_facts(facts), m_options(options), m_family(sheet::loadSheetFonts().text)
{
    plan::LoomOptions how;
    how.by = options.by;
    how.like = options.like;
    m_loom = plan::layOutLoom(network, facts, LoomPainter(m_family, LoomColours::print()).metrics(),
                              how);
    m_options.like = nullptr;
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

QRectF LoomSheet::extent() const
{
    return LoomPainter(m_family, LoomColours::print()).extent(m_loom, 1);
}

// Where the loom is cut into strips of about the same width: never through a housing or a text, as
// long as there is a place between them within a third of a strip.
std::vector<double> LoomSheet::cuts(int strips) const
{
    const QRectF all = extent();
    std::vector<std::pair<double, double>> taken;
    for (const plan::LoomTask &task : m_loom.tasks) {
        QRectF own = task.body | task.title.box | task.date.box | task.missing.box;
        own |= task.ready.box | task.whisker | task.highVoltageMark;
        taken.emplace_back(own.left() - 10, own.right() + 10);
    }
    for (const plan::LoomBranch &branch : m_loom.branches)
        taken.emplace_back(branch.sleeve.left() - 4, branch.sleeve.right() + 4);
    for (const plan::LoomRule &rule : m_loom.rules)
        taken.emplace_back(rule.x - 2, rule.x + 2);
    std::sort(taken.begin(), taken.end());
    std::vector<double> free;
    double end = all.left();
    for (const auto &[from, to] : taken) {
        if (from > end)
            free.push_back((from + end) / 2);
        end = std::max(end, to);
    }
    std::vector<double> result{all.left()};
    for (int at = 1; at < strips; ++at) {
        const double wanted = all.left() + all.width() * at / strips;
        const auto best = std::min_element(free.begin(), free.end(), [&](double a, double b) {
            return std::abs(a - wanted) < std::abs(b - wanted);
        });
        const double reach = all.width() / strips / 3;
        result.push_back(best != free.end() && std::abs(*best - wanted) < reach ? *best : wanted);
    }
    result.push_back(all.right());
    return result;
}

// Title, what it shows and when, and the legend; points at the size of A3.
double LoomSheet::headHeight(double width) const
{
    const LoomPainter painter(m_family, LoomColours::print());
    const LoomLegend legend(painter, m_network, m_loom);
    return 34 + legend.paintAll(nullptr, {}, width / kFullSize) * kFullSize + 8;
}

void LoomSheet::paintHead(QPainter &painter, double width, const QString &remark) const
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
    painter.drawText(QPointF(0, 20), metrics.elidedText(title, Qt::ElideRight, width * 0.62));
    QFont small(m_family);
    small.setHintingPreference(QFont::PreferNoHinting);
    small.setPixelSize(11);
    painter.setFont(small);
    QString right = m_options.by == plan::LoomBy::Date ? tr("by date") : tr("by chain");
    const QDate today = m_loom.today.isNull() ? m_options.today : m_loom.today;
    if (today.isValid())
        right += tr(" · today, %1").arg(showDate(today));
    if (!remark.isEmpty())
        right += QStringLiteral(" · ") + remark;
    painter.setPen(colours.mute);
    painter.drawText(QRectF(width * 0.62, 4, width * 0.38, 20), Qt::AlignRight | Qt::AlignVCenter,
                     right);
    painter.setPen(QPen(colours.ink, 0.8));
    painter.drawLine(QPointF(0, 28), QPointF(width, 28));
    painter.save();
    painter.translate(0, 32);
    painter.scale(kFullSize, kFullSize);
    const LoomPainter loomPainter(m_family, colours);
    LoomLegend(loomPainter, m_network, m_loom).paintAll(&painter, {}, width / kFullSize);
    painter.restore();
}

// The painter stands at the part's top left corner, in scene units.
void LoomSheet::paintPart(QPainter &painter, const LoomPainter &loomPainter, const QRectF &part,
                          bool clip) const
{
    painter.save();
    if (clip)
        painter.setClipRect(QRectF(QPointF(0, 0), part.size()), Qt::IntersectClip);
    painter.translate(-part.topLeft());
    LoomMarks marks;
    marks.focus = false;
    if (part.top() > extent().top() + 1)
        marks.slideTop = part.top();
    loomPainter.paint(painter, m_network, m_loom, marks, part, 1);
    painter.restore();
}

// How large the loom gets in as many strips, points a unit. All but the first have a margin for the
// names of the branches that go on.
double LoomSheet::scaleOf(int strips, QSizeF room) const
{
    const double height = extent().height();
    const std::vector<double> at = cuts(strips);
    double widest = 0;
    for (std::size_t strip = 1; strip < at.size(); ++strip)
        widest = std::max(widest,
                          at[strip] - at[strip - 1] + (strip > 1 ? LoomPainter::kNameMargin : 0));
    return std::min({room.width() / widest,
                     room.height() / (strips * height + (strips - 1) * kBetweenStrips),
                     kFullSize * 1.15});
}

// What each tile shows, row by row. All but those on the left have a margin for names; what is cut
// through stands whole on one of two neighbours.
std::vector<QRectF> LoomSheet::tilesOf(QSizeF tile) const
{
    const QRectF all = extent();
    const double shared = std::max(kOverlap, m_loom.axisBand.height() + kOverlap);
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

void LoomSheet::paintStrips(QPainter &painter, const LoomPainter &loomPainter, int strips,
                            double width) const
{
    const QRectF all = extent();
    const std::vector<double> at = cuts(strips);
    for (std::size_t strip = 1; strip < at.size(); ++strip) {
        const double cut = at[strip - 1];
        painter.save();
        if (strip > 1) {
            painter.setPen(QPen(LoomColours::print().mute, 0.8, Qt::DashLine));
            painter.drawLine(QPointF(0, -kBetweenStrips / 2), QPointF(width, -kBetweenStrips / 2));
            painter.save();
            painter.translate(LoomPainter::kNameMargin - cut, -all.top());
            loomPainter.paintNames(painter, m_network, m_loom, cut);
            painter.restore();
            painter.translate(LoomPainter::kNameMargin, 0);
        }
        paintPart(painter, loomPainter, QRectF(cut, all.top(), at[strip] - cut, all.height()),
                  strips > 1);
        painter.restore();
        painter.translate(0, all.height() + kBetweenStrips);
    }
}

bool LoomSheet::paintOn(QPagedPaintDevice &device, LoomSheetMade &made) const
{
    QPainter painter;
    if (!painter.begin(&device))
        return false;
    const LoomPainter loomPainter(m_family, LoomColours::print());
    const QPageLayout layout = device.pageLayout();
    const QRectF room(QPointF(0, 0), layout.paintRect(QPageLayout::Point).size());
    painter.scale(device.logicalDpiX() / kPointsPerInch, device.logicalDpiY() / kPointsPerInch);
    // On larger paper title and legend are larger, too.
    const double head =
        std::clamp(std::sqrt(room.width() * room.height() / (1134 * 786.0)), 0.72, 2.2);
    const double headRoom = headHeight(room.width() / head) * head;
    const auto paintTitle = [&](const QString &remark) {
        painter.save();
        painter.scale(head, head);
        paintHead(painter, room.width() / head, remark);
        painter.restore();
    };
    if (!m_options.tiles) {
        const QSizeF place(room.width(), room.height() - headRoom);
        double best = scaleOf(1, place);
        int strips = 1;
        for (int count = 2; count <= kMostStrips; ++count) {
            // Folding is a nuisance to read: only where it makes a difference.
            if (const double scale = scaleOf(count, place); scale > best * 1.15) {
                best = scale;
                strips = count;
            }
        }
        made = {1, strips, kSmallestText * best};
        paintTitle({});
        painter.translate(0, headRoom);
        painter.scale(best, best);
        paintStrips(painter, loomPainter, strips, room.width() / best);
        return painter.end();
    }
    const std::vector<QRectF> parts =
        tilesOf({room.width() / kTileScale, (room.height() - headRoom) / kTileScale});
    made = {static_cast<int>(parts.size()), 1, kSmallestText * kTileScale};
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
        paintTitle(tr("page %1: row %2, column %3").arg(page + 1).arg(row).arg(column));
        painter.translate(0, headRoom);
        painter.scale(kTileScale, kTileScale);
        if (column > 1) {
            painter.save();
            painter.setClipRect(QRectF(0, 0, LoomPainter::kNameMargin, part.height()));
            painter.translate(LoomPainter::kNameMargin - part.left(), -part.top());
            loomPainter.paintNames(painter, m_network, m_loom, part.left());
            painter.restore();
            painter.translate(LoomPainter::kNameMargin, 0);
        }
        paintPart(painter, loomPainter, part, true);
        painter.restore();
    }
    return painter.end();
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
        writer.setPageLayout(QPageLayout(QPageSize(m_options.paper), QPageLayout::Landscape,
                                         QMarginsF(kMargin, kMargin, kMargin, kMargin),
                                         QPageLayout::Point));
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
    const QRectF all = extent();
    constexpr double kAround = 24;
    const double width = std::max(all.width(), 900.0);
    // Points of paper are units here.
    const double head = headHeight(width * kFullSize) / kFullSize;
    const QSizeF size(width + 2 * kAround, all.height() + head + 2 * kAround);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setTitle(m_options.title.isEmpty()
                           ? tr("Build order")
                           : tr("Build order: %1").arg(m_options.title.simplified()));
    generator.setDescription(
        LoomLegend(LoomPainter(m_family, LoomColours::print()), m_network, m_loom).text());
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
    paintHead(painter, width * kFullSize, {});
    painter.restore();
    painter.translate(0, head);
    paintPart(painter, LoomPainter(m_family, LoomColours::print()), all, false);
    if (!painter.end())
        return fail(ProblemCode::Io, tr("The chart could not be drawn."));
    // The family is made by the program and known to nobody else.
    const QByteArray made = QByteArrayLiteral("font-family=\"") + m_family.toUtf8() + '"';
    bytes.replace(made, QByteArrayLiteral("font-family=\"Inter, Helvetica, Arial, sans-serif\""));
    if (Outcome saved = sheet::saveFile(path, bytes); !saved)
        return fail(saved.error());
    return LoomSheetMade{1, 1, kSmallestText * kFullSize};
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
