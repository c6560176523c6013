// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/edit_input.h"

#include "core/cards/record_kind.h"
#include "core/parts/keys.h"
#include "core/parts/questions.h"
#include "core/parts/rating_edits.h"
#include "core/records/check_figures.h"
#include "core/verdicts/asked_by_checks.h"
#include "core/verdicts/input_address.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("EditInput", text);
}

tl::unexpected<Problem> bad(const QString &sentence, const QString &whatToDo = {})
{
    return fail(ProblemCode::BadInput, sentence, whatToDo);
}

tl::unexpected<Problem> gone()
{
    return fail(ProblemCode::NotFound, tr("This figure is no longer in the book."));
}

template <class R>
bool refer(const Records &records, const QString &key, std::optional<Id<R>> &into)
{
    const R *row = records.byKey<R>(key);
    if (row)
        into = row->id;
    return row != nullptr;
}

// Names what the figure is of; false when that has gone.
bool setSubject(const Records &records, const FigureAddress &at, CheckFigure &figure)
{
    if (at.subject.empty())
        return true;
    if (at.subject == RecordTraits<Circuit>::table)
        return refer(records, at.key, figure.circuit);
    if (at.subject == RecordTraits<Branch>::table)
        return refer(records, at.key, figure.branch);
    if (at.subject == RecordTraits<Part>::table)
        return refer(records, at.key, figure.part);
    if (at.subject == RecordTraits<TestRecord>::table)
        return refer(records, at.key, figure.test);
    return false;
}

bool sameSubject(const CheckFigure &a, const CheckFigure &b)
{
    return a.circuit == b.circuit && a.branch == b.branch && a.part == b.part && a.type == b.type &&
           a.test == b.test;
}

// None for nothing typed: the value is taken away.
Result<std::optional<Amount>> amountOf(const TypedFigure &typed, std::optional<Measure> measure)
{
    if (typed.value.isEmpty())
        return std::nullopt;
    const Result<Amount> amount = parseAmount(typed.value, NumberStyle::pointDecimal(), measure);
    if (!amount)
        return fail(amount.error());
    return *amount;
}

// Behind the others of that part.
Result<Id<Rating>> insertOwn(Book &book, Id<Part> part, Rating rating)
{
    const auto own = book.records().of<Rating>(part);
    rating.id = {};
    rating.type = {};
    rating.part = part;
    rating.position = own.empty() ? 0 : own.back().position + 1;
    return book.insert(rating);
}

Outcome write(Book &book, const FigureAddress &at, const TypedFigure &typed)
{
    const FigureInfo *info = checkFigure(at.figure);
    CheckFigure figure;
    figure.figure = at.figure;
    if (!info || !setSubject(book.records(), at, figure))
        return gone();
    const auto &all = book.records().all<CheckFigure>();
    const auto there = std::find_if(all.begin(), all.end(), [&](const CheckFigure &other) {
        return other.figure == figure.figure && sameSubject(other, figure);
    });
    const bool isThere = there != all.end();
    if (isThere)
        figure = *there;
    figure.value.reset();
    figure.word.clear();
    if (info->measure) {
        const Result<std::optional<Amount>> amount = amountOf(typed, info->measure);
        if (!amount)
            return fail(amount.error());
        figure.value = *amount;
    } else {
        figure.word = typed.value;
    }
    figure.evidence = typed.evidence.value_or(Evidence::Assumed);
    figure.source = typed.source;
    figure.on = book.clock().today();
    if (isThere)
        return book.update(figure);
    figure.key = freshKey<CheckFigure>(book.records(),
                                       at.key.isEmpty() ? labelOf(*info)
                                                        : QString(labelOf(*info) + u' ' + at.key));
    const Result<Id<CheckFigure>> made = book.insert(figure);
    return made ? Outcome() : Outcome(fail(made.error()));
}

// What is typed here is meant to stand among other values, by the ledger's own rules: only papers
// and plate raise a limit.
Outcome stand(Book &book, const RatingAddress &at, const Rating &typed)
{
    const auto figure = [&] {
        return figureFor(book.records(), *book.records().byKey<Part>(at.part), at.figure);
    };
    if (figure().all.size() > 1)
        if (Outcome settled = settleRating(book, typed.id, tr("typed where the check shows it"));
            !settled)
            return settled;
    const Figure now = figure();
    if (now.inForce && now.inForce->id == typed.id)
        return {};
    return bad(
        tr("%1 cannot stand here: %2").arg(printAmount(*typed.value), whyInForce(now)),
        tr("Type where it comes from: “%1, nameplate, photo 3”.").arg(printAmount(*typed.value)));
}

Outcome write(Book &book, const RatingAddress &at, const TypedFigure &typed)
{
    const Part *part = book.records().byKey<Part>(at.part);
    if (!part)
        return gone();
    const Result<std::optional<Amount>> value = amountOf(typed, measureOf(at.figure.quantity));
    if (!value)
        return fail(value.error());
    // a figure of the type stays as it is: what is typed here is this part's own
    const auto own = book.records().of<Rating>(part->id);
    const Rating *there = nullptr;
    for (const Rating &rating : own)
        if (figureOf(rating) == at.figure && (!at.duration || rating.duration == at.duration) &&
            (!there || rating.settled))
            there = &rating;
    Rating rating;
    if (there) {
        rating = *there;
    } else {
        rating.quantity = at.figure.quantity;
        rating.kind = at.figure.kind;
        rating.basis = at.figure.basis;
        rating.current = at.figure.current;
        rating.duration = at.duration;
    }
    rating.value = *value;
    rating.settled = rating.settled && rating.value;
    rating.evidence = typed.evidence.value_or(Evidence::Assumed);
    rating.source = typed.source;
    rating.on = book.clock().today();
    if (there) {
        if (Outcome updated = book.update(rating); !updated)
            return updated;
    } else {
        const Result<Id<Rating>> made = insertOwn(book, part->id, rating);
        if (!made)
            return fail(made.error());
        rating.id = *made;
    }
    return rating.value ? stand(book, at, rating) : Outcome();
}

// Of the part's own rating; one of its type stays as it is, and the part gets its own.
Outcome write(Book &book, const DurationAddress &at, const TypedFigure &typed)
{
    const Part *part = book.records().byKey<Part>(at.peak.part);
    if (!part)
        return gone();
    const Figure figure = figureFor(book.records(), *part, at.peak.figure);
    const auto there = std::ranges::find_if(
        figure.all, [&](const Rating *one) { return one->duration == at.peak.duration; });
    if (there == figure.all.end())
        return gone();
    Rating rating = **there;
    const Result<std::optional<Amount>> duration = amountOf(typed, Measure::Duration);
    if (!duration)
        return fail(duration.error());
    rating.duration = *duration;
    if (typed.evidence) {
        rating.evidence = *typed.evidence;
        rating.source = typed.source;
    }
    if (rating.part.isSet())
        return book.update(rating);
    const Result<Id<Rating>> made = insertOwn(book, part->id, rating);
    return made ? Outcome() : Outcome(fail(made.error()));
}

Outcome write(Book &book, const FieldAddress &at, const TypedFigure &typed)
{
    const RecordKind *kind = recordKind(at.table);
    if (!kind)
        return gone();
    const std::vector<std::int64_t> ids = kind->ids(book.records());
    const std::optional<std::int64_t> id =
        kind->isSingle() ? (ids.empty() ? std::nullopt : std::optional(ids.front()))
                         : kind->idOf(book.records(), at.key);
    if (!id)
        return gone();
    const Result<std::int64_t> saved = kind->save(book, id, {{at.field, typed.value}});
    return saved ? Outcome() : Outcome(fail(saved.error()));
}

// "0 %: 3.0 V; 100 %: 4.2 V".
Result<std::vector<CurvePoint>> pointsOf(CurveKind kind, const QString &typed)
{
    std::vector<CurvePoint> points;
    for (const QString &pair : typed.split(u';', Qt::SkipEmptyParts)) {
        const QStringList both = pair.split(u':');
        if (both.size() != 2)
            return bad(tr("“%1” is no point of a curve.").arg(pair.trimmed()),
                       tr("Type the points with semicolons between: “0 %: 3.0 V; 100 %: 4.2 V”."));
        const Result<Amount> along =
            parseAmount(both[0].trimmed(), NumberStyle::pointDecimal(), measureAlong(kind));
        if (!along)
            return fail(along.error());
        const Result<Amount> up =
            parseAmount(both[1].trimmed(), NumberStyle::pointDecimal(), measureUp(kind));
        if (!up)
            return fail(up.error());
        CurvePoint point;
        point.position = static_cast<int>(points.size());
        point.along = *along;
        point.up = *up;
        points.push_back(point);
    }
    if (points.size() < 2)
        return bad(tr("A curve has two points at least."),
                   tr("Type them with semicolons between: “0 %: 3.0 V; 100 %: 4.2 V”."));
    return points;
}

// The part's own, made if it has none; a curve of its type stays as it is.
Result<Id<RatedCurve>> ownCurve(Book &book, const Part &part, CurveKind kind,
                                const TypedFigure &typed)
{
    RatedCurve curve;
    for (const RatedCurve &one : book.records().all<RatedCurve>())
        if (one.part == part.id && one.kind == kind)
            curve = one;
    const bool isThere = curve.part.has_value();
    curve.part = part.id;
    curve.kind = kind;
    curve.evidence = typed.evidence.value_or(Evidence::Assumed);
    curve.source = typed.source;
    curve.on = book.clock().today();
    if (isThere) {
        if (const Outcome updated = book.update(curve); !updated)
            return fail(updated.error());
        return curve.id;
    }
    curve.name = tr("%1 of %2").arg(wordOf(kind), part.name);
    curve.key = freshKey<RatedCurve>(book.records(), curve.name);
    return book.insert(curve);
}

Outcome write(Book &book, const CurveAddress &at, const TypedFigure &typed)
{
    const Part *part = book.records().byKey<Part>(at.part);
    if (!part)
        return gone();
    const Result<std::vector<CurvePoint>> points = pointsOf(at.kind, typed.value);
    if (!points)
        return fail(points.error());
    const Result<Id<RatedCurve>> curve = ownCurve(book, *part, at.kind, typed);
    if (!curve)
        return fail(curve.error());
    const auto there = book.records().of<CurvePoint>(*curve);
    const std::vector<CurvePoint> old(there.begin(), there.end());
    for (const CurvePoint &point : old)
        if (const Outcome removed = book.remove(point.id); !removed)
            return removed;
    for (CurvePoint point : *points) {
        point.curve = *curve;
        if (const Result<Id<CurvePoint>> made = book.insert(point); !made)
            return fail(made.error());
    }
    return {};
}

QString nameOf(const InputAddress &address)
{
    if (const auto *figure = std::get_if<FigureAddress>(&address)) {
        const FigureInfo *info = checkFigure(figure->figure);
        return info ? labelOf(*info) : figure->figure;
    }
    if (const auto *rating = std::get_if<RatingAddress>(&address))
        return describe(rating->figure);
    if (const auto *duration = std::get_if<DurationAddress>(&address))
        return tr("duration of the %1").arg(describe(duration->peak.figure));
    if (const auto *curve = std::get_if<CurveAddress>(&address))
        return tr("curve “%1”").arg(wordOf(curve->kind));
    return std::get<FieldAddress>(address).field;
}

} // namespace

// A comma inside the number ("2,5 kW") is told from one before the evidence by what follows it.
TypedFigure splitTyped(const QString &typed)
{
    const auto bare = [](const QString &value) {
        return splitCurrentKind(value.trimmed()).amountText.trimmed();
    };
    for (qsizetype comma = typed.indexOf(u','); comma >= 0;
         comma = typed.indexOf(u',', comma + 1)) {
        const QString rest = typed.mid(comma + 1).trimmed();
        for (std::size_t i = 0; i < EnumWords<Evidence>::words.size(); ++i) {
            const QString word = QString::fromLatin1(EnumWords<Evidence>::words[i]);
            if (!rest.startsWith(word))
                continue;
            const QString behind = rest.mid(word.size()).trimmed();
            if (behind.isEmpty() || behind.startsWith(u','))
                return {bare(typed.left(comma)), static_cast<Evidence>(i), behind.mid(1).trimmed()};
        }
    }
    return {bare(typed), std::nullopt, {}};
}

Outcome editInput(Book &book, const QString &address, const QString &typed)
{
    const std::optional<InputAddress> at = parseInputAddress(address);
    if (!at)
        return bad(tr("This input cannot be changed here."));
    return book.edit(tr("Change %1").arg(nameOf(*at)), [&]() -> Outcome {
        return std::visit([&](const auto &place) { return write(book, place, splitTyped(typed)); },
                          *at);
    });
}

namespace {

const CheckInput *inputNamed(const Check &check, const QString &name)
{
    const auto input = std::find_if(check.inputs.begin(), check.inputs.end(),
                                    [&](const CheckInput &one) { return one.origin.name == name; });
    return input == check.inputs.end() ? nullptr : &*input;
}

// As a question where it is a rating: whoever else asks for it, it is one thing to find out.
std::optional<Question> ratingAsked(const Records &records, const Check &check,
                                    const QString &unknown)
{
    const CheckInput *input = inputNamed(check, unknown);
    return input ? questionBehind(records, check, *input) : std::nullopt;
}

} // namespace

Result<Id<Task>> findOut(Book &book, const Check &check, const QString &unknown)
{
    if (const auto question = ratingAsked(book.records(), check, unknown))
        return makeFindOutTask(book, *question);
    std::optional<Id<Part>> part;
    const auto takePart = [&](const QString &key) {
        if (const Part *found = book.records().byKey<Part>(key))
            part = found->id;
    };
    const CheckInput *input = inputNamed(check, unknown);
    if (const auto at = input ? parseInputAddress(input->origin.field) : std::nullopt) {
        if (const auto *rating = std::get_if<RatingAddress>(&*at))
            takePart(rating->part);
        else if (const auto *duration = std::get_if<DurationAddress>(&*at))
            takePart(duration->peak.part);
        else if (const auto *figure = std::get_if<FigureAddress>(&*at);
                 figure && figure->subject == RecordTraits<Part>::table)
            takePart(figure->key);
        else if (const auto *curve = std::get_if<CurveAddress>(&*at))
            takePart(curve->part);
    }
    return makeFindOutTask(book, unknown, tr("the check “%1”").arg(check.title), part);
}

bool isBeingFoundOut(const Records &records, const Check &check, const QString &unknown)
{
    const auto question = ratingAsked(records, check, unknown);
    return findOutTask(records, question ? findOutTitle(records, *question)
                                         : findOutTitle(unknown)) != nullptr;
}

QStringList choicesAt(const QString &address)
{
    const std::optional<InputAddress> at = parseInputAddress(address);
    if (!at)
        return {};
    if (const auto *figure = std::get_if<FigureAddress>(&*at)) {
        const FigureInfo *info = checkFigure(figure->figure);
        return info ? wordsOf(*info) : QStringList();
    }
    if (const auto *field = std::get_if<FieldAddress>(&*at))
        if (const RecordKind *kind = recordKind(field->table))
            if (const FieldFacts *facts = kind->field(field->field))
                return facts->words;
    return {};
}

} // namespace ohmwright
