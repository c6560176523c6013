// SPDX-License-Identifier: GPL-3.0-or-later
// What was asked or ordered, should be there by now, and is not.
//
// Whoever counts how much longer it takes (core/plan/judge, core/forecast/waits) counts it as long
// again as it was estimated to take from the start, and not before the day one means to ask again:
// what does not come when it should has told nothing of when it will (a wait without memory).
// Common practice, no published source; said as a doubt wherever it is counted.
#pragma once

#include "core/records/records.h"

#include <QDate>

#include <optional>

namespace ohmwright::plan {

// The day an answer asked for was to be expected, if that is past.
std::optional<QDate> overdueSince(const Letter &letter, QDate today);
// The day a part on order was promised for, or was to be expected, if that is past.
std::optional<QDate> overdueSince(const Records &records, const Part &part, QDate today);

// Days to the day one means to ask again; 0 if none is told, or it is past.
int daysToAskAgain(const Letter &letter, QDate today);

// When to ask after what is under way: on the day noted for it, else when it should be there; today
// if that is past.
QDate chaseOn(const Letter &letter, QDate today);
// None for a part that is in no purchase: nobody knows when it was ordered.
std::optional<QDate> chaseOn(const Records &records, const Part &part, QDate today);

} // namespace ohmwright::plan
