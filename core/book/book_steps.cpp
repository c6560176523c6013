// SPDX-License-Identifier: GPL-3.0-or-later
// The steps of a book: kept with each edit, gone back and forth on, looked back at.
#include "core/book/book.h"
#include "core/book/statement.h"
#include "core/book/transaction.h"

#include <cassert>

namespace ohmwright {

namespace {

// Steps older than this stay as history without their changeset, so the file does not grow forever.
// Some years of evenings; a step of a usual edit takes a few hundred bytes.
constexpr int kStepsKept = 2000;

} // namespace

Outcome Book::storeStep(const QString &what, const QByteArray &changeset)
{
    sqlite3 *db = m_connection->db();
    if (Outcome done = Statement::runScript(
            db, "UPDATE step SET state = 'overtaken', changeset = NULL WHERE state = 'undone'");
        !done)
        return done;
    Result<Statement> insert = Statement::prepare(
        db, "INSERT INTO step (made_at, what, state, changeset) VALUES (?, ?, 'done', ?)");
    if (!insert)
        return fail(insert.error());
    insert->bind(1, m_clock.nowUtc().toString(Qt::ISODateWithMs));
    insert->bind(2, what);
    insert->bindBlob(3, changeset);
    if (Outcome done = insert->run(); !done)
        return done;
    return Statement::runScript(
        db,
        "UPDATE step SET state = 'kept', changeset = NULL WHERE state = 'done' AND number <= " +
            QByteArray::number(static_cast<qint64>(sqlite3_last_insert_rowid(db)) - kStepsKept));
}

Outcome Book::readSteps()
{
    const auto text = [&](const QByteArray &sql) -> Result<std::optional<QString>> {
        Result<Statement> statement = Statement::prepare(m_connection->db(), sql);
        if (!statement)
            return fail(statement.error());
        const Result<bool> row = statement->step();
        if (!row)
            return fail(row.error());
        return *row ? std::optional(statement->text(0)) : std::nullopt;
    };
    const auto undo =
        text("SELECT what FROM step WHERE state = 'done' ORDER BY number DESC LIMIT 1");
    const auto redo = text("SELECT what FROM step WHERE state = 'undone' ORDER BY number LIMIT 1");
    if (!undo || !redo)
        return fail(undo ? redo.error() : undo.error());
    m_undoText = *undo;
    m_redoText = *redo;
    return {};
}

Outcome Book::undo()
{
    return travel(true);
}

Outcome Book::redo()
{
    return travel(false);
}

Outcome Book::travel(bool back)
{
    assert(!m_editing);
    if (Outcome may = refuseWrite(); !may)
        return may;
    if (m_outOfStep)
        if (const Result<bool> fresh = refresh(); !fresh)
            return fail(fresh.error());
    sqlite3 *db = m_connection->db();
    TouchedRows touched;
    const auto attempt = [&]() -> Outcome {
        Transaction transaction(db);
        if (Outcome begun = transaction.begin(); !begun)
            return begun;
        if (Outcome same = checkUnchangedSince(); !same)
            return same;
        Result<Statement> newest =
            Statement::prepare(db, back ? "SELECT number, changeset FROM step WHERE state = 'done' "
                                          "ORDER BY number DESC LIMIT 1"
                                        : "SELECT number, changeset FROM step WHERE state = "
                                          "'undone' ORDER BY number LIMIT 1");
        if (!newest)
            return fail(newest.error());
        const Result<bool> row = newest->step();
        if (!row)
            return fail(row.error());
        if (!*row)
            return fail(ProblemCode::NotFound,
                        back ? tr("There is nothing to undo.") : tr("There is nothing to redo."));
        const std::int64_t number = newest->integer(0);
        QByteArray changeset = newest->blob(1);
        newest->reset();
        if (back) {
            const Result<QByteArray> inverted = inverse(changeset);
            if (!inverted)
                return fail(inverted.error());
            changeset = *inverted;
        }
        if (Outcome applied = applyChangeset(db, changeset); !applied)
            return applied;
        touched = touchedRows(changeset);
        Result<Statement> mark =
            Statement::prepare(db, "UPDATE step SET state = ? WHERE number = ?");
        if (!mark)
            return fail(mark.error());
        mark->bind(1, back ? QStringLiteral("undone") : QStringLiteral("done"));
        mark->bind(2, number);
        if (Outcome marked = mark->run(); !marked)
            return marked;
        return transaction.commit();
    };
    if (Outcome result = attempt(); !result) {
        if (result.error().code == ProblemCode::Conflict) {
            // what is told is the conflict; refreshing only makes the window current again
            (void)refresh();
        }
        return result;
    }
    if (Outcome done = reload(touched); !done)
        return done;
    if (Outcome steps = readSteps(); !steps)
        return steps;
    emit changed(Change{false, touched});
    return {};
}

Outcome Book::settle()
{
    assert(!m_editing);
    if (Outcome may = refuseWrite(); !may)
        return may;
    if (Outcome done = Statement::runScript(
            m_connection->db(), "UPDATE step SET state = CASE state WHEN 'done' THEN 'kept' ELSE "
                                "'overtaken' END, changeset = NULL WHERE state IN ('done', "
                                "'undone')");
        !done)
        return done;
    return readSteps();
}

Result<std::vector<Step>> Book::history() const
{
    Result<Statement> statement = Statement::prepare(
        m_connection->db(), "SELECT number, made_at, what, state FROM step ORDER BY number");
    if (!statement)
        return fail(statement.error());
    std::vector<Step> steps;
    for (;;) {
        const Result<bool> more = statement->step();
        if (!more)
            return fail(more.error());
        if (!*more)
            return steps;
        const QString state = statement->text(3);
        steps.push_back({statement->integer(0),
                         QDateTime::fromString(statement->text(1), Qt::ISODateWithMs),
                         statement->text(2),
                         state == QLatin1String("done")     ? StepState::Done
                         : state == QLatin1String("undone") ? StepState::Undone
                         : state == QLatin1String("kept")   ? StepState::Kept
                                                            : StepState::Overtaken});
    }
}

Result<TouchedRows> Book::touchedBy(std::int64_t step) const
{
    Result<Statement> statement =
        Statement::prepare(m_connection->db(), "SELECT changeset FROM step WHERE number = ?");
    if (!statement)
        return fail(statement.error());
    statement->bind(1, step);
    const Result<bool> row = statement->step();
    if (!row)
        return fail(row.error());
    return *row && !statement->isNull(0) ? touchedRows(statement->blob(0)) : TouchedRows();
}

Result<std::unique_ptr<Book>> Book::copyInMemory() const
{
    const Build &build = m_records.build();
    Result<std::unique_ptr<Book>> copy = create({}, build.title, build.currency, m_clock);
    if (!copy)
        return copy;
    const auto fill = [&]() -> Outcome {
        sqlite3 *db = (*copy)->m_connection->db();
        Result<Statement> read = Statement::prepare(
            m_connection->db(), "SELECT number, made_at, what, state, changeset FROM step");
        Result<Statement> write =
            Statement::prepare(db, "INSERT INTO step (number, made_at, what, state, changeset) "
                                   "VALUES (?, ?, ?, ?, ?)");
        if (!read || !write)
            return fail(read ? write.error() : read.error());
        Transaction transaction(db);
        if (Outcome begun = transaction.begin(); !begun)
            return begun;
        (*copy)->m_editing = true;
        Outcome replaced = (*copy)->replaceAll(m_records);
        (*copy)->m_editing = false;
        if (!replaced)
            return replaced;
        for (;;) {
            const Result<bool> more = read->step();
            if (!more)
                return fail(more.error());
            if (!*more)
                break;
            write->bind(1, read->integer(0));
            for (const int column : {1, 2, 3})
                write->bind(column + 1, read->text(column));
            if (read->isNull(4))
                write->bindNull(5);
            else
                write->bindBlob(5, read->blob(4));
            if (Outcome done = write->run(); !done)
                return done;
        }
        if (Outcome done = transaction.commit(); !done)
            return done;
        return (*copy)->readSteps();
    };
    if (Outcome done = fill(); !done)
        return fail(done.error());
    return copy;
}

} // namespace ohmwright
