// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/move_days.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace ohmwright::forecast {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Forecast", text);
}

using Places = std::map<QString, std::size_t>; // of activities, by key

// Days from today by which each activity must begin for `goal` to be reached on day `due`.
std::vector<int> latestStarts(const WorkPlan &plan, std::size_t goal, int due)
{
    plan::Workload load = workloadOf(plan);
    const std::vector<char> needed = waitedOn(plan, goal);
    for (std::size_t i = 0; i < needed.size(); ++i)
        if (!needed[i]) { // stays, so that places do, and takes nothing
            plan::Activity nothing;
            nothing.after = std::move(load.activities[i].after);
            load.activities[i] = std::move(nothing);
        }
    plan::Levelling levelling(load);
    levelling.pass();
    return levelling.latest(due).startDay;
}

std::optional<QDate> earlier(std::optional<QDate> one, std::optional<QDate> other)
{
    return !one || (other && *other < *one) ? other : one;
}

// The day of the delivery or answer a move is about, else of the first task it is for.
std::optional<QDate> dayOf(const plan::Move &move, const plan::Network &network,
                           const Places &places, const std::vector<int> &latest, QDate today)
{
    const auto at = [&](const QString &key) -> std::optional<QDate> {
        const auto found = places.find(key);
        if (found == places.end() || latest[found->second] == plan::kNever)
            return std::nullopt;
        return today.addDays(latest[found->second]);
    };
    const bool sends = move.kind == plan::MoveKind::Order || move.kind == plan::MoveKind::Ask ||
                       move.kind == plan::MoveKind::Chase;
    if (const auto day = sends ? at(move.subject) : std::nullopt)
        return day;
    std::optional<QDate> first;
    for (const std::size_t task : move.for_)
        first = earlier(first, at(network.tasks[task].key));
    return first;
}

} // namespace

void tellLatestDays(plan::HoldUps &holdUps, const plan::Network &network, const WorkPlan &plan,
                    const std::vector<OrderBy> &orders, int confidence)
{
    if (holdUps.moves.empty())
        return;
    Places places;
    for (std::size_t i = 0; i < plan.activities.size(); ++i)
        places.emplace(plan.activities[i].key, i);
    const plan::Task &milestone = network.tasks[holdUps.milestone];
    const auto goal = places.find(milestone.key);
    if (milestone.date && goal != places.end()) {
        const std::vector<int> latest =
            latestStarts(plan, goal->second, static_cast<int>(plan.today.daysTo(*milestone.date)));
        for (plan::Move &move : holdUps.moves)
            if (const auto day = dayOf(move, network, places, latest, plan.today))
                move.latestStart = earlier(day, move.by);
    }
    for (const OrderBy &order : orders) {
        if (!order.needed)
            continue;
        const QDate day = plan.today.addDays(order.latestDay);
        for (plan::Move &move : holdUps.moves)
            if (move.subject == plan.activities[order.activity].key &&
                (!move.latestStart || day < *move.latestStart)) {
                move.latestStart = day;
                move.why += tr("; by then to keep the days at %1\u00A0%").arg(confidence);
            }
    }
    std::stable_sort(holdUps.moves.begin(), holdUps.moves.end(),
                     [](const plan::Move &a, const plan::Move &b) {
                         const QDate last(9999, 12, 31);
                         return a.latestStart.value_or(last) < b.latestStart.value_or(last);
                     });
}

std::vector<MoveSoon> movesSoon(const plan::Network &network, const plan::HoldUps &shown,
                                QDate today, int days)
{
    std::set<std::pair<plan::MoveKind, QString>> known;
    for (const plan::Move &move : shown.moves)
        known.emplace(move.kind, move.subject);
    std::vector<MoveSoon> soon;
    for (std::size_t i = 0; i < network.tasks.size(); ++i) {
        if (!network.tasks[i].milestone || network.tasks[i].done || i == shown.milestone)
            continue;
        for (plan::Move &move : plan::holdUps(network, i).moves)
            if (move.by && today.daysTo(*move.by) <= days &&
                known.emplace(move.kind, move.subject).second) {
                move.latestStart = move.by;
                soon.push_back({i, std::move(move)});
            }
    }
    std::stable_sort(soon.begin(), soon.end(),
                     [](const MoveSoon &a, const MoveSoon &b) { return *a.move.by < *b.move.by; });
    return soon;
}

} // namespace ohmwright::forecast
