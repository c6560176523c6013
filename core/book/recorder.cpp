// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/recorder.h"

#include "core/book/statement.h"

#include <QCoreApplication>

#include <sqlite3.h>

#include <cstring>

namespace ohmwright {

namespace {

int recordsTable(void *, const char *table)
{
    for (const char *left : {"blob", "step", "format"})
        if (std::strcmp(table, left) == 0)
            return 0;
    return 1;
}

int abortOnConflict(void *, int, sqlite3_changeset_iter *)
{
    return SQLITE_CHANGESET_ABORT;
}

std::size_t operationsIn(const TouchedRows &rows)
{
    std::size_t count = 0;
    for (const auto &[table, touched] : rows)
        count += touched.size();
    return count;
}

// A buffer SQLite allocated.
QByteArray take(void *buffer, int size)
{
    QByteArray bytes(static_cast<const char *>(buffer), size);
    sqlite3_free(buffer);
    return bytes;
}

Problem noLongerFits()
{
    return {
        ProblemCode::Conflict,
        QCoreApplication::translate(
            "Book", "The book has changed since then in a way this step does not fit."),
        QCoreApplication::translate("Book", "Nothing was changed. Make the correction by hand."),
        {}};
}

} // namespace

Result<std::unique_ptr<Recorder>> Recorder::start(sqlite3 *db)
{
    std::unique_ptr<Recorder> recorder(new Recorder);
    int rc = sqlite3session_create(db, "main", &recorder->m_session);
    if (rc == SQLITE_OK) {
        sqlite3session_table_filter(recorder->m_session, recordsTable, nullptr);
        rc = sqlite3session_attach(recorder->m_session, nullptr);
    }
    if (rc != SQLITE_OK)
        return fail(problemFromSqlite(rc, db));
    return recorder;
}

Recorder::~Recorder()
{
    if (m_session)
        sqlite3session_delete(m_session);
}

Result<QByteArray> Recorder::changeset()
{
    int size = 0;
    void *buffer = nullptr;
    const int rc = sqlite3session_changeset(m_session, &size, &buffer);
    if (rc != SQLITE_OK)
        return fail(problemFromSqlite(rc, nullptr));
    return take(buffer, size);
}

Result<QByteArray> inverse(const QByteArray &changeset)
{
    int size = 0;
    void *buffer = nullptr;
    const int rc = sqlite3changeset_invert(static_cast<int>(changeset.size()),
                                           changeset.constData(), &size, &buffer);
    if (rc != SQLITE_OK)
        return fail(problemFromSqlite(rc, nullptr));
    return take(buffer, size);
}

TouchedRows touchedRows(const QByteArray &changeset)
{
    TouchedRows rows;
    sqlite3_changeset_iter *iterator = nullptr;
    // the iterator only reads; its signature is not const
    if (sqlite3changeset_start(&iterator, static_cast<int>(changeset.size()),
                               const_cast<char *>(changeset.constData())) != SQLITE_OK)
        return rows;
    while (sqlite3changeset_next(iterator) == SQLITE_ROW) {
        const char *table = nullptr;
        int columns = 0;
        int operation = 0;
        sqlite3changeset_op(iterator, &table, &columns, &operation, nullptr);
        sqlite3_value *id = nullptr;
        if (operation == SQLITE_INSERT)
            sqlite3changeset_new(iterator, 0, &id);
        else
            sqlite3changeset_old(iterator, 0, &id);
        const RowChange change = operation == SQLITE_INSERT   ? RowChange::Added
                                 : operation == SQLITE_DELETE ? RowChange::Removed
                                                              : RowChange::Changed;
        rows[table].push_back({id ? sqlite3_value_int64(id) : 0, change});
    }
    sqlite3changeset_finalize(iterator);
    return rows;
}

Outcome applyChangeset(sqlite3 *db, const QByteArray &changeset)
{
    Result<std::unique_ptr<Recorder>> recorder = Recorder::start(db);
    if (!recorder)
        return fail(recorder.error());
    const int rc = sqlite3changeset_apply(db, static_cast<int>(changeset.size()),
                                          const_cast<char *>(changeset.constData()), nullptr,
                                          abortOnConflict, nullptr);
    if (rc == SQLITE_ABORT || rc == SQLITE_CONSTRAINT || rc == SQLITE_SCHEMA)
        return fail(noLongerFits());
    if (rc != SQLITE_OK)
        return fail(problemFromSqlite(rc, db));
    const Result<QByteArray> applied = (*recorder)->changeset();
    if (!applied)
        return fail(applied.error());
    if (operationsIn(touchedRows(*applied)) != operationsIn(touchedRows(changeset)))
        return fail(noLongerFits());
    return {};
}

} // namespace ohmwright
