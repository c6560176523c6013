// SPDX-License-Identifier: GPL-3.0-or-later
// Days of the build for a calendar program: an iCalendar file (RFC 5545).
#pragma once

#include "core/forecast/order_by.h"

#include <QByteArray>
#include <QDateTime>

#include <vector>

namespace ohmwright::forecast {

struct CalendarDay
{
    QString uid; // the same each time for the same thing, so that it is updated, not doubled
    QDate day;   // the whole of it
    QString title, note;
    bool operator==(const CalendarDay &) const = default;
};

// By day, then title: milestones as forecast at the build's confidence, and their appointments;
// order-by days of wanted parts; deliveries promised; last days of return, warranty and carrier
// claim windows that are still running.
std::vector<CalendarDay> calendarDays(const Records &records, const WorkPlan &plan,
                                      const Forecast &forecast, const std::vector<OrderBy> &orders,
                                      int confidencePercent);

// Folded, escaped and with CRLF as the standard asks, by libical.
QByteArray asICalendar(const std::vector<CalendarDay> &days, const QString &calendarName,
                       const QDateTime &nowUtc);

} // namespace ohmwright::forecast
