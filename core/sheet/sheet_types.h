// SPDX-License-Identifier: GPL-3.0-or-later
// Parts of one type told together: what holds for the type once, then a line for each part with
// what is its own. Used by the sections of the build sheet alone.
#pragma once

#include "core/parts/figures.h"
#include "core/parts/questions.h"
#include "core/sheet/sheet_sections.h"

#include <vector>

namespace ohmwright::sections {

struct TypeGroup
{
    const PartType *type = nullptr;
    std::vector<const Part *> parts; // two or more, in the order given
    std::vector<FigureName> columns; // figures of which a part has ratings of its own
};

// The parts that can be told together. Left out, to be told whole: a part that holds others, and
// one with more figures of its own than a line has room for (all of them, once it is reworked).
std::vector<TypeGroup> groupByType(const Sources &from, const std::vector<const Part *> &parts);

void addTypeGroup(const Sources &from, const TypeGroup &group,
                  const std::vector<Question> &questions, Blocks &to);

} // namespace ohmwright::sections
