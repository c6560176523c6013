// SPDX-License-Identifier: GPL-3.0-or-later
// Components with every figure and its evidence; circuits, conductors, fuses; masses.
#include "core/sheet/sheet_sections.h"

#include "core/parts/life.h"
#include "core/parts/questions.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

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
        words << QStringList{type->make, type->partNumber}.join(u' ').trimmed();
    if (!part.serial.isEmpty())
        words << tr("serial %1").arg(part.serial);
    if (const Donor *donor = records.find(part.donor))
        words << tr("from %1").arg(QStringList{donor->make, donor->model}.join(u' '));
    words.removeAll(QString());
    return words.join(tr(", "));
}

bool onHighVoltage(const Records &records, const Part &part)
{
    const auto connections = records.of<Connection>(part.id);
    return std::any_of(connections.begin(), connections.end(), [&](const Connection &c) {
        const Circuit *circuit = records.find(c.circuit);
        return circuit && isHighVoltage(*circuit);
    });
}

// The name as a group row, then a row for each figure.
void addComponent(const Sources &from, const Part &part, const std::vector<Question> &questions, sheet::Table &table)
{
    const Records &records = from.records;
    const QStringList path = from.tree.path(part.id);
    Cell name{path.join(tr(" › ")), originOf(records, part), {}};
    if (onHighVoltage(records, part))
        name.marks.push_back({MarkKind::HighVoltage, {}});
    name.text += tr(" — %1").arg(wordOf(part.state));
    table.rows.push_back({{name}, RowKind::Group});
    QStringList remarks;
    if (!part.acceptedBecause.isEmpty())
        remarks << tr("accepted as is, because %1").arg(part.acceptedBecause);
    if (part.openedOn)
        remarks << tr("opened %1: %2").arg(showDate(*part.openedOn), part.openedBecause);
    if (part.reworkedOn)
        remarks << tr("reworked %1").arg(showDate(*part.reworkedOn));
    if (!part.transportDamage.isEmpty())
        remarks << tr("transport damage: %1").arg(part.transportDamage);
    const std::vector<ohmwright::Figure> figures = figuresOf(records, part);
    for (const ohmwright::Figure &figure : figures) {
        Cell value{figure.inForce ? showAmount(*figure.inForce->value, NumberStyle::pointDecimal()) : tr("not known"), {}, {}};
        if (figure.inForce && figure.inForce->duration)
            value.text += tr(" for %1").arg(showAmount(*figure.inForce->duration, NumberStyle::pointDecimal()));
        Cell evidence{figure.inForce ? evidenceText(*figure.inForce) : QString(), {}, {}};
        if (figure.clash) {
            QStringList others;
            for (const Rating *r : figure.all)
                if (r != figure.inForce && r->value)
                    others << tr("%1 (%2)").arg(showAmount(*r->value, NumberStyle::pointDecimal()), evidenceText(*r));
            evidence.evidence = tr("also recorded: %1").arg(others.join(tr("; ")));
        } else if (figure.stale || !figure.inForce) {
            evidence.evidence = figure.why;
        }
        table.rows.push_back({{Cell{describe(figure.name), {}, {}}, value, evidence, Cell{{}, {}, {markOf(figure)}}},
                              RowKind::Plain});
    }
    for (const Question &q : questions) {
        const bool listed = std::any_of(figures.begin(), figures.end(), [&](const ohmwright::Figure &f) { return f.name == q.figure; });
        if (q.part == part.id && !listed)
            table.rows.push_back({{Cell{describe(q.figure), {}, {}}, Cell{tr("not known"), {}, {}},
                                   Cell{{}, tr("asked by %1").arg(q.askedBy.join(tr(", "))), {}},
                                   Cell{{}, {}, {Mark{MarkKind::Unknown, tr("open")}}}},
                                  RowKind::Plain});
    }
    if (!remarks.isEmpty())
        table.rows.push_back({{Cell{tr("remarks"), {}, {}}, Cell{}, Cell{remarks.join(tr("; ")), {}, {}}}, RowKind::Plain});
}

} // namespace

void addComponents(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Components, ratings and evidence"), QStringLiteral("components")});
    to.push_back(Paragraph{{{tr("Of limits that clash the safer is in force until one is settled. Papers and plate "
                                "lead; nothing measured raises a limit. Of actual values what was measured leads."),
                             Emphasis::Muted, {}}}});
    const std::vector<Question> questions = openQuestions(from.records);
    sheet::Table table;
    table.columns = {{tr("figure"), Align::Left, 5}, {tr("value"), Align::Decimal, 4}, {tr("evidence"), Align::Left, 10},
                     {tr("standing"), Align::Left, 3}};
    // an assembly, then what is in it, so that a weak sub-part is read with its path
    for (const Part &part : from.records.all<Part>()) {
        if (part.partOf || !isComponent(part))
            continue;
        const bool rated = !figuresOf(from.records, part).empty() || !from.records.of<Connection>(part.id).empty()
                           || !from.tree.within(part.id).empty();
        if (!rated && part.state != PartState::Fitted)
            continue;
        addComponent(from, part, questions, table);
        for (const Id<Part> inner : from.tree.allWithin(part.id))
            if (const Part *sub = from.records.find(inner); sub && !isGone(sub->state))
                addComponent(from, *sub, questions, table);
    }
    to.push_back(std::move(table));
}

void addCircuits(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Circuits"), QStringLiteral("circuits")});
    sheet::Table table;
    table.columns = {{tr("circuit"), Align::Left, 4}, {tr("kind"), Align::Left, 3}, {tr("nominal"), Align::Decimal, 2},
                     {tr("worst voltage"), Align::Decimal, 2}, {tr("worst voltage from"), Align::Left, 5}};
    for (const Circuit &c : from.records.all<Circuit>()) {
        Cell name{c.name, c.note, {}};
        if (isHighVoltage(c))
            name.marks.push_back({MarkKind::HighVoltage, {}});
        table.rows.push_back({{name, Cell{tr("%1, %2").arg(wordOf(c.kind), wordOf(c.current)), {}, {}},
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
    table.columns = {{tr("branch"), Align::Left, 5},        {tr("from – to"), Align::Left, 5},
                     {tr("current"), Align::Right, 3},      {tr("conductor"), Align::Left, 5},
                     {tr("length"), Align::Right, 2},       {tr("fuse"), Align::Left, 4}};
    for (const Circuit &circuit : from.records.all<Circuit>()) {
        bool grouped = false;
        for (const Branch &b : from.records.all<Branch>()) {
            if (b.circuit != circuit.id)
                continue;
            if (!grouped) {
                Cell group{circuit.name, {}, {}};
                if (isHighVoltage(circuit))
                    group.marks.push_back({MarkKind::HighVoltage, {}});
                table.rows.push_back({{group}, RowKind::Group});
                grouped = true;
            }
            const Part *fuse = from.records.find(b.fuse);
            const QString peak = b.peakCurrent ? tr("peak %1").arg(textOf(b.peakCurrent)) : QString();
            table.rows.push_back(
                {{Cell{b.name, b.note, {}}, Cell{QStringList{b.from, b.to}.join(tr(" – ")), {}, {}},
                  Cell{textOf(b.continuousCurrent), peak, {}},
                  Cell{textOf(b.conductorSize), QStringList{b.conductor, b.colour}.join(tr(", ")), {}},
                  Cell{textOf(b.conductorLength), {}, {}},
                  Cell{b.fuseRating ? textOf(b.fuseRating) : tr("none entered"), fuse ? fuse->name : QString(), {}}},
                 RowKind::Plain});
        }
    }
    to.push_back(std::move(table));
}

void addMasses(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Masses out and in, as entered"), QStringLiteral("masses")});
    sheet::Table table;
    table.columns = {{tr("what"), Align::Left, 5}, {tr("mass"), Align::Decimal, 2}, {tr("behind the front axle"), Align::Decimal, 3},
                     {tr("evidence"), Align::Left, 4}};
    for (const MassDirection direction : {MassDirection::Out, MassDirection::In}) {
        double sum = 0;
        int unknown = 0;
        table.rows.push_back({{Cell{direction == MassDirection::Out ? tr("Taken out") : tr("Put in"), {}, {}}}, RowKind::Group});
        for (const MassEntry &m : from.records.all<MassEntry>()) {
            if (m.direction != direction)
                continue;
            if (m.mass)
                sum += m.mass->si();
            else
                ++unknown;
            table.rows.push_back({{Cell{m.name, m.note, {}}, Cell{textOf(m.mass), {}, {}}, Cell{textOf(m.behindFrontAxle), {}, {}},
                                   Cell{wordOf(m.evidence), {}, {}}},
                                  RowKind::Plain});
        }
        const Amount total(std::round(sum * 10) / 10, *Unit::fromSymbol(u"kg"));
        table.rows.push_back({{Cell{tr("Sum"), unknown ? tr("%1 not known, not in the sum").arg(unknown) : QString(), {}},
                               Cell{showAmount(total, NumberStyle::pointDecimal()), {}, {}}},
                              RowKind::Total});
    }
    to.push_back(std::move(table));
}

} // namespace ohmwright::sections
