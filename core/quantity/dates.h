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

// ISO 8601 calendar date only, "2026-03-01", years 1900 to 2199; for the interchange.
Result<QDate> parseIsoDate(QStringView text);
// "19:30": two digits, a colon, two digits; 00:00 to 23:59.
bool isTimeOfDay(QStringView text);

// What a person types at the bench: ISO, "1.3.2026", "1.3.26", "1 Mar 2026", "March 1, 2026",
// "today", "yesterday", "tomorrow", "+90d", "-3d", "+2w", "+6m", "+1y" (counted from `base`; a
// month or year later that does not exist is that month's last day, so 29 Feb + 1y is 28 Feb).
// "1/3/2026" is refused: day and month cannot be told apart. A year of two digits is the one from
// 79 years before to 20 years after today. Years 1900 to 2199. `today` and `base` must be valid.
Result<QDate> parseDate(QStringView text, QDate today, QDate base);
inline Result<QDate> parseDate(QStringView text, QDate today)
{
    return parseDate(text, today, today);
}

QString printDate(QDate date); // ISO
QString showDate(QDate date);  // "1 Mar 2026", English month names whatever the locale

} // namespace ohmwright
