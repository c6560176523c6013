// SPDX-License-Identifier: GPL-3.0-or-later
// Whose the stock of a consumable is while several open tasks need it: it is handed out to tasks
// under way first, then in the order of their keys, so that nothing is promised twice.
#pragma once

#include "core/records/records.h"

#include <QDate>

#include <unordered_map>

namespace ohmwright::plan {

class StockShares
{
public:
    // Over every open task that is planned with.
    static StockShares of(const Records &records);
    // Over the needs of one task alone: what may be used up when it is done.
    static StockShares within(const Records &records, Id<ohmwright::Task> task);

    // What earlier needs leave of the stock, in the SI unit of the need's amount; the whole stock
    // for a need that is not handed out to.
    [[nodiscard]] double leftFor(const TaskNeed &need, const Part &part) const;
    [[nodiscard]] static bool isEnough(double left, const Amount &amount);

private:
    void handOut(const Records &records, Id<ohmwright::Task> task);

    std::unordered_map<Id<Part>, double> m_claimed;    // SI, so far
    std::unordered_map<Id<TaskNeed>, double> m_before; // SI, claimed ahead of it
};

} // namespace ohmwright::plan
