// SPDX-License-Identifier: GPL-3.0-or-later
// The one door: one transaction, one step, one signal; undo and redo, also after a restart.
#include "tests/support/test_book.h"
#include "tests/support/test_folder.h"

#include <QFile>

#include <gmock/gmock.h>

namespace ohmwright {
namespace {

Seller seller(const QString &name)
{
    Seller s;
    s.key = keyFrom(name);
    s.name = name;
    return s;
}

Outcome addSeller(Book &book, const QString &name)
{
    return book.edit(QStringLiteral("Add ") + name, [&]() -> Outcome {
        const auto id = book.insert(seller(name));
        return id ? Outcome() : Outcome(fail(id.error()));
    });
}

TEST(Edit, MakesOneStepAndOneSignal)
{
    TestBook book;
    int emissions = 0;
    Change last;
    QObject::connect(&*book, &Book::changed, [&](const Change &change) {
        ++emissions;
        last = change;
    });
    OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("North Yard")));
    EXPECT_EQ(emissions, 1);
    EXPECT_TRUE(last.touches("seller"));
    EXPECT_FALSE(last.touches("part"));
    EXPECT_EQ(book->undoText(), QStringLiteral("Add North Yard"));
    EXPECT_EQ(book->history()->size(), 1U);
}

TEST(Edit, ThatChangesNothingMakesNoStep)
{
    TestBook book;
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("Nothing"), [] { return Outcome(); }));
    EXPECT_FALSE(book->undoText().has_value());
    EXPECT_TRUE(book->history()->empty());
}

TEST(Edit, ThatIsSettledStaysAsHistoryAndIsNotUndone)
{
    TestBook book;
    OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("North Yard")));
    OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("South Yard")));
    OHMWRIGHT_ASSERT_OK(book->undo());
    OHMWRIGHT_ASSERT_OK(book->settle());
    EXPECT_FALSE(book->undoText().has_value());
    EXPECT_FALSE(book->redoText().has_value());
    EXPECT_FALSE(book->undo().has_value());
    const std::vector<Step> history = *book->history();
    ASSERT_EQ(history.size(), 2U);
    EXPECT_EQ(history[0].state, StepState::Kept);
    EXPECT_EQ(history[1].state, StepState::Overtaken);
    OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("East Yard")));
    EXPECT_EQ(book->undoText(), QStringLiteral("Add East Yard"));
}

TEST(Edit, ThatFailsLeavesRowsAndMemoryAsTheyWere)
{
    TestBook book;
    OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("North Yard")));
    const Outcome failed = book->edit(QStringLiteral("Half"), [&]() -> Outcome {
        EXPECT_TRUE(book->insert(seller(QStringLiteral("South Yard"))).has_value());
        Seller first = book.records().all<Seller>().rows().front();
        first.name = QStringLiteral("Changed");
        EXPECT_TRUE(book->update(first).has_value());
        return fail(ProblemCode::NotAllowed, QStringLiteral("No."));
    });
    EXPECT_EQ(failed.error().sentence, QStringLiteral("No."));
    ASSERT_EQ(book.records().all<Seller>().size(), 1U);
    EXPECT_EQ(book.records().all<Seller>().rows().front().name, QStringLiteral("North Yard"));
    EXPECT_EQ(book->history()->size(), 1U);
}

TEST(Edit, RefusesAKeyTwice)
{
    TestBook book;
    OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("North Yard")));
    const Outcome again = addSeller(*book, QStringLiteral("North Yard"));
    ASSERT_FALSE(again.has_value());
    EXPECT_EQ(again.error().code, ProblemCode::Conflict);
    EXPECT_EQ(book.records().all<Seller>().size(), 1U);
}

TEST(Edit, RefusesToLeaveAReferenceDangling)
{
    TestBook book;
    const Id<Seller> id = book.add(seller(QStringLiteral("North Yard")));
    Donor donor;
    donor.make = QStringLiteral("Calder");
    donor.seller = id;
    book.add(donor);
    const Outcome removed = book->edit(QStringLiteral("Remove"), [&] { return book->remove(id); });
    ASSERT_FALSE(removed.has_value());
    EXPECT_EQ(removed.error().code, ProblemCode::Conflict);
    EXPECT_EQ(book.records().all<Seller>().size(), 1U);
}

TEST(Undo, TakesBackAndRedoBringsAgain)
{
    TestBook book;
    OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("A")));
    OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("B")));
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(book.records().all<Seller>().size(), 1U);
    EXPECT_EQ(book->redoText(), QStringLiteral("Add B"));
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(book.records().all<Seller>().size(), 0U);
    EXPECT_FALSE(book->undo().has_value());
    OHMWRIGHT_ASSERT_OK(book->redo());
    OHMWRIGHT_ASSERT_OK(book->redo());
    EXPECT_EQ(book.records().all<Seller>().size(), 2U);
    EXPECT_FALSE(book->redo().has_value());
}

TEST(Undo, ANewEditOvertakesWhatWasUndone)
{
    TestBook book;
    OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("A")));
    OHMWRIGHT_ASSERT_OK(book->undo());
    OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("B")));
    EXPECT_FALSE(book->redoText().has_value());
    const std::vector<Step> history = *book->history();
    ASSERT_EQ(history.size(), 2U);
    EXPECT_EQ(history[0].state, StepState::Overtaken);
    EXPECT_EQ(history[1].state, StepState::Done);
}

TEST(Undo, TakesBackAParentWithItsChildrenInOneEdit)
{
    TestBook book;
    book.add(namedPart(QStringLiteral("Motor")));
    EXPECT_EQ(book.records().all<PartMove>().size(), 1U);
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(book.records().all<Part>().size(), 0U);
    EXPECT_EQ(book.records().all<PartMove>().size(), 0U);
    OHMWRIGHT_ASSERT_OK(book->redo());
    EXPECT_EQ(book.records().all<PartMove>().size(), 1U);
}

TEST(Undo, WorksAfterARestart)
{
    TestFolder folder;
    const QString path = folder.filePath(QStringLiteral("van.ohmwright"));
    {
        TestBook book(path);
        OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("A")));
        OHMWRIGHT_ASSERT_OK(addSeller(*book, QStringLiteral("B")));
        OHMWRIGHT_ASSERT_OK(book->undo());
    }
    const FixedClock clock;
    Result<std::unique_ptr<Book>> book = Book::open(path, clock);
    OHMWRIGHT_ASSERT_OK(book);
    EXPECT_EQ((*book)->undoText(), QStringLiteral("Add A"));
    EXPECT_EQ((*book)->redoText(), QStringLiteral("Add B"));
    OHMWRIGHT_ASSERT_OK((*book)->redo());
    EXPECT_EQ((*book)->records().all<Seller>().size(), 2U);
    OHMWRIGHT_ASSERT_OK((*book)->undo());
    OHMWRIGHT_ASSERT_OK((*book)->undo());
    EXPECT_EQ((*book)->records().all<Seller>().size(), 0U);
}

TEST(Undo, OfARemovedPhotoKeepsItsBytes)
{
    TestBook book;
    const QString sha = *book->keepBlob("bytes of a photo");
    Attachment photo;
    photo.title = QStringLiteral("Plate");
    photo.sha256 = sha;
    const Id<Attachment> id = book.add(photo);
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("Remove"), [&] { return book->remove(id); }));
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(*book->blob(sha), QByteArray("bytes of a photo"));
    EXPECT_TRUE(book->checkFile()->isEmpty());
}

TEST(TwoWindows, EachSeesTheOthersEdits)
{
    TestFolder folder;
    const QString path = folder.filePath(QStringLiteral("van.ohmwright"));
    TestBook first(path);
    const FixedClock clock;
    Result<std::unique_ptr<Book>> second = Book::open(path, clock);
    OHMWRIGHT_ASSERT_OK(second);
    EXPECT_FALSE(*(*second)->refresh());
    OHMWRIGHT_ASSERT_OK(addSeller(*first, QStringLiteral("A")));
    EXPECT_TRUE(*(*second)->refresh());
    EXPECT_EQ((*second)->records().all<Seller>().size(), 1U);
    EXPECT_EQ((*second)->undoText(), QStringLiteral("Add A"));
}

TEST(TwoWindows, AnEditOnAnOldViewIsToldAndBroughtUpToDate)
{
    TestFolder folder;
    const QString path = folder.filePath(QStringLiteral("van.ohmwright"));
    TestBook first(path);
    const FixedClock clock;
    Result<std::unique_ptr<Book>> second = Book::open(path, clock);
    OHMWRIGHT_ASSERT_OK(second);
    OHMWRIGHT_ASSERT_OK(addSeller(*first, QStringLiteral("A")));
    const Outcome stale = addSeller(**second, QStringLiteral("B"));
    ASSERT_FALSE(stale.has_value());
    EXPECT_EQ(stale.error().code, ProblemCode::Conflict);
    EXPECT_EQ((*second)->records().all<Seller>().size(), 1U);
    OHMWRIGHT_ASSERT_OK(addSeller(**second, QStringLiteral("B")));
    EXPECT_TRUE(*first->refresh());
    EXPECT_EQ(first.records().all<Seller>().size(), 2U);
}

TEST(TwoWindows, UndoOnAnOldViewIsToldToo)
{
    TestFolder folder;
    const QString path = folder.filePath(QStringLiteral("van.ohmwright"));
    TestBook first(path);
    OHMWRIGHT_ASSERT_OK(addSeller(*first, QStringLiteral("A")));
    const FixedClock clock;
    Result<std::unique_ptr<Book>> second = Book::open(path, clock);
    OHMWRIGHT_ASSERT_OK(second);
    OHMWRIGHT_ASSERT_OK(addSeller(**second, QStringLiteral("B")));
    const Outcome stale = first->undo();
    ASSERT_FALSE(stale.has_value());
    EXPECT_EQ(stale.error().code, ProblemCode::Conflict);
    EXPECT_EQ(first.records().all<Seller>().size(), 2U);
}

} // namespace
} // namespace ohmwright
