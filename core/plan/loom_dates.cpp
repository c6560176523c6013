// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_dates.h"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <map>
#include <utility>

namespace ohmwright::plan::loom {

namespace {

// Between two rules in one gap, and beside the outer ones, scene units.
constexpr double kRulePitch = 19;
constexpr double kBesideRules = 7;
// What "today, 27 Nov 2026" takes.
constexpr double kRuleWords = 130;
// What the dates above the loom take.
constexpr double kAxisBand = 46;
constexpr double kAboveLoom = 10;
// So many tasks of one branch may stand in one column; done ones, and those without a day, follow
// one another, since nothing is known of their dates.
constexpr int kSideBySide = 2;
// Weeks without work between two columns that are ruled one by one; of more only the months are.
constexpr int kMostWeeks = 60;

constexpr int kDone = -1;
constexpr int kNoDay = std::numeric_limits<int>::max();

// Weeks counted from a Monday. Julian day 0 was one.
std::int64_t weekOf(QDate day)
{
    return day.toJulianDay() / 7;
}

QDate mondayOf(std::int64_t week)
{
    return QDate::fromJulianDay(week * 7);
}

class Settler
{
public:
    Settler(const Network &network, const LoomForecast &forecast, Placement &placement)
        : m_network(network), m_forecast(forecast), m_place(placement)
    {}

    void settle();

private:
    struct Layer // tasks that could stand in one column
    {
        int day = 0;
        std::vector<std::size_t> tasks;
    };

    void findDays();
    [[nodiscard]] std::vector<Layer> layersOf(int day, const std::vector<std::size_t> &tasks) const;
    [[nodiscard]] bool fits(const Layer &column, const Layer &next) const;
    void rule(const std::vector<Layer> &columns);
    [[nodiscard]] std::int64_t week(int day) const { return weekOf(m_forecast.today.addDays(day)); }

    const Network &m_network;
    const LoomForecast &m_forecast;
    Placement &m_place;
    std::vector<int> m_day; // per task
};

// A task's day is that of its start, and never before that of a task it waits on.
void Settler::findDays()
{
    m_day.assign(m_place.order.size(), kDone);
    for (const std::size_t task : m_place.order) {
        int day = kDone;
        if (m_network.tasks[task].aside)
            day = kNoDay;
        else if (!m_network.tasks[task].done)
            day = std::max(0, m_forecast.of(task).start.value_or(kNoDay));
        for (const std::size_t link : m_place.into[task]) {
            const std::size_t from = m_place.links[link].from;
            if (!m_network.tasks[from].aside)
                day = std::max(day, m_day[from]);
        }
        m_day[task] = day;
    }
}

// The tasks of one day, given in an order that follows the links: whatever waits stands in a later
// layer.
std::vector<Settler::Layer> Settler::layersOf(int day, const std::vector<std::size_t> &tasks) const
{
    const int most = day == kDone || day == kNoDay ? 1 : kSideBySide;
    std::vector<Layer> layers;
    std::map<std::size_t, std::size_t> layerOf;
    std::map<std::pair<std::size_t, std::size_t>, int> standing; // layer and branch
    for (const std::size_t task : tasks) {
        std::size_t layer = 0;
        for (const std::size_t link : m_place.into[task]) {
            const auto before = layerOf.find(m_place.links[link].from);
            if (before != layerOf.end())
                layer = std::max(layer, before->second + 1);
        }
        const std::size_t branch = m_place.branchOf[task];
        while (standing[{layer, branch}] >= most)
            ++layer;
        ++standing[{layer, branch}];
        layerOf[task] = layer;
        if (layer >= layers.size())
            layers.resize(layer + 1);
        layers[layer].tasks.push_back(task);
    }
    // Where a branch's tasks had to follow one another, layers in between are never left empty:
    // the branch itself stands in each of them.
    for (Layer &layer : layers)
        layer.day = day;
    return layers;
}

// Days of one week share a column as long as nothing in it waits on something else in it.
bool Settler::fits(const Layer &column, const Layer &next) const
{
    if (column.day < 0 || next.day == kNoDay || column.day == next.day ||
        week(column.day) != week(next.day))
        return false;
    std::map<std::size_t, int> standing;
    for (const std::size_t task : column.tasks)
        ++standing[m_place.branchOf[task]];
    return std::all_of(next.tasks.begin(), next.tasks.end(), [&](std::size_t task) {
        if (++standing[m_place.branchOf[task]] > kSideBySide)
            return false;
        return std::none_of(m_place.into[task].begin(), m_place.into[task].end(),
                            [&](std::size_t link) {
                                return std::find(column.tasks.begin(), column.tasks.end(),
                                                 m_place.links[link].from) != column.tasks.end();
                            });
    });
}

void Settler::rule(const std::vector<Layer> &columns)
{
    using Kind = LoomRule::Kind;
    auto &rules = m_place.rules;
    const auto weeks = [&](std::int64_t from, std::int64_t to, int gap) {
        const bool all = to - from <= kMostWeeks;
        for (std::int64_t at = from + 1; at <= to; ++at) {
            const QDate monday = mondayOf(at);
            const bool month = monday.day() <= 7;
            if (all || month || at == to)
                rules.push_back({month ? Kind::Month : Kind::Week, gap, monday});
        }
    };
    std::int64_t shown = week(0);
    bool today = false;
    // Columns begin at 1; the gap before column c is that right of c - 1.
    for (std::size_t at = 0; at < columns.size(); ++at) {
        const auto gap = static_cast<int>(at);
        const int day = columns[at].day;
        if (day >= 0 && !today) {
            rules.push_back({Kind::Today, gap, m_forecast.today});
            today = true;
        }
        if (day == kNoDay) {
            rules.push_back({Kind::NoDate, gap, {}});
            return;
        }
        if (day < 0)
            continue;
        weeks(shown, week(day), gap);
        shown = std::max(shown, week(day));
    }
    if (!today)
        rules.push_back({Kind::Today, static_cast<int>(columns.size()), m_forecast.today});
}

void Settler::settle()
{
    findDays();
    std::map<int, std::vector<std::size_t>> byDay;
    for (const std::size_t task : m_place.order)
        byDay[m_day[task]].push_back(task);
    std::vector<Layer> columns;
    for (const auto &[day, tasks] : byDay) {
        for (Layer &layer : layersOf(day, tasks)) {
            if (!columns.empty() && fits(columns.back(), layer)) {
                auto &into = columns.back().tasks;
                into.insert(into.end(), layer.tasks.begin(), layer.tasks.end());
                columns.back().day = layer.day;
            } else {
                columns.push_back(std::move(layer));
            }
        }
    }
    m_place.column.assign(m_place.order.size(), 1);
    for (std::size_t at = 0; at < columns.size(); ++at) {
        for (const std::size_t task : columns[at].tasks)
            m_place.column[task] = static_cast<int>(at) + 1;
    }
    m_place.columns = static_cast<int>(columns.size()) + 1;
    // What is set aside holds up nothing and stands at the far right: no wire leads back from it.
    for (Link &link : m_place.links)
        link.drawn = link.drawn && m_place.column[link.from] < m_place.column[link.to];
    rule(columns);
}

} // namespace

void settleByDate(const Network &network, const LoomForecast &forecast, Placement &placement)
{
    Settler(network, forecast, placement).settle();
}

std::vector<double> roomForRules(const Placement &placement)
{
    std::vector<double> room(static_cast<std::size_t>(placement.columns), 0);
    for (const Placement::Rule &rule : placement.rules) {
        double &own = room[static_cast<std::size_t>(rule.gap)];
        own += own > 0 ? kRulePitch : 2 * kBesideRules;
    }
    return room;
}

void ruleAxis(const Placement &placement, const std::vector<double> &columnLeft,
              const std::vector<double> &columnWidth, double top, Loom &loom)
{
    if (placement.rules.empty())
        return;
    const std::vector<double> room = roomForRules(placement);
    int gap = -1;
    double x = 0;
    for (const Placement::Rule &rule : placement.rules) {
        if (rule.gap != gap) {
            gap = rule.gap;
            const auto next = static_cast<std::size_t>(gap) + 1;
            // The rules stand at the right end of the gap, its lanes at the left.
            x = next < columnLeft.size()
                    ? columnLeft[next] - room[next - 1] + kBesideRules
                    : columnLeft.back() + columnWidth.back() + kBesideRules + kRulePitch;
        } else {
            x += kRulePitch;
        }
        loom.rules.push_back({rule.kind, x, rule.day});
    }
    // The last rule's words stand right of it.
    const double right = std::max(loom.bounds.right(), loom.rules.back().x + kRuleWords);
    loom.axisBand = QRectF(loom.bounds.left(), top - kAboveLoom - kAxisBand,
                           right - loom.bounds.left(), kAxisBand);
}

} // namespace ohmwright::plan::loom
