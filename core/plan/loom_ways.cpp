// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_ways.h"

#include <algorithm>
#include <cstdlib>
#include <limits>
#include <map>
#include <utility>

namespace ohmwright::plan::loom {

namespace {

// What weighs when a wire chooses its channel, in crossings: a column of its length, a column
// without company (wires that keep together make a loom), a row of detour.
constexpr double kLength = 0.2;
constexpr double kAlone = 0.25;
constexpr double kDetour = 1.0;
// Rounds in which all choose anew; thousands of wires find their company in two.
constexpr int kRounds = 3;
constexpr int kRoundsOfMany = 2;
constexpr std::size_t kMany = 1000;

// How many wires there are at each (line, gap); the lines of one gap lie together.
class Counts
{
public:
    Counts(int lines, int gaps)
        : m_lines(static_cast<std::size_t>(lines)),
          m_counts(m_lines * static_cast<std::size_t>(gaps), 0)
    {}
    int &at(int line, int gap)
    {
        return m_counts[static_cast<std::size_t>(gap) * m_lines + static_cast<std::size_t>(line)];
    }
    [[nodiscard]] int at(int line, int gap) const
    {
        return m_counts[static_cast<std::size_t>(gap) * m_lines + static_cast<std::size_t>(line)];
    }
    [[nodiscard]] int sum(int firstLine, int pastLine, int gap) const
    {
        int result = 0;
        for (int line = firstLine; line < pastLine; ++line)
            result += at(line, gap);
        return result;
    }

private:
    std::size_t m_lines;
    std::vector<int> m_counts;
};

class Chooser
{
public:
    Chooser(const Placement &placement, const std::vector<int> &row, int rows)
        : m_place(placement), m_row(row), m_rows(rows), m_conductor(rows, placement.columns),
          m_level(rows + 1, placement.columns), m_upright(rows + 1, placement.columns),
          m_ways(placement.links.size())
    {}

    std::vector<Way> choose();

private:
    void findStraight();
    void gatherFar();
    void chooseFor(std::size_t task);
    [[nodiscard]] double cost(const Way &way, int channel, int start) const;
    [[nodiscard]] int uprightCost(int row, int channel, int gap) const;
    void count(const Way &way, int start, int sign);

    const Placement &m_place;
    const std::vector<int> &m_row;
    int m_rows;
    Counts m_conductor; // rows: a wire runs straight there
    Counts m_level;     // channels: wires along it
    Counts m_upright;   // channels: wires across it
    std::vector<Way> m_ways;
    std::vector<std::vector<std::size_t>> m_far; // per task: its links that need a channel
    std::vector<int> m_start; // per link: from here on it is the first of its task's in its channel
};

// Along one run a wire goes straight when nothing stands between its ends.
void Chooser::findStraight()
{
    std::vector<std::vector<std::pair<int, std::size_t>>> standing(
        static_cast<std::size_t>(m_rows));
    for (std::size_t task = 0; task < m_row.size(); ++task)
        standing[static_cast<std::size_t>(m_row[task])].emplace_back(m_place.column[task], task);
    std::vector<std::size_t> nextOnRow(m_row.size(), std::numeric_limits<std::size_t>::max());
    for (auto &row : standing) {
        std::sort(row.begin(), row.end());
        for (std::size_t at = 1; at < row.size(); ++at)
            nextOnRow[row[at - 1].second] = row[at].second;
    }
    for (std::size_t at = 0; at < m_ways.size(); ++at) {
        const Link &link = m_place.links[at];
        Way &way = m_ways[at];
        way.leaves = m_place.column[link.from];
        way.enters = m_place.column[link.to] - 1;
        way.from = m_row[link.from];
        way.to = m_row[link.to];
        // A run that is shared has other areas' sleeves on it.
        way.straight =
            nextOnRow[link.from] == link.to &&
            m_place.areas[m_place.branchOf[link.from]] == m_place.areas[m_place.branchOf[link.to]];
        if (way.straight && link.drawn) {
            for (int gap = way.leaves; gap <= way.enters; ++gap)
                m_conductor.at(way.from, gap) = 1;
        }
    }
}

// Farthest first, so that the nearer ones can share what it takes.
void Chooser::gatherFar()
{
    m_far.resize(m_row.size());
    m_start.assign(m_ways.size(), 0);
    for (const std::size_t task : m_place.order) {
        for (const std::size_t link : m_place.outOf[task]) {
            const Way &way = m_ways[link];
            if (!m_place.links[link].drawn || way.straight)
                continue;
            if (way.leaves < way.enters) {
                m_far[task].push_back(link);
                continue;
            }
            const auto [low, high] = std::minmax(way.from, way.to);
            for (int channel = low + 1; channel <= high; ++channel)
                ++m_upright.at(channel, way.leaves);
        }
        std::stable_sort(m_far[task].begin(), m_far[task].end(),
                         [&](std::size_t left, std::size_t right) {
                             return m_ways[left].enters > m_ways[right].enters;
                         });
    }
}

// What lies in the way of an upright piece in `gap` between a row and a channel.
int Chooser::uprightCost(int row, int channel, int gap) const
{
    const bool down = row < channel;
    return m_conductor.sum(down ? row + 1 : channel, down ? channel : row, gap) +
           m_level.sum(down ? row + 1 : channel + 1, down ? channel : row + 1, gap);
}

// `start`: up to here the task's other wires go along this channel already.
double Chooser::cost(const Way &way, int channel, int start) const
{
    double crossed = 0;
    int alone = 0;
    for (int gap = start; gap <= way.enters; ++gap) {
        const int across = m_upright.at(channel, gap);
        crossed += gap > way.leaves && gap < way.enters ? across : across * 0.5;
        alone += m_level.at(channel, gap) == 0 ? 1 : 0;
    }
    const int length = std::max(0, way.enters - start);
    const int ends = std::abs(2 * channel - (2 * way.to + 1));
    const int detour =
        std::abs(2 * channel - (2 * way.from + 1)) + ends - 2 * std::abs(way.from - way.to);
    return crossed + kLength * length + kAlone * alone + kDetour * detour +
           uprightCost(way.from, channel, way.leaves) + uprightCost(way.to, channel, way.enters) +
           0.01 * ends;
}

// Enters (`sign` 1) or takes back (-1) a wire.
void Chooser::count(const Way &way, int start, int sign)
{
    for (int gap = start; gap <= way.enters; ++gap)
        m_level.at(way.channel, gap) += sign;
    const auto upright = [&](int row, int gap) {
        const bool down = row < way.channel;
        for (int channel = down ? row + 1 : way.channel + 1;
             channel < (down ? way.channel : row + 1); ++channel)
            m_upright.at(channel, gap) += sign;
    };
    upright(way.from, way.leaves);
    upright(way.to, way.enters);
}

void Chooser::chooseFor(std::size_t task)
{
    std::map<int, int> reach; // channel to the last gap taken
    for (const std::size_t link : m_far[task]) {
        Way &way = m_ways[link];
        const int last = std::max(way.from, way.to) + 1;
        double least = std::numeric_limits<double>::max();
        for (int channel = std::min(way.from, way.to); channel <= last; ++channel) {
            const auto at = reach.find(channel);
            const int start = at == reach.end() ? way.leaves : at->second + 1;
            const double now = cost(way, channel, start);
            if (now < least) {
                least = now;
                way.channel = channel;
                m_start[link] = start;
            }
        }
        int &reached = reach.try_emplace(way.channel, way.enters).first->second;
        reached = std::max(reached, way.enters);
        count(way, m_start[link], 1);
    }
}

std::vector<Way> Chooser::choose()
{
    findStraight();
    gatherFar();
    const int rounds = m_ways.size() > kMany ? kRoundsOfMany : kRounds;
    for (int round = 0; round < rounds; ++round) {
        for (const std::size_t task : m_place.order) {
            // From the second round on each knows where all the others are.
            if (round > 0) {
                for (const std::size_t link : m_far[task])
                    count(m_ways[link], m_start[link], -1);
            }
            chooseFor(task);
        }
    }
    return std::move(m_ways);
}

} // namespace

std::vector<Way> chooseWays(const Placement &placement, const std::vector<int> &row, int rows)
{
    return Chooser(placement, row, rows).choose();
}

} // namespace ohmwright::plan::loom
