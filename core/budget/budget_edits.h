// SPDX-License-Identifier: GPL-3.0-or-later
// What a person does to the budget; each one edit. A Problem's `where` names the field at fault
// ("name", "allowance", "amount", "on", …).
#pragma once

#include "core/book/book.h"
#include "core/records/records.h"

namespace ohmwright {

// Behind the lines there are.
Result<Id<BudgetLine>> addLine(Book &book, const QString &name, Money allowance);
Outcome changeLine(Book &book, Id<BudgetLine> line, const QString &name, Money allowance);
// NotAllowed, saying how much, while anything stands on it.
Outcome removeLine(Book &book, Id<BudgetLine> line);
// Percent of the allowances, 0 to 100.
Outcome setContingency(Book &book, int percent);
// In the purchase's currency, above zero, not ahead of today.
Result<Id<Payment>> addPayment(Book &book, Id<Purchase> purchase, Money amount, QDate on,
                               const QString &note);
// The deposit on the old unit came back that day; none: it did not.
Outcome returnCore(Book &book, Id<PurchaseItem> item, std::optional<QDate> on);

struct NewGotBack
{
    QString name;
    Money amount; // any currency the book has a rate for
    std::optional<QDate> expectedOn, receivedOn;
    std::optional<Id<BudgetLine>> line;
    std::optional<Id<Part>> part;
};
Result<Id<GotBack>> addGotBack(Book &book, const NewGotBack &back);
Outcome receiveGotBack(Book &book, Id<GotBack> back, std::optional<QDate> on);

} // namespace ohmwright
