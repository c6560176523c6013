// SPDX-License-Identifier: GPL-3.0-or-later
// Makes the compiled-in files available as ":/ohmwright/…".
#pragma once

namespace ohmwright {

// Call once, first thing in main(): a static library's resources are not registered by themselves.
void registerResources();

} // namespace ohmwright
