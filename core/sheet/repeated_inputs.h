// SPDX-License-Identifier: GPL-3.0-or-later
// Inputs that tell the same figures of one thing after another: "mass of Inverter", "height of
// Inverter", "mass of Charger", "height of Charger".
#pragma once

#include "core/checks/check.h"

#include <QString>

#include <vector>

namespace ohmwright::sections {

struct RepeatedInputs
{
    struct Column
    {
        QString symbol; // "m"
        QString what;   // "mass", the names without what they are of
    };
    struct Item
    {
        QString name;                           // "Inverter"
        QString place;                          // where it sits; may be empty
        std::vector<const CheckInput *> inputs; // by column; none: not told of this one
    };
    std::vector<Column> columns; // two or more
    std::vector<Item> items;     // three or more; none: nothing is repeated
    std::size_t count = 0;       // of inputs
};

// What is repeated from the input at `first` on.
RepeatedInputs repeatedFrom(const std::vector<const CheckInput *> &inputs, std::size_t first);

} // namespace ohmwright::sections
