// SPDX-License-Identifier: GPL-3.0-or-later
// How a list tells a record, and where it puts it, where name and bare fields would not do: times
// of a week in the week's order, days in the calendar's, the newest work on top.
#pragma once

#include "core/cards/record_kind.h"

#include <QDate>
#include <QString>

#include <optional>

namespace ohmwright::ui {

struct ListedWords
{
    QString name, detail;
};

// Working times, special days, work entries and choices; none for others.
[[nodiscard]] std::optional<ListedWords> listedWords(const Records &records, const RecordKind &kind,
                                                     std::int64_t id);
// Of a work permit that is not over, why it gives no leave to work today; empty for all else. It
// never says that one does: that is for whoever signs it.
[[nodiscard]] QString lackingToday(const Records &records, const RecordKind &kind, std::int64_t id,
                                   QDate today);
// A key to sort by; `name` as it is told.
[[nodiscard]] QString listedOrder(const Records &records, const RecordKind &kind, std::int64_t id,
                                  const QString &name);

} // namespace ohmwright::ui
