// SPDX-License-Identifier: GPL-3.0-or-later
// Who refers to a record, and what goes with it when it is removed.
#pragma once

#include "core/cards/record_kind.h"

#include <set>
#include <string>
#include <utility>
#include <vector>

namespace ohmwright {

using RecordPlace = std::pair<std::string, std::int64_t>; // table and id

// The record itself and all it holds nested.
std::set<RecordPlace> withAllItHolds(const Records &records, const RecordPlace &place);
// Every record outside `places` that refers into them, once; of a nested one its holder.
std::vector<RecordRef> referringTo(const Records &records, const std::set<RecordPlace> &places);
// "the part “Inverter”, the task “Fit it” and 3 more".
QString listed(const std::vector<RecordRef> &records);

} // namespace ohmwright
