// SPDX-License-Identifier: GPL-3.0-or-later
// What would turn a verdict, in words: for the window, the command and the build sheet.
#pragma once

#include "core/verdicts/turning_points.h"

#include <QStringList>

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace ohmwright {

// "Any one of these alone, and it would hold:" over "torque set in the controller, 141 N·m or less
// instead of 148 N·m" and the others; the same of what would spoil it. Nothing for no points.
struct ToldTurning
{
    TurningPoint::Way way = TurningPoint::Way::Mended;
    QString head; // ends with a colon
    QStringList lines;
    bool operator==(const ToldTurning &) const = default;
};
std::vector<ToldTurning> told(const std::vector<TurningPoint> &points, Verdict before);

// The check with these sentences about what it says itself would turn it: what mends before, what
// spoils after.
Check withTurningPoints(const Records &records, QDate today, Check check);
// For the build sheet: what would mend each that does not hold, step by step as TurningSearch, and
// under the same condition.
class MendingSearch
{
public:
    MendingSearch(const Records &records, QDate today, std::vector<Check> checks);
    bool step(); // false when all are told
    // As given, with these sentences; once step() gave false.
    [[nodiscard]] std::vector<Check> take() { return std::move(m_checks); }

private:
    void begin(); // the next that does not hold

    const Records *m_records;
    QDate m_today;
    std::vector<Check> m_checks;
    std::size_t m_at = 0;
    std::optional<TurningSearch> m_search;
};
// All steps at once.
std::vector<Check> withMending(const Records &records, QDate today, std::vector<Check> checks);

} // namespace ohmwright
