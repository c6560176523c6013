// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cards/completing.h"

#include "core/parts/guided_tests.h"
#include "core/parts/log_part.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright::completing {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Cards", text);
}

tl::unexpected<Problem> bad(const char *where, const QString &sentence,
                            const QString &whatToDo = {})
{
    return fail(ProblemCode::BadInput, sentence, whatToDo, QString::fromLatin1(where));
}

bool typed(const FieldTexts &changed, const char *field)
{
    const auto found = changed.find(QString::fromLatin1(field));
    return found != changed.end() && !found->second.isEmpty();
}

Outcome takeRate(const Records &records, Currency currency, QDate day, Rate &into)
{
    const std::optional<Rate> rate = rateOn(records, currency, day);
    if (!rate)
        return bad("rate",
                   tr("There is no rate yet from %1 to %2.")
                       .arg(currency.code(), records.build().currency.code()),
                   tr("Give that day's rate: how many %1 one %2 cost.")
                       .arg(records.build().currency.code(), currency.code()));
    into = *rate;
    return {};
}

Currency currencyOf(const Records &records, Id<Purchase> id)
{
    const Purchase *purchase = records.find(id);
    return purchase ? purchase->currency : records.build().currency;
}

} // namespace

Currency moneyCurrency(const Records &records, const PurchaseItem &row)
{
    return currencyOf(records, row.purchase);
}

Currency moneyCurrency(const Records &records, const Payment &row)
{
    return currencyOf(records, row.purchase);
}

void begin(const Records &, QDate today, Attachment &row)
{
    // what has bytes comes as a file; only a link is typed
    row.kind = AttachmentKind::Link;
    row.readOn = today;
}

void begin(const Records &records, QDate, BudgetLine &row)
{
    for (const BudgetLine &other : records.all<BudgetLine>())
        row.position = std::max(row.position, other.position + 1);
}

Outcome finish(const Records &records, QDate, const FieldTexts &changed, Purchase &row)
{
    const Purchase *before = records.find(row.id);
    const bool another = !before || before->currency != row.currency;
    if (another && !typed(changed, "rate"))
        return takeRate(records, row.currency, row.orderedOn, row.rate);
    return {};
}

Outcome finish(const Records &records, QDate today, const FieldTexts &changed, GotBack &row)
{
    const GotBack *before = records.find(row.id);
    const Currency currency = row.amount.currency();
    const bool another = !before || before->amount.currency() != currency;
    if (another && !typed(changed, "rate"))
        return takeRate(records, currency, row.receivedOn.value_or(today), row.rate);
    return {};
}

Outcome finish(const Records &records, QDate today, const FieldTexts &, Payment &row)
{
    const Payment *before = records.find(row.id);
    // what came back may stand in a book from elsewhere as less than zero; it stays as it is
    if ((!before || before->amount != row.amount) && row.amount.minor() <= 0)
        return bad("amount", tr("A payment is above zero."),
                   tr("Money that came back is recorded as got back."));
    if (row.on > today)
        return bad("paid_on", tr("This is recorded on the day it happens, not ahead."));
    return {};
}

Outcome finish(const Records &, QDate, const FieldTexts &, Attachment &row)
{
    if (row.title.isEmpty())
        row.title = row.kind == AttachmentKind::Link ? row.url : row.fileName;
    return {};
}

Outcome follow(Book &book, const TestRecord &row)
{
    return addGuidedSteps(book, row);
}

} // namespace ohmwright::completing
