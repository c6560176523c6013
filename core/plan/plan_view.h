// SPDX-License-Identifier: GPL-3.0-or-later
// The build order as the book has it: records in, a Network out, with every need judged.
#pragma once

#include "core/plan/network.h"
#include "core/plan/stock_shares.h"
#include "core/records/records.h"

#include <QDate>

#include <array>

namespace ohmwright::plan {

// Where nobody has said how long something takes. Common practice, no published source; shown as
// "assumed" wherever it is used.
inline constexpr int kAssumedAnswerDays = 28;
inline constexpr int kAssumedLeadDays = 14;

// Pairs of hands a task takes at once: as many as it tells, and two at least where a person is
// needed beside the one who works.
int handsOf(const Records &records, const ohmwright::Task &task);

inline constexpr int kMostHands = 4; // a working time and a task tell no more

// Minutes by the clock when one pair of hands is there, two, …: by the working times, or the
// build's hours a week where there are none. Where so many are never there, the time of fewer.
std::array<int, kMostHands> minutesPerWeek(const Records &records);
// Calendar days a task takes: its waiting time, and its work by the clock spread over the weeks
// that have the hands it takes, rounded up to a day. Knows no days off: the forecast does.
int elapsedDays(const Records &records, const ohmwright::Task &task,
                const std::array<int, kMostHands> &minutesPerWeek);

// Tasks in key order, so that index i is records.all<Task>().rows()[i]. Beside what the records
// say:
// - a task of an option that is not planned with is set aside;
// - one that needs a part which a task is still to order, or a letter which one is still to ask
//   for, waits on that task, and that one's end includes the delivery or the answer;
// - one that opens a unit needs what openingNeed() says (opening.h).
Network networkOf(const Records &records, QDate today);

// One need as it stands today; of a consumable, with what the shares leave of its stock.
LeafNeed judge(const Records &records, const TaskNeed &need, const StockShares &shares,
               QDate today);

// The milestone a builder looks at: not done, earliest date first, without a date last, then key.
std::optional<std::size_t> nextMilestone(const Network &network);

} // namespace ohmwright::plan
