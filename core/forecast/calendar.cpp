// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/calendar.h"

#include "core/parts/deadlines.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>

#include <algorithm>
#include <libical/ical.h>
#include <tuple>

namespace ohmwright::forecast {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Calendar", text);
}

QString uidOf(const char *kind, const QString &key)
{
    return QLatin1String(kind) + u'-' + key + QStringLiteral("@ohmwright");
}

// Of the confidences a forecast is made at, the one that is not below what is asked for.
std::size_t placeOf(int percent)
{
    std::size_t place = 0;
    while (place + 1 < kConfidences.size() && kConfidences[place] < percent)
        ++place;
    return place;
}

icaltimetype dateOf(QDate day)
{
    icaltimetype time = icaltime_null_date();
    time.year = day.year();
    time.month = day.month();
    time.day = day.day();
    return time;
}

} // namespace

std::vector<CalendarDay> calendarDays(const Records &records, const WorkPlan &plan,
                                      const Forecast &forecast, const std::vector<OrderBy> &orders,
                                      int confidencePercent)
{
    std::vector<CalendarDay> days;
    const std::size_t place = placeOf(confidencePercent);
    for (const std::size_t m : plan.milestones) {
        const Activity &a = plan.activities[m];
        const int ready = forecast.activities[m].ready[place];
        if (ready != plan::kNever)
            days.push_back({uidOf("milestone", a.key), forecast.dayOf(ready),
                            tr("%1 (forecast, %2 %)").arg(a.name).arg(kConfidences[place]),
                            tr("Reached by this day in %1 of 100 forecasts made on %2.")
                                .arg(kConfidences[place])
                                .arg(showDate(plan.today))});
        const auto *task = records.byKey<ohmwright::Task>(a.key);
        if (task && task->fixedOn)
            days.push_back({uidOf("appointment", a.key), *task->fixedOn,
                            tr("%1 (appointment)").arg(a.name), task->note});
    }
    for (const OrderBy &order : orders) {
        if (!order.needed)
            continue;
        const Activity &a = plan.activities[order.activity];
        // a day on which it cannot be ordered yet is no day to be reminded on
        if (orderedBehind(plan, forecast, order, confidencePercent))
            continue;
        days.push_back(
            {a.toAsk ? uidOf("ask-by", a.letter) : uidOf("order-by", a.part),
             plan.today.addDays(order.latestDay),
             (a.toAsk ? tr("Last day to ask: %1") : tr("Last day to order: %1")).arg(a.name),
             tr("Later, it moves a milestone at %1 % confidence, even if all else is ordered and "
                "asked at once.")
                 .arg(confidencePercent)});
    }
    for (const Purchase &purchase : records.all<Purchase>()) {
        if (!purchase.promisedOn || purchase.arrivedOn)
            continue;
        const Seller *seller = records.find(purchase.seller);
        days.push_back({uidOf("delivery", purchase.key), *purchase.promisedOn,
                        tr("Delivery from %1").arg(seller ? seller->name : purchase.key),
                        purchase.reference});
    }
    for (const Part &part : records.all<Part>())
        for (const Deadline &deadline : deadlinesOf(part, plan.today))
            if (deadline.state != DeadlineState::Over)
                days.push_back(
                    {uidOf(deadline.kind == DeadlineKind::Return     ? "return"
                           : deadline.kind == DeadlineKind::Warranty ? "warranty"
                                                                     : "claim",
                           part.key),
                     deadline.lastDay,
                     tr("Last day of %1: %2").arg(deadlineName(deadline.kind), part.name),
                     part.warrantyTerms});
    std::stable_sort(days.begin(), days.end(), [](const CalendarDay &a, const CalendarDay &b) {
        return std::tie(a.day, a.title) < std::tie(b.day, b.title);
    });
    return days;
}

QByteArray asICalendar(const std::vector<CalendarDay> &days, const QString &calendarName,
                       const QDateTime &nowUtc)
{
    icalcomponent *calendar = icalcomponent_new(ICAL_VCALENDAR_COMPONENT);
    icalcomponent_add_property(calendar, icalproperty_new_version("2.0"));
    icalcomponent_add_property(calendar, icalproperty_new_prodid("-//Ohmwright//Build order//EN"));
    icalproperty *name = icalproperty_new_x(calendarName.toUtf8().constData());
    icalproperty_set_x_name(name, "X-WR-CALNAME");
    icalcomponent_add_property(calendar, name);
    icaltimetype stamp = icaltime_from_timet_with_zone(
        static_cast<time_t>(nowUtc.toSecsSinceEpoch()), 0, icaltimezone_get_utc_timezone());
    for (const CalendarDay &day : days) {
        icalcomponent *event = icalcomponent_new(ICAL_VEVENT_COMPONENT);
        icalcomponent_add_property(event, icalproperty_new_uid(day.uid.toUtf8().constData()));
        icalcomponent_add_property(event, icalproperty_new_dtstamp(stamp));
        icalcomponent_add_property(event, icalproperty_new_dtstart(dateOf(day.day)));
        icalcomponent_add_property(event, icalproperty_new_summary(day.title.toUtf8().constData()));
        if (!day.note.isEmpty())
            icalcomponent_add_property(event,
                                       icalproperty_new_description(day.note.toUtf8().constData()));
        icalcomponent_add_property(event, icalproperty_new_transp(ICAL_TRANSP_TRANSPARENT));
        icalcomponent_add_component(calendar, event);
    }
    char *text = icalcomponent_as_ical_string_r(calendar);
    const QByteArray bytes(text);
    icalmemory_free_buffer(text);
    icalcomponent_free(calendar);
    return bytes;
}

} // namespace ohmwright::forecast
