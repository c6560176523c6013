// SPDX-License-Identifier: GPL-3.0-or-later
// What is read from the sheet to log a part on, and where its problems are shown.
#include "ui/parts/log_sheet.h"
#include "ui/parts/part_words.h"
#include "ui/parts/rating_line.h"
#include "ui/widgets/field.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>

namespace ohmwright::ui {

namespace {

// Where a problem is that the line it is in has shown and put the cursor to.
constexpr const char *kShownAlready = "shown already";

tl::unexpected<Problem> bad(const char *where, const QString &sentence,
                            const QString &whatToDo = {})
{
    return fail(ProblemCode::BadInput, sentence, whatToDo, QString::fromLatin1(where));
}

// A problem of a value, told at the field it was typed in.
tl::unexpected<Problem> at(const char *where, Problem problem)
{
    problem.where = QString::fromLatin1(where);
    return fail(std::move(problem));
}

} // namespace

PartState LogSheet::state() const
{
    return chosenWord<PartState>(*m_state);
}

Result<QDate> LogSheet::day() const
{
    const QDate today = m_book.clock().today();
    if (m_on->text().trimmed().isEmpty())
        return today;
    const Result<QDate> read = parseDate(m_on->text(), today);
    return read ? read : Result<QDate>(at("on", read.error()));
}

void LogSheet::clearProblems()
{
    m_told->clear();
    for (const auto &[where, field] : m_fields)
        field->setProblem({});
}

void LogSheet::refuse(const Problem &problem)
{
    if (problem.where == QLatin1String(kShownAlready))
        return;
    const auto found = m_fields.find(problem.where);
    if (found == m_fields.end()) {
        m_told->setText(sentenceOf(problem));
        return;
    }
    Field &field = *found->second;
    if (!m_more->isVisible() && m_more->isAncestorOf(&field))
        showMore(true);
    if (problem.where == QLatin1String("rate"))
        field.show();
    field.setProblem(sentenceOf(problem));
    field.editor()->setFocus(Qt::OtherFocusReason);
    m_scroll->ensureWidgetVisible(&field);
}

Result<LogEntry> LogSheet::readEntry()
{
    LogEntry entry;
    entry.name = m_name->text().trimmed();
    if (entry.name.isEmpty())
        return bad("name", tr("The part needs a name."));
    entry.kind = chosenWord<PartKind>(*m_kind);
    entry.state = state();
    const Result<QDate> on = day();
    if (!on)
        return fail(on.error());
    entry.on = *on;
    if (Outcome source = readSource(entry); !source)
        return fail(source.error());
    Result<std::optional<LogPrice>> price = readPrice(entry);
    if (!price)
        return fail(price.error());
    entry.price = std::move(*price);
    if (Outcome ratings = readRatings(entry); !ratings)
        return fail(ratings.error());
    entry.place = m_place->text().trimmed();
    entry.serial = m_serial->text().trimmed();
    entry.condition = m_condition->text().trimmed();
    for (const Photo &photo : m_photos)
        entry.photos.push_back(photo.photo);
    return entry;
}

Outcome LogSheet::readSource(LogEntry &entry)
{
    if (!m_donor->name().isEmpty()) {
        if (const Donor *donor = m_book.records().byKey<Donor>(m_donor->key()))
            entry.donor = donor->id;
        else
            entry.donor = donorFromText(m_donor->name());
    }
    const QString days = m_warranty->text().trimmed();
    if (!days.isEmpty() && entry.state != PartState::Wanted) {
        const Result<Amount> read =
            parseAmount(days, pageStyle(), Measure::Duration, Unit::fromSymbol(u"d"));
        if (!read)
            return at("warranty_days", read.error());
        constexpr double kSecondsPerDay = 86400.0;
        const double count = read->si() / kSecondsPerDay;
        if (count < 0 || count > 36500 || count != static_cast<int>(count))
            return bad("warranty_days", tr("A warranty is a whole number of days, 0 to 36500."));
        entry.warrantyDays = static_cast<int>(count);
    }
    return {};
}

Result<ThereOrNew<Seller>> LogSheet::readSeller()
{
    if (const Seller *seller = m_book.records().byKey<Seller>(m_seller->key()))
        return ThereOrNew<Seller>(seller->id);
    if (m_seller->name().isEmpty())
        return bad("seller", tr("Who sold it? The price needs a seller."));
    Seller seller;
    seller.name = m_seller->name();
    seller.kind = chosenWord<SellerKind>(*m_sellerKind);
    return ThereOrNew<Seller>(seller);
}

Result<std::optional<Money>> LogSheet::readMoney(QLineEdit &line, const char *where,
                                                 Currency fallback)
{
    if (line.text().trimmed().isEmpty() || !line.isEnabled())
        return std::optional<Money>();
    const Result<Money> read = parseMoney(line.text(), pageStyle(), fallback);
    if (!read)
        return at(where, read.error());
    return std::optional(*read);
}

Result<std::optional<LogPrice>> LogSheet::readPrice(LogEntry &entry)
{
    const Records &records = m_book.records();
    const Purchase *order = nullptr;
    if (entry.state != PartState::Wanted && !m_order->name().isEmpty()) {
        order = records.byKey<Purchase>(m_order->key());
        if (!order)
            return bad("purchase", tr("There is no such order in the book."),
                       tr("Choose one of those offered, or leave it empty for a new order."));
    }
    const Currency usual = order ? order->currency : records.build().currency;
    Result<std::optional<Money>> unit = readMoney(*m_price, "unit_price", usual);
    if (!unit)
        return fail(unit.error());
    if (entry.state == PartState::Wanted) {
        entry.estimate = *unit;
        return std::optional<LogPrice>();
    }
    if (!*unit) {
        for (const QLineEdit *line : {m_freight, m_duty, m_tax, m_core})
            if (line->isEnabled() && !line->text().trimmed().isEmpty())
                return bad("unit_price", tr("There are costs of an order, but no price."),
                           tr("Type 0 if the part itself was free."));
        return std::optional<LogPrice>();
    }
    LogPrice price;
    price.unitPrice = **unit;
    const Currency currency = price.unitPrice.currency();
    Result<ThereOrNew<Seller>> seller =
        order ? Result<ThereOrNew<Seller>>(order->seller) : readSeller();
    if (!seller)
        return fail(seller.error());
    price.seller = std::move(*seller);
    if (order)
        price.purchase = order->id;
    const auto take = [&](QLineEdit &line, const char *where, Money &into) -> Outcome {
        into = Money::zero(currency);
        const Result<std::optional<Money>> read = readMoney(line, where, currency);
        if (!read)
            return fail(read.error());
        if (*read && (*read)->currency() != currency)
            return bad(where,
                       tr("The price is in %1, this in %2.")
                           .arg(currency.code(), (*read)->currency().code()),
                       tr("Give all costs of one order in one currency."));
        into = read->value_or(into);
        return {};
    };
    for (const auto &[line, where, into] :
         {std::tuple(m_freight, "freight", &price.freight), std::tuple(m_duty, "duty", &price.duty),
          std::tuple(m_tax, "tax", &price.tax),
          std::tuple(m_core, "core_charge", &price.coreCharge)})
        if (Outcome taken = take(*line, where, *into); !taken)
            return fail(taken.error());
    if (!m_count->text().trimmed().isEmpty()) {
        const Result<double> count = parseNumber(m_count->text(), pageStyle());
        if (!count)
            return at("count", count.error());
        if (*count < 1 || *count > 100000 || *count != static_cast<int>(*count))
            return bad("count", tr("How many is a whole number, 1 to 100000."));
        price.count = static_cast<int>(*count);
    }
    if (!order && currency != records.build().currency && !m_rate->text().trimmed().isEmpty()) {
        const Result<Rate> rate = Rate::parse(m_rate->text(), pageStyle());
        if (!rate)
            return at("rate", rate.error());
        price.rate = *rate;
        price.rateSource = m_rateTyped ? tr("typed in when it was logged") : tr("day rate");
    }
    // an ordered part may be paid on arrival; what is in hand was paid for
    price.paid = entry.state == PartState::InHand;
    return std::optional(price);
}

Outcome LogSheet::readRatings(LogEntry &entry)
{
    if (!m_circuit->name().isEmpty()) {
        const Circuit *circuit = m_book.records().byKey<Circuit>(m_circuit->key());
        if (!circuit)
            return bad("circuit", tr("There is no circuit of that name in the book."),
                       tr("Choose one of those offered, or leave it empty."));
        entry.circuits.push_back(circuit->id);
    }
    const auto shown = [&](RatingLine &line, Problem problem) -> Outcome {
        if (line.valueField().hasProblem())
            line.valueField().editor()->setFocus(Qt::OtherFocusReason);
        m_scroll->ensureWidgetVisible(&line);
        return at(kShownAlready, std::move(problem));
    };
    for (RatingLine *line : m_asked) {
        const Result<std::optional<Amount>> value = line->value();
        if (!value)
            return shown(*line, value.error());
        // left empty it is an open question as long as the circuit asks: nothing to record
        if (!*value && !line->isUnknown())
            continue;
        LogRating rating;
        rating.figure = line->figure();
        rating.value = *value;
        rating.evidence = line->evidence();
        rating.source = line->source();
        entry.ratings.push_back(rating);
    }
    Rating typed;
    if (const Outcome read = m_free->read(typed, entry.on); !read)
        return shown(*m_free, read.error());
    if (typed.value || m_free->isUnknown()) {
        LogRating rating;
        rating.figure = m_free->figure();
        rating.value = typed.value;
        rating.duration = typed.duration;
        rating.on = typed.on;
        rating.evidence = typed.evidence;
        rating.source = m_free->source();
        entry.ratings.push_back(rating);
    }
    return {};
}

} // namespace ohmwright::ui
