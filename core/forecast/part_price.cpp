// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/part_price.h"

#include "core/parts/log_part.h"

namespace ohmwright::forecast {

std::optional<Money> priceOf(const Records &records, const Part &part, QDate today)
{
    return part.countedTo == CountedTo::Shop ? std::nullopt : estimateOf(records, part, today);
}

std::optional<Money> estimateOf(const Records &records, const Part &part, QDate today)
{
    if (!part.estimate)
        return std::nullopt;
    const Currency own = records.build().currency;
    if (part.estimate->currency() == own)
        return part.estimate;
    const std::optional<Rate> rate = rateOn(records, part.estimate->currency(), today);
    return rate ? std::optional(rate->convert(*part.estimate, own)) : std::nullopt;
}

} // namespace ohmwright::forecast
