// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_wiring.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace ohmwright::plan::loom {

namespace {

// Wires side by side for less than this are no bundle, scene units.
constexpr double kShortestBundle = 24;
// Wires up to this many pitches apart lie side by side.
constexpr double kNear = 1.6;

struct Level // a horizontal piece of some wire
{
    double y = 0, left = 0, right = 0;
    std::size_t from = 0, to = 0; // whose wire; twice the same when several share it
};

// All level pieces, by the gaps they pass.
class Levels
{
public:
    Levels(const RouteInput &input, const Wiring &wiring)
        : m_in(input), m_wiring(wiring), m_byGap(wiring.gaps.size())
    {
        gather();
    }
    [[nodiscard]] const std::vector<Level> &in(std::size_t gap) const { return m_byGap[gap]; }

private:
    void add(const Level &level, int first, int last)
    {
        for (int gap = first; gap <= last; ++gap)
            m_byGap[static_cast<std::size_t>(gap)].push_back(level);
    }
    void gather();

    const RouteInput &m_in;
    const Wiring &m_wiring;
    std::vector<std::vector<Level>> m_byGap;
};

void Levels::gather()
{
    struct Shared
    {
        Level level;
        int first = 0, last = 0;
    };
    std::map<std::pair<int, std::size_t>, Shared> along;
    std::map<std::size_t, Shared> leaving, entering;
    const auto &links = m_in.placement->links;
    for (std::size_t at = 0; at < links.size(); ++at) {
        if (!links[at].drawn)
            continue;
        const Way &way = m_wiring.ways[at];
        const Wiring::Lanes &lanes = m_wiring.lanes[at];
        const std::size_t from = links[at].from;
        const std::size_t to = links[at].to;
        const double startY = m_wiring.rowY[static_cast<std::size_t>(way.from)];
        const double endY = m_wiring.endY(at, m_in.port[at]);
        const double left = m_wiring.columnLeft[static_cast<std::size_t>(way.leaves)];
        const double right = m_wiring.columnLeft[static_cast<std::size_t>(way.enters) + 1];
        const double enterX =
            lanes.entering == kNoLane ? right : m_wiring.laneX(way.enters, lanes.entering);
        if (way.straight)
            add({startY, left, enterX, from, to}, way.leaves, way.enters);
        if (lanes.leaving != kNoLane) {
            const double lane = m_wiring.laneX(way.leaves, lanes.leaving);
            leaving[from] = {{startY, left, lane, from, from}, way.leaves, way.leaves};
            if (way.channel == kNoChannel)
                add({endY, lane, right, from, to}, way.enters, way.enters);
        }
        if (lanes.entering != kNoLane) {
            if (m_in.ownLanes[to] || way.straight)
                add({endY, enterX, right, from, to}, way.enters, way.enters);
            else
                entering[to] = {{endY, enterX, right, to, to}, way.enters, way.enters};
        }
        if (way.channel != kNoChannel) {
            const double start = m_wiring.laneX(way.leaves, lanes.leaving);
            const Shared shared{
                {m_wiring.channelY(at), start, enterX, from, from}, way.leaves, way.enters};
            const auto [item, isNew] =
                along.try_emplace(std::pair(way.channel, lanes.along), shared);
            if (!isNew && item->second.level.right < enterX)
                item->second = shared;
        }
    }
    for (const auto &[key, item] : along)
        add(item.level, item.first, item.last);
    for (const auto &[task, item] : leaving)
        add(item.level, item.first, item.last);
    for (const auto &[task, item] : entering)
        add(item.level, item.first, item.last);
}

// A band around each two neighbours among `stretches`; `first` is where their tracks begin.
void wrap(const std::vector<Stretch> &stretches, double first, bool upright,
          const std::vector<std::pair<double, double>> &span, double pitch, Routed &routed)
{
    for (std::size_t own = 0; own < stretches.size(); ++own) {
        for (std::size_t other = 0; other < stretches.size(); ++other) {
            const double apart = stretches[other].track - stretches[own].track;
            if (own == other || apart <= 0 || apart > kNear * pitch)
                continue;
            const double from = std::max(span[own].first, span[other].first) + kBendAlong;
            const double to = std::min(span[own].second, span[other].second) - kBendAlong;
            if (to - from < kShortestBundle)
                continue;
            const double low = first + stretches[own].track - pitch * 0.6;
            const double high = first + stretches[other].track + pitch * 0.6;
            routed.bundles.push_back(upright ? QRectF(low, from, high - low, to - from)
                                             : QRectF(from, low, to - from, high - low));
        }
    }
}

// A tie around each group of neighbours among `tracks` at `at` along them.
void tie(std::vector<double> tracks, double at, bool upright, double pitch, Routed &routed)
{
    std::sort(tracks.begin(), tracks.end());
    for (std::size_t first = 0; first < tracks.size();) {
        std::size_t past = first + 1;
        while (past < tracks.size() && tracks[past] - tracks[past - 1] <= kNear * pitch)
            ++past;
        if (past - first >= 2) {
            const double middle = (tracks[first] + tracks[past - 1]) / 2;
            LoomTie mark;
            mark.at = upright ? QPointF(middle, at) : QPointF(at, middle);
            mark.halfSpan = (tracks[past - 1] - tracks[first]) / 2 + pitch * 0.7;
            mark.acrossUpright = upright;
            routed.ties.push_back(mark);
        }
        first = past;
    }
}

} // namespace

double Wiring::laneX(int gap, std::size_t lane) const
{
    const auto at = static_cast<std::size_t>(gap);
    return laneLeft[at] + gaps[at][lane].track;
}

double Wiring::channelY(std::size_t link) const
{
    const auto channel = static_cast<std::size_t>(ways[link].channel);
    return channelTop[channel] + channels[channel][lanes[link].along].track;
}

double Wiring::endY(std::size_t link, double port) const
{
    return rowY[static_cast<std::size_t>(ways[link].to)] + port;
}

int countCrossings(const RouteInput &input, const Wiring &wiring)
{
    const Levels levels(input, wiring);
    int crossings = 0;
    for (std::size_t gap = 0; gap < wiring.gaps.size(); ++gap) {
        for (const Stretch &lane : wiring.gaps[gap]) {
            const double x = wiring.laneLeft[gap] + lane.track;
            for (const Level &level : levels.in(gap)) {
                if (level.y <= lane.lo || level.y >= lane.hi || x <= level.left ||
                    x >= level.right || lane.owner == level.from || lane.owner == level.to)
                    continue;
                const bool joined = std::any_of(
                    lane.joins.begin(), lane.joins.end(),
                    [&](const Stretch::Join &join) { return std::abs(join.at - level.y) < 0.01; });
                crossings += joined ? 0 : 1;
            }
        }
    }
    return crossings;
}

void bundle(const RouteInput &input, const Wiring &wiring, Routed &routed)
{
    const double pitch = input.metrics->wirePitch;
    const std::size_t columns = wiring.gaps.size();
    // A stretch along a channel is known by its gaps; its ends lie somewhere in them.
    const auto middleOf = [&](double gap) {
        const auto at = static_cast<std::size_t>(gap);
        return at + 1 < columns ? (wiring.columnRight[at] + wiring.columnLeft[at + 1]) / 2
                                : wiring.columnRight[at];
    };
    for (std::size_t channel = 0; channel < wiring.channels.size(); ++channel) {
        const auto &stretches = wiring.channels[channel];
        std::vector<std::pair<double, double>> span;
        span.reserve(stretches.size());
        for (const Stretch &stretch : stretches)
            span.emplace_back(middleOf(stretch.lo), middleOf(stretch.hi));
        wrap(stretches, wiring.channelTop[channel], false, span, pitch, routed);
        for (std::size_t column = 1; column < columns; column += 2) {
            std::vector<double> tracks;
            for (const Stretch &stretch : stretches) {
                const auto at = static_cast<double>(column);
                if (stretch.lo < at && stretch.hi >= at)
                    tracks.push_back(wiring.channelTop[channel] + stretch.track);
            }
            tie(std::move(tracks), (wiring.columnLeft[column] + wiring.columnRight[column]) / 2,
                false, pitch, routed);
        }
    }
    for (std::size_t gap = 0; gap < columns; ++gap) {
        const auto &stretches = wiring.gaps[gap];
        std::vector<std::pair<double, double>> span;
        span.reserve(stretches.size());
        for (const Stretch &stretch : stretches)
            span.emplace_back(stretch.lo, stretch.hi);
        wrap(stretches, wiring.laneLeft[gap], true, span, pitch, routed);
        for (std::size_t row = 0; row < wiring.rowY.size(); ++row) {
            const double y = wiring.rowY[row] - input.rowUp[row] * 0.6;
            std::vector<double> tracks;
            for (const Stretch &stretch : stretches) {
                if (stretch.lo < y - kBendAcross && stretch.hi > y + kBendAcross)
                    tracks.push_back(wiring.laneLeft[gap] + stretch.track);
            }
            tie(std::move(tracks), y, true, pitch, routed);
        }
    }
}

} // namespace ohmwright::plan::loom
