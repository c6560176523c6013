// SPDX-License-Identifier: GPL-3.0-or-later
// The lines of a part that are edited in place: how each is read and written.
#include "core/parts/keys.h"
#include "ui/parts/detail_section.h"

#include <QCoreApplication>

namespace ohmwright::ui {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("PartFields", text);
}

PartField textField(const char *where, const QString &label, QString Part::*member,
                    const QString &hint = {})
{
    return {where,
            label,
            hint,
            [member](const Records &, const Part &part) { return part.*member; },
            [member](Book &, Part &part, const Typed &typed) -> Outcome {
                part.*member = typed.text;
                return {};
            },
            {}};
}

// Days like "+90d" count from the day the part was bought, else from today.
QDate countedFrom(const Book &book, const Part &part)
{
    if (const PurchaseItem *item = book.records().find(part.bought))
        if (const Purchase *purchase = book.records().find(item->purchase))
            return purchase->orderedOn;
    return book.clock().today();
}

PartField dateField(const char *where, const QString &label, std::optional<QDate> Part::*member,
                    const QString &hint = {})
{
    return {where,
            label,
            hint,
            [member](const Records &, const Part &part) { return shown(part.*member); },
            [member](Book &book, Part &part, const Typed &typed) -> Outcome {
                (part.*member).reset();
                if (typed.text.isEmpty())
                    return {};
                const Result<QDate> date =
                    parseDate(typed.text, book.clock().today(), countedFrom(book, part));
                if (!date)
                    return fail(date.error());
                part.*member = *date;
                return {};
            },
            {}};
}

// A reference that must be there already, or nothing.
template <class R>
PartField knownField(const char *where, const QString &label, std::optional<Id<R>> Part::*member,
                     std::vector<KnownName> (*known)(const Records &), const QString &hint = {})
{
    return {where,
            label,
            hint,
            [member](const Records &records, const Part &part) {
                const R *row = records.find(part.*member);
                return row ? row->key : QString();
            },
            [member](Book &book, Part &part, const Typed &typed) -> Outcome {
                (part.*member).reset();
                if (typed.text.isEmpty())
                    return {};
                const R *row = book.records().template byKey<R>(typed.key);
                if (!row)
                    return fail(ProblemCode::NotFound,
                                tr("The book has nothing called “%1”.").arg(typed.text),
                                tr("Choose one of those offered, or leave it empty."));
                part.*member = row->id;
                return {};
            },
            known};
}

PartField assemblyField()
{
    PartField field = knownField<Part>("part_of", tr("Part of"), &Part::partOf, knownParts,
                                       tr("the assembly it sits in"));
    const auto write = field.write;
    field.write = [write](Book &book, Part &part, const Typed &typed) -> Outcome {
        if (Outcome written = write(book, part, typed); !written)
            return written;
        std::size_t steps = 0;
        for (const Part *above = book.records().find(part.partOf);
             above && steps <= book.records().all<Part>().size();
             above = book.records().find(above->partOf), ++steps)
            if (above->id == part.id)
                return fail(ProblemCode::NotAllowed,
                            tr("%1 sits inside this part already.").arg(typed.text),
                            tr("Take it out there first."));
        return {};
    };
    return field;
}

PartField donorField()
{
    PartField field = knownField<Donor>("donor", tr("Donor vehicle"), &Part::donor, knownDonors,
                                        tr("make, model, year"));
    field.write = [](Book &book, Part &part, const Typed &typed) -> Outcome {
        part.donor.reset();
        if (typed.text.isEmpty())
            return {};
        if (const Donor *there = book.records().byKey<Donor>(typed.key)) {
            part.donor = there->id;
            return {};
        }
        Donor donor = donorFromText(typed.text);
        donor.key = freshKey<Donor>(book.records(), donorName(donor));
        const Result<Id<Donor>> made = book.insert(donor);
        if (!made)
            return fail(made.error());
        part.donor = *made;
        return {};
    };
    return field;
}

PartField estimateField()
{
    return {"estimate",
            tr("Estimate"),
            tr("while it is not bought"),
            [](const Records &, const Part &part) {
                return part.estimate ? printMoney(*part.estimate) : QString();
            },
            [](Book &book, Part &part, const Typed &typed) -> Outcome {
                part.estimate.reset();
                if (typed.text.isEmpty())
                    return {};
                const Result<Money> money =
                    parseMoney(typed.text, pageStyle(), book.records().build().currency);
                if (!money)
                    return fail(money.error());
                part.estimate = *money;
                return {};
            },
            {}};
}

PartField daysField(const char *where, const QString &label, const QString &hint,
                    std::optional<int> Part::*member)
{
    return {where,
            label,
            hint,
            [member](const Records &, const Part &part) {
                return part.*member ? QString::number(*(part.*member)) : QString();
            },
            [member](Book &, Part &part, const Typed &typed) -> Outcome {
                (part.*member).reset();
                if (typed.text.isEmpty())
                    return {};
                const Result<double> days = parseNumber(typed.text, pageStyle());
                if (!days)
                    return fail(days.error());
                if (*days < 0 || *days > 3650 || *days != static_cast<int>(*days))
                    return fail(ProblemCode::BadInput,
                                tr("A lead time is a whole number of days, 0 to 3650."));
                part.*member = static_cast<int>(*days);
                if (part.leadDays && part.leastLeadDays && *part.leastLeadDays > *part.leadDays)
                    return fail(ProblemCode::BadInput,
                                tr("The least is more than the likely lead time."));
                if (part.leadDays && part.mostLeadDays && *part.mostLeadDays < *part.leadDays)
                    return fail(ProblemCode::BadInput,
                                tr("The most is less than the likely lead time."));
                return {};
            },
            {}};
}

std::vector<KnownName> options(const Records &records)
{
    std::vector<KnownName> known;
    for (const ChoiceOption &option : records.all<ChoiceOption>()) {
        const Choice *choice = records.find(option.choice);
        known.push_back({option.key, option.name, choice ? choice->question : QString()});
    }
    return known;
}

PartField optionField()
{
    return {"option",
            tr("Only with the option"),
            tr("of a choice still open"),
            [](const Records &records, const Part &part) {
                const ChoiceOption *option = records.find(part.option);
                return option ? option->key : QString();
            },
            [](Book &book, Part &part, const Typed &typed) -> Outcome {
                part.option.reset();
                if (typed.text.isEmpty())
                    return {};
                const auto *option = book.records().byKey<ChoiceOption>(typed.key);
                if (!option)
                    return fail(ProblemCode::NotFound,
                                tr("“%1” is no option of a choice.").arg(typed.text),
                                tr("Choose one of those offered, or leave it empty."));
                part.option = option->id;
                return {};
            },
            options};
}

std::vector<KnownName> roles(const Records &)
{
    std::vector<KnownName> known;
    for (const char *word : EnumWords<PartRole>::words)
        known.push_back({QString::fromLatin1(word), QString::fromLatin1(word), {}});
    return known;
}

PartField roleField()
{
    return {"role",
            tr("What it does"),
            tr("motor, inverter, charger"),
            [](const Records &, const Part &part) {
                return part.role ? wordOf(*part.role) : QString();
            },
            [](Book &, Part &part, const Typed &typed) -> Outcome {
                part.role = fromWord<PartRole>(typed.key.isEmpty() ? typed.text : typed.key);
                if (!part.role && !typed.text.isEmpty())
                    return fail(ProblemCode::NotFound,
                                tr("“%1” is nothing a part does here.").arg(typed.text),
                                tr("Choose one of those offered, or leave it empty."));
                return {};
            },
            roles};
}

} // namespace

std::vector<PartField> describingFields()
{
    return {textField("name", tr("Name"), &Part::name),
            roleField(),
            textField("serial", tr("Serial number"), &Part::serial),
            textField("place", tr("Place"), &Part::place, tr("shelf, box")),
            assemblyField(),
            textField("condition", tr("Condition on arrival"), &Part::condition),
            dateField("reworked_on", tr("Reworked on"), &Part::reworkedOn,
                      tr("evidence from before is stale")),
            knownField<Part>("replaced_by", tr("Replaced by"), &Part::replacedBy, knownParts),
            textField("note", tr("Note"), &Part::note)};
}

std::vector<PartField> buyingFields()
{
    return {
        donorField(),
        textField("proof_of_ownership", tr("Proof of ownership"), &Part::proofOfOwnership),
        knownField<BudgetLine>("line", tr("Budget line"), &Part::line, knownLines),
        estimateField(),
        daysField("lead_days", tr("Lead time, days"), tr("from order to arrival"), &Part::leadDays),
        daysField("least_lead_days", tr("At least"), tr("days, if all goes well"),
                  &Part::leastLeadDays),
        daysField("most_lead_days", tr("At most"), tr("days, if it does not"), &Part::mostLeadDays),
        optionField()};
}

std::vector<PartField> warrantyFields()
{
    return {dateField("warranty_until", tr("Warranty until"), &Part::warrantyUntil,
                      tr("a day, or +90d from the order")),
            dateField("return_until", tr("May be returned until"), &Part::returnUntil),
            textField("warranty_terms", tr("Warranty terms"), &Part::warrantyTerms)};
}

std::vector<PartField> damageFields()
{
    return {textField("transport_damage", tr("Transport damage"), &Part::transportDamage),
            dateField("claim_by", tr("Claim from the carrier by"), &Part::claimBy),
            textField("accepted_because", tr("Accepted as is, because"), &Part::acceptedBecause)};
}

} // namespace ohmwright::ui
