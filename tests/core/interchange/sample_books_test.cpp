// SPDX-License-Identifier: GPL-3.0-or-later
// Books of each released schema still open, and say what they said when they were made. Made with
// the program of that schema: `ohmwright load` of a part of the demo build, `ohmwright dump`, and
// pages of 1024 bytes to keep the file small.
#include "core/book/book_file.h"
#include "core/interchange/interchange.h"
#include "core/parts/consistency.h"
#include "tests/support/test_book.h"
#include "tests/support/test_folder.h"

#include <QFile>

namespace ohmwright {
namespace {

class SampleBook : public testing::TestWithParam<const char *>
{
protected:
    static QString kept(const char *ending)
    {
        return QStringLiteral(OHMWRIGHT_SOURCE_DIR "/tests/core/book/samples/") +
               QLatin1String(GetParam()) + QLatin1String(ending);
    }
};

TEST_P(SampleBook, OpensVerifiesCleanAndSaysWhatItSaid)
{
    TestFolder folder;
    const QString path = folder.filePath(QStringLiteral("sample.ohmwright"));
    ASSERT_TRUE(QFile::copy(kept(".ohmwright"), path));
    ASSERT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
    const FixedClock clock;
    const std::optional<QString> before = keptBeforeUpdate(path);
    const auto book = Book::open(path, clock);
    OHMWRIGHT_ASSERT_OK(book);
    const bool isOld = recogniseBook(kept(".ohmwright")).value() < newestSchema();
    ASSERT_EQ(before.has_value(), isOld);
    if (isOld) {
        EXPECT_EQ(recogniseBook(*before).value(), recogniseBook(kept(".ohmwright")).value());
        EXPECT_NE(keptBeforeUpdate(*before), before); // a kept one is never written over
    }
    EXPECT_FALSE(keptBeforeUpdate(path).has_value());
    const Result<QStringList> wrong = (*book)->checkFile();
    OHMWRIGHT_ASSERT_OK(wrong);
    EXPECT_TRUE(wrong->isEmpty()) << wrong->join(u'\n').toStdString();
    EXPECT_TRUE(findInconsistencies((*book)->records()).empty());
    QFile json(kept(".json"));
    ASSERT_TRUE(json.open(QIODevice::ReadOnly));
    EXPECT_EQ(dump((*book)->records()), json.readAll());
    // Steps from before a later schema whose tables are others stay as history alone; a new one can
    // be taken back.
    const Result<std::vector<Step>> steps = (*book)->history();
    OHMWRIGHT_ASSERT_OK(steps);
    EXPECT_FALSE(steps->empty());
    EXPECT_EQ((*book)->undoText().has_value(),
              QLatin1String(GetParam()) >= QLatin1String("schema-0004"));
    OHMWRIGHT_ASSERT_OK((*book)->edit(QStringLiteral("Rename"), [&]() -> Outcome {
        Build build = (*book)->records().build();
        build.title += QStringLiteral(" again");
        return (*book)->update(build);
    }));
    OHMWRIGHT_ASSERT_OK((*book)->undo());
}

INSTANTIATE_TEST_SUITE_P(OfSchema, SampleBook,
                         testing::Values("schema-0001", "schema-0002", "schema-0003", "schema-0004",
                                         "schema-0005", "schema-0006"));

TEST(FaultyBook, isDumpedButNotLoadedAndTheRefusalNamesTheRecord)
{
    TestBook book;
    Part part = namedPart(QStringLiteral("Inverter"));
    part.key = QStringLiteral("inverter");
    // a part without its first move: what findInconsistencies faults
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("Add"), [&]() -> Outcome {
        const auto id = book->insert(part);
        return id ? Outcome() : fail(id.error());
    }));
    ASSERT_FALSE(findInconsistencies(book.records()).empty());
    const QByteArray rescued = dump(book.records());
    EXPECT_TRUE(rescued.contains("\"Inverter\""));
    const Result<Records> read = parse(rescued, idsBefore(book.clock.nowUtc()));
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().code, ProblemCode::NotAllowed);
    EXPECT_EQ(read.error().where, QStringLiteral("/parts/0"));
    EXPECT_TRUE(read.error().sentence.contains(QString::fromUtf8("part “inverter”")))
        << read.error().sentence.toStdString();
    EXPECT_FALSE(read.error().whatToDo.isEmpty());
}

} // namespace
} // namespace ohmwright
