// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/figures.h"

#include "core/parts/agree.h"

#include <QCoreApplication>

#include <algorithm>
#include <iterator>
#include <set>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Figures", text);
}

struct Candidate
{
    const Rating *rating;
    bool stale;
};

// Of actual values: measured first, papers and plate next, hearsay last.
int actualRank(Evidence evidence)
{
    switch (evidence) {
    case Evidence::Measured:
        return 0;
    case Evidence::Datasheet:
    case Evidence::Nameplate:
    case Evidence::ServiceManual:
        return 1;
    case Evidence::Seller:
        return 2;
    case Evidence::Community:
        return 3;
    case Evidence::Assumed:
        return 4;
    }
    return 5;
}

bool saferLimit(RatingBasis basis, const Rating &a, const Rating &b)
{
    const double x = a.value->si();
    const double y = b.value->si();
    if (x != y)
        return basis == RatingBasis::Least ? x > y : x < y;
    return isPaper(a.evidence) && !isPaper(b.evidence);
}

bool betterActual(const Rating &a, const Rating &b)
{
    if (actualRank(a.evidence) != actualRank(b.evidence))
        return actualRank(a.evidence) < actualRank(b.evidence);
    return a.on.value_or(QDate(1, 1, 1)) > b.on.value_or(QDate(1, 1, 1));
}

QString whySettled(const Rating &rating)
{
    QString reason = rating.note.isEmpty() ? wordOf(rating.evidence) : rating.note.trimmed();
    if (reason.endsWith(u'.'))
        reason.chop(1);
    return tr("Settled: %1.").arg(reason);
}

void chooseLimit(Figure &figure, const std::vector<const Rating *> &known)
{
    const auto safest = *std::min_element(known.begin(), known.end(), [&](auto *a, auto *b) {
        return saferLimit(figure.name.basis, *a, *b);
    });
    // what no paper says may only tighten
    const Rating *paper = nullptr;
    for (const Rating *r : known)
        if (isPaper(r->evidence) && (!paper || saferLimit(figure.name.basis, *paper, *r)))
            paper = r;
    const auto settled =
        std::find_if(known.begin(), known.end(), [](auto *r) { return r->settled; });
    if (settled != known.end()) {
        const bool raises = paper && !isPaper((*settled)->evidence) &&
                            saferLimit(figure.name.basis, *paper, **settled);
        if (!raises) {
            figure.inForce = *settled;
            return;
        }
        figure.overruled = true;
    }
    figure.inForce = safest;
    // a higher value that no paper backs cannot raise the limit, so it does not clash with papers
    // and limits for other durations are other limits
    const auto lasting = figureOf(*safest).seconds;
    figure.clash = std::any_of(known.begin(), known.end(), [&](auto *r) {
        if (figureOf(*r).seconds != lasting)
            return false;
        const bool cannotRaise = paper && isPaper(safest->evidence) && !isPaper(r->evidence);
        return !cannotRaise && !agree(RatingKind::Limit, *r->value, *safest->value);
    });
}

QString whyLimit(const Figure &figure)
{
    const Rating &safest = *figure.inForce;
    if (figure.overruled)
        return tr("What was settled is not from papers or plate, and only those can raise a "
                  "limit; the safest value is used.");
    if (safest.settled)
        return whySettled(safest);
    if (figure.clash)
        return tr("The values clash; the safest is used until one is settled.");
    return isPaper(safest.evidence)
               ? tr("From %1; nothing measured or heard of raises a limit.")
                     .arg(wordOf(safest.evidence))
               : tr("From %1 alone: no papers or plate.").arg(wordOf(safest.evidence));
}

void chooseActual(Figure &figure, const std::vector<const Rating *> &known)
{
    const auto settled =
        std::find_if(known.begin(), known.end(), [](auto *r) { return r->settled; });
    if (settled != known.end()) {
        figure.inForce = *settled;
        return;
    }
    figure.inForce = *std::min_element(known.begin(), known.end(),
                                       [](auto *a, auto *b) { return betterActual(*a, *b); });
    figure.clash = std::any_of(known.begin(), known.end(), [&](auto *r) {
        return !agree(RatingKind::Actual, *r->value, *figure.inForce->value);
    });
}

QString whyActual(const Figure &figure)
{
    if (figure.inForce->settled)
        return whySettled(*figure.inForce);
    return figure.inForce->evidence == Evidence::Measured
               ? tr("Measured, which leads for what a part is.")
               : tr("From %1; not measured.").arg(wordOf(figure.inForce->evidence));
}

bool isStale(const Rating &rating, const Part *part)
{
    if (!part || !part->reworkedOn)
        return false;
    return !rating.on || *rating.on < *part->reworkedOn;
}

Figure choose(const FigureName &name, const std::vector<const Rating *> &all, const Part *part)
{
    Figure figure;
    figure.name = name;
    figure.all = all;
    std::vector<const Rating *> fresh;
    std::vector<const Rating *> stale;
    for (const Rating *r : all) {
        if (!r->value)
            figure.saidUnknown = true;
        else
            (isStale(*r, part) ? stale : fresh).push_back(r);
    }
    std::vector<const Rating *> known = fresh.empty() ? stale : fresh;
    if (name.kind == RatingKind::Limit && !fresh.empty() &&
        std::none_of(fresh.begin(), fresh.end(), [](auto *r) { return isPaper(r->evidence); }))
        std::copy_if(stale.begin(), stale.end(), std::back_inserter(known),
                     [](auto *r) { return isPaper(r->evidence); });
    if (known.empty())
        return figure;
    if (name.kind == RatingKind::Limit)
        chooseLimit(figure, known);
    else
        chooseActual(figure, known);
    figure.stale = isStale(*figure.inForce, part);
    return figure;
}

enum class Durations { AsNamed, Any };

template <class Owner>
void collect(const Records &records, Id<Owner> owner, const FigureName &name, Durations durations,
             std::vector<const Rating *> &into)
{
    for (const Rating &r : records.of<Rating>(owner)) {
        FigureName told = figureOf(r);
        if (durations == Durations::Any)
            told.seconds = name.seconds;
        if (told == name)
            into.push_back(&r);
    }
}

Figure figureFor(const Records &records, const Part &part, const FigureName &name,
                 Durations durations)
{
    std::vector<const Rating *> all;
    collect(records, part.id, name, durations, all);
    if (part.type)
        collect(records, *part.type, name, durations, all);
    return choose(name, all, &part);
}

Figure figureFor(const Records &records, const PartType &type, const FigureName &name,
                 Durations durations)
{
    std::vector<const Rating *> all;
    collect(records, type.id, name, durations, all);
    return choose(name, all, nullptr);
}

Durations askedFor(const FigureName &name)
{
    return name.seconds ? Durations::AsNamed : Durations::Any;
}

QString lasting(double seconds)
{
    return printAmount(Amount::fromSi(seconds, *Unit::fromSymbol(u"s")));
}

} // namespace

QString whyInForce(const Figure &figure)
{
    if (!figure.inForce)
        return figure.saidUnknown ? tr("Looked for and not known.") : tr("Not recorded.");
    if (figure.stale)
        return tr("From before the part was reworked: confirm it.");
    return figure.name.kind == RatingKind::Limit ? whyLimit(figure) : whyActual(figure);
}

bool isPaper(Evidence evidence)
{
    return evidence == Evidence::Datasheet || evidence == Evidence::Nameplate ||
           evidence == Evidence::ServiceManual;
}

FigureName figureOf(const Rating &rating)
{
    FigureName name{rating.quantity, rating.kind, rating.basis, rating.current};
    if (rating.basis == RatingBasis::Peak && rating.duration)
        name.seconds = rating.duration->si();
    return name;
}

QString describe(const FigureName &figure)
{
    QString text = wordOf(figure.quantity);
    if (figure.current)
        text = wordOf(*figure.current) + u' ' + text;
    if (figure.kind == RatingKind::Actual)
        return text;
    switch (figure.basis) {
    case RatingBasis::Peak:
        return figure.seconds ? tr("peak %1 limit for %2").arg(text, lasting(*figure.seconds))
                              : tr("peak %1 limit").arg(text);
    case RatingBasis::Least:
        return tr("lowest %1").arg(text);
    case RatingBasis::Continuous:
    case RatingBasis::Nominal:
        break;
    }
    return tr("%1 limit").arg(text);
}

Figure figureFor(const Records &records, const Part &part, const FigureName &name)
{
    return figureFor(records, part, name, askedFor(name));
}

Figure figureFor(const Records &records, const PartType &type, const FigureName &name)
{
    return figureFor(records, type, name, askedFor(name));
}

std::vector<Figure> figuresOf(const Records &records, const Part &part)
{
    std::set<FigureName> names;
    for (const Rating &r : records.of<Rating>(part.id))
        names.insert(figureOf(r));
    if (part.type)
        for (const Rating &r : records.of<Rating>(*part.type))
            names.insert(figureOf(r));
    std::vector<Figure> figures;
    for (const FigureName &name : names)
        figures.push_back(figureFor(records, part, name, Durations::AsNamed));
    return figures;
}

std::vector<Figure> figuresOf(const Records &records, const PartType &type)
{
    std::set<FigureName> names;
    for (const Rating &r : records.of<Rating>(type.id))
        names.insert(figureOf(r));
    std::vector<Figure> figures;
    for (const FigureName &name : names)
        figures.push_back(figureFor(records, type, name, Durations::AsNamed));
    return figures;
}

std::optional<CurrentKind> currentKindOf(const Records &records, const Part &part)
{
    std::optional<CurrentKind> kind;
    for (const Connection &connection : records.of<Connection>(part.id)) {
        const Circuit *circuit = records.find(connection.circuit);
        if (!circuit)
            continue;
        if (kind && *kind != circuit->current)
            return std::nullopt;
        kind = circuit->current;
    }
    return kind;
}

bool answersNeed(const Records &records, const Part &part, const TaskNeed &need)
{
    const std::optional<CurrentKind> told = currentKindOf(records, part);
    const bool mustSay =
        need.quantity == RatedQuantity::Voltage || need.quantity == RatedQuantity::Current;
    const std::vector<Figure> figures = figuresOf(records, part);
    return std::any_of(figures.begin(), figures.end(), [&](const Figure &f) {
        if (!f.inForce || f.name.quantity != need.quantity ||
            (need.basis && f.name.basis != *need.basis))
            return false;
        if (!told)
            return true;
        return f.name.current ? *f.name.current == *told
                              : !mustSay || f.name.kind == RatingKind::Actual;
    });
}

} // namespace ohmwright
