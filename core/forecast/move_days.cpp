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

struct LatePlan
{
    std::vector<int> startDay;  // by which each activity must begin, days from today
    std::vector<int> takesDays; // from its start to its readiness, as planned
    int reached = 0;            // when the goal is, as planned
};

// For `goal` to be reached on day `due`, or as soon as it goes.
LatePlan latePlan(const WorkPlan &plan, std::size_t goal, int due)
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
    LatePlan late;
    const plan::Levelled planned = levelling.pass();
    late.reached = planned.readyDay[goal];
    for (std::size_t i = 0; i < load.activities.size(); ++i)
        late.takesDays.push_back(
            planned.readyDay[i] == plan::kNever ? 0 : planned.readyDay[i] - planned.startDay[i]);
    late.startDay = levelling.latest(std::max(due, planned.endDay)).startDay;
    return late;
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
    std::vector<int> takesDays(plan.activities.size(), 0);
    if (milestone.date && goal != places.end()) {
        const LatePlan late =
            latePlan(plan, goal->second, static_cast<int>(plan.today.daysTo(*milestone.date)));
        for (plan::Move &move : holdUps.moves)
            if (const auto day = dayOf(move, network, places, late.startDay, plan.today))
                move.latestStart = earlier(day, move.by);
        takesDays = late.takesDays;
        if (late.reached != plan::kNever && plan.today.addDays(late.reached) > *milestone.date)
            holdUps.likely = plan.today.addDays(late.reached);
    }
    const auto notAfter = [&](const QString &subject, int latestDay, const QString &reason) {
        const QDate day = plan.today.addDays(std::max(0, latestDay));
        for (plan::Move &move : holdUps.moves)
            if (move.subject == subject && (!move.latestStart || day < *move.latestStart)) {
                move.latestStart = day;
                move.why += reason;
            }
    };
    for (const OrderBy &order : orders) {
        if (!order.needed)
            continue;
        const Activity &sent = plan.activities[order.activity];
        notAfter(sent.key, order.latestDay,
                 tr("; by then to keep the days at %1\u00A0%").arg(confidence));
        for (const std::size_t sender : sent.after)
            notAfter(plan.activities[sender].key, order.latestDay - takesDays[sender],
                     (sent.toAsk ? tr("; it asks for “%1”: by then to keep the days at %2\u00A0%")
                                 : tr("; it orders “%1”: by then to keep the days at %2\u00A0%"))
                         .arg(sent.name, QString::number(confidence)));
    }
    std::stable_sort(holdUps.moves.begin(), holdUps.moves.end(),
                     [](const plan::Move &a, const plan::Move &b) {
                         const QDate last(9999, 12, 31);
                         return a.latestStart.value_or(last) < b.latestStart.value_or(last);
                     });
}

std::vector<std::size_t> sentByMoves(const plan::HoldUps &holdUps, const WorkPlan &plan)
{
    std::set<QString> subjects;
    for (const plan::Move &move : holdUps.moves)
        subjects.insert(move.subject);
    std::vector<std::size_t> sent;
    for (std::size_t i = 0; i < plan.activities.size(); ++i) {
        const Activity &a = plan.activities[i];
        if ((a.toOrder || a.toAsk) &&
            (subjects.contains(a.key) || std::ranges::any_of(a.after, [&](std::size_t before) {
                 return subjects.contains(plan.activities[before].key);
             })))
            sent.push_back(i);
    }
    return sent;
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
