// SPDX-License-Identifier: GPL-3.0-or-later
// Cards of dangerous records: the caution stands before the first field, and a guided test brings
// its steps with it.
#include "core/parts/guided_tests.h"
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/cards/card_cautions.h"
#include "ui/cards/card_form.h"
#include "ui/cards/record_card.h"
#include "ui/cards/records_panel.h"
#include "ui/widgets/caution_card.h"

#include <QComboBox>
#include <QLineEdit>
#include <QTableView>
#include <QToolButton>

#include <memory>

namespace ohmwright::ui {
namespace {

using driving::press;
using driving::type;

class ATestCard : public testing::Test
{
protected:
    void open(const char *table)
    {
        panel = std::make_unique<RecordsPanel>(*book, themed.theme, *recordKind(table),
                                               RecordsPanel::Shape::Page);
        panel->resize(1000, 760);
        driving::showActive(*panel);
        panel->list().setFocus();
        press(Qt::Key_Insert);
    }

    QList<CautionCard *> shown()
    {
        QList<CautionCard *> cards;
        for (CautionCard *card : panel->findChildren<CautionCard *>())
            if (card->isVisible())
                cards << card;
        return cards;
    }

    driving::Themed themed;
    TestBook book;
    std::unique_ptr<RecordsPanel> panel;
};

TEST_F(ATestCard, ShowsTheCautionAboveTheFirstFieldAsSoonAsTheKindIsChosen)
{
    open("test_record");
    type(QStringLiteral("Pack to tray"));
    press(Qt::Key_Tab);
    auto *kind = qobject_cast<QComboBox *>(QApplication::focusWidget());
    ASSERT_TRUE(kind);
    type(QStringLiteral("iso"));
    QTest::qWait(20); // what is new in a layout is shown by then
    ASSERT_FALSE(shown().isEmpty());
    const CautionCard *caution = shown().front();
    EXPECT_LT(caution->mapTo(panel.get(), QPoint()).y(), kind->mapTo(panel.get(), QPoint()).y());
}

TEST_F(ATestCard, APermitAlwaysHasItsCautions)
{
    open("work_permit");
    ASSERT_EQ(shown().size(), 2);
    EXPECT_FALSE(shown()[0]->isFolded());
    ASSERT_TRUE(shown()[1]->isFolded()) << "its title is in sight, and the form as well";
    shown()[1]->findChild<QToolButton *>()->click();
    EXPECT_FALSE(shown()[1]->isFolded());
}

TEST_F(ATestCard, AGuidedTestBringsItsStepsInTheSameEdit)
{
    open("test_record");
    type(QStringLiteral("First power-up"));
    press(Qt::Key_Tab);
    type(QStringLiteral("first"));
    press(Qt::Key_Tab);
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<TestRecord>().size(), 1U);
    const TestRecord &made = book.records().all<TestRecord>().rows().front();
    EXPECT_EQ(made.kind, TestKind::FirstPowerUp);
    EXPECT_EQ(book.records().of<TestStep>(made.id).size(), firstPowerUpSteps().size());
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(book.records().all<TestStep>().size(), 0U);
    EXPECT_EQ(book.records().all<TestRecord>().size(), 0U);
}

} // namespace
} // namespace ohmwright::ui
