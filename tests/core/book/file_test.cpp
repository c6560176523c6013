// SPDX-License-Identifier: GPL-3.0-or-later
// The file: recognised, migrated, refused politely; untouched where it must be.
#include "core/book/recorder.h"
#include "core/book/row_codec.h"
#include "tests/support/test_book.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include <gmock/gmock.h>
#include <sqlite3.h>

namespace ohmwright {
namespace {

QByteArray contentOf(const QString &path)
{
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return file.readAll();
}

void write(const QString &path, const QByteArray &bytes)
{
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes);
}

class FileTest : public testing::Test
{
protected:
    QString at(const char *name) { return m_folder.filePath(QLatin1String(name)); }
    void makeBook(const QString &path) { TestBook book(path); }

    FixedClock clock;

private:
    QTemporaryDir m_folder;
};

TEST_F(FileTest, ANewBookOpensAgain)
{
    makeBook(at("van.ohmwright"));
    const auto book = Book::open(at("van.ohmwright"), clock);
    OHMWRIGHT_ASSERT_OK(book);
    EXPECT_EQ((*book)->records().build().title, QStringLiteral("Test build"));
    EXPECT_FALSE((*book)->isReadOnly());
    EXPECT_TRUE((*book)->checkFile()->isEmpty());
}

TEST_F(FileTest, CreateRefusesToOverwrite)
{
    write(at("van.ohmwright"), "precious");
    const auto book = Book::create(at("van.ohmwright"), QStringLiteral("x"), euro(), clock);
    ASSERT_FALSE(book.has_value());
    EXPECT_EQ(book.error().code, ProblemCode::NotAllowed);
    EXPECT_EQ(contentOf(at("van.ohmwright")), "precious");
}

TEST_F(FileTest, CreateInAMissingFolderLeavesNothing)
{
    const auto book = Book::create(at("nowhere/van.ohmwright"), QStringLiteral("x"), euro(), clock);
    ASSERT_FALSE(book.has_value());
    EXPECT_EQ(book.error().code, ProblemCode::ReadOnly);
    EXPECT_FALSE(QDir(at("nowhere")).exists());
}

TEST_F(FileTest, WhatIsNotABookIsToldAndUntouched)
{
    const QByteArray texts[] = {"", "Dear diary", QByteArray(4096, 'x')};
    for (const QByteArray &text : texts) {
        write(at("diary.ohmwright"), text);
        const auto book = Book::open(at("diary.ohmwright"), clock);
        ASSERT_FALSE(book.has_value());
        EXPECT_EQ(book.error().code, ProblemCode::NotABook);
        EXPECT_EQ(contentOf(at("diary.ohmwright")), text);
    }
}

TEST_F(FileTest, AnotherProgramsDatabaseIsNotABook)
{
    sqlite3 *db = nullptr;
    ASSERT_EQ(sqlite3_open(at("other.db").toUtf8().constData(), &db), SQLITE_OK);
    ASSERT_EQ(sqlite3_exec(db, "CREATE TABLE t (x)", nullptr, nullptr, nullptr), SQLITE_OK);
    sqlite3_close(db);
    const QByteArray before = contentOf(at("other.db"));
    const auto book = Book::open(at("other.db"), clock);
    ASSERT_FALSE(book.has_value());
    EXPECT_EQ(book.error().code, ProblemCode::NotABook);
    EXPECT_EQ(contentOf(at("other.db")), before);
}

TEST_F(FileTest, AMissingFileIsNotFound)
{
    const auto book = Book::open(at("none.ohmwright"), clock);
    ASSERT_FALSE(book.has_value());
    EXPECT_EQ(book.error().code, ProblemCode::NotFound);
}

void pretendNewer(const QString &path, int version, int oldestReader)
{
    sqlite3 *db = nullptr;
    ASSERT_EQ(sqlite3_open(path.toUtf8().constData(), &db), SQLITE_OK);
    const QByteArray sql =
        "PRAGMA user_version = " + QByteArray::number(version) +
        "; UPDATE format SET oldest_reader = " + QByteArray::number(oldestReader);
    ASSERT_EQ(sqlite3_exec(db, sql.constData(), nullptr, nullptr, nullptr), SQLITE_OK);
    sqlite3_close(db);
}

TEST_F(FileTest, ANewerUnreadableBookIsRefusedAndUntouched)
{
    makeBook(at("van.ohmwright"));
    pretendNewer(at("van.ohmwright"), 99, 98);
    const QByteArray before = contentOf(at("van.ohmwright"));
    const auto book = Book::open(at("van.ohmwright"), clock);
    ASSERT_FALSE(book.has_value());
    EXPECT_EQ(book.error().code, ProblemCode::NewerBook);
    EXPECT_EQ(contentOf(at("van.ohmwright")), before);
}

TEST_F(FileTest, ANewerReadableBookOpensForLookingOnly)
{
    makeBook(at("van.ohmwright"));
    pretendNewer(at("van.ohmwright"), 99, 1);
    const QByteArray before = contentOf(at("van.ohmwright"));
    {
        const auto book = Book::open(at("van.ohmwright"), clock);
        OHMWRIGHT_ASSERT_OK(book);
        EXPECT_TRUE((*book)->isReadOnly());
        const Outcome edit = (*book)->edit(QStringLiteral("x"), [] { return Outcome(); });
        ASSERT_FALSE(edit.has_value());
        EXPECT_EQ(edit.error().code, ProblemCode::NewerBook);
    }
    EXPECT_EQ(contentOf(at("van.ohmwright")), before);
}

TEST_F(FileTest, AHeldBookIsToldAsLocked)
{
    makeBook(at("van.ohmwright"));
    const auto book = Book::open(at("van.ohmwright"), clock);
    OHMWRIGHT_ASSERT_OK(book);
    sqlite3 *other = nullptr;
    ASSERT_EQ(sqlite3_open(at("van.ohmwright").toUtf8().constData(), &other), SQLITE_OK);
    ASSERT_EQ(sqlite3_exec(other, "BEGIN EXCLUSIVE", nullptr, nullptr, nullptr), SQLITE_OK);
    const Outcome edit = (*book)->edit(QStringLiteral("x"), [] { return Outcome(); });
    ASSERT_FALSE(edit.has_value());
    EXPECT_EQ(edit.error().code, ProblemCode::Locked);
    sqlite3_close(other);
    EXPECT_TRUE((*book)->edit(QStringLiteral("x"), [] { return Outcome(); }).has_value());
}

TEST_F(FileTest, ACopyIsWholeAndRefusesToOverwrite)
{
    TestBook book(at("van.ohmwright"));
    book.add(namedPart(QStringLiteral("Motor")));
    OHMWRIGHT_ASSERT_OK(book->saveCopy(at("copy.ohmwright")));
    EXPECT_FALSE(book->saveCopy(at("copy.ohmwright")).has_value());
    const auto copy = Book::open(at("copy.ohmwright"), clock);
    OHMWRIGHT_ASSERT_OK(copy);
    EXPECT_EQ((*copy)->records().all<Part>(), book.records().all<Part>());
}

// Migrations
// ---------------------------------------------------------------------------------------

TEST(Migrations, AreNumberedWithoutGapsAndSayTheirOldestReader)
{
    int expected = 1;
    for (const Migration &migration : migrations()) {
        EXPECT_EQ(migration.version, expected++);
        EXPECT_GE(migration.oldestReader, 1);
        EXPECT_TRUE(migration.sql.startsWith("-- "));
    }
}

TEST(Migrations, RunTwiceChangeNothing)
{
    const auto connection = FileConnection::open({}, OpenAs::ReadWrite);
    OHMWRIGHT_ASSERT_OK(connection);
    OHMWRIGHT_ASSERT_OK(migrate((*connection)->db(), migrations()));
    OHMWRIGHT_ASSERT_OK(migrate((*connection)->db(), migrations()));
    EXPECT_EQ(*scalar((*connection)->db(), "PRAGMA user_version"), newestSchema());
}

TEST(Migrations, ABrokenScriptLeavesVersionAndContent)
{
    const auto connection = FileConnection::open({}, OpenAs::ReadWrite);
    OHMWRIGHT_ASSERT_OK(connection);
    sqlite3 *db = (*connection)->db();
    OHMWRIGHT_ASSERT_OK(migrate(db, migrations()));
    std::vector<Migration> list = migrations();
    list.push_back({newestSchema() + 1, 1,
                    "CREATE TABLE half (id INTEGER PRIMARY KEY NOT NULL) STRICT; SELECT broken "
                    "FROM nowhere;"});
    EXPECT_FALSE(migrate(db, list).has_value());
    EXPECT_EQ(*scalar(db, "PRAGMA user_version"), newestSchema());
    EXPECT_EQ(*scalar(db, "SELECT count(*) FROM sqlite_schema WHERE name = 'half'"), 0);
}

// The field lists and the tables say the same columns, so neither can drift.
TEST(Schema, HasExactlyTheColumnsOfTheFieldLists)
{
    const auto connection = FileConnection::open({}, OpenAs::ReadWrite);
    OHMWRIGHT_ASSERT_OK(connection);
    OHMWRIGHT_ASSERT_OK(migrate((*connection)->db(), migrations()));
    const Records records;
    records.forEachTable([&]<class R>(const Table<R> &) {
        Result<Statement> info = Statement::prepare(
            (*connection)->db(), QByteArray("SELECT name FROM pragma_table_info('") +
                                     RecordTraits<R>::table + "') ORDER BY cid");
        ASSERT_TRUE(info.has_value());
        std::vector<std::string> columns;
        while (*info->step())
            columns.push_back(info->text(0).toStdString());
        std::vector<std::string> fields;
        for (const QByteArray &column : columnsOf<R>())
            fields.push_back(column.toStdString());
        EXPECT_THAT(columns, testing::UnorderedElementsAreArray(fields)) << RecordTraits<R>::table;
    });
}

// SQLite records only tables with an explicit primary key, and breaks on generated columns.
TEST(Schema, EveryTableIsStrictAndCanBeRecorded)
{
    const auto connection = FileConnection::open({}, OpenAs::ReadWrite);
    OHMWRIGHT_ASSERT_OK(connection);
    sqlite3 *db = (*connection)->db();
    OHMWRIGHT_ASSERT_OK(migrate(db, migrations()));
    EXPECT_EQ(
        *scalar(db,
                "SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND type = 'table' "
                "AND name NOT LIKE 'sqlite%' AND strict = 0"),
        0);
    EXPECT_EQ(
        *scalar(db,
                "SELECT count(*) FROM pragma_table_list l WHERE schema = 'main' AND type = 'table' "
                "AND name NOT LIKE 'sqlite%' AND NOT EXISTS "
                "(SELECT 1 FROM pragma_table_info(l.name) WHERE pk > 0 AND \"notnull\" = 1)"),
        0);
    EXPECT_EQ(
        *scalar(
            db,
            "SELECT count(*) FROM pragma_table_list l, pragma_table_xinfo(l.name) x WHERE x.hidden "
            "<> 0 "
            "AND l.schema = 'main' AND l.name NOT LIKE 'sqlite%' AND l.name NOT LIKE 'pragma%'"),
        0);
}

TEST(Recorder, RefusesAChangesetThatDoesNotFitTheTables)
{
    const auto from = FileConnection::open({}, OpenAs::ReadWrite);
    const auto to = FileConnection::open({}, OpenAs::ReadWrite);
    sqlite3 *db = (*from)->db();
    OHMWRIGHT_ASSERT_OK(Statement::runScript(
        db, "CREATE TABLE t (id INTEGER PRIMARY KEY NOT NULL, a TEXT, b TEXT) STRICT"));
    OHMWRIGHT_ASSERT_OK(Statement::runScript(
        (*to)->db(), "CREATE TABLE t (id INTEGER PRIMARY KEY NOT NULL, a TEXT) STRICT"));
    auto recorder = Recorder::start(db);
    OHMWRIGHT_ASSERT_OK(Statement::runScript(db, "INSERT INTO t VALUES (1, 'x', 'y')"));
    const QByteArray changeset = *(*recorder)->changeset();
    // SQLite itself would skip this in silence
    const Outcome applied = applyChangeset((*to)->db(), changeset);
    ASSERT_FALSE(applied.has_value());
    EXPECT_EQ(applied.error().code, ProblemCode::Conflict);
}

} // namespace
} // namespace ohmwright
