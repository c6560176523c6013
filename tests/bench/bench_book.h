// SPDX-License-Identifier: GPL-3.0-or-later
// Books of realistic shape and any size: parts with moves, ratings and connections, purchases of a
// few items, tasks in areas with links backwards.
#pragma once

#include "core/records/records.h"

#include <QString>

namespace ohmwright::bench {

struct Size
{
    int parts = 300;
    int tasks = 150;
};

inline constexpr Size kUsual{300, 150};
inline constexpr Size kLarge{20000, 2000};

Records makeRecords(Size size);
// Writes such a book to `path`, replacing what was there.
void writeBook(const QString &path, Size size);

} // namespace ohmwright::bench
