// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/rating_edits.h"

#include "core/quantity/amount.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("RatingEdits", text);
}

QString holderName(const Records &records, const Rating &rating)
{
    if (const Part *part = records.find(rating.part))
        return part->name;
    const PartType *type = records.find(rating.type);
    return type ? type->name : QString();
}

QString valueOf(const Rating &rating)
{
    return rating.value ? showAmount(*rating.value, NumberStyle::pointDecimal()) : tr("unknown");
}

tl::unexpected<Problem> gone()
{
    return fail(ProblemCode::NotFound, tr("This rating is no longer in the book."));
}

std::span<const Rating> beside(const Records &records, const Rating &rating)
{
    return rating.part.isSet() ? records.of<Rating>(rating.part) : records.of<Rating>(rating.type);
}

} // namespace

Result<Id<Rating>> saveRating(Book &book, Rating rating)
{
    const bool isNew = !rating.id.isSet();
    if (!isNew && !book.records().find(rating.id))
        return gone();
    if (isNew) {
        const auto others = beside(book.records(), rating);
        rating.position = others.empty() ? 0 : others.back().position + 1;
    }
    const QString what =
        (isNew ? tr("Rate %1: %2 %3") : tr("Change a rating of %1: %2 %3"))
            .arg(holderName(book.records(), rating), describe(figureOf(rating)), valueOf(rating));
    const Outcome done = book.edit(what, [&]() -> Outcome {
        if (!isNew)
            return book.update(rating);
        const auto made = book.insert(rating);
        if (!made)
            return fail(made.error());
        rating.id = *made;
        return {};
    });
    if (!done)
        return fail(done.error());
    return rating.id;
}

Outcome settleRating(Book &book, Id<Rating> id, const QString &reason, Id<Part> onPart)
{
    const Rating *found = book.records().find(id);
    if (!found)
        return gone();
    if (reason.trimmed().isEmpty())
        return fail(ProblemCode::BadInput, tr("Say why this one stands and the others do not."), {},
                    QStringLiteral("note"));
    Rating chosen = *found;
    chosen.settled = true;
    chosen.note = reason.trimmed();
    std::vector<Rating> others;
    const auto unsettle = [&](std::span<const Rating> ratings) {
        for (const Rating &rating : ratings)
            if (rating.settled && rating.id != id && figureOf(rating) == figureOf(chosen))
                others.push_back(rating);
    };
    unsettle(beside(book.records(), chosen));
    if (chosen.type.isSet())
        unsettle(book.records().of<Rating>(onPart));
    const QString what =
        tr("Settle %1 of %2").arg(describe(figureOf(chosen)), holderName(book.records(), chosen));
    return book.edit(what, [&]() -> Outcome {
        for (Rating &other : others) {
            other.settled = false;
            if (Outcome updated = book.update(other); !updated)
                return updated;
        }
        return book.update(chosen);
    });
}

Outcome unsettleRating(Book &book, Id<Rating> id)
{
    const Rating *found = book.records().find(id);
    if (!found)
        return gone();
    Rating rating = *found;
    rating.settled = false;
    return book.edit(tr("Unsettle %1").arg(describe(figureOf(rating))),
                     [&] { return book.update(rating); });
}

Outcome removeRating(Book &book, Id<Rating> id)
{
    const Rating *found = book.records().find(id);
    if (!found)
        return gone();
    return book.edit(tr("Remove %1 %2").arg(describe(figureOf(*found)), valueOf(*found)),
                     [&] { return book.remove(id); });
}

} // namespace ohmwright
