// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/fault/failing_vfs.h"

#include <sqlite3.h>

#include <cstring>
#include <memory>

namespace ohmwright {

namespace {

// SQLite calls back through C tables, so what they share cannot live in an object of ours.
struct Trouble
{
    int left = 0; // changing calls until the first failure; 0: never
    FailAs how = FailAs::DiskFull;
    bool failed = false;

    bool strikes()
    {
        if (failed)
            return true;
        if (left > 0 && --left == 0)
            failed = true;
        return failed;
    }
    [[nodiscard]] int code() const
    {
        return how == FailAs::DiskFull ? SQLITE_FULL : SQLITE_IOERR_WRITE;
    }
};

Trouble trouble;
sqlite3_vfs *usual = nullptr;
sqlite3_vfs failing;

struct File
{
    sqlite3_file base;
    sqlite3_file *real;
};

sqlite3_file *realOf(sqlite3_file *file)
{
    return reinterpret_cast<File *>(file)->real;
}

int closeFile(sqlite3_file *f)
{
    sqlite3_file *real = realOf(f);
    const int rc = real->pMethods->xClose(real);
    sqlite3_free(real);
    return rc;
}
int readFile(sqlite3_file *f, void *to, int n, sqlite3_int64 at)
{
    return realOf(f)->pMethods->xRead(realOf(f), to, n, at);
}
int writeFile(sqlite3_file *f, const void *from, int n, sqlite3_int64 at)
{
    return trouble.strikes() ? trouble.code() : realOf(f)->pMethods->xWrite(realOf(f), from, n, at);
}
int truncateFile(sqlite3_file *f, sqlite3_int64 size)
{
    return trouble.strikes() ? SQLITE_IOERR_TRUNCATE
                             : realOf(f)->pMethods->xTruncate(realOf(f), size);
}
int syncFile(sqlite3_file *f, int flags)
{
    return trouble.strikes() ? SQLITE_IOERR_FSYNC : realOf(f)->pMethods->xSync(realOf(f), flags);
}
int sizeOfFile(sqlite3_file *f, sqlite3_int64 *size)
{
    return realOf(f)->pMethods->xFileSize(realOf(f), size);
}
int lockFile(sqlite3_file *f, int level)
{
    return realOf(f)->pMethods->xLock(realOf(f), level);
}
int unlockFile(sqlite3_file *f, int level)
{
    return realOf(f)->pMethods->xUnlock(realOf(f), level);
}
int isLocked(sqlite3_file *f, int *locked)
{
    return realOf(f)->pMethods->xCheckReservedLock(realOf(f), locked);
}
int control(sqlite3_file *f, int op, void *arg)
{
    return realOf(f)->pMethods->xFileControl(realOf(f), op, arg);
}
int sectorSize(sqlite3_file *f)
{
    return realOf(f)->pMethods->xSectorSize(realOf(f));
}
int traits(sqlite3_file *f)
{
    return realOf(f)->pMethods->xDeviceCharacteristics(realOf(f));
}

const sqlite3_io_methods kMethods{1,        closeFile,  readFile, writeFile,  truncateFile,
                                  syncFile, sizeOfFile, lockFile, unlockFile, isLocked,
                                  control,  sectorSize, traits,   nullptr,    nullptr,
                                  nullptr,  nullptr,    nullptr,  nullptr};

int openFile(sqlite3_vfs *, const char *name, sqlite3_file *f, int flags, int *outFlags)
{
    auto *file = reinterpret_cast<File *>(f);
    file->base.pMethods = nullptr;
    file->real = static_cast<sqlite3_file *>(sqlite3_malloc(usual->szOsFile));
    std::memset(file->real, 0, static_cast<std::size_t>(usual->szOsFile));
    const int rc = usual->xOpen(usual, name, file->real, flags, outFlags);
    if (rc == SQLITE_OK)
        file->base.pMethods = &kMethods;
    else
        sqlite3_free(file->real);
    return rc;
}

int deleteFile(sqlite3_vfs *, const char *name, int sync)
{
    return trouble.strikes() ? SQLITE_IOERR_DELETE : usual->xDelete(usual, name, sync);
}

} // namespace

FailingVfs::FailingVfs() : m_usual(sqlite3_vfs_find(nullptr))
{
    usual = m_usual;
    failing = *m_usual;
    failing.zName = "failing";
    failing.szOsFile = sizeof(File);
    failing.xOpen = openFile;
    failing.xDelete = deleteFile;
    sqlite3_vfs_register(&failing, 1);
    heal();
}

FailingVfs::~FailingVfs()
{
    sqlite3_vfs_unregister(&failing);
    sqlite3_vfs_register(m_usual, 1);
}

void FailingVfs::failAt(int n, FailAs how)
{
    trouble = {n, how, false};
}

void FailingVfs::heal()
{
    trouble = {};
}

bool FailingVfs::hasFailed() const
{
    return trouble.failed;
}

} // namespace ohmwright
