// SPDX-License-Identifier: GPL-3.0-or-later
// Links of a starter's tasks that a longer way says already.
#pragma once

#include "core/starters/starter_files.h"

namespace ohmwright {

// Takes away each need of another task that follows from the rest: with A after B after C, "A after
// C" would only clutter the build order. Answers decide which ways there are, so the files name
// more links than one book needs. A link given twice stays once. Links to tasks that are not there,
// and all links when they go round in a loop, are left for the interchange to refuse.
void leaveOutLinksSaidByOthers(StarterJson &tasks);

} // namespace ohmwright
