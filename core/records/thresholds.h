// SPDX-License-Identifier: GPL-3.0-or-later
// The thresholds a book may set for itself, and what each is measured in. Published values and
// their sources stand with the checks; a test holds the two lists together.
#pragma once

#include "core/quantity/amount.h"

#include <QStringView>

#include <optional>
#include <span>
#include <string_view>

namespace ohmwright {

struct ThresholdInfo
{
    std::string_view name; // "conductor.drop"
    Measure measure;
    const char *label; // what is held to it
};

std::span<const ThresholdInfo> knownThresholds();
// Null for none.
const ThresholdInfo *knownThreshold(QStringView name);
QString labelOf(const ThresholdInfo &threshold);

} // namespace ohmwright
