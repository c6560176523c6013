// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/interchange.h"
#include "tests/support/fixed_clock.h"
#include "tests/support/generated_book.h"
#include "tests/support/shell_check.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <memory>

namespace ohmwright {
namespace {

std::string told(const Problem &problem)
{
    return problem.sentence.toStdString() + " at " + problem.where.toStdString();
}

QByteArray bytesOf(const QString &path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

void write(const QString &path, const QByteArray &bytes)
{
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly)) << path.toStdString();
    ASSERT_EQ(file.write(bytes), bytes.size());
}

QString shaOf(const QByteArray &bytes)
{
    return QString::fromLatin1(QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex());
}

class InterchangeFile : public testing::Test
{
protected:
    [[nodiscard]] QString path(const QString &name) const { return m_folder.filePath(name); }

    std::unique_ptr<Book> newBook(const QString &name)
    {
        auto book = Book::create(path(name), QStringLiteral("Empty"), Currency(), m_clock);
        EXPECT_TRUE(book) << told(book.error());
        return std::move(*book);
    }

    std::unique_ptr<Book> filledBook(const QString &name, const GeneratedBook &generated)
    {
        std::unique_ptr<Book> book = newBook(name);
        const Outcome done =
            book->edit(QStringLiteral("Fill"), [&] { return fill(*book, generated); });
        EXPECT_TRUE(done) << told(done.error());
        return book;
    }

    // A book whose one attachment has these bytes.
    std::unique_ptr<Book> bookWithAttachment(const QString &name, const QByteArray &bytes)
    {
        std::unique_ptr<Book> book = newBook(name);
        const Outcome done = book->edit(QStringLiteral("Add"), [&]() -> Outcome {
            const Result<QString> sha = book->keepBlob(bytes);
            if (!sha)
                return fail(sha.error());
            Attachment attachment;
            attachment.key = QStringLiteral("photo");
            attachment.sha256 = *sha;
            const auto id = book->insert(attachment);
            return id ? Outcome() : Outcome(fail(id.error()));
        });
        EXPECT_TRUE(done) << told(done.error());
        return book;
    }

    void expectSame(const Book &book, const GeneratedBook &generated)
    {
        const Records before = withPlainIds(generated.records);
        const Records after = withPlainIds(book.records());
        before.forEachTable([&]<class R>(const Table<R> &table) {
            EXPECT_TRUE(table == after.all<R>()) << RecordTraits<R>::table;
        });
        for (const auto &[sha, bytes] : generated.blobs) {
            const Result<QByteArray> kept = book.blob(sha);
            EXPECT_TRUE(kept && *kept == bytes) << sha.toStdString();
        }
    }

    void expectUntouched(const Book &book, const Records &before)
    {
        before.forEachTable([&]<class R>(const Table<R> &table) {
            EXPECT_TRUE(table == book.records().all<R>()) << RecordTraits<R>::table;
        });
        EXPECT_TRUE(book.history()->empty());
    }

    void TearDown() override { kShellCheck.takeAll(m_folder.path()); }

    FixedClock m_clock;
    QTemporaryDir m_folder;
};

TEST_F(InterchangeFile, bringsTheSameBookToAnotherBook)
{
    for (std::uint32_t seed = 0; seed < 5; ++seed) {
        const QString n = QString::number(seed);
        const GeneratedBook generated = generateBook(seed);
        const auto from = filledBook(u"from" + n, generated);
        const Outcome dumped = dumpFile(*from, path(u"book" + n + u".json"));
        ASSERT_TRUE(dumped) << told(dumped.error());
        const auto to = newBook(u"to" + n);
        const Outcome loaded = loadFile(*to, path(u"book" + n + u".json"));
        ASSERT_TRUE(loaded) << told(loaded.error());
        expectSame(*to, generated);
        const Outcome again = dumpFile(*to, path(u"again" + n + u".json"));
        ASSERT_TRUE(again) << told(again.error());
        EXPECT_TRUE(bytesOf(path(u"again" + n + u".json")) ==
                    bytesOf(path(u"book" + n + u".json")));
        EXPECT_TRUE(QDir(path(u"again" + n + u".attachments")).entryList(QDir::Files) ==
                    QDir(path(u"book" + n + u".attachments")).entryList(QDir::Files));
    }
}

TEST_F(InterchangeFile, bringsABookThatIsTheSameWhenOpenedAgain)
{
    const GeneratedBook generated = generateBook(3, BookSize::small(), Texts::Plain);
    {
        const auto from = filledBook(QStringLiteral("from"), generated);
        ASSERT_TRUE(dumpFile(*from, path(QStringLiteral("van.json"))));
        const auto to = newBook(QStringLiteral("to"));
        ASSERT_TRUE(loadFile(*to, path(QStringLiteral("van.json"))));
    }
    const auto to = Book::open(path(QStringLiteral("to")), m_clock);
    ASSERT_TRUE(to) << told(to.error());
    expectSame(**to, generated);
    EXPECT_TRUE((*to)->checkFile().value_or(QStringList{QStringLiteral("?")}).isEmpty());
}

TEST_F(InterchangeFile, bringsEveryTextThroughAReopenedBook)
{
    const GeneratedBook generated = generateBook(3);
    {
        const auto book = filledBook(QStringLiteral("book"), generated);
    }
    const auto book = Book::open(path(QStringLiteral("book")), m_clock);
    ASSERT_TRUE(book) << told(book.error());
    expectSame(**book, generated);
}

TEST_F(InterchangeFile, isLoadedAsOneStepThatCanBeUndone)
{
    const auto from = filledBook(QStringLiteral("from"), generateBook(7));
    ASSERT_TRUE(dumpFile(*from, path(QStringLiteral("van.json"))));
    const auto to =
        filledBook(QStringLiteral("to"), generateBook(8, BookSize::small(), Texts::Plain));
    const Records before = to->records();
    ASSERT_TRUE(loadFile(*to, path(QStringLiteral("van.json"))));
    EXPECT_EQ(to->undoText(), QStringLiteral("Load van.json"));
    const Outcome undone = to->undo();
    ASSERT_TRUE(undone) << told(undone.error());
    before.forEachTable([&]<class R>(const Table<R> &table) {
        EXPECT_TRUE(table == to->records().all<R>()) << RecordTraits<R>::table;
    });
}

TEST_F(InterchangeFile, leavesRoomForTheBooksOwnIds)
{
    const auto from = filledBook(QStringLiteral("from"), generateBook(7, BookSize::usual()));
    ASSERT_TRUE(dumpFile(*from, path(QStringLiteral("van.json"))));
    const auto to = newBook(QStringLiteral("to"));
    ASSERT_TRUE(loadFile(*to, path(QStringLiteral("van.json"))));
    // the clock stands still, so only the range of the ids keeps these apart
    const Outcome added = to->edit(QStringLiteral("Add"), [&]() -> Outcome {
        for (int i = 0; i < 3000; ++i) {
            Seller seller;
            seller.key = seller.name = QStringLiteral("another%1").arg(i);
            if (const auto id = to->insert(seller); !id)
                return fail(id.error());
        }
        return {};
    });
    EXPECT_TRUE(added) << told(added.error());
}

TEST_F(InterchangeFile, namesItsFolderAfterTheDocument)
{
    EXPECT_EQ(attachmentFolder(QStringLiteral("/a/van.json")), QLatin1String("/a/van.attachments"));
    EXPECT_EQ(attachmentFolder(QStringLiteral("van.JSON")), QLatin1String("van.attachments"));
    EXPECT_EQ(attachmentFolder(QStringLiteral("van")), QLatin1String("van.attachments"));
}

TEST_F(InterchangeFile, hasNoFolderWithoutAttachments)
{
    const auto book = newBook(QStringLiteral("book"));
    ASSERT_TRUE(dumpFile(*book, path(QStringLiteral("van.json"))));
    EXPECT_FALSE(QFile::exists(path(QStringLiteral("van.attachments"))));
}

TEST_F(InterchangeFile, isWrittenOverAnEarlierDump)
{
    const auto book = bookWithAttachment(QStringLiteral("book"), "bytes");
    ASSERT_TRUE(dumpFile(*book, path(QStringLiteral("van.json"))));
    const Outcome again = dumpFile(*book, path(QStringLiteral("van.json")));
    EXPECT_TRUE(again) << told(again.error());
}

TEST_F(InterchangeFile, isNotWrittenOverAnotherKindOfFile)
{
    const auto book = bookWithAttachment(QStringLiteral("book"), "bytes");
    write(path(QStringLiteral("van.json")), "{\"mine\": true}");
    const Outcome done = dumpFile(*book, path(QStringLiteral("van.json")));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().code, ProblemCode::NotAllowed);
    EXPECT_EQ(bytesOf(path(QStringLiteral("van.json"))), "{\"mine\": true}");
    EXPECT_FALSE(QFile::exists(path(QStringLiteral("van.attachments"))));
}

TEST_F(InterchangeFile, isNotWrittenOverAnotherAttachmentOfThatName)
{
    const auto book = bookWithAttachment(QStringLiteral("book"), "bytes");
    const QString file = path(u"van.attachments/" + shaOf("bytes"));
    ASSERT_TRUE(QDir().mkdir(path(QStringLiteral("van.attachments"))));
    write(file, "others");
    const Outcome done = dumpFile(*book, path(QStringLiteral("van.json")));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().code, ProblemCode::NotAllowed);
    EXPECT_EQ(bytesOf(file), "others");
    EXPECT_FALSE(QFile::exists(path(QStringLiteral("van.json"))));
}

TEST_F(InterchangeFile, isNotWrittenWhereAFileIsInTheFoldersPlace)
{
    const auto book = bookWithAttachment(QStringLiteral("book"), "bytes");
    write(path(QStringLiteral("van.attachments")), "a file");
    const Outcome done = dumpFile(*book, path(QStringLiteral("van.json")));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().code, ProblemCode::NotAllowed);
    EXPECT_FALSE(QFile::exists(path(QStringLiteral("van.json"))));
}

TEST_F(InterchangeFile, intoAMissingFolderIsTold)
{
    const auto book = bookWithAttachment(QStringLiteral("book"), "bytes");
    const Outcome done = dumpFile(*book, path(QStringLiteral("nowhere/van.json")));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().code, ProblemCode::ReadOnly);
}

TEST_F(InterchangeFile, leavesNothingBehindWhenAnAttachmentCannotBeRead)
{
    const auto book = bookWithAttachment(QStringLiteral("book"), "bytes");
    const Outcome added = book->edit(QStringLiteral("Add"), [&]() -> Outcome {
        Attachment attachment;
        attachment.key = QStringLiteral("without-bytes");
        attachment.sha256 = QString(64, u'f'); // after the other one
        const auto id = book->insert(attachment);
        return id ? Outcome() : Outcome(fail(id.error()));
    });
    ASSERT_TRUE(added) << told(added.error());
    const Outcome done = dumpFile(*book, path(QStringLiteral("van.json")));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().code, ProblemCode::NotFound);
    EXPECT_FALSE(QFile::exists(path(QStringLiteral("van.json"))));
    EXPECT_FALSE(QFile::exists(path(QStringLiteral("van.attachments"))));
}

TEST_F(InterchangeFile, thatIsMissingIsTold)
{
    const auto book = newBook(QStringLiteral("book"));
    const Records before = book->records();
    const Outcome done = loadFile(*book, path(QStringLiteral("nowhere.json")));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().code, ProblemCode::NotFound);
    const Outcome folder = loadFile(*book, m_folder.path());
    ASSERT_FALSE(folder);
    EXPECT_EQ(folder.error().code, ProblemCode::Io);
    expectUntouched(*book, before);
}

TEST_F(InterchangeFile, thatIsWrongLeavesTheBookAsItWas)
{
    const auto book = newBook(QStringLiteral("book"));
    const Records before = book->records();
    write(path(QStringLiteral("van.json")), "{\"format\": \"ohmwright\", \"version\": 2}");
    const Outcome done = loadFile(*book, path(QStringLiteral("van.json")));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().code, ProblemCode::NewerBook);
    EXPECT_EQ(done.error().where, QLatin1String("/version"));
    expectUntouched(*book, before);
}

TEST_F(InterchangeFile, withoutItsAttachmentLeavesTheBookAsItWas)
{
    const auto from = bookWithAttachment(QStringLiteral("from"), "bytes");
    ASSERT_TRUE(dumpFile(*from, path(QStringLiteral("van.json"))));
    ASSERT_TRUE(QFile::remove(path(u"van.attachments/" + shaOf("bytes"))));
    const auto to = newBook(QStringLiteral("to"));
    const Records before = to->records();
    const Outcome done = loadFile(*to, path(QStringLiteral("van.json")));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().code, ProblemCode::NotFound);
    EXPECT_EQ(done.error().where, QLatin1String("/attachments/0/sha256"));
    expectUntouched(*to, before);
}

TEST_F(InterchangeFile, withAChangedAttachmentLeavesTheBookAsItWas)
{
    const auto from = bookWithAttachment(QStringLiteral("from"), "bytes");
    ASSERT_TRUE(dumpFile(*from, path(QStringLiteral("van.json"))));
    write(path(u"van.attachments/" + shaOf("bytes")), "other bytes");
    const auto to = newBook(QStringLiteral("to"));
    const Records before = to->records();
    const Outcome done = loadFile(*to, path(QStringLiteral("van.json")));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().code, ProblemCode::Damaged);
    EXPECT_EQ(done.error().where, QLatin1String("/attachments/0/sha256"));
    expectUntouched(*to, before);
    EXPECT_FALSE(to->blob(shaOf("bytes")));
    EXPECT_FALSE(to->blob(shaOf("other bytes")));
}

} // namespace
} // namespace ohmwright
