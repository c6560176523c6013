// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/cards/card_form.h"
#include "ui/cards/record_card.h"
#include "ui/cards/records_panel.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/pick_or_new.h"
#include "ui/widgets/problem_line.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>

#include <algorithm>
#include <memory>

namespace ohmwright::ui {
namespace {

using driving::press;
using driving::spoken;
using driving::type;

QString u(const char *text)
{
    return QString::fromUtf8(text);
}

class ARecordsPanel : public testing::Test
{
protected:
    void open(const char *table)
    {
        panel = std::make_unique<RecordsPanel>(*book, themed.theme, *recordKind(table),
                                               RecordsPanel::Shape::Page);
        panel->resize(1000, 760);
        driving::showActive(*panel);
        panel->list().setFocus();
    }

    Id<Seller> seller(const char *name)
    {
        Seller row;
        row.name = u(name);
        row.key = keyFrom(row.name);
        return book.add(row);
    }

    QLineEdit *line(const char *name)
    {
        return qobject_cast<QLineEdit *>(panel->card().form().entries().editor(u(name)));
    }
    QString problem() { return panel->card().form().entries().problem(); }
    bool inCard() { return panel->card().isAncestorOf(QApplication::focusWidget()); }

    driving::Themed themed;
    TestBook book;
    std::unique_ptr<RecordsPanel> panel;
};

TEST_F(ARecordsPanel, MakesARecordByKeysAlone)
{
    open("seller");
    press(Qt::Key_Insert);
    ASSERT_TRUE(inCard());
    type(u("Harbour Breakers"));
    press(Qt::Key_Tab);
    press(Qt::Key_Down); // dismantler … private is the default
    press(Qt::Key_Tab);
    type(u("Pier 4"));
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Seller>().size(), 1U);
    const Seller &made = book.records().all<Seller>().rows().front();
    EXPECT_EQ(made.name, u("Harbour Breakers"));
    EXPECT_EQ(made.key, u("harbour-breakers"));
    EXPECT_EQ(made.kind, SellerKind::Dealer);
    EXPECT_EQ(made.place, u("Pier 4"));
    EXPECT_EQ(book->undoText(), u("Add the seller “Harbour Breakers”"));
    press(Qt::Key_Escape);
    EXPECT_TRUE(panel->list().hasFocus());
    EXPECT_EQ(panel->list().model()->rowCount(), 1);
}

TEST_F(ARecordsPanel, ChangesARecordAndUndoTakesItBack)
{
    seller("Yard");
    open("seller");
    press(Qt::Key_Return);
    ASSERT_TRUE(line("name")->hasFocus());
    press(Qt::Key_End);
    type(u(" North"));
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().all<Seller>().rows().front().name, u("Yard North"));
    EXPECT_EQ(book->undoText(), u("Change the seller “Yard North”"));
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(line("name")->text(), u("Yard"));
}

TEST_F(ARecordsPanel, ARefusalStandsAtItsFieldInTheCardsWordsAndNothingTypedIsLost)
{
    open("donor");
    press(Qt::Key_Insert);
    type(u("Sample"));
    press(Qt::Key_Tab);
    type(u("Hatch"));
    press(Qt::Key_Tab);
    type(u("1200"));
    press(Qt::Key_Return);
    EXPECT_TRUE(problem().startsWith(u("Model year"))) << problem().toStdString();
    EXPECT_TRUE(line("year")->hasFocus());
    EXPECT_EQ(line("model")->text(), u("Hatch"));
    EXPECT_TRUE(book.records().all<Donor>().rows().empty());
    QTest::keyClick(line("year"), Qt::Key_A, Qt::ControlModifier);
    type(u("2018"));
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().all<Donor>().size(), 1U);
    EXPECT_TRUE(problem().isEmpty());
}

TEST_F(ARecordsPanel, GoingOnSavesWhatWasTypedUnlessItIsRefused)
{
    seller("Alpha");
    seller("Beta");
    open("seller");
    press(Qt::Key_Return);
    press(Qt::Key_End);
    type(u(" One"));
    press(Qt::Key_Escape);
    press(Qt::Key_Down);
    EXPECT_EQ(book.records().byKey<Seller>(u("alpha"))->name, u("Alpha One"));
    EXPECT_EQ(line("name")->text(), u("Beta"));
    press(Qt::Key_Return);
    QTest::keyClick(line("name"), Qt::Key_A, Qt::ControlModifier);
    press(Qt::Key_Delete);
    press(Qt::Key_Escape);
    press(Qt::Key_Up);
    EXPECT_FALSE(problem().isEmpty());
    EXPECT_EQ(panel->list().currentIndex().row(), 1);
    EXPECT_EQ(book.records().byKey<Seller>(u("beta"))->name, u("Beta"));
}

TEST_F(ARecordsPanel, RemovesWhatNobodyNamesAndSaysWhoDoesOtherwise)
{
    const Id<Seller> kept = seller("Alpha");
    seller("Beta");
    Donor donor;
    donor.make = u("Sample");
    donor.seller = kept;
    book.add(donor);
    open("seller");
    QSignalSpy said(panel.get(), &RecordsPanel::said);
    press(Qt::Key_Delete);
    EXPECT_TRUE(problem().contains(u("the donor “Sample”"))) << problem().toStdString();
    EXPECT_EQ(book.records().all<Seller>().size(), 2U);
    press(Qt::Key_Down);
    press(Qt::Key_Delete);
    EXPECT_EQ(book.records().all<Seller>().size(), 1U);
    EXPECT_EQ(book->undoText(), u("Remove the seller “Beta”"));
    EXPECT_TRUE(panel->list().hasFocus());
}

TEST_F(ARecordsPanel, AnEmptyListTeachesAndItsButtonStarts)
{
    open("circuit");
    auto *button = panel->findChild<QPushButton *>();
    ASSERT_NE(button, nullptr);
    bool found = false;
    for (QPushButton *one : panel->findChildren<QPushButton *>())
        if (one->isVisible() &&
            spoken(one, QAccessible::Description).contains(u("shares a voltage"))) {
            found = true;
            one->click();
        }
    EXPECT_TRUE(found);
    EXPECT_TRUE(panel->card().isNew());
    EXPECT_TRUE(inCard());
    // an untouched new one goes without a word
    press(Qt::Key_Escape);
    EXPECT_FALSE(panel->card().isNew());
    EXPECT_TRUE(book.records().all<Circuit>().rows().empty());
}

TEST_F(ARecordsPanel, FindsByEveryWord)
{
    seller("Alpha Yard");
    seller("Beta Yard");
    open("seller");
    auto *find = panel->findChild<QLineEdit *>();
    ASSERT_EQ(spoken(find), u("Find in Sellers"));
    find->setFocus();
    type(u("yard beta"));
    EXPECT_EQ(panel->list().model()->rowCount(), 1);
    press(Qt::Key_Down);
    EXPECT_TRUE(panel->list().hasFocus());
    EXPECT_EQ(line("name")->text(), u("Beta Yard"));
}

TEST_F(ARecordsPanel, SaysInTheListWhatABareDateOrNoWouldNot)
{
    WorkPermit permit;
    permit.name = u("Unpacking the modules");
    permit.key = keyFrom(permit.name);
    permit.workedBy = u("builder");
    permit.glovesValidUntil = QDate(2026, 7, 20);
    permit.closedOn = QDate(2026, 6, 13);
    book.add(permit);
    open("work_permit");
    const auto below = [&] {
        return panel->list().model()->index(0, 0).data(SecondLineRole);
    };
    EXPECT_EQ(below(), u("builder works, gloves until 20 Jul 2026, work over 13 Jun 2026"));
    Wire wire;
    wire.name = u("W101");
    wire.key = keyFrom(wire.name);
    book.add(wire);
    open("wire");
    EXPECT_EQ(below(), u("not fitted"));
    wire.id = book.records().all<Wire>().rows()[0].id;
    wire.fitted = true;
    OHMWRIGHT_ASSERT_OK(book->edit(u("Fit"), [&]() -> Outcome { return book->update(wire); }));
    EXPECT_EQ(below(), u("fitted"));
}

TEST_F(ARecordsPanel, SaysWhyAPermitGivesNoLeaveToday)
{
    WorkPermit permit;
    permit.key = u("close-the-pack");
    permit.name = u("Close the pack");
    permit.glovesValidUntil = book.clock.today().addDays(-1);
    permit.lockedOff = true;
    book.add(permit);
    open("work_permit");
    const QString told = panel->list().model()->index(0, 0).data(SecondLineRole).toString();
    EXPECT_TRUE(told.contains(u("no leave to work today: gloves out of test date since")));
    EXPECT_TRUE(told.contains(u("no second person")));
    press(Qt::Key_Return);
    const auto lines = panel->card().findChildren<ProblemLine *>();
    EXPECT_TRUE(std::any_of(lines.begin(), lines.end(), [](const ProblemLine *line) {
        return line->isVisible() && line->problem().startsWith(u("No leave to work today"));
    }));
}

TEST_F(ARecordsPanel, AReferenceIsPickedByNameAndAnUnknownOneIsRefused)
{
    book.add(namedPart(u("Vacuum pump")));
    open("lost_function");
    press(Qt::Key_Insert);
    type(u("Brake vacuum"));
    auto *part = line("part");
    part->setFocus();
    type(u("Steam engine"));
    press(Qt::Key_Return);
    EXPECT_TRUE(problem().contains(u("Steam engine")));
    EXPECT_EQ(part->text(), u("Steam engine"));
    QTest::keyClick(part, Qt::Key_A, Qt::ControlModifier);
    type(u("vac"));
    press(Qt::Key_Return); // takes it
    press(Qt::Key_Return); // saves
    ASSERT_EQ(book.records().all<LostFunction>().size(), 1U);
    EXPECT_TRUE(book.records().all<LostFunction>().rows().front().part.has_value());
}

TEST_F(ARecordsPanel, ACircuitsCardHoldsItsBranches)
{
    Circuit circuit;
    circuit.name = u("Traction");
    circuit.key = u("traction");
    book.add(circuit);
    circuit.name = u("Zero");
    circuit.key = u("zero");
    book.add(circuit);
    open("circuit");
    auto *branches = panel->card().findChild<RecordsPanel *>();
    ASSERT_NE(branches, nullptr);
    EXPECT_TRUE(branches->isVisible());
    branches->beginNew();
    type(u("Pack to inverter"));
    auto *size =
        qobject_cast<QLineEdit *>(branches->card().form().entries().editor(u("conductor_size")));
    size->setFocus();
    type(u("50 mm2"));
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Branch>().size(), 1U);
    const Branch &made = book.records().all<Branch>().rows().front();
    EXPECT_EQ(book.records().find(made.circuit)->key, u("traction"));
    EXPECT_EQ(branches->list().model()->rowCount(), 1);
    // a branch named by its circuit keeps it
    panel->list().setFocus();
    press(Qt::Key_Delete);
    EXPECT_TRUE(problem().contains(u("Pack to inverter"))) << problem().toStdString();
    press(Qt::Key_Down);
    EXPECT_EQ(branches->list().model()->rowCount(), 0);
}

TEST_F(ARecordsPanel, ANoteTakesLinesAndCtrlEnterSaves)
{
    seller("Yard");
    open("seller");
    auto *note = qobject_cast<QPlainTextEdit *>(panel->card().form().entries().editor(u("note")));
    note->setFocus();
    type(u("first"));
    press(Qt::Key_Return);
    type(u("second"));
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(book.records().all<Seller>().rows().front().note, u("first\nsecond"));
}

TEST_F(ARecordsPanel, WhatIsTypedStaysWhenTheBookChangesUnderneath)
{
    const Id<Seller> id = seller("Yard");
    open("seller");
    press(Qt::Key_Return);
    press(Qt::Key_End);
    type(u(" South"));
    Seller other = *book.records().find(id);
    other.place = u("Elsewhere");
    OHMWRIGHT_ASSERT_OK(book->edit(u("other window"), [&] { return book->update(other); }));
    EXPECT_EQ(line("name")->text(), u("Yard South"));
    EXPECT_EQ(line("place")->text(), u("Elsewhere"));
    line("name")->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().find(id)->name, u("Yard South"));
    EXPECT_EQ(book.records().find(id)->place, u("Elsewhere"));
}

TEST_F(ARecordsPanel, EverythingInItHasAName)
{
    seller("Yard");
    for (const char *table : {"seller", "donor", "circuit", "attachment", "purchase"}) {
        open(table);
        panel->beginNew();
        for (QWidget *widget : panel->findChildren<QWidget *>()) {
            if (!widget->isVisible() || !(widget->focusPolicy() & Qt::TabFocus) ||
                qobject_cast<QComboBox *>(widget))
                continue;
            EXPECT_FALSE(spoken(widget).isEmpty())
                << table << " " << widget->metaObject()->className();
        }
    }
}

} // namespace
} // namespace ohmwright::ui
