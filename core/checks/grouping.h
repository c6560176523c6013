// SPDX-License-Identifier: GPL-3.0-or-later
// Grouping: salvaged modules of one type into parallel groups of a fixed count, so that the groups
// are alike in capacity and resistance; what stands out or loses charge is set aside.
//
// The splitting is core/checks/balanced_groups.h (differencing, exchanges, branch and bound), what
// stands out is core/checks/robust_statistics.h; sources stand there. In parallel, capacities add,
// and conductances 1/R add. Nilsson and Riedel, Electric Circuits.
#pragma once

#include "core/checks/balanced_groups.h"
#include "core/checks/given.h"

#include <optional>
#include <vector>

namespace ohmwright {

struct MeasuredModule
{
    QString name;           // as it is marked
    Given<Charge> capacity; // measured, all alike: same current, temperature, end voltages; > 0
    Given<Resistance> resistance; // measured, all alike: same pulse, state of charge; > 0
    Given<Voltage> lost;          // of its voltage over the rest, from full; 0 or more
};

struct GroupingInputs
{
    QString pack;                        // key of what it is about
    std::vector<MeasuredModule> modules; // of one type
    Given<double> groupsInSeries;        // parallel groups wanted, whole, 1 or more
    Given<double> modulesInGroup;        // modules in each, whole, 1 or more
    Given<double> cellsInModule;         // cells in series within a module, whole, 1 or more
    Given<Duration> rest;                // between the two readings that `lost` comes from; > 0
    // Between any two modules just before they are joined; only where it was measured.
    std::optional<Given<Voltage>> differenceBeforeJoining;
    // How much capacity counts in the split; the rest is conductance. 0 to 1.
    Given<double> weightOfCapacity =
        given(0.5, QStringLiteral("how much capacity counts in the split"), Evidence::Assumed,
              QStringLiteral("both alike; common practice, no published source"));

    // A module is an outlier when it stands out by both.
    Threshold<double> standsOut{QStringLiteral("grouping.stands_out"),
                                3.5,
                                QStringLiteral("B. Iglewicz, D. C. Hoaglin, How to Detect and "
                                               "Handle Outliers, ASQC 1993, 3.3"),
                                Tighter::Lower,
                                std::nullopt,
                                {}};
    Threshold<double> offMedian{QStringLiteral("grouping.off_median"),
                                0.05,
                                QStringLiteral("common practice, no published source"),
                                Tighter::Lower,
                                std::nullopt,
                                {}};
    // Of a cell, in a week; beyond it a module is set aside whatever the others do.
    Threshold<Voltage> lostInWeek{QStringLiteral("grouping.lost_in_week"),
                                  Voltage::fromSi(0.010),
                                  QStringLiteral("common practice, no published source"),
                                  Tighter::Lower,
                                  std::nullopt,
                                  {}};
    Threshold<Duration> leastRest{QStringLiteral("grouping.least_rest"),
                                  seconds(7 * 86400),
                                  QStringLiteral("common practice, no published source"),
                                  Tighter::Higher,
                                  std::nullopt,
                                  {}};
    // From the smallest to the largest group, of the mean.
    Threshold<double> capacitySpread{QStringLiteral("grouping.capacity_spread"),
                                     0.02,
                                     QStringLiteral("common practice, no published source"),
                                     Tighter::Lower,
                                     std::nullopt,
                                     {}};
    Threshold<double> resistanceSpread{QStringLiteral("grouping.resistance_spread"),
                                       0.05,
                                       QStringLiteral("common practice, no published source"),
                                       Tighter::Lower,
                                       std::nullopt,
                                       {}};
};

struct SetAside
{
    std::size_t module = 0; // index
    QString reason;         // a sentence
    bool operator==(const SetAside &) const = default;
};

struct ModuleGrouping
{
    Groups groups; // of module indices; empty when too few are left
    std::vector<SetAside> setAside;
    std::vector<std::size_t> spare; // good, but not needed
    double cost = 0, bound = 0;     // spread of groups as in balanced_groups.h
    bool proven = false;
};

// The split itself. Every module's figures, and the counts, must be known and in range: otherwise
// nothing is grouped.
ModuleGrouping groupModules(const GroupingInputs &inputs);

Check judgeGrouping(const GroupingInputs &inputs);

} // namespace ohmwright
