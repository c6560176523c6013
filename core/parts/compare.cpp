// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/compare.h"

#include "core/parts/agree.h"

#include <QCoreApplication>

#include <algorithm>
#include <set>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Compare", text);
}

QString maker(const PartType &type)
{
    return QString(type.make + u' ' + type.partNumber).trimmed();
}

// What a unit is called and what it says, of a type or of a part.
class Reader
{
public:
    explicit Reader(const Records &records) : m_records(records) {}

    [[nodiscard]] std::optional<ComparedUnit> unit(ComparedId id) const
    {
        if (const PartType *type = typeOf(id))
            return ComparedUnit{id, type->key, type->name, words({tr("type"), maker(*type)}),
                                words({type->partNumber, type->name})};
        const Part *part = partOf(id);
        if (!part)
            return std::nullopt;
        const PartType *type = m_records.find(part->type);
        return ComparedUnit{id, part->key, part->name,
                            words({wordOf(part->state), type ? maker(*type) : QString()}),
                            part->name};
    }

    void collectNames(ComparedId id, std::set<FigureName> &names) const
    {
        const PartType *type = typeOf(id);
        for (const Figure &figure :
             type ? figuresOf(m_records, *type) : figuresOf(m_records, *partOf(id)))
            names.insert(figure.name);
    }

    [[nodiscard]] ComparedCell figure(ComparedId id, const FigureName &name) const
    {
        const PartType *type = typeOf(id);
        const Figure figure =
            type ? figureFor(m_records, *type, name) : figureFor(m_records, *partOf(id), name);
        ComparedCell cell;
        const Rating *rating = figure.inForce;
        if (!rating || !rating->value) {
            if (figure.saidUnknown)
                cell.from = tr("looked for");
            return cell;
        }
        const NumberStyle style = NumberStyle::pointDecimal();
        cell.amount = rating->value;
        cell.duration = rating->duration;
        cell.value = showAmount(*rating->value, style);
        if (rating->duration)
            cell.value = tr("%1 for %2").arg(cell.value, showAmount(*rating->duration, style));
        cell.evidence = rating->evidence;
        cell.source = rating->source;
        cell.ofType = !type && rating->type.isSet();
        cell.clash = figure.clash;
        cell.stale = figure.stale;
        cell.from = words({wordOf(rating->evidence), rating->source,
                           cell.clash ? tr("others clash with it") : QString(),
                           cell.stale ? tr("from before the rework") : QString()});
        return cell;
    }

    // Of all interfaces of a part; of a type, those of the parts there are of it.
    [[nodiscard]] ComparedCell plug(ComparedId id, QString Interface::*member) const
    {
        QStringList texts;
        QStringList on;
        const auto take = [&](const Part &part) {
            for (const Interface &one : m_records.all<Interface>()) {
                const QString text = (one.*member).simplified();
                if (one.part != part.id || text.isEmpty() ||
                    texts.contains(text, Qt::CaseInsensitive))
                    continue;
                texts << text;
                on << part.name;
            }
        };
        const PartType *type = typeOf(id);
        if (!type)
            take(*partOf(id));
        else
            for (const Part &part : m_records.all<Part>())
                if (part.type == type->id)
                    take(part);
        ComparedCell cell;
        cell.value = texts.join(tr("; "));
        on.removeDuplicates();
        if (type && !on.isEmpty())
            cell.from = tr("on %1").arg(on.join(tr(", ")));
        return cell;
    }

private:
    [[nodiscard]] const PartType *typeOf(ComparedId id) const
    {
        const auto *type = std::get_if<Id<PartType>>(&id);
        return type ? m_records.find(*type) : nullptr;
    }
    [[nodiscard]] const Part *partOf(ComparedId id) const
    {
        const auto *part = std::get_if<Id<Part>>(&id);
        return part ? m_records.find(*part) : nullptr;
    }
    static QString words(QStringList texts)
    {
        texts.removeAll(QString());
        return texts.join(tr(", "));
    }

    const Records &m_records;
};

bool disagree(const ComparedCell &a, const ComparedCell &b, RatingKind kind)
{
    return !agree(kind, *a.amount, *b.amount) || a.duration.has_value() != b.duration.has_value() ||
           (a.duration && !agree(RatingKind::Limit, *a.duration, *b.duration));
}

template <class Disagree>
Agreement judged(const std::vector<ComparedCell> &cells, Disagree disagree)
{
    bool isOpen = false;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (cells[i].value.isEmpty()) {
            isOpen = true;
            continue;
        }
        for (std::size_t j = i + 1; j < cells.size(); ++j)
            if (!cells[j].value.isEmpty() && disagree(cells[i], cells[j]))
                return Agreement::Differs;
    }
    return isOpen ? Agreement::NotKnown : Agreement::Same;
}

void tellApart(std::vector<ComparedUnit> &units)
{
    std::vector<bool> shared;
    for (const ComparedUnit &unit : units)
        shared.push_back(std::ranges::count(units, unit.head, &ComparedUnit::head) > 1);
    for (std::size_t i = 0; i < units.size(); ++i)
        if (shared[i])
            units[i].head = tr("%1 (%2)").arg(units[i].head, units[i].key);
}

void addPlugs(SideBySide &into, const Reader &reader)
{
    const std::array<std::pair<const char *, QString Interface::*>, 4> asked{{
        {QT_TRANSLATE_NOOP("Compare", "connectors"), &Interface::connector},
        {QT_TRANSLATE_NOOP("Compare", "bus"), &Interface::bus},
        {QT_TRANSLATE_NOOP("Compare", "wake signal"), &Interface::wakeSignal},
        {QT_TRANSLATE_NOOP("Compare", "position sensor"), &Interface::positionSensor},
    }};
    for (const auto &[what, member] : asked) {
        ComparedRow row;
        row.what = tr(what);
        for (const ComparedUnit &unit : into.units)
            row.cells.push_back(reader.plug(unit.id, member));
        row.agreement = agreementOf(row.cells);
        if (std::ranges::any_of(row.cells, [](const auto &cell) { return !cell.value.isEmpty(); }))
            into.rows.push_back(std::move(row));
    }
}

} // namespace

Agreement agreementOf(const std::vector<ComparedCell> &cells)
{
    return judged(cells, [](const ComparedCell &a, const ComparedCell &b) {
        return a.value.simplified().compare(b.value.simplified(), Qt::CaseInsensitive) != 0;
    });
}

std::optional<ComparedUnit> comparedUnit(const Records &records, ComparedId id)
{
    return Reader(records).unit(id);
}

Result<SideBySide> compareUnits(const Records &records, const std::vector<ComparedId> &units)
{
    if (units.size() < 2)
        return fail(ProblemCode::BadInput, tr("Comparing takes two types or parts, or more."));
    const Reader reader(records);
    SideBySide made;
    std::set<FigureName> names;
    for (std::size_t i = 0; i < units.size(); ++i) {
        const std::optional<ComparedUnit> unit = reader.unit(units[i]);
        if (!unit)
            return fail(ProblemCode::NotFound,
                        tr("What was to be compared is no longer in the book."));
        if (std::find(units.begin(), units.begin() + static_cast<std::ptrdiff_t>(i), units[i]) !=
            units.begin() + static_cast<std::ptrdiff_t>(i))
            return fail(ProblemCode::BadInput,
                        tr("“%1” is named twice; compare it with another.").arg(unit->name));
        made.units.push_back(*unit);
        reader.collectNames(units[i], names);
    }
    tellApart(made.units);
    for (const FigureName &name : names) {
        ComparedRow row;
        row.what = describe(name);
        row.figure = name;
        for (const ComparedId &id : units)
            row.cells.push_back(reader.figure(id, name));
        row.agreement = judged(row.cells, [&](const ComparedCell &a, const ComparedCell &b) {
            return disagree(a, b, name.kind);
        });
        made.rows.push_back(std::move(row));
    }
    addPlugs(made, reader);
    return made;
}

Result<ComparedId> unitNamed(const Records &records, const QString &name)
{
    // no key holds a colon
    const QString which = name.section(u':', 0, 0);
    const bool told = name.contains(u':');
    const QString key = told ? name.section(u':', 1) : name;
    const PartType *type =
        told && which != QLatin1String("type") ? nullptr : records.byKey<PartType>(key);
    const Part *part = told && which != QLatin1String("part") ? nullptr : records.byKey<Part>(key);
    if (type && part)
        return fail(ProblemCode::BadInput, tr("“%1” is a type and a part.").arg(key),
                    tr("Write type:%1 or part:%1.").arg(key));
    if (type)
        return ComparedId(type->id);
    if (part)
        return ComparedId(part->id);
    return fail(ProblemCode::NotFound,
                tr("The book has no “%1” among its types and parts.").arg(name));
}

QString summary(const SideBySide &compared)
{
    const auto count = [&](Agreement agreement) {
        return static_cast<int>(
            std::ranges::count(compared.rows, agreement, &ComparedRow::agreement));
    };
    if (compared.rows.empty())
        return tr("Nothing is recorded of any of them.");
    return tr("%1 differ, %2 not known of all, %3 the same.")
        .arg(count(Agreement::Differs))
        .arg(count(Agreement::NotKnown))
        .arg(count(Agreement::Same));
}

} // namespace ohmwright
