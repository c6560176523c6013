// SPDX-License-Identifier: GPL-3.0-or-later
// How the checks are worked at the end of the build sheet.
#pragma once

#include "core/records/field.h"

#include <array>

namespace ohmwright {

// Short: what fails, is unknown or tight first and in full, what holds tabled where several are
// alike, and no limit told twice. Full: each one in full. Neither leaves out a figure, its
// evidence, a formula or a source.
enum class Working { Short, Full };
template <>
struct EnumWords<Working>
{
    static constexpr std::array words{"short", "full"};
};

} // namespace ohmwright
