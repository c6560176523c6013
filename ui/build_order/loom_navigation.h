// SPDX-License-Identifier: GPL-3.0-or-later
// Moving about a loom by keyboard, and saying in words what its tasks show.
#pragma once

#include "core/plan/loom.h"

#include <QCoreApplication>
#include <QString>

#include <cstddef>
#include <optional>
#include <vector>

namespace ohmwright::ui {

enum class LoomStep { Before, After, Up, Down, First, Last };

// The task one step from `task`: Before and After along its run, then along its branch's other
// runs; Up and Down to the nearest on the run above or below; First and Last of its branch.
// None at the end.
std::optional<std::size_t> loomNeighbour(const plan::Loom &loom, std::size_t task, LoomStep step);

// The other end of the first wire out of `task` (`forward`) or into it.
std::optional<std::size_t> loomAlongWire(const plan::Loom &loom, std::size_t task, bool forward);

// Indices of the wires into and out of a task, in that order.
std::vector<std::size_t> loomWiresOf(const plan::Loom &loom, std::size_t task);

// Which way a chain is followed from a task.
enum class LoomWay { Both, Before, After };

// `task` itself, everything it waits on (Before), everything that waits on it (After), or both,
// directly or not.
std::vector<bool> loomChain(const plan::Network &network, std::size_t task,
                            LoomWay way = LoomWay::Both);

// Where the wires at a fork end, top to bottom. `forward`: of those out of `from`, else of those
// into it.
std::vector<std::size_t> loomFork(const plan::Loom &loom, std::size_t from, bool forward);

// Tasks whose title, or area, holds `text`, letters' case ignored: first those whose title begins
// with it, then those with a word that does, then the rest; each left to right.
std::vector<std::size_t> loomFind(const plan::Network &network, const plan::Loom &loom,
                                  const QString &text);

// What there is to do at the next sitting: the tasks under way and those planned for the first day
// anything is; without a forecast all that are under way or can start. No milestones.
std::vector<std::size_t> loomEvening(const plan::Network &network, const plan::Loom &loom);

// Where a person who has chosen nothing starts: the leftmost task that can start, else the first.
std::optional<std::size_t> loomStart(const plan::Loom &loom);

class LoomWords
{
    Q_DECLARE_TR_FUNCTIONS(LoomWords)

public:
    // "done", "under way", "can start now", "waits: part coupling blank, task Mounts in"
    static QString state(const plan::Network &network, std::size_t task);
    // the state, "milestone", the area, high voltage, on the chain to the milestone
    static QString description(const plan::Network &network, const plan::Loom &loom,
                               std::size_t task);
    // "Engine out waits on Drain tank", and whether that is done or on the chain to the milestone
    static QString wire(const plan::Network &network, const plan::LoomWire &wire);
    // "planned 3 Aug to 9 Aug; 80 %: 12 Aug (50 %: 9 Aug, 95 %: 20 Aug); 12 days of float; drives
    // the date in 62 % of the runs"; empty without a forecast, and for what is done
    static QString forecast(const plan::Loom &loom, std::size_t task);
    // Title, what is said of it and every need with "met" or "missing"; rich text, what people
    // wrote escaped.
    static QString toolTip(const plan::Network &network, std::size_t task,
                           const QString &description);
};

} // namespace ohmwright::ui
