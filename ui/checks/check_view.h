// SPDX-License-Identifier: GPL-3.0-or-later
// What the page of one check shows, as values: nothing is built anew when nothing changed.
#pragma once

#include "ui/checks/checks_order.h"

#include <QStringList>

#include <vector>

namespace ohmwright::ui {

struct CheckView
{
    CheckEntry entry;
    QStringList beingFoundOut;        // names of unknowns for which there is a task
    bool trying = false;              // edits go to a scratch copy
    std::vector<ScratchChange> tried; // so far
    bool operator==(const CheckView &) const = default;
};

} // namespace ohmwright::ui
