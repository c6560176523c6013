// SPDX-License-Identifier: GPL-3.0-or-later
// What a test of a kind has to write down, so that it can be asked for where the test is done.
#pragma once

#include "core/records/records.h"

#include <string>
#include <vector>

namespace ohmwright {

// Names of the figures (core/records/check_figures.h), in the order they are taken; none for a
// kind that no check reads.
std::vector<std::string> readingsAskedBy(TestKind kind);

} // namespace ohmwright
