// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/book_file.h"

#include "core/book/statement.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRegularExpression>
#include <QSqlDatabase>
#include <QSqlDriver>
#include <QUuid>
#include <QVariant>
#include <QtEndian>

#include <sqlite3.h>

#include <algorithm>

// Q_INIT_RESOURCE must stand outside any namespace.
static void registerMigrations()
{
    Q_INIT_RESOURCE(migrations);
}

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Book", text);
}

std::vector<Migration> loadMigrations()
{
    registerMigrations();
    std::vector<Migration> list;
    const QDir folder(QStringLiteral(":/ohmwright/migrations"));
    static const QRegularExpression oldest(QStringLiteral("^-- oldest readable version: (\\d+)$"),
                                           QRegularExpression::MultilineOption);
    for (const QString &name : folder.entryList(QDir::Files, QDir::Name)) {
        QFile file(folder.filePath(name));
        Migration migration;
        migration.version = QStringView(name).left(4).toInt();
        if (file.open(QIODevice::ReadOnly))
            migration.sql = file.readAll();
        migration.oldestReader = oldest.match(QString::fromUtf8(migration.sql)).captured(1).toInt();
        list.push_back(std::move(migration));
    }
    return list;
}

} // namespace

const std::vector<Migration> &migrations()
{
    static const std::vector<Migration> list = loadMigrations();
    return list;
}

int newestSchema()
{
    return migrations().back().version;
}

Result<std::unique_ptr<FileConnection>> FileConnection::open(const QString &path, OpenAs as)
{
    std::unique_ptr<FileConnection> connection(new FileConnection);
    connection->m_name = QUuid::createUuid().toString();
    QSqlDatabase database =
        QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), connection->m_name);
    database.setDatabaseName(path.isEmpty() ? QStringLiteral(":memory:") : path);
    QString options = QStringLiteral("QSQLITE_BUSY_TIMEOUT=3000");
    if (as == OpenAs::ReadOnly)
        options += QStringLiteral(";QSQLITE_OPEN_READONLY");
    database.setConnectOptions(options);
    if (!database.open())
        return fail(ProblemCode::ReadOnly, tr("The book “%1” cannot be opened.").arg(path),
                    tr("Check that the folder exists and that you may write to it."));
    const QVariant handle = database.driver()->handle();
    connection->m_db = *static_cast<sqlite3 *const *>(handle.constData());
    sqlite3_extended_result_codes(connection->m_db, 1);
    // EXTRA also syncs the folder after the rollback journal is gone, so that a commit told as done
    // survives the plug being pulled. A rollback journal, unlike write-ahead logging, leaves one
    // file to carry away at any moment.
    if (Outcome done = Statement::runScript(
            connection->m_db, "PRAGMA foreign_keys = ON; PRAGMA synchronous = EXTRA;"
                              "PRAGMA journal_mode = DELETE; PRAGMA cache_size = -32000;");
        !done)
        return fail(done.error());
    return connection;
}

FileConnection::~FileConnection()
{
    if (m_name.isEmpty())
        return;
    QSqlDatabase::database(m_name, false).close();
    QSqlDatabase::removeDatabase(m_name);
}

Result<int> recogniseBook(const QString &path)
{
    QFile file(path);
    if (!QFileInfo::exists(path))
        return fail(ProblemCode::NotFound, tr("There is no file “%1”.").arg(path));
    if (!file.open(QIODevice::ReadOnly))
        return fail(ProblemCode::Io,
                    tr("The file “%1” cannot be read: %2.").arg(path, file.errorString()));
    const QByteArray header = file.read(100);
    const bool isSqlite =
        header.size() == 100 && header.startsWith(QByteArray("SQLite format 3\0", 16));
    const auto number = [&](int offset) {
        return static_cast<int>(qFromBigEndian<quint32>(header.constData() + offset));
    };
    if (!isSqlite || number(68) != kApplicationId)
        return fail(ProblemCode::NotABook, tr("“%1” is not an Ohmwright book.").arg(path),
                    tr("Choose a file that Ohmwright made, or create a new book."));
    return number(60);
}

namespace {

Outcome runMigration(sqlite3 *db, const Migration &migration)
{
    if (Outcome begun = Statement::runScript(db, "BEGIN IMMEDIATE"); !begun)
        return begun;
    const auto giveUp = [db](Problem problem) -> Outcome {
        // the script's own failure is what to tell, whatever the rollback says
        (void)Statement::runScript(db, "ROLLBACK");
        return fail(std::move(problem));
    };
    const QByteArray script =
        migration.sql + "\nPRAGMA application_id = " + QByteArray::number(kApplicationId) +
        ";\nPRAGMA user_version = " + QByteArray::number(migration.version) +
        ";\nINSERT INTO format (id, oldest_reader) VALUES (1, " +
        QByteArray::number(migration.oldestReader) +
        ") ON CONFLICT (id) DO UPDATE SET oldest_reader = excluded.oldest_reader;";
    if (Outcome done = Statement::runScript(db, script); !done)
        return giveUp(done.error());
    // references were not looked after while tables were rebuilt
    const Result<std::int64_t> broken = scalar(db, "SELECT count(*) FROM pragma_foreign_key_check");
    if (!broken)
        return giveUp(broken.error());
    if (*broken > 0)
        return giveUp({ProblemCode::Damaged,
                       tr("%1 entries of the book refer to something that is not there, so it was "
                          "not brought up to date.")
                           .arg(*broken),
                       tr("Nothing was changed. A dated copy may be whole."),
                       {}});
    if (Outcome done = Statement::runScript(db, "COMMIT"); !done)
        return giveUp(done.error());
    return {};
}

} // namespace

Outcome migrate(sqlite3 *db, const std::vector<Migration> &list)
{
    const Result<std::int64_t> version = scalar(db, "PRAGMA user_version");
    if (!version)
        return fail(version.error());
    if (list.empty() || list.back().version <= *version)
        return {};
    // A table that others refer to can only be rebuilt while nobody looks; the pragma does nothing
    // inside a transaction, so it stands outside.
    const Result<std::int64_t> keys = scalar(db, "PRAGMA foreign_keys");
    if (!keys)
        return fail(keys.error());
    if (Outcome off = Statement::runScript(db, "PRAGMA foreign_keys = OFF"); !off)
        return off;
    Outcome done;
    for (const Migration &migration : list) {
        if (migration.version > *version && done)
            done = runMigration(db, migration);
    }
    const Outcome back = Statement::runScript(db, *keys != 0 ? "PRAGMA foreign_keys = ON"
                                                             : "PRAGMA foreign_keys = OFF");
    return done ? back : done;
}

std::optional<QString> keptBeforeUpdate(const QString &path)
{
    const Result<int> version = recogniseBook(path);
    if (!version || *version >= newestSchema())
        return std::nullopt;
    const QFileInfo file(path);
    const auto named = [&](const QString &number) {
        return file.dir().filePath(
            tr("%1, schema %2%3.%4")
                .arg(file.completeBaseName(), QString::number(*version), number, file.suffix()));
    };
    QString kept = named(QString());
    for (int n = 2; QFileInfo::exists(kept); ++n)
        kept = named(QStringLiteral(" (%1)").arg(n));
    return kept;
}

Outcome copyInto(sqlite3 *db, const QString &path)
{
    Result<Statement> statement = Statement::prepare(db, "VACUUM INTO ?");
    if (!statement)
        return fail(statement.error());
    statement->bind(1, path);
    if (Outcome done = statement->run(); !done) {
        QFile::remove(path);
        return done;
    }
    return {};
}

} // namespace ohmwright
