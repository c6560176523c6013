// SPDX-License-Identifier: GPL-3.0-or-later
// A file system for SQLite that stops working at the Nth write, sync, truncate or delete: disk
// full, or every later call failing as if the plug were pulled.
#pragma once

struct sqlite3_vfs;

namespace ohmwright {

enum class FailAs { DiskFull, Unplugged };

// While it lives it is SQLite's default file system, over the usual one.
class FailingVfs
{
public:
    FailingVfs();
    ~FailingVfs();
    FailingVfs(const FailingVfs &) = delete;
    FailingVfs &operator=(const FailingVfs &) = delete;

    // The Nth changing call from now fails; DiskFull fails that one and all later writes too.
    void failAt(int n, FailAs how);
    void heal();
    [[nodiscard]] bool hasFailed() const;

private:
    sqlite3_vfs *m_usual;
};

} // namespace ohmwright
