// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/sheet_figures.h"

#include "core/quantity/dates.h"
#include "core/sheet/sheet_sections.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright::sections {

using sheet::Cell;
using sheet::Mark;
using sheet::MarkKind;
using sheet::Row;
using sheet::RowKind;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

QString valueText(const Rating &rating)
{
    QString text = textOf(rating.value);
    if (rating.duration)
        text += tr(" for %1").arg(showAmount(*rating.duration, NumberStyle::pointDecimal()));
    return text;
}

QString otherText(const Rating &rating)
{
    QString evidence = evidenceText(rating);
    if (!rating.note.isEmpty())
        evidence += tr("; %1").arg(rating.note);
    return tr("%1 (%2)").arg(valueText(rating), evidence);
}

} // namespace

QString valueText(const Figure &figure)
{
    return figure.inForce ? valueText(*figure.inForce) : tr("not known");
}

QString sourceText(const Figure &figure)
{
    return figure.inForce ? evidenceText(*figure.inForce) : QString();
}

QString remarkText(const Figure &figure, const std::vector<const Rating *> &leaveOut)
{
    QStringList remarks;
    if (figure.stale || !figure.inForce || figure.inForce->settled)
        remarks << whyInForce(figure);
    // the reason of a settled rating is told by its note already
    if (figure.inForce && !figure.inForce->settled && !figure.inForce->note.isEmpty())
        remarks << figure.inForce->note;
    QStringList others;
    for (const Rating *rating : figure.all) {
        const bool told = std::find(leaveOut.begin(), leaveOut.end(), rating) != leaveOut.end();
        if (rating == figure.inForce || told)
            continue;
        if (figure.inForce)
            others << otherText(*rating);
        else
            remarks << evidenceText(*rating) +
                           (rating->note.isEmpty() ? QString() : tr("; %1").arg(rating->note));
    }
    if (!others.isEmpty())
        remarks << tr("Also recorded: %1").arg(others.join(tr("; ")));
    return remarks.join(u' ');
}

namespace {

// The mark says where a proven figure comes from, or what is wrong with another.
Cell evidenceCell(const Figure &figure)
{
    const Mark mark = markOf(figure);
    if (mark.kind != MarkKind::Holds)
        return Cell{sourceText(figure), remarkText(figure), {mark}};
    const QString from = wordOf(figure.inForce->evidence);
    QString rest = sourceText(figure).mid(from.size());
    if (rest.startsWith(tr(", ")))
        rest = rest.mid(tr(", ").size());
    return Cell{rest, remarkText(figure), {Mark{MarkKind::Holds, from}}};
}

} // namespace

Row rowOf(const Figure &figure)
{
    const Cell value{figure.inForce ? textOf(figure.inForce->value) : valueText(figure)};
    return {{Cell{describe(figure.name)}, value, evidenceCell(figure)}, RowKind::Plain};
}

QString nameOf(const PartType &type)
{
    return QStringList{type.make, type.partNumber}.join(u' ').trimmed();
}

QStringList remarksOf(const Part &part)
{
    QStringList remarks;
    if (!part.acceptedBecause.isEmpty())
        remarks << tr("accepted as is, because %1").arg(part.acceptedBecause);
    if (part.openedOn)
        remarks << tr("opened %1: %2").arg(showDate(*part.openedOn), part.openedBecause);
    if (part.reworkedOn)
        remarks << tr("reworked %1").arg(showDate(*part.reworkedOn));
    if (!part.transportDamage.isEmpty())
        remarks << tr("transport damage: %1").arg(part.transportDamage);
    return remarks;
}

} // namespace ohmwright::sections
