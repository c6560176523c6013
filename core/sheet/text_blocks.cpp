// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/text_blocks.h"

#include <algorithm>

namespace ohmwright::sheet {

QString wordOf(const Mark &mark)
{
    if (mark.kind == MarkKind::HighVoltage)
        return QStringLiteral("HV");
    if (!mark.word.isEmpty())
        return mark.word;
    switch (mark.kind) {
    case MarkKind::Holds:
        return QStringLiteral("holds");
    case MarkKind::Tight:
        return QStringLiteral("tight");
    case MarkKind::Fails:
        return QStringLiteral("fails");
    case MarkKind::Unknown:
    case MarkKind::HighVoltage:
        break;
    }
    return QStringLiteral("unknown");
}

Table withEveryColumn(Table table)
{
    std::size_t widest = table.columns.size();
    for (const Row &row : table.rows) {
        if (row.kind != RowKind::Group)
            widest = std::max(widest, row.cells.size());
    }
    table.columns.resize(widest);
    for (Row &row : table.rows) {
        if (row.kind != RowKind::Group)
            row.cells.resize(widest);
    }
    return table;
}

} // namespace ohmwright::sheet
