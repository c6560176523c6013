// SPDX-License-Identifier: GPL-3.0-or-later
// What the chart adds to a loom once it is laid out, on the screen and on paper:
// - a trunk is a tube only where a wire lies in it, so that none joins what no link joins;
// - by date, `plan` says from when to when ("22–24 Jul"), and below each row lies a time bar for
//   each task on it: from its place on the axis to the planned end, with `whisker` from the day it
//   is done by in 50 % of the samples to that of 95 %, both on the date axis (LoomTime);
// - below a housing that may fail stands so in `date`, which only plates use otherwise; a plate
//   says it below its days;
// - on paper, where nobody can point at "+3", up to three things that are lacking hang below a
//   housing instead of one.
// Rows make room for all that; columns stay where they are.
#pragma once

#include "core/plan/loom.h"
#include "ui/build_order/loom_risks.h"

#include <QString>

namespace ohmwright::ui {

struct LoomDressing
{
    const LoomRisks *risks = nullptr; // read during the call; none: none are known
    bool paper = false;
};

// `loom` as plan::layOutLoom() made it of these; once only.
void dressLoom(plan::Loom &loom, const plan::Network &network, const plan::LoomFacts &facts,
               const plan::LoomMetrics &metrics, const LoomDressing &how);

// So begins a line that tells a further thing that is lacking.
QString furtherLack();

// What the sign beside "may fail" takes of the line's width, scene units.
inline constexpr double kRiskSign = 13;

} // namespace ohmwright::ui
