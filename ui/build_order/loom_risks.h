// SPDX-License-Identifier: GPL-3.0-or-later
// Tasks that may fail and must then be done again, as the chart tells them.
#pragma once

#include "core/records/records.h"

#include <QCoreApplication>
#include <QHash>
#include <QString>

namespace ohmwright::ui {

struct LoomRisk
{
    int percent = 0; // chance that it fails each time it is done, 1 to 95
    QString again;   // title of the task that is then done again first; empty: it alone
    bool operator==(const LoomRisk &) const = default;
};

using LoomRisks = QHash<QString, LoomRisk>; // by the task's key; most have none

// Of the tasks still to be done.
LoomRisks loomRisksOf(const Records &records);

class RiskWords
{
    Q_DECLARE_TR_FUNCTIONS(RiskWords)

public:
    // "may fail 30 %, again from Folder of tests"
    static QString of(const LoomRisk &risk);
};

} // namespace ohmwright::ui
