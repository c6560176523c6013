// SPDX-License-Identifier: GPL-3.0-or-later
// Dates as a person types them, and the calendar arithmetic warranties need.
#pragma once

#include "core/quantity/result.h"

#include <QDate>
#include <QDateTime>
#include <QString>
#include <QStringView>

namespace ohmwright {

// Where "today" comes from; made in app/, passed in, so tests can stand on any day.
class Clock
{
public:
    virtual ~Clock() = default;
    [[nodiscard]] virtual QDate today() const = 0;
    [[nodiscard]] virtual QDateTime nowUtc() const = 0;
};

// ISO 8601 calendar date only, "2026-03-01"; for the interchange.
Result<QDate> parseIsoDate(QStringView text);

// What a person types at the bench: ISO, "1.3.2026", "1.3.26", "1 Mar 2026", "today", "yesterday",
// "tomorrow", "+90d", "-3d", "+2w", "+6m", "+1y" (counted from `base`; a month or year later that
// does not exist is that month's last day, so 29 Feb + 1y is 28 Feb). "1/3/2026" is refused: day
// and month cannot be told apart. Years 1900 to 2199.
Result<QDate> parseDate(QStringView text, QDate today, QDate base);
inline Result<QDate> parseDate(QStringView text, QDate today) { return parseDate(text, today, today); }

QString printDate(QDate date);  // ISO
QString showDate(QDate date);   // "1 Mar 2026", English month names whatever the locale

} // namespace ohmwright
