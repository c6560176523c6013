// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagram/one_line.h"

#include "core/diagram/symbols.h"
#include "core/verdicts/build_parts.h"
#include "core/verdicts/wiring.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>
#include <set>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("OneLine", text);
}

constexpr double kLeft = 40;
constexpr double kLineY = 134; // the main line, from the pack to the right
constexpr double kBusY = 224;  // what it feeds hangs from here, back from the left
constexpr double kFeederStep = 152;
constexpr double kFuseY = 254;
constexpr double kUnitY = 376;
constexpr double kMotorY = 510;
constexpr double kBottom = 554;
constexpr double kLetters = 13;
constexpr double kSmallLetters = 12.5;

// One branch off the bus, with what it feeds.
struct Feeder
{
    const Branch *branch = nullptr; // null: a part on the circuit, in no branch
    const Part *unit = nullptr;     // null: the book only names the end
};

// Units that take or give power, as against what only stands in the line.
bool isConsumer(const Part &part)
{
    switch (part.role.value_or(PartRole::Bay)) {
    case PartRole::Inverter:
    case PartRole::Charger:
    case PartRole::Converter:
    case PartRole::Heater:
    case PartRole::Compressor:
    case PartRole::Motor:
        return true;
    default:
        return false;
    }
}

// The circuit, sorted into the main line and its feeders.
struct Plan
{
    const Circuit *circuit = nullptr;
    std::size_t modules = 0;
    std::vector<const Part *> disconnects, mainFuses, contactors, precharge, bleeders;
    std::vector<const Branch *> mainBranches;
    const Branch *prechargeBranch = nullptr;
    std::vector<Feeder> feeders;
    std::vector<const Branch *> phases;
    const Part *motor = nullptr;
};

class Planner
{
public:
    explicit Planner(const Records &records) : m_records(records) {}

    Plan plan()
    {
        Plan plan;
        for (const Circuit &circuit : m_records.all<Circuit>())
            if (circuit.kind == CircuitKind::Traction && !plan.circuit)
                plan.circuit = &circuit;
        if (!plan.circuit)
            return plan;
        plan.modules = Wiring(m_records).modulesOn(*plan.circuit).size();
        sortBranches(plan);
        for (const Part *part : partsOn(m_records, *plan.circuit))
            place(*part, plan);
        // precharge goes around one contactor, as a rule the positive one: that stands last
        std::stable_partition(plan.contactors.begin(), plan.contactors.end(), [](const Part *part) {
            return !part->name.contains(QLatin1String("plus"), Qt::CaseInsensitive) &&
                   !part->name.contains(QLatin1String("positive"), Qt::CaseInsensitive) &&
                   !part->name.contains(u'+');
        });
        plan.motor = onlyPartOfRole(m_records, PartRole::Motor);
        for (const Branch &branch : m_records.all<Branch>())
            if (const Circuit *on = m_records.find(branch.circuit);
                on && on->kind == CircuitKind::Phases)
                plan.phases.push_back(&branch);
        return plan;
    }

private:
    // A branch with a contactor, a disconnect or nothing but the pack in it belongs to the main
    // line; one with a precharge resistor to the path around the contactors; the rest are feeders.
    void sortBranches(Plan &plan)
    {
        for (const Branch &branch : m_records.all<Branch>()) {
            if (branch.circuit != plan.circuit->id)
                continue;
            const std::vector<const Part *> parts = partsOn(m_records, branch);
            const auto any = [&](auto keep) {
                return std::any_of(parts.begin(), parts.end(),
                                   [&](const Part *part) { return keep(*part); });
            };
            const auto does = [](PartRole role) {
                return [role](const Part &part) {
                    return part.role == role;
                };
            };
            if (any(does(PartRole::PrechargeResistor))) {
                plan.prechargeBranch = &branch;
                continue;
            }
            if (any(isConsumer)) {
                addFeeder(branch, parts, plan);
            } else if (any(does(PartRole::Contactor)) || any(does(PartRole::Disconnect)) ||
                       any([](const Part &part) { return part.kind == PartKind::Module; })) {
                plan.mainBranches.push_back(&branch);
                if (const Part *fuse = m_records.find(branch.fuse))
                    addOnce(plan.mainFuses, fuse);
            } else {
                plan.feeders.push_back({&branch, nullptr});
            }
        }
    }

    void addFeeder(const Branch &branch, const std::vector<const Part *> &parts, Plan &plan)
    {
        for (const Part *part : parts)
            // what sits inside a unit that is on the branch too is drawn with it
            if (isConsumer(*part) && !isInsideOne(*part, parts))
                plan.feeders.push_back({&branch, part});
    }

    bool isInsideOne(const Part &part, const std::vector<const Part *> &parts) const
    {
        return std::any_of(parts.begin(), parts.end(), [&](const Part *other) {
            return part.partOf == other->id && isConsumer(*other);
        });
    }

    void place(const Part &part, Plan &plan) const
    {
        if (!part.role)
            return;
        switch (*part.role) {
        case PartRole::Disconnect:
            plan.disconnects.push_back(&part);
            return;
        case PartRole::Contactor:
            plan.contactors.push_back(&part);
            return;
        case PartRole::PrechargeResistor:
            plan.precharge.push_back(&part);
            return;
        case PartRole::DischargeResistor:
            plan.bleeders.push_back(&part);
            return;
        default:
            break;
        }
        const bool drawn = std::any_of(plan.feeders.begin(), plan.feeders.end(),
                                       [&](const Feeder &feeder) { return feeder.unit == &part; });
        if (isConsumer(part) && !drawn)
            plan.feeders.push_back({nullptr, &part});
    }

    static void addOnce(std::vector<const Part *> &parts, const Part *part)
    {
        if (std::find(parts.begin(), parts.end(), part) == parts.end())
            parts.push_back(part);
    }

    const Records &m_records;
};

class Drawer
{
public:
    Drawer(const Records &records, const Plan &plan, const DiagramColours &colours)
        : m_records(records), m_plan(plan), m_colours(colours), m_drawing(colours.ground),
          m_symbols(m_drawing, colours)
    {}

    OneLine draw()
    {
        drawMainLine();
        drawFeeders();
        m_result.width = static_cast<int>(std::max(m_x, 640.0) + kLeft);
        m_result.height = static_cast<int>(kBottom);
        m_result.description = m_words.join(tr("; ")) + u'.';
        m_result.svg = m_drawing.svg(m_result.width, m_result.height,
                                     tr("One-line diagram, %1").arg(m_plan.circuit->name));
        return m_result;
    }

private:
    QString hv() const { return m_colours.highVoltage; }

    void along(double length)
    {
        m_drawing.line(m_x, kLineY, m_x + length, kLineY, hv(), 3);
        m_x += length;
    }

    static QString amount(const std::optional<Amount> &value)
    {
        return value ? printAmount(*value) : QStringLiteral("?");
    }

    void drawMainLine()
    {
        const Circuit &circuit = *m_plan.circuit;
        m_drawing.text(kLeft, 28, circuit.name, m_colours.ink, 15, Anchor::Start, true);
        m_drawing.text(kLeft, 46,
                       tr("%1 nominal, at most %2; HV, one line for both poles")
                           .arg(amount(circuit.nominalVoltage), amount(circuit.worstVoltage)),
                       m_colours.mute, kSmallLetters);
        m_x = kLeft + 20;
        m_symbols.battery(m_x, kLineY);
        m_drawing.text(kLeft, kLineY + 42, tr("Pack"), m_colours.ink, kLetters, Anchor::Start,
                       true);
        m_drawing.text(kLeft, kLineY + 58,
                       m_plan.modules ? tr("%1 modules").arg(m_plan.modules) : tr("no modules yet"),
                       m_colours.mute, kSmallLetters);
        m_words << tr("Pack of %1 modules").arg(m_plan.modules);
        m_x += 16;
        along(30);
        for (const Part *disconnect : m_plan.disconnects)
            inLine(*disconnect, &Symbols::disconnect);
        if (m_plan.disconnects.empty())
            m_result.notDrawn << tr("No part is said to be the service disconnect.");
        for (const Part *fuse : m_plan.mainFuses)
            inLine(*fuse, &Symbols::fuse);
        if (m_plan.mainFuses.empty())
            m_result.notDrawn << tr("The main line has no fuse in the book.");
        drawContactors();
        along(24);
        m_end = m_x;
    }

    void inLine(const Part &part, void (Symbols::*symbol)(double, double, bool))
    {
        along(48);
        (m_symbols.*symbol)(m_x, kLineY, false);
        label(m_x, part);
        m_x += 40;
        along(48);
        m_words << part.name;
    }

    // Names below the line, in two rows in turn, so that neighbours do not run into each other.
    void label(double x, const Part &part)
    {
        const double y = m_labels++ % 2 == 0 ? kLineY + 32 : kLineY + 50;
        m_drawing.text(x + 20, y, shortened(part.name, 28), m_colours.ink, kSmallLetters,
                       Anchor::Middle);
    }

    static QString shortened(const QString &name, int most)
    {
        return name.size() <= most ? name : QString(name.left(most - 1).trimmed() + u'…');
    }

    void drawContactors()
    {
        if (m_plan.contactors.empty()) {
            m_result.notDrawn << tr("No part is said to be a contactor.");
            return;
        }
        double from = m_x;
        for (const Part *contactor : m_plan.contactors) {
            along(24);
            from = m_x; // of the last one: that is bypassed
            along(24);
            m_symbols.contactor(m_x, kLineY, false);
            label(m_x, *contactor);
            m_x += 40;
            m_words << contactor->name;
        }
        along(24);
        if (m_plan.precharge.empty()) {
            m_result.notDrawn << tr("No part is said to be the precharge resistor.");
            return;
        }
        // the path around it, above the line
        const double y = kLineY - 44;
        const double middle = (from + m_x) / 2;
        m_drawing.polyline({{from, kLineY}, {from, y}, {m_x, y}, {m_x, kLineY}}, hv(), 1.5);
        const Branch *branch = m_plan.prechargeBranch;
        QString words = m_plan.precharge.front()->name;
        if (branch && (branch->fuse || branch->fuseRating)) {
            m_symbols.fuse(middle - 40, y, false);
            m_symbols.resistor(middle, y, false);
            words = tr("%1, fuse %2").arg(words, amount(branch->fuseRating));
        } else {
            m_symbols.resistor(middle - 20, y, false);
        }
        m_drawing.text(m_x, y - 12, shortened(words, 54), m_colours.ink, kSmallLetters,
                       Anchor::End);
        m_drawing.dot(from, kLineY, 3.5, hv());
        m_drawing.dot(m_x, kLineY, 3.5, hv());
        m_words << tr("around it: %1").arg(m_plan.precharge.front()->name);
    }

    void drawFeeders()
    {
        m_x = kLeft + 20;
        for (const Part *bleeder : m_plan.bleeders) {
            down(kFuseY);
            m_symbols.resistor(m_x, kFuseY, true);
            inFewLines(m_x + 14, kFuseY + 16, bleeder->name, kSmallLetters, false);
            m_words << bleeder->name;
            m_x += kFeederStep;
        }
        for (const Feeder &feeder : m_plan.feeders)
            drawFeeder(feeder);
        if (m_plan.feeders.empty())
            m_result.notDrawn << tr("Nothing is fed from this circuit yet.");
        // down from the end of the main line, and along all that hangs from it
        const double last = std::max(m_x - kFeederStep, kLeft + 20);
        m_drawing.line(m_end, kLineY, m_end, kBusY, hv(), 3);
        m_drawing.line(kLeft + 20, kBusY, std::max(last, m_end), kBusY, hv(), 3);
        m_x = std::max(m_x, m_end + kLeft);
    }

    void down(double to)
    {
        m_drawing.dot(m_x, kBusY, 3.5, hv());
        m_drawing.line(m_x, kBusY, m_x, to, hv(), 2);
    }

    void drawFeeder(const Feeder &feeder)
    {
        const QString unit = feeder.unit ? feeder.unit->name : feeder.branch->to;
        down(kUnitY);
        if (feeder.branch) {
            drawFuse(*feeder.branch, unit);
            drawConductor(*feeder.branch);
        } else {
            m_drawing.text(m_x + 16, kFuseY + 24, tr("in no branch yet"), m_colours.mute,
                           kSmallLetters);
            m_result.notDrawn << tr("%1 is on the circuit, but in none of its branches.").arg(unit);
        }
        m_symbols.unit(m_x, kUnitY, feeder.unit ? feeder.unit->role : std::nullopt);
        inFewLines(m_x + 26, kUnitY + 16, unit, kLetters, true);
        if (feeder.unit && feeder.unit->role == PartRole::Inverter)
            drawMotor();
        m_words << tr("feeds %1").arg(unit);
        m_x += kFeederStep;
    }

    // Where a line of at most `room` letters ends; a number stays with its unit. 0: nowhere.
    static qsizetype breakOf(const QString &name, qsizetype room)
    {
        if (name.size() <= room)
            return 0;
        qsizetype space = name.lastIndexOf(u' ', room);
        while (space > 0 && name[space - 1].isDigit() && space + 1 < name.size() &&
               !name[space + 1].isDigit())
            space = name.lastIndexOf(u' ', space - 1);
        return std::max<qsizetype>(space, 0);
    }

    // In three lines at most: next to it stands the next feeder.
    void inFewLines(double x, double y, QString name, double letters, bool strong)
    {
        constexpr int kRoom = 16; // letters
        constexpr int kLines = 3;
        for (int line = 1; !name.isEmpty(); ++line, y += 17) {
            const qsizetype space = line < kLines ? breakOf(name, kRoom) : 0;
            m_drawing.text(x, y, shortened(space > 0 ? name.left(space) : name, kRoom),
                           m_colours.ink, letters, Anchor::Start, strong);
            name = space > 0 ? name.mid(space + 1) : QString();
        }
    }

    void drawFuse(const Branch &branch, const QString &unit)
    {
        const Part *fuse = m_records.find(branch.fuse);
        const bool main = fuse && std::find(m_plan.mainFuses.begin(), m_plan.mainFuses.end(),
                                            fuse) != m_plan.mainFuses.end();
        if (main) {
            m_drawing.text(m_x + 16, kFuseY + 24, tr("behind the main fuse"), m_colours.mute,
                           kSmallLetters);
            return;
        }
        if (!fuse && !branch.fuseRating) {
            m_drawing.text(m_x + 16, kFuseY + 24, tr("no fuse in the book"), m_colours.mute,
                           kSmallLetters);
            m_result.notDrawn << tr("The feeder of %1 has no fuse in the book.").arg(unit);
            return;
        }
        m_symbols.fuse(m_x, kFuseY, true);
        m_drawing.text(m_x + 16, kFuseY + 24, amount(branch.fuseRating), m_colours.ink,
                       kSmallLetters);
    }

    void drawConductor(const Branch &branch)
    {
        double y = kFuseY + 64;
        const auto say = [&](const QString &words) {
            m_drawing.text(m_x + 16, y, words, m_colours.mute, kSmallLetters);
            y += 16;
        };
        say(tr("%1, %2").arg(amount(branch.conductorSize), amount(branch.conductorLength)));
        say(branch.peakCurrent
                ? tr("%1, peak %2")
                      .arg(amount(branch.continuousCurrent), amount(branch.peakCurrent))
                : amount(branch.continuousCurrent));
    }

    void drawMotor()
    {
        if (!m_plan.motor) {
            m_result.notDrawn << tr("No part, or more than one, is said to be the motor.");
            return;
        }
        m_drawing.line(m_x, kUnitY + 40, m_x, kMotorY - 26, hv(), 2);
        // three strokes across the line: three phases
        for (const double offset : {-6.0, 0.0, 6.0})
            m_drawing.line(m_x - 7, kUnitY + 66 + offset + 4, m_x + 7, kUnitY + 66 + offset - 4,
                           m_colours.ink, 1.5);
        if (!m_plan.phases.empty()) {
            const Branch &phases = *m_plan.phases.front();
            m_drawing.text(
                m_x + 16, kUnitY + 62,
                tr("3 × %1, %2").arg(amount(phases.conductorSize), amount(phases.conductorLength)),
                m_colours.mute, kSmallLetters);
            m_drawing.text(
                m_x + 16, kUnitY + 78,
                tr("%1, peak %2").arg(amount(phases.continuousCurrent), amount(phases.peakCurrent)),
                m_colours.mute, kSmallLetters);
        }
        m_symbols.motor(m_x, kMotorY);
        m_drawing.text(m_x + 34, kMotorY + 5, shortened(m_plan.motor->name, 18), m_colours.ink,
                       kLetters, Anchor::Start, true);
        m_words << tr("which drives %1").arg(m_plan.motor->name);
    }

    const Records &m_records;
    const Plan &m_plan;
    const DiagramColours &m_colours;
    SvgDrawing m_drawing;
    Symbols m_symbols;
    OneLine m_result;
    QStringList m_words;
    double m_x = 0;
    double m_end = 0; // of the main line
    int m_labels = 0;
};

} // namespace

OneLine oneLineOf(const Records &records, const DiagramColours &colours)
{
    const Plan plan = Planner(records).plan();
    if (!plan.circuit)
        return {};
    return Drawer(records, plan, colours).draw();
}

} // namespace ohmwright
