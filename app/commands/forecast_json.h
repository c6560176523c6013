// SPDX-License-Identifier: GPL-3.0-or-later
// What `ohmwright forecast` was asked and what it tells, as values and as JSON.
#pragma once

#include "core/forecast/cash.h"
#include "core/forecast/gains.h"
#include "core/forecast/learning.h"
#include "core/forecast/order_by.h"

#include <QJsonObject>

namespace ohmwright {

struct ForecastAsked
{
    forecast::Settings settings;
    int confidence = 80;
    std::optional<forecast::PlanChange> change;
    std::size_t milestone = 0; // place in the plan's milestones
};

struct ForecastTold
{
    const Records &records;
    const forecast::WorkPlan &plan;
    const forecast::Forecast &forecast;
    const ForecastAsked &asked;
    std::vector<forecast::OrderBy> orders;
    forecast::Cash cash;
    std::vector<forecast::Gain> gains;
    std::vector<forecast::Learned> learned;
};

// Key of the milestone looked at; empty if there is none.
QString milestoneKeyOf(const forecast::WorkPlan &plan, const ForecastAsked &asked);
// ISO 8601, or "never".
QString dayInForecast(const forecast::Forecast &forecast, int days);
QJsonObject forecastGainJson(const forecast::Gain &gain);
QJsonObject forecastJson(const ForecastTold &told);

} // namespace ohmwright
