// SPDX-License-Identifier: GPL-3.0-or-later
// What a wanted part is expected to cost, in the book's own currency.
#pragma once

#include "core/quantity/money.h"
#include "core/records/records.h"

#include <QDate>

#include <optional>

namespace ohmwright::forecast {

// None without an estimate or a rate for its currency.
std::optional<Money> estimateOf(const Records &records, const Part &part, QDate today);

// The same as far as the build pays for it: none without an estimate, without a rate for its
// currency, or if it is counted to the shop.
std::optional<Money> priceOf(const Records &records, const Part &part, QDate today);

} // namespace ohmwright::forecast
