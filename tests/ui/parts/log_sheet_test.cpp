// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/parts/page_fixture.h"
#include "ui/widgets/field.h"
#include "ui/widgets/state_mark.h"

#include <QClipboard>
#include <QImage>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class TheLogSheet : public APartsPage
{
protected:
    void type(const QString &text)
    {
        keys += static_cast<int>(text.size());
        driving::type(text);
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        ++keys;
        driving::press(key, modifiers);
    }
    void tab() { press(Qt::Key_Tab); }

    QString focusName() { return spoken(QApplication::focusWidget()); }

    // Typed into the field of that name, without counting.
    void fill(const char *name, const QString &text)
    {
        auto *line = control<QLineEdit>(QString::fromLatin1(name), &page->logSheet());
        ASSERT_NE(line, nullptr);
        line->setFocus();
        line->selectAll();
        driving::type(text);
    }

    int keys = 0;
};

} // namespace

TEST_F(TheLogSheet, takesAPartFromNewSellerAndDonorByKeysAloneWithinTwentyFiveMoves)
{
    const auto traction = circuit("Traction", "403 V");
    open();
    page->list().setFocus();
    control<QLineEdit>("Filter the parts")->setFocus();
    int moves = 0;
    QObject::connect(qApp, &QApplication::focusChanged, page.get(),
                     [&](QWidget *, QWidget *now) { moves += now != nullptr; });

    press(Qt::Key_L, Qt::ControlModifier);
    ASSERT_EQ(focusName(), "Name");
    type("Front inverter");
    tab(); // kind: a unit
    tab(); // state: in hand
    tab();
    ASSERT_EQ(focusName(), "Seller");
    type("Hillside Salvage");
    tab();
    type("a"); // insurance auction
    tab();
    ASSERT_EQ(focusName(), "Donor vehicle");
    type("Sample Hatch 2018");
    tab();
    ASSERT_EQ(focusName(), "Price");
    type("1200 GBP");
    tab();
    ASSERT_EQ(focusName(), "Rate");
    type("1.17");
    tab();
    ASSERT_EQ(focusName(), "Freight of the order");
    type("85");
    tab(); // day: today
    tab(); // more costs: none
    tab();
    ASSERT_EQ(focusName(), "Warranty, days");
    type("90");
    tab();
    ASSERT_EQ(focusName(), "Circuit");
    type("tr");
    tab();
    ASSERT_EQ(focusName(), "DC voltage limit") << "what the circuit asks comes next";
    tab(); // left empty: an open question, and of none a source is asked
    tab();
    type("cur"); // rated quantity
    tab();       // limit
    tab();
    ASSERT_EQ(focusName(), "Value");
    type("340 A DC");
    tab();
    type("n"); // evidence: nameplate
    tab();
    ASSERT_EQ(focusName(), "Source");
    type("photo 3");
    press(Qt::Key_Return);

    EXPECT_LE(moves, 25);
    EXPECT_LE(keys * 0.2, 45.0) << keys << " keys at 200 ms each";
    RecordProperty("focus_moves", moves);
    RecordProperty("keys", keys);

    const Records &records = book.records();
    const QDate today = book.clock.today();
    const Currency pound = *Currency::fromCode(u"GBP");
    ASSERT_EQ(records.all<Seller>().size(), 1U);
    EXPECT_EQ(records.all<Seller>().rows()[0].name, "Hillside Salvage");
    EXPECT_EQ(records.all<Seller>().rows()[0].kind, SellerKind::Auction);
    ASSERT_EQ(records.all<Donor>().size(), 1U);
    const Donor &donor = records.all<Donor>().rows()[0];
    EXPECT_EQ(donor.make, "Sample");
    EXPECT_EQ(donor.model, "Hatch");
    EXPECT_EQ(donor.year, 2018);
    ASSERT_EQ(records.all<Purchase>().size(), 1U);
    const Purchase &purchase = records.all<Purchase>().rows()[0];
    EXPECT_EQ(purchase.seller, records.all<Seller>().rows()[0].id);
    EXPECT_EQ(purchase.currency, pound);
    EXPECT_EQ(purchase.rate, *Rate::parse(u"1.17", NumberStyle::pointDecimal()));
    EXPECT_EQ(purchase.freight, Money(8500, pound));
    EXPECT_EQ(purchase.orderedOn, today);
    ASSERT_EQ(records.all<PurchaseItem>().size(), 1U);
    const PurchaseItem &item = records.all<PurchaseItem>().rows()[0];
    EXPECT_EQ(item.unitPrice, Money(120000, pound));
    EXPECT_EQ(item.count, 1);
    ASSERT_EQ(records.all<Payment>().size(), 1U);
    EXPECT_EQ(records.all<Payment>().rows()[0].amount, Money(128500, pound));
    ASSERT_EQ(records.all<Part>().size(), 1U);
    const Part &part = records.all<Part>().rows()[0];
    EXPECT_EQ(part.name, "Front inverter");
    EXPECT_EQ(part.kind, PartKind::Unit);
    EXPECT_EQ(part.state, PartState::InHand);
    EXPECT_EQ(part.donor, donor.id);
    EXPECT_EQ(part.bought, item.id);
    EXPECT_EQ(part.warrantyUntil, today.addDays(90));
    ASSERT_EQ(records.all<Rating>().size(), 1U);
    const Rating &rating = records.all<Rating>().rows()[0];
    EXPECT_EQ(rating.quantity, RatedQuantity::Current);
    EXPECT_EQ(rating.kind, RatingKind::Limit);
    EXPECT_EQ(rating.current, CurrentKind::Dc);
    EXPECT_EQ(rating.value, amount("340 A"));
    EXPECT_EQ(rating.evidence, Evidence::Nameplate);
    EXPECT_EQ(rating.source, "photo 3");
    const auto connections = records.of<Connection>(part.id);
    ASSERT_EQ(connections.size(), 1U);
    EXPECT_EQ(connections[0].circuit, traction);
    const auto questions = openQuestions(records, part.id);
    EXPECT_EQ(std::count_if(
                  questions.begin(), questions.end(),
                  [](const Question &q) { return q.figure.quantity == RatedQuantity::Voltage; }),
              1);
    EXPECT_EQ(book->undoText(), "Log Front inverter") << "one edit";
}

TEST_F(TheLogSheet, staysOpenForTheNextPartWithSellerDonorAndDayKept)
{
    open();
    driving::press(Qt::Key_L, Qt::ControlModifier);
    fill("Name", "Inverter");
    fill("Seller", "Yard");
    fill("Donor vehicle", "Sample Hatch 2018");
    fill("Price", "100");
    fill("Day", "2026-06-01");
    driving::press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Part>().size(), 1U);
    EXPECT_EQ(focusName(), "Name");
    EXPECT_TRUE(control<QLineEdit>("Name")->text().isEmpty());
    EXPECT_TRUE(control<QLineEdit>("Price", &page->logSheet())->text().isEmpty());
    fill("Name", "Motor");
    fill("Price", "200");
    driving::press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Part>().size(), 2U);
    EXPECT_EQ(book.records().all<Seller>().size(), 1U);
    EXPECT_EQ(book.records().all<Donor>().size(), 1U);
    for (const Purchase &purchase : book.records().all<Purchase>())
        EXPECT_EQ(purchase.orderedOn, QDate(2026, 6, 1));
    driving::press(Qt::Key_Escape);
    EXPECT_FALSE(page->logSheet().isVisible());
    EXPECT_EQ(QApplication::focusWidget(), &page->list().table());
}

TEST_F(TheLogSheet, tellsEachProblemAtItsFieldAndWritesNothing)
{
    open();
    const auto step = book->undoText();
    driving::press(Qt::Key_L, Qt::ControlModifier);
    driving::press(Qt::Key_Return);
    EXPECT_EQ(focusName(), "Name");
    EXPECT_FALSE(spoken(QApplication::focusWidget(), QAccessible::Description).isEmpty());
    fill("Name", "Inverter");
    fill("Price", "12 zlorps");
    driving::press(Qt::Key_Return);
    EXPECT_EQ(focusName(), "Price");
    fill("Price", "1200 GBP");
    driving::press(Qt::Key_Return);
    EXPECT_EQ(focusName(), "Seller") << "a price needs one";
    fill("Seller", "Yard");
    driving::press(Qt::Key_Return); // takes "new: Yard" from the list
    driving::press(Qt::Key_Return);
    EXPECT_EQ(focusName(), "Rate") << "no day rate is known";
    fill("Rate", "1.17");
    fill("Freight of the order", "20 USD");
    driving::press(Qt::Key_Return);
    EXPECT_EQ(focusName(), "Freight of the order");
    fill("Freight of the order", "20");
    fill("Warranty, days", "ninety");
    driving::press(Qt::Key_Return);
    EXPECT_EQ(focusName(), "Warranty, days");
    fill("Warranty, days", "90");
    fill("Value", "400 kg");
    driving::press(Qt::Key_Return);
    EXPECT_EQ(focusName(), "Value");
    EXPECT_EQ(book->undoText(), step);
    EXPECT_EQ(book.records().all<Seller>().size(), 0U);
    fill("Value", "400 V DC");
    driving::press(Qt::Key_Return);
    EXPECT_EQ(book.records().all<Part>().size(), 1U);
}

TEST_F(TheLogSheet, offersTheNewestDayRateForAForeignPrice)
{
    DayRate rate;
    rate.key = "gbp-june";
    rate.currency = *Currency::fromCode(u"GBP");
    rate.on = QDate(2026, 6, 1);
    rate.rate = *Rate::parse(u"1.1825", NumberStyle::pointDecimal());
    book.add(rate);
    open();
    driving::press(Qt::Key_L, Qt::ControlModifier);
    fill("Price", "10");
    for (QLineEdit *line : page->logSheet().findChildren<QLineEdit *>())
        EXPECT_FALSE(line->isVisible() && spoken(line) == "Rate") << "the book's own currency";
    fill("Price", "10 GBP");
    EXPECT_EQ(control<QLineEdit>("Rate")->text(), "1.1825");
}

TEST_F(TheLogSheet, joinsAnOrderThatIsInTheBook)
{
    open();
    driving::press(Qt::Key_L, Qt::ControlModifier);
    fill("Name", "Inverter");
    fill("Seller", "Yard");
    fill("Price", "100");
    fill("Freight of the order", "30");
    driving::press(Qt::Key_Return);
    fill("Name", "Motor");
    fill("Price", "200");
    control<QPushButton>("More costs, or an order in the book")->click();
    fill("Joins the order", "Yard");
    driving::press(Qt::Key_Return); // takes the one offered
    EXPECT_FALSE(control<QLineEdit>("Freight of the order")->isEnabled());
    driving::press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Part>().size(), 2U);
    EXPECT_EQ(book.records().all<Purchase>().size(), 1U);
    EXPECT_EQ(book.records().all<PurchaseItem>().size(), 2U);
}

TEST_F(TheLogSheet, keepsAnEstimateForAPartThatIsOnlyWanted)
{
    open();
    driving::press(Qt::Key_L, Qt::ControlModifier);
    fill("Name", "Charger");
    auto *state = control<QComboBox>("in hand");
    ASSERT_NE(state, nullptr);
    state->setFocus();
    driving::type("w");
    EXPECT_FALSE(control<QLineEdit>("Seller")->isEnabled());
    fill("Price", "450 GBP");
    driving::press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Part>().size(), 1U);
    const Part &part = book.records().all<Part>().rows()[0];
    EXPECT_EQ(part.state, PartState::Wanted);
    EXPECT_EQ(part.estimate, Money(45000, *Currency::fromCode(u"GBP")));
}

TEST_F(TheLogSheet, takesAPhotoPastedWhereverTheCursorIs)
{
    open();
    driving::press(Qt::Key_L, Qt::ControlModifier);
    fill("Name", "Inverter");
    QImage photo(40, 30, QImage::Format_RGB32);
    photo.fill(Qt::darkGreen);
    QApplication::clipboard()->setImage(photo);
    driving::press(Qt::Key_V, Qt::ControlModifier);
    driving::press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Attachment>().size(), 1U);
    const Attachment &kept = book.records().all<Attachment>().rows()[0];
    const auto bytes = book->blob(kept.sha256);
    OHMWRIGHT_ASSERT_OK(bytes);
    EXPECT_EQ(QImage::fromData(*bytes).size(), QSize(40, 30));
}

TEST_F(TheLogSheet, judgesAPartAgainstItsCircuitBeforeItIsSaved)
{
    circuit("Traction", "454 V");
    open();
    press(Qt::Key_L, Qt::ControlModifier);
    fill("Name", "Relay");
    fill("Circuit", "Traction");
    press(Qt::Key_Tab);
    fill("DC voltage limit", "400 V");
    press(Qt::Key_Tab);
    const auto verdict = [&] {
        for (StateMark *mark : page->logSheet().findChildren<StateMark *>())
            if (mark->isVisible())
                return mark->text();
        return QString();
    };
    EXPECT_TRUE(verdict().startsWith(QStringLiteral("fails"))) << verdict().toStdString();
    fill("DC voltage limit", "600 V");
    press(Qt::Key_Tab);
    EXPECT_FALSE(verdict().startsWith(QStringLiteral("fails"))) << verdict().toStdString();
    EXPECT_FALSE(verdict().isEmpty());
    fill("DC voltage limit", QString());
    press(Qt::Key_Backspace);
    press(Qt::Key_Tab);
    EXPECT_TRUE(verdict().isEmpty());
    EXPECT_EQ(book.records().all<Part>().size(), 0U) << "nothing is saved by that";
}

TEST_F(TheLogSheet, takesABareNumberInTheUnitItNames)
{
    circuit("Traction", "454 V");
    open();
    press(Qt::Key_L, Qt::ControlModifier);
    fill("Name", "Charger");
    fill("Circuit", "Traction");
    press(Qt::Key_Tab);
    ASSERT_EQ(focusName(), "DC voltage limit");
    EXPECT_TRUE(spoken(QApplication::focusWidget(), QAccessible::Description).startsWith("in V"));
    driving::type("450");
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Rating>().size(), 1U);
    EXPECT_EQ(book.records().all<Rating>().rows()[0].value, amount("450 V"));
}

TEST_F(TheLogSheet, keepsTheSourceOfEachRatingWithItAlone)
{
    circuit("Traction", "454 V");
    open();
    press(Qt::Key_L, Qt::ControlModifier);
    fill("Name", "Charger");
    fill("Circuit", "Traction");
    press(Qt::Key_Tab);
    ASSERT_EQ(focusName(), "DC voltage limit");
    driving::type("450 V");
    press(Qt::Key_Tab);
    press(Qt::Key_Tab);
    ASSERT_EQ(focusName(), "Source") << "there as soon as a value is";
    driving::type("plate, left side");
    press(Qt::Key_Tab);
    driving::type("cur");
    fill("Value", "30 A DC");
    press(Qt::Key_Tab);
    press(Qt::Key_Tab);
    ASSERT_EQ(focusName(), "Source");
    EXPECT_EQ(spoken(QApplication::focusWidget(), QAccessible::Description),
              "document and page, instrument, who said so");
    driving::type("workshop book 17-4");
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Rating>().size(), 2U);
    EXPECT_EQ(book.records().all<Rating>().rows()[0].source, "plate, left side");
    EXPECT_EQ(book.records().all<Rating>().rows()[1].source, "workshop book 17-4");
    for (QLineEdit *line : page->logSheet().findChildren<QLineEdit *>())
        EXPECT_FALSE(line->isVisible() && spoken(line) == "Source")
            << "the next part begins without one";
}

TEST_F(TheLogSheet, keepsAQuestionMarkAsNotKnown)
{
    circuit("Traction", "454 V");
    open();
    press(Qt::Key_L, Qt::ControlModifier);
    fill("Name", "Charger");
    fill("Circuit", "Traction");
    press(Qt::Key_Tab);
    driving::type("450 V");
    press(Qt::Key_Tab); // its evidence
    press(Qt::Key_Tab); // its source
    press(Qt::Key_Tab);
    driving::type("cur");
    fill("Value", "? DC");
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Part>().size(), 1U);
    const auto ratings = book.records().of<Rating>(book.records().all<Part>().rows()[0].id);
    ASSERT_EQ(ratings.size(), 2U);
    EXPECT_EQ(ratings[1].quantity, RatedQuantity::Current);
    EXPECT_EQ(ratings[1].current, CurrentKind::Dc);
    EXPECT_FALSE(ratings[1].value.has_value());
}

TEST_F(TheLogSheet, keepsTheDayAndTheDurationOfARating)
{
    open();
    press(Qt::Key_L, Qt::ControlModifier);
    fill("Name", "Inverter");
    auto *sort = control<QComboBox>("limit");
    ASSERT_NE(sort, nullptr);
    sort->setFocus();
    driving::type("peak");
    fill("Value", "450 V DC");
    fill("Read or measured on", "2026-05-03");
    fill("For how long", "thirty");
    press(Qt::Key_Return);
    EXPECT_EQ(focusName(), "For how long") << "told at its field";
    fill("For how long", "30 s");
    press(Qt::Key_Return);
    ASSERT_EQ(book.records().all<Rating>().size(), 1U);
    const Rating &rating = book.records().all<Rating>().rows()[0];
    EXPECT_EQ(rating.on, QDate(2026, 5, 3));
    EXPECT_EQ(rating.duration, amount("30 s"));
    EXPECT_EQ(rating.basis, RatingBasis::Peak);
}

TEST_F(TheLogSheet, asksWhetherARateFarFromTheKnownOneIsMeant)
{
    DayRate known;
    known.key = "gbp-june";
    known.currency = *Currency::fromCode(u"GBP");
    known.on = QDate(2026, 6, 1);
    known.rate = *Rate::parse(u"1.1825", NumberStyle::pointDecimal());
    book.add(known);
    open();
    press(Qt::Key_L, Qt::ControlModifier);
    fill("Name", "Inverter");
    fill("Seller", "Yard");
    press(Qt::Key_Return); // takes "new: Yard" from the list
    fill("Price", "850 GBP");
    press(Qt::Key_Tab);
    ASSERT_EQ(focusName(), "Rate");
    auto *rate = qobject_cast<QLineEdit *>(QApplication::focusWidget());
    driving::type("60"); // meant for the freight
    press(Qt::Key_Tab);
    const auto told = [&] {
        return spoken(rate, QAccessible::Description);
    };
    EXPECT_TRUE(told().contains("1.1825") && told().contains("60")) << told().toStdString();
    EXPECT_TRUE(spoken(control<QLineEdit>("Freight of the order"), QAccessible::Description)
                    .contains("GBP"));
    fill("Rate", "1.21");
    press(Qt::Key_Tab);
    EXPECT_FALSE(told().contains("meant")) << told().toStdString();
    press(Qt::Key_Return);
    EXPECT_EQ(book.records().all<Part>().size(), 1U);
}
