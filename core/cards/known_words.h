// SPDX-License-Identifier: GPL-3.0-or-later
// Texts that a field may only hold because the program knows them by name: the figures checks ask
// for, the thresholds a book may set. Records hold the name, people read what it stands for.
#pragma once

#include <QString>

#include <string_view>
#include <vector>

namespace ohmwright {

struct KnownWord
{
    QString stored; // "vehicle.drag_coefficient"
    QString spoken; // "drag coefficient"
    QString about;  // "of the vehicle", "in V"; may be empty
};

// In the order of the program's list; empty for a field that takes any text.
std::vector<KnownWord> knownWords(std::string_view table, std::string_view field);

} // namespace ohmwright
