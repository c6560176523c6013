// SPDX-License-Identifier: GPL-3.0-or-later
// The thresholds a book may set for itself, what each is measured in, and which of its values are
// tighter than the published one. Sources stand with the checks; a test holds the two lists
// together.
#pragma once

#include "core/quantity/amount.h"

#include <QStringView>

#include <optional>
#include <span>
#include <string_view>

namespace ohmwright {

enum class Tighter { Lower, Higher };

struct ThresholdInfo
{
    std::string_view name; // "conductor.drop"
    Measure measure;
    double published; // SI; where it goes with the class of vehicle, that of cars and vans
    Tighter tighter;
    const char *label; // what is held to it
};

std::span<const ThresholdInfo> knownThresholds();
// Null for none.
const ThresholdInfo *knownThreshold(QStringView name);
QString labelOf(const ThresholdInfo &threshold);
// Looser than published: told with its reason, and beside the published one.
bool isLooser(const ThresholdInfo &threshold, const Amount &own);
// "0.1 Ω", in the first unit of its measure.
QString publishedValue(const ThresholdInfo &threshold);

} // namespace ohmwright
