// SPDX-License-Identifier: GPL-3.0-or-later
// What some records need beyond their fields as typed: a sensible start, the day's rate, a sum that
// makes sense. One overload for a record that does; nothing to do for all others.
#pragma once

#include "core/cards/record_kind.h"
#include "core/records/records.h"

namespace ohmwright::completing {

// The currency of a bare sum in this record.
template <class R>
Currency moneyCurrency(const Records &records, const R &)
{
    return records.build().currency;
}
inline Currency moneyCurrency(const Records &, const Purchase &row)
{
    return row.currency;
}
Currency moneyCurrency(const Records &records, const PurchaseItem &row);
Currency moneyCurrency(const Records &records, const Payment &row);

// A new one, before anything was typed; its required days are today already.
template <class R>
void begin(const Records &, QDate, R &)
{}
void begin(const Records &records, QDate today, Attachment &row);
void begin(const Records &records, QDate today, BudgetLine &row);

// After what was typed is in. `changed` says what that was.
template <class R>
Outcome finish(const Records &, QDate, const FieldTexts &, R &)
{
    return {};
}
Outcome finish(const Records &records, QDate today, const FieldTexts &changed, Purchase &row);
Outcome finish(const Records &records, QDate today, const FieldTexts &changed, GotBack &row);
Outcome finish(const Records &records, QDate today, const FieldTexts &changed, Payment &row);
Outcome finish(const Records &records, QDate today, const FieldTexts &changed, Attachment &row);

// After it is in the book, in the same edit: what comes along with it.
template <class R>
Outcome follow(Book &, const R &)
{
    return {};
}
Outcome follow(Book &book, const TestRecord &row);

} // namespace ohmwright::completing
