// SPDX-License-Identifier: GPL-3.0-or-later
// SQLite's session extension: records what a transaction changes, and applies changesets.
//
// Applying never skips in silence: any conflict aborts with a Problem, and since SQLite passes over
// tables that no longer fit without a word, the operations done are counted against those meant.
#pragma once

#include "core/quantity/result.h"

#include <QByteArray>

#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <vector>

struct sqlite3;
struct sqlite3_session;

namespace ohmwright {

enum class RowChange { Added, Changed, Removed };

struct TouchedRow
{
    std::int64_t id = 0;
    RowChange change = RowChange::Changed;
};
// By table name.
using TouchedRows = std::map<std::string, std::vector<TouchedRow>>;

class Recorder
{
public:
    // Records all tables but blob, step and format, from now until the object goes.
    static Result<std::unique_ptr<Recorder>> start(sqlite3 *db);
    ~Recorder();
    Recorder(const Recorder &) = delete;
    Recorder &operator=(const Recorder &) = delete;

    Result<QByteArray> changeset();

private:
    Recorder() = default;
    sqlite3_session *m_session = nullptr;
};

Result<QByteArray> inverse(const QByteArray &changeset);
TouchedRows touchedRows(const QByteArray &changeset);
// Inside a transaction of the caller's, which rolls back on a Problem.
Outcome applyChangeset(sqlite3 *db, const QByteArray &changeset);

} // namespace ohmwright
