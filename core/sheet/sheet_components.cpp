// SPDX-License-Identifier: GPL-3.0-or-later
// Components with every figure and its evidence; circuits, conductors, fuses; masses.
#include "core/parts/life.h"
#include "core/parts/questions.h"
#include "core/parts/voltage_class.h"
#include "core/sheet/sheet_figures.h"
#include "core/sheet/sheet_sections.h"
#include "core/sheet/sheet_types.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <unordered_map>
#include <utility>

namespace ohmwright::sections {

using namespace sheet;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

QString originOf(const Records &records, const Part &part)
{
    QStringList words;
    if (const PartType *type = records.find(part.type))
        words << nameOf(*type);
    if (!part.serial.isEmpty())
        words << tr("serial %1").arg(part.serial);
    if (const Donor *donor = records.find(part.donor))
        words << tr("from %1").arg(QStringList{donor->make, donor->model}.join(u' '));
    words.removeAll(QString());
    return words.join(tr(", "));
}

using Groups = std::unordered_map<Id<Part>, const TypeGroup *>;

// "Also holds 10 × Odavan MB-1202-47, told with their type": what a reader of the assembly must
// not miss.
QString toldElsewhere(const Sources &from, Id<Part> assembly, const Groups &grouped)
{
    std::vector<std::pair<const TypeGroup *, int>> counts;
    for (const Id<Part> inner : from.tree.within(assembly)) {
        const auto it = grouped.find(inner);
        if (it == grouped.end())
            continue;
        const auto known = std::find_if(counts.begin(), counts.end(),
                                        [&](auto &c) { return c.first == it->second; });
        if (known == counts.end())
            counts.emplace_back(it->second, 1);
        else
            ++known->second;
    }
    QStringList words;
    for (const auto &[group, count] : counts) {
        const QString name = nameOf(*group->type);
        words << tr("%1 × %2").arg(count).arg(name.isEmpty() ? group->type->name : name);
    }
    return words.isEmpty() ? QString()
                           : tr("also holds %1, told with their type").arg(words.join(tr(", ")));
}

// The name as a group row, then a row for each figure.
void addComponent(const Sources &from, const Part &part, const std::vector<Question> &questions,
                  const Groups &grouped, sheet::Table &table)
{
    const Records &records = from.records;
    QStringList origin{originOf(records, part), toldElsewhere(from, part.id, grouped)};
    origin.removeAll(QString());
    Cell name{tr("%1 — %2").arg(from.tree.path(part.id).join(tr(" › ")), wordOf(part.state)),
              origin.join(tr("; ")),
              {}};
    if (isVoltageClassB(records, part))
        name.marks.push_back({MarkKind::HighVoltage, {}});
    table.rows.push_back({{name}, RowKind::Group});
    for (const ohmwright::Figure &figure : figuresOf(records, part))
        table.rows.push_back(rowOf(figure));
    for (const Question &q : questions)
        if (q.part == part.id && figureFor(records, part, q.figure).all.empty())
            table.rows.push_back({{Cell{describe(q.figure)}, Cell{tr("not known")},
                                   Cell{tr("asked by %1").arg(q.askedBy.join(tr(", "))),
                                        {},
                                        {Mark{MarkKind::Unknown, tr("open")}}}},
                                  RowKind::Plain});
    if (const QStringList remarks = remarksOf(part); !remarks.isEmpty())
        table.rows.push_back(
            {{Cell{tr("remarks")}, Cell{}, Cell{remarks.join(tr("; "))}}, RowKind::Plain});
}

// An assembly, then what is in it, so that a weak sub-part is read with its path.
std::vector<const Part *> componentsToTell(const Sources &from)
{
    std::vector<const Part *> parts;
    for (const Part &part : from.records.all<Part>()) {
        if (part.partOf || !isComponent(part))
            continue;
        const bool rated = !figuresOf(from.records, part).empty() ||
                           !from.records.of<Connection>(part.id).empty() ||
                           !from.tree.within(part.id).empty();
        if (!rated && part.state != PartState::Fitted)
            continue;
        parts.push_back(&part);
        for (const Id<Part> inner : from.tree.allWithin(part.id))
            if (const Part *sub = from.records.find(inner); sub && !isGone(sub->state))
                parts.push_back(sub);
    }
    return parts;
}

} // namespace

void addComponents(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Components, ratings and evidence"), QStringLiteral("components")});
    to.push_back(Paragraph{
        {{tr("Of limits that clash the safer is in force until one is settled. Papers and plate "
             "lead; nothing measured raises a limit. Of actual values what was measured leads. "
             "What "
             "holds for a type is told once. A figure without a mark rests on papers, plate or "
             "measurement."),
          Emphasis::Muted,
          {}}}});
    const std::vector<Question> &questions = from.questions;
    const std::vector<const Part *> parts = componentsToTell(from);
    const std::vector<TypeGroup> groups = groupByType(from, parts);
    Groups grouped;
    for (const TypeGroup &group : groups)
        for (const Part *part : group.parts)
            grouped.emplace(part->id, &group);
    if (!groups.empty()) {
        to.push_back(Heading{2, tr("Several of one type"), {}});
        for (const TypeGroup &group : groups)
            addTypeGroup(from, group, questions, to);
        to.push_back(Heading{2, tr("Single parts and assemblies"), {}});
    }
    sheet::Table table;
    table.columns = {
        {tr("figure")}, {tr("value"), Align::Decimal}, {tr("evidence"), Align::Left, 1}};
    for (const Part *part : parts)
        if (!grouped.contains(part->id))
            addComponent(from, *part, questions, grouped, table);
    to.push_back(std::move(table));
}

void addCircuits(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Circuits"), QStringLiteral("circuits")});
    sheet::Table table;
    table.columns = {{tr("circuit"), Align::Left, 4},
                     {tr("kind"), Align::Left, 3},
                     {tr("nominal"), Align::Decimal},
                     {tr("worst voltage"), Align::Decimal},
                     {tr("worst voltage from"), Align::Left, 5}};
    for (const Circuit &c : from.records.all<Circuit>()) {
        Cell name{c.name, c.note, {}};
        if (isVoltageClassB(c))
            name.marks.push_back({MarkKind::HighVoltage, {}});
        table.rows.push_back(
            {{name, Cell{tr("%1, %2").arg(wordOf(c.kind), wordOf(c.current)), {}, {}},
              Cell{textOf(c.nominalVoltage), {}, {}}, Cell{textOf(c.worstVoltage), {}, {}},
              Cell{c.worstVoltageFrom, {}, {}}},
             RowKind::Plain});
    }
    to.push_back(std::move(table));
}

void addConductors(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Conductors and fuses, as entered"), QStringLiteral("conductors")});
    sheet::Table table;
    table.columns = {{tr("branch, from – to"), Align::Left, 6},
                     {tr("current"), Align::Right},
                     {tr("conductor"), Align::Left, 6},
                     {tr("length"), Align::Right},
                     {tr("fuse"), Align::Left, 4}};
    for (const Circuit &circuit : from.records.all<Circuit>()) {
        bool grouped = false;
        for (const Branch &b : from.records.all<Branch>()) {
            if (b.circuit != circuit.id)
                continue;
            if (!grouped) {
                Cell group{circuit.name, {}, {}};
                if (isVoltageClassB(circuit))
                    group.marks.push_back({MarkKind::HighVoltage, {}});
                table.rows.push_back({{group}, RowKind::Group});
                grouped = true;
            }
            const Part *fuse = from.records.find(b.fuse);
            QStringList way{QStringList{b.from, b.to}.join(tr(" – ")), b.note};
            way.removeAll(QString());
            const QString peak =
                b.peakCurrent ? tr("peak %1").arg(textOf(b.peakCurrent)) : QString();
            table.rows.push_back(
                {{Cell{b.name, way.join(tr(". ")), {}}, Cell{textOf(b.continuousCurrent), peak, {}},
                  Cell{textOf(b.conductorSize),
                       QStringList{b.conductor, b.colour}.join(tr(", ")),
                       {}},
                  Cell{textOf(b.conductorLength), {}, {}},
                  Cell{b.fuseRating ? textOf(b.fuseRating) : tr("none entered"),
                       fuse ? fuse->name : QString(),
                       {}}},
                 RowKind::Plain});
        }
    }
    to.push_back(std::move(table));
}

void addMasses(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Masses out and in, as entered"), QStringLiteral("masses")});
    sheet::Table table;
    table.columns = {{tr("what"), Align::Left, 1},
                     {tr("mass"), Align::Decimal},
                     {tr("behind the front axle"), Align::Decimal},
                     {tr("evidence")}};
    for (const MassDirection direction : {MassDirection::Out, MassDirection::In}) {
        double sum = 0;
        int unknown = 0;
        table.rows.push_back(
            {{Cell{direction == MassDirection::Out ? tr("Taken out") : tr("Put in"), {}, {}}},
             RowKind::Group});
        for (const MassEntry &m : from.records.all<MassEntry>()) {
            if (m.direction != direction)
                continue;
            if (m.mass)
                sum += m.mass->si();
            else
                ++unknown;
            table.rows.push_back(
                {{Cell{m.name, m.note, {}}, Cell{textOf(m.mass), {}, {}},
                  Cell{textOf(m.behindFrontAxle), {}, {}}, Cell{wordOf(m.evidence), {}, {}}},
                 RowKind::Plain});
        }
        const Amount total(std::round(sum * 10) / 10, *Unit::fromSymbol(u"kg"));
        table.rows.push_back(
            {{Cell{tr("Sum"),
                   unknown ? tr("%1 not known, not in the sum").arg(unknown) : QString(),
                   {}},
              Cell{showAmount(total, NumberStyle::pointDecimal()), {}, {}}},
             RowKind::Total});
    }
    to.push_back(std::move(table));
}

} // namespace ohmwright::sections
