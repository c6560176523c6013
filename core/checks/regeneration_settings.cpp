// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/regeneration_settings.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

constexpr double kWithin = 0.02;

QString tr(const char *text)
{
    return QCoreApplication::translate("RegenerationSettings", text);
}

} // namespace

void doubtIfSetTwice(Worksheet &sheet, const RegenerationSettings &settings)
{
    const auto &[power, current, least, most] = settings;
    if (!power.value || !current.value || !least.value || !most.value ||
        !(*least.value <= *most.value))
        return;
    const Power lowest = *current.value * *least.value * (1 - kWithin);
    const Power highest = *current.value * *most.value * (1 + kWithin);
    if (lowest <= *power.value && *power.value <= highest)
        return;
    sheet.doubt(
        tr("Regeneration is told twice and differs: %1 for “%2”, and %3 for “%4”, which is %5 to "
           "%6 between the empty and the full pack. Set one of them right.")
            .arg(show(*power.value, u"kW"), power.origin.name, show(*current.value, u"A"),
                 current.origin.name, show(*current.value * *least.value, u"kW"),
                 show(*current.value * *most.value, u"kW")));
}

} // namespace ohmwright
