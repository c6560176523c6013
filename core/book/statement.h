// SPDX-License-Identifier: GPL-3.0-or-later
// One prepared SQL statement: typed bind, typed read, failures as Problems.
//
// The only place that steps SQLite. A Problem never carries a bound value: those are the person's.
#pragma once

#include "core/quantity/result.h"

#include <QByteArray>
#include <QString>

#include <cstdint>
#include <memory>
#include <optional>

struct sqlite3;
struct sqlite3_stmt;

namespace ohmwright {

// A plain sentence for what SQLite answered. `rc` is a result code, extended or not.
Problem problemFromSqlite(int rc, sqlite3 *db);

class Statement
{
public:
    static Result<Statement> prepare(sqlite3 *db, const QByteArray &sql);
    // Runs a whole script, several statements, by SQLite's own parser.
    static Outcome runScript(sqlite3 *db, const QByteArray &sql);

    // Indices count from 1, as in SQLite.
    void bindNull(int index);
    void bind(int index, std::int64_t value);
    void bind(int index, double value);
    void bind(int index, const QString &value);
    void bindBlob(int index, const QByteArray &value);

    // True when there is a row to read, false at the end.
    Result<bool> step();
    // For statements that give no rows: steps once and makes ready to run again.
    Outcome run();
    void reset();

    // Columns count from 0.
    [[nodiscard]] bool isNull(int column) const;
    [[nodiscard]] std::int64_t integer(int column) const;
    [[nodiscard]] double real(int column) const;
    [[nodiscard]] QString text(int column) const;
    [[nodiscard]] QByteArray blob(int column) const;

private:
    struct Finalize
    {
        void operator()(sqlite3_stmt *statement) const;
    };
    explicit Statement(sqlite3_stmt *statement) : m_statement(statement) {}
    std::unique_ptr<sqlite3_stmt, Finalize> m_statement;
};

// A number from a one-row, one-column query: PRAGMAs and counts.
Result<std::int64_t> scalar(sqlite3 *db, const QByteArray &sql);

} // namespace ohmwright
