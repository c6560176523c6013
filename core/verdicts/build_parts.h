// SPDX-License-Identifier: GPL-3.0-or-later
// Finding one's way about a build: which parts do what, what hangs on a circuit, what sits inside.
// Only parts that are, or are to be, in the vehicle count: none that were returned, sold, scrapped
// or set aside, and no tools or services.
#pragma once

#include "core/checks/assembly.h"
#include "core/records/records.h"

#include <vector>

namespace ohmwright {

// Wanted to fitted, neither tool nor service nor consumable, and not of an option that is not
// planned with.
bool isOfTheBuild(const Records &records, const Part &part);

// In key order.
std::vector<const Part *> partsOfRole(const Records &records, PartRole role);
// The one that does it; null for none or several.
const Part *onlyPartOfRole(const Records &records, PartRole role);
// Connected to the circuit themselves, in key order.
std::vector<const Part *> partsOn(const Records &records, const Circuit &circuit);
std::vector<const Part *> partsOn(const Records &records, const Branch &branch);
// What it holds directly, in key order.
std::vector<const Part *> inside(const Records &records, const Part &part);

} // namespace ohmwright
