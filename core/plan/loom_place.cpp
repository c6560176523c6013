// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_place.h"

#include "core/plan/loom_dates.h"
#include "core/plan/network.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <limits>
#include <map>
#include <numeric>
#include <optional>
#include <set>

namespace ohmwright::plan::loom {

namespace {

// A wire that leaves its branch pulls less than one that stays: branches are to hang together.
constexpr double kPullWithin = 1.0;
constexpr double kPullAcross = 0.6;
// What it is worth, in columns of wire, not to open one more run beside a task.
constexpr double kSideBySide = 3.0;
// What a task more than any column need hold costs.
constexpr double kCrowded = 40;
// What going on with a branch is worth, in tasks that still follow, when a column has room for few.
constexpr int kGoOn = 2;
constexpr int kFarthestMove = 24;
constexpr int kSettlingPasses = 4;

// An order even where there are loops: of each the link that closes it is not followed.
std::vector<std::size_t> orderOf(const Network &network)
{
    if (findLoop(network).empty())
        return topologicalOrder(network);
    Network open = network;
    for (std::vector<std::size_t> loop = findLoop(open); !loop.empty(); loop = findLoop(open))
        std::erase(open.tasks[loop.front()].after, loop.back());
    return topologicalOrder(open);
}

// Links with the order; those that close a loop are left out.
void sortTasks(const Network &network, Placement &placement)
{
    const std::size_t count = network.tasks.size();
    placement.order = orderOf(network);
    std::vector<std::size_t> place(count, 0);
    for (std::size_t at = 0; at < placement.order.size(); ++at)
        place[placement.order[at]] = at;
    placement.into.resize(count);
    placement.outOf.resize(count);
    for (std::size_t task = 0; task < count; ++task) {
        const auto &after = network.tasks[task].after;
        std::map<std::size_t, std::size_t> before; // task to the first place it is named at
        for (std::size_t at = 0; at < after.size(); ++at) {
            if (after[at] < count && place[after[at]] < place[task])
                before.try_emplace(after[at], at);
        }
        for (const auto &[other, at] : before) {
            placement.into[task].push_back(placement.links.size());
            placement.outOf[other].push_back(placement.links.size());
            placement.links.push_back({other, task, at, false, true, false});
        }
    }
}

// A link is implied when another task waited on already waits, directly or not, on the same one.
// One bit per pair of tasks: 2,000 tasks take half a megabyte.
void markImplied(Placement &placement, const LoomOptions &options)
{
    const std::size_t count = placement.order.size();
    const std::size_t words = (count + 63) / 64;
    std::vector<std::uint64_t> before(count * words, 0);
    for (const std::size_t task : placement.order) {
        std::uint64_t *own = before.data() + task * words;
        for (const std::size_t link : placement.into[task]) {
            const std::uint64_t *other = before.data() + placement.links[link].from * words;
            for (std::size_t word = 0; word < words; ++word)
                own[word] |= other[word];
        }
        for (const std::size_t link : placement.into[task]) {
            const std::size_t from = placement.links[link].from;
            placement.links[link].implied = ((own[from / 64] >> (from % 64)) & 1U) != 0;
        }
        for (const std::size_t link : placement.into[task]) {
            const std::size_t from = placement.links[link].from;
            own[from / 64] |= std::uint64_t{1} << (from % 64);
        }
    }
    for (Link &link : placement.links)
        link.drawn = !link.implied || link.driving || options.implied != ImpliedLinks::Omit;
}

// Areas become branches. A milestone whose area holds nothing but milestones (or that has none)
// ends the branch most of its wires come from; a plate needs no branch of its own.
void nameBranches(const Network &network, Placement &placement)
{
    std::map<QString, std::size_t> byArea;
    std::vector<bool> hasWork;
    const auto branchFor = [&](const QString &area) {
        const auto [at, isNew] = byArea.try_emplace(area, placement.areas.size());
        if (isNew) {
            placement.areas.push_back(area);
            hasWork.push_back(false);
        }
        return at->second;
    };
    const std::size_t count = network.tasks.size();
    placement.branchOf.assign(count, 0);
    for (std::size_t task = 0; task < count; ++task) {
        if (!network.tasks[task].milestone) {
            placement.branchOf[task] = branchFor(network.tasks[task].area);
            hasWork[placement.branchOf[task]] = true;
        }
    }
    for (const std::size_t task : placement.order) {
        if (!network.tasks[task].milestone)
            continue;
        const auto own = byArea.find(network.tasks[task].area);
        if (own != byArea.end() && hasWork[own->second]) {
            placement.branchOf[task] = own->second;
            continue;
        }
        std::map<std::size_t, int> votes;
        for (const std::size_t link : placement.into[task]) {
            if (placement.links[link].drawn)
                votes[placement.branchOf[placement.links[link].from]] +=
                    placement.links[link].driving ? 3 : 1;
        }
        if (votes.empty()) {
            placement.branchOf[task] = branchFor(network.tasks[task].area);
            continue;
        }
        const auto best =
            std::max_element(votes.begin(), votes.end(), [](const auto &left, const auto &right) {
                return left.second < right.second;
            });
        placement.branchOf[task] = best->first;
    }
}

// As few tasks in every column as will do without a column more: those first that most follow on,
// and what goes on with a branch that stands in the column before. Columns as ranked until now.
void spreadOut(Placement &placement, int last)
{
    const std::size_t count = placement.order.size();
    std::vector<int> tail(count, 0);
    for (auto at = placement.order.rbegin(); at != placement.order.rend(); ++at) {
        for (const std::size_t link : placement.outOf[*at])
            tail[*at] = std::max(tail[*at], tail[placement.links[link].to] + 1);
    }
    std::vector<int> column;
    const auto spreadAt = [&](std::size_t most) {
        column.assign(count, 0);
        std::vector<std::size_t> left = placement.order;
        std::vector<int> lastOf(placement.areas.size(), -1);
        for (int at = 1; at <= last && !left.empty(); ++at) {
            std::vector<std::size_t> ready;
            for (const std::size_t task : left) {
                const auto &into = placement.into[task];
                if (std::all_of(into.begin(), into.end(), [&](std::size_t link) {
                        const int before = column[placement.links[link].from];
                        return before > 0 && before < at;
                    }))
                    ready.push_back(task);
            }
            const auto worth = [&](std::size_t task) {
                return tail[task] + (lastOf[placement.branchOf[task]] == at - 1 ? kGoOn : 0);
            };
            std::stable_sort(ready.begin(), ready.end(),
                             [&](std::size_t a, std::size_t b) { return worth(a) > worth(b); });
            if (ready.size() > most)
                ready.resize(most);
            for (const std::size_t task : ready)
                column[task] = at;
            for (const std::size_t task : ready)
                lastOf[placement.branchOf[task]] = at;
            std::erase_if(left, [&](std::size_t task) { return column[task] > 0; });
        }
        return left.empty();
    };
    for (std::size_t most = 1; most <= count; ++most) {
        if (spreadAt(most)) {
            placement.column = column;
            return;
        }
    }
}

// Longest-path rank first; then each task moves within its slack to where its wires are short and
// its branch has room, so that what can wait stands by what waits on it.
void settleColumns(Placement &placement, bool spread)
{
    const std::size_t count = placement.order.size();
    auto &column = placement.column;
    column.assign(count, 1);
    for (const std::size_t task : placement.order) {
        for (const std::size_t link : placement.into[task])
            column[task] = std::max(column[task], column[placement.links[link].from] + 1);
    }
    const int last = count == 0 ? 0 : *std::max_element(column.begin(), column.end());
    placement.columns = last + 1;
    if (spread)
        spreadOut(placement, last);
    std::vector<std::vector<int>> standing(placement.areas.size(),
                                           std::vector<int>(static_cast<std::size_t>(last + 1), 0));
    for (std::size_t task = 0; task < count; ++task)
        ++standing[placement.branchOf[task]][static_cast<std::size_t>(column[task])];

    // Where runs are shared, a column holds no more than there must be runs for.
    std::vector<int> crowd(static_cast<std::size_t>(last + 1), 0);
    for (std::size_t task = 0; task < count; ++task)
        ++crowd[static_cast<std::size_t>(column[task])];
    const int most = spread ? *std::max_element(crowd.begin(), crowd.end()) : 0;
    const auto crowded = [&](int at) {
        return spread && crowd[static_cast<std::size_t>(at)] >= most ? kCrowded : 0.0;
    };

    const auto pull = [&](const Link &link) {
        return placement.branchOf[link.from] == placement.branchOf[link.to] ? kPullWithin
                                                                            : kPullAcross;
    };
    const auto settle = [&](std::size_t task) {
        int low = 1;
        for (const std::size_t link : placement.into[task])
            low = std::max(low, column[placement.links[link].from] + 1);
        int high = last;
        for (const std::size_t link : placement.outOf[task])
            high = std::min(high, column[placement.links[link].to] - 1);
        low = std::max(low, column[task] - kFarthestMove);
        high = std::min(high, column[task] + kFarthestMove);
        if (low >= high)
            return;
        auto &beside = standing[placement.branchOf[task]];
        --beside[static_cast<std::size_t>(column[task])];
        --crowd[static_cast<std::size_t>(column[task])];
        double least = std::numeric_limits<double>::max();
        int best = column[task];
        for (int at = low; at <= high; ++at) {
            double cost =
                0.05 * at + kSideBySide * beside[static_cast<std::size_t>(at)] + crowded(at);
            for (const std::size_t link : placement.into[task]) {
                if (placement.links[link].drawn)
                    cost += pull(placement.links[link]) * (at - column[placement.links[link].from]);
            }
            for (const std::size_t link : placement.outOf[task]) {
                if (placement.links[link].drawn)
                    cost += pull(placement.links[link]) * (column[placement.links[link].to] - at);
            }
            if (cost < least) {
                least = cost;
                best = at;
            }
        }
        column[task] = best;
        ++beside[static_cast<std::size_t>(best)];
        ++crowd[static_cast<std::size_t>(best)];
    };
    for (int pass = 0; pass < kSettlingPasses; ++pass) {
        if (pass % 2 == 0)
            std::for_each(placement.order.rbegin(), placement.order.rend(), settle);
        else
            std::for_each(placement.order.begin(), placement.order.end(), settle);
    }
}

// Each task joins the run that ends with a task it waits on, else the one whose end is nearest;
// a new run only where every other is taken at this column.
void layRuns(Placement &placement)
{
    const std::size_t count = placement.order.size();
    std::vector<std::size_t> place(count, 0);
    for (std::size_t at = 0; at < count; ++at)
        place[placement.order[at]] = at;
    placement.tasksOf.assign(placement.areas.size(), {});
    for (const std::size_t task : placement.order)
        placement.tasksOf[placement.branchOf[task]].push_back(task);
    placement.run.assign(count, 0);
    placement.runsOf.assign(placement.areas.size(), 0);
    for (std::size_t branch = 0; branch < placement.areas.size(); ++branch) {
        auto &tasks = placement.tasksOf[branch];
        std::sort(tasks.begin(), tasks.end(), [&](std::size_t left, std::size_t right) {
            return std::pair(placement.column[left], place[left]) <
                   std::pair(placement.column[right], place[right]);
        });
        std::vector<std::size_t> ends;
        // The tasks of one column are dealt out together, best match first: else the first of them
        // could take the run another one continues.
        for (std::size_t first = 0; first < tasks.size();) {
            std::size_t past = first;
            while (past < tasks.size() &&
                   placement.column[tasks[past]] == placement.column[tasks[first]])
                ++past;
            struct Match
            {
                double worth;
                std::size_t task, run;
            };
            std::vector<Match> matches;
            for (std::size_t at = first; at < past; ++at) {
                for (std::size_t run = 0; run < ends.size(); ++run) {
                    double worth = placement.column[ends[run]] - 0.1 * static_cast<double>(run);
                    for (const std::size_t link : placement.into[tasks[at]]) {
                        if (placement.links[link].from == ends[run] && placement.links[link].drawn)
                            worth += placement.links[link].driving ? 2000 : 1000;
                    }
                    matches.push_back({worth, tasks[at], run});
                }
            }
            std::stable_sort(
                matches.begin(), matches.end(),
                [](const Match &left, const Match &right) { return left.worth > right.worth; });
            std::set<std::size_t> dealt;
            std::vector<bool> taken(ends.size(), false);
            for (const Match &match : matches) {
                if (taken[match.run] || dealt.contains(match.task))
                    continue;
                taken[match.run] = true;
                dealt.insert(match.task);
                ends[match.run] = match.task;
                placement.run[match.task] = static_cast<int>(match.run);
            }
            for (std::size_t at = first; at < past; ++at) {
                if (dealt.contains(tasks[at]))
                    continue;
                placement.run[tasks[at]] = static_cast<int>(ends.size());
                ends.push_back(tasks[at]);
            }
            first = past;
        }
        placement.runsOf[branch] = static_cast<int>(ends.size());
    }
}

// A run is broken where so many columns of it are empty; a sleeve takes one of them.
constexpr int kBreak = 2;

// Every run a branch of its own, in pieces where it is empty for a while: so they can be packed.
void breakBranches(Placement &placement)
{
    std::vector<std::vector<std::size_t>> pieces;
    std::vector<QString> areas;
    for (std::size_t branch = 0; branch < placement.areas.size(); ++branch) {
        std::vector<std::size_t> pieceOf(static_cast<std::size_t>(placement.runsOf[branch]));
        std::vector<int> lastOn(pieceOf.size(), -kBreak - 2);
        for (const std::size_t task : placement.tasksOf[branch]) { // by column
            const auto run = static_cast<std::size_t>(placement.run[task]);
            if (placement.column[task] - lastOn[run] > kBreak) {
                pieceOf[run] = pieces.size();
                pieces.emplace_back();
                areas.push_back(placement.areas[branch]);
            }
            lastOn[run] = placement.column[task];
            pieces[pieceOf[run]].push_back(task);
        }
    }
    for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
        for (const std::size_t task : pieces[piece]) {
            placement.branchOf[task] = piece;
            placement.run[task] = 0;
        }
    }
    placement.areas = std::move(areas);
    placement.tasksOf = std::move(pieces);
    placement.runsOf.assign(placement.areas.size(), 1);
}

} // namespace

Placement place(const Network &network, const LoomFacts &facts, const LoomOptions &options)
{
    Placement placement;
    sortTasks(network, placement);
    // The chain is given first task to last, so its links are those between neighbours.
    std::map<std::size_t, std::size_t> drivenBy;
    for (std::size_t at = 1; at < facts.driving.size(); ++at)
        drivenBy[facts.driving[at]] = facts.driving[at - 1];
    for (Link &link : placement.links) {
        const auto at = drivenBy.find(link.to);
        link.driving = at != drivenBy.end() && at->second == link.from;
    }
    markImplied(placement, options);
    nameBranches(network, placement);
    if (options.by == LoomBy::Date && facts.forecast)
        settleByDate(network, *facts.forecast, placement);
    else
        settleColumns(placement, options.shareRuns);
    layRuns(placement);
    if (options.shareRuns)
        breakBranches(placement);
    return placement;
}

Stacking stackedUp(const Placement &placement, std::vector<std::size_t> order,
                   std::vector<bool> upwards)
{
    Stacking stacking{std::move(order), std::move(upwards), {}, 0};
    stacking.firstRow.assign(placement.areas.size(), 0);
    for (const std::size_t branch : stacking.order) {
        stacking.firstRow[branch] = stacking.rows;
        stacking.rows += placement.runsOf[branch];
    }
    return stacking;
}

Stacking packed(const Placement &placement)
{
    const std::size_t count = placement.areas.size();
    Stacking stacking;
    stacking.upwards.assign(count, false);
    stacking.firstRow.assign(count, 0);
    std::vector<std::size_t> byStart(count);
    std::iota(byStart.begin(), byStart.end(), std::size_t{0});
    const auto start = [&](std::size_t branch) {
        return placement.column[placement.tasksOf[branch].front()] - 1;
    };
    std::stable_sort(byStart.begin(), byStart.end(), [&](std::size_t left, std::size_t right) {
        return start(left) < start(right);
    });
    std::vector<int> freeFrom; // per row: the first column nothing stands in
    std::map<QString, int> lastOf;
    std::vector<bool> placed(count, false);
    for (const std::size_t branch : byStart) {
        const int runs = placement.runsOf[branch];
        // Where it would stand best: on its area's last piece, else amid what its tasks wait on.
        double wanted = static_cast<double>(freeFrom.size());
        double sum = 0;
        int links = 0;
        for (const std::size_t task : placement.tasksOf[branch]) {
            for (const std::size_t link : placement.into[task]) {
                const std::size_t from = placement.links[link].from;
                if (!placement.links[link].drawn || !placed[placement.branchOf[from]])
                    continue;
                sum += stacking.firstRow[placement.branchOf[from]] + placement.run[from];
                ++links;
            }
        }
        if (links > 0)
            wanted = sum / links;
        if (const auto last = lastOf.find(placement.areas[branch]); last != lastOf.end())
            wanted = last->second;
        double least = std::numeric_limits<double>::max();
        int best = 0;
        for (int row = 0; row <= static_cast<int>(freeFrom.size()); ++row) {
            double cost = std::abs(row - wanted);
            for (int run = row; run < row + runs; ++run) {
                if (run >= static_cast<int>(freeFrom.size()))
                    cost += 1000; // one more row
                else if (freeFrom[static_cast<std::size_t>(run)] > start(branch))
                    cost += 1e9; // taken
            }
            if (cost < least) {
                least = cost;
                best = row;
            }
        }
        const auto needed = static_cast<std::size_t>(best) + static_cast<std::size_t>(runs);
        if (freeFrom.size() < needed)
            freeFrom.resize(needed, 0);
        for (int run = best; run < best + runs; ++run)
            freeFrom[static_cast<std::size_t>(run)] =
                placement.column[placement.tasksOf[branch].back()] + 1;
        stacking.firstRow[branch] = best;
        lastOf[placement.areas[branch]] = best;
        placed[branch] = true;
    }
    stacking.rows = static_cast<int>(freeFrom.size());
    stacking.order = byStart;
    std::stable_sort(stacking.order.begin(), stacking.order.end(),
                     [&](std::size_t left, std::size_t right) {
                         return stacking.firstRow[left] < stacking.firstRow[right];
                     });
    return stacking;
}

std::vector<int> rowsFor(const Placement &placement, const Stacking &stacking)
{
    const std::vector<int> &first = stacking.firstRow;
    std::vector<int> rows(placement.branchOf.size(), 0);
    for (std::size_t task = 0; task < rows.size(); ++task) {
        const std::size_t branch = placement.branchOf[task];
        rows[task] = first[branch] + (stacking.upwards[branch]
                                          ? placement.runsOf[branch] - 1 - placement.run[task]
                                          : placement.run[task]);
    }
    return rows;
}

std::vector<std::size_t> shortOrder(const Placement &placement)
{
    const std::size_t count = placement.areas.size();
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    if (count < 3)
        return order;
    std::vector<std::vector<double>> ties(count, std::vector<double>(count, 0));
    for (const Link &link : placement.links) {
        const std::size_t from = placement.branchOf[link.from];
        const std::size_t to = placement.branchOf[link.to];
        if (!link.drawn || from == to)
            continue;
        ties[from][to] += link.driving ? 3 : 1;
        ties[to][from] += link.driving ? 3 : 1;
    }
    const auto centres = [&](const std::vector<std::size_t> &of) {
        std::vector<double> centre(count, 0);
        double y = 0;
        for (const std::size_t branch : of) {
            centre[branch] = y + placement.runsOf[branch] / 2.0;
            y += placement.runsOf[branch];
        }
        return centre;
    };
    const auto cost = [&](const std::vector<std::size_t> &of) {
        const std::vector<double> centre = centres(of);
        double sum = 0;
        for (std::size_t left = 0; left < count; ++left) {
            for (std::size_t right = left + 1; right < count; ++right)
                sum += ties[left][right] * std::abs(centre[left] - centre[right]);
        }
        return sum;
    };
    double least = cost(order);
    std::vector<std::size_t> trial = order;
    for (int pass = 0; pass < 12; ++pass) {
        const std::vector<double> centre = centres(trial);
        std::vector<double> drawnTo(count, 0);
        for (std::size_t branch = 0; branch < count; ++branch) {
            double weight = 0;
            double sum = 0;
            for (std::size_t other = 0; other < count; ++other) {
                weight += ties[branch][other];
                sum += ties[branch][other] * centre[other];
            }
            drawnTo[branch] = weight > 0 ? sum / weight : centre[branch];
        }
        std::stable_sort(trial.begin(), trial.end(), [&](std::size_t left, std::size_t right) {
            return drawnTo[left] < drawnTo[right];
        });
        const double now = cost(trial);
        if (now < least) {
            least = now;
            order = trial;
        }
    }
    // A branch at a time to wherever it shortens most. Forty areas are far more than a build has;
    // beyond that the centre of gravity must do.
    for (bool better = count <= 40; better;) {
        better = false;
        for (std::size_t from = 0; from < count; ++from) {
            std::vector<std::size_t> best = order;
            for (std::size_t to = 0; to < count; ++to) {
                trial = order;
                trial.erase(trial.begin() + static_cast<std::ptrdiff_t>(from));
                trial.insert(trial.begin() + static_cast<std::ptrdiff_t>(to), order[from]);
                const double now = cost(trial);
                if (now < least - 1e-9) {
                    least = now;
                    best = trial;
                    better = true;
                }
            }
            order = best;
        }
    }
    return order;
}

} // namespace ohmwright::plan::loom
