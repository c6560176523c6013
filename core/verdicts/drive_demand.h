// SPDX-License-Identifier: GPL-3.0-or-later
// What driving asks of the traction pack at its terminals: as told, else what motor and inverter
// are good for.
//
// The motor's power is that at its shaft, the inverter's that of its output; the pack gives what is
// lost on the way as well. Of several motors or inverters the sum counts, of motor and inverter the
// lower.
#pragma once

#include "core/verdicts/pack_facts.h"
#include "core/verdicts/wiring.h"

#include <optional>

namespace ohmwright {

struct DriveDemand
{
    Given<Power> peak;                      // for seconds
    std::optional<Given<Power>> continuous; // for minutes; none: nobody says
    // The inverter's own limits of direct current, where they are known.
    std::optional<Given<Current>> peakCurrent, continuousCurrent;
    // How long the peak is asked for: as told, else as long as motor or inverter give it.
    Given<Duration> peakLasts;
};

// None where nothing drives from the pack's circuit, and no power is told.
std::optional<DriveDemand> driveDemand(const BookInputs &in, const Wiring &wiring,
                                       const PackFacts &pack);

// What these inverters' own limits of direct current come to together; none while one is not known.
std::optional<Given<Current>> ownCurrentLimit(const BookInputs &in,
                                              const std::vector<const Part *> &inverters,
                                              RatingBasis basis);

// From the pack's terminals to the motor's shaft; assumed unless it is told.
Given<double> electricEfficiency(const BookInputs &in);

} // namespace ohmwright
