// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/cards/card_form.h"
#include "ui/cards/record_card.h"
#include "ui/cards/records_panel.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/field.h"
#include "ui/widgets/pick_or_new.h"

#include <QTableView>

#include <memory>

namespace ohmwright::ui {
namespace {

using driving::press;
using driving::type;

QString u(const char *text)
{
    return QString::fromUtf8(text);
}

class AFiguresCard : public testing::Test
{
protected:
    void open(const char *table = "check_figure")
    {
        panel = std::make_unique<RecordsPanel>(*book, themed.theme, *recordKind(table),
                                               RecordsPanel::Shape::Page);
        panel->resize(1000, 760);
        driving::showActive(*panel);
        panel->list().setFocus();
    }

    EntryForm &form() { return panel->card().form().entries(); }
    QLineEdit *line(const char *name) { return qobject_cast<QLineEdit *>(form().editor(u(name))); }
    bool isShown(const char *name) { return form().field(u(name))->isVisible(); }
    const CheckFigure &first() { return book.records().all<CheckFigure>().rows().front(); }

    driving::Themed themed;
    TestBook book;
    std::unique_ptr<RecordsPanel> panel;
};

TEST_F(AFiguresCard, TakesTheFigureByItsWordsAndAsksForNothingItDoesNotHave)
{
    open();
    press(Qt::Key_Insert);
    type(u("frontal ar"));
    press(Qt::Key_Return); // takes what is offered
    EXPECT_EQ(line("figure")->text(), u("frontal area"));
    EXPECT_TRUE(isShown("value"));
    for (const char *other : {"word", "circuit", "branch", "part", "type", "test"})
        EXPECT_FALSE(isShown(other)) << other;
    press(Qt::Key_Tab);
    ASSERT_TRUE(line("value")->hasFocus());
    type(u("2.8 m²"));
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<CheckFigure>().size(), 1U);
    EXPECT_EQ(first().figure, u("vehicle.frontal_area"));
    EXPECT_EQ(panel->list().model()->index(0, 0).data().toString(), u("frontal area"));
}

TEST_F(AFiguresCard, OffersTheWordsOfAChoiceAndNoOthers)
{
    open();
    press(Qt::Key_Insert);
    type(u("driven axle"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isShown("word"));
    EXPECT_FALSE(isShown("value"));
    line("word")->setFocus();
    type(u("rea"));
    press(Qt::Key_Return); // takes it
    press(Qt::Key_Return); // saves
    ASSERT_EQ(book.records().all<CheckFigure>().size(), 1U);
    EXPECT_EQ(first().word, u("rear"));
}

TEST_F(AFiguresCard, LeavesBehindWhatAnotherFigureDoesNotTake)
{
    const Id<Part> motor = book.add(namedPart(u("Motor")));
    CheckFigure figure;
    figure.key = u("overspeed");
    figure.figure = u("motor.overspeed");
    figure.part = motor;
    figure.value = amount("9000 rpm");
    book.add(figure);
    open();
    press(Qt::Key_Return);
    EXPECT_TRUE(isShown("part"));
    line("figure")->setFocus();
    QTest::keyClick(line("figure"), Qt::Key_A, Qt::ControlModifier);
    type(u("driven axle"));
    press(Qt::Key_Return); // takes it
    EXPECT_FALSE(isShown("part"));
    press(Qt::Key_Return); // saves
    EXPECT_EQ(form().problem(), QString());
    EXPECT_EQ(first().figure, u("drive.driven_axle"));
    EXPECT_FALSE(first().part.has_value());
    EXPECT_FALSE(first().value.has_value());
}

TEST_F(AFiguresCard, RefusesAFigureNobodyAsksFor)
{
    open();
    press(Qt::Key_Insert);
    type(u("colour of the carpet"));
    press(Qt::Key_Return);
    EXPECT_NE(form().problem(), QString());
    EXPECT_EQ(line("figure")->text(), u("colour of the carpet"));
    EXPECT_EQ(book.records().all<CheckFigure>().size(), 0U);
}

TEST_F(AFiguresCard, TakesAThresholdByItsWordsToo)
{
    open("own_threshold");
    press(Qt::Key_Insert);
    type(u("voltage drop"));
    press(Qt::Key_Return);
    press(Qt::Key_Tab);
    type(u("3 %"));
    press(Qt::Key_Tab);
    type(u("lamps flicker"));
    press(Qt::Key_Return);
    ASSERT_EQ(form().problem().toStdString(), "");
    ASSERT_EQ(book.records().all<OwnThreshold>().size(), 1U);
    EXPECT_EQ(book.records().all<OwnThreshold>().rows().front().name, u("conductor.drop"));
    EXPECT_EQ(panel->list().model()->index(0, 0).data().toString(), u("voltage drop, at most"));
}

} // namespace
} // namespace ohmwright::ui
