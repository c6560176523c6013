// SPDX-License-Identifier: GPL-3.0-or-later
// A book reads the same in whatever order SQLite hands out rows that nothing orders.
#include "core/interchange/interchange.h"
#include "tests/support/test_book.h"
#include "tests/support/test_folder.h"

#include <QFile>

#include <sqlite3.h>

namespace ohmwright {
namespace {

int reverse(sqlite3 *db, char **, const void *)
{
    return sqlite3_exec(db, "PRAGMA reverse_unordered_selects = ON", nullptr, nullptr, nullptr);
}

// While it lives, every connection that is opened reads in reverse what is not ordered.
class Reversed
{
public:
    Reversed() { EXPECT_EQ(sqlite3_auto_extension(entry()), SQLITE_OK); }
    ~Reversed() { sqlite3_cancel_auto_extension(entry()); }
    Reversed(const Reversed &) = delete;
    Reversed &operator=(const Reversed &) = delete;

private:
    using Entry = void (*)();
    static Entry entry() { return reinterpret_cast<Entry>(&reverse); }
};

struct Reading
{
    QByteArray document;
    std::vector<QString> names; // of what is in no array of the document's own order
    QStringList steps, faults;
};

Reading readingOf(const QString &path, const Clock &clock)
{
    Reading reading;
    const auto book = Book::open(path, clock);
    EXPECT_TRUE(book.has_value());
    if (!book)
        return reading;
    reading.document = dump((*book)->records());
    for (const Part &part : (*book)->records().all<Part>())
        reading.names.push_back(part.key);
    for (const Task &task : (*book)->records().all<Task>())
        for (const TaskNeed &need : (*book)->records().of<TaskNeed>(task.id))
            reading.names.push_back(QString::number(need.id.value()));
    for (const Part &part : (*book)->records().all<Part>())
        for (const Rating &rating : (*book)->records().of<Rating>(part.id))
            reading.names.push_back(QString::number(rating.id.value()));
    if (const auto history = (*book)->history())
        for (const auto &step : *history)
            reading.steps << step.what;
    if (const auto faults = (*book)->checkFile())
        reading.faults = *faults;
    return reading;
}

TEST(ReversedReads, giveTheSameBook)
{
    TestFolder folder;
    const QString path = folder.filePath(QStringLiteral("van.ohmwright"));
    ASSERT_TRUE(QFile::copy(
        QStringLiteral(OHMWRIGHT_SOURCE_DIR "/tests/core/book/samples/schema-0001.ohmwright"),
        path));
    ASSERT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
    const FixedClock clock;
    const Reading before = readingOf(path, clock);
    ASSERT_FALSE(before.names.empty());
    const Reversed reversed;
    {
        sqlite3 *db = nullptr;
        ASSERT_EQ(sqlite3_open(":memory:", &db), SQLITE_OK);
        QString order;
        sqlite3_exec(
            db, "CREATE TABLE t (a); INSERT INTO t VALUES (1), (2); SELECT a FROM t",
            [](void *to, int, char **cells, char **) {
                *static_cast<QString *>(to) += QString::fromLatin1(cells[0]);
                return 0;
            },
            &order, nullptr);
        sqlite3_close(db);
        ASSERT_EQ(order, QStringLiteral("21")) << "the order is not reversed, the test is void";
    }
    const Reading after = readingOf(path, clock);
    EXPECT_EQ(after.document, before.document);
    EXPECT_EQ(after.names, before.names);
    EXPECT_EQ(after.steps, before.steps);
    EXPECT_EQ(after.faults, before.faults);
}

} // namespace
} // namespace ohmwright
