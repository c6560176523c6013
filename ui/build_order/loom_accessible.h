// SPDX-License-Identifier: GPL-3.0-or-later
// The loom for a screen reader: a list with an item for each task, named by its title, described
// by its state, which can be chosen and opened.
#pragma once

namespace ohmwright::ui {

class LoomView;

// Tells Qt's accessibility about LoomView; more than once does no harm.
void installLoomAccessibility();

// To be called after the view has other tasks than before.
void loomChanged(LoomView *view);

} // namespace ohmwright::ui
