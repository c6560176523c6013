// SPDX-License-Identifier: GPL-3.0-or-later
// The date axis of a loom laid out by date: which day lies where. A week is as wide as the work
// that starts in it, so days lie even only between two lines or columns.
#pragma once

#include "core/plan/loom.h"

#include <vector>

namespace ohmwright::ui {

class LoomTime
{
public:
    // Days count from `loom.today`. By chain it knows nothing.
    explicit LoomTime(const plan::Loom &loom);

    [[nodiscard]] bool known() const { return m_known.size() > 1; }
    // Scene x of the middle of a day; of what lies beyond either end, that end.
    [[nodiscard]] double at(int day) const;
    [[nodiscard]] double right() const { return m_right; } // where the axis ends

private:
    struct Known
    {
        double x = 0;
        double day = 0;
    };
    std::vector<Known> m_known; // left to right; days never fall
    double m_right = 0;
};

// Weeks without work at the right end of the axis, up to the day by which all is done in 95 % of
// the samples, a year at most: so that what is drawn along the axis need not end with the plan.
void goOnTo95(plan::Loom &loom);

} // namespace ohmwright::ui
