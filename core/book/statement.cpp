// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/statement.h"

#include <QCoreApplication>
#include <QStringDecoder>

#include <sqlite3.h>

#include <utility>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Book", text);
}

} // namespace

Problem problemFromSqlite(int rc, sqlite3 *db)
{
    const QString detail = db ? QString::fromUtf8(sqlite3_errmsg(db)) : QString();
    switch (rc & 0xff) {
    case SQLITE_FULL:
        return {ProblemCode::DiskFull,
                tr("The disk is full, so nothing was changed."),
                tr("Make room and do it again."),
                {}};
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return {ProblemCode::Locked,
                tr("Another program is holding the book right now."),
                tr("Wait for it to finish, or close it, and do it again."),
                {}};
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return {ProblemCode::ReadOnly,
                tr("The book cannot be written here."),
                tr("Copy it to a folder you may write to."),
                {}};
    case SQLITE_CANTOPEN:
        return {ProblemCode::ReadOnly,
                tr("The book or its folder cannot be opened for writing."),
                tr("Check that the folder exists and that you may write to it."),
                {}};
    case SQLITE_NOTADB:
        return {ProblemCode::NotABook, tr("This file is not an Ohmwright book."), {}, {}};
    case SQLITE_CORRUPT:
        return {ProblemCode::Damaged,
                tr("The book is damaged: parts of the file do not fit together."),
                tr("Work on from your latest copy."),
                {}};
    case SQLITE_IOERR:
        return {ProblemCode::Io,
                tr("The disk did not answer as it should."),
                tr("Check the disk and its cable, then open the book again."),
                {}};
    case SQLITE_CONSTRAINT:
        if (rc == SQLITE_CONSTRAINT_FOREIGNKEY)
            return {ProblemCode::Conflict,
                    tr("Something in the book still refers to what this would remove."),
                    {},
                    {}};
        if (rc == SQLITE_CONSTRAINT_UNIQUE || rc == SQLITE_CONSTRAINT_PRIMARYKEY)
            return {ProblemCode::Conflict, tr("The book already has one with that key."), {}, {}};
        return {ProblemCode::Conflict, tr("The book refuses this value (%1).").arg(detail), {}, {}};
    default:
        return {
            ProblemCode::Io, tr("The book could not be read or written (%1).").arg(detail), {}, {}};
    }
}

void Statement::Finalize::operator()(sqlite3_stmt *statement) const
{
    sqlite3_finalize(statement);
}

Result<Statement> Statement::prepare(sqlite3 *db, const QByteArray &sql)
{
    sqlite3_stmt *statement = nullptr;
    const int rc =
        sqlite3_prepare_v2(db, sql.constData(), static_cast<int>(sql.size()), &statement, nullptr);
    if (rc != SQLITE_OK)
        return fail(problemFromSqlite(sqlite3_extended_errcode(db), db));
    return Statement(statement);
}

Outcome Statement::runScript(sqlite3 *db, const QByteArray &sql)
{
    const int rc = sqlite3_exec(db, sql.constData(), nullptr, nullptr, nullptr);
    if (rc != SQLITE_OK)
        return fail(problemFromSqlite(sqlite3_extended_errcode(db), db));
    return {};
}

void Statement::bindNull(int index)
{
    sqlite3_bind_null(m_statement.get(), index);
}

void Statement::bind(int index, std::int64_t value)
{
    sqlite3_bind_int64(m_statement.get(), index, value);
}

void Statement::bind(int index, double value)
{
    sqlite3_bind_double(m_statement.get(), index, value);
}

void Statement::bind(int index, const QString &value)
{
    const QByteArray utf8 = value.toUtf8();
    sqlite3_bind_text(m_statement.get(), index, utf8.constData(), static_cast<int>(utf8.size()),
                      SQLITE_TRANSIENT);
}

void Statement::bindBlob(int index, const QByteArray &value)
{
    // an empty blob is a value of its own, not NULL
    sqlite3_bind_blob64(m_statement.get(), index, value.isEmpty() ? "" : value.constData(),
                        static_cast<sqlite3_uint64>(value.size()), SQLITE_TRANSIENT);
}

Result<bool> Statement::step()
{
    const int rc = sqlite3_step(m_statement.get());
    if (rc == SQLITE_ROW)
        return true;
    if (rc == SQLITE_DONE)
        return false;
    sqlite3 *db = sqlite3_db_handle(m_statement.get());
    Problem problem = problemFromSqlite(sqlite3_extended_errcode(db), db);
    sqlite3_reset(m_statement.get());
    return fail(std::move(problem));
}

Outcome Statement::run()
{
    const Result<bool> stepped = step();
    sqlite3_reset(m_statement.get());
    if (!stepped)
        return fail(stepped.error());
    return {};
}

void Statement::reset()
{
    sqlite3_reset(m_statement.get());
}

bool Statement::isNull(int column) const
{
    return sqlite3_column_type(m_statement.get(), column) == SQLITE_NULL;
}

std::int64_t Statement::integer(int column) const
{
    return sqlite3_column_int64(m_statement.get(), column);
}

double Statement::real(int column) const
{
    return sqlite3_column_double(m_statement.get(), column);
}

QString Statement::text(int column) const
{
    const auto *utf8 =
        reinterpret_cast<const char *>(sqlite3_column_text(m_statement.get(), column));
    // a leading U+FEFF is text here, not a byte order mark to be dropped
    QStringDecoder decoder(QStringDecoder::Utf8, QStringDecoder::Flag::ConvertInitialBom);
    return decoder.decode(QByteArrayView(utf8, sqlite3_column_bytes(m_statement.get(), column)));
}

QByteArray Statement::blob(int column) const
{
    const auto *bytes = static_cast<const char *>(sqlite3_column_blob(m_statement.get(), column));
    return {bytes, sqlite3_column_bytes(m_statement.get(), column)};
}

Result<std::int64_t> scalar(sqlite3 *db, const QByteArray &sql)
{
    Result<Statement> statement = Statement::prepare(db, sql);
    if (!statement)
        return fail(statement.error());
    const Result<bool> row = statement->step();
    if (!row)
        return fail(row.error());
    return *row ? statement->integer(0) : 0;
}

} // namespace ohmwright
