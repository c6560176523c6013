// SPDX-License-Identifier: GPL-3.0-or-later
// A good order of priority for a builder's plan: the milestones early, in their order, and the
// whole done as soon as it can be.
#pragma once

#include "core/plan/levelling.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace ohmwright::forecast {

// What is made small: the sum over the milestones (activities, first to last) of their ready days,
// then the end of everything. The pattern of hands leaves the end of a home build almost where it
// is whatever the order, but decides which milestone comes when.
//
// Starts from latest finish first and from milestone by milestone; then moves one activity at a
// time, keeping what is no worse. `passes` bounds the work; the same seed gives the same order.
std::vector<std::size_t> searchOrder(const plan::Workload &workload,
                                     const std::vector<std::size_t> &milestones, int passes,
                                     std::uint64_t seed);

} // namespace ohmwright::forecast
