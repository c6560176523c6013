// SPDX-License-Identifier: GPL-3.0-or-later
// The Nth write fails, for N = 1, 2, 3 … until one run gets through. After each the book is whole,
// and holds either all of the edit or none of it.
#include "tests/fault/failing_vfs.h"
#include "tests/support/test_book.h"
#include "tests/support/test_folder.h"

namespace ohmwright {
namespace {

class EditFault : public testing::TestWithParam<FailAs>
{
protected:
    // One edit with several rows and a blob.
    static Outcome bigEdit(Book &book)
    {
        return book.edit(QStringLiteral("Log a part"), [&]() -> Outcome {
            if (const auto kept = book.keepBlob(QByteArray(20000, 'p')); !kept)
                return fail(kept.error());
            for (int i = 0; i < 30; ++i) {
                Part part = namedPart(QStringLiteral("Part %1").arg(i));
                part.key = freshKey<Part>(book.records(), part.name);
                const auto id = book.insert(part);
                if (!id)
                    return fail(id.error());
                part.id = *id;
                if (Outcome born = recordBirth(book, part, QDate(2026, 1, 1)); !born)
                    return born;
            }
            return {};
        });
    }
};

// `act` is what may fail; `before` and `after` are the number of parts it goes from and to.
template <class Act>
void failEveryWrite(FailAs how, int before, int after, const Act &act, bool preload)
{
    constexpr int kEnough = 2000;
    for (int n = 1; n < kEnough; ++n) {
        TestFolder folder;
        const QString path = folder.filePath(QStringLiteral("van.ohmwright"));
        FixedClock clock;
        bool failed = false;
        bool succeeded = false;
        {
            FailingVfs disk;
            {
                auto book = Book::create(path, QStringLiteral("Van"), euro(), clock);
                ASSERT_TRUE(book.has_value());
                if (preload) {
                    ASSERT_TRUE(act(**book, true).has_value());
                }
                disk.failAt(n, how);
                succeeded = act(**book, false).has_value();
                failed = disk.hasFailed();
                if (!succeeded) {
                    // what is in memory is what is on the disk, as far as the disk still answers
                    disk.heal();
                    ASSERT_TRUE((*book)->refresh().has_value());
                    ASSERT_EQ(static_cast<int>((*book)->records().template all<Part>().size()),
                              before)
                        << "write " << n;
                }
            }
        }
        const auto again = Book::open(path, clock);
        ASSERT_TRUE(again.has_value())
            << "write " << n << ": " << again.error().sentence.toStdString();
        const int parts = static_cast<int>((*again)->records().all<Part>().size());
        EXPECT_TRUE(parts == before || parts == after) << "write " << n << " left " << parts;
        if (succeeded) {
            EXPECT_EQ(parts, after) << "write " << n << ": told as done, but is not there";
        }
        EXPECT_TRUE((*again)->checkFile()->isEmpty()) << "write " << n;
        if (!failed)
            return;
    }
    FAIL() << "no run got through";
}

TEST_P(EditFault, LeavesTheBookBeforeOrAfter)
{
    failEveryWrite(
        GetParam(), 0, 30, [](Book &book, bool) { return bigEdit(book); }, false);
}

TEST_P(EditFault, OfUndoLeavesTheBookBeforeOrAfter)
{
    failEveryWrite(
        GetParam(), 30, 0,
        [](Book &book, bool first) { return first ? bigEdit(book) : book.undo(); }, true);
}

INSTANTIATE_TEST_SUITE_P(Disk, EditFault, testing::Values(FailAs::DiskFull, FailAs::Unplugged),
                         [](const auto &how) {
                             return how.param == FailAs::DiskFull ? "Full" : "Unplugged";
                         });

TEST(DiskFull, IsToldInAPlainSentence)
{
    TestFolder folder;
    FixedClock clock;
    FailingVfs disk;
    auto book = Book::create(folder.filePath(QStringLiteral("van.ohmwright")),
                             QStringLiteral("Van"), euro(), clock);
    ASSERT_TRUE(book.has_value());
    disk.failAt(1, FailAs::DiskFull);
    const Outcome edit = (*book)->edit(QStringLiteral("Add"), [&]() -> Outcome {
        Seller seller;
        seller.key = seller.name = QStringLiteral("yard");
        const auto id = (*book)->insert(seller);
        return id ? Outcome() : Outcome(fail(id.error()));
    });
    ASSERT_FALSE(edit.has_value());
    EXPECT_EQ(edit.error().code, ProblemCode::DiskFull);
    disk.heal();
    EXPECT_TRUE((*book)->records().all<Seller>().rows().empty());
}

} // namespace
} // namespace ohmwright
