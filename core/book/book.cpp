// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/book.h"

#include "core/book/statement.h"
#include "core/book/transaction.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRandomGenerator>
#include <QSaveFile>

#include <sqlite3.h>

#include <algorithm>
#include <cassert>

namespace ohmwright {

namespace {

QString shaOf(const QByteArray &bytes)
{
    return QString::fromLatin1(QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex());
}

Problem newerBook(const QString &path)
{
    return {ProblemCode::NewerBook,
            Book::tr("“%1” was written by a newer Ohmwright.").arg(path),
            Book::tr("Install the newer version to open it; the file is untouched."),
            {}};
}

} // namespace

Book::Book(QString path, std::unique_ptr<FileConnection> connection, const Clock &clock)
    : m_path(std::move(path)), m_connection(std::move(connection)), m_clock(clock)
{}

Book::~Book() = default;

Result<std::unique_ptr<Book>> Book::create(const QString &path, const QString &title,
                                           Currency currency, const Clock &clock)
{
    const bool onDisk = !path.isEmpty();
    if (onDisk && QFileInfo::exists(path))
        return fail(ProblemCode::NotAllowed, tr("There is already a file “%1”.").arg(path),
                    tr("Choose another name, or open that file."));
    if (onDisk) {
        // an empty file first: tells a folder that is missing or not ours before SQLite tries
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly))
            return fail(ProblemCode::ReadOnly,
                        tr("The book “%1” cannot be created: %2.").arg(path, file.errorString()),
                        tr("Choose a folder you may write to."));
    }
    const auto giveUp = [&](const Problem &problem) {
        if (onDisk)
            QFile::remove(path);
        return fail(problem);
    };
    Result<std::unique_ptr<FileConnection>> connection =
        FileConnection::open(path, OpenAs::ReadWrite);
    if (!connection)
        return giveUp(connection.error());
    if (Outcome done = migrate((*connection)->db(), migrations()); !done)
        return giveUp(done.error());
    std::unique_ptr<Book> book(new Book(path, std::move(*connection), clock));
    Build build;
    build.title = title;
    build.currency = currency;
    Transaction first((*book).m_connection->db());
    Outcome done = first.begin();
    book->m_editing = true;
    if (done) {
        if (const auto id = book->insert(build); !id)
            done = fail(id.error());
    }
    if (done) {
        if (const auto id = book->insert(Vehicle{}); !id)
            done = fail(id.error());
    }
    if (done)
        done = first.commit();
    book->m_editing = false;
    if (done)
        done = book->start();
    if (!done) {
        book.reset();
        return giveUp(done.error());
    }
    return book;
}

Result<std::unique_ptr<Book>> Book::open(const QString &path, const Clock &clock)
{
    const Result<int> version = recogniseBook(path);
    if (!version)
        return fail(version.error());
    const QFileInfo file(path);
    std::optional<Problem> readOnly;
    if (!file.isWritable() || !QFileInfo(file.absolutePath()).isWritable())
        readOnly = Problem{ProblemCode::ReadOnly,
                           file.isWritable()
                               ? tr("“%1” stands in a folder that cannot be written.").arg(path)
                               : tr("“%1” is protected from being written.").arg(path),
                           tr("You can look at everything. To change it, save a copy elsewhere."),
                           {}};
    if (*version > newestSchema())
        readOnly = newerBook(path);
    Result<std::unique_ptr<FileConnection>> connection =
        FileConnection::open(path, readOnly ? OpenAs::ReadOnly : OpenAs::ReadWrite);
    if (!connection)
        return fail(connection.error());
    sqlite3 *db = (*connection)->db();
    if (*version > newestSchema()) {
        const Result<std::int64_t> oldest = scalar(db, "SELECT oldest_reader FROM format");
        if (!oldest || *oldest > newestSchema())
            return fail(newerBook(path));
    } else if (!readOnly) {
        if (const auto kept = keptBeforeUpdate(path))
            if (Outcome copied = copyInto(db, *kept); !copied)
                return fail(copied.error());
        if (Outcome done = migrate(db, migrations()); !done)
            return fail(done.error());
    } else if (*version < newestSchema()) {
        return fail(
            ProblemCode::ReadOnly,
            tr("“%1” is from an older version and must be brought up to date, but its folder "
               "cannot be written.")
                .arg(path),
            tr("Copy it to a folder you may write to, and open that."));
    }
    std::unique_ptr<Book> book(new Book(path, std::move(*connection), clock));
    book->m_readOnly = readOnly;
    if (Outcome done = book->start(); !done)
        return fail(done.error());
    return book;
}

Outcome Book::start()
{
    sqlite3 *db = m_connection->db();
    const Result<std::int64_t> version = scalar(db, "PRAGMA data_version");
    if (!version)
        return fail(version.error());
    m_dataVersion = *version;
    if (Outcome done = loadAll(); !done)
        return done;
    return readSteps();
}

std::int64_t Book::newId()
{
    // Time first, so that ids of later rows are higher and tables grow at their end; random last,
    // so that two copies of a book edited apart do not give the same id to two things.
    const std::int64_t now = m_clock.nowUtc().toMSecsSinceEpoch();
    const std::int64_t id = (now << 20) | (QRandomGenerator::global()->generate() & 0xFFFFF);
    m_lastId = std::max(m_lastId + 1, id);
    return m_lastId;
}

Outcome Book::refuseWrite() const
{
    return m_readOnly ? Outcome(fail(*m_readOnly)) : Outcome();
}

Outcome Book::checkUnchangedSince()
{
    const Result<std::int64_t> version = scalar(m_connection->db(), "PRAGMA data_version");
    if (!version)
        return fail(version.error());
    if (*version == m_dataVersion)
        return {};
    return fail(ProblemCode::Conflict, tr("Another window has just changed this book."),
                tr("It has been brought up to date here. Look again, and repeat your change."));
}

Outcome Book::edit(const QString &what, const std::function<Outcome()> &work)
{
    if (m_editing)
        return work();
    if (Outcome may = refuseWrite(); !may)
        return may;
    if (m_outOfStep)
        if (const Result<bool> fresh = refresh(); !fresh)
            return fail(fresh.error());
    sqlite3 *db = m_connection->db();
    TouchedRows touched;
    // on a full disk SQLite may roll back by itself; the recorder then no longer knows what to
    // restore
    bool rolledBackBySqlite = false;
    const auto attempt = [&]() -> Outcome {
        Transaction transaction(db);
        if (Outcome begun = transaction.begin(); !begun)
            return begun;
        if (Outcome same = checkUnchangedSince(); !same)
            return same;
        Result<std::unique_ptr<Recorder>> recorder = Recorder::start(db);
        if (!recorder)
            return fail(recorder.error());
        m_editing = true;
        Outcome done = work();
        m_editing = false;
        const Result<QByteArray> changeset = (*recorder)->changeset();
        rolledBackBySqlite = sqlite3_get_autocommit(db) != 0 || !changeset;
        if (!changeset)
            return done ? Outcome(fail(changeset.error())) : done;
        touched = touchedRows(*changeset);
        if (!done)
            return done;
        if (!changeset->isEmpty()) {
            recorder->reset();
            if (Outcome stored = storeStep(what, *changeset); !stored)
                return stored;
        }
        return transaction.commit();
    };
    Outcome result = attempt();
    if (!result) {
        // Problem first: what the person is told is why the edit failed
        if (result.error().code == ProblemCode::Conflict) {
            if (const Result<bool> fresh = refresh(); fresh && *fresh)
                return result;
        }
        // the disk may still not answer; then the next look reads everything anew
        m_outOfStep = !(rolledBackBySqlite ? loadAll() : reload(touched)).has_value();
        return result;
    }
    if (touched.empty())
        return {};
    if (Outcome steps = readSteps(); !steps)
        return steps;
    emit changed(Change{false, touched});
    return {};
}

Result<std::int64_t> Book::revision() const
{
    return scalar(m_connection->db(), "SELECT coalesce(max(number), 0) FROM step");
}

Result<bool> Book::refresh()
{
    const Result<std::int64_t> version = scalar(m_connection->db(), "PRAGMA data_version");
    if (!version)
        return fail(version.error());
    if (*version == m_dataVersion && !m_outOfStep)
        return false;
    if (Outcome done = start(); !done)
        return fail(done.error());
    m_outOfStep = false;
    emit changed(Change{true, {}});
    return true;
}

Result<QString> Book::keepBlob(const QByteArray &bytes)
{
    if (Outcome may = refuseWrite(); !may)
        return fail(may.error());
    Result<Statement> statement = Statement::prepare(
        m_connection->db(), "INSERT INTO blob (sha256, data) VALUES (?, ?) ON CONFLICT DO NOTHING");
    if (!statement)
        return fail(statement.error());
    QString sha = shaOf(bytes);
    statement->bind(1, sha);
    statement->bindBlob(2, bytes);
    if (Outcome done = statement->run(); !done)
        return fail(done.error());
    return sha;
}

Result<QByteArray> Book::blob(const QString &sha256) const
{
    Result<Statement> statement =
        Statement::prepare(m_connection->db(), "SELECT data FROM blob WHERE sha256 = ?");
    if (!statement)
        return fail(statement.error());
    statement->bind(1, sha256);
    const Result<bool> row = statement->step();
    if (!row)
        return fail(row.error());
    if (!*row)
        return fail(ProblemCode::NotFound, tr("The bytes of this attachment are not in the book."));
    return statement->blob(0);
}

Outcome Book::saveCopy(const QString &path) const
{
    if (QFileInfo::exists(path))
        return fail(ProblemCode::NotAllowed, tr("There is already a file “%1”.").arg(path),
                    tr("Choose another name."));
    return copyInto(m_connection->db(), path);
}

Result<QStringList> Book::checkFile() const
{
    sqlite3 *db = m_connection->db();
    QStringList wrong;
    const auto collect = [&](const QByteArray &sql, const auto &sentence) -> Outcome {
        Result<Statement> statement = Statement::prepare(db, sql);
        if (!statement)
            return fail(statement.error());
        for (;;) {
            const Result<bool> more = statement->step();
            if (!more)
                return fail(more.error());
            if (!*more)
                return {};
            if (const QString text = sentence(*statement); !text.isEmpty())
                wrong << text;
        }
    };
    Outcome done = collect("PRAGMA integrity_check", [](Statement &row) {
        const QString text = row.text(0);
        return text == QLatin1String("ok") ? QString() : tr("The file is damaged: %1.").arg(text);
    });
    if (done)
        done = collect("PRAGMA foreign_key_check", [](Statement &row) {
            return tr("A row of %1 refers to a missing row of %2.").arg(row.text(0), row.text(2));
        });
    if (done)
        done = collect("SELECT sha256, data FROM blob ORDER BY sha256", [](Statement &row) {
            return shaOf(row.blob(1)) == row.text(0)
                       ? QString()
                       : tr("The attachment %1 is not what it was when it was added.")
                             .arg(row.text(0));
        });
    if (done)
        done = collect("SELECT key FROM attachment WHERE sha256 <> '' AND sha256 NOT IN "
                       "(SELECT sha256 FROM blob) ORDER BY key",
                       [](Statement &row) {
                           return tr("The bytes of attachment “%1” are missing.").arg(row.text(0));
                       });
    if (!done)
        return fail(done.error());
    return wrong;
}

} // namespace ohmwright
