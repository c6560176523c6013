// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/budget/budget_edits.h"

#include "core/parts/keys.h"
#include "core/parts/log_part.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BudgetEdits", text);
}

tl::unexpected<Problem> bad(const char *where, const QString &sentence,
                            const QString &whatToDo = {})
{
    return fail(ProblemCode::BadInput, sentence, whatToDo, QString::fromLatin1(where));
}

tl::unexpected<Problem> gone(const QString &what)
{
    return fail(ProblemCode::NotFound, tr("%1 is no longer in the book.").arg(what));
}

Outcome checkLine(const Book &book, const QString &name, Money allowance)
{
    if (name.trimmed().isEmpty())
        return bad("name", tr("The budget line needs a name."));
    if (allowance.currency() != book.records().build().currency)
        return bad("allowance", tr("Allowances are in the book's currency, %1.")
                                    .arg(book.records().build().currency.code()));
    if (allowance.minor() < 0)
        return bad("allowance", tr("An allowance cannot be negative."));
    return {};
}

Outcome notAhead(const Book &book, const std::optional<QDate> &day)
{
    if (day && *day > book.clock().today())
        return bad("on", tr("This is recorded on the day it happens, not ahead."));
    return {};
}

} // namespace

Result<Id<BudgetLine>> addLine(Book &book, const QString &name, Money allowance)
{
    if (const Outcome checked = checkLine(book, name, allowance); !checked)
        return fail(checked.error());
    Id<BudgetLine> made;
    const Outcome done =
        book.edit(tr("Add budget line “%1”").arg(name.trimmed()), [&]() -> Outcome {
            BudgetLine line;
            line.name = name.trimmed();
            line.key = freshKey<BudgetLine>(book.records(), line.name);
            line.allowance = allowance;
            for (const BudgetLine &other : book.records().all<BudgetLine>())
                line.position = std::max(line.position, other.position + 1);
            const auto id = book.insert(line);
            if (!id)
                return fail(id.error());
            made = *id;
            return {};
        });
    if (!done)
        return fail(done.error());
    return made;
}

Outcome changeLine(Book &book, Id<BudgetLine> lineId, const QString &name, Money allowance)
{
    if (!book.records().find(lineId))
        return gone(tr("This budget line"));
    if (Outcome checked = checkLine(book, name, allowance); !checked)
        return checked;
    return book.edit(tr("Change budget line “%1”").arg(name.trimmed()), [&] {
        BudgetLine line = *book.records().find(lineId);
        line.name = name.trimmed();
        line.allowance = allowance;
        return book.update(line);
    });
}

Outcome removeLine(Book &book, Id<BudgetLine> lineId)
{
    const BudgetLine *line = book.records().find(lineId);
    if (!line)
        return gone(tr("This budget line"));
    const auto stands = [&](const auto &rows) {
        return std::count_if(rows.begin(), rows.end(),
                             [&](const auto &row) { return row.line == lineId; });
    };
    const auto on = stands(book.records().all<PurchaseItem>()) +
                    stands(book.records().all<Part>()) + stands(book.records().all<GotBack>());
    if (on > 0)
        return fail(ProblemCode::NotAllowed,
                    on == 1 ? tr("One thing still stands on “%1”.").arg(line->name)
                            : tr("%1 things still stand on “%2”.").arg(on).arg(line->name),
                    tr("Move them to another line first."));
    return book.edit(tr("Remove budget line “%1”").arg(line->name),
                     [&] { return book.remove(lineId); });
}

Outcome setContingency(Book &book, int percent)
{
    if (percent < 0 || percent > 100)
        return bad("contingency", tr("The contingency is between 0 and 100 percent."));
    return book.edit(tr("Contingency is %1 %").arg(percent), [&] {
        Build build = book.records().build();
        build.contingencyPercent = percent;
        return book.update(build);
    });
}

Result<Id<Payment>> addPayment(Book &book, Id<Purchase> purchaseId, Money amount, QDate on,
                               const QString &note)
{
    const Purchase *purchase = book.records().find(purchaseId);
    if (!purchase)
        return gone(tr("This purchase"));
    if (amount.currency() != purchase->currency)
        return bad("amount", tr("This purchase is paid in %1.").arg(purchase->currency.code()),
                   tr("Give the amount as it was charged there."));
    if (amount.minor() <= 0)
        return bad("amount", tr("A payment is above zero."),
                   tr("Money that came back is recorded as got back."));
    if (const Outcome checked = notAhead(book, on); !checked)
        return fail(checked.error());
    const Seller *seller = book.records().find(purchase->seller);
    Id<Payment> made;
    const Outcome done =
        book.edit(tr("Pay %1 to %2").arg(printMoney(amount), seller ? seller->name : purchase->key),
                  [&]() -> Outcome {
                      Payment payment;
                      payment.purchase = purchaseId;
                      const auto before = book.records().of<Payment>(purchaseId);
                      payment.position = before.empty() ? 0 : before.back().position + 1;
                      payment.on = on;
                      payment.amount = amount;
                      payment.note = note;
                      const auto id = book.insert(payment);
                      if (!id)
                          return fail(id.error());
                      made = *id;
                      return {};
                  });
    if (!done)
        return fail(done.error());
    return made;
}

Outcome returnCore(Book &book, Id<PurchaseItem> itemId, std::optional<QDate> on)
{
    const PurchaseItem *item = book.records().find(itemId);
    if (!item)
        return gone(tr("This item"));
    if (item->coreCharge.isZero())
        return fail(ProblemCode::NotAllowed, tr("“%1” has no core charge.").arg(item->name));
    if (Outcome checked = notAhead(book, on); !checked)
        return checked;
    return book.edit(on ? tr("Core charge of “%1” came back").arg(item->name)
                        : tr("Core charge of “%1” is still out").arg(item->name),
                     [&] {
                         PurchaseItem changed = *book.records().find(itemId);
                         changed.coreReturnedOn = on;
                         return book.update(changed);
                     });
}

Result<Id<GotBack>> addGotBack(Book &book, const NewGotBack &wanted)
{
    if (wanted.name.trimmed().isEmpty())
        return bad("name", tr("Say what the money is for."));
    if (wanted.amount.minor() <= 0)
        return bad("amount", tr("What comes back is above zero."));
    if (const Outcome checked = notAhead(book, wanted.receivedOn); !checked)
        return fail(checked.error());
    const QDate day = wanted.receivedOn.value_or(book.clock().today());
    const auto rate = rateOn(book.records(), wanted.amount.currency(), day);
    if (!rate)
        return bad("amount",
                   tr("The book has no rate for %1.").arg(wanted.amount.currency().code()),
                   tr("Give the amount in the book's currency, or enter a day rate first."));
    Id<GotBack> made;
    const Outcome done =
        book.edit(tr("Got back: “%1”").arg(wanted.name.trimmed()), [&]() -> Outcome {
            GotBack back;
            back.name = wanted.name.trimmed();
            back.key = freshKey<GotBack>(book.records(), back.name);
            back.amount = wanted.amount;
            back.rate = *rate;
            back.expectedOn = wanted.expectedOn;
            back.receivedOn = wanted.receivedOn;
            back.line = wanted.line;
            back.part = wanted.part;
            const auto id = book.insert(back);
            if (!id)
                return fail(id.error());
            made = *id;
            return {};
        });
    if (!done)
        return fail(done.error());
    return made;
}

Outcome receiveGotBack(Book &book, Id<GotBack> backId, std::optional<QDate> on)
{
    const GotBack *back = book.records().find(backId);
    if (!back)
        return gone(tr("This entry"));
    if (Outcome checked = notAhead(book, on); !checked)
        return checked;
    return book.edit(on ? tr("“%1” came back").arg(back->name)
                        : tr("“%1” is still to come back").arg(back->name),
                     [&] {
                         GotBack changed = *book.records().find(backId);
                         changed.receivedOn = on;
                         return book.update(changed);
                     });
}

} // namespace ohmwright
