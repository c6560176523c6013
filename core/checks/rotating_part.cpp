// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/rotating_part.h"

#include "core/checks/taken.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("RotatingPart", text);
}

QString formulaOf(RotatingShape shape)
{
    switch (shape) {
    case RotatingShape::ThinRing:
        return QStringLiteral("σ = K·ρ·r²·ω²");
    case RotatingShape::SolidDisc:
        return QStringLiteral("σ = K·(3+ν)/8·ρ·ro²·ω²");
    case RotatingShape::AnnularDisc:
        return QStringLiteral("σ = K·(3+ν)/4·ρ·ω²·(ro² + (1−ν)/(3+ν)·ri²)");
    }
    return {};
}

void judgeBalance(Worksheet &sheet, const RotatingPartInputs &inputs, std::optional<Mass> mass,
                  std::optional<RotationSpeed> speed)
{
    const auto residual = taken(sheet, inputs.residualUnbalance, u"U", u"g·mm", 0, 1);
    if (!mass || !speed)
        return;
    const Speed grade = inputs.balanceGrade.inForce();
    sheet.step(tr("permissible unbalance"), QStringLiteral("U_per = G·m/ω"),
               QString(show(grade, u"mm/s") + QStringLiteral(" · ") + show(*mass, u"kg") +
                       QStringLiteral(" / ") + show(*speed, u"rpm")),
               permissibleUnbalance(grade, *mass, *speed), u"g·mm");
    if (!residual)
        return;
    const Speed reached = *residual * *speed / *mass;
    sheet.step(tr("balance reached"), QStringLiteral("G = U·ω/m"),
               QString(show(*residual, u"g·mm") + QStringLiteral(" · ") + show(*speed, u"rpm") +
                       QStringLiteral(" / ") + show(*mass, u"kg")),
               reached, u"mm/s");
    sheet.restsOn(inputs.residualUnbalance, inputs.highestSpeed, inputs.mass);
    if (sheet.within(tr("balance reached"), reached, inputs.balanceGrade, u"mm/s") !=
        Verdict::Holds)
        sheet.turnedBy(tr("Balancing it finer, together with what it is bolted to."));
}

} // namespace

Pressure rotatingStress(RotatingShape shape, Density density, double poisson, Length outer,
                        Length inner, RotationSpeed speed)
{
    const Pressure rim = density * outer * outer * speed * speed;
    switch (shape) {
    case RotatingShape::ThinRing:
        return rim;
    case RotatingShape::SolidDisc:
        return rim * ((3 + poisson) / 8);
    case RotatingShape::AnnularDisc:
        break;
    }
    const Area reach = outer * outer + inner * inner * ((1 - poisson) / (3 + poisson));
    return density * reach * speed * speed * ((3 + poisson) / 4);
}

Pressure annularRadialStress(Density density, double poisson, Length outer, Length inner,
                             RotationSpeed speed)
{
    return density * (outer - inner) * (outer - inner) * speed * speed * ((3 + poisson) / 8);
}

Pressure annularEdgeStress(Density density, double poisson, Length outer, Length inner,
                           RotationSpeed speed)
{
    const Area reach = inner * inner + outer * outer * ((1 - poisson) / (3 + poisson));
    return density * reach * speed * speed * ((3 + poisson) / 4);
}

MomentOfInertia rotatingInertia(RotatingShape shape, Mass mass, Length outer, Length inner)
{
    switch (shape) {
    case RotatingShape::ThinRing:
        return mass * outer * outer;
    case RotatingShape::SolidDisc:
        return mass * outer * outer * 0.5;
    case RotatingShape::AnnularDisc:
        break;
    }
    return mass * (outer * outer + inner * inner) * 0.5;
}

Unbalance permissibleUnbalance(Speed grade, Mass mass, RotationSpeed speed)
{
    return grade / speed * mass;
}

Check judgeRotatingPart(const RotatingPartInputs &inputs)
{
    Worksheet sheet(QStringLiteral("rotating_part"), tr("Rotating part"), Protects::People);
    sheet.about(inputs.subject);
    sheet.caution(QStringLiteral("rotating"));
    sheet.afterwards(tr("Then run it up slowly behind a guard that would stop its pieces, nobody "
                        "in its plane, and measure vibration and runout."));
    const QString source = tr("Rotating rings and discs: Carvill, Mechanical Engineer's Data "
                              "Handbook, 1.2.7; Shigley and Mischke. Balance: ISO 21940-11");

    const auto shape = takeChosen(sheet, inputs.shape);
    const bool bored = !shape || *shape == RotatingShape::AnnularDisc;
    const auto outer = taken(sheet, inputs.outerRadius, u"ro", u"mm", 1e-3, 5);
    const auto inner =
        bored ? taken(sheet, inputs.innerRadius, u"ri", u"mm", 0, 5) : std::optional(Length());
    const auto mass = taken(sheet, inputs.mass, u"m", u"kg", 1e-4, 1e4);
    const auto density = taken(sheet, inputs.density, u"ρ", u"kg/m³", 100, 25e3);
    const auto poisson = taken(sheet, inputs.poisson, u"ν", u"", 0, 0.5);
    const auto yield = taken(sheet, inputs.yieldStrength, u"σ_y", u"MPa", 1e3, 1e10);
    const auto highest = taken(sheet, inputs.highestSpeed, u"n", u"rpm", 1e-3, 1e5);
    for (const Origin &missing : inputs.missing)
        sheet.takeChoice(missing, {});
    const auto factor = taken(sheet, inputs.overspeed, u"k", u"", 1, 10);
    const auto concentration = inputs.concentration
                                   ? taken(sheet, *inputs.concentration, u"K", u"", 1, 10)
                                   : std::optional(1.0);
    judgeBalance(sheet, inputs, mass, highest);

    bool proven = inputs.certified;
    if (highest && factor) {
        const RotationSpeed over = *highest * *factor;
        if (*factor < std::max(inputs.leastOverspeed.published, inputs.leastOverspeed.inForce())) {
            sheet.restsOn(inputs.overspeed);
            sheet.within(tr("overspeed factor"), *factor, inputs.leastOverspeed, u"");
        }
        if (inputs.spinTestedTo) {
            const auto tested = taken(sheet, *inputs.spinTestedTo, u"n_s", u"rpm", 0, 1e5);
            if (tested) {
                sheet.step(
                    tr("overspeed"), QStringLiteral("n·k"),
                    QString(show(*highest, u"rpm") + QStringLiteral(" · ") + show(*factor, u"")),
                    over, u"rpm");
                // a test at exactly the overspeed is a whole proof, so no margin is asked of it
                proven =
                    proven || (*tested >= over && !isWeak(inputs.spinTestedTo->origin.evidence));
                if (*tested < over)
                    sheet.doubt(tr("The spin test stayed below the overspeed."));
            }
        }
    }
    if (!proven)
        sheet.doubt(tr("The material has no certificate: a competent engineer or a spin test "
                       "decides."));
    if (!shape || !outer || !inner || !density || !poisson || !highest || !factor || !concentration)
        return sheet.finish(source);
    if (bored && *inner >= *outer) {
        sheet.refuse(tr("The bore is as wide as the rim."));
        return sheet.finish(source);
    }

    const RotationSpeed over = *highest * *factor;
    const Pressure stress =
        rotatingStress(*shape, *density, *poisson, *outer, *inner, over) * *concentration;
    sheet.step(tr("stress at overspeed, %1").arg(wordOf(*shape)), formulaOf(*shape),
               QString(QStringLiteral("ρ ") + show(*density, u"kg/m³") + QStringLiteral(", ro ") +
                       show(*outer, u"mm") + QStringLiteral(", ω ") + show(over, u"rad/s") +
                       QStringLiteral(", K ") + show(*concentration, u"")),
               stress, u"MPa");
    sheet.step(tr("rim speed at overspeed"), QStringLiteral("v = ω·ro"),
               QString(show(over, u"rad/s") + QStringLiteral(" · ") + show(*outer, u"mm")),
               over * *outer, u"m/s");
    QString stored;
    if (mass) {
        const Energy energy = rotatingInertia(*shape, *mass, *outer, *inner) * over * over * 0.5;
        sheet.step(tr("stored energy at overspeed"), QStringLiteral("E = ½·J·ω²"),
                   QString(show(*mass, u"kg") + QStringLiteral(", ") + show(over, u"rad/s")),
                   energy, u"kJ");
        stored = show(energy, u"kJ");
    }
    sheet.result(stored.isEmpty()
                     ? show(stress, u"MPa")
                     : tr("%1 at overspeed, %2 stored").arg(show(stress, u"MPa"), stored));
    if (!yield)
        return sheet.finish(source);
    const double safety = *yield / stress;
    sheet.step(tr("safety against yielding"), QStringLiteral("S = σ_y/σ"),
               QString(show(*yield, u"MPa") + QStringLiteral(" / ") + show(stress, u"MPa")), safety,
               u"");
    sheet.restsOn(inputs.highestSpeed, inputs.overspeed, inputs.outerRadius, inputs.yieldStrength,
                  inputs.concentration, inputs.density, inputs.poisson, inputs.shape,
                  bored ? std::optional(inputs.innerRadius) : std::nullopt);
    if (sheet.within(tr("safety against yielding"), safety, inputs.safety, u"") != Verdict::Holds)
        sheet.turnedBy(tr("A stronger material with its certificate, a smaller radius, or a lower "
                          "speed that the controller keeps to."));
    return sheet.finish(source);
}

} // namespace ohmwright
