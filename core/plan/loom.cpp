// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom.h"

#include "core/plan/loom_dates.h"
#include "core/plan/loom_draw.h"
#include "core/plan/loom_measure.h"
#include "core/plan/loom_place.h"
#include "core/plan/loom_route.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace ohmwright::plan {

namespace {

using loom::RouteInput;
using loom::Size;

// Up to this many tasks, other orders of branches are wired to see if they help: so many times.
constexpr std::size_t kTryWiring = 400;
constexpr int kTries = 120;
// One crossing is worth this much wire, scene units.
constexpr double kCrossing = 120;

class Wirer
{
public:
    Wirer(const Network &network, const LoomMetrics &metrics, const LoomOptions &options,
          const loom::Placement &placement, const loom::Sizes &sizes)
        : m_network(network), m_metrics(metrics), m_options(options), m_place(placement),
          m_sizes(sizes)
    {}

    // Never more crossings than with the areas as given, unless told how to lie.
    [[nodiscard]] loom::Wired best() const;

private:
    [[nodiscard]] loom::Wired wired(const loom::Stacking &stacking) const;
    [[nodiscard]] loom::Stacking asBefore(const Loom &before) const;
    [[nodiscard]] std::vector<std::vector<std::size_t>>
    plateOrder(const std::vector<int> &row) const;

    const Network &m_network;
    const LoomMetrics &m_metrics;
    const LoomOptions &m_options;
    const loom::Placement &m_place;
    const loom::Sizes &m_sizes;
};

loom::Wired Wirer::wired(const loom::Stacking &stacking) const
{
    loom::Wired result;
    result.stacking = stacking;
    RouteInput &in = result.in;
    in.placement = &m_place;
    in.metrics = &m_metrics;
    in.row = loom::rowsFor(m_place, stacking);
    in.rows = stacking.rows;
    result.plateAt = plateOrder(in.row);
    const auto rows = static_cast<std::size_t>(in.rows);
    in.startsBranch.assign(rows, false);
    for (const int row : stacking.firstRow)
        in.startsBranch[static_cast<std::size_t>(row)] = true;
    in.columnWidth = m_sizes.columnWidth;
    in.gapRoom = loom::roomForRules(m_place);
    in.rowUp.assign(rows, m_metrics.sleeveHeight);
    in.rowDown.assign(rows, m_metrics.sleeveHeight);
    const std::size_t count = m_sizes.of.size();
    in.enterAt.resize(count);
    in.leaveAt.resize(count);
    in.ownLanes.resize(count);
    for (std::size_t task = 0; task < count; ++task) {
        const Size &size = m_sizes.of[task];
        const double cell = m_sizes.columnWidth[static_cast<std::size_t>(m_place.column[task])];
        const bool plate = m_network.tasks[task].milestone;
        in.enterAt[task] = plate ? 0 : (cell - size.width) / 2;
        in.leaveAt[task] = plate ? size.width : (cell + size.width) / 2;
        in.ownLanes[task] = plate;
        const auto at = static_cast<std::size_t>(in.row[task]);
        in.rowUp[at] = std::max(in.rowUp[at], size.up);
        in.rowDown[at] = std::max(in.rowDown[at], size.down);
    }
    in.port.assign(m_place.links.size(), 0);
    for (std::size_t link = 0; link < m_place.links.size(); ++link) {
        const std::size_t to = m_place.links[link].to;
        if (!m_network.tasks[to].milestone)
            continue;
        const auto place = static_cast<double>(result.plateAt[to][m_place.links[link].afterIndex]);
        const auto cavities = static_cast<double>(m_sizes.of[to].cavities);
        in.port[link] = (place - (cavities - 1) / 2) * m_metrics.plateCavityPitch;
    }
    result.routed = loom::route(in);
    return result;
}

// The wires from above end in the upper cavities and those from below in the lower ones.
std::vector<std::vector<std::size_t>> Wirer::plateOrder(const std::vector<int> &row) const
{
    std::vector<std::vector<std::size_t>> result(m_sizes.of.size());
    for (std::size_t task = 0; task < m_sizes.of.size(); ++task) {
        if (!m_network.tasks[task].milestone)
            continue;
        const Task &own = m_network.tasks[task];
        std::vector<std::size_t> cavities(m_sizes.of[task].cavities);
        std::iota(cavities.begin(), cavities.end(), std::size_t{0});
        const auto height = [&](std::size_t cavity) {
            // Leaf needs and links without a wire stand below all wires.
            if (cavity >= own.after.size() || own.after[cavity] >= row.size())
                return std::pair(2, 0);
            const bool wired = std::any_of(
                m_place.into[task].begin(), m_place.into[task].end(), [&](std::size_t link) {
                    return m_place.links[link].afterIndex == cavity && m_place.links[link].drawn;
                });
            return std::pair(wired ? 0 : 1, row[own.after[cavity]]);
        };
        std::stable_sort(
            cavities.begin(), cavities.end(),
            [&](std::size_t left, std::size_t right) { return height(left) < height(right); });
        result[task].resize(cavities.size());
        for (std::size_t place = 0; place < cavities.size(); ++place)
            result[task][cavities[place]] = place;
    }
    return result;
}

loom::Stacking Wirer::asBefore(const Loom &before) const
{
    std::vector<std::size_t> order;
    const std::size_t branches = m_place.areas.size();
    std::vector<bool> upwards(branches, false);
    std::vector<bool> placed(branches, false);
    const auto put = [&](std::size_t branch) {
        order.push_back(branch);
        placed[branch] = true;
    };
    for (const LoomBranch &known : before.branches) {
        const auto at = std::find(m_place.areas.begin(), m_place.areas.end(), known.area);
        const auto branch = static_cast<std::size_t>(at - m_place.areas.begin());
        if (at == m_place.areas.end() || placed[branch])
            continue;
        put(branch);
        upwards[branch] = known.runs.size() > 1 && known.runs[1].y < known.runs[0].y;
    }
    for (std::size_t branch = 0; branch < branches; ++branch) {
        if (!placed[branch])
            put(branch);
    }
    return loom::stackedUp(m_place, std::move(order), std::move(upwards));
}

loom::Wired Wirer::best() const
{
    if (m_options.shareRuns)
        return wired(loom::packed(m_place));
    const std::size_t branches = m_place.areas.size();
    std::vector<std::size_t> order(branches);
    std::iota(order.begin(), order.end(), std::size_t{0});
    const loom::Stacking asGiven =
        loom::stackedUp(m_place, std::move(order), std::vector<bool>(branches, false));
    if (!m_options.keepAreaOrder && m_options.like != nullptr && !m_options.like->branches.empty())
        return wired(asBefore(*m_options.like));
    loom::Wired given = wired(asGiven);
    if (m_options.keepAreaOrder)
        return given;
    const int most = given.routed.crossings;
    const auto cost = [](const loom::Wired &of) {
        return kCrossing * of.routed.crossings + of.routed.length;
    };
    loom::Wired best = wired(loom::stackedUp(m_place, loom::shortOrder(m_place), asGiven.upwards));
    if (best.routed.crossings > most || cost(given) < cost(best))
        best = std::move(given);
    double least = cost(best);
    int tries = m_sizes.of.size() > kTryWiring ? 0 : kTries;
    const auto attempt = [&](loom::Stacking stacking) {
        if (tries-- <= 0)
            return false;
        loom::Wired trial =
            wired(loom::stackedUp(m_place, std::move(stacking.order), std::move(stacking.upwards)));
        if (trial.routed.crossings > most || cost(trial) >= least)
            return false;
        least = cost(trial);
        best = std::move(trial);
        return true;
    };
    // Branches turn over and change places with one near them as long as something helps; first
    // with neighbours, then farther.
    for (std::size_t apart = 1; apart < branches && tries > 0;) {
        bool better = false;
        for (std::size_t at = 0; at < branches; ++at) {
            const std::size_t branch = best.stacking.order[at];
            if (apart == 1 && m_place.runsOf[branch] > 1) {
                loom::Stacking turned = best.stacking;
                turned.upwards[branch] = !turned.upwards[branch];
                better = attempt(std::move(turned)) || better;
            }
            if (at + apart < branches) {
                loom::Stacking swapped = best.stacking;
                std::swap(swapped.order[at], swapped.order[at + apart]);
                better = attempt(std::move(swapped)) || better;
            }
        }
        apart = better ? 1 : apart + 1;
    }
    return best;
}

} // namespace

QRectF reachOf(const LoomTask &task)
{
    QRectF all = task.body;
    for (const QRectF &box : {task.title.box, task.date.box, task.missing.box, task.plan.box,
                              task.ready.box, task.slack.box, task.whisker, task.highVoltageMark})
        all |= box;
    return all;
}

void moveBy(LoomTask &task, QPointF by)
{
    for (QRectF *box : {&task.body, &task.whisker, &task.slackLoop, &task.highVoltageMark})
        if (!box->isNull())
            box->translate(by);
    for (LoomLabel *label :
         {&task.title, &task.date, &task.missing, &task.plan, &task.ready, &task.slack}) {
        label->at += by;
        if (!label->lines.isEmpty())
            label->box.translate(by);
    }
    for (LoomCavity &cavity : task.cavities)
        cavity.box.translate(by);
    task.whiskerMark += by.x();
    if (!task.missingFrom.isNull())
        task.missingFrom += by;
}

Loom layOutLoom(const Network &network, const LoomFacts &facts, const LoomMetrics &metrics,
                const LoomOptions &options)
{
    if (network.tasks.empty())
        return {};
    const loom::Placement placement = loom::place(network, facts, options);
    const loom::Sizes sizes = loom::measure(network, facts, metrics, placement);
    loom::Wired wired = Wirer(network, metrics, options, placement, sizes).best();
    return loom::draw(network, facts, metrics, placement, sizes, std::move(wired));
}

} // namespace ohmwright::plan
