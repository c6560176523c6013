// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/stock_shares.h"

#include "core/parts/options.h"

#include <algorithm>

namespace ohmwright::plan {

StockShares StockShares::of(const Records &records)
{
    StockShares shares;
    for (const TaskState turn : {TaskState::Started, TaskState::Open})
        for (const ohmwright::Task &task : records.all<ohmwright::Task>())
            if (task.state == turn && isPlannedWith(records, task.option))
                shares.handOut(records, task.id);
    return shares;
}

StockShares StockShares::within(const Records &records, Id<ohmwright::Task> task)
{
    StockShares shares;
    shares.handOut(records, task);
    return shares;
}

void StockShares::handOut(const Records &records, Id<ohmwright::Task> task)
{
    for (const TaskNeed &need : records.of<TaskNeed>(task)) {
        if (need.kind != ohmwright::NeedKind::Consumable || !need.part || !need.amount)
            continue;
        const Part *part = records.find(*need.part);
        double &claimed = m_claimed[*need.part];
        m_before[need.id] = claimed;
        // what cannot have enough takes nothing from those who can
        if (part && isEnough(leftFor(need, *part), *need.amount))
            claimed += need.amount->si();
    }
}

bool StockShares::isEnough(double left, const Amount &amount)
{
    constexpr double kRounding = 1e-9; // sums and differences may miss by the last bit
    return left > 0 && left >= amount.si() * (1 - kRounding);
}

double StockShares::leftFor(const TaskNeed &need, const Part &part) const
{
    const double stock = part.stock ? part.stock->si() : 0;
    const auto before = m_before.find(need.id);
    return before == m_before.end() ? stock : std::max(0.0, stock - before->second);
}

} // namespace ohmwright::plan
