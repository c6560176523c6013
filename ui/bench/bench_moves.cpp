// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/bench/bench_moves.h"

#include "core/quantity/dates.h"
#include "ui/forecast/forecaster.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kSoonDays = 21;

QString tr(const char *text)
{
    return QCoreApplication::translate("BenchPage", text);
}

} // namespace

BenchMoves benchMoves(const plan::Network &network, std::optional<std::size_t> milestone,
                      const std::shared_ptr<const ForecastTold> &told, QDate today)
{
    BenchMoves moves;
    if (!milestone)
        return moves;
    moves.held = plan::holdUps(network, *milestone);
    if (told)
        forecast::tellLatestDays(moves.held, network, told->plan, told->orders, told->confidence);
    for (const plan::Move &move : moves.held.moves) {
        if (move.kind == plan::MoveKind::Do && move.needs.empty())
            moves.doable.push_back(move);
        else
            moves.others.push_back({*milestone, move});
    }
    for (forecast::MoveSoon &soon : forecast::movesSoon(network, moves.held, today, kSoonDays)) {
        soon.move.why += tr("; for “%1”").arg(network.tasks[soon.milestone].title);
        moves.others.push_back(std::move(soon));
    }
    std::stable_sort(moves.others.begin(), moves.others.end(),
                     [](const forecast::MoveSoon &a, const forecast::MoveSoon &b) {
                         const QDate last(9999, 12, 31);
                         return a.move.latestStart.value_or(last) <
                                b.move.latestStart.value_or(last);
                     });
    return moves;
}

QString leadOf(const plan::Move &move, QDate today)
{
    if (!move.latestStart)
        return tr("%1 days before").arg(move.chainDays);
    return (*move.latestStart < today ? tr("late: %1") : tr("by %1"))
        .arg(showDate(*move.latestStart));
}

} // namespace ohmwright::ui
