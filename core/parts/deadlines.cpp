// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/deadlines.h"

#include "core/parts/life.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Deadlines", text);
}

} // namespace

QString deadlineName(DeadlineKind kind)
{
    switch (kind) {
    case DeadlineKind::Claim:
        return tr("carrier claim");
    case DeadlineKind::Return:
        return tr("return");
    case DeadlineKind::Warranty:
        return tr("warranty");
    }
    return {};
}

QString describe(const Deadline &d)
{
    const QString name = deadlineName(d.kind);
    const QString date = showDate(d.lastDay);
    switch (d.state) {
    case DeadlineState::Over:
        return tr("%1 ended %2").arg(name, date);
    case DeadlineState::MaybeEnded:
        return tr("%1 to %2, but it was opened: may have ended, by its terms and local law")
            .arg(name, date);
    case DeadlineState::Running:
    case DeadlineState::EndingSoon:
        break;
    }
    if (d.daysLeft == 0)
        return tr("%1 ends today").arg(name);
    if (d.daysLeft == 1)
        return tr("%1 ends tomorrow").arg(name);
    return tr("%1 ends in %2 days (%3)").arg(name).arg(d.daysLeft).arg(date);
}

std::vector<Deadline> deadlinesOf(const Part &part, QDate today)
{
    std::vector<Deadline> found;
    const auto add = [&](DeadlineKind kind, const std::optional<QDate> &lastDay,
                         bool endedByOpening) {
        if (!lastDay)
            return;
        Deadline d;
        d.part = part.id;
        d.kind = kind;
        d.lastDay = *lastDay;
        d.daysLeft = static_cast<int>(today.daysTo(*lastDay));
        d.state = d.daysLeft < 0                  ? DeadlineState::Over
                  : endedByOpening                ? DeadlineState::MaybeEnded
                  : d.daysLeft <= kEndingSoonDays ? DeadlineState::EndingSoon
                                                  : DeadlineState::Running;
        found.push_back(d);
    };
    add(DeadlineKind::Claim, part.transportDamage.isEmpty() ? std::nullopt : part.claimBy, false);
    add(DeadlineKind::Return, part.returnUntil, part.openedOn.has_value());
    add(DeadlineKind::Warranty, part.warrantyUntil, part.openedOn.has_value());
    return found;
}

std::vector<Deadline> endingSoon(const Records &records, QDate today)
{
    std::vector<Deadline> found;
    for (const Part &part : records.all<Part>()) {
        if (isGone(part.state))
            continue;
        for (const Deadline &d : deadlinesOf(part, today))
            if (d.state == DeadlineState::EndingSoon)
                found.push_back(d);
    }
    // parts come in key order already
    std::stable_sort(found.begin(), found.end(),
                     [](const Deadline &a, const Deadline &b) { return a.lastDay < b.lastDay; });
    return found;
}

} // namespace ohmwright
