// SPDX-License-Identifier: GPL-3.0-or-later
// DriveCycle: speed over time, as published or as logged. The published ones are compiled in; where
// they come from stands in resources/drive-cycles/SOURCE.md.
//
// Source: Regulation (EU) 2017/1151 and UN Regulations No. 83 and No. 154, Official Journal of the
// European Union; United States 40 CFR Parts 86 and 600.
#pragma once

#include "core/checks/dimensions.h"
#include "core/quantity/result.h"

#include <QByteArray>
#include <QString>

#include <utility>
#include <vector>

namespace ohmwright {

struct DriveCycle
{
    QString key;                                    // "wltc-3b"
    QString name;                                   // "WLTC class 3b"
    QString source;                                 // "UN R154, annex B1"
    std::vector<std::pair<Duration, Speed>> points; // rising in time, straight lines between

    [[nodiscard]] Duration duration() const;
    [[nodiscard]] Length distance() const;
    [[nodiscard]] Speed highest() const;
    // From the first point at or after `from` to the last at or before `to`.
    [[nodiscard]] DriveCycle part(Duration from, Duration to) const;
    // No faster than that; how WLTP treats a vehicle that cannot follow.
    [[nodiscard]] DriveCycle cappedAt(Speed speed) const;
};

// Comma-separated, a header row naming time_s and one of speed_kmh, speed_mph, speed_ms; other
// columns are passed over, but rows are kept to those whose `part` column reads `part`, if asked.
// BadInput, naming the line, for missing columns, numbers that are none, times that do not rise,
// speeds below zero or above 500 km/h, fewer than two rows.
Result<DriveCycle> readDriveCycle(const QByteArray &csv, const QString &part = {});

// "udds", "ftp-75", "hwfet", "wltc-3b", "nedc".
const std::vector<DriveCycle> &publishedDriveCycles();
// Asserted to be one of them.
const DriveCycle &publishedDriveCycle(const QString &key);

} // namespace ohmwright
