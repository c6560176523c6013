// SPDX-License-Identifier: GPL-3.0-or-later
// Networks to draw: an invented light van of some 150 tasks, and random ones of any size.
#pragma once

#include "core/plan/loom.h"
#include "core/plan/network.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace ohmwright::plan {

// An invented conversion of an invented light van: ten areas, six milestones, about a third done.
Network vanNetwork();

// Links run from lower to higher indices only within `reach` tasks, so there is no loop. Every
// task has up to `links` of them and up to five leaf needs.
Network randomNetwork(std::uint32_t seed, std::size_t tasks, std::size_t areas,
                      std::size_t milestones, std::size_t links = 2, std::size_t reach = 40);

// Chain and made-up shares and dates for the network's last milestone.
LoomFacts inventedFacts(const Network &network);

// Made-up days for all that is not done, each task after what it waits on; dates and shares of
// inventedFacts() left out where the forecast tells them. Today is 27 Nov 2026.
LoomFacts inventedForecast(const Network &network);

} // namespace ohmwright::plan
