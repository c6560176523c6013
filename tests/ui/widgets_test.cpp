// SPDX-License-Identifier: GPL-3.0-or-later
// The smaller widgets: chips, fields, figures, marks, bars, cards, where photos come in.
#include "tests/ui/driving.h"
#include "ui/widgets/caution_card.h"
#include "ui/widgets/chip_row.h"
#include "ui/widgets/drop_area.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/field.h"
#include "ui/widgets/figure_label.h"
#include "ui/widgets/figures.h"
#include "ui/widgets/hv_tag.h"
#include "ui/widgets/marks.h"
#include "ui/widgets/money_bar.h"
#include "ui/widgets/section_title.h"
#include "ui/widgets/state_mark.h"
#include "ui/widgets/wrap_layout.h"

#include <QAbstractButton>
#include <QClipboard>
#include <QComboBox>
#include <QDropEvent>
#include <QFontMetricsF>
#include <QGuiApplication>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QPainter>
#include <QPushButton>
#include <QSignalSpy>
#include <QTemporaryFile>
#include <QUrl>
#include <QVBoxLayout>

#include <gtest/gtest.h>

#include <set>

using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class AChipRow : public testing::Test
{
protected:
    AChipRow()
    {
        auto *column = new QVBoxLayout(&window);
        row = new ChipRow(themed.theme, QStringLiteral("State"));
        after = new QLineEdit;
        column->addWidget(row);
        column->addWidget(after);
        for (const char *key : {"wanted", "ordered", "fitted"})
            row->addChip(key, key);
        window.resize(500, 120);
        showActive(window);
        chips = row->findChildren<QAbstractButton *>();
        chips.front()->setFocus();
    }

    Themed themed;
    QWidget window;
    ChipRow *row = nullptr;
    QLineEdit *after = nullptr;
    QList<QAbstractButton *> chips;
};

QByteArray pictureOf(Mark mark)
{
    QImage image(32, 32, QImage::Format_Grayscale8);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintMark(painter, QRectF(0, 0, 32, 32), mark, Qt::black);
    painter.end();
    return {reinterpret_cast<const char *>(image.constBits()), image.sizeInBytes()};
}

} // namespace

TEST_F(AChipRow, isOneTabStopWhoseChipsAreReachedByArrows)
{
    const QSignalSpy changed(row, &ChipRow::changed);
    press(Qt::Key_Space);
    press(Qt::Key_Right);
    press(Qt::Key_Right);
    press(Qt::Key_Space);
    EXPECT_EQ(row->keysOn(), (QStringList{"wanted", "fitted"}));
    EXPECT_EQ(changed.count(), 2);
    press(Qt::Key_Tab);
    EXPECT_EQ(QApplication::focusWidget(), after);
    press(Qt::Key_Backtab);
    EXPECT_EQ(QApplication::focusWidget(), chips.at(2)) << "one comes back to where one was";
    press(Qt::Key_Right);
    EXPECT_EQ(QApplication::focusWidget(), chips.at(0));
}

TEST_F(AChipRow, switchesByClickAndSaysItsNameStateAndCount)
{
    QTest::mouseClick(chips.at(1), Qt::LeftButton);
    EXPECT_TRUE(row->isOn("ordered"));
    row->setCount("ordered", 12);
    EXPECT_EQ(spoken(chips.at(1)), QStringLiteral("State: ordered, 12"));
    QAccessibleInterface *face = QAccessible::queryAccessibleInterface(chips.at(1));
    EXPECT_TRUE(face->state().checked);
    EXPECT_TRUE(face->state().checkable);
}

TEST_F(AChipRow, breaksIntoLinesRatherThanCuttingAChipOff)
{
    EXPECT_GT(row->heightForWidth(150), row->heightForWidth(500));
    window.resize(180, 200);
    QTest::qWait(1);
    for (const QAbstractButton *chip : chips)
        EXPECT_TRUE(row->rect().contains(chip->geometry()));
}

TEST(ChipRow, inModeOneKeepsExactlyOneOn)
{
    const Themed themed;
    ChipRow row(themed.theme, QStringLiteral("Sort"), ChipMode::One);
    row.addChip("name", "name");
    row.addChip("date", "date", true);
    EXPECT_EQ(row.keysOn(), QStringList{"date"});
    const QSignalSpy changed(&row, &ChipRow::changed);
    row.findChildren<QAbstractButton *>().front()->click();
    EXPECT_EQ(row.keysOn(), QStringList{"name"});
    row.findChildren<QAbstractButton *>().front()->click();
    EXPECT_EQ(row.keysOn(), QStringList{"name"});
    row.setOn("name", false);
    EXPECT_EQ(row.keysOn(), QStringList{"name"});
    EXPECT_GE(changed.count(), 1);
}

TEST(Field, namesItsEditorAndDescribesItWithHintThenProblem)
{
    const Themed themed;
    auto *edit = new QLineEdit;
    Field field(themed.theme, QStringLiteral("&Price && shipping"), edit);
    EXPECT_EQ(spoken(edit), QStringLiteral("Price & shipping"));
    field.setHint(QStringLiteral("e.g. 412.50 EUR"));
    EXPECT_EQ(spoken(edit, QAccessible::Description), QStringLiteral("e.g. 412.50 EUR"));
    field.setProblem(QStringLiteral("“4l2” is not an amount of money."));
    EXPECT_TRUE(field.hasProblem());
    EXPECT_EQ(spoken(edit, QAccessible::Description),
              QStringLiteral("“4l2” is not an amount of money."));
    field.setProblem({});
    EXPECT_EQ(field.message(), QStringLiteral("e.g. 412.50 EUR"));
}

TEST(Field, givesADropDownItsLabelAsRelation)
{
    const Themed themed;
    auto *combo = new QComboBox;
    combo->addItem("datasheet");
    const Field field(themed.theme, QStringLiteral("&Evidence"), combo);
    const auto relations = QAccessible::queryAccessibleInterface(combo)->relations();
    ASSERT_FALSE(relations.isEmpty());
    EXPECT_TRUE(relations.front().second.testFlag(QAccessible::Label));
    EXPECT_EQ(relations.front().first->text(QAccessible::Name), QStringLiteral("Evidence"));
}

TEST(Field, goesToItsEditorByMnemonicAndByFocus)
{
    const Themed themed;
    QWidget window;
    auto *column = new QVBoxLayout(&window);
    auto *first = new QLineEdit;
    auto *price = new QLineEdit;
    auto *field = new Field(themed.theme, QStringLiteral("&Price"), price);
    column->addWidget(first);
    column->addWidget(field);
    showActive(window);
    first->setFocus();
    press(Qt::Key_P, Qt::AltModifier);
    EXPECT_EQ(QApplication::focusWidget(), price);
    first->setFocus();
    field->setFocus();
    EXPECT_EQ(QApplication::focusWidget(), price);
}

TEST(Field, paintsItsProblemInTheColourOfTheShade)
{
    Themed themed;
    Field field(themed.theme, QStringLiteral("Price"), new QLineEdit);
    field.setProblem(QStringLiteral("No."));
    showActive(field);
    const auto problemColour = [&] {
        const QLabel *message = nullptr;
        for (const auto *label : field.findChildren<QLabel *>()) {
            if (label->text() == QLatin1String("No."))
                message = label;
        }
        return message->palette().color(message->foregroundRole());
    };
    EXPECT_EQ(problemColour(), tokensOf(Shade::Light).fails);
    themed.theme.setShade(Shade::Dark);
    EXPECT_TRUE(QTest::qWaitFor([&] { return problemColour() == tokensOf(Shade::Dark).fails; }));
}

TEST(Figures, partANumberFromItsFractionAndUnit)
{
    const QString minus(QChar(0x2212));
    EXPECT_EQ(splitFigure("1 250.00 EUR"), (FigureText{"1 250", ".00", "EUR"}));
    EXPECT_EQ(splitFigure("1.250,00 EUR"), (FigureText{"1.250", ",00", "EUR"}));
    EXPECT_EQ(splitFigure("-12,5 A"), (FigureText{minus + "12", ",5", "A"}));
    EXPECT_EQ(splitFigure("403 V DC"), (FigureText{"403", "", "V DC"}));
    EXPECT_EQ(splitFigure("7"), (FigureText{"7", "", ""}));
    EXPECT_EQ(splitFigure("2/0 AWG"), (FigureText{"2/0", "", "AWG"}));
    EXPECT_EQ(splitFigure("1,234,567 kg"), (FigureText{"1,234,567", "", "kg"}));
    EXPECT_EQ(splitFigure("unknown"), (FigureText{"unknown", "", ""}));
    EXPECT_EQ(splitFigure(""), (FigureText{"", "", ""}));
    EXPECT_EQ(fractionDigits(splitFigure("11.25 kg")), 2);
    EXPECT_EQ(fractionDigits(splitFigure("11 kg")), 0);
}

TEST(Figures, giveEveryDigitTheSameRoom)
{
    const Themed themed;
    const QFontMetricsF metrics(themed.theme.font(Lettering::Body));
    EXPECT_DOUBLE_EQ(tabularWidth(metrics, "1111"), tabularWidth(metrics, "0848"));
    EXPECT_GT(tabularWidth(metrics, "1111"), metrics.horizontalAdvance("1111"));
}

TEST(FigureLabel, standsOnTheSameDecimalSignWithMoreOrFewerDecimals)
{
    const Themed themed;
    FigureLabel label(themed.theme);
    label.setDecimals(2);
    label.setUnitRoom("kg");
    const auto wholeEndsAt = [&](const QString &text) {
        label.setFigure(text);
        label.resize(200, 24);
        const QImage picture = label.grab().toImage();
        const QColor ground = picture.pixelColor(0, 0);
        // where the first ink of the only whole digit, a one, stands
        for (int x = 0; x < picture.width(); ++x) {
            for (int y = 0; y < picture.height(); ++y) {
                if (picture.pixelColor(x, y) != ground)
                    return x;
            }
        }
        return -1;
    };
    const int at = wholeEndsAt("1.25 kg");
    EXPECT_GT(at, 0);
    EXPECT_EQ(wholeEndsAt("1.5 V"), at);
    EXPECT_EQ(wholeEndsAt("1 A"), at);
    EXPECT_EQ(spoken(&label), QStringLiteral("1 A"));
}

TEST(Marks, differInShapeAloneAndInWord)
{
    std::set<QByteArray> shapes;
    std::set<QString> words;
    for (const Mark mark : allMarks()) {
        shapes.insert(pictureOf(mark));
        words.insert(markWord(mark));
    }
    EXPECT_EQ(shapes.size(), allMarks().size());
    EXPECT_EQ(words.size(), allMarks().size());
    EXPECT_EQ(allMarks().size(), 16U);
}

TEST(StateMark, isItsWordToAScreenReaderAlsoAfterAChange)
{
    const Themed themed;
    StateMark mark(themed.theme, Mark::Holds);
    EXPECT_EQ(spoken(&mark), QStringLiteral("holds"));
    mark.setMark(Mark::Tight);
    EXPECT_EQ(spoken(&mark), QStringLiteral("tight"));
    mark.setWords(QStringLiteral("tight, 4 V to spare"));
    EXPECT_EQ(spoken(&mark), QStringLiteral("tight, 4 V to spare"));
    EXPECT_GE(mark.sizeHint().width(), 16 + mark.fontMetrics().horizontalAdvance(mark.text()));
}

TEST(HvTag, isReadOutInFullAndOutlinedInOrange)
{
    const Themed themed;
    HvTag tag(themed.theme);
    EXPECT_EQ(spoken(&tag), QStringLiteral("High voltage"));
    tag.resize(tag.sizeHint());
    const QImage picture = tag.grab().toImage();
    EXPECT_EQ(picture.pixelColor(picture.width() / 2, 0), tokensOf(Shade::Light).highVoltage);
}

TEST(MoneyBar, addsOnlyWhatIsPositiveAndKnowsWhenItIsOver)
{
    EXPECT_EQ((MoneyShares{100, 20, 30, 500}.total()), 150);
    EXPECT_EQ((MoneyShares{-100, 20, 30, 500}.total()), 50);
    EXPECT_FALSE((MoneyShares{100, 20, 30, 150}.overAllowance()));
    EXPECT_TRUE((MoneyShares{100, 20, 31, 150}.overAllowance()));
}

TEST(MoneyBar, drawsSharesToScaleAndReadsThemOut)
{
    const Themed themed;
    MoneyBar bar(themed.theme);
    bar.setShares({500, 0, 0, 1000}, QStringLiteral("5.00 EUR spent of 10.00 EUR"));
    bar.resize(400, 24);
    const QImage picture = bar.grab().toImage();
    const Tokens &tokens = themed.theme.tokens();
    EXPECT_EQ(picture.pixelColor(150, 12), tokens.ink);
    EXPECT_EQ(picture.pixelColor(198, 12), tokens.ink);
    EXPECT_EQ(picture.pixelColor(202, 12), tokens.panel);
    EXPECT_EQ(picture.pixelColor(399, 1), tokens.ink) << "the limit stands out of the bar";
    EXPECT_EQ(spoken(&bar), QStringLiteral("5.00 EUR spent of 10.00 EUR"));
}

TEST(MoneyBar, drawsNothingAtAllWithoutTrouble)
{
    const Themed themed;
    MoneyBar bar(themed.theme);
    bar.setShares({0, 0, 0, 0}, QStringLiteral("nothing yet"));
    bar.resize(100, 24);
    EXPECT_FALSE(bar.grab().isNull());
}

TEST(CautionCard, holdsItsLinesAsReadableText)
{
    const Themed themed;
    CautionCard card(themed.theme, "high voltage", {"Measure first."});
    card.setLines({"Capacitors stay charged.", "Never alone."});
    QStringList texts;
    for (const auto *label : card.findChildren<QLabel *>())
        texts << label->text();
    EXPECT_TRUE(texts.contains("Caution: high voltage"));
    EXPECT_TRUE(texts.contains("Never alone."));
    EXPECT_FALSE(texts.contains("Measure first."));
}

TEST(EmptyPage, startsByItsOneButton)
{
    const Themed themed;
    EmptyPage page(themed.theme, "parts", "No parts yet", "Log the first one.", "&Log a part");
    const QSignalSpy started(&page, &EmptyPage::started);
    page.resize(600, 500);
    showActive(page);
    page.setFocus();
    EXPECT_EQ(QApplication::focusWidget(), page.button());
    press(Qt::Key_Space);
    EXPECT_EQ(started.count(), 1);
    EXPECT_EQ(spoken(page.button(), QAccessible::Description),
              QStringLiteral("Log the first one."));
}

TEST(DropArea, takesAPastedPicture)
{
    const Themed themed;
    DropArea area(themed.theme);
    const QSignalSpy came(&area, &DropArea::pictureCame);
    showActive(area);
    area.setFocus();
    QImage picture(8, 6, QImage::Format_RGB32);
    picture.fill(Qt::darkGreen);
    QGuiApplication::clipboard()->setImage(picture);
    press(Qt::Key_V, Qt::ControlModifier);
    ASSERT_EQ(came.count(), 1);
    EXPECT_EQ(came.at(0).at(0).value<QImage>().size(), QSize(8, 6));
}

TEST(DropArea, saysWhyAPastedTextIsRefused)
{
    const Themed themed;
    DropArea area(themed.theme);
    const QSignalSpy refused(&area, &DropArea::refused);
    showActive(area);
    area.setFocus();
    QGuiApplication::clipboard()->setText("just words");
    press(Qt::Key_V, Qt::ControlModifier);
    ASSERT_EQ(refused.count(), 1);
    EXPECT_EQ(refused.at(0).at(0).toString(),
              QStringLiteral("The clipboard holds no photo and no file."));
}

TEST(DropArea, takesDroppedFilesAndLeavesOutWhatIsNotThere)
{
    const Themed themed;
    DropArea area(themed.theme);
    const QSignalSpy came(&area, &DropArea::filesCame);
    QTemporaryFile file;
    ASSERT_TRUE(file.open());
    QMimeData mime;
    mime.setUrls({QUrl::fromLocalFile(file.fileName()), QUrl::fromLocalFile("/no/such/photo.jpg"),
                  QUrl("https://example.org/photo.jpg")});
    QDropEvent drop(QPointF(10, 10), Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
    // past QApplication, which delivers drops only in the course of a drag
    static_cast<QObject &>(area).event(&drop);
    ASSERT_EQ(came.count(), 1);
    EXPECT_EQ(came.at(0).at(0).toStringList(), QStringList{file.fileName()});
    EXPECT_TRUE(drop.isAccepted());
}

TEST(DropArea, asksForFilesByItsButton)
{
    const Themed themed;
    DropArea area(themed.theme);
    const QSignalSpy wanted(&area, &DropArea::chooseWanted);
    showActive(area);
    area.setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(wanted.count(), 1);
}

TEST(MoneyBarLegend, takesMoreRowsRatherThanMoreWidth)
{
    Themed themed;
    const MoneyBarLegend legend(themed.theme);
    const QSize whole = legend.sizeHint();
    EXPECT_EQ(legend.heightForWidth(whole.width()), whole.height());
    EXPECT_GT(legend.heightForWidth(whole.width() * 2 / 3), whole.height());
    EXPECT_LT(legend.minimumSizeHint().width(), whole.width() / 2);
}

TEST(WrapLayout, breaksIntoRowsAndCutsNothingOff)
{
    Themed themed;
    QWidget window;
    auto *outer = new QVBoxLayout(&window);
    auto *box = new QWidget;
    auto *row = new WrapLayout(box, 4);
    outer->addWidget(box);
    outer->addStretch(1);
    QList<QPushButton *> buttons;
    for (const char *word : {"tested", "in hand", "quarantined", "sold", "scrapped"}) {
        buttons << new QPushButton(QLatin1String(word));
        row->addWidget(buttons.back());
    }
    window.resize(900, 300);
    showActive(window);
    EXPECT_EQ(buttons.front()->y(), buttons.back()->y());
    const int width = buttons.front()->width();
    window.resize(300, 300);
    QTest::qWait(10);
    EXPECT_GT(buttons.back()->y(), buttons.front()->y());
    EXPECT_EQ(buttons.front()->width(), width);
    for (const QPushButton *button : buttons)
        EXPECT_TRUE(box->rect().contains(button->geometry())) << button->text().toStdString();
}

TEST(SectionTitle, wrapsALongNameWhereItIsAllowedTo)
{
    Themed themed;
    QWidget window;
    auto *column = new QVBoxLayout(&window);
    auto *title =
        new SectionTitle(themed.theme, QStringLiteral("Charge controller for pilot and proximity"),
                         TitleLevel::Page);
    column->addWidget(title);
    column->addStretch(1);
    const int whole = title->minimumSizeHint().width();
    title->setWraps(true);
    EXPECT_LT(title->minimumSizeHint().width(), whole / 2);
    window.resize(whole + 200, 200);
    showActive(window);
    const int line = title->height();
    window.resize(whole / 2, 200);
    EXPECT_TRUE(QTest::qWaitFor([&] { return title->height() > line; }));
}
