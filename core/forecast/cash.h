// SPDX-License-Identifier: GPL-3.0-or-later
// Cash needed by month, as the forecast spends it, against what can be set aside.
#pragma once

#include "core/forecast/forecast.h"
#include "core/quantity/money.h"

namespace ohmwright::forecast {

struct CashMonth
{
    QDate month;                    // its first day
    Money due50, due80;             // needed from today to its end, at 50 and 80 %
    std::optional<Money> available; // saved and set aside by its end; none if the book says none
};

struct Cash
{
    std::vector<CashMonth> months; // from this one to the one in which everything is paid, at 95 %
    std::optional<QDate> runsOut;  // the first month whose due80 is more than what is available
    QStringList gaps;              // what is not counted, or not in the budget, a sentence each
};

// Samples the months are summed over.
inline constexpr int kCashSamples = 2000;

// What is due when:
// - of a purchase what is not paid yet, on the day promised (today, if that is over or not told);
// - a wanted part on the day of its order: when the task that buys it is done, else as late as its
//   delivery allows for the first task in need of it, in each sample; one that no task waits for,
//   when everything is done;
// - what is bought or paid anew when a test fails, on the day that is done again, as often as it
//   fails in the sample; the budget has that not among what is to come;
// - what is expected back on its day, as less due.
// Available: what is saved, from its day on (today if not told), and what is set aside at the end
// of every month after it.
Cash cashOf(const Records &records, const WorkPlan &plan, const Simulation &simulation,
            int samples = kCashSamples);

} // namespace ohmwright::forecast
