// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_route.h"

#include "core/plan/loom_tracks.h"
#include "core/plan/loom_ways.h"
#include "core/plan/loom_wiring.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace ohmwright::plan::loom {

namespace {

// A cubic that looks like a quarter of an ellipse.
constexpr double kQuarter = 0.5523;

double widthOf(const Link &link, const LoomMetrics &metrics)
{
    return metrics.wirePitch * (link.driving ? 1.5 : 1.0);
}

// The wires of one task share a track in a channel.
void layChannels(const RouteInput &input, Wiring &wiring)
{
    const Placement &place = *input.placement;
    wiring.channels.resize(static_cast<std::size_t>(input.rows) + 1);
    wiring.lanes.resize(place.links.size());
    for (const std::size_t task : place.order) {
        std::map<int, std::size_t> used; // channel to stretch
        for (const std::size_t link : place.outOf[task]) {
            const Way &way = wiring.ways[link];
            if (way.channel == kNoChannel)
                continue;
            auto &stretches = wiring.channels[static_cast<std::size_t>(way.channel)];
            const auto [at, isNew] = used.try_emplace(way.channel, stretches.size());
            if (isNew) {
                Stretch stretch;
                stretch.owner = task;
                stretch.join(way.leaves, way.from < way.channel ? -1 : 1);
                stretches.push_back(std::move(stretch));
            }
            wiring.lanes[link].along = at->second;
            Stretch &stretch = stretches[at->second];
            stretch.width = std::max(stretch.width, widthOf(place.links[link], *input.metrics));
            stretch.join(way.enters, way.to < way.channel ? -1 : 1);
        }
    }
}

// Heights: channels as high as their tracks need, rows as high as what stands in them.
double stackRows(const RouteInput &input, Wiring &wiring)
{
    const LoomMetrics &metrics = *input.metrics;
    double y = 0;
    wiring.rowY.resize(static_cast<std::size_t>(input.rows));
    for (std::size_t channel = 0; channel < wiring.channels.size(); ++channel) {
        const double breadth = layTracks(wiring.channels[channel], 0);
        const bool edge = channel == 0 || channel + 1 == wiring.channels.size();
        double height = breadth > 0 ? breadth + 1.6 * metrics.wirePitch : 0;
        if (!edge && input.startsBranch[channel])
            height = std::max(height + metrics.wirePitch, metrics.channel);
        else if (!edge)
            height = std::max(height, metrics.channel * 0.4);
        wiring.channelTop.push_back(y + (height - breadth) / 2);
        y += height;
        if (channel < wiring.rowY.size()) {
            wiring.rowY[channel] = y + input.rowUp[channel];
            y += input.rowUp[channel] + input.rowDown[channel];
        }
    }
    return y;
}

// One lane for all a task sends out, one for all that comes into a task from channels; a plate's
// wires come in each by its own.
void layLanes(const RouteInput &input, Wiring &wiring)
{
    const auto &links = input.placement->links;
    wiring.gaps.resize(static_cast<std::size_t>(input.placement->columns));
    std::vector<std::map<std::size_t, std::size_t>> leaving(wiring.gaps.size());
    std::vector<std::map<std::size_t, std::size_t>> entering(wiring.gaps.size());
    const auto laneOf = [&](std::map<std::size_t, std::size_t> &lanes, std::size_t key,
                            std::vector<Stretch> &stretches, std::size_t owner, double width) {
        const auto [at, isNew] = lanes.try_emplace(key, stretches.size());
        if (isNew)
            stretches.emplace_back();
        Stretch &stretch = stretches[at->second];
        stretch.owner = owner;
        stretch.width = std::max(stretch.width, width);
        return at->second;
    };
    for (std::size_t at = 0; at < links.size(); ++at) {
        if (!links[at].drawn)
            continue;
        const Way &way = wiring.ways[at];
        const double width = widthOf(links[at], *input.metrics);
        const double startY = wiring.rowY[static_cast<std::size_t>(way.from)];
        const double endY = wiring.endY(at, input.port[at]);
        if (way.straight && std::abs(startY - endY) < 1e-6)
            continue;
        if (!way.straight) {
            const auto gap = static_cast<std::size_t>(way.leaves);
            const std::size_t lane =
                laneOf(leaving[gap], links[at].from, wiring.gaps[gap], links[at].from, width);
            wiring.lanes[at].leaving = lane;
            wiring.gaps[gap][lane].join(startY, -1);
            wiring.gaps[gap][lane].join(way.channel == kNoChannel ? endY : wiring.channelY(at), 1);
        }
        if (way.straight || way.channel != kNoChannel) {
            const auto gap = static_cast<std::size_t>(way.enters);
            const std::size_t key =
                input.ownLanes[links[at].to] ? input.row.size() + at : links[at].to;
            const std::size_t lane =
                laneOf(entering[gap], key, wiring.gaps[gap], links[at].to, width);
            wiring.lanes[at].entering = lane;
            wiring.gaps[gap][lane].join(way.straight ? startY : wiring.channelY(at), -1);
            wiring.gaps[gap][lane].join(endY, 1);
        }
    }
}

void standColumns(const RouteInput &input, Wiring &wiring)
{
    const LoomMetrics &metrics = *input.metrics;
    double x = 0;
    for (std::size_t column = 0; column < wiring.gaps.size(); ++column) {
        wiring.columnLeft.push_back(x);
        x += input.columnWidth[column];
        wiring.columnRight.push_back(x);
        const double breadth = layTracks(wiring.gaps[column], metrics.wirePitch);
        const double width = std::max(metrics.gap, breadth + 0.6 * metrics.gap);
        wiring.laneLeft.push_back(x + (width - breadth) / 2);
        x += width + (column < input.gapRoom.size() ? input.gapRoom[column] : 0);
    }
}

// Corners of a way that goes level, upright, level … made round. Bends keep within their gap: what
// lies beyond it may be a housing or a text.
class Bender
{
public:
    explicit Bender(QPointF start) : m_path{start} {}

    // Level to x = `lane`, upright to y = `to`, and on. The gap spans `left` to `right`.
    void step(double lane, double to, double left, double right)
    {
        const QPointF at = m_path.back();
        const double up = to - at.y();
        if (std::abs(up) < 0.01)
            return;
        const double dir = up > 0 ? 1 : -1;
        const double tall = std::min(std::abs(up) / 2, kBendAcross);
        const double before = std::min(kBendAlong, lane - std::max(left, at.x()));
        const double after = std::min(kBendAlong, right - lane);
        line({lane - before, at.y()});
        curve({lane - before * (1 - kQuarter), at.y()},
              {lane, at.y() + dir * tall * (1 - kQuarter)}, {lane, at.y() + dir * tall});
        line({lane, to - dir * tall});
        curve({lane, to - dir * tall * (1 - kQuarter)}, {lane + after * (1 - kQuarter), to},
              {lane + after, to});
    }

    void line(QPointF to)
    {
        const QPointF from = m_path.back();
        if (std::abs(from.x() - to.x()) < 0.01 && std::abs(from.y() - to.y()) < 0.01)
            return;
        curve(from + (to - from) / 3, from + (to - from) * 2 / 3, to);
    }

    [[nodiscard]] std::vector<QPointF> path() && { return std::move(m_path); }

private:
    void curve(QPointF first, QPointF second, QPointF end)
    {
        m_path.insert(m_path.end(), {first, second, end});
    }

    std::vector<QPointF> m_path;
};

void drawPaths(const RouteInput &input, const Wiring &wiring, Routed &routed)
{
    const auto &links = input.placement->links;
    routed.path.resize(links.size());
    routed.alongTrunk.assign(links.size(), false);
    for (std::size_t at = 0; at < links.size(); ++at) {
        if (!links[at].drawn)
            continue;
        const Way &way = wiring.ways[at];
        const auto toColumn = static_cast<std::size_t>(way.enters) + 1;
        const QPointF start(wiring.columnLeft[static_cast<std::size_t>(way.leaves)] +
                                input.leaveAt[links[at].from],
                            wiring.rowY[static_cast<std::size_t>(way.from)]);
        const QPointF end(wiring.columnLeft[toColumn] + input.enterAt[links[at].to],
                          wiring.endY(at, input.port[at]));
        Bender bender(start);
        const auto step = [&](int gap, std::size_t lane, double to) {
            bender.step(wiring.laneX(gap, lane), to,
                        wiring.columnRight[static_cast<std::size_t>(gap)],
                        wiring.columnLeft[static_cast<std::size_t>(gap) + 1]);
        };
        if (wiring.lanes[at].leaving != kNoLane)
            step(way.leaves, wiring.lanes[at].leaving,
                 way.channel == kNoChannel ? end.y() : wiring.channelY(at));
        if (wiring.lanes[at].entering != kNoLane)
            step(way.enters, wiring.lanes[at].entering, end.y());
        bender.line(end);
        routed.path[at] = std::move(bender).path();
        routed.alongTrunk[at] = way.straight;
        for (std::size_t point = 3; point < routed.path[at].size(); point += 3) {
            const QPointF piece = routed.path[at][point] - routed.path[at][point - 3];
            routed.length += std::hypot(piece.x(), piece.y());
        }
    }
}

} // namespace

Routed route(const RouteInput &input)
{
    Routed routed;
    Wiring wiring;
    wiring.ways = chooseWays(*input.placement, input.row, input.rows);
    layChannels(input, wiring);
    routed.bottom = stackRows(input, wiring);
    layLanes(input, wiring);
    standColumns(input, wiring);
    drawPaths(input, wiring, routed);
    routed.crossings = countCrossings(input, wiring);
    bundle(input, wiring, routed);
    routed.columnLeft = std::move(wiring.columnLeft);
    routed.rowY = std::move(wiring.rowY);
    return routed;
}

} // namespace ohmwright::plan::loom
