// SPDX-License-Identifier: GPL-3.0-or-later
// What keeps its size however far away: names, rings, and the small map.
#include "ui/build_order/loom_painter_canvas.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <QStringList>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

namespace ohmwright::ui {

using plan::LoomState;
using plan::LoomTask;
using plan::LoomText;
using plan::LoomWire;

namespace {

// Beside the letters of a name, pixels.
constexpr double kNameSide = 4;
// Between a name and the cut its trunk goes on at; the numbers of other wires stand there.
constexpr double kBeforeCut = 24;

// How much a name would hide: other names above all, then what sticks out of the picture, housings,
// the wires that drive the date, and any other wire.
class Hiding
{
public:
    explicit Hiding(const plan::Loom &loom) : m_loom(loom)
    {
        m_reach.reserve(loom.wires.size());
        for (const LoomWire &wire : loom.wires)
            m_reach.push_back(LoomPainter::reach(wire));
    }

    [[nodiscard]] int of(const QRectF &place, const std::vector<QRectF> &names) const
    {
        int sum = m_loom.bounds.contains(place) ? 0 : 30;
        for (const QRectF &other : names)
            sum += other.intersects(place) ? 100 : 0;
        for (const LoomTask &other : m_loom.tasks)
            sum += other.body.intersects(place) ? 10 : 0;
        for (std::size_t at = 0; at < m_reach.size(); ++at)
            if (m_reach[at].intersects(place) && crosses(m_loom.wires[at], place))
                sum += m_loom.wires[at].driving ? 5 : 1;
        return sum;
    }

private:
    // Whether one of its straight pieces passes through; bends are short.
    static bool crosses(const LoomWire &wire, const QRectF &place)
    {
        for (std::size_t at = 0; at + 3 < wire.path.size(); at += 3) {
            const QRectF piece = QRectF(wire.path[at], wire.path[at + 3]).normalized();
            if (piece.adjusted(-1, -1, 1, 1).intersects(place))
                return true;
        }
        return false;
    }

    const plan::Loom &m_loom;
    std::vector<QRectF> m_reach;
};

} // namespace

// A sleeve that would leave the view on the left slides along its trunk, as sleeves do; a run that
// forks off another then shows one, too, since the fork is out of sight.
std::vector<LoomPainter::Sleeve> LoomPainter::sleevesOf(const plan::Loom &loom, double grown,
                                                        std::optional<double> edge)
{
    std::vector<Sleeve> all;
    for (std::size_t at = 0; at < loom.branches.size(); ++at) {
        const plan::LoomBranch &branch = loom.branches[at];
        const QSizeF size = branch.sleeve.size() * grown;
        for (const plan::LoomTrunk &run : branch.runs) {
            const bool first = &run == &branch.runs.front();
            const bool named = first || run.fork.empty();
            const double right = first ? branch.sleeve.right() : run.left;
            QRectF box(QPointF(right - size.width(), run.y - size.height() / 2), size);
            const bool slides =
                edge && (named ? box.left() : run.left) < *edge && run.right > *edge + box.width();
            if (slides)
                box.moveLeft(*edge);
            if (named || slides)
                all.push_back({at, box});
        }
    }
    return all;
}

std::vector<LoomPainter::Sleeve> LoomPainter::sleeves(const plan::Loom &loom, double scale,
                                                      std::optional<double> edge) const
{
    const double natural = font(LoomText::Sleeve).pixelSize();
    const double air = 1 / scale;
    // As large as a name must be; where thousands of tasks in one window leave less room, all of
    // them are smaller.
    for (double pixels = kNamePixels * m_letters;; pixels *= 0.92) {
        const double grown = std::max(1.0, pixels / (natural * scale));
        std::vector<Sleeve> all = sleevesOf(loom, grown, edge);
        std::sort(all.begin(), all.end(), [](const Sleeve &left, const Sleeve &right) {
            return left.box.center().y() < right.box.center().y();
        });
        // Pushed down from the top until none lies over another, pushed up from the bottom, and
        // the middle of both, which keeps them apart as well.
        std::vector<double> down(all.size()), up(all.size());
        const auto across = [&](std::size_t a, std::size_t b) {
            return all[a].box.left() < all[b].box.right() && all[b].box.left() < all[a].box.right();
        };
        for (std::size_t at = 0; at < all.size(); ++at) {
            down[at] = all[at].box.top();
            for (std::size_t above = 0; above < at; ++above) {
                if (across(at, above))
                    down[at] = std::max(down[at], down[above] + all[above].box.height() + air);
            }
        }
        for (std::size_t at = all.size(); at-- > 0;) {
            up[at] = all[at].box.top();
            for (std::size_t below = at + 1; below < all.size(); ++below) {
                if (across(at, below))
                    up[at] = std::min(up[at], up[below] - all[at].box.height() - air);
            }
        }
        bool near = true;
        for (std::size_t at = 0; at < all.size(); ++at) {
            const double top = (down[at] + up[at]) / 2;
            near = near && std::abs(top - all[at].box.top()) < 0.55 * all[at].box.height();
            all[at].box.moveTop(top);
        }
        if (near || grown <= 1 || pixels < 2)
            return all;
    }
}

void LoomPainter::paintOutline(QPainter &painter, const plan::Network &network,
                               const plan::Loom &loom, double scale) const
{
    const double pixel = 1 / scale;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(mixed(m_colours.mute, m_colours.panel, 0.5), 0.7 * pixel));
    for (const plan::LoomBranch &branch : loom.branches) {
        for (const plan::LoomTrunk &run : branch.runs)
            painter.drawLine(QPointF(run.left, run.y), QPointF(run.right, run.y));
    }
    for (const LoomWire &wire : loom.wires) {
        if (!wire.driving)
            continue;
        painter.setPen(QPen(wire.highVoltage ? m_colours.highVoltage : m_colours.ink, 1.4 * pixel));
        painter.drawPath(wirePath(wire));
    }
    for (const LoomTask &task : loom.tasks) {
        const bool hot = network.tasks[task.task].highVoltage;
        const QColor edge = hot ? m_colours.highVoltage : m_colours.ink;
        const bool done = task.state == LoomState::Done;
        const bool waits = task.state == LoomState::Waits || task.state == LoomState::SetAside;
        painter.setPen(QPen(waits ? mixed(edge, m_colours.panel, 0.55) : edge, 0.8 * pixel));
        painter.setBrush(done ? QBrush(mixed(m_colours.ink, m_colours.panel, 0.75))
                              : QBrush(m_colours.panel));
        painter.drawRect(task.body);
    }
}

QRectF LoomPainter::extent(const plan::Loom &loom, double scale) const
{
    QRectF extent = loom.bounds;
    const double out = 10 / scale;
    for (const Sleeve &sleeve : sleeves(loom, scale, std::nullopt))
        extent |= sleeve.box.adjusted(-out, -out / 5, 0, out / 5);
    if (!loom.rules.empty())
        extent |= axisBand(loom, scale);
    return extent;
}

void LoomPainter::paintSleeves(Canvas &canvas) const
{
    for (const Sleeve &sleeve : sleeves(canvas.loom, canvas.scale, canvas.marks.slideFrom))
        paintSleeve(canvas, canvas.loom.branches[sleeve.branch], sleeve.box);
}

void LoomPainter::paintNames(QPainter &painter, const plan::Network &network,
                             const plan::Loom &loom, double cut) const
{
    const LoomMarks marks;
    Canvas canvas{painter, network, loom, marks, loom.bounds.adjusted(-200, 0, 200, 0), 1};
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    for (const plan::LoomBranch &branch : loom.branches) {
        const QRectF &own = branch.sleeve;
        for (const plan::LoomTrunk &run : branch.runs) {
            if (run.left >= cut || run.right <= cut)
                continue;
            const QRectF box(QPointF(cut - kBeforeCut - own.width(), run.y - own.height() / 2),
                             own.size());
            const bool tube =
                std::any_of(run.spans.begin(), run.spans.end(), [&](const plan::LoomSpan &span) {
                    return span.left < cut && span.right > cut;
                });
            painter.setPen(canvas.pen(branch.highVoltage ? m_colours.highVoltage : m_colours.mute,
                                      kTrunkHalf));
            if (tube)
                painter.drawLine(QPointF(box.right(), run.y), QPointF(cut, run.y));
            paintSleeve(canvas, branch, box);
        }
    }
    painter.restore();
}

void LoomPainter::paintNumbers(QPainter &painter, const std::vector<double> &heights, double cut,
                               bool before) const
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(font(LoomText::Missing));
    for (std::size_t at = 0; at < heights.size(); ++at) {
        const double y = heights[at];
        painter.setPen(QPen(mixed(m_colours.mute, m_colours.paper, 0.75), 1));
        painter.drawLine(QPointF(cut, y), QPointF(cut + (before ? -3 : 3), y));
        painter.setPen(m_colours.ink);
        painter.drawText(QRectF(before ? cut - 20 : cut + 4, y - 7, 16, 14),
                         Qt::AlignVCenter | Qt::TextDontClip |
                             (before ? Qt::AlignRight : Qt::AlignLeft),
                         QString::number(at + 1));
    }
    painter.restore();
}

// At its natural size, enlarged as a whole: letters of whole pixels would differ from one to the
// next.
void LoomPainter::paintSleeve(Canvas &canvas, const plan::LoomBranch &branch,
                              const QRectF &box) const
{
    if (!box.intersects(canvas.exposed))
        return;
    QPainter &painter = canvas.painter;
    const double grown = box.height() / branch.sleeve.height();
    const QColor edge = branch.highVoltage ? m_colours.highVoltage : m_colours.mute;
    painter.save();
    painter.translate(box.topLeft());
    painter.scale(grown, grown);
    const QRectF own(QPointF(0, 0), branch.sleeve.size());
    painter.setPen(QPen(edge, std::max(1.0, 0.8 / (canvas.scale * grown))));
    painter.setBrush(m_colours.panel);
    painter.drawRoundedRect(own, 3, 3);
    for (const double x : {own.left() + 4, own.right() - 4})
        painter.drawLine(QPointF(x, own.top()), QPointF(x, own.bottom()));
    painter.setFont(font(LoomText::Sleeve));
    painter.setPen(m_colours.ink);
    painter.drawText(own, Qt::AlignCenter | Qt::TextDontClip, branch.name.lines.value(0));
    painter.restore();
}

QFont LoomPainter::farNameFont(double scale) const
{
    QFont letters = font(LoomText::Milestone);
    letters.setPixelSize(
        std::max(1, static_cast<int>(std::lround(kNamePixels * m_letters / scale))));
    return letters;
}

// Among so many wires there is no place without any: each is tried on one line or as laid out;
// beside, above or below.
std::vector<LoomName> LoomPainter::placeNames(const plan::Network &network, const plan::Loom &loom,
                                              double scale) const
{
    std::vector<LoomName> names;
    if (scale >= kFullText)
        return names;
    const double unit = 1 / scale; // one pixel
    const Hiding hiding(loom);
    std::vector<QRectF> taken;
    for (const Sleeve &sleeve : sleeves(loom, scale, std::nullopt))
        taken.push_back(sleeve.box);
    if (!loom.rules.empty())
        taken.push_back(axisBand(loom, scale));
    const QFontMetricsF metrics(farNameFont(scale));
    for (const LoomTask &task : loom.tasks) {
        const plan::Task &own = network.tasks[task.task];
        if (!own.milestone)
            continue;
        const QPointF centre = task.body.center();
        LoomName best{task.task, {}, {}};
        int least = std::numeric_limits<int>::max();
        for (const QStringList &written : {QStringList{own.title}, task.title.lines}) {
            double width = 0;
            for (const QString &line : written)
                width = std::max(width, metrics.horizontalAdvance(line) + 2 * kNameSide * unit);
            const double height = metrics.height() * static_cast<double>(written.size());
            for (const QPointF &at :
                 {QPointF(task.body.right() + 3 * unit, centre.y() - height / 2),
                  QPointF(centre.x() - width / 2, task.body.top() - height - unit),
                  QPointF(centre.x() - width / 2, task.body.bottom() + unit),
                  QPointF(task.body.left() - 3 * unit - width, centre.y() - height / 2)}) {
                const QRectF place(at, QSizeF(width, height));
                const int now = hiding.of(place, taken);
                if (now < least) {
                    least = now;
                    best.box = place;
                    best.lines = written;
                }
            }
        }
        taken.push_back(best.box);
        names.push_back(std::move(best));
    }
    return names;
}

void LoomPainter::paintFarNames(Canvas &canvas, const std::vector<LoomName> &names) const
{
    QPainter &painter = canvas.painter;
    const double unit = 1 / canvas.scale;
    const QFont letters = farNameFont(canvas.scale);
    const QFontMetricsF metrics(letters);
    for (const LoomName &name : names) {
        if (!name.box.adjusted(-2 * unit, -2 * unit, 2 * unit, 2 * unit).intersects(canvas.exposed))
            continue;
        painter.setOpacity(canvas.lit(name.task) ? 1 : 0.4);
        painter.setPen(canvas.pen(mixed(m_colours.mute, m_colours.panel, 0.5), 0, 0.8));
        painter.setBrush(m_colours.panel);
        painter.drawRoundedRect(name.box, 2 * unit, 2 * unit);
        double baseline = name.box.top() + metrics.ascent();
        for (const QString &line : name.lines) {
            QPainterPath text;
            text.addText(QPointF(name.box.left() + kNameSide * unit, baseline), letters, line);
            painter.fillPath(text, m_colours.ink);
            baseline += metrics.height();
        }
    }
    painter.setOpacity(1);
}

void LoomPainter::paintMarks(QPainter &painter, const plan::Loom &loom, const LoomMarks &marks,
                             double scale) const
{
    painter.setRenderHint(QPainter::Antialiasing);
    const double unit = 1 / std::min(1.0, scale);
    const auto pen = [&](double width) {
        return QPen(m_colours.blue, std::max(width, width / scale));
    };
    const auto ring = [&](std::size_t task, double width, bool dashed) {
        if (task >= loom.tasks.size())
            return;
        QPen line = pen(width);
        if (dashed)
            line.setDashPattern({3, 2});
        painter.setPen(line);
        painter.setBrush(Qt::NoBrush);
        const double out = 5 * unit;
        const QRectF around = loom.tasks[task].body | loom.tasks[task].highVoltageMark;
        painter.drawRoundedRect(around.adjusted(-out, -out, out, out), 6 * unit, 6 * unit);
    };
    if (marks.hover && marks.hover != marks.task)
        ring(*marks.hover, 1, false);
    if (marks.task)
        ring(*marks.task, marks.focus ? 2.4 : 1.4, false);
    if (marks.linkTo)
        ring(*marks.linkTo, 2, true);
    if (marks.linkFrom && *marks.linkFrom < loom.tasks.size()) {
        const QRectF &from = loom.tasks[*marks.linkFrom].body;
        std::optional<QPointF> end = marks.linkEnd;
        if (!end && marks.linkTo && *marks.linkTo < loom.tasks.size()) {
            const QRectF &to = loom.tasks[*marks.linkTo].body;
            end = QPointF(to.left(), to.center().y());
        }
        if (end && marks.linkFrom != marks.linkTo) {
            const QPointF start(from.right(), from.center().y());
            const double pull = std::max(40.0, std::abs(end->x() - start.x()) / 2);
            QPainterPath path(start);
            path.cubicTo(start + QPointF(pull, 0), *end - QPointF(pull, 0), *end);
            QPen line = pen(2);
            line.setDashPattern({4, 2.5});
            painter.setPen(line);
            painter.setBrush(Qt::NoBrush);
            painter.drawPath(path);
        }
    }
}

} // namespace ohmwright::ui
