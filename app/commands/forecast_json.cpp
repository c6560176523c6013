// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/commands/forecast_json.h"

#include "core/forecast/milestone_dates.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>
#include <QJsonArray>

namespace ohmwright {

using namespace forecast;

QString milestoneKeyOf(const WorkPlan &plan, const ForecastAsked &asked)
{
    return plan.milestones.empty() ? QString()
                                   : plan.activities[plan.milestones[asked.milestone]].key;
}

QString dayInForecast(const Forecast &forecast, int days)
{
    return days == plan::kNever ? QCoreApplication::translate("ForecastCommand", "never")
                                : printDate(forecast.dayOf(days));
}

QJsonObject forecastGainJson(const Gain &gain)
{
    return {{QStringLiteral("milestone"), gain.milestone},
            {QStringLiteral("change"), gain.change.code()},
            {QStringLiteral("days_gained"), gain.days},
            {QStringLiteral("mean_days_gained"), gain.meanDays},
            {QStringLiteral("standard_error"), gain.standardError},
            {QStringLiteral("sure"), gain.isSure()}};
}

QJsonObject forecastJson(const ForecastTold &told)
{
    const auto dayJson = [&](int days) {
        return days == plan::kNever ? QJsonValue() : QJsonValue(dayInForecast(told.forecast, days));
    };
    const std::vector<char> linked =
        told.plan.milestones.empty()
            ? std::vector<char>()
            : waitedOn(told.plan, told.plan.milestones[told.asked.milestone]);
    QJsonArray activities;
    for (std::size_t i = 0; i < told.plan.activities.size(); ++i) {
        const Activity &a = told.plan.activities[i];
        const ActivityForecast &f = told.forecast.activities[i];
        static constexpr std::array kKinds{"task", "milestone", "delivery", "answer", "redo"};
        QJsonObject one{
            {QStringLiteral("key"), a.key},
            {QStringLiteral("name"), a.name},
            {QStringLiteral("kind"), QLatin1String(kKinds[static_cast<std::size_t>(a.kind)])},
            {QStringLiteral("planned_start"), dayJson(f.plannedStart)},
            {QStringLiteral("planned_finish"), dayJson(f.plannedFinish)},
            {QStringLiteral("at_50"), dayJson(f.ready[0])},
            {QStringLiteral("at_80"), dayJson(f.ready[1])},
            {QStringLiteral("at_95"), dayJson(f.ready[2])},
            {QStringLiteral("float_days"), f.floatDays},
            {QStringLiteral("driving"), f.driving}};
        if (!told.plan.milestones.empty()) {
            one.insert(QStringLiteral("driving_milestone"),
                       told.forecast.drivingMilestone[told.asked.milestone][i]);
            one.insert(QStringLiteral("milestone_waits_on_it"), linked[i] != 0);
        }
        if (const std::optional<QDate> fixed = appointmentOf(told.records, a))
            one.insert(QStringLiteral("appointment"), printDate(*fixed));
        activities << one;
    }
    QJsonArray milestones;
    for (const std::size_t m : told.plan.milestones)
        milestones << told.plan.activities[m].key;
    QJsonArray orders;
    QJsonArray questions;
    for (const OrderBy &order : told.orders) {
        const Activity &a = told.plan.activities[order.activity];
        const auto behind = orderedBehind(told.plan, told.forecast, order, told.asked.confidence);
        const auto tellBehind = [&](QJsonObject &one) {
            if (behind)
                one.insert(QStringLiteral("at_once_after"), told.plan.activities[*behind].key);
        };
        if (a.toAsk) {
            QJsonObject one{{QStringLiteral("letter"), a.letter},
                            {QStringLiteral("subject"), a.name}};
            tellBehind(one);
            if (order.needed)
                one.insert(QStringLiteral("ask_by"), dayJson(order.latestDay));
            questions << one;
            continue;
        }
        QJsonObject one{{QStringLiteral("part"), a.part}, {QStringLiteral("name"), a.name}};
        tellBehind(one);
        if (order.needed)
            one.insert(QStringLiteral("order_by"), dayJson(order.latestDay));
        if (a.cost)
            one.insert(QStringLiteral("price"), printMoney(*a.cost));
        if (a.forShop)
            one.insert(QStringLiteral("for_the_shop"), true);
        orders << one;
    }
    QJsonArray months;
    for (const CashMonth &month : told.cash.months) {
        QJsonObject one{{QStringLiteral("month"), month.month.toString(QStringLiteral("yyyy-MM"))},
                        {QStringLiteral("due_50"), printMoney(month.due50)},
                        {QStringLiteral("due_80"), printMoney(month.due80)}};
        if (month.available)
            one.insert(QStringLiteral("available"), printMoney(*month.available));
        months << one;
    }
    QJsonArray gains;
    for (const Gain &gain : told.gains)
        gains << forecastGainJson(gain);
    QJsonArray learned;
    for (const Learned &one : told.learned)
        learned << QJsonObject{{QStringLiteral("trade"), wordOf(one.trade)},
                               {QStringLiteral("tasks"), one.tasks},
                               {QStringLiteral("factor"), one.factor()},
                               {QStringLiteral("offered"), one.isOffered()}};
    QJsonObject object{{QStringLiteral("today"), printDate(told.plan.today)},
                       {QStringLiteral("samples"), told.forecast.samples},
                       {QStringLiteral("traced_samples"), told.forecast.traced},
                       {QStringLiteral("seed"), static_cast<qint64>(told.asked.settings.seed)},
                       {QStringLiteral("confidence"), told.asked.confidence},
                       {QStringLiteral("milestone"), milestoneKeyOf(told.plan, told.asked)},
                       {QStringLiteral("milestones"), milestones},
                       {QStringLiteral("activities"), activities},
                       {QStringLiteral("order_by"), orders},
                       {QStringLiteral("ask_by"), questions},
                       {QStringLiteral("cash"), months},
                       {QStringLiteral("gains"), gains},
                       {QStringLiteral("learned"), learned},
                       {QStringLiteral("doubts"), QJsonArray::fromStringList(told.plan.doubts)}};
    if (told.cash.runsOut)
        object.insert(QStringLiteral("money_runs_out"),
                      told.cash.runsOut->toString(QStringLiteral("yyyy-MM")));
    return object;
}

} // namespace ohmwright
