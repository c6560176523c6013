// SPDX-License-Identifier: GPL-3.0-or-later
// Rows in and out: what Book does for every kind of record, from its field list.
#include "core/book/book.h"
#include "core/book/row_codec.h"
#include "core/records/rules.h"

#include <QCoreApplication>

#include <cassert>

namespace ohmwright {

namespace {

QByteArray questionMarks(qsizetype count)
{
    return QByteArray("?, ").repeated(count).chopped(2);
}

template <class R>
QByteArray insertSql()
{
    const QByteArrayList columns = columnsOf<R>();
    return "INSERT INTO " + QByteArray(RecordTraits<R>::table) + " (" + columns.join(", ") +
           ") VALUES (" + questionMarks(columns.size()) + ")";
}

template <class R>
QByteArray updateSql()
{
    // ?1 is the id, as in bindRow's order
    const QByteArrayList columns = columnsOf<R>();
    QByteArrayList sets;
    for (qsizetype i = 1; i < columns.size(); ++i)
        sets << columns[i] + " = ?" + QByteArray::number(i + 1);
    return "UPDATE " + QByteArray(RecordTraits<R>::table) + " SET " + sets.join(", ") +
           " WHERE id = ?1";
}

template <class R>
QByteArray selectSql(const QByteArray &tail)
{
    return "SELECT " + columnsOf<R>().join(", ") + " FROM " + RecordTraits<R>::table + tail;
}

} // namespace

template <class R>
Result<Id<R>> Book::insert(R row)
{
    assert(m_editing);
    if constexpr (SingleRecord<R>)
        row.id = Id<R>(1);
    else if (!row.id.isSet())
        row.id = Id<R>(newId());
    if (Outcome ok = checkRecord(row); !ok)
        return fail(ok.error());
    Result<Statement> statement = Statement::prepare(m_connection->db(), insertSql<R>());
    if (!statement)
        return fail(statement.error());
    bindRow(*statement, row);
    if (Outcome done = statement->run(); !done)
        return fail(done.error());
    const Id<R> id = row.id;
    m_records.all<R>().put(std::move(row));
    return id;
}

template <class R>
Outcome Book::update(const R &row)
{
    assert(m_editing);
    const R *old = m_records.find(row.id);
    if (!old)
        return fail(
            ProblemCode::NotFound,
            tr("This %1 is no longer in the book.").arg(QLatin1String(RecordTraits<R>::table)));
    if (*old == row)
        return {};
    if (Outcome ok = checkRecord(row); !ok)
        return ok;
    Result<Statement> statement = Statement::prepare(m_connection->db(), updateSql<R>());
    if (!statement)
        return fail(statement.error());
    bindRow(*statement, row);
    if (Outcome done = statement->run(); !done)
        return done;
    m_records.all<R>().put(row);
    return {};
}

template <class R>
Outcome Book::remove(Id<R> id)
{
    assert(m_editing);
    Result<Statement> statement = Statement::prepare(
        m_connection->db(), "DELETE FROM " + QByteArray(RecordTraits<R>::table) + " WHERE id = ?");
    if (!statement)
        return fail(statement.error());
    statement->bind(1, id.value());
    if (Outcome done = statement->run(); !done)
        return done;
    m_records.all<R>().erase(id);
    return {};
}

template <class R>
Outcome Book::loadTable(Table<R> &table) const
{
    Result<Statement> statement =
        Statement::prepare(m_connection->db(), selectSql<R>(" ORDER BY id"));
    if (!statement)
        return fail(statement.error());
    std::vector<R> rows;
    for (;;) {
        const Result<bool> more = statement->step();
        if (!more)
            return fail(more.error());
        if (!*more)
            break;
        Result<R> row = readRow<R>(*statement);
        if (!row)
            return fail(row.error());
        rows.push_back(std::move(*row));
    }
    table.assign(std::move(rows));
    return {};
}

Outcome Book::loadAll()
{
    Records fresh;
    Outcome result;
    fresh.forEachTable([&]<class R>(Table<R> &table) {
        if (result)
            result = loadTable(table);
    });
    if (!result)
        return result;
    if (fresh.all<Build>().size() != 1 || fresh.all<Vehicle>().size() != 1)
        return fail(ProblemCode::Damaged, tr("The book is damaged: its first page is missing."),
                    tr("Work on from your latest copy."));
    m_records = std::move(fresh);
    return {};
}

Outcome Book::reload(const TouchedRows &touched)
{
    // past this many rows one sweep of the table is cheaper than a query for each
    constexpr std::size_t kSweepFrom = 300;
    Outcome result;
    m_records.forEachTable([&]<class R>(Table<R> &table) {
        const auto it = touched.find(RecordTraits<R>::table);
        if (it == touched.end() || !result)
            return;
        if (it->second.size() >= kSweepFrom) {
            result = loadTable(table);
            return;
        }
        Result<Statement> statement =
            Statement::prepare(m_connection->db(), selectSql<R>(" WHERE id = ?"));
        if (!statement) {
            result = fail(statement.error());
            return;
        }
        for (const TouchedRow &row : it->second) {
            statement->reset();
            statement->bind(1, row.id);
            const Result<bool> found = statement->step();
            if (!found) {
                result = fail(found.error());
                return;
            }
            if (!*found) {
                table.erase(Id<R>(row.id));
                continue;
            }
            Result<R> fresh = readRow<R>(*statement);
            if (!fresh) {
                result = fail(fresh.error());
                return;
            }
            table.put(std::move(*fresh));
        }
    });
    return result;
}

Outcome Book::replaceAll(const Records &records)
{
    assert(m_editing);
    Outcome result;
    sqlite3 *db = m_connection->db();
    records.forEachTable([&]<class R>(const Table<R> &table) {
        if (!result)
            return;
        result = Statement::runScript(db, "DELETE FROM " + QByteArray(RecordTraits<R>::table));
        Result<Statement> statement = Statement::prepare(db, insertSql<R>());
        if (result && !statement)
            result = fail(statement.error());
        for (const R &row : table) {
            if (result)
                result = checkRecord(row);
            if (!result)
                return;
            bindRow(*statement, row);
            result = statement->run();
        }
    });
    if (result)
        m_records = records;
    return result;
}

// every kind of record, so that the templates can stay in this file
// NOLINTBEGIN(bugprone-macro-parentheses): R is a type
#define OHMWRIGHT_INSTANTIATE(R)                                                                   \
    template Result<Id<R>> Book::insert(R);                                                        \
    template Outcome Book::update(const R &);                                                      \
    template Outcome Book::remove(Id<R>);
OHMWRIGHT_EACH_RECORD(OHMWRIGHT_INSTANTIATE)
// NOLINTEND(bugprone-macro-parentheses)
#undef OHMWRIGHT_INSTANTIATE

} // namespace ohmwright
