// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/life.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Life", text);
}

// By kind, not by part: is a test due before it may be fitted?
bool needsTest(PartKind kind)
{
    return kind == PartKind::Unit || kind == PartKind::Module;
}

std::vector<PartState> followers(PartState from)
{
    using enum PartState;
    switch (from) {
    case Wanted:
        return {Ordered, InHand};
    case Ordered:
        return {InHand, Wanted};
    case InHand:
        return {Tested, Fitted, Quarantined, Returned, Sold, Scrapped};
    case Tested:
        return {Fitted, InHand, Quarantined, Returned, Sold, Scrapped};
    case Fitted:
        return {Tested, InHand, Quarantined, Sold, Scrapped};
    case Quarantined:
        return {Tested, Returned, Sold, Scrapped};
    case Returned:
    case Sold:
    case Scrapped:
        return {};
    }
    return {};
}

} // namespace

bool isGone(PartState state)
{
    return state == PartState::Returned || state == PartState::Sold || state == PartState::Scrapped;
}

bool hasReached(PartState state, PartState wanted)
{
    return state <= PartState::Fitted && state >= wanted;
}

Outcome mayMove(PartKind kind, PartState from, PartState to)
{
    const auto refuse = [](const QString &sentence, const QString &whatToDo = {}) {
        return Outcome(
            fail(ProblemCode::NotAllowed, sentence, whatToDo, QStringLiteral("to_state")));
    };
    if (from == to)
        return refuse(tr("It already is %1.").arg(wordOf(to)));
    if (isGone(from))
        return refuse(tr("A part that is %1 has left the build and cannot become %2.")
                          .arg(wordOf(from), wordOf(to)),
                      tr("If that was a slip, undo it; if it came back, log it as a new part."));
    if (to == PartState::Fitted && from == PartState::InHand && needsTest(kind))
        return refuse(tr("A %1 must be tested before it is fitted.").arg(wordOf(kind)),
                      tr("Record the test first."));
    if (to == PartState::Fitted && from == PartState::Quarantined)
        return refuse(tr("A quarantined part cannot be fitted."),
                      tr("Test it first, and record why it may be used again."));
    const std::vector<PartState> next = followers(from);
    if (std::find(next.begin(), next.end(), to) == next.end())
        return refuse(
            tr("A part that is %1 cannot become %2 directly.").arg(wordOf(from), wordOf(to)));
    return {};
}

std::vector<PartState> movesFrom(PartKind kind, PartState from)
{
    std::vector<PartState> next = followers(from);
    std::erase_if(next, [&](PartState to) { return !mayMove(kind, from, to).has_value(); });
    return next;
}

Outcome recordBirth(Book &book, const Part &part, QDate on)
{
    PartMove first;
    first.part = part.id;
    first.to = part.state;
    first.on = on;
    const auto id = book.insert(first);
    return id ? Outcome() : Outcome(fail(id.error()));
}

Outcome recordMove(Book &book, Id<Part> partId, PartState to, QDate on, const QString &note)
{
    const Part *found = book.records().find(partId);
    if (!found)
        return fail(ProblemCode::NotFound, tr("This part is no longer in the book."));
    Part part = *found;
    if (Outcome may = mayMove(part.kind, part.state, to); !may)
        return may;
    const auto moves = book.records().of<PartMove>(partId);
    if (!moves.empty() && on < moves.back().on)
        return fail(ProblemCode::NotAllowed,
                    tr("Its last move was on %1; the next cannot be earlier.")
                        .arg(showDate(moves.back().on)),
                    {}, QStringLiteral("moved_on"));
    if (on > book.clock().today())
        return fail(ProblemCode::NotAllowed, tr("A move is dated when it has happened, not ahead."),
                    {}, QStringLiteral("moved_on"));
    PartMove move;
    move.part = partId;
    move.position = moves.empty() ? 0 : moves.back().position + 1;
    move.from = part.state;
    move.to = to;
    move.on = on;
    move.note = note;
    if (const auto id = book.insert(move); !id)
        return fail(id.error());
    part.state = to;
    return book.update(part);
}

Outcome movePart(Book &book, Id<Part> partId, PartState to, QDate on, const QString &note)
{
    const Part *part = book.records().find(partId);
    const QString what = part ? tr("%1 is %2").arg(part->name, wordOf(to)) : tr("Move a part");
    return book.edit(what, [&] { return recordMove(book, partId, to, on, note); });
}

} // namespace ohmwright
