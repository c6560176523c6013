// SPDX-License-Identifier: GPL-3.0-or-later
// The computer's clock. The only place that asks it; everything else is handed a Clock.
#pragma once

#include "core/quantity/dates.h"

namespace ohmwright {

class SystemClock final : public Clock
{
public:
    [[nodiscard]] QDate today() const override { return QDate::currentDate(); }
    [[nodiscard]] QDateTime nowUtc() const override { return QDateTime::currentDateTimeUtc(); }
};

} // namespace ohmwright
