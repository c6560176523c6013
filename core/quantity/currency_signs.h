// SPDX-License-Identifier: GPL-3.0-or-later
// What a currency sign can mean. Used inside core/quantity only; outside, money has a code.
#pragma once

#include "core/quantity/money.h"

#include <QStringView>

#include <optional>
#include <vector>

namespace ohmwright::detail {

struct SignMeaning
{
    std::vector<Currency> currencies; // that are written with it
    bool firstIsMeant = false;        // when nothing else is said
};

// "€", "kr.", "US$"; nothing for a text that is no sign we know.
std::optional<SignMeaning> currenciesOfSign(QStringView text);

} // namespace ohmwright::detail
