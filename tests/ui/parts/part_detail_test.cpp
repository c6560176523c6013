// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/figures.h"
#include "tests/ui/parts/page_fixture.h"

#include <QAbstractButton>
#include <QLabel>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class ThePartDetail : public APartsPage
{
protected:
    void show(Id<Part> id)
    {
        page->list().choose(id);
        ASSERT_EQ(page->detail().part(), id);
    }

    const Part &now(Id<Part> id) { return *book.records().find(id); }

    void fill(const char *name, const QString &text)
    {
        auto *line = control<QLineEdit>(QString::fromLatin1(name), &page->detail());
        ASSERT_NE(line, nullptr);
        line->setFocus();
        line->selectAll();
        type(text);
    }

    // All words shown, one label a line.
    QString words()
    {
        QApplication::processEvents();
        QStringList found;
        for (const QLabel *label : page->detail().findChildren<QLabel *>())
            if (label->isVisible())
                found << label->text();
        return found.join('\n');
    }

    void rate(Id<Part> id, const char *value, Evidence evidence)
    {
        Rating rating;
        rating.part = id;
        rating.current = CurrentKind::Dc;
        rating.value = amount(value);
        rating.evidence = evidence;
        book.add(rating);
    }
};

} // namespace

TEST_F(ThePartDetail, movesThePartByKeyWithANoteAndShowsTheUndo)
{
    const auto id = part("Inverter");
    open();
    show(id);
    fill("Note to the move", "isolation measured");
    auto *tested = control<QPushButton>("Inverter becomes tested");
    tested->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(now(id).state, PartState::Tested);
    EXPECT_TRUE(words().contains("15 Jun 2026  tested: isolation measured"));
    EXPECT_EQ(book->undoText().value_or(QString()).isEmpty(), false);
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_FALSE(words().contains("isolation measured"));
    EXPECT_NE(control<QPushButton>("Inverter becomes tested"), nullptr);
}

TEST_F(ThePartDetail, offersOnlyTheMovesThatMayFollow)
{
    const auto id = part("Inverter");
    open();
    show(id);
    for (const QPushButton *button : page->detail().findChildren<QPushButton *>())
        EXPECT_NE(button->accessibleName(), "Inverter becomes fitted") << "it is not tested yet";
}

TEST_F(ThePartDetail, tellsARefusedMoveAtItsDay)
{
    const auto id = part("Inverter");
    open();
    show(id);
    fill("Day of the move", "2020-01-01");
    control<QPushButton>("Inverter becomes tested")->click();
    EXPECT_EQ(now(id).state, PartState::InHand);
    EXPECT_TRUE(spoken(control<QLineEdit>("Day of the move"), QAccessible::Description)
                    .contains("earlier"));
}

TEST_F(ThePartDetail, takesARatingAndSaysWhyItIsInForce)
{
    const auto id = part("Inverter");
    open();
    show(id);
    fill("Value", "420 V DC");
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().of<Rating>(id).size(), 1U);
    const Rating &rating = book.records().of<Rating>(id)[0];
    EXPECT_EQ(rating.value, amount("420 V"));
    EXPECT_EQ(rating.current, CurrentKind::Dc);
    EXPECT_EQ(rating.evidence, Evidence::Nameplate);
    EXPECT_TRUE(words().contains("nothing measured or heard of raises a limit"));
    fill("Value", "3 kg");
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().of<Rating>(id).size(), 1U);
    EXPECT_FALSE(
        spoken(control<QLineEdit>("Value", &page->detail()), QAccessible::Description).isEmpty());
}

TEST_F(ThePartDetail, settlesClashingRatingsWithAReason)
{
    const auto id = part("Inverter");
    rate(id, "400 V", Evidence::Nameplate);
    rate(id, "450 V", Evidence::Datasheet);
    open();
    show(id);
    EXPECT_TRUE(words().contains("clash"));
    const QString thin = showAmount(amount("450 V"), NumberStyle::pointDecimal());
    control<QPushButton>(QString("Settle on DC voltage limit " + thin))->click();
    EXPECT_EQ(spoken(QApplication::focusWidget()), "Why this one stands");
    press(Qt::Key_Return);
    EXPECT_FALSE(spoken(QApplication::focusWidget(), QAccessible::Description).isEmpty());
    type("plate is of the older series");
    press(Qt::Key_Return);
    const Figure figure =
        figureFor(book.records(), now(id), figureOf(book.records().of<Rating>(id)[0]));
    EXPECT_EQ(figure.value(), amount("450 V"));
    EXPECT_FALSE(figure.clash);
    EXPECT_TRUE(words().contains("Settled: plate is of the older series."));
}

TEST_F(ThePartDetail, makesAFindOutTaskOfAnOpenQuestion)
{
    const auto id = part("Inverter");
    connectPart(id, circuit("Traction", "403 V"));
    open();
    show(id);
    QSignalSpy wanted(page.get(), &PartsPage::taskWanted);
    control<QPushButton>("Make a task to find out: DC voltage limit")->click();
    ASSERT_EQ(book.records().all<Task>().size(), 1U);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted.front().front().toString(), book.records().all<Task>().rows()[0].key);
    QTest::qWait(1);
    auto *shows = control<QPushButton>("Show the task “Find out: DC voltage limit of Inverter”");
    ASSERT_NE(shows, nullptr) << "it is being found out";
    shows->click();
    EXPECT_EQ(wanted.count(), 2);
    EXPECT_EQ(book.records().all<Task>().size(), 1U);
}

TEST_F(ThePartDetail, editsItsLinesWhereTheyStand)
{
    const auto id = part("Inverter");
    BudgetLine line;
    line.key = "drive";
    line.name = "Drive";
    line.allowance = euros(100000);
    const auto drive = book.add(line);
    open();
    show(id);
    fill("Serial number", "INV-77");
    press(Qt::Key_Return);
    EXPECT_EQ(now(id).serial, "INV-77");
    fill("Warranty until", "+90d");
    press(Qt::Key_Return);
    EXPECT_EQ(now(id).warrantyUntil, book.clock.today().addDays(90));
    EXPECT_EQ(control<QLineEdit>("Warranty until")->text(), "2026-09-13");
    fill("Warranty until", "whenever");
    press(Qt::Key_Return);
    EXPECT_EQ(now(id).warrantyUntil, book.clock.today().addDays(90));
    EXPECT_FALSE(spoken(control<QLineEdit>("Warranty until"), QAccessible::Description).isEmpty());
    fill("Estimate", "1250.50");
    press(Qt::Key_Return);
    EXPECT_EQ(now(id).estimate, euros(125050));
    fill("Budget line", "Drive");
    press(Qt::Key_Return);
    EXPECT_EQ(now(id).line, drive);
    fill("Budget line", "Nonesuch");
    press(Qt::Key_Tab);
    EXPECT_EQ(now(id).line, drive);
    fill("Donor vehicle", "Sample Hatch 2018");
    press(Qt::Key_Tab);
    ASSERT_EQ(book.records().all<Donor>().size(), 1U);
    EXPECT_EQ(now(id).donor, book.records().all<Donor>().rows()[0].id);
}

TEST_F(ThePartDetail, refusesAnAssemblyInsideItself)
{
    const auto outer = part("Inverter");
    Part inner = namedPart("Gate board");
    inner.key = "gate-board";
    inner.partOf = outer;
    book.add(inner);
    open();
    show(outer);
    fill("Part of", "Gate board");
    press(Qt::Key_Tab);
    EXPECT_FALSE(now(outer).partOf);
    EXPECT_TRUE(spoken(control<QLineEdit>("Part of"), QAccessible::Description)
                    .contains("inside this part"));
}

TEST_F(ThePartDetail, recordsOpeningOnlyWithAReasonAndAfterShowingTheCautions)
{
    const auto id = part("Inverter");
    open();
    show(id);
    control<QAbstractButton>("Record that it was opened")->click();
    EXPECT_TRUE(words().contains("High voltage, also after switching off"));
    EXPECT_EQ(spoken(QApplication::focusWidget()), "Why it was opened");
    press(Qt::Key_Return);
    EXPECT_FALSE(now(id).openedOn);
    type("to read the gate board's plate");
    press(Qt::Key_Return);
    EXPECT_EQ(now(id).openedOn, book.clock.today());
    EXPECT_EQ(now(id).openedBecause, "to read the gate board's plate");
}

TEST_F(ThePartDetail, countsConsumablesUpAndDown)
{
    const auto id = part("Lugs", PartState::InHand, PartKind::Consumable);
    open();
    show(id);
    fill("How much", "20");
    control<QPushButton>("Add to stock")->click();
    EXPECT_EQ(now(id).stock, amount("20"));
    fill("How much", "6");
    control<QPushButton>("Take from stock")->click();
    EXPECT_EQ(now(id).stock, amount("14"));
    fill("How much", "15");
    control<QPushButton>("Take from stock")->click();
    EXPECT_EQ(now(id).stock, amount("14"));
    fill("Keep at least", "15");
    press(Qt::Key_Return);
    EXPECT_TRUE(words().contains("below the least kept"));
}

TEST_F(ThePartDetail, showsWhatItCostLandedInBothCurrencies)
{
    LogEntry entry;
    entry.name = "Motor";
    entry.on = book.clock.today();
    LogPrice price;
    Seller seller;
    seller.name = "Yard";
    price.seller = seller;
    const Currency pound = *Currency::fromCode(u"GBP");
    price.unitPrice = Money(10000, pound);
    price.freight = Money(1000, pound);
    price.duty = price.tax = price.coreCharge = Money::zero(pound);
    price.rate = *Rate::parse(u"1.2", NumberStyle::pointDecimal());
    entry.price = price;
    const auto id = logPart(*book, entry);
    OHMWRIGHT_ASSERT_OK(id);
    open();
    show(*id);
    const QString text = words();
    EXPECT_TRUE(text.contains(showMoney(Money(11000, pound), NumberStyle::pointDecimal())));
    EXPECT_TRUE(text.contains(showMoney(euros(13200), NumberStyle::pointDecimal())));
    EXPECT_TRUE(text.contains("at 1.2 EUR for one GBP"));
}

// Its rows are made anew with each part; a widget made later would come last.
TEST_F(ThePartDetail, isGoneThroughByTabAsItIsRead)
{
    const auto id = part("Inverter");
    connectPart(id, circuit("Traction", "403 V"));
    rate(id, "400 V", Evidence::Nameplate);
    part("Motor");
    open();
    show(id);
    QApplication::processEvents();
    page->list().table().setFocus();
    std::vector<int> tops;
    QStringList said;
    for (int i = 0; i < 12; ++i) {
        press(Qt::Key_Tab);
        QWidget *now = QApplication::focusWidget();
        ASSERT_TRUE(page->detail().isAncestorOf(now)) << spoken(now).toStdString();
        tops.push_back(now->mapTo(page->detail().widget(), QPoint()).y());
        said << spoken(now);
    }
    EXPECT_EQ(said.front(), u"Compare Inverter with…"_qs) << said.join('\n').toStdString();
    EXPECT_EQ(said[1], "History of Inverter") << said.join('\n').toStdString();
    EXPECT_EQ(said[2], "Inverter becomes tested") << said.join('\n').toStdString();
    EXPECT_TRUE(said.contains(u"Change DC voltage limit 400\u00a0V"_qs))
        << said.join('\n').toStdString();
    for (std::size_t i = 1; i < tops.size(); ++i)
        EXPECT_GE(tops[i], tops[i - 1] - 12) << said[static_cast<int>(i)].toStdString();
    press(Qt::Key_Tab, Qt::ShiftModifier);
    EXPECT_EQ(spoken(QApplication::focusWidget()), said[said.size() - 2]);
}

TEST_F(ThePartDetail, opensItsPapersAndItsLinks)
{
    const auto id = part("Inverter");
    Attachment link;
    link.key = "page";
    link.part = id;
    link.kind = AttachmentKind::Link;
    link.title = "Teardown of the 0448";
    link.url = "https://example.org/0448";
    book.add(link);
    link.key = "trap";
    link.title = "Not a page";
    link.url = "file:///bin/sh";
    book.add(link);
    open();
    show(id);
    auto *button = control<QPushButton>("Open Teardown of the 0448");
    ASSERT_NE(button, nullptr);
    button->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(outside.opened, QStringList{"https://example.org/0448"});
    const QSignalSpy said(page.get(), &PartsPage::said);
    button = control<QPushButton>("Open Not a page");
    ASSERT_NE(button, nullptr);
    button->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(outside.opened.size(), 1) << "a book from elsewhere may not start programs";
    EXPECT_EQ(said.size(), 1);
}

TEST_F(ThePartDetail, tellsTheNameOfEverythingThatCanBeFocused)
{
    const auto id = part("Inverter");
    connectPart(id, circuit("Traction", "403 V"));
    rate(id, "400 V", Evidence::Nameplate);
    open();
    show(id);
    const auto nameless = [&](QWidget &root) {
        QStringList found;
        for (QWidget *widget : root.findChildren<QWidget *>())
            if (widget->isVisible() && (widget->focusPolicy() & Qt::TabFocus) &&
                !widget->focusProxy() && spoken(widget).isEmpty())
                found << QString::fromLatin1(widget->metaObject()->className());
        return found.join(' ').toStdString();
    };
    EXPECT_EQ(nameless(*page), "");
    page->openLogSheet();
    EXPECT_EQ(nameless(*page), "");
}
