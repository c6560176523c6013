// SPDX-License-Identifier: GPL-3.0-or-later
// The field lists of the records in engineering.h: names as in the book and the interchange.
#pragma once

#include "core/records/engineering.h"

namespace ohmwright {

template <>
struct RecordTraits<CheckFigure>
{
    static constexpr const char *table = "check_figure";
    static constexpr const char *plural = "check_figures";
    static constexpr auto fields =
        std::tuple{field("key", &CheckFigure::key, Presence::Required),
                   field("figure", &CheckFigure::figure, Presence::Required),
                   field("circuit", &CheckFigure::circuit),
                   field("branch", &CheckFigure::branch),
                   field("part", &CheckFigure::part),
                   field("type", &CheckFigure::type),
                   field("test", &CheckFigure::test),
                   field("value", &CheckFigure::value),
                   field("word", &CheckFigure::word),
                   field("evidence", &CheckFigure::evidence, Presence::Required),
                   field("source", &CheckFigure::source),
                   field("dated", &CheckFigure::on),
                   field("note", &CheckFigure::note)};
};

template <>
struct RecordTraits<RatedCurve>
{
    static constexpr const char *table = "rated_curve";
    static constexpr const char *plural = "curves";
    static constexpr auto fields =
        std::tuple{field("key", &RatedCurve::key, Presence::Required),
                   field("name", &RatedCurve::name, Presence::Required),
                   field("kind", &RatedCurve::kind, Presence::Required),
                   field("part", &RatedCurve::part),
                   field("type", &RatedCurve::type),
                   field("evidence", &RatedCurve::evidence, Presence::Required),
                   field("source", &RatedCurve::source),
                   field("dated", &RatedCurve::on),
                   field("note", &RatedCurve::note)};
};

template <>
struct RecordTraits<CurvePoint>
{
    static constexpr const char *table = "curve_point";
    static constexpr const char *plural = "points";
    static constexpr auto owners = std::tuple{owner("curve_id", "points", &CurvePoint::curve)};
    static constexpr auto fields =
        std::tuple{field("along", &CurvePoint::along, Presence::Required),
                   field("up", &CurvePoint::up, Presence::Required)};
};

template <>
struct RecordTraits<OwnThreshold>
{
    static constexpr const char *table = "own_threshold";
    static constexpr const char *plural = "own_thresholds";
    static constexpr auto fields =
        std::tuple{field("key", &OwnThreshold::key, Presence::Required),
                   field("name", &OwnThreshold::name, Presence::Required),
                   field("value", &OwnThreshold::value, Presence::Required),
                   field("reason", &OwnThreshold::reason)};
};

template <>
struct RecordTraits<Interface>
{
    static constexpr const char *table = "interface";
    static constexpr const char *plural = "interfaces";
    static constexpr auto fields =
        std::tuple{field("key", &Interface::key, Presence::Required),
                   field("name", &Interface::name, Presence::Required),
                   field("part", &Interface::part, Presence::Required),
                   field("other", &Interface::other),
                   field("state", &Interface::state, Presence::Required),
                   field("connector", &Interface::connector),
                   field("mate", &Interface::mate),
                   field("bus", &Interface::bus),
                   field("messages", &Interface::messages),
                   field("wake_signal", &Interface::wakeSignal),
                   field("position_sensor", &Interface::positionSensor),
                   field("firmware", &Interface::firmware),
                   field("parameter_file", &Interface::parameterFile),
                   field("parameter_sha256", &Interface::parameterSha256),
                   field("pairing", &Interface::pairing),
                   field("talked_on", &Interface::talkedOn),
                   field("note", &Interface::note)};
};

template <>
struct RecordTraits<InterfacePin>
{
    static constexpr const char *table = "interface_pin";
    static constexpr const char *plural = "pins";
    static constexpr auto owners =
        std::tuple{owner("interface_id", "pins", &InterfacePin::interface)};
    static constexpr auto fields =
        std::tuple{field("pin", &InterfacePin::pin, Presence::Required),
                   field("signal", &InterfacePin::signal), field("note", &InterfacePin::note)};
};

template <>
struct RecordTraits<Wire>
{
    static constexpr const char *table = "wire";
    static constexpr const char *plural = "wires";
    static constexpr auto fields = std::tuple{field("key", &Wire::key, Presence::Required),
                                              field("name", &Wire::name, Presence::Required),
                                              field("signal", &Wire::signal),
                                              field("from_part", &Wire::from),
                                              field("from_pin", &Wire::fromPin),
                                              field("to_part", &Wire::to),
                                              field("to_pin", &Wire::toPin),
                                              field("cross_section", &Wire::crossSection),
                                              field("length", &Wire::length),
                                              field("colour", &Wire::colour),
                                              field("branch", &Wire::branch),
                                              field("fitted", &Wire::fitted, Presence::Required),
                                              field("note", &Wire::note)};
};

template <>
struct RecordTraits<SafetySystem>
{
    static constexpr const char *table = "safety_system";
    static constexpr const char *plural = "safety_systems";
    static constexpr auto fields =
        std::tuple{field("key", &SafetySystem::key, Presence::Required),
                   field("name", &SafetySystem::name, Presence::Required),
                   field("kind", &SafetySystem::kind, Presence::Required),
                   field("state", &SafetySystem::state, Presence::Required),
                   field("part", &SafetySystem::part),
                   field("test", &SafetySystem::test),
                   field("place", &SafetySystem::place),
                   field("note", &SafetySystem::note)};
};

template <>
struct RecordTraits<WorkPermit>
{
    static constexpr const char *table = "work_permit";
    static constexpr const char *plural = "work_permits";
    static constexpr auto fields =
        std::tuple{field("key", &WorkPermit::key, Presence::Required),
                   field("name", &WorkPermit::name, Presence::Required),
                   field("gloves_tested_on", &WorkPermit::glovesTestedOn),
                   field("gloves_valid_until", &WorkPermit::glovesValidUntil),
                   field("wait_minutes", &WorkPermit::waitMinutes),
                   field("locked_off", &WorkPermit::lockedOff, Presence::Required),
                   field("absence_proven_on", &WorkPermit::absenceProvenOn),
                   field("absence_reading", &WorkPermit::absenceReading),
                   field("instrument", &WorkPermit::instrument),
                   field("worked_by", &WorkPermit::workedBy),
                   field("second_person", &WorkPermit::secondPerson),
                   field("closed_on", &WorkPermit::closedOn),
                   field("note", &WorkPermit::note)};
};

template <>
struct RecordTraits<TestStep>
{
    static constexpr const char *table = "test_step";
    static constexpr const char *plural = "steps";
    static constexpr auto owners = std::tuple{owner("test_id", "steps", &TestStep::test)};
    static constexpr auto fields = std::tuple{
        field("name", &TestStep::name, Presence::Required), field("expected", &TestStep::expected),
        field("stop_if", &TestStep::stopIf), field("seen", &TestStep::seen),
        field("result", &TestStep::result, Presence::Required)};
};

} // namespace ohmwright
