// SPDX-License-Identifier: GPL-3.0-or-later
// A document with every kind of block in it, about an invented van, and pictures to go with it.
#pragma once

#include "core/sheet/document.h"

#include <QByteArray>
#include <QSize>

namespace ohmwright::sheet {

// A drawn stand-in for a photo, different for each seed.
QByteArray photo(QSize size, int seed, const char *format = "jpeg");

Document sampleDocument();

// The rows of one table, each cell different: "item 17" and so on.
Table longTable(int rows);

} // namespace ohmwright::sheet
