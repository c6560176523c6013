// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/records/thresholds.h"

#include <QCoreApplication>

#include <array>
#include <cmath>

namespace ohmwright {

namespace {

#define L(text) QT_TRANSLATE_NOOP("Thresholds", text)

// clang-format off
constexpr std::array kThresholds{
    ThresholdInfo{"bonding.resistance", Measure::Resistance, 0.1, Tighter::Lower, L("resistance of a bond, at most")},
    ThresholdInfo{"bonding.current", Measure::Current, 0.2, Tighter::Higher, L("current it is measured with, at least")},
    ThresholdInfo{"brakes.deceleration", Measure::Acceleration, 6.43, Tighter::Higher, L("deceleration, at least")},
    ThresholdInfo{"brakes.pedal", Measure::Force, 500, Tighter::Lower, L("force on the pedal, at most")},
    ThresholdInfo{"brakes.front_first_to", Measure::Ratio, 0.8, Tighter::Higher, L("braking up to which the front axle locks first, at least")},
    ThresholdInfo{"brakes.least_vacuum", Measure::Pressure, 60e3, Tighter::Higher, L("vacuum in the reservoir, at least")},
    ThresholdInfo{"brakes.efficiency", Measure::Ratio, 0.58, Tighter::Higher, L("braking efficiency on the bench, at least")},
    ThresholdInfo{"brakes.imbalance", Measure::Ratio, 0.30, Tighter::Lower, L("imbalance of an axle, at most")},
    ThresholdInfo{"brakes.parking", Measure::Ratio, 0.16, Tighter::Higher, L("efficiency of the parking brake, at least")},
    ThresholdInfo{"brakes.road", Measure::Ratio, 6.43 / 9.80665, Tighter::Higher, L("deceleration on the road over gravity, at least")},
    ThresholdInfo{"cells.charge_floor", Measure::Temperature, 273.15, Tighter::Higher, L("coldest cell that is charged, at least")},
    ThresholdInfo{"charging.continuous_share", Measure::Ratio, 0.80, Tighter::Lower, L("share of the protective device in hours of charging, at most")},
    ThresholdInfo{"conductor.drop", Measure::Ratio, 0.03, Tighter::Lower, L("voltage drop, at most")},
    ThresholdInfo{"conductor.peak_drop", Measure::Ratio, 0.10, Tighter::Lower, L("voltage drop at a peak, at most")},
    ThresholdInfo{"discharge.voltage_dc", Measure::Voltage, 60, Tighter::Lower, L("touch voltage DC, at most")},
    ThresholdInfo{"discharge.voltage_ac", Measure::Voltage, 30, Tighter::Lower, L("touch voltage AC, at most")},
    ThresholdInfo{"discharge.passive_time", Measure::Duration, 60, Tighter::Lower, L("time to bleed off, at most")},
    ThresholdInfo{"discharge.active_time", Measure::Duration, 5, Tighter::Lower, L("time to discharge actively, at most")},
    ThresholdInfo{"discharge.opened_connector_time", Measure::Duration, 1, Tighter::Lower, L("time behind a connector opened by hand, at most")},
    ThresholdInfo{"discharge.y_energy", Measure::Energy, 0.2, Tighter::Lower, L("energy to the chassis, below")},
    ThresholdInfo{"drive.start_grade", Measure::Ratio, 0.25, Tighter::Higher, L("steepest start, at least")},
    ThresholdInfo{"fit.clearance", Measure::Length, 0.010, Tighter::Higher, L("clearance, at least")},
    ThresholdInfo{"flange.slip", Measure::Count, 1.5, Tighter::Higher, L("safety against slipping, at least")},
    ThresholdInfo{"flange.shear", Measure::Count, 1.25, Tighter::Higher, L("safety against shearing, at least")},
    ThresholdInfo{"fuse.clearing", Measure::Duration, 5, Tighter::Lower, L("time until a fuse has opened, at most")},
    ThresholdInfo{"grouping.stands_out", Measure::Count, 3.5, Tighter::Lower, L("modified z-score of a module, at most")},
    ThresholdInfo{"grouping.off_median", Measure::Ratio, 0.05, Tighter::Lower, L("distance of a module from the median, at most")},
    ThresholdInfo{"grouping.lost_in_week", Measure::Voltage, 0.010, Tighter::Lower, L("voltage a cell loses in a week, at most")},
    ThresholdInfo{"grouping.least_rest", Measure::Duration, 7 * 86400, Tighter::Higher, L("rest between the two readings, at least")},
    ThresholdInfo{"grouping.capacity_spread", Measure::Ratio, 0.02, Tighter::Lower, L("spread of the groups' capacity, at most")},
    ThresholdInfo{"grouping.resistance_spread", Measure::Ratio, 0.05, Tighter::Lower, L("spread of the groups' resistance, at most")},
    ThresholdInfo{"isolation.dc", Measure::Count, 100, Tighter::Higher, L("ohms a volt, DC, at least")},
    ThresholdInfo{"isolation.ac", Measure::Count, 500, Tighter::Higher, L("ohms a volt, AC, at least")},
    ThresholdInfo{"low_voltage.fuse_share", Measure::Ratio, 0.75, Tighter::Lower, L("share of a fuse that a lasting load takes, at most")},
    ThresholdInfo{"low_voltage.reserve", Measure::Duration, 1800, Tighter::Higher, L("time on the 12 V battery alone, at least")},
    ThresholdInfo{"precharge.reached", Measure::Ratio, 0.95, Tighter::Higher, L("how far the link is up when the contactor closes, at least")},
    ThresholdInfo{"precharge.deviation", Measure::Ratio, 0.20, Tighter::Lower, L("distance of the measured time from the computed, at most")},
    ThresholdInfo{"restraint.forward", Measure::Count, 20, Tighter::Higher, L("acceleration held along the vehicle, in g, at least")},
    ThresholdInfo{"restraint.sideways", Measure::Count, 8, Tighter::Higher, L("acceleration held across it, in g, at least")},
    ThresholdInfo{"restraint.upward", Measure::Count, 10, Tighter::Higher, L("acceleration held upward, in g, at least")},
    ThresholdInfo{"rotating.overspeed", Measure::Count, 1.2, Tighter::Higher, L("overspeed factor, at least")},
    ThresholdInfo{"rotating.safety", Measure::Count, 1.5, Tighter::Higher, L("safety against yielding at overspeed, at least")},
    ThresholdInfo{"rotating.balance", Measure::Speed, 6.3e-3, Tighter::Lower, L("balance grade, at most")},
};
// clang-format on

#undef L

} // namespace

std::span<const ThresholdInfo> knownThresholds()
{
    return kThresholds;
}

const ThresholdInfo *knownThreshold(QStringView name)
{
    for (const ThresholdInfo &threshold : kThresholds)
        if (name ==
            QLatin1String(threshold.name.data(), static_cast<qsizetype>(threshold.name.size())))
            return &threshold;
    return nullptr;
}

bool isLooser(const ThresholdInfo &threshold, const Amount &own)
{
    // 95 % typed is the published 0.95, whatever the noise of binary arithmetic
    constexpr double kNoise = 1e-9;
    const double slack = kNoise * std::abs(threshold.published);
    return threshold.tighter == Tighter::Lower ? own.si() > threshold.published + slack
                                               : own.si() < threshold.published - slack;
}

QString publishedValue(const ThresholdInfo &threshold)
{
    return printAmount(
        Amount::fromSi(threshold.published, Unit::ofMeasure(threshold.measure).front()));
}

QString labelOf(const ThresholdInfo &threshold)
{
    return QCoreApplication::translate("Thresholds", threshold.label);
}

} // namespace ohmwright
