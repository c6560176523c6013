// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/records/thresholds.h"

#include <QCoreApplication>

#include <array>

namespace ohmwright {

namespace {

#define L(text) QT_TRANSLATE_NOOP("Thresholds", text)

// clang-format off
constexpr std::array kThresholds{
    ThresholdInfo{"bonding.resistance", Measure::Resistance, L("resistance of a bond, at most")},
    ThresholdInfo{"bonding.current", Measure::Current, L("current it is measured with, at least")},
    ThresholdInfo{"brakes.deceleration", Measure::Acceleration, L("deceleration, at least")},
    ThresholdInfo{"brakes.pedal", Measure::Force, L("force on the pedal, at most")},
    ThresholdInfo{"brakes.front_first_to", Measure::Ratio, L("braking up to which the front axle locks first, at least")},
    ThresholdInfo{"brakes.least_vacuum", Measure::Pressure, L("vacuum in the reservoir, at least")},
    ThresholdInfo{"brakes.efficiency", Measure::Ratio, L("braking efficiency on the bench, at least")},
    ThresholdInfo{"brakes.imbalance", Measure::Ratio, L("imbalance of an axle, at most")},
    ThresholdInfo{"brakes.parking", Measure::Ratio, L("efficiency of the parking brake, at least")},
    ThresholdInfo{"brakes.road", Measure::Ratio, L("deceleration on the road over gravity, at least")},
    ThresholdInfo{"cells.charge_floor", Measure::Temperature, L("coldest cell that is charged, at least")},
    ThresholdInfo{"charging.continuous_share", Measure::Ratio, L("share of the protective device in hours of charging, at most")},
    ThresholdInfo{"conductor.drop", Measure::Ratio, L("voltage drop, at most")},
    ThresholdInfo{"conductor.peak_drop", Measure::Ratio, L("voltage drop at a peak, at most")},
    ThresholdInfo{"discharge.voltage_dc", Measure::Voltage, L("touch voltage DC, at most")},
    ThresholdInfo{"discharge.voltage_ac", Measure::Voltage, L("touch voltage AC, at most")},
    ThresholdInfo{"discharge.passive_time", Measure::Duration, L("time to bleed off, at most")},
    ThresholdInfo{"discharge.active_time", Measure::Duration, L("time to discharge actively, at most")},
    ThresholdInfo{"discharge.opened_connector_time", Measure::Duration, L("time behind a connector opened by hand, at most")},
    ThresholdInfo{"discharge.y_energy", Measure::Energy, L("energy to the chassis, below")},
    ThresholdInfo{"drive.start_grade", Measure::Ratio, L("steepest start, at least")},
    ThresholdInfo{"fit.clearance", Measure::Length, L("clearance, at least")},
    ThresholdInfo{"flange.slip", Measure::Count, L("safety against slipping, at least")},
    ThresholdInfo{"flange.shear", Measure::Count, L("safety against shearing, at least")},
    ThresholdInfo{"fuse.clearing", Measure::Duration, L("time until a fuse has opened, at most")},
    ThresholdInfo{"grouping.stands_out", Measure::Count, L("modified z-score of a module, at most")},
    ThresholdInfo{"grouping.off_median", Measure::Ratio, L("distance of a module from the median, at most")},
    ThresholdInfo{"grouping.lost_in_week", Measure::Voltage, L("voltage a cell loses in a week, at most")},
    ThresholdInfo{"grouping.least_rest", Measure::Duration, L("rest between the two readings, at least")},
    ThresholdInfo{"grouping.capacity_spread", Measure::Ratio, L("spread of the groups' capacity, at most")},
    ThresholdInfo{"grouping.resistance_spread", Measure::Ratio, L("spread of the groups' resistance, at most")},
    ThresholdInfo{"isolation.dc", Measure::Count, L("ohms a volt, DC, at least")},
    ThresholdInfo{"isolation.ac", Measure::Count, L("ohms a volt, AC, at least")},
    ThresholdInfo{"low_voltage.fuse_share", Measure::Ratio, L("share of a fuse that a lasting load takes, at most")},
    ThresholdInfo{"low_voltage.reserve", Measure::Duration, L("time on the 12 V battery alone, at least")},
    ThresholdInfo{"precharge.reached", Measure::Ratio, L("how far the link is up when the contactor closes, at least")},
    ThresholdInfo{"precharge.deviation", Measure::Ratio, L("distance of the measured time from the computed, at most")},
    ThresholdInfo{"restraint.forward", Measure::Count, L("acceleration held along the vehicle, in g, at least")},
    ThresholdInfo{"restraint.sideways", Measure::Count, L("acceleration held across it, in g, at least")},
    ThresholdInfo{"restraint.upward", Measure::Count, L("acceleration held upward, in g, at least")},
    ThresholdInfo{"rotating.overspeed", Measure::Count, L("overspeed factor, at least")},
    ThresholdInfo{"rotating.safety", Measure::Count, L("safety against yielding at overspeed, at least")},
    ThresholdInfo{"rotating.balance", Measure::Speed, L("balance grade, at most")},
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

QString labelOf(const ThresholdInfo &threshold)
{
    return QCoreApplication::translate("Thresholds", threshold.label);
}

} // namespace ohmwright
