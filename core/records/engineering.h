// SPDX-License-Identifier: GPL-3.0-or-later
// Engineering records: figures and curves the checks ask for beyond ratings, thresholds of one's
// own, interfaces and wires, the register of safety systems, work permits, steps of a guided test.
#pragma once

#include "core/records/work.h"

namespace ohmwright {

// A figure some check asks for that is no rating: the drag of the body, a switching time, what a
// meter read in a test. Which ones there are, and of what, is the list in check_figures.h.
struct CheckFigure
{
    Id<CheckFigure> id;
    QString key;
    QString figure; // "vehicle.drag_coefficient"
    // What it is a figure of, as the list says: one of these, or none for the vehicle.
    std::optional<Id<Circuit>> circuit;
    std::optional<Id<Branch>> branch;
    std::optional<Id<Part>> part;
    std::optional<Id<PartType>> type;
    std::optional<Id<TestRecord>> test;
    std::optional<Amount> value; // neither this nor a word: looked for and not known
    QString word;                // of a choice
    Evidence evidence = Evidence::Assumed;
    QString source;          // document and page, instrument, who said so
    std::optional<QDate> on; // when read or measured
    QString note;
    bool operator==(const CheckFigure &) const = default;
};

enum class CurveKind { OpenCircuit, MotorTorque, ChargeLimit, DischargeLimit, BrakingLimit };
template <>
struct EnumWords<CurveKind>
{
    static constexpr std::array words{"open-circuit voltage", "motor torque", "charge limit",
                                      "discharge limit", "braking limit"};
};

// What the curve is drawn over, and what it gives: a cell's voltage over its state of charge,
// torque over rotation speed, a cell's current over its temperature.
Measure measureAlong(CurveKind kind);
Measure measureUp(CurveKind kind);

struct RatedCurve
{
    Id<RatedCurve> id;
    QString key, name;
    CurveKind kind = CurveKind::OpenCircuit;
    std::optional<Id<Part>> part; // exactly one of part and type is set
    std::optional<Id<PartType>> type;
    Evidence evidence = Evidence::Assumed;
    QString source;
    std::optional<QDate> on;
    QString note;
    bool operator==(const RatedCurve &) const = default;
};

struct CurvePoint
{
    Id<CurvePoint> id;
    Id<RatedCurve> curve;
    int position = 0;
    Amount along, up;
    bool operator==(const CurvePoint &) const = default;
};

// What a result is held to in this book instead of the published value. Never told without it.
struct OwnThreshold
{
    Id<OwnThreshold> id;
    QString key;
    QString name; // "conductor.drop"
    Amount value;
    QString reason;
    bool operator==(const OwnThreshold &) const = default;
};

enum class InterfaceState { ToFindOut, Understood, Talks };
template <>
struct EnumWords<InterfaceState>
{
    static constexpr std::array words{"to find out", "understood", "talks"};
};

// How a unit is spoken to: without this it powers up and says nothing.
struct Interface
{
    Id<Interface> id;
    QString key, name;
    Id<Part> part;
    std::optional<Id<Part>> other; // what it must talk with
    InterfaceState state = InterfaceState::ToFindOut;
    QString connector, mate;       // as on the unit; what plugs into it
    QString bus, messages;         // kind and speed; which messages, documented where
    QString wakeSignal;            // what switches it on
    QString positionSensor;        // of a motor: resolver, encoder, poles
    QString firmware;              // version as read out
    QString parameterFile;         // name of the file its settings are in
    QString parameterSha256;       // of that file, lower-case hex; empty: not taken
    QString pairing;               // with what of the donor, and how it was undone
    std::optional<QDate> talkedOn; // the day it answered on the bench
    QString note;
    bool operator==(const Interface &) const = default;
};

struct InterfacePin
{
    Id<InterfacePin> id;
    Id<Interface> interface;
    int position = 0;
    QString pin, signal, note;
    bool operator==(const InterfacePin &) const = default;
};

// A row of the wire list.
struct Wire
{
    Id<Wire> id;
    QString key, name; // as on its sleeve
    QString signal;
    std::optional<Id<Part>> from, to;
    QString fromPin, toPin; // "X1:4"; or where it goes when that is no part: "chassis, left sill"
    std::optional<Amount> crossSection, length;
    QString colour;
    std::optional<Id<Branch>> branch; // that feeds it
    bool fitted = false;
    QString note;
    bool operator==(const Wire &) const = default;
};

enum class SafetyKind {
    Interlock,
    IsolationMonitor,
    Disconnect,
    InertiaSwitch,
    TouchProtection,
    Label,
    Other,
};
template <>
struct EnumWords<SafetyKind>
{
    static constexpr std::array words{"interlock",      "isolation monitor", "disconnect",
                                      "inertia switch", "touch protection",  "label",
                                      "other"};
};

enum class SafetyState { Planned, Fitted, Proven };
template <>
struct EnumWords<SafetyState>
{
    static constexpr std::array words{"planned", "fitted", "proven"};
};

// A row of the safety-system register.
struct SafetySystem
{
    Id<SafetySystem> id;
    QString key, name;
    SafetyKind kind = SafetyKind::Other;
    SafetyState state = SafetyState::Planned;
    std::optional<Id<Part>> part;
    std::optional<Id<TestRecord>> test; // what proves it
    QString place;                      // where it sits, how it is reached
    QString note;
    bool operator==(const SafetySystem &) const = default;
};

// Leave to work on high voltage: what must be so before a hand goes in.
struct WorkPermit
{
    Id<WorkPermit> id;
    QString key, name; // the work
    std::optional<QDate> glovesTestedOn, glovesValidUntil;
    std::optional<int> waitMinutes; // after switching off, by the maker of what holds charge
    bool lockedOff = false;         // disconnect out and kept by the person who works
    std::optional<QDate> absenceProvenOn;
    std::optional<Amount> absenceReading; // greatest voltage found
    QString instrument;                   // proved on a known source before and after
    QString workedBy, secondPerson;
    std::optional<QDate> closedOn; // work over: it gives no leave any more
    QString note;
    bool operator==(const WorkPermit &) const = default;
};

// One step of a guided test: what to do, what to see, when to stop.
struct TestStep
{
    Id<TestStep> id;
    Id<TestRecord> test;
    int position = 0;
    QString name;     // what to do
    QString expected; // what to see
    QString stopIf;
    QString seen;
    TestResult result = TestResult::Open;
    bool operator==(const TestStep &) const = default;
};

} // namespace ohmwright
