// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_fold.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

namespace ohmwright::plan {

namespace {

// What a stretch of height without anything in it is closed up to.
constexpr double kClosed = 5;
// Above and below a task; the housing's key and a high-voltage mark stand on top of it.
constexpr double kAboveTask = 7;
constexpr double kBelowTask = 3;
// A name stands on a trunk that is cut, a number on a wire that is.
constexpr double kHalfName = 11;
constexpr double kHalfTrunk = 6;
constexpr double kNumberPitch = 10;
constexpr double kHalfWire = 2.6;
constexpr double kNumberRoom = 18;
// Between a name's sleeve and the cut, the numbers' room included.
constexpr double kNameGap = 24;
constexpr std::size_t kMostCuts = 80;
constexpr std::size_t kBandsPerSheet = 8;
// So much smaller may the letters be to have a band less.
constexpr double kForLess = 0.96;
constexpr double kLeastScale = 0.02;

using Span = std::pair<double, double>;

// With what stands close above and below.
QRectF roomOf(const LoomTask &task)
{
    // letters reach below their line
    return reachOf(task)
        .united(task.body.adjusted(0, -kAboveTask, 0, 0))
        .adjusted(0, 0, 0, kBelowTask);
}

// Height of a cubic where it passes x; its x only grows.
std::optional<double> heightAt(const LoomWire &wire, double x)
{
    for (std::size_t at = 0; at + 3 < wire.path.size(); at += 3) {
        if (wire.path[at].x() > x || wire.path[at + 3].x() < x)
            continue;
        const auto point = [&](double t) {
            const double u = 1 - t;
            return wire.path[at] * (u * u * u) + wire.path[at + 1] * (3 * u * u * t) +
                   wire.path[at + 2] * (3 * u * t * t) + wire.path[at + 3] * (t * t * t);
        };
        double low = 0;
        double high = 1;
        for (int round = 0; round < 24; ++round) {
            const double middle = (low + high) / 2;
            (point(middle).x() < x ? low : high) = middle;
        }
        return point(low).y();
    }
    return std::nullopt;
}

// A trunk passes there; its name tells where it goes on.
bool onTrunk(const Loom &loom, double x, double y)
{
    return std::any_of(loom.branches.begin(), loom.branches.end(), [&](const LoomBranch &branch) {
        return std::any_of(branch.runs.begin(), branch.runs.end(), [&](const LoomTrunk &run) {
            return run.left < x && run.right > x && std::abs(run.y - y) < 4;
        });
    });
}

// Only a branch's sleeve stands left of x: it is named anew where its tasks are.
bool beginsAt(const LoomBranch &branch, double x)
{
    return branch.runs.size() == 1 && !branch.runs.front().spans.empty() &&
           branch.sleeve.right() < x && branch.runs.front().spans.front().right > x;
}

// The wires cut at x, one height each; those within their trunk are told by its name.
std::vector<double> cutAt(const Loom &loom, double x)
{
    std::vector<double> heights;
    for (const LoomWire &wire : loom.wires) {
        if (wire.alongTrunk || wire.path.empty() || wire.path.front().x() >= x ||
            wire.path.back().x() <= x)
            continue;
        const std::optional<double> y = heightAt(wire, x);
        if (y && !onTrunk(loom, x, *y))
            heights.push_back(*y);
    }
    std::sort(heights.begin(), heights.end());
    heights.erase(
        std::unique(heights.begin(), heights.end(), [](double a, double b) { return b - a < 1.5; }),
        heights.end());
    return heights;
}

// Heights in a band against those of the whole loom: what is taken keeps its height, what is not
// is closed up, and wires that are cut make room for their numbers.
class Closing
{
public:
    // `stretched`: spans that must come to kNumberPitch at least.
    Closing(const std::vector<Span> &taken, const std::vector<Span> &stretched)
    {
        struct Edge
        {
            double at = 0;
            int taken = 0;
            double stretch = 0; // added to the factor from here on
        };
        std::vector<Edge> edges;
        for (const Span &span : taken) {
            edges.push_back({span.first, 1, 0});
            edges.push_back({span.second, -1, 0});
        }
        for (const Span &span : stretched) {
            const double more = kNumberPitch / (span.second - span.first) - 1;
            edges.push_back({span.first, 0, more});
            edges.push_back({span.second, 0, -more});
        }
        std::sort(edges.begin(), edges.end(),
                  [](const Edge &left, const Edge &right) { return left.at < right.at; });
        int inside = 0;
        double factor = 1;
        for (const Edge &edge : edges) {
            if (m_from.empty() || edge.at > m_from.back()) {
                const double length = m_from.empty() ? 0 : edge.at - m_from.back();
                const double own = inside > 0 ? length : std::min(length, kClosed);
                m_to.push_back((m_to.empty() ? 0 : m_to.back()) +
                               std::max(own, factor > 1.001 ? length * factor : 0.0));
                m_from.push_back(edge.at);
            }
            inside += edge.taken;
            factor += edge.stretch;
        }
    }

    [[nodiscard]] double height() const { return m_to.empty() ? 0 : m_to.back(); }

    [[nodiscard]] double of(double y) const
    {
        if (m_from.empty())
            return y;
        if (y <= m_from.front())
            return y - m_from.front();
        if (y >= m_from.back())
            return m_to.back() + y - m_from.back();
        const auto next = std::upper_bound(m_from.begin(), m_from.end(), y);
        const auto at = static_cast<std::size_t>(next - m_from.begin());
        const double share = (y - m_from[at - 1]) / (m_from[at] - m_from[at - 1]);
        return m_to[at - 1] + share * (m_to[at] - m_to[at - 1]);
    }

private:
    std::vector<double> m_from, m_to;
};

class Folder
{
public:
    Folder(const Loom &loom, const LoomPaper &paper, LoomFoldMemory &memory);

    [[nodiscard]] LoomFold fold();

private:
    struct Step // the best way to fill paper up to a cut
    {
        std::size_t sheet = std::numeric_limits<std::size_t>::max();
        double used = 0; // of that sheet
        std::size_t from = 0;
    };

    [[nodiscard]] Closing closingOf(std::size_t from, std::size_t to) const;
    [[nodiscard]] double heightOf(std::size_t from, std::size_t to);
    [[nodiscard]] double widthOf(std::size_t from, std::size_t to) const;
    [[nodiscard]] double marginOf(std::size_t cut) const;
    [[nodiscard]] std::optional<std::vector<std::size_t>> bandsAt(double scale, std::size_t most);
    [[nodiscard]] LoomBand bandOf(std::size_t from, std::size_t to) const;

    const Loom &m_loom;
    const LoomPaper &m_paper;
    std::vector<double> m_cuts; // with both ends of the loom
    std::vector<std::vector<double>> m_cutWires;
    std::vector<double> m_margins;
    LoomFoldMemory &m_memory;
};

Folder::Folder(const Loom &loom, const LoomPaper &paper, LoomFoldMemory &memory)
    : m_loom(loom), m_paper(paper), m_memory(memory)
{
    m_cuts.push_back(loom.bounds.left());
    const std::size_t apart = loom.cuts.size() / kMostCuts + 1;
    for (std::size_t at = 0; at < loom.cuts.size(); at += apart) {
        if (loom.cuts[at] > m_cuts.back() + 1 && loom.cuts[at] < loom.bounds.right() - 1)
            m_cuts.push_back(loom.cuts[at]);
    }
    m_cuts.push_back(loom.bounds.right());
    m_memory.heights.resize(m_cuts.size() * m_cuts.size(), -1);
    for (std::size_t cut = 0; cut < m_cuts.size(); ++cut) {
        const bool end = cut == 0 || cut + 1 == m_cuts.size();
        m_cutWires.push_back(end ? std::vector<double>() : cutAt(loom, m_cuts[cut]));
        double margin = 0;
        for (const LoomBranch &branch : loom.branches) {
            const bool goesOn =
                std::any_of(branch.runs.begin(), branch.runs.end(), [&](const LoomTrunk &run) {
                    return run.left < m_cuts[cut] && run.right > m_cuts[cut];
                });
            if (!end && goesOn)
                margin = std::max(margin, branch.sleeve.width() + kNameGap + 2);
        }
        m_margins.push_back(end ? 0 : std::max(margin, kNumberRoom));
    }
}

double Folder::marginOf(std::size_t cut) const
{
    return m_margins[cut];
}

double Folder::widthOf(std::size_t from, std::size_t to) const
{
    return marginOf(from) + m_cuts[to] - m_cuts[from] + (to + 1 < m_cuts.size() ? kNumberRoom : 0);
}

// What is taken between two cuts, from top to bottom.
Closing Folder::closingOf(std::size_t from, std::size_t to) const
{
    const double left = m_cuts[from];
    const double right = m_cuts[to];
    std::vector<Span> taken;
    for (const LoomTask &task : m_loom.tasks) {
        const double x = task.body.center().x();
        if (x < left || x > right)
            continue;
        const QRectF own = roomOf(task);
        taken.emplace_back(own.top(), own.bottom());
    }
    for (const LoomBranch &branch : m_loom.branches) {
        if (beginsAt(branch, right))
            continue;
        if (branch.sleeve.right() > left && branch.sleeve.left() < right)
            taken.emplace_back(branch.sleeve.top(), branch.sleeve.bottom());
        for (const LoomTrunk &run : branch.runs) {
            if (run.left > right || run.right < left)
                continue;
            const bool named = run.left < left && run.right > left;
            const double half = named ? kHalfName : kHalfTrunk;
            taken.emplace_back(run.y - half, run.y + half);
        }
    }
    for (const LoomWire &wire : m_loom.wires) {
        for (std::size_t at = 0; at + 3 < wire.path.size(); at += 3) {
            const QPointF &start = wire.path[at];
            const QPointF &end = wire.path[at + 3];
            if (std::abs(start.y() - end.y()) > 0.01 || end.x() < left || start.x() > right)
                continue;
            taken.emplace_back(start.y() - kHalfWire, start.y() + kHalfWire);
        }
    }
    std::vector<Span> stretched;
    for (const std::size_t cut : {from, to}) {
        const std::vector<double> &wires = m_cutWires[cut];
        for (std::size_t at = 0; at < wires.size(); ++at) {
            taken.emplace_back(wires[at] - kNumberPitch / 2, wires[at] + kNumberPitch / 2);
            if (at > 0 && wires[at] - wires[at - 1] < kNumberPitch)
                stretched.emplace_back(wires[at - 1], wires[at]);
        }
    }
    if (!m_loom.rules.empty())
        taken.emplace_back(m_loom.axisBand.top(), m_loom.axisBand.bottom());
    return {taken, stretched};
}

double Folder::heightOf(std::size_t from, std::size_t to)
{
    double &known = m_memory.heights[from * m_cuts.size() + to];
    if (known < 0)
        known = closingOf(from, to).height();
    return known;
}

// The cuts of at most so many bands that fit at this scale: of all ways the one that ends highest
// on the foremost sheet.
std::optional<std::vector<std::size_t>> Folder::bandsAt(double scale, std::size_t most)
{
    const double width = m_paper.room.width() / scale;
    const double height = m_paper.room.height() / scale;
    const std::size_t cuts = m_cuts.size();
    std::vector<std::vector<Step>> best(most + 1, std::vector<Step>(cuts));
    best[0][0] = {0, 0, 0};
    const std::size_t never = std::numeric_limits<std::size_t>::max();
    for (std::size_t band = 1; band <= most; ++band) {
        for (std::size_t to = 1; to < cuts; ++to) {
            for (std::size_t from = to; from-- > 0;) {
                if (m_cuts[to] - m_cuts[from] > width)
                    break;
                const Step &before = best[band - 1][from];
                if (before.sheet == never || widthOf(from, to) > width)
                    continue;
                const double own = heightOf(from, to);
                if (own > height)
                    continue;
                Step step{before.sheet, before.used, from};
                step.used += (step.used > 0 ? m_paper.between : 0) + own;
                if (step.used > height) {
                    ++step.sheet;
                    step.used = own;
                }
                if (step.sheet < m_paper.sheets &&
                    std::pair(step.sheet, step.used) <
                        std::pair(best[band][to].sheet, best[band][to].used))
                    best[band][to] = step;
            }
        }
    }
    for (std::size_t band = 1; band <= most; ++band) {
        if (best[band][cuts - 1].sheet == never)
            continue;
        std::vector<std::size_t> result{cuts - 1};
        for (std::size_t at = band; at > 0; --at)
            result.push_back(best[at][result.back()].from);
        std::reverse(result.begin(), result.end());
        return result;
    }
    return std::nullopt;
}

LoomBand Folder::bandOf(std::size_t from, std::size_t to) const
{
    const Closing closing = closingOf(from, to);
    LoomBand band;
    band.left = m_cuts[from];
    band.right = m_cuts[to];
    band.first = from == 0;
    band.last = to + 1 == m_cuts.size();
    band.nameMargin = marginOf(from);
    band.tail = band.last ? 0 : kNumberRoom;
    for (const double y : m_cutWires[from])
        band.in.push_back(closing.of(y));
    for (const double y : m_cutWires[to])
        band.out.push_back(closing.of(y));
    band.loom = m_loom;
    Loom &loom = band.loom;
    const auto point = [&](QPointF &at) {
        at.setY(closing.of(at.y()));
    };
    for (LoomTask &task : loom.tasks) {
        const QPointF up(0, closing.of(task.body.center().y()) - task.body.center().y());
        moveBy(task, up);
        for (QPointF &lead : task.missingLead)
            lead += up;
    }
    for (LoomBranch &branch : loom.branches) {
        const double up = closing.of(branch.sleeve.center().y()) - branch.sleeve.center().y();
        branch.sleeve.translate(0, up);
        branch.name.at += QPointF(0, up);
        branch.name.box.translate(0, up);
        branch.top = closing.of(branch.top);
        branch.bottom = closing.of(branch.bottom);
        if (beginsAt(branch, band.right))
            branch.runs.clear();
        for (LoomTrunk &run : branch.runs) {
            run.y = closing.of(run.y);
            for (QPointF &at : run.fork)
                point(at);
        }
    }
    for (LoomWire &wire : loom.wires)
        for (QPointF &at : wire.path)
            point(at);
    for (LoomTie &tie : loom.ties) {
        if (tie.acrossUpright) {
            point(tie.at);
            continue;
        }
        const double top = closing.of(tie.at.y() - tie.halfSpan);
        const double bottom = closing.of(tie.at.y() + tie.halfSpan);
        tie.at.setY((top + bottom) / 2);
        tie.halfSpan = (bottom - top) / 2;
    }
    for (QRectF &bundle : loom.bundles) {
        const double top = closing.of(bundle.top());
        bundle = QRectF(bundle.left(), top, bundle.width(), closing.of(bundle.bottom()) - top);
    }
    loom.bounds = QRectF(band.left, 0, band.right - band.left, closing.height());
    if (!loom.rules.empty())
        loom.axisBand = QRectF(band.left, closing.of(loom.axisBand.top()), loom.bounds.width(),
                               loom.axisBand.height());
    return band;
}

LoomFold Folder::fold()
{
    LoomFold result;
    if (m_loom.tasks.empty() || m_paper.room.isEmpty())
        return result;
    const auto largest = [&](std::size_t bands) {
        double low = kLeastScale;
        double high = m_paper.mostScale;
        if (bandsAt(high, bands))
            return high;
        for (int round = 0; round < 18; ++round) {
            const double middle = std::sqrt(low * high);
            (bandsAt(middle, bands) ? low : high) = middle;
        }
        return low;
    };
    const std::size_t most = std::min(kBandsPerSheet * m_paper.sheets, m_cuts.size() - 1);
    const auto fewest = bandsAt(largest(most) * kForLess, most);
    const std::size_t bands = fewest ? fewest->size() - 1 : most;
    result.scale = largest(bands);
    std::optional<std::vector<std::size_t>> cuts = bandsAt(result.scale, bands);
    if (!cuts) { // not even at the least scale: as one band, as small as it takes
        cuts = {{0, m_cuts.size() - 1}};
        result.scale = std::min(m_paper.room.width() / widthOf(0, m_cuts.size() - 1),
                                m_paper.room.height() / heightOf(0, m_cuts.size() - 1));
    }
    double used = 0;
    std::size_t sheet = 0;
    for (std::size_t at = 1; at < cuts->size(); ++at) {
        LoomBand band = bandOf((*cuts)[at - 1], (*cuts)[at]);
        const double wanted = used + (used > 0 ? m_paper.between : 0) + band.height();
        const bool next = used > 0 && wanted > m_paper.room.height() / result.scale + 1e-6;
        used = next ? band.height() : wanted;
        sheet += next ? 1 : 0;
        band.sheet = sheet;
        result.bands.push_back(std::move(band));
    }
    result.sheets = sheet + 1;
    return result;
}

} // namespace

LoomFold foldLoom(const Loom &loom, const LoomPaper &paper, LoomFoldMemory *memory)
{
    LoomFoldMemory own;
    return Folder(loom, paper, memory ? *memory : own).fold();
}

} // namespace ohmwright::plan
