// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/book_inputs.h"

#include "core/quantity/dates.h"
#include "core/quantity/invariant.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BookInputs", text);
}

// "datasheet, page 4; 3 Mar 2026"
QString sourceOf(const QString &source, const std::optional<QDate> &on)
{
    QStringList words;
    if (!source.isEmpty())
        words << source;
    if (on)
        words << showDate(*on);
    return words.join(tr("; "));
}

// What a rating rests on; not yet what it is called and where it lies.
Origin groundsOf(const Part &part, const Rating &rating)
{
    Origin origin;
    origin.evidence = rating.evidence;
    origin.source = sourceOf(rating.source, rating.on);
    origin.stale =
        rating.part.isSet() && part.reworkedOn && rating.on && *rating.on < *part.reworkedOn;
    return origin;
}

} // namespace

BookInputs::BookInputs(const Records &records, QDate today, std::optional<Instead> instead)
    : m_records(records), m_today(today), m_instead(std::move(instead))
{
    const auto keep = [this](const CheckFigure &figure, const char *table, auto id) {
        m_figures.insert({{id ? id->value() : 0, table, figure.figure}, &figure});
    };
    for (const CheckFigure &figure : records.all<CheckFigure>()) {
        if (figure.circuit)
            keep(figure, RecordTraits<Circuit>::table, figure.circuit);
        else if (figure.branch)
            keep(figure, RecordTraits<Branch>::table, figure.branch);
        else if (figure.part)
            keep(figure, RecordTraits<Part>::table, figure.part);
        else if (figure.type)
            keep(figure, RecordTraits<PartType>::table, figure.type);
        else if (figure.test)
            keep(figure, RecordTraits<TestRecord>::table, figure.test);
        else
            keep(figure, "", std::optional<Id<Part>>());
    }
}

const CheckFigure *BookInputs::recorded(const char *name, const char *table, std::int64_t id) const
{
    const QString figure = QString::fromLatin1(name);
    Q_ASSERT_X(checkFigure(figure), name, "the figure a check asks for is in the list");
    const auto at = m_figures.find({id, table, figure});
    return at == m_figures.end() ? nullptr : at->second;
}

const CheckFigure *BookInputs::recordOf(const char *name, const Part &of) const
{
    const CheckFigure *own = recorded(name, RecordTraits<Part>::table, of.id.value());
    return own || !of.type ? own : recorded(name, RecordTraits<PartType>::table, of.type->value());
}

BookInputs::Found BookInputs::found(const char *name, const std::string &table, const QString &key,
                                    const CheckFigure *record) const
{
    const QString figure = QString::fromLatin1(name);
    const FigureInfo *info = checkFigure(figure);
    require(info != nullptr, "the figure a check asks for is in the list");
    Found result;
    result.record = record;
    result.origin.name = labelOf(*info);
    result.origin.field = print(FigureAddress{figure, table, key});
    if (record) {
        result.origin.evidence = record->evidence;
        result.origin.source = sourceOf(record->source, record->on);
    }
    return result;
}

BookInputs::Found BookInputs::foundOf(const char *name, const Part &of) const
{
    const CheckFigure *record = recordOf(name, of);
    Found result = found(name, RecordTraits<Part>::table, of.key, record);
    result.origin.name = tr("%1: %2").arg(of.name, result.origin.name);
    result.origin.path = withinOf(of);
    result.origin.stale =
        record && record->part && of.reworkedOn && record->on && *record->on < *of.reworkedOn;
    return result;
}

BookInputs::RatingFound BookInputs::foundRating(const Part &part, const FigureName &name) const
{
    const Figure figure = figureFor(m_records, part, name);
    RatingFound result;
    if (figure.inForce) {
        result.origin = groundsOf(part, *figure.inForce);
        if (figure.inForce->value)
            result.si = figure.inForce->value->si();
    }
    result.origin.name = tr("%1 of %2").arg(describe(name), part.name);
    result.origin.path = withinOf(part);
    result.origin.field = print(RatingAddress{part.key, name, {}});
    result.origin.clash = figure.clash;
    result.origin.safest = figure.clash && name.kind == RatingKind::Limit;
    result.origin.stale = figure.stale;
    return result;
}

Origin BookInputs::ratingOrigin(const Part &part, const Rating &rating) const
{
    Origin origin = groundsOf(part, rating);
    origin.name = tr("%1 of %2").arg(describe(figureOf(rating)), part.name);
    origin.path = withinOf(part);
    origin.field = print(RatingAddress{part.key, figureOf(rating), rating.duration});
    return origin;
}

Given<Duration> BookInputs::durationOf(const Part &part, const Rating &one,
                                       const QString &name) const
{
    Origin origin = groundsOf(part, one);
    origin.name = name;
    origin.field = print(DurationAddress{{part.key, figureOf(one), one.duration}});
    return read<Duration>(siOf(one.duration), origin);
}

Origin BookInputs::fieldOrigin(const char *table, const QString &key, const char *column,
                               const QString &name) const
{
    Origin origin;
    origin.name = name;
    origin.field = print(FieldAddress{table, key, QString::fromLatin1(column)});
    return origin;
}

const RatedCurve *BookInputs::curve(const Part &part, CurveKind kind) const
{
    const RatedCurve *ofType = nullptr;
    for (const RatedCurve &curve : m_records.all<RatedCurve>()) {
        if (curve.kind != kind || m_records.of<CurvePoint>(curve.id).empty())
            continue;
        if (curve.part == part.id)
            return &curve;
        if (part.type && curve.type == part.type && !ofType)
            ofType = &curve;
    }
    return ofType;
}

Origin BookInputs::curveOrigin(const Part &part, CurveKind kind, const QString &name) const
{
    Origin origin;
    origin.name = name;
    origin.path = pathOf(part);
    if (const RatedCurve *found = curve(part, kind)) {
        origin.evidence = found->evidence;
        origin.source = sourceOf(found->source, found->on);
        origin.stale = found->part && part.reworkedOn && found->on && *found->on < *part.reworkedOn;
    } else {
        origin.field = print(CurveAddress{part.key, kind});
    }
    return origin;
}

const OwnThreshold *BookInputs::ownThreshold(const QString &name) const
{
    for (const OwnThreshold &own : m_records.all<OwnThreshold>())
        if (own.name == name)
            return &own;
    return nullptr;
}

QString BookInputs::withinOf(const Part &part) const
{
    return part.partOf ? pathOf(part) : QString();
}

QString BookInputs::pathOf(const Part &part) const
{
    QString path = part.name;
    const Part *above = m_records.find(part.partOf);
    // a loop of assemblies is refused elsewhere; here it only must end
    for (std::size_t steps = 0; above && steps < m_records.all<Part>().size(); ++steps) {
        path = QString(above->name + QStringLiteral(" › ") + path);
        above = m_records.find(above->partOf);
    }
    return path;
}

} // namespace ohmwright
