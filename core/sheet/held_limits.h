// SPDX-License-Identifier: GPL-3.0-or-later
// Which input is the limit of which comparison, so that a limit is told once: where the result is
// held against it, with all of its evidence, and not among what is given as well.
#pragma once

#include "core/checks/check.h"

#include <QString>

#include <set>
#include <vector>

namespace ohmwright::sections {

struct HeldLimit
{
    const Comparison *held = nullptr;
    const CheckInput *limit = nullptr;    // none: a threshold, or computed
    const CheckInput *duration = nullptr; // how long the limit may be used up
    QString path;                         // of the part the limit is of; empty: of no part
    QString aspect;                       // "peak"; empty: there is one alone
    QString holdsFor;                     // "for 30 s", "continuous" where that is not the aspect
    QString figure;                       // which of the part's: "DC voltage limit"
    QString from;                         // where the limit comes from, in full
};

// One for each comparison, in order. Points into the check.
std::vector<HeldLimit> heldLimits(const Check &check);

// The inputs told with the limits, which need not be given again: all but those that a formula of
// the steps uses.
std::set<const CheckInput *> toldAsLimits(const Check &check, const std::vector<HeldLimit> &limits);

// The step that but names the part of a comparison, which stands first among them anyway.
bool onlyNamesAPart(const CheckStep &step, const std::vector<HeldLimit> &limits);

} // namespace ohmwright::sections
