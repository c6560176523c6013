// SPDX-License-Identifier: GPL-3.0-or-later
// The list of figures that checks ask for beyond ratings: what each is called, what it is a figure
// of, and what it is measured in. A record CheckFigure names one of these.
//
// To add one: a line in one of the two lists beside this file, and whoever reads it in
// core/verdicts. Names never change: books hold them.
#pragma once

#include "core/quantity/amount.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <span>
#include <string_view>

namespace ohmwright {

// A part's figure may stand with its type, for all parts of it.
enum class FigureOf { Vehicle, Circuit, Branch, Part, Test };

struct FigureInfo
{
    std::string_view name; // "vehicle.drag_coefficient"
    FigureOf of = FigureOf::Vehicle;
    std::optional<Measure> measure; // none: a choice
    std::string_view words;         // of a choice, parted by |
    const char *label = "";         // "drag coefficient"
};

std::span<const FigureInfo> checkFigures();
// Null for none.
const FigureInfo *checkFigure(QStringView name);
QString labelOf(const FigureInfo &figure);
QStringList wordsOf(const FigureInfo &figure);

} // namespace ohmwright
