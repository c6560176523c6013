// SPDX-License-Identifier: GPL-3.0-or-later
// What the hours logged say about the estimates: a factor for each kind of work, to be offered.
#pragma once

#include "core/book/book.h"

#include <vector>

namespace ohmwright::forecast {

struct Learned
{
    Trade trade = Trade::Other;
    int tasks = 0;            // done, with an estimate and hours logged
    int estimatedMinutes = 0; // person-minutes, all of them
    int loggedMinutes = 0;
    int openTasks = 0; // of the kind, with an estimate, not begun: what an offer would change
    [[nodiscard]] double factor() const
    {
        return static_cast<double>(loggedMinutes) / estimatedMinutes;
    }
    // From three tasks on, and a tenth or more away from 1; common practice, no published source.
    [[nodiscard]] bool isOffered() const;
};

// Kinds of work with at least one such task, as enumerated. A task without a kind counts as other.
std::vector<Learned> learnedFrom(const Records &records);

// One edit: the three estimates of every open task of that kind that is not begun, times `factor`
// (0.1 to 10), rounded to whole minutes. NotAllowed outside these bounds or if there is none.
Outcome scaleEstimates(Book &book, Trade trade, double factor);

} // namespace ohmwright::forecast
