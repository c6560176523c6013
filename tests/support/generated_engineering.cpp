// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/generated_engineering.h"

#include "core/records/check_figures.h"
#include "core/records/thresholds.h"

#include <set>
#include <tuple>

namespace ohmwright {

template <class R>
R EngineeringMaker::fresh()
{
    m_lastId += 1 + m_chance.below(1000);
    R row;
    row.id = Id<R>(m_lastId);
    return row;
}

template <class R>
R EngineeringMaker::freshKeyed()
{
    R row = fresh<R>();
    row.key = m_values.key();
    return row;
}

template <class R>
Id<R> EngineeringMaker::one()
{
    return m_chance.pick(m_records.all<R>().rows()).id;
}

template <class R>
std::optional<Id<R>> EngineeringMaker::perhapsOne()
{
    return m_chance.oneIn(2) ? std::nullopt : std::optional(one<R>());
}

void EngineeringMaker::make()
{
    makeFigures();
    makeCurves();
    makeThresholds();
    makeInterfaces();
    makeWires();
    makeSafety();
    makePermits();
}

void EngineeringMaker::makeFigures()
{
    std::vector<CheckFigure> figures;
    // each figure once of each thing
    std::set<std::tuple<QString, std::int64_t>> told;
    for (int i = 0; i < m_size.figures; ++i) {
        const FigureInfo &info = m_chance.pick(checkFigures());
        auto f = freshKeyed<CheckFigure>();
        f.figure = QString::fromUtf8(info.name.data(), static_cast<qsizetype>(info.name.size()));
        std::int64_t subject = 0;
        switch (info.of) {
        case FigureOf::Vehicle:
            break;
        case FigureOf::Circuit:
            subject = (f.circuit = one<Circuit>())->value();
            break;
        case FigureOf::Branch:
            subject = (f.branch = one<Branch>())->value();
            break;
        case FigureOf::Part:
            if (m_chance.oneIn(2))
                subject = (f.part = one<Part>())->value();
            else
                subject = (f.type = one<PartType>())->value();
            break;
        case FigureOf::Test:
            subject = (f.test = one<TestRecord>())->value();
            break;
        }
        if (m_chance.below(5) > 0) {
            if (info.measure)
                f.value = m_values.amount(*info.measure, true);
            else
                f.word = m_chance.pick(wordsOf(info));
        }
        f.evidence = m_values.word<Evidence>();
        f.source = m_values.text();
        f.on = m_values.perhapsDate();
        f.note = m_values.text();
        if (told.insert({f.figure, subject}).second)
            figures.push_back(f);
    }
    m_records.all<CheckFigure>().assign(std::move(figures));
}

void EngineeringMaker::makeCurves()
{
    std::vector<RatedCurve> curves;
    std::vector<CurvePoint> points;
    for (int i = 0; i < m_size.curves; ++i) {
        auto c = freshKeyed<RatedCurve>();
        c.name = m_values.requiredText();
        c.kind = m_values.word<CurveKind>();
        if (m_chance.oneIn(2))
            c.part = one<Part>();
        else
            c.type = one<PartType>();
        c.evidence = m_values.word<Evidence>();
        c.source = m_values.text();
        c.on = m_values.perhapsDate();
        c.note = m_values.text();
        const int count = m_chance.between(i == 0 ? 1 : 0, 4);
        for (int position = 0; position < count; ++position) {
            auto p = fresh<CurvePoint>();
            p.curve = c.id;
            p.position = position;
            p.along = m_values.amount(measureAlong(c.kind));
            p.up = m_values.amount(measureUp(c.kind), true);
            points.push_back(p);
        }
        curves.push_back(c);
    }
    m_records.all<RatedCurve>().assign(std::move(curves));
    m_records.all<CurvePoint>().assign(std::move(points));
}

void EngineeringMaker::makeThresholds()
{
    std::vector<OwnThreshold> thresholds;
    for (const ThresholdInfo &info : knownThresholds()) {
        if (!thresholds.empty() && m_chance.below(4) > 0)
            continue;
        auto t = freshKeyed<OwnThreshold>();
        t.name = QString::fromLatin1(info.name.data(), static_cast<qsizetype>(info.name.size()));
        t.value = m_values.amount(info.measure, true);
        t.reason = m_values.requiredText();
        thresholds.push_back(t);
    }
    m_records.all<OwnThreshold>().assign(std::move(thresholds));
}

void EngineeringMaker::makeInterfaces()
{
    std::vector<Interface> interfaces;
    std::vector<InterfacePin> pins;
    for (int i = 0; i < m_size.interfaces; ++i) {
        auto f = freshKeyed<Interface>();
        f.name = m_values.requiredText();
        f.part = one<Part>();
        f.other = perhapsOne<Part>();
        if (f.other == f.part)
            f.other.reset();
        f.state = m_values.word<InterfaceState>();
        for (QString *field :
             {&f.connector, &f.mate, &f.bus, &f.messages, &f.wakeSignal, &f.positionSensor,
              &f.firmware, &f.parameterFile, &f.pairing, &f.note})
            *field = m_values.text();
        if (m_chance.oneIn(2))
            f.parameterSha256 = QString(64, u'a');
        f.talkedOn = f.state == InterfaceState::Talks ? std::optional(m_values.date())
                                                      : m_values.perhapsDate();
        const int count = m_chance.between(i == 0 ? 1 : 0, 3);
        for (int position = 0; position < count; ++position) {
            auto p = fresh<InterfacePin>();
            p.interface = f.id;
            p.position = position;
            p.pin = m_values.requiredText();
            p.signal = m_values.text();
            p.note = m_values.text();
            pins.push_back(p);
        }
        interfaces.push_back(f);
    }
    m_records.all<Interface>().assign(std::move(interfaces));
    m_records.all<InterfacePin>().assign(std::move(pins));
}

void EngineeringMaker::makeWires()
{
    std::vector<Wire> wires;
    for (int i = 0; i < m_size.wires; ++i) {
        auto w = freshKeyed<Wire>();
        w.name = m_values.requiredText();
        w.from = perhapsOne<Part>();
        w.to = perhapsOne<Part>();
        for (QString *field : {&w.signal, &w.fromPin, &w.toPin, &w.colour, &w.note})
            *field = m_values.text();
        w.crossSection = m_values.perhapsAmount(Measure::Area);
        w.length = m_values.perhapsAmount(Measure::Length);
        w.branch = perhapsOne<Branch>();
        w.fitted = m_chance.oneIn(2);
        wires.push_back(w);
    }
    m_records.all<Wire>().assign(std::move(wires));
}

void EngineeringMaker::makeSafety()
{
    std::vector<SafetySystem> systems;
    for (int i = 0; i < m_size.safetySystems; ++i) {
        auto s = freshKeyed<SafetySystem>();
        s.name = m_values.requiredText();
        s.kind = m_values.word<SafetyKind>();
        s.part = perhapsOne<Part>();
        s.test = perhapsOne<TestRecord>();
        s.state = m_values.word<SafetyState>();
        const TestRecord *test = m_records.find(s.test);
        const bool passed = test && test->result == TestResult::Passed;
        if (s.state == SafetyState::Proven && !passed)
            s.state = SafetyState::Fitted;
        s.place = m_values.text();
        s.note = m_values.text();
        systems.push_back(s);
    }
    m_records.all<SafetySystem>().assign(std::move(systems));
}

void EngineeringMaker::makePermits()
{
    std::vector<WorkPermit> permits;
    for (int i = 0; i < m_size.permits; ++i) {
        auto p = freshKeyed<WorkPermit>();
        p.name = m_values.requiredText();
        p.glovesTestedOn = m_values.perhapsDate();
        p.glovesValidUntil = m_values.perhapsDate();
        p.waitMinutes = m_values.perhaps([&] { return m_chance.between(0, 100000); });
        p.lockedOff = m_chance.oneIn(2);
        p.absenceProvenOn = m_values.perhapsDate();
        if (p.absenceProvenOn)
            p.absenceReading =
                m_values.perhaps([&] { return m_values.amount(Measure::Voltage, true); });
        for (QString *field : {&p.instrument, &p.workedBy, &p.secondPerson, &p.note})
            *field = m_values.text();
        p.closedOn = m_values.perhapsDate();
        permits.push_back(p);
    }
    m_records.all<WorkPermit>().assign(std::move(permits));
}

} // namespace ohmwright
