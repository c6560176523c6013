// SPDX-License-Identifier: GPL-3.0-or-later
// Words and marks of checks that the overview and the working share. Used by the sections of the
// build sheet alone.
#pragma once

#include "core/checks/check.h"
#include "core/sheet/text_blocks.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace ohmwright::sections {

sheet::MarkKind kindOf(Verdict verdict);

// The verdict's word, and beside an own, looser threshold the published one's.
std::vector<sheet::Mark> marksOf(const Check &check);

// Nothing while the check is unknown: a margin of what is known would read like a promise.
QString marginOf(const Check &check);

// The last step of a path: "Heating element" of "Cabin heater › Heating element".
QString partOf(const QString &path);

// Where the part sits, without the part itself: "in Cabin heater"; empty for what sits in nothing.
QString placeOf(const QString &path);

// What a path adds to a name: its place if the name tells the part, the whole path if it does not.
QString besideName(const QString &name, const QString &path);

// Names in one line: of names that differ by the number at their end the rest is told once,
// "Battery module 1, 2, 3; Spare module".
QString listed(const QStringList &names);

// "and 7 more alike, to “voltage limit of Module 9”", behind the first of these names.
QString andAlike(const QStringList &names);

} // namespace ohmwright::sections
