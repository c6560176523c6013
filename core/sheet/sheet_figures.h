// SPDX-License-Identifier: GPL-3.0-or-later
// A figure of a part or type as cells: value and evidence. Whatever is recorded for it is
// told, also what is not in force. Used by the sections of the build sheet alone.
#pragma once

#include "core/parts/figures.h"
#include "core/records/records.h"
#include "core/sheet/text_blocks.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace ohmwright::sections {

// "320 A for 10 s"; "not known".
QString valueText(const Figure &figure);
// Where the value in force comes from; empty when there is none.
QString sourceText(const Figure &figure);
// What else is recorded, why this one is in force where that is not plain, and the notes.
// `leaveOut`: ratings told elsewhere on the sheet.
QString remarkText(const Figure &figure, const std::vector<const Rating *> &leaveOut = {});
// Three cells: figure, value, evidence with its standing.
sheet::Row rowOf(const Figure &figure);
// "Odavan MB-1202-47".
QString nameOf(const PartType &type);
// What was done to a part and what it was accepted with: opened, reworked, damaged.
QStringList remarksOf(const Part &part);

} // namespace ohmwright::sections
