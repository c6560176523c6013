// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/bolted_flange.h"

#include "core/checks/taken.h"

#include <QCoreApplication>

#include <cmath>
#include <numbers>
#include <utility>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BoltedFlange", text);
}

// Share of the tensile strength a bolt bears in shear: EN 1993-1-8.
double shearShare(BoltClass strength, bool threadInShear)
{
    constexpr double kShank = 0.6;
    return threadInShear ? shearShareOf(strength) : kShank;
}

} // namespace

Pressure proofStress(BoltClass strength, Length diameter)
{
    constexpr double kMega = 1e6, kThick = 16.001e-3;
    switch (strength) {
    case BoltClass::Class88:
        return Pressure::fromSi((diameter.si() > kThick ? 600 : 580) * kMega);
    case BoltClass::Class109:
        return Pressure::fromSi(830 * kMega);
    case BoltClass::Class129:
        break;
    }
    return Pressure::fromSi(970 * kMega);
}

std::optional<Length> coarsePitch(Length diameter)
{
    constexpr std::pair<double, double> kThreads[] = {{5, 0.8},   {6, 1},    {8, 1.25}, {10, 1.5},
                                                      {12, 1.75}, {14, 2},   {16, 2},   {18, 2.5},
                                                      {20, 2.5},  {22, 2.5}, {24, 3}};
    for (const auto &[nominal, pitch] : kThreads) {
        if (std::abs(diameter.si() * 1e3 - nominal) < 1e-6)
            return metres(pitch * 1e-3);
    }
    return std::nullopt;
}

Torque torqueByFriction(int bolts, Force preload, double friction, Length radius)
{
    return preload * radius * (bolts * friction);
}

Torque torqueByShear(int bolts, Area each, Pressure shear, Length radius)
{
    return shear * each * radius * bolts;
}

Check judgeBoltedFlange(const BoltedFlangeInputs &inputs)
{
    Worksheet sheet(QStringLiteral("bolted_flange"), tr("Bolted flange"), Protects::Driveline);
    sheet.about(inputs.subject);
    sheet.caution(QStringLiteral("rotating"));
    sheet.afterwards(
        tr("Then mark each bolt after tightening, and look for turned marks and fretting "
           "after the first drives."));
    const QString source = tr("Stress area and proof load: ISO 898-1. Clamp force: T = K·F·d, "
                              "Shigley. Friction: clamp force as in VDI 2230. Shear: EN 1993-1-8");

    const auto bolts =
        takenCount(sheet, inputs.bolts, u"n", 100, tr("A flange has a whole number of bolts."));
    const auto d = taken(sheet, inputs.diameter, u"d", u"mm", 1e-3, 0.1);
    const auto pitch = taken(sheet, inputs.pitch, u"P", u"mm", 1e-4, 0.01);
    const auto strength = takeChosen(sheet, inputs.strength);
    const auto radius = taken(sheet, inputs.circleRadius, u"r", u"mm", 1e-3, 2);
    const auto tightening = taken(sheet, inputs.tightening, u"T_t", u"N·m", 0, 1e4);
    const auto nut = taken(sheet, inputs.nutFactor, u"K", u"", 0.05, 1);
    const auto scatter = taken(sheet, inputs.scatter, u"α_A", u"", 1, 4);
    const auto friction = taken(sheet, inputs.friction, u"µ", u"", 0, 1);
    const auto carried = taken(sheet, inputs.carried, u"T", u"N·m", 1e-3, 1e6);
    for (const Origin &missing : inputs.missing)
        sheet.takeChoice(missing, {});
    if (d && pitch && *d <= *pitch)
        sheet.refuse(tr("The pitch is as large as the thread."));
    const bool counted = bolts && (!d || !pitch || *pitch < *d);
    const int count = static_cast<int>(bolts.value_or(0));
    const auto dotted = [](const QString &a, const QString &b) {
        return QString(a + QStringLiteral(" · ") + b);
    };

    std::optional<Force> clamp;
    if (d && tightening && nut) {
        clamp = *tightening / (*d * *nut);
        sheet.step(tr("clamp force of a bolt"), QStringLiteral("F = T_t/(K·d)"),
                   QString(show(*tightening, u"N·m") + QStringLiteral(" / (") +
                           dotted(show(*nut, u""), show(*d, u"mm")) + QStringLiteral(")")),
                   *clamp, u"kN");
    }
    if (counted && clamp && scatter && friction && radius) {
        const Force least = *clamp * (2 / (1 + *scatter));
        const Torque slips = torqueByFriction(count, least, *friction, *radius);
        sheet.step(tr("torque by friction"), QStringLiteral("T_f = n·F·2/(1 + α_A)·µ·r"),
                   QString(dotted(QString::number(count), show(least, u"kN")) +
                           QStringLiteral(" · ") +
                           dotted(show(*friction, u""), show(*radius, u"mm"))),
                   slips, u"N·m");
        if (carried) {
            sheet.restsOn(inputs.friction, inputs.nutFactor, inputs.tightening, inputs.scatter,
                          inputs.carried, inputs.circleRadius, inputs.bolts, inputs.diameter);
            if (sheet.within(tr("safety against slipping"), slips / *carried, inputs.slipSafety,
                             u"") != Verdict::Holds)
                sheet.turnedBy(tr("More or larger bolts, a wider circle, or a higher class "
                                  "tightened to its own torque."));
        }
        sheet.result(tr("%1 by friction").arg(show(slips, u"N·m")));
    }
    if (!counted || !d || !pitch || !strength)
        return sheet.finish(source);

    const Area area = stressArea(*d, *pitch);
    const Force proof = proofStress(*strength, *d) * area;
    sheet.step(tr("stress area"), QStringLiteral("As = π/4·(d − 0.9382·P)²"),
               QString(show(*d, u"mm") + QStringLiteral(", ") + show(*pitch, u"mm")), area, u"mm²");
    sheet.step(tr("proof load"), QStringLiteral("F_p = Sp·As"),
               dotted(show(proofStress(*strength, *d), u"MPa"), show(area, u"mm²")), proof, u"kN");
    if (nut) {
        constexpr double kReusable = 0.75; // Shigley
        sheet.step(tr("tightening to 75 % of the proof load"), QStringLiteral("K·0.75·F_p·d"),
                   dotted(show(proof * kReusable, u"kN"), show(*d, u"mm")),
                   proof * *d * (*nut * kReusable), u"N·m");
    }
    if (clamp && scatter) {
        const Force most = *clamp * (2 * *scatter / (1 + *scatter));
        sheet.restsOn(inputs.nutFactor, inputs.tightening, inputs.scatter, inputs.diameter,
                      inputs.strength, inputs.pitch);
        if (sheet.atMost(tr("greatest clamp force"), most, proof, u"kN",
                         tr("proof load, ISO 898-1")) != Verdict::Holds)
            sheet.turnedBy(tr("A lower tightening torque, or bolts of a higher class."));
    }
    if (radius) {
        const Area sheared = inputs.threadInShear ? area : *d * *d * (std::numbers::pi / 4);
        const Pressure shear =
            tensileStrengthOf(*strength) * shearShare(*strength, inputs.threadInShear);
        const Torque shears = torqueByShear(count, sheared, shear, *radius);
        sheet.step(tr("torque by shear"), QStringLiteral("T_s = n·A·τ·r"),
                   QString(dotted(QString::number(count), show(sheared, u"mm²")) +
                           QStringLiteral(" · ") +
                           dotted(show(shear, u"MPa"), show(*radius, u"mm"))),
                   shears, u"N·m");
        if (carried) {
            sheet.restsOn(inputs.carried, inputs.bolts, inputs.circleRadius, inputs.diameter,
                          inputs.strength, inputs.pitch);
            sheet.within(tr("safety against shearing"), shears / *carried, inputs.shearSafety, u"");
        }
    }
    return sheet.finish(source);
}

} // namespace ohmwright
