// SPDX-License-Identifier: GPL-3.0-or-later
// Safety systems, interfaces, the wire list and work permits on the build sheet.
#include "core/parts/permits.h"
#include "core/quantity/dates.h"
#include "core/sheet/sheet_sections.h"

#include <QCoreApplication>
#include <QStringList>

namespace ohmwright::sections {

using namespace sheet;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

Mark markOf(SafetyState state)
{
    switch (state) {
    case SafetyState::Proven:
        return {MarkKind::Holds, tr("proven")};
    case SafetyState::Fitted:
        return {MarkKind::Unknown, tr("fitted, not proven")};
    case SafetyState::Planned:
        return {MarkKind::Unknown, tr("planned")};
    }
    return {};
}

Mark markOf(InterfaceState state)
{
    switch (state) {
    case InterfaceState::Talks:
        return {MarkKind::Holds, tr("talks")};
    case InterfaceState::Understood:
        return {MarkKind::Unknown, tr("understood")};
    case InterfaceState::ToFindOut:
        return {MarkKind::Unknown, tr("to find out")};
    }
    return {};
}

template <class R>
QString nameOf(const Records &records, const std::optional<Id<R>> &id)
{
    const R *row = records.find(id);
    return row ? row->name : QString();
}

// "Inverter X1:4", "chassis, left sill".
QString endOf(const Records &records, const std::optional<Id<Part>> &part, const QString &pin)
{
    return QStringList{nameOf(records, part), pin}.join(u' ').trimmed();
}

QString labelled(const QString &label, const QString &text)
{
    return text.isEmpty() ? QString() : tr("%1: %2").arg(label, text);
}

} // namespace

void addSafetySystems(const Sources &from, Blocks &to)
{
    const auto &systems = from.records.all<SafetySystem>();
    if (systems.size() == 0)
        return;
    to.emplace_back(Heading{1, tr("Safety systems"), QStringLiteral("safety")});
    sheet::Table table;
    table.columns = {{tr("system"), Align::Left, 5},
                     {tr("where it sits"), Align::Left, 5},
                     {tr("proved by"), Align::Left, 4},
                     {tr("state")}};
    for (const SafetySystem &system : systems) {
        const TestRecord *test = from.records.find(system.test);
        table.rows.push_back(
            {{{system.name, QStringList{wordOf(system.kind), nameOf(from.records, system.part)}
                                .join(QStringLiteral(", "))},
              {system.place, system.note},
              {test ? test->name : QString(),
               test && test->doneOn ? showDate(*test->doneOn) : QString()},
              {{}, {}, {markOf(system.state)}}},
             RowKind::Plain});
    }
    to.emplace_back(std::move(table));
}

void addInterfaces(const Sources &from, Blocks &to)
{
    const auto &interfaces = from.records.all<Interface>();
    if (interfaces.size() == 0)
        return;
    to.emplace_back(Heading{1, tr("Interfaces"), QStringLiteral("interfaces")});
    for (const Interface &one : interfaces) {
        to.emplace_back(Heading{2, one.name, QStringLiteral("interface-%1").arg(one.key)});
        KeyValues facts;
        const auto add = [&](const QString &label, const QString &value, const QString &note = {}) {
            if (!value.isEmpty())
                facts.rows.emplace_back(label, value, note);
        };
        facts.rows.push_back(
            {tr("Of"),
             nameOf(from.records, std::optional(one.part)),
             one.other ? tr("talks with %1").arg(nameOf(from.records, one.other)) : QString(),
             {markOf(one.state)}});
        add(tr("Connector"), one.connector, labelled(tr("mate"), one.mate));
        add(tr("Wake signal"), one.wakeSignal);
        add(tr("Bus"), one.bus, one.messages);
        add(tr("Position sensor"), one.positionSensor);
        add(tr("Firmware"), one.firmware);
        add(tr("Parameter file"), one.parameterFile, labelled(tr("SHA-256"), one.parameterSha256));
        add(tr("Pairing"), one.pairing);
        add(tr("Note"), one.note);
        to.emplace_back(std::move(facts));
        const auto pins = from.records.of<InterfacePin>(one.id);
        if (pins.empty())
            continue;
        sheet::Table table;
        table.columns = {{tr("pin")}, {tr("signal"), Align::Left, 4}, {tr("note"), Align::Left, 5}};
        for (const InterfacePin &pin : pins)
            table.rows.push_back({{{pin.pin}, {pin.signal}, {pin.note}}, RowKind::Plain});
        to.emplace_back(std::move(table));
    }
}

void addWires(const Sources &from, Blocks &to)
{
    const auto &wires = from.records.all<Wire>();
    if (wires.size() == 0)
        return;
    to.emplace_back(Heading{1, tr("Wire list"), QStringLiteral("wires")});
    sheet::Table table;
    table.columns = {{tr("wire")},
                     {tr("signal"), Align::Left, 4},
                     {tr("from"), Align::Left, 5},
                     {tr("to"), Align::Left, 5},
                     {tr("size"), Align::Decimal},
                     {tr("colour")},
                     {tr("fitted")}};
    for (const Wire &wire : wires)
        table.rows.push_back({{{wire.name, {}, {}, Emphasis::Exact},
                               {wire.signal, wire.note},
                               {endOf(from.records, wire.from, wire.fromPin)},
                               {endOf(from.records, wire.to, wire.toPin)},
                               {wire.crossSection ? printAmount(*wire.crossSection) : QString(),
                                wire.length ? printAmount(*wire.length) : QString()},
                               {wire.colour},
                               {wire.fitted ? tr("yes") : tr("no")}},
                              RowKind::Plain});
    to.emplace_back(std::move(table));
}

void addPermits(const Sources &from, Blocks &to)
{
    const auto &permits = from.records.all<WorkPermit>();
    if (permits.size() == 0)
        return;
    to.emplace_back(Heading{1, tr("Work permits"), QStringLiteral("permits")});
    sheet::Table table;
    table.columns = {{tr("work"), Align::Left, 4},
                     {tr("gloves"), Align::Left, 3},
                     {tr("absence of voltage"), Align::Left, 5},
                     {tr("who"), Align::Left, 4},
                     {tr("state"), Align::Left, 4}};
    for (const WorkPermit &permit : from.records.all<WorkPermit>()) {
        const QStringList lacking = lackingOf(permit, from.today);
        const QString absence =
            permit.absenceReading && permit.absenceProvenOn
                ? tr("%1 on %2")
                      .arg(printAmount(*permit.absenceReading), showDate(*permit.absenceProvenOn))
                : tr("not proved");
        Cell state;
        if (permit.closedOn)
            state.text = tr("work over on %1").arg(showDate(*permit.closedOn));
        else if (lacking.isEmpty())
            state.marks = {{MarkKind::Holds, tr("holds today")}};
        else
            state = {{}, lacking.join(tr(", ")), {{MarkKind::Unknown, tr("does not hold")}}};
        table.rows.push_back(
            {{{permit.name, permit.note},
              {permit.glovesValidUntil ? tr("until %1").arg(showDate(*permit.glovesValidUntil))
                                       : tr("no test date")},
              {absence,
               QStringList{permit.instrument, permit.waitMinutes
                                                  ? tr("waited %1 min").arg(*permit.waitMinutes)
                                                  : QString()}
                   .join(QStringLiteral(" "))
                   .trimmed()},
              {permit.workedBy, labelled(tr("with"), permit.secondPerson)},
              state},
             RowKind::Plain});
    }
    to.emplace_back(std::move(table));
}

} // namespace ohmwright::sections
