// SPDX-License-Identifier: GPL-3.0-or-later
// What the price typed on the sheet to log a part brings with it: its currency, the rate of the
// day, and the order it joins.
#include "ui/parts/log_sheet.h"
#include "ui/parts/part_words.h"
#include "ui/widgets/field.h"
#include "ui/widgets/pick_or_new.h"

#include <QLineEdit>

namespace ohmwright::ui {

void LogSheet::followPrice()
{
    const Currency own = m_book.records().build().currency;
    const Result<Money> price = parseMoney(m_price->text(), pageStyle(), own);
    const bool foreign = price && price->currency() != own && state() != PartState::Wanted &&
                         m_order->key().isEmpty();
    const Purchase *order = m_book.records().byKey<Purchase>(m_order->key());
    const Currency paidIn = order ? order->currency : price ? price->currency() : own;
    m_fields.at(QStringLiteral("unit_price"))
        ->setHint(state() == PartState::Wanted ? tr("what it is expected to cost")
                  : order                      ? tr("%1, as that order").arg(order->currency.code())
                                               : tr("%1, or with its currency").arg(own.code()));
    for (const char *where : {"freight", "duty", "tax"})
        m_fields.at(QString::fromLatin1(where))
            ->setHint(tr("%1, for all of the order").arg(paidIn.code()));
    Field &field = *m_fields.at(QStringLiteral("rate"));
    field.setVisible(foreign);
    if (!foreign)
        return;
    const auto known = knownRate();
    field.setHint(known ? tr("%1 for one %2; the book knows %3")
                              .arg(own.code(), price->currency().code(), known->print())
                        : tr("%1 for one %2").arg(own.code(), price->currency().code()));
    if (!m_rateTyped)
        m_rate->setText(known ? known->print() : QString());
}

std::optional<Rate> LogSheet::knownRate() const
{
    const Currency own = m_book.records().build().currency;
    const Result<Money> price = parseMoney(m_price->text(), pageStyle(), own);
    const Result<QDate> on = day();
    return price && on ? rateOn(m_book.records(), price->currency(), *on) : std::nullopt;
}

// The rate stands between price and freight: whoever types on without looking has put the freight
// there. Asked, not refused: a rate is what was paid.
void LogSheet::doubtRate()
{
    const Currency own = m_book.records().build().currency;
    const Result<Money> price = parseMoney(m_price->text(), pageStyle(), own);
    const Result<Rate> typed = Rate::parse(m_rate->text(), pageStyle());
    const auto known = knownRate();
    if (!price || !typed || !known)
        return;
    const auto asTyped = typed->convertIfFits(*price, own);
    const auto asKnown = known->convertIfFits(*price, own);
    if (!asTyped || !asKnown)
        return;
    constexpr int kFar = 2; // times; within one build, currencies hardly move that much
    const bool far =
        asTyped->minor() > kFar * asKnown->minor() || asKnown->minor() > kFar * asTyped->minor();
    m_fields.at(QStringLiteral("rate"))
        ->setProblem(far ? tr("The book knows %1. Is %2 meant?")
                               .arg(known->print(), m_rate->text().trimmed())
                         : QString());
}

void LogSheet::followOrder()
{
    const bool joins = !m_order->key().isEmpty();
    const bool bought = state() != PartState::Wanted;
    for (const char *where : {"seller", "freight", "duty", "tax"})
        m_fields.at(QString::fromLatin1(where))->setEnabled(bought && !joins);
    if (const Purchase *purchase = m_book.records().byKey<Purchase>(m_order->key());
        joins && purchase)
        if (const Seller *seller = m_book.records().find(purchase->seller))
            m_seller->setKey(seller->key);
    followPrice();
}

} // namespace ohmwright::ui
