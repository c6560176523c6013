// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/quantity/dates.h"

namespace ohmwright {

class FixedClock final : public Clock
{
public:
    [[nodiscard]] QDate today() const override { return {2026, 3, 1}; }
    [[nodiscard]] QDateTime nowUtc() const override
    {
        return {today(), QTime(12, 0), Qt::UTC};
    }
};

} // namespace ohmwright
