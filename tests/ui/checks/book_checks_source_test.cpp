// SPDX-License-Identifier: GPL-3.0-or-later
// The Checks page over a real book: the demo's van.
#include "core/verdicts/input_address.h"
#include "tests/support/demo_book.h"
#include "tests/support/fake_outside.h"
#include "tests/support/test_book.h"
#include "ui/checks/book_checks_source.h"
#include "ui/checks/check_sheet.h"
#include "ui/checks/checks_page.h"
#include "ui/checks/turning_lines.h"
#include "ui/shell/theme.h"

#include <QLabel>
#include <QTest>

#include <algorithm>

namespace ohmwright::ui {
namespace {

class BookChecks : public testing::Test
{
protected:
    BookChecks()
    {
        const Outcome done =
            book->edit(QStringLiteral("load"), [&] { return book->replaceAll(demoRecords()); });
        EXPECT_TRUE(done.has_value());
    }

    // A check with something unknown, and that input.
    std::pair<Check, QString> unknown()
    {
        for (const Check &check : source.checks())
            if (!check.unknowns.isEmpty())
                return {check, check.unknowns.front()};
        return {};
    }

    TestBook book;
    BookChecksSource source{*book};
};

TEST_F(BookChecks, EveryCheckHasTheNameOfWhatItIsAbout)
{
    const std::vector<Check> checks = source.checks();
    ASSERT_GT(checks.size(), 20U);
    EXPECT_TRUE(std::any_of(checks.begin(), checks.end(), [&](const Check &check) {
        return source.subjectName(check) == QStringLiteral("Traction");
    }));
}

TEST_F(BookChecks, AnEditOfTheBookIsFollowed)
{
    const std::vector<Check> before = source.checks();
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("Heavier"), [&]() -> Outcome {
        Vehicle vehicle = book.records().vehicle();
        vehicle.grossMassPlate = amount("1000 kg");
        return book->update(vehicle);
    }));
    EXPECT_NE(source.checks(), before);
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(source.checks(), before);
}

TEST_F(BookChecks, WhatWouldTurnAVerdictIsToldOnItsSheetOnceItIsFound)
{
    const Theme theme;
    FakeOutside outside;
    ChecksPage page(*book, source, theme, outside);
    page.resize(1200, 800);
    page.show();
    ASSERT_TRUE(page.showCheck(QStringLiteral("circuit_ratings"), QStringLiteral("traction")));
    auto *lines = page.sheet().findChild<TurningLines *>();
    ASSERT_NE(lines, nullptr);
    const auto told = [&] {
        QStringList words;
        for (const QLabel *label :
             page.sheet().findChild<TurningLines *>()->findChildren<QLabel *>())
            words << label->text();
        return words.join(u'\n');
    };
    EXPECT_TRUE(QTest::qWaitFor([&] { return !lines->isSearching(); }, 20000));
    EXPECT_TRUE(told().contains(QStringLiteral("Relay on the switch plate, 454")))
        << told().toStdString();
    // an edit stops the search for the book as it was, and another begins
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("Rename"), [&]() -> Outcome {
        Build build = book.records().build();
        build.title = QStringLiteral("Another");
        return book->update(build);
    }));
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return !page.sheet().findChild<TurningLines *>()->isSearching(); }, 20000));
    EXPECT_TRUE(told().contains(QStringLiteral("Relay on the switch plate, 454")))
        << told().toStdString();
}

TEST_F(BookChecks, FindingOutMakesATaskAndSaysThatItIsThere)
{
    const auto [check, name] = unknown();
    ASSERT_FALSE(name.isEmpty());
    EXPECT_FALSE(source.isBeingFoundOut(check, name));
    OHMWRIGHT_ASSERT_OK(source.findOut(check, name));
    EXPECT_TRUE(source.isBeingFoundOut(check, name));
}

TEST_F(BookChecks, ATriedChangeIsKeptAsOneStepOrForgotten)
{
    const QString drag = print(FigureAddress{QStringLiteral("vehicle.drag_coefficient"), {}, {}});
    auto scratch = source.scratch();
    OHMWRIGHT_ASSERT_OK(scratch->set(drag, QStringLiteral("0.9, measured, by coasting")));
    const std::vector<ScratchChange> changes = scratch->changes();
    ASSERT_EQ(changes.size(), 1U);
    EXPECT_EQ(changes.front().field, drag);
    EXPECT_NE(changes.front().before, changes.front().after);
    // the book moves on meanwhile; what was tried stands on top
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("Rename"), [&]() -> Outcome {
        Build build = book.records().build();
        build.title = QStringLiteral("Another");
        return book->update(build);
    }));
    EXPECT_NE(scratch->checks(), source.checks());
    OHMWRIGHT_ASSERT_OK(scratch->keep());
    EXPECT_EQ(source.checks(), scratch->checks());
    EXPECT_EQ(book.records().build().title, QStringLiteral("Another"));
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(book.records().build().title, QStringLiteral("Another"));
}

TEST_F(BookChecks, ARefusedValueChangesNothing)
{
    const QString drag = print(FigureAddress{QStringLiteral("vehicle.drag_coefficient"), {}, {}});
    const std::vector<Check> before = source.checks();
    EXPECT_FALSE(source.edit(drag, QStringLiteral("fast")));
    EXPECT_EQ(source.checks(), before);
}

} // namespace
} // namespace ohmwright::ui
