// SPDX-License-Identifier: GPL-3.0-or-later
// A clock that stands where the test puts it.
#pragma once

#include "core/quantity/dates.h"

namespace ohmwright {

class FixedClock final : public Clock
{
public:
    explicit FixedClock(QDate day = QDate(2026, 6, 15)) : m_now(day, QTime(9, 0), Qt::UTC) {}
    [[nodiscard]] QDate today() const override { return m_now.date(); }
    [[nodiscard]] QDateTime nowUtc() const override { return m_now; }
    void set(QDate day) { m_now = QDateTime(day, QTime(9, 0), Qt::UTC); }

private:
    QDateTime m_now;
};

} // namespace ohmwright
