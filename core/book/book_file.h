// SPDX-License-Identifier: GPL-3.0-or-later
// The file under a book: recognising it, opening the connection, bringing its schema up to date.
//
// A file that is not ours, or is newer than we can read, is told from its first 100 bytes, before
// SQLite touches it.
#pragma once

#include "core/quantity/result.h"

#include <QByteArray>
#include <QString>

#include <memory>
#include <optional>
#include <vector>

struct sqlite3;

namespace ohmwright {

inline constexpr int kApplicationId = 0x4F484D57; // "OHMW", in the header of every book

struct Migration
{
    int version = 0;
    int oldestReader = 0;
    QByteArray sql;
};

// The numbered scripts compiled in, ascending from 1.
const std::vector<Migration> &migrations();
int newestSchema();

enum class OpenAs { ReadWrite, ReadOnly };

// An open connection; closes with the object. Stays on the thread that made it.
class FileConnection
{
public:
    // `path` empty: a book in memory, for tests and scratch copies.
    static Result<std::unique_ptr<FileConnection>> open(const QString &path, OpenAs as);
    ~FileConnection();
    FileConnection(const FileConnection &) = delete;
    FileConnection &operator=(const FileConnection &) = delete;

    [[nodiscard]] sqlite3 *db() const { return m_db; }

private:
    FileConnection() = default;
    QString m_name;
    sqlite3 *m_db = nullptr;
};

// Reads the header only. NotABook, NewerBook, NotFound or Io as a Problem; else the schema version.
Result<int> recogniseBook(const QString &path);

// Runs every migration above the connection's version, each in one transaction with its version
// number. On a failing script version and content stay as they were. `list` is migrations() but in
// tests.
Outcome migrate(sqlite3 *db, const std::vector<Migration> &list);

// Where a book of an older schema is kept as it was before it is brought up to date: beside it, as
// "van, schema 1.ohmwright" or the next free name. None for what needs no bringing up to date.
std::optional<QString> keptBeforeUpdate(const QString &path);
// A whole, compact copy of the connection's file, synced; no half one is left on a failure.
Outcome copyInto(sqlite3 *db, const QString &path);

} // namespace ohmwright
