// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/circuit_ratings.h"

#include "core/checks/usable.h"
#include "core/checks/worksheet.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("CircuitRatings", text);
}

// 96 cells of 4.2 V are 403.2 V, not 403.2 V and the noise of binary arithmetic: a plate that says
// 403.2 V is met.
Voltage packVoltage(double cells, Voltage cell)
{
    return volts(std::round(cells * cell.si() * 1e9) / 1e9);
}

// See the header. Not known, at least what every inverter reaches: so much is sure, and the check
// is unknown.
double alternatingShare(const CircuitRatingsInputs &inputs)
{
    return inputs.modulation.value == Modulation::SixStep ? std::sqrt(2.0 / 3)
                                                          : 1 / std::numbers::sqrt2;
}

Voltage asKind(Voltage voltage, CurrentKind from, const CircuitRatingsInputs &on)
{
    if (from == on.current)
        return voltage;
    return from == CurrentKind::Ac ? voltage * std::numbers::sqrt2 : voltage * alternatingShare(on);
}

// The pack at full charge with so many cells, as the circuit sees it.
Voltage packHere(const CircuitRatingsInputs &inputs, double cells)
{
    Voltage here;
    if (inputs.pack.cellFull.value)
        here = asKind(packVoltage(cells, *inputs.pack.cellFull.value), CurrentKind::Dc, inputs);
    const std::optional<double> &now = inputs.pack.cellsInSeries.value;
    for (const VoltageSource &other : inputs.others)
        if (other.applies && other.ofThePack && other.voltage.value && now && *now >= 1)
            here = std::max(
                here, asKind(packVoltage(cells, *other.voltage.value / *now), other.kind, inputs));
    return here;
}

struct PartLimit
{
    QString path;
    Given<Voltage> limit; // the safer of those that answer; none when nothing does
};

PartLimit limitOf(const QString &path, const Assembly<VoltageLimit> &part, CurrentKind kind)
{
    PartLimit found{path, {}};
    QString instead;
    Origin missing; // where one of the right kind can be filled in
    for (const VoltageLimit &limit : part.limits) {
        if (!limit.voltage.value) {
            if (limit.kind == kind)
                missing = limit.voltage.origin;
            continue;
        }
        if (limit.kind != kind) {
            instead = limit.kind ? tr("only a limit for %1 is known").arg(wordOf(*limit.kind))
                                 : tr("a limit is known, but not if it is for DC or AC");
            continue;
        }
        if (!found.limit.value || *limit.voltage.value < *found.limit.value)
            found.limit = limit.voltage;
    }
    Origin &origin = found.limit.origin;
    if (!found.limit.value)
        origin = missing;
    if (origin.name.isEmpty())
        origin.name = tr("%1 voltage limit of %2").arg(wordOf(kind), path);
    if (!found.limit.value && !instead.isEmpty())
        origin.name += QString(QStringLiteral(" (") + instead + QLatin1Char(')'));
    if (origin.path.isEmpty())
        origin.path = path;
    return found;
}

std::vector<PartLimit> limitsOf(const CircuitRatingsInputs &inputs)
{
    std::vector<PartLimit> limits;
    visitAll(inputs.parts, [&](const QString &path, const Assembly<VoltageLimit> &part) {
        if (part.isLive)
            limits.push_back(limitOf(path, part, inputs.current));
    });
    return limits;
}

// The worst of the sources taken onto a sheet.
class Worst
{
public:
    Worst(Worksheet &sheet, const CircuitRatingsInputs &inputs) : m_sheet(sheet), m_inputs(inputs)
    {}

    void without(const QString &name, const QString &whyNot)
    {
        m_sheet.stepText(name, {}, whyNot, tr("does not apply"));
    }

    void add(const QString &name, const QString &formula, const QString &worked, Voltage voltage,
             CurrentKind kind, std::vector<const Origin *> from)
    {
        m_sheet.step(name, formula, worked, voltage, u"V");
        const Voltage here = asKind(voltage, kind, m_inputs);
        if (kind != m_inputs.current) {
            const bool peak = kind == CurrentKind::Ac;
            m_sheet.step(peak ? tr("%1, by its peak").arg(name)
                              : tr("%1, rms from line to line").arg(name),
                         peak ? QStringLiteral("√2·U") : shareFormula(m_inputs),
                         show(voltage, u"V"), here, u"V");
            if (!peak)
                from.push_back(&m_inputs.modulation.origin);
        }
        if (!m_worst || *m_worst < here) {
            m_worst = here;
            m_name = name;
            m_from = std::move(from);
        }
    }

    [[nodiscard]] const std::optional<Voltage> &voltage() const { return m_worst; }
    [[nodiscard]] const QString &name() const { return m_name; }
    [[nodiscard]] const std::vector<const Origin *> &from() const { return m_from; }

private:
    static QString shareFormula(const CircuitRatingsInputs &inputs)
    {
        return inputs.modulation.value == Modulation::SixStep ? QStringLiteral("√(2/3)·U")
                                                              : QStringLiteral("U/√2");
    }

    Worksheet &m_sheet;
    const CircuitRatingsInputs &m_inputs;
    std::optional<Voltage> m_worst;
    QString m_name;
    std::vector<const Origin *> m_from;
};

void addPack(Worksheet &sheet, Worst &worst, const PackAtFull &pack)
{
    const QString name = tr("pack at full charge");
    if (!pack.applies)
        return worst.without(name, pack.whyNot);
    const double cells = sheet.take(pack.cellsInSeries, u"n", u"", 1, 10000);
    const Voltage full = sheet.take(pack.cellFull, u"u", u"V", 0, 10);
    if (cells <= 0 || full.si() <= 0)
        return;
    worst.add(name, QStringLiteral("U = n·u"),
              QString(show(cells, u"") + QStringLiteral(" · ") + show(full, u"V")),
              packVoltage(cells, full), CurrentKind::Dc,
              {&pack.cellFull.origin, &pack.cellsInSeries.origin});
    if (pack.cellNominal)
        sheet.step(
            tr("at its nominal voltage, not held to anything"), QStringLiteral("n·uₙ"),
            QString(show(cells, u"") + QStringLiteral(" · ") + show(*pack.cellNominal, u"V")),
            packVoltage(cells, *pack.cellNominal), u"V");
}

std::vector<const MotorAtOverspeed *> motorsOf(const CircuitRatingsInputs &inputs)
{
    std::vector<const MotorAtOverspeed *> motors{&inputs.motor};
    for (const MotorAtOverspeed &other : inputs.otherMotors)
        motors.push_back(&other);
    return motors;
}

QString overspeedOf(const MotorAtOverspeed &motor)
{
    return motor.of.isEmpty() ? tr("motor's no-load voltage at overspeed")
                              : tr("no-load voltage at overspeed of %1").arg(motor.of);
}

void addMotor(Worksheet &sheet, Worst &worst, const MotorAtOverspeed &motor)
{
    const QString name = overspeedOf(motor);
    if (!motor.applies)
        return worst.without(name, motor.whyNot);
    const Voltage noLoad = sheet.take(motor.noLoad, u"E₀", u"V", 0);
    const RotationSpeed speed = sheet.take(motor.noLoadSpeed, u"n₀", u"rpm", 1e-3);
    const RotationSpeed highest = sheet.take(motor.highestSpeed, u"nₘ", u"rpm", 0);
    if (!isUsable(motor.noLoad, noLoad) || !isUsable(motor.noLoadSpeed, speed) ||
        !isUsable(motor.highestSpeed, highest))
        return;
    worst.add(name, QStringLiteral("E = E₀·nₘ/n₀"),
              QString(show(noLoad, u"V") + QStringLiteral(" · ") + show(highest, u"rpm") +
                      QStringLiteral(" / ") + show(speed, u"rpm")),
              noLoad * (highest / speed), CurrentKind::Ac,
              {&motor.noLoad.origin, &motor.highestSpeed.origin, &motor.noLoadSpeed.origin});
}

void addMotors(Worksheet &sheet, Worst &worst, const CircuitRatingsInputs &inputs)
{
    for (const MotorAtOverspeed *motor : motorsOf(inputs))
        addMotor(sheet, worst, *motor);
}

void addOthers(Worksheet &sheet, Worst &worst, const std::vector<VoltageSource> &others)
{
    for (const VoltageSource &other : others) {
        if (!other.applies) {
            worst.without(other.name, other.whyNot);
            continue;
        }
        const Voltage voltage = sheet.take(other.voltage, u"U", u"V", 0);
        if (isUsable(other.voltage, voltage))
            worst.add(other.name, QStringLiteral("U"), {}, voltage, other.kind,
                      {&other.voltage.origin});
    }
}

// With limits that were worked out of the inputs before.
MostCells mostCells(const CircuitRatingsInputs &inputs, const std::vector<PartLimit> &limits,
                    double share = 1)
{
    MostCells most;
    std::optional<Voltage> lowest;
    for (const PartLimit &part : limits) {
        if (!part.limit.value || !(part.limit.value->si() > 0)) {
            most.unknowns.append(part.limit.origin.name);
        } else if (!lowest || *part.limit.value < *lowest) {
            lowest = *part.limit.value;
            most.decidedBy = part.path;
        }
    }
    const std::optional<Voltage> &full = inputs.pack.cellFull.value;
    if (!full)
        most.unknowns.append(inputs.pack.cellFull.origin.name);
    if (inputs.current == CurrentKind::Ac && !inputs.modulation.value)
        most.unknowns.append(inputs.modulation.origin.name);
    if (!lowest)
        return most;
    most.limit = *lowest;
    const Voltage allowed = *lowest * share;
    for (const VoltageSource &other : inputs.others)
        if (other.applies && !other.ofThePack && other.voltage.value &&
            asKind(*other.voltage.value, other.kind, inputs) > allowed)
            most.above.append(other.name);
    for (const MotorAtOverspeed *motor : motorsOf(inputs))
        if (motor->applies && motor->noLoad.value && motor->noLoadSpeed.value &&
            motor->highestSpeed.value && motor->noLoadSpeed.value->si() > 0 &&
            asKind(*motor->noLoad.value * (*motor->highestSpeed.value / *motor->noLoadSpeed.value),
                   CurrentKind::Ac, inputs) > allowed)
            most.above.append(overspeedOf(*motor));
    if (!full || !(full->si() > 0))
        return most;
    // the count itself is judged as the check judges it, so the two never differ by rounding
    int cells = static_cast<int>(std::min(allowed / packHere(inputs, 1), 1e6)) + 1;
    while (cells > 0 && packHere(inputs, cells) > allowed)
        --cells;
    most.cells = cells;
    return most;
}

QString turning(const CircuitRatingsInputs &inputs, const std::vector<PartLimit> &limits,
                const PartLimit &deciding, Voltage worst, Verdict verdict)
{
    const QString part =
        tr("%1 replaced by one for at least %2 %3")
            .arg(deciding.path, show(limitThatTurns(worst, verdict), u"V"), wordOf(inputs.current));
    const MostCells most =
        mostCells(inputs, limits, verdict == Verdict::Fails ? 1 : 1 - kTightWithin);
    // fewer cells help only where the pack alone is too much
    const bool othersKnown = std::ranges::all_of(inputs.others, [](const VoltageSource &other) {
        return !other.applies || other.voltage.value;
    });
    if (!inputs.pack.applies || !most.cells || !othersKnown || !most.above.isEmpty())
        return QString(part + QLatin1Char('.'));
    return tr("%1, or at most %2 cells in series.").arg(part).arg(*most.cells);
}

// The other way round, worked: how many cells what is known of the parts allows.
void tellMostCells(Worksheet &sheet, const CircuitRatingsInputs &inputs, const MostCells &most)
{
    if (!inputs.pack.applies)
        return;
    const QString what = tr("most cells in series that every known limit allows");
    if (most.cells) {
        const Voltage full = *inputs.pack.cellFull.value;
        const Voltage one = packHere(inputs, 1);
        const bool byCell = one <= asKind(full, CurrentKind::Dc, inputs);
        const QString formula = !byCell ? QStringLiteral("n₂ = n·Uₘ/U")
                                : inputs.current == CurrentKind::Dc ? QStringLiteral("n₂ = Uₘ/u")
                                : inputs.modulation.value == Modulation::SixStep
                                    ? QStringLiteral("n₂ = √(3/2)·Uₘ/u")
                                    : QStringLiteral("n₂ = √2·Uₘ/u");
        sheet.stepText(what, formula,
                       tr("%1 for %2 a cell; %3 decides")
                           .arg(show(most.limit, u"V"), show(one, u"V"), most.decidedBy),
                       QString::number(*most.cells));
    } else {
        sheet.stepText(what, QStringLiteral("n₂ = Uₘ/u"), {}, tr("not known"));
    }
    if (!most.unknowns.isEmpty())
        sheet.stepText(tr("what could still lower it"), {}, most.unknowns.join(tr(", ")),
                       tr("not known"));
    if (!most.above.isEmpty())
        sheet.stepText(tr("above that limit however few the cells"), {}, most.above.join(tr(", ")),
                       show(most.limit, u"V"));
}

} // namespace

QString voltageClass(Voltage voltage, CurrentKind kind)
{
    const bool dc = kind == CurrentKind::Dc;
    if (voltage <= volts(dc ? 60 : 30))
        return tr("class A");
    return voltage <= volts(dc ? 1500 : 1000) ? tr("class B") : tr("beyond class B");
}

Check judgeCircuitRatings(const CircuitRatingsInputs &inputs)
{
    Worksheet sheet(QStringLiteral("circuit_ratings"), tr("Voltage ratings: %1").arg(inputs.name),
                    Protects::Electronics);
    sheet.about(inputs.circuit);
    sheet.caution(QStringLiteral("high-voltage"));
    sheet.afterwards(tr("Then measure the voltage with the pack full, before anything that cost "
                        "money is connected."));
    const QString source =
        tr("Greatest of the voltages that can reach the circuit: common practice, no published "
           "source; modulation: Mohan, Undeland and Robbins, Power Electronics, Holtz, Proc. IEEE "
           "82, 1994; classes: ISO 6469-3");

    const bool fromDirect =
        inputs.pack.applies || std::ranges::any_of(inputs.others, [](const VoltageSource &other) {
            return other.applies && other.kind == CurrentKind::Dc;
        });
    if (inputs.current == CurrentKind::Ac && fromDirect)
        takeChosen(sheet, inputs.modulation);
    Worst worst(sheet, inputs);
    addPack(sheet, worst, inputs.pack);
    addMotors(sheet, worst, inputs);
    addOthers(sheet, worst, inputs.others);

    const std::vector<PartLimit> limits = limitsOf(inputs);
    std::vector<PartLimit> usable;
    for (const PartLimit &part : limits) {
        // a limit of nothing is a slip of the pen, not a limit
        const Voltage limit = sheet.take(part.limit, u"Uₘ", u"V", 1e-3);
        if (limit.si() > 0)
            usable.push_back(part);
    }
    const MostCells most = mostCells(inputs, limits);
    tellMostCells(sheet, inputs, most);
    if (!worst.voltage()) {
        sheet.doubt(tr("Nothing is known to drive the circuit."));
        return sheet.finish(source);
    }
    const Voltage u = *worst.voltage();
    sheet.stepText(tr("worst voltage"), QStringLiteral("greatest of the above"), worst.name(),
                   show(u, u"V"));
    sheet.stepText(tr("voltage class"), QStringLiteral("ISO 6469-3"), show(u, u"V"),
                   voltageClass(u, inputs.current));
    if (voltageClass(u, inputs.current) == tr("beyond class B"))
        sheet.doubt(
            tr("%1 is beyond what the standards for road vehicles cover.").arg(show(u, u"V")));
    if (usable.empty()) {
        sheet.doubt(tr("No part of the circuit has a limit to hold this against."));
        return sheet.finish(source);
    }

    std::stable_sort(usable.begin(), usable.end(), [](const PartLimit &a, const PartLimit &b) {
        return *a.limit.value < *b.limit.value;
    });
    Verdict decided = Verdict::Holds;
    for (const PartLimit &part : usable) {
        sheet.restsOn(part.limit, worst.from());
        decided = std::max(
            decided,
            sheet.atMost(part.path, u, *part.limit.value, u"V",
                         tr("%1 of %2").arg(spokenOf(part.limit.origin.evidence), part.path)));
    }
    const PartLimit &deciding = usable.front();
    if (decided != Verdict::Holds)
        sheet.turnedBy(turning(inputs, limits, deciding, u, decided));
    QString result =
        tr("%1 %2 at worst (%3, %4); %5 decides with %6")
            .arg(show(u, u"V"), wordOf(inputs.current), worst.name(),
                 voltageClass(u, inputs.current), deciding.path, show(*deciding.limit.value, u"V"));
    if (inputs.pack.applies && most.cells)
        result += tr("; at most %1 cells in series").arg(*most.cells);
    sheet.result(result);
    return sheet.finish(source);
}

MostCells mostCellsInSeries(const CircuitRatingsInputs &inputs, double share)
{
    return mostCells(inputs, limitsOf(inputs), share);
}

WorstVoltage worstVoltage(const CircuitRatingsInputs &inputs)
{
    Worksheet aside(QStringLiteral("circuit_ratings"), {}, Protects::Electronics);
    Worst worst(aside, inputs);
    addPack(aside, worst, inputs.pack);
    addMotors(aside, worst, inputs);
    addOthers(aside, worst, inputs.others);
    WorstVoltage found;
    for (const CheckInput &input : aside.finish({}).inputs)
        if (input.shown.isEmpty())
            found.missing.push_back(input.origin);
    if (worst.voltage()) {
        const std::vector<const Origin *> &from = worst.from();
        found.known.value = worst.voltage();
        found.known.origin =
            **std::max_element(from.begin(), from.end(), [](const Origin *a, const Origin *b) {
                return a->evidence < b->evidence;
            });
        found.known.origin.source = worst.name();
    } else if (!found.missing.empty()) { // then that is what it starts from
        found.known.origin = found.missing.front();
        found.missing.erase(found.missing.begin());
        return found;
    }
    found.known.origin.name = tr("worst voltage of %1").arg(inputs.name);
    return found;
}

} // namespace ohmwright
