// SPDX-License-Identifier: GPL-3.0-or-later
// The moves that Bench shows: those of the next milestone, with the days the forecast gives them,
// and of later ones those that have a day of their own soon.
#pragma once

#include "core/forecast/move_days.h"

#include <QDate>
#include <QString>

#include <memory>

namespace ohmwright::ui {

struct ForecastTold;

struct BenchMoves
{
    plan::HoldUps held;                     // empty without a milestone to reach
    std::vector<plan::Move> doable;         // tasks that can start
    std::vector<forecast::MoveSoon> others; // what holds up, each with the milestone it is for
};

// `told`: the last forecast, perhaps none yet.
BenchMoves benchMoves(const plan::Network &network, std::optional<std::size_t> milestone,
                      const std::shared_ptr<const ForecastTold> &told, QDate today);

// "by 12 Dec 2026", "late: 12 Nov 2026".
QString leadOf(const plan::Move &move, QDate today);

} // namespace ohmwright::ui
