// SPDX-License-Identifier: GPL-3.0-or-later
// What the loom is told besides the network: the chain that drives a milestone, and dates fixed.
#pragma once

#include "core/plan/loom.h"

#include <cstddef>
#include <optional>

namespace ohmwright::plan {

// Without a forecast; `milestone`: whose chain is the driving one, none for none.
LoomFacts loomFactsOf(const Network &network, std::optional<std::size_t> milestone);
LoomFacts loomFactsOf(const Network &network, const HoldUps &holdUps);

} // namespace ohmwright::plan
