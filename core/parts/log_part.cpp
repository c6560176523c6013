// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/log_part.h"

#include "core/parts/consistency.h"
#include "core/parts/keys.h"
#include "core/parts/life.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("LogPart", text);
}

tl::unexpected<Problem> bad(const QString &sentence, const char *where,
                            const QString &whatToDo = {})
{
    return fail(ProblemCode::BadInput, sentence, whatToDo, QString::fromLatin1(where));
}

QString nameOf(const Seller &seller)
{
    return seller.name;
}

QString nameOf(const Donor &donor)
{
    return QStringList{donor.make, donor.model,
                       donor.year ? QString::number(*donor.year) : QString()}
        .join(u' ')
        .trimmed();
}

template <class R>
Result<Id<R>> thereOrMade(Book &book, const ThereOrNew<R> &which)
{
    if (const auto *id = std::get_if<Id<R>>(&which))
        return *id;
    R row = std::get<R>(which);
    if (row.key.isEmpty())
        row.key = freshKey<R>(book.records(), nameOf(row));
    return book.insert(row);
}

Result<Id<Purchase>> purchaseFor(Book &book, const LogEntry &entry, const LogPrice &price)
{
    if (price.purchase)
        return *price.purchase;
    const Result<Id<Seller>> seller = thereOrMade(book, price.seller);
    if (!seller)
        return fail(seller.error());
    const Currency currency = price.unitPrice.currency();
    const std::optional<Rate> rate =
        price.rate ? price.rate : rateOn(book.records(), currency, entry.on);
    if (!rate)
        return bad(tr("There is no rate yet from %1 to %2.")
                       .arg(currency.code(), book.records().build().currency.code()),
                   "rate",
                   tr("Give that day's rate: how many %1 one %2 cost.")
                       .arg(book.records().build().currency.code(), currency.code()));
    Purchase purchase;
    const Seller *from = book.records().find(*seller);
    purchase.key = freshKey<Purchase>(book.records(), from->name + u' ' + printDate(entry.on));
    purchase.seller = *seller;
    purchase.orderedOn = entry.on;
    purchase.currency = currency;
    purchase.rate = *rate;
    purchase.rateSource = price.rateSource;
    const auto shared = [&](Money money) {
        return money.isZero() ? Money::zero(currency) : money;
    };
    purchase.freight = shared(price.freight);
    purchase.duty = shared(price.duty);
    purchase.tax = shared(price.tax);
    purchase.reference = price.reference;
    if (entry.state == PartState::InHand)
        purchase.arrivedOn = entry.on;
    return book.insert(purchase);
}

Result<Id<PurchaseItem>> buy(Book &book, const LogEntry &entry, const LogPrice &price)
{
    const Result<Id<Purchase>> purchaseId = purchaseFor(book, entry, price);
    if (!purchaseId)
        return fail(purchaseId.error());
    const Purchase *purchase = book.records().find(*purchaseId);
    if (!purchase)
        return fail(ProblemCode::NotFound, tr("This order is no longer in the book."), {},
                    QStringLiteral("purchase"));
    const Currency currency = purchase->currency;
    if (price.unitPrice.currency() != currency)
        return bad(tr("That order is in %1, the price in %2.")
                       .arg(currency.code(), price.unitPrice.currency().code()),
                   "unit_price");
    const auto items = book.records().of<PurchaseItem>(*purchaseId);
    PurchaseItem item;
    item.key = freshKey<PurchaseItem>(book.records(), purchase->key + u' ' + entry.name);
    item.purchase = *purchaseId;
    item.position = items.empty() ? 0 : items.back().position + 1;
    item.name = entry.name;
    item.count = price.count;
    item.unitPrice = price.unitPrice;
    item.coreCharge = price.coreCharge.isZero() ? Money::zero(currency) : price.coreCharge;
    item.line = entry.line;
    const Result<Id<PurchaseItem>> itemId = book.insert(item);
    if (!itemId)
        return itemId;
    if (!countable(book.records(), *book.records().find(*purchaseId)))
        return bad(tr("This comes to more than a book can count."), "unit_price");
    if (price.paid) {
        Money sum = item.unitPrice * item.count + item.coreCharge;
        if (!price.purchase)
            sum += book.records().find(*purchaseId)->freight +
                   book.records().find(*purchaseId)->duty + book.records().find(*purchaseId)->tax;
        const auto payments = book.records().of<Payment>(*purchaseId);
        Payment payment;
        payment.purchase = *purchaseId;
        payment.position = payments.empty() ? 0 : payments.back().position + 1;
        payment.on = entry.on;
        payment.amount = sum;
        if (!sum.isZero())
            if (const auto id = book.insert(payment); !id)
                return fail(id.error());
    }
    return itemId;
}

Outcome rate(Book &book, Id<Part> part, const LogEntry &entry)
{
    int position = 0;
    for (const LogRating &logged : entry.ratings) {
        Rating rating;
        rating.part = part;
        rating.position = position++;
        rating.quantity = logged.figure.quantity;
        rating.kind = logged.figure.kind;
        rating.basis = logged.figure.basis;
        rating.current = logged.figure.current;
        rating.value = logged.value;
        rating.duration = logged.duration;
        rating.evidence = logged.evidence;
        rating.source = logged.source;
        rating.note = logged.note;
        rating.on = logged.on.value_or(entry.on);
        if (const auto id = book.insert(rating); !id)
            return fail(id.error());
    }
    return {};
}

Outcome attach(Book &book, Id<Part> part, const LogEntry &entry)
{
    int number = 1;
    for (const LogPhoto &photo : entry.photos) {
        const Result<QString> sha = book.keepBlob(photo.bytes);
        if (!sha)
            return fail(sha.error());
        Attachment attachment;
        attachment.title = photo.title.isEmpty() ? entry.name : photo.title;
        attachment.key = freshKey<Attachment>(book.records(), entry.name + u' ' + tr("photo") +
                                                                  u' ' + QString::number(number++));
        attachment.fileName = photo.fileName;
        attachment.mediaType = photo.mediaType;
        attachment.sha256 = *sha;
        attachment.kind = photo.mediaType.startsWith(QLatin1String("image/"))
                              ? AttachmentKind::Photo
                              : AttachmentKind::Document;
        attachment.takenOn = entry.on;
        attachment.part = part;
        if (const auto id = book.insert(attachment); !id)
            return fail(id.error());
    }
    return {};
}

Outcome connect(Book &book, Id<Part> part, const LogEntry &entry)
{
    int position = 0;
    for (const Id<Circuit> circuit : entry.circuits) {
        Connection connection;
        connection.part = part;
        connection.position = position++;
        connection.circuit = circuit;
        if (const auto id = book.insert(connection); !id)
            return fail(id.error());
    }
    return {};
}

Outcome checkEntry(const Book &book, const LogEntry &entry)
{
    if (entry.name.trimmed().isEmpty())
        return bad(tr("The part needs a name."), "name");
    if (entry.state != PartState::Wanted && entry.state != PartState::Ordered &&
        entry.state != PartState::InHand)
        return bad(tr("A new part is wanted, ordered or in hand."), "state");
    if (!entry.on.isValid())
        return bad(tr("The day is missing."), "on");
    if (entry.on > book.clock().today())
        return bad(tr("The day it was logged cannot lie ahead."), "on");
    if (entry.state == PartState::Wanted && entry.price)
        return bad(tr("A wanted part has not been paid for: give an estimate instead of a price."),
                   "unit_price");
    if (entry.price && entry.price->purchase)
        for (const auto &[shared, where] :
             {std::pair(entry.price->freight, "freight"), std::pair(entry.price->duty, "duty"),
              std::pair(entry.price->tax, "tax")})
            if (!shared.isZero())
                return bad(tr("The part joins an order whose freight, duty and tax stay as they "
                              "are."),
                           where, tr("Leave them out here, and change them on the order."));
    for (const std::optional<int> &days : {entry.warrantyDays, entry.returnDays})
        if (days && (*days < 0 || *days > 36500))
            return bad(tr("A warranty or return window is 0 to 36500 days."), "warranty_days");
    return {};
}

} // namespace

std::optional<Rate> rateOn(const Records &records, Currency currency, QDate day)
{
    if (currency == records.build().currency)
        return Rate();
    const DayRate *best = nullptr;
    for (const DayRate &r : records.all<DayRate>())
        if (r.currency == currency && r.on <= day && (!best || r.on > best->on))
            best = &r;
    return best ? std::optional(best->rate) : std::nullopt;
}

Result<Id<Part>> logPart(Book &book, const LogEntry &entry)
{
    if (Outcome ok = checkEntry(book, entry); !ok)
        return fail(ok.error());
    Id<Part> made;
    const Outcome done = book.edit(tr("Log %1").arg(entry.name.trimmed()), [&]() -> Outcome {
        Part part;
        part.name = entry.name.trimmed();
        part.key = freshKey<Part>(book.records(), part.name);
        part.kind = entry.kind;
        part.state = entry.state;
        part.type = entry.type;
        part.partOf = entry.partOf;
        part.line = entry.line;
        part.serial = entry.serial;
        part.condition = entry.condition;
        part.place = entry.place;
        part.note = entry.note;
        part.estimate = entry.estimate;
        part.leadDays = entry.leadDays;
        if (entry.warrantyDays)
            part.warrantyUntil = entry.on.addDays(*entry.warrantyDays);
        if (entry.returnDays)
            part.returnUntil = entry.on.addDays(*entry.returnDays);
        if (entry.donor) {
            const Result<Id<Donor>> donor = thereOrMade(book, *entry.donor);
            if (!donor)
                return fail(donor.error());
            part.donor = *donor;
        }
        if (entry.price) {
            const Result<Id<PurchaseItem>> item = buy(book, entry, *entry.price);
            if (!item)
                return fail(item.error());
            part.bought = *item;
        }
        const Result<Id<Part>> id = book.insert(part);
        if (!id)
            return fail(id.error());
        made = part.id = *id;
        if (Outcome born = recordBirth(book, part, entry.on); !born)
            return born;
        if (Outcome connected = connect(book, made, entry); !connected)
            return connected;
        if (Outcome rated = rate(book, made, entry); !rated)
            return rated;
        return attach(book, made, entry);
    });
    if (!done)
        return fail(done.error());
    return made;
}

} // namespace ohmwright
