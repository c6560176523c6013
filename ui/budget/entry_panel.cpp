// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/budget/entry_panel.h"

#include "core/budget/budget_edits.h"
#include "core/quantity/dates.h"
#include "ui/cards/record_list.h"
#include "ui/shell/theme.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/pick_or_new.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

const NumberStyle kStyle = NumberStyle::pointDecimal();
const QString kAmount = QStringLiteral("amount");
const QString kOn = QStringLiteral("on");
const QString kNote = QStringLiteral("note");
constexpr auto kHalf = EntryForm::Width::Half;

QString shown(Money money)
{
    return showMoney(money, kStyle);
}

} // namespace

EntryPanel::EntryPanel(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_heading(new SectionTitle(theme, tr("Entry"))),
      m_words(new QLabel), m_pay(new EntryForm(theme, tr("Add the &payment"))),
      m_core(new EntryForm(theme, tr("&Core charge came back"))),
      m_received(new EntryForm(theme, tr("It was &received"))), m_move(new EntryForm(theme, {})),
      m_line(new PickOrNew(theme)), m_card(new QPushButton),
      m_part(new QPushButton(tr("&Go to the part")))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    m_words->setTextFormat(Qt::PlainText);
    m_words->setWordWrap(true);
    for (QWidget *widget : {static_cast<QWidget *>(m_heading), static_cast<QWidget *>(m_words),
                            static_cast<QWidget *>(m_pay), static_cast<QWidget *>(m_core),
                            static_cast<QWidget *>(m_received), static_cast<QWidget *>(m_move)})
        column->addWidget(widget);
    auto *buttons = new QHBoxLayout;
    buttons->setSpacing(8);
    buttons->addWidget(m_card);
    buttons->addWidget(m_part);
    buttons->addStretch(1);
    column->addLayout(buttons);
    m_line->setKnownOnly(true);
    m_move->addEditor(QStringLiteral("line"), tr("Budget line"), m_line);
    m_move->setSavesItself(true);
    m_move->setSave([this] { return move(); });
    connect(m_card, &QPushButton::clicked, this, &EntryPanel::openCard);
    m_pay->addLine(kAmount, tr("Paid"), kHalf);
    m_pay->addLine(kOn, tr("On"), kHalf);
    m_pay->addLine(kNote, tr("Note"));
    m_core->addLine(kOn, tr("Back on"), kHalf);
    m_received->addLine(kOn, tr("Received on"), kHalf);
    m_pay->setSave([this] { return pay(); });
    m_core->setSave([this] { return coreBack(); });
    m_received->setSave([this] { return received(); });
    connect(m_part, &QPushButton::clicked, this, [this] {
        if (const Part *part = m_entry ? m_book.records().find(m_entry->part) : nullptr)
            emit partWanted(part->key);
    });
    setEntry({});
}

void EntryPanel::setEntry(const std::optional<LineEntry> &entry)
{
    const bool same = entry && m_entry && entry->kind == m_entry->kind &&
                      entry->purchase == m_entry->purchase && entry->item == m_entry->item &&
                      entry->back == m_entry->back;
    m_entry = entry;
    const bool isPurchase = entry && entry->purchase.isSet();
    const PurchaseItem *item = entry ? m_book.records().find(entry->item) : nullptr;
    const bool hasCore = item && !item->coreCharge.isZero();
    const bool isBack = entry && entry->kind == EntryKind::GotBack;
    m_pay->setVisible(isPurchase);
    m_core->setVisible(hasCore);
    m_received->setVisible(isBack);
    m_part->setVisible(entry && m_book.records().find(entry->part));
    m_move->setVisible(standing().id != 0);
    m_card->setVisible(isPurchase || isBack);
    m_card->setText(isBack ? tr("Change it…") : tr("Change the purchase…"));
    showMove();
    m_heading->setText(entry ? entry->name : tr("Entry"));
    m_words->setText(tr("Choose what the line is made of to pay it, or to record what came back."));
    if (!entry)
        return;
    const QString today = showDate(m_book.clock().today());
    if (!same) {
        for (EntryForm *form : {m_pay, m_core, m_received}) {
            form->clearProblems();
            form->setText(kOn, today);
        }
        m_pay->setText(kAmount, {});
        m_pay->setText(kNote, {});
    }
    if (item && item->coreReturnedOn)
        m_core->setDate(kOn, item->coreReturnedOn);
    if (const GotBack *back = m_book.records().find(entry->back); back && back->receivedOn)
        m_received->setDate(kOn, back->receivedOn);
    if (isPurchase)
        showPayments();
    else if (entry->kind == EntryKind::Wanted)
        m_words->setText(entry->price ? tr("Wanted; estimated at %1.").arg(shown(*entry->price))
                                      : tr("Wanted; nobody has estimated what it will cost."));
    else
        m_words->setText(tr("%1, worth %2 in the book's currency.")
                             .arg(shown(*entry->price), shown(*entry->inBook)));
}

void EntryPanel::showPayments()
{
    const Purchase *purchase = m_book.records().find(m_entry->purchase);
    if (!purchase)
        return;
    const LandedPurchase landed = landedCost(m_book.records(), *purchase);
    QStringList said;
    const Seller *seller = m_book.records().find(purchase->seller);
    if (m_entry->kind == EntryKind::Item)
        said << tr("From %1, ordered %2.")
                    .arg(seller ? seller->name : purchase->key, showDate(purchase->orderedOn));
    said << tr("The order comes to %1: freight %2, duty %3, tax %4, shared by %5.")
                .arg(shown(landed.total), shown(purchase->freight), shown(purchase->duty),
                     shown(purchase->tax), wordOf(purchase->shareBy));
    for (const Payment &payment : m_book.records().of<Payment>(purchase->id))
        said << tr("Paid %1 on %2%3.")
                    .arg(shown(payment.amount), showDate(payment.on),
                         payment.note.isEmpty() ? QString() : tr(", %1").arg(payment.note));
    const bool open = landed.paid < landed.total;
    said << (open ? tr("Still to pay: %1.").arg(shown(landed.total - landed.paid))
                  : tr("Nothing left to pay."));
    if (purchase->currency != m_book.records().build().currency)
        said << tr("Turned at %1%2.")
                    .arg(purchase->rate.print(), purchase->rateSource.isEmpty()
                                                     ? QString()
                                                     : tr(" (%1)").arg(purchase->rateSource));
    m_words->setText(said.join(u'\n'));
    m_pay->setHint(kAmount, tr("in %1").arg(purchase->currency.code()));
    auto *amount = qobject_cast<QLineEdit *>(m_pay->editor(kAmount));
    amount->setPlaceholderText(open ? printMoneyNumber(landed.total - landed.paid) : QString());
}

RecordRef EntryPanel::standing() const
{
    if (!m_entry)
        return {};
    switch (m_entry->kind) {
    case EntryKind::Purchase:
        return {};
    case EntryKind::Item:
        return {"purchase_item", m_entry->item.value(), m_entry->name};
    case EntryKind::Wanted:
        return {"part", m_entry->part.value(), m_entry->name};
    case EntryKind::GotBack:
        return {"got_back", m_entry->back.value(), m_entry->name};
    }
    return {};
}

void EntryPanel::showMove()
{
    const RecordRef what = standing();
    if (what.id == 0)
        return;
    const auto texts = recordKind(what.table)->texts(m_book.records(), what.id);
    m_line->setKnown(knownOf(m_book.records(), *recordKind("budget_line")));
    m_move->clearProblems();
    if (texts)
        m_line->setKey(texts->at(QStringLiteral("line")));
}

Outcome EntryPanel::move()
{
    const RecordRef what = standing();
    const QString key = m_line->name().isEmpty() ? QString() : m_line->keyNow();
    // the table follows the edit and shows another entry before this returns
    const QString to = m_line->name();
    const auto moved = recordKind(what.table)
                           ->save(m_book, what.id,
                                  {{QStringLiteral("line"), key.isEmpty() ? m_line->name() : key}});
    if (!moved)
        return fail(moved.error());
    emit done(to.isEmpty() ? tr("“%1” stands on no line now.").arg(what.name)
                           : tr("“%1” stands on “%2” now.").arg(what.name, to));
    return {};
}

void EntryPanel::openCard()
{
    const auto want = [this](const std::string &table, std::int64_t id) {
        emit recordWanted(QString::fromStdString(table),
                          recordKind(table)->key(m_book.records(), id));
    };
    if (!m_entry)
        return;
    if (m_entry->kind == EntryKind::GotBack)
        want("got_back", m_entry->back.value());
    else if (m_entry->kind == EntryKind::Item)
        want("purchase_item", m_entry->item.value());
    else if (m_entry->purchase.isSet())
        want("purchase", m_entry->purchase.value());
}

void EntryPanel::act()
{
    if (!m_entry)
        return;
    const bool purchase = m_entry->kind == EntryKind::Purchase;
    const Part *part = purchase ? nullptr : m_book.records().find(m_entry->part);
    if (m_entry->kind == EntryKind::GotBack)
        m_received->focusFirst();
    else if (part)
        emit partWanted(part->key);
    else if (purchase || m_entry->purchase.isSet())
        m_pay->focusFirst();
}

Outcome EntryPanel::pay()
{
    const Purchase *purchase = m_book.records().find(m_entry->purchase);
    if (!purchase)
        return fail(ProblemCode::NotFound, tr("This purchase is no longer in the book."));
    const Result<Money> amount = parseMoney(m_pay->text(kAmount), kStyle, purchase->currency);
    if (!amount)
        return fail(amount.error().code, amount.error().sentence, amount.error().whatToDo, kAmount);
    const auto on = m_pay->date(kOn, m_book.clock().today());
    if (!on)
        return fail(on.error());
    if (!*on)
        return fail(ProblemCode::BadInput, tr("Say on which day it was paid."), {}, kOn);
    const auto made = addPayment(m_book, purchase->id, *amount, **on, m_pay->text(kNote));
    if (!made)
        return fail(made.error());
    m_pay->setText(kAmount, {});
    m_pay->setText(kNote, {});
    emit done(tr("Paid: %1.").arg(shown(*amount)));
    return {};
}

Outcome EntryPanel::coreBack()
{
    const auto on = m_core->date(kOn, m_book.clock().today());
    if (!on)
        return fail(on.error());
    const QString name = m_entry->name;
    if (Outcome returned = returnCore(m_book, m_entry->item, *on); !returned)
        return returned;
    emit done(*on ? tr("The core charge of “%1” came back.").arg(name)
                  : tr("The core charge of “%1” is still out.").arg(name));
    return {};
}

Outcome EntryPanel::received()
{
    const auto on = m_received->date(kOn, m_book.clock().today());
    if (!on)
        return fail(on.error());
    const QString name = m_entry->name;
    if (Outcome got = receiveGotBack(m_book, m_entry->back, *on); !got)
        return got;
    emit done(*on ? tr("“%1” came back.").arg(name) : tr("“%1” is still to come back.").arg(name));
    return {};
}

} // namespace ohmwright::ui
