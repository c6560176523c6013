// SPDX-License-Identifier: GPL-3.0-or-later
// The log: a rotating file in the user's state folder, and nothing on the terminal.
#pragma once

namespace ohmwright {

// Sends Qt's messages to $XDG_STATE_HOME/ohmwright/ohmwright.log (three files of 1 MB). Without a
// writable folder the program runs without a log; that is no reason to refuse a person their book.
void startLog();

} // namespace ohmwright
