// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/support/shell_check.h"

#include <QTemporaryDir>

namespace ohmwright {

// A folder for the time of a test, whose books end in front of the sqlite3 shell. Declare it before
// what keeps a book open.
class TestFolder : public QTemporaryDir
{
public:
    TestFolder() = default;
    ~TestFolder() { kShellCheck.takeAll(path()); }
};

} // namespace ohmwright
