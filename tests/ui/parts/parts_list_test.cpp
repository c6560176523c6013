// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/parts/page_fixture.h"
#include "ui/parts/parts_model.h"
#include "ui/widgets/chip_row.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <QAbstractItemModelTester>
#include <QHeaderView>
#include <QScrollBar>
#include <QTest>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class ThePartsTable : public APartsPage
{
protected:
    ThePartsTable()
    {
        const auto traction = circuit("Traction", "403 V");
        Donor donor;
        donor.key = "hatch";
        donor.make = "Sample";
        donor.model = "Hatch";
        donor.year = 2018;
        Part inverter = namedPart("Inverter", PartState::Tested);
        inverter.key = "inverter";
        inverter.donor = book.add(donor);
        inverter.serial = "INV-77";
        inverter.place = "Shelf 3";
        inverter.warrantyUntil = QDate(2026, 6, 25);
        inverterId = book.add(inverter);
        Part board = namedPart("Gate board", PartState::InHand, PartKind::Module);
        board.key = "gate-board";
        board.partOf = inverterId;
        book.add(board);
        part("Anti-seize", PartState::Wanted, PartKind::Consumable);
        part("Cable lugs", PartState::Fitted, PartKind::Hardware);
        connectPart(inverterId, traction);
        open();
    }

    QVariant cell(const char *name, PartColumn column, int role = Qt::DisplayRole)
    {
        const int row = static_cast<int>(names().indexOf(QString::fromLatin1(name)));
        return model().index(row, static_cast<int>(column)).data(role);
    }

    Id<Part> inverterId;
};

} // namespace

TEST_F(ThePartsTable, saysOfEachPartWhatTheColumnPromises)
{
    page->resize(2200, 760); // a column for each
    QTest::qWait(20);
    EXPECT_EQ(names(), QStringList({"Anti-seize", "Cable lugs", "Gate board", "Inverter"}));
    EXPECT_EQ(cell("Inverter", PartColumn::Name, SecondLineRole), "Sample Hatch 2018, no. INV-77");
    EXPECT_EQ(cell("Inverter", PartColumn::State), "tested");
    EXPECT_EQ(cell("Inverter", PartColumn::Assembly), "Inverter");
    EXPECT_EQ(cell("Gate board", PartColumn::Assembly), "Inverter");
    EXPECT_TRUE(cell("Inverter", PartColumn::HighVoltage, HighVoltageRole).toBool());
    EXPECT_FALSE(cell("Cable lugs", PartColumn::HighVoltage, HighVoltageRole).toBool());
    EXPECT_EQ(cell("Inverter", PartColumn::Questions, FigureRole), "2")
        << "what the circuit asks, and the mass for the sheet";
    EXPECT_EQ(cell("Inverter", PartColumn::Deadline), "25 Jun 2026");
    EXPECT_EQ(cell("Inverter", PartColumn::Place), "Shelf 3");
}

TEST_F(ThePartsTable, showsOnlyWhatIsTypedWhereverItStands)
{
    auto *filter = control<QLineEdit>("Filter the parts");
    filter->setFocus();
    for (const char *typed : {"hatch", "inv-77", "SHELF", "sample 77"}) {
        filter->clear();
        type(typed);
        EXPECT_EQ(names(), QStringList({"Inverter"})) << typed;
    }
    press(Qt::Key_Escape);
    EXPECT_EQ(names().size(), 4);
    type("board");
    press(Qt::Key_Down);
    EXPECT_EQ(QApplication::focusWidget(), &page->list().table());
    EXPECT_EQ(book.records().find(page->list().chosen())->key, "gate-board");
}

TEST_F(ThePartsTable, teachesWhatToDoWhenNothingFits)
{
    auto *filter = control<QLineEdit>("Filter the parts");
    filter->setFocus();
    type("no such thing");
    EXPECT_TRUE(names().isEmpty());
    control<QPushButton>("Show all parts")->click();
    EXPECT_EQ(names().size(), 4);
    EXPECT_TRUE(filter->text().isEmpty());
}

TEST_F(ThePartsTable, groupsByStateAndByAssemblyAndKeysPassOverTheHeadings)
{
    auto *grouping = control<QComboBox>("nothing");
    ASSERT_NE(grouping, nullptr);
    grouping->setCurrentIndex(1);
    EXPECT_EQ(names(), QStringList({"wanted (1)", "Anti-seize", "in hand (1)", "Gate board",
                                    "tested (1)", "Inverter", "fitted (1)", "Cable lugs"}));
    QTableView &table = page->list().table();
    table.setFocus();
    table.selectRow(1);
    press(Qt::Key_Down);
    EXPECT_EQ(table.currentIndex().row(), 3);
    grouping->setCurrentIndex(2);
    EXPECT_EQ(names(), QStringList({"Inverter (2)", "Gate board", "Inverter", "in no assembly (2)",
                                    "Anti-seize", "Cable lugs"}));
    EXPECT_EQ(table.columnSpan(0, 0), kPartColumns);
    EXPECT_EQ(book.records().find(page->list().chosen())->key, "gate-board")
        << "what was chosen stays chosen";
}

TEST_F(ThePartsTable, sortsByAColumnAndTheOtherWayAtTheSecondClick)
{
    QHeaderView *header = page->list().table().horizontalHeader();
    const auto click = [&](PartColumn column) {
        emit header->sectionClicked(static_cast<int>(column));
    };
    click(PartColumn::State);
    EXPECT_EQ(names(), QStringList({"Anti-seize", "Gate board", "Inverter", "Cable lugs"}));
    click(PartColumn::State);
    EXPECT_EQ(names(), QStringList({"Cable lugs", "Inverter", "Gate board", "Anti-seize"}));
    click(PartColumn::Questions);
    EXPECT_EQ(names().front(), "Inverter");
    EXPECT_EQ(header->sortIndicatorSection(), static_cast<int>(PartColumn::Questions));
}

TEST_F(ThePartsTable, countsStatesAndShowsOnlyThoseThatAreOn)
{
    auto *chips = page->list().findChild<ChipRow *>();
    chips->setOn("tested", true);
    EXPECT_EQ(names(), QStringList({"Inverter"}));
    chips->setOn("wanted", true);
    EXPECT_EQ(names(), QStringList({"Anti-seize", "Inverter"}));
}

TEST_F(ThePartsTable, keepsTheModelsPromisesThroughEditsUndoAndFilters)
{
    const QAbstractItemModelTester tester(&model(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    QSignalSpy inserted(&model(), &QAbstractItemModel::rowsInserted);
    QSignalSpy removed(&model(), &QAbstractItemModel::rowsRemoved);
    QSignalSpy reset(&model(), &QAbstractItemModel::modelReset);
    QSignalSpy changed(&model(), &QAbstractItemModel::dataChanged);
    LogEntry entry;
    entry.name = "Contactor";
    entry.on = book.clock.today();
    OHMWRIGHT_ASSERT_OK(logPart(*book, entry));
    EXPECT_EQ(inserted.count(), 1);
    EXPECT_EQ(inserted.front().at(1).toInt(), 2) << "in its place by name";
    EXPECT_EQ(names().at(2), "Contactor");
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(removed.count(), 1);
    EXPECT_EQ(names().size(), 4);
    changed.clear();
    OHMWRIGHT_ASSERT_OK(movePart(*book, inverterId, PartState::Fitted, book.clock.today()));
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(cell("Inverter", PartColumn::State), "fitted");
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(cell("Inverter", PartColumn::State), "tested");
    EXPECT_EQ(reset.count(), 0);
    control<QComboBox>("nothing")->setCurrentIndex(2);
    control<QLineEdit>("Filter the parts")->setText("o");
}

// How long it takes is tests/bench's (typeInPartsFilter).
TEST(TheFilter, findsEveryPartThatFitsAmongTwentyThousand)
{
    FixedClock clock;
    Records records;
    Build build;
    build.id = Id<Build>(1);
    build.currency = euro();
    records.all<Build>().assign({build});
    std::vector<Part> parts;
    int fitting = 0;
    for (int i = 1; i <= 20000; ++i) {
        const int number = (i * 7919) % 20011;
        Part part = namedPart(QStringLiteral("Part %1 of the drive").arg(number));
        part.id = Id<Part>(i);
        part.key = QStringLiteral("p%1").arg(i);
        part.note = QStringLiteral("out of the blue hatchback, in good order, box %1").arg(i % 40);
        part.state = static_cast<PartState>(i % 9);
        const QString all = part.name + part.key + part.note;
        fitting += all.contains(QStringLiteral("77")) ? 1 : 0;
        parts.push_back(part);
    }
    records.all<Part>().assign(std::move(parts));
    const PartsIndex index(records, clock.today());
    PartFilter filter;
    filter.text = QStringLiteral("blue 77");
    filter.grouping = PartGrouping::State;
    EXPECT_EQ(index.arrange(filter).parts, fitting);
}

TEST_F(APartsPage, teachesWhatGoesHereWhileTheBookIsEmpty)
{
    open();
    auto *button = control<QPushButton>("Log the first part");
    ASSERT_NE(button, nullptr);
    button->click();
    EXPECT_TRUE(page->logSheet().isVisible());
}

// The names are what a list is read for: thirty letters of each, whatever the width.
TEST_F(ThePartsTable, showsNamesWholeBesideTheDetailWithoutScrolling)
{
    QTableView &table = page->list().table();
    const int thirty = QFontMetrics(table.font()).averageCharWidth() * 30;
    page->resize(1110, 700); // a window of 1280 without its thumb index
    QTest::qWait(20);
    EXPECT_EQ(table.horizontalScrollBar()->maximum(), 0);
    for (const PartColumn column : {PartColumn::Name, PartColumn::State, PartColumn::Cost})
        EXPECT_FALSE(table.isColumnHidden(static_cast<int>(column)));
    EXPECT_GE(table.columnWidth(0), thirty);
    // what has no column of its own stands in the second lines, what presses first
    EXPECT_EQ(cell("Gate board", PartColumn::Name, SecondLineRole), "in Inverter, module");
    EXPECT_EQ(cell("Inverter", PartColumn::State, SecondLineRole), "Shelf 3");
    EXPECT_EQ(cell("Inverter", PartColumn::Name, SecondLineRole),
              QStringLiteral("%1 days, warranty, 2 open questions, Sample Hatch 2018, no. INV-77")
                  .arg(book.clock.today().daysTo(QDate(2026, 6, 25))));
    EXPECT_EQ(
        cell("Inverter", PartColumn::Name, Qt::AccessibleTextRole),
        QString("Inverter, " + cell("Inverter", PartColumn::Name, SecondLineRole).toString()));
    EXPECT_TRUE(cell("Inverter", PartColumn::Name, HighVoltageRole).toBool());
}

// A window of full HD at twice the size has 960 by 540, less the thumb index.
TEST_F(ThePartsTable, keepsItsNamesAndTheDetailAtTwiceTheSize)
{
    page->resize(850, 480);
    QTest::qWait(20);
    EXPECT_LE(page->minimumSizeHint().width(), 850);
    QTableView &table = page->list().table();
    EXPECT_EQ(table.horizontalScrollBar()->maximum(), 0);
    EXPECT_GE(table.columnWidth(0), QFontMetrics(table.font()).averageCharWidth() * 22);
    const auto *filter = control<QLineEdit>("Filter the parts");
    const auto *kind = control<QComboBox>("any");
    ASSERT_TRUE(filter && kind);
    EXPECT_GT(kind->mapTo(page.get(), QPoint()).y(),
              filter->mapTo(page.get(), QPoint()).y() + filter->height() / 2)
        << "the choices go below the filter";
}

// A message below the page takes room from the table.
TEST_F(ThePartsTable, keepsTheChosenPartInSightWhenItShrinks)
{
    for (int i = 0; i < 30; ++i)
        part(("Spare " + std::to_string(i)).c_str());
    page->resize(1110, 700);
    QTest::qWait(20);
    QTableView &table = page->list().table();
    table.setFocus();
    table.selectRow(0);
    while (table.visualRect(table.currentIndex()).bottom() < table.viewport()->height() - 60)
        driving::press(Qt::Key_Down);
    page->resize(1110, 640);
    QTest::qWait(20);
    const QRect row = table.visualRect(table.currentIndex());
    EXPECT_TRUE(table.viewport()->rect().contains(QRect(0, row.top(), 1, row.height())))
        << row.top() << " to " << row.bottom() << " of " << table.viewport()->height();
}

TEST_F(ThePartsTable, givesAssemblyAndPlaceColumnsOfTheirOwnWhereThereIsRoom)
{
    page->resize(2200, 700);
    QTest::qWait(20);
    QTableView &table = page->list().table();
    EXPECT_EQ(table.horizontalScrollBar()->maximum(), 0);
    for (int column = 0; column < kPartColumns; ++column)
        EXPECT_FALSE(table.isColumnHidden(column)) << column;
    EXPECT_EQ(cell("Gate board", PartColumn::Assembly), "Inverter");
    EXPECT_EQ(cell("Inverter", PartColumn::State, SecondLineRole), QVariant());
    EXPECT_FALSE(cell("Inverter", PartColumn::Name, HighVoltageRole).toBool());
}
