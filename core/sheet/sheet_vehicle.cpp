// SPDX-License-Identifier: GPL-3.0-or-later
// The vehicle as it came, what went with the engine, and where the parts came from.
#include "core/parts/life.h"
#include "core/quantity/dates.h"
#include "core/sheet/sheet_sections.h"

#include <QCoreApplication>

#include <set>

namespace ohmwright::sections {

using namespace sheet;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

QString orNotRecorded(const QString &text)
{
    return text.isEmpty() ? tr("not recorded") : text;
}

// Front, rear and whole, where both corners of an axle are known.
std::optional<double> sumKilograms(std::initializer_list<const std::optional<Amount> *> corners)
{
    double sum = 0;
    for (const std::optional<Amount> *corner : corners) {
        if (!*corner)
            return std::nullopt;
        sum += (*corner)->si();
    }
    return sum;
}

QString kilogramsText(const std::optional<double> &mass)
{
    return mass ? showAmount(Amount(std::round(*mass * 10) / 10, *Unit::fromSymbol(u"kg")),
                             NumberStyle::pointDecimal())
                : tr("not known");
}

} // namespace

void addVehicle(const Sources &from, Blocks &to)
{
    const Vehicle &v = from.records.vehicle();
    to.push_back(Heading{1, tr("Base vehicle as it came"), QStringLiteral("vehicle")});
    KeyValues facts;
    const auto add = [&](const QString &label, const QString &value, const QString &note = {}) {
        facts.rows.push_back({label, orNotRecorded(value), note, {}});
    };
    add(tr("Make and model"), QStringList{v.make, v.model}.join(u' ').trimmed());
    add(tr("Body"), v.body);
    add(tr("Year"), v.year ? QString::number(*v.year) : QString());
    add(tr("First registered"), textOf(v.firstRegistered));
    add(tr("Identification number"), v.vin);
    add(tr("Registration"), v.registration);
    add(tr("Engine and fuel removed"), QStringList{v.engine, v.fuel}.join(tr(", ")).trimmed());
    add(tr("Gearbox"), v.gearbox);
    add(tr("Tyres"), v.tyreSize);
    add(tr("Brakes"), v.brakes);
    add(tr("Distance on the clock"), textOf(v.odometer));
    add(tr("Wheelbase"), textOf(v.wheelbase));
    add(tr("Structure as found"), v.structure);
    if (!v.note.isEmpty())
        add(tr("Remarks"), v.note);
    to.push_back(std::move(facts));

    sheet::Table weights;
    weights.caption =
        v.weighedOn
            ? tr("Masses as it came, weighed %1. %2").arg(showDate(*v.weighedOn), v.weighedWith)
            : tr("Masses as it came. Not weighed before the work began.");
    weights.columns = {{QString(), Align::Left, 3},
                       {tr("left"), Align::Decimal, 2},
                       {tr("right"), Align::Decimal, 2},
                       {tr("axle"), Align::Decimal, 2},
                       {tr("plate"), Align::Decimal, 2}};
    const auto cell = [](const QString &text) {
        return Cell{text, {}, {}};
    };
    weights.rows.push_back(
        {{cell(tr("Front axle")), cell(textOf(v.frontLeft)), cell(textOf(v.frontRight)),
          cell(kilogramsText(sumKilograms({&v.frontLeft, &v.frontRight}))),
          cell(textOf(v.frontAxlePlate))},
         RowKind::Plain});
    weights.rows.push_back(
        {{cell(tr("Rear axle")), cell(textOf(v.rearLeft)), cell(textOf(v.rearRight)),
          cell(kilogramsText(sumKilograms({&v.rearLeft, &v.rearRight}))),
          cell(textOf(v.rearAxlePlate))},
         RowKind::Plain});
    weights.rows.push_back({{cell(tr("Whole vehicle")), cell({}), cell({}),
                             cell(kilogramsText(sumKilograms(
                                 {&v.frontLeft, &v.frontRight, &v.rearLeft, &v.rearRight}))),
                             cell(textOf(v.grossMassPlate))},
                            RowKind::Total});
    to.push_back(std::move(weights));
}

void addLostFunctions(const Sources &from, Blocks &to)
{
    to.push_back(Heading{2, tr("What went with the engine"), QStringLiteral("lost-functions")});
    sheet::Table table;
    table.columns = {{tr("function"), Align::Left, 3},
                     {tr("replaced by"), Align::Left, 5},
                     {tr("state"), Align::Left, 2}};
    for (const LostFunction &lost : from.records.all<LostFunction>()) {
        const Part *part = from.records.find(lost.part);
        QString by = lost.replacedBy;
        if (by.isEmpty())
            by = part ? part->name : tr("nothing yet");
        const QString state = part ? wordOf(part->state) : QString();
        table.rows.push_back({{Cell{lost.name, {}, {}}, Cell{by, lost.note, {}},
                               Cell{state,
                                    {},
                                    {lost.settled ? Mark{MarkKind::Holds, tr("settled")}
                                                  : Mark{MarkKind::Unknown, tr("open")}}}},
                              RowKind::Plain});
    }
    to.push_back(std::move(table));
}

void addDonors(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Donor vehicles and sellers"), QStringLiteral("donors")});
    sheet::Table donors;
    donors.caption = tr("Donor vehicles");
    donors.columns = {{tr("donor"), Align::Left, 3},
                      {tr("identification number"), Align::Left, 3},
                      {tr("distance"), Align::Right, 2},
                      {tr("damage"), Align::Left, 3},
                      {tr("proof of ownership"), Align::Left, 3}};
    for (const Donor &d : from.records.all<Donor>())
        donors.rows.push_back(
            {{Cell{QStringList{d.make, d.model}.join(u' '),
                   d.year ? QString::number(*d.year) : QString(),
                   {}},
              Cell{orNotRecorded(d.vin), {}, {}}, Cell{textOf(d.distance), {}, {}},
              Cell{orNotRecorded(d.damage), {}, {}},
              Cell{orNotRecorded(d.proofOfOwnership), {}, {}}},
             RowKind::Plain});
    to.push_back(std::move(donors));

    std::set<Id<Seller>> sold;
    for (const Part &part : from.records.all<Part>()) {
        if (!isComponent(part))
            continue;
        const PurchaseItem *item = from.records.find(part.bought);
        if (const Purchase *purchase = item ? from.records.find(item->purchase) : nullptr)
            sold.insert(purchase->seller);
    }
    sheet::Table sellers;
    sellers.caption = tr("Sellers of the components listed below");
    sellers.columns = {{tr("seller"), Align::Left, 4},
                       {tr("kind"), Align::Left, 2},
                       {tr("place"), Align::Left, 3}};
    for (const Seller &s : from.records.all<Seller>())
        if (sold.contains(s.id))
            sellers.rows.push_back(
                {{Cell{s.name, {}, {}}, Cell{wordOf(s.kind), {}, {}}, Cell{s.place, {}, {}}},
                 RowKind::Plain});
    to.push_back(std::move(sellers));
}

} // namespace ohmwright::sections
