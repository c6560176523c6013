// SPDX-License-Identifier: GPL-3.0-or-later
// Where the cards stand in the window: the switches of a page, the sheet's list, the find line's
// hits, the budget's entries.
#include "tests/support/demo_book.h"
#include "tests/support/fake_outside.h"
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/budget/budget_page.h"
#include "ui/cards/card_form.h"
#include "ui/cards/card_labels.h"
#include "ui/cards/card_stack.h"
#include "ui/cards/record_card.h"
#include "ui/cards/record_pages.h"
#include "ui/cards/records_panel.h"
#include "ui/parts/parts_page.h"
#include "ui/sheet/sheet_page.h"
#include "ui/shell/book_find.h"
#include "ui/widgets/entry_form.h"

#include <QFile>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTableView>

namespace ohmwright::ui {
namespace {

using driving::press;
using driving::spoken;
using driving::type;

QString u(const char *text)
{
    return QString::fromUtf8(text);
}

template <class W>
W *named(QWidget &in, const char *name)
{
    QApplication::processEvents();
    for (W *widget : in.findChildren<W *>())
        if (widget->isVisible() && spoken(widget) == u(name))
            return widget;
    ADD_FAILURE() << "nothing called " << name;
    return nullptr;
}

class CardPlaces : public testing::Test
{
protected:
    driving::Themed themed;
    TestBook book;
    FakeOutside outside;
};

TEST_F(CardPlaces, ATypesRatingsAreAddedAndChangedOnItsCard)
{
    PartType row;
    row.name = u("Contactor");
    const Id<PartType> id = book.add(row);
    PartsPage page(*book, themed.theme, outside);
    page.resize(1180, 760);
    driving::showActive(page);
    ASSERT_TRUE(page.showRecord(u("part_type"), book.records().find(id)->key));
    auto *value = named<QLineEdit>(page, "Value");
    ASSERT_NE(value, nullptr);
    value->setFocus();
    type(u("450 V DC"));
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().of<Rating>(id).size(), 1U);
    EXPECT_EQ(book.records().of<Rating>(id).front().on, book.clock.today());
    named<QPushButton>(page, "Change DC voltage limit 450\u00a0V")->click();
    auto *on = named<QLineEdit>(page, "Read or measured on");
    on->setFocus();
    QTest::keyClick(on, Qt::Key_A, Qt::ControlModifier);
    type(u("-3d"));
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().of<Rating>(id).size(), 1U);
    EXPECT_EQ(book.records().of<Rating>(id).front().on, book.clock.today().addDays(-3));
}

// A rating without a date is not made one of today by mending its source.
TEST_F(CardPlaces, ChangingARatingDoesNotDateIt)
{
    Part row;
    row.name = u("Contactor");
    row.state = PartState::InHand;
    const Id<Part> id = book.add(row);
    Rating undated;
    undated.part = id;
    undated.current = CurrentKind::Dc;
    undated.value = amount("450 V");
    const Id<Rating> rating = book.add(undated);
    PartsPage page(*book, themed.theme, outside);
    page.resize(1180, 760);
    driving::showActive(page);
    page.showPart(book.records().find(id)->key);
    named<QPushButton>(page, "Change DC voltage limit 450\u00a0V")->click();
    auto *source = named<QLineEdit>(page, "Source");
    source->setFocus();
    type(u("page 4"));
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().find(rating)->source, u("page 4"));
    EXPECT_FALSE(book.records().find(rating)->on);
}

TEST_F(CardPlaces, TheSheetsListOpensTheVehicleByKeysAndEscapeGoesBack)
{
    SheetPage page(*book, themed.theme, outside);
    page.resize(1100, 740);
    driving::showActive(page);
    page.made().setFocus();
    page.made().setCurrentRow(0);
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    type(u("Tarrow"));
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().vehicle().make, u("Tarrow"));
    EXPECT_EQ(book->undoText(), u("Change the vehicle"));
    press(Qt::Key_Escape);
    EXPECT_TRUE(page.made().hasFocus());
    press(Qt::Key_Escape);
    EXPECT_FALSE(page.cards().isVisible());
}

TEST_F(CardPlaces, APaperIsOpenedFromTheSheetsListByKeys)
{
    Attachment paper;
    paper.key = u("bill-of-sale");
    paper.title = u("Bill of sale");
    paper.kind = AttachmentKind::Document;
    paper.mediaType = u("application/pdf");
    paper.fileName = u("bill.pdf");
    const QByteArray bytes("%PDF-1.4 an invented bill");
    const Outcome kept = book->edit(u("Add"), [&]() -> Outcome {
        const Result<QString> sha = book->keepBlob(bytes);
        if (!sha)
            return fail(sha.error());
        paper.sha256 = *sha;
        const auto id = book->insert(paper);
        return id ? Outcome() : Outcome(fail(id.error()));
    });
    OHMWRIGHT_ASSERT_OK(kept);
    SheetPage page(*book, themed.theme, outside);
    page.resize(1100, 740);
    driving::showActive(page);
    ASSERT_TRUE(page.showRecord(u("attachment"), paper.key));
    auto *open = named<QPushButton>(page, "Open Bill of sale");
    ASSERT_NE(open, nullptr);
    open->setFocus();
    press(Qt::Key_Space);
    ASSERT_EQ(outside.opened.size(), 1);
    EXPECT_TRUE(outside.opened.front().endsWith(u(".pdf")));
    QFile file(outside.opened.front());
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), bytes);
    EXPECT_FALSE(file.permissions() & QFileDevice::WriteOwner) << "a copy: changes would be lost";
}

TEST_F(CardPlaces, TheBooksCurrencyIsShownOnTheSheetsListButNotChanged)
{
    SheetPage page(*book, themed.theme, outside);
    page.resize(1100, 740);
    driving::showActive(page);
    ASSERT_TRUE(page.showRecord(u("build"), {}));
    auto *currency = named<QLineEdit>(page, "Currency");
    ASSERT_NE(currency, nullptr);
    EXPECT_TRUE(currency->isReadOnly());
    EXPECT_EQ(currency->text(), u("EUR"));
}

TEST_F(CardPlaces, APurchaseIsAddedPaidAndItsPaymentRemovedWithoutLoggingAPart)
{
    BudgetPage page(*book, themed.theme);
    page.resize(1100, 740);
    driving::showActive(page);
    RecordsPanel &purchases = page.pages().showPanel(u("purchase"));
    purchases.beginNew();
    type(u("Harbour Breakers"));
    press(Qt::Key_Return); // the new name
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Purchase>().size(), 1U);
    RecordsPanel *payments = nullptr;
    for (RecordsPanel *inner : purchases.card().findChildren<RecordsPanel *>())
        if (inner->kind().table() == "payment")
            payments = inner;
    ASSERT_NE(payments, nullptr);
    payments->beginNew();
    type(u("120"));
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Payment>().size(), 1U);
    EXPECT_EQ(book.records().all<Payment>().rows().front().amount, euros(12000));
    press(Qt::Key_Escape);
    press(Qt::Key_Delete);
    EXPECT_EQ(book.records().all<Payment>().size(), 0U);
}

TEST_F(CardPlaces, AnItemMovesToAnotherBudgetLineWhereItStands)
{
    BudgetLine line;
    line.allowance = euros(100000);
    line.name = u("Battery");
    const Id<BudgetLine> battery = book.add(line);
    line.name = u("Motor");
    line.key = u("motor");
    line.position = 1;
    const Id<BudgetLine> motor = book.add(line);
    Seller seller;
    seller.name = u("Yard");
    Purchase purchase;
    purchase.seller = book.add(seller);
    purchase.orderedOn = book.clock.today();
    purchase.currency = euro();
    PurchaseItem item;
    item.purchase = book.add(purchase);
    item.name = u("Modules");
    item.unitPrice = euros(90000);
    item.line = battery;
    const Id<PurchaseItem> id = book.add(item);
    BudgetPage page(*book, themed.theme);
    page.resize(1100, 740);
    driving::showActive(page);
    auto *entries = named<QTableView>(page, "What the line is made of");
    ASSERT_NE(entries, nullptr);
    entries->selectRow(1);
    auto *to = named<QLineEdit>(page, "Budget line");
    ASSERT_NE(to, nullptr);
    to->setFocus();
    QTest::keyClick(to, Qt::Key_A, Qt::ControlModifier);
    type(u("mot"));
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().find(id)->line, motor);
}

TEST_F(CardPlaces, TheFindLineKnowsEveryRecordWithACard)
{
    Donor donor;
    donor.make = u("Sample");
    donor.vin = u("0TESTVIN");
    donor.key = u("sample");
    book.add(donor);
    BookFind find(*book);
    const auto hits = find.find(u("0testvin"));
    ASSERT_EQ(hits.size(), 1U);
    EXPECT_EQ(hits.front().key, u("record:donor:sample"));
    EXPECT_EQ(hits.front().group, u("Donors"));
    PartsPage page(*book, themed.theme, outside);
    EXPECT_TRUE(page.showRecord(u("donor"), u("sample")));
    EXPECT_FALSE(page.showRecord(u("letter"), u("any")));
}

TEST_F(CardPlaces, TheFindLineReadsWhateverWasWritten)
{
    Part pump = namedPart(u("Coolant pump"));
    pump.condition = u("limescale in the inlet");
    const Id<Part> id = book.add(pump);
    Rating mass;
    mass.part = id;
    mass.quantity = RatedQuantity::Mass;
    mass.kind = RatingKind::Actual;
    mass.basis = RatingBasis::Nominal;
    mass.value = amount("1.2 kg");
    mass.source = u("kitchen scale");
    book.add(mass);
    BookFind find(*book);
    for (const char *words : {"limescale", "kitchen scale"}) {
        const auto hits = find.find(u(words));
        ASSERT_EQ(hits.size(), 1U) << words;
        EXPECT_EQ(hits.front().title, u("Coolant pump"));
    }
}

// Of every list the window has; what is listed on the card of another opens with that one.
TEST_F(CardPlaces, EveryRecordOfTheDemoOpensOnItsCard)
{
    ASSERT_TRUE(book->edit(u("load"), [&] { return book->replaceAll(demoRecords()); }).has_value());
    for (const CardLabels *labels : allCardLabels()) {
        const RecordKind &kind = *recordKind(labels->table);
        if (!kind.holders().empty())
            continue;
        RecordsPanel panel(*book, themed.theme, kind, RecordsPanel::Shape::Page);
        driving::showActive(panel);
        for (const std::int64_t id : kind.ids(book.records())) {
            ASSERT_TRUE(panel.showRecord(id)) << labels->table;
            for (RecordsPanel *inner : panel.card().findChildren<RecordsPanel *>())
                for (const std::int64_t held : inner->kind().ids(book.records()))
                    if (const auto holder = inner->kind().holder(book.records(), held);
                        holder && holder->table == kind.table() && holder->id == id) {
                        EXPECT_TRUE(inner->showRecord(held)) << inner->kind().table();
                    }
        }
    }
}

} // namespace
} // namespace ohmwright::ui
