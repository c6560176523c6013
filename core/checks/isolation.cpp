// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/isolation.h"

#include "core/checks/usable.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Isolation", text);
}

constexpr Resistance kLeastVoltmeter = ohms(10e6); // UN R100, annex, 1.2.2

const Threshold<double> &leastPerVolt(const IsolationInputs &inputs)
{
    const bool dcRule =
        inputs.current == CurrentKind::Dc && (!inputs.joinedWithAc || inputs.acProtected);
    return dcRule ? inputs.leastDc : inputs.leastAc;
}

// The same threshold in ohms, for this working voltage.
Threshold<Resistance> leastFor(const Threshold<double> &perVolt, Voltage working)
{
    const auto scaled = [&](double ohmsPerVolt) {
        return ohms(ohmsPerVolt * working.si());
    };
    Threshold<Resistance> least{perVolt.name,   scaled(perVolt.published),
                                perVolt.source, perVolt.tighter,
                                std::nullopt,   perVolt.reason};
    if (perVolt.own)
        least.own = scaled(*perVolt.own);
    return least;
}

QString ohmsPerVolt(double number)
{
    return QString(show(number, u"").trimmed() + QStringLiteral(" Ω/V"));
}

} // namespace

Check judgeIsolation(const IsolationInputs &inputs)
{
    Worksheet sheet(QStringLiteral("isolation"), tr("Isolation resistance, measured"),
                    Protects::People);
    sheet.about(inputs.circuit);
    sheet.caution(QStringLiteral("live-measurement"));
    sheet.afterwards(tr("Then measure it again wet, after the first long drive, and whenever the "
                        "circuit was opened."));
    const QString source =
        tr("UN R100, annex on isolation resistance, 1.2: the pack as the source");

    takeRecord(sheet, inputs.record);
    const Voltage working = sheet.take(inputs.workingVoltage, u"U", u"V", 1e-3);
    for (const Origin &missing : inputs.missing)
        sheet.takeChoice(missing, {});
    const Voltage nominal = sheet.take(inputs.nominalVoltage, u"Uₙ", u"V", 1e-3);
    const Voltage pack = sheet.take(inputs.packVoltage, u"V_b", u"V", 1e-3);
    const Voltage negative = sheet.take(inputs.negativeToChassis, u"V₁", u"V", 0);
    const Voltage positive = sheet.take(inputs.positiveToChassis, u"V₂", u"V", 0);
    const Resistance known = sheet.take(inputs.knownResistor, u"R₀", u"kΩ", 1e-3);
    const Voltage loaded = sheet.take(inputs.withResistor, u"V′", u"V", 1e-6);
    const Resistance voltmeter = sheet.take(inputs.voltmeter, u"R_m", u"MΩ", 0);

    const bool measured = working.si() > 0 && pack.si() > 0 && known.si() > 0 && loaded.si() > 0 &&
                          isUsable(inputs.negativeToChassis, negative) &&
                          isUsable(inputs.positiveToChassis, positive);
    if (!measured)
        return sheet.finish(source);
    const Voltage before = std::max(negative, positive);
    if (before < loaded) {
        sheet.refuse(tr("A resistor to the chassis cannot raise the voltage from %1 to %2.")
                         .arg(show(before, u"V"), show(loaded, u"V")));
        return sheet.finish(source);
    }

    const double drop = 1 / loaded.si() - 1 / before.si();
    const Resistance isolation = known * (pack.si() * drop);
    const Resistance bySum = known * ((negative + positive).si() * drop);
    sheet.stepText(tr("side with the resistor"), QStringLiteral("V₁ ≥ V₂"),
                   QString(show(negative, u"V") + QStringLiteral(", ") + show(positive, u"V")),
                   negative >= positive ? tr("negative pole") : tr("positive pole"));
    sheet.step(tr("isolation resistance"), QStringLiteral("R_i = R₀·V_b·(1/V′ − 1/V₁)"),
               QString(show(known, u"kΩ") + QStringLiteral(" · ") + show(pack, u"V") +
                       QStringLiteral(" · (1/") + show(loaded, u"V") + QStringLiteral(" − 1/") +
                       show(before, u"V") + QLatin1Char(')')),
               isolation, u"kΩ");
    sheet.stepText(tr("for each volt"), QStringLiteral("R_i/U"), show(working, u"V"),
                   ohmsPerVolt(isolation.si() / working.si()));
    const Threshold<Resistance> least = leastFor(leastPerVolt(inputs), working);
    const double fit = known / least.inForce();
    sheet.stepText(tr("known resistor against the one wished for"), QStringLiteral("R₀ ≈ Ω/V · U"),
                   show(least.inForce(), u"kΩ"),
                   std::abs(fit - 1) <= 0.2 ? tr("within 20 %")
                                            : tr("not within 20 %: the reading is coarser"));

    const Verdict verdict = sheet.within(tr("isolation resistance"), isolation, least, u"kΩ");
    const QString leak =
        tr("Finding the leak: one unit after the other disconnected, and measured again.");
    sheet.mendedBy(leak);
    if (inputs.ownLimit) {
        const Resistance own = sheet.take(*inputs.ownLimit, u"R_l", u"kΩ", 0);
        if (isUsable(*inputs.ownLimit, own)) {
            sheet.atLeast(tr("isolation resistance, by the record's own limit"), isolation, own,
                          u"kΩ", inputs.ownLimit->origin.name);
            sheet.mendedBy(leak);
        }
    }
    if (verdict != Verdict::Fails && bySum < least.inForce())
        sheet.doubt(tr("The readings to the chassis add up to %1 of the pack's voltage; with their "
                       "sum instead of it (FMVSS 305) the limit is missed.")
                        .arg(show((negative + positive) / pack, u"%")));
    if (inputs.voltmeter.value && voltmeter < kLeastVoltmeter)
        sheet.doubt(tr("The voltmeter has %1; the method asks for at least %2.")
                        .arg(show(voltmeter, u"MΩ"), show(kLeastVoltmeter, u"MΩ")));
    if (inputs.nominalVoltage.value && pack < nominal)
        sheet.doubt(tr("The pack was below its nominal voltage; the method asks for it or more."));
    if (pack * 1.05 < negative + positive)
        sheet.doubt(tr("The readings to the chassis add up to more than the pack has."));
    sheet.result(
        tr("%1, %2").arg(show(isolation, u"kΩ"), ohmsPerVolt(isolation.si() / working.si())));
    return sheet.finish(source);
}

} // namespace ohmwright
