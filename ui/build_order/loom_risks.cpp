// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_risks.h"

namespace ohmwright::ui {

LoomRisks loomRisksOf(const Records &records)
{
    LoomRisks risks;
    for (const Task &task : records.all<Task>().rows()) {
        if (task.failPercent.value_or(0) <= 0 || task.state == TaskState::Done)
            continue;
        const Task *from =
            task.redoFrom && *task.redoFrom != task.id ? records.find(*task.redoFrom) : nullptr;
        risks.insert(task.key, {*task.failPercent, from ? from->title : QString()});
    }
    return risks;
}

QString RiskWords::of(const LoomRisk &risk)
{
    return risk.again.isEmpty()
               ? tr("may fail %1\u00A0%, then again").arg(risk.percent)
               : tr("may fail %1\u00A0%, again from %2").arg(risk.percent).arg(risk.again);
}

} // namespace ohmwright::ui
