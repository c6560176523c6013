// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/level_rules.h"

#include <algorithm>
#include <bit>
#include <numeric>

namespace ohmwright::plan::level {

namespace {

struct Network
{
    std::vector<std::int32_t> order; // each after what it comes after
    std::vector<double> early;       // start, days
    std::vector<double> rest;        // from its start to the end of all behind it, days
    std::vector<double> restFromEnd; // from its finish (waiting not included)
};

Network lengths(const Planner &planner)
{
    const std::size_t count = planner.count();
    const Grid &grid = planner.grid();
    const bool repeats = grid.period() > 0;
    const double daysPerSlot = repeats ? double(grid.periodDays()) / grid.period()
                                       : double(grid.daySpan()) / std::max(grid.count(), 1);
    Network result;
    std::vector<std::int32_t> indices(count);
    std::iota(indices.begin(), indices.end(), 0);
    std::vector<char> inLoop(count, 0);
    ActivityLinks before = planner.before(); // has no loops any more
    result.order = feasibleOrder(before, indices, inLoop);
    result.early.assign(count, 0);
    result.rest.assign(count, 0);
    result.restFromEnd.assign(count, 0);
    const auto length = [&](std::size_t a) {
        return planner.work()[a] * daysPerSlot;
    };
    for (const std::int32_t index : result.order) {
        const auto a = static_cast<std::size_t>(index);
        result.early[a] = planner.releaseDay()[a];
        for (const std::int32_t b : before[a]) {
            const auto p = static_cast<std::size_t>(b);
            result.early[a] =
                std::max(result.early[a], result.early[p] + length(p) + planner.waitDays()[p]);
        }
    }
    for (std::size_t i = count; i-- > 0;) {
        const auto a = static_cast<std::size_t>(result.order[i]);
        double behind = 0;
        for (const std::int32_t n : planner.next()[a])
            behind = std::max(behind, result.rest[static_cast<std::size_t>(n)]);
        result.restFromEnd[a] = behind + planner.waitDays()[a];
        result.rest[a] = result.restFromEnd[a] + length(a);
    }
    return result;
}

// For each activity the sum over itself and all behind it of `of`.
std::vector<double> sumsBehind(const Planner &planner, const Network &network,
                               const std::vector<double> &of)
{
    const std::size_t count = planner.count();
    const std::size_t words = (count + 63) / 64;
    std::vector<Word> behind(count * words, 0);
    std::vector<double> sums(count, 0);
    for (std::size_t i = count; i-- > 0;) {
        const auto a = static_cast<std::size_t>(network.order[i]);
        Word *const set = behind.data() + a * words;
        set[a / 64] |= Word{1} << a % 64;
        for (const std::int32_t n : planner.next()[a]) {
            for (std::size_t w = 0; w < words; ++w)
                set[w] |= behind[static_cast<std::size_t>(n) * words + w];
        }
        for (std::size_t w = 0; w < words; ++w) {
            for (Word bits = set[w]; bits != 0; bits &= bits - 1)
                sums[a] += of[w * 64 + static_cast<std::size_t>(std::countr_zero(bits))];
        }
    }
    return sums;
}

} // namespace

std::vector<double> ruleValues(const Planner &planner, PriorityRule rule)
{
    const Network network = lengths(planner);
    const std::size_t count = planner.count();
    double end = 0;
    for (std::size_t a = 0; a < count; ++a)
        end = std::max(end, network.early[a] + network.rest[a]);
    std::vector<double> values(count, 0);
    switch (rule) {
    case PriorityRule::LatestFinish:
        for (std::size_t a = 0; a < count; ++a)
            values[a] = end - network.restFromEnd[a];
        break;
    case PriorityRule::LeastSlack:
        for (std::size_t a = 0; a < count; ++a)
            values[a] = end - network.rest[a] - network.early[a];
        break;
    case PriorityRule::MostSuccessors:
        values = sumsBehind(planner, network, std::vector<double>(count, -1));
        break;
    case PriorityRule::LongestWorkload: {
        std::vector<double> load(count, 0);
        for (std::size_t a = 0; a < count; ++a)
            load[a] = -planner.load(a);
        values = sumsBehind(planner, network, load);
        break;
    }
    }
    return values;
}

std::vector<std::int32_t> byRule(Planner &planner, PriorityRule rule)
{
    const std::vector<double> values = ruleValues(planner, rule);
    std::vector<std::int32_t> priority(planner.count());
    std::iota(priority.begin(), priority.end(), 0);
    std::stable_sort(priority.begin(), priority.end(), [&values](std::int32_t a, std::int32_t b) {
        return values[static_cast<std::size_t>(a)] < values[static_cast<std::size_t>(b)];
    });
    return planner.feasible(priority);
}

void drawOrder(const Planner &planner, const std::vector<double> &values, Lot &lot,
               std::vector<std::int32_t> &order)
{
    const std::size_t count = planner.count();
    order.clear();
    if (count == 0)
        return;
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    const double floor = std::max((*most - *least) * 0.01, 1e-9);
    std::vector<std::int32_t> free;
    std::vector<std::int32_t> waitingOn(count);
    for (std::size_t a = 0; a < count; ++a) {
        waitingOn[a] = static_cast<std::int32_t>(planner.before()[a].size());
        if (waitingOn[a] == 0)
            free.push_back(static_cast<std::int32_t>(a));
    }
    const auto value = [&values](std::int32_t a) {
        return values[static_cast<std::size_t>(a)];
    };
    while (!free.empty()) {
        double worst = value(free.front());
        for (const std::int32_t a : free)
            worst = std::max(worst, value(a));
        double all = 0;
        for (const std::int32_t a : free)
            all += worst - value(a) + floor;
        double drawn = lot.unit() * all;
        std::size_t chosen = 0;
        while (chosen + 1 < free.size() && (drawn -= worst - value(free[chosen]) + floor) >= 0)
            ++chosen;
        const std::int32_t a = free[chosen];
        free[chosen] = free.back();
        free.pop_back();
        order.push_back(a);
        for (const std::int32_t n : planner.next()[static_cast<std::size_t>(a)]) {
            if (--waitingOn[static_cast<std::size_t>(n)] == 0)
                free.push_back(n);
        }
    }
}

void latestFinishFirst(const Planner &planner, std::span<const std::int32_t> order,
                       std::vector<std::int32_t> &backwards)
{
    const std::vector<int> &finish = planner.plan().finish;
    std::reverse_copy(order.begin(), order.end(), backwards.begin());
    std::stable_sort(backwards.begin(), backwards.end(), [&finish](std::int32_t a, std::int32_t b) {
        return finish[static_cast<std::size_t>(a)] > finish[static_cast<std::size_t>(b)];
    });
}

} // namespace ohmwright::plan::level
