// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/life.h"
#include "core/quantity/dates.h"
#include "core/sheet/sheet_sections.h"

#include <QCoreApplication>
#include <QStringList>

namespace ohmwright::sections {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

} // namespace

QString textOf(const std::optional<Amount> &amount)
{
    return amount ? showAmount(*amount, NumberStyle::pointDecimal()) : tr("not known");
}

QString textOf(const std::optional<QDate> &date)
{
    return date ? showDate(*date) : QString();
}

QString evidenceText(const Rating &rating)
{
    QStringList words{wordOf(rating.evidence)};
    if (!rating.source.isEmpty())
        words << rating.source;
    if (rating.on)
        words << showDate(*rating.on);
    return words.join(tr(", "));
}

bool isComponent(const Part &part)
{
    const bool kind = part.kind == PartKind::Unit || part.kind == PartKind::Module ||
                      part.kind == PartKind::Hardware;
    const bool here = part.state == PartState::InHand || part.state == PartState::Tested ||
                      part.state == PartState::Fitted || part.state == PartState::Quarantined;
    return kind && here;
}

sheet::Mark markOf(const Figure &figure)
{
    using sheet::MarkKind;
    if (!figure.inForce)
        return {MarkKind::Unknown, tr("unknown")};
    if (figure.clash)
        return {MarkKind::Tight, tr("clash")};
    if (figure.stale)
        return {MarkKind::Tight, tr("stale")};
    if (figure.inForce->evidence == Evidence::Seller ||
        figure.inForce->evidence == Evidence::Community ||
        figure.inForce->evidence == Evidence::Assumed)
        return {MarkKind::Unknown, tr("unproven")};
    return {MarkKind::Holds, tr("evidence")};
}

} // namespace ohmwright::sections
