// SPDX-License-Identifier: GPL-3.0-or-later
// For our own mistakes, never for input: a broken invariant stops a debug build (so every test
// run), and throws in a release build, where the edit it happened in is rolled back.
#pragma once

#include <QtGlobal>

#include <stdexcept>

namespace ohmwright {

[[noreturn]] inline void brokenInvariant(const char *what)
{
    Q_ASSERT_X(false, "broken invariant", what);
    throw std::logic_error(what);
}

inline void require(bool holds, const char *what)
{
    if (!holds)
        brokenInvariant(what);
}

} // namespace ohmwright
