// SPDX-License-Identifier: GPL-3.0-or-later
// The field lists of the records in ledger.h: names as in the book and the interchange.
#pragma once

#include "core/records/ledger.h"

namespace ohmwright {

template <>
struct RecordTraits<Build>
{
    static constexpr const char *table = "build";
    static constexpr const char *plural = "build";
    static constexpr bool single = true;
    static constexpr auto fields =
        std::tuple{field("title", &Build::title, Presence::Required),
                   field("currency", &Build::currency, Presence::Required),
                   field("hours_per_week", &Build::hoursPerWeek, Presence::Required),
                   field("contingency_percent", &Build::contingencyPercent, Presence::Required),
                   field("place", &Build::place),
                   field("confidence_percent", &Build::confidencePercent),
                   field("saved", &Build::saved),
                   field("saved_on", &Build::savedOn),
                   field("set_aside", &Build::setAside),
                   field("note", &Build::note)};
};

template <>
struct RecordTraits<Vehicle>
{
    static constexpr const char *table = "vehicle";
    static constexpr const char *plural = "vehicle";
    static constexpr bool single = true;
    static constexpr auto fields = std::tuple{field("make", &Vehicle::make),
                                              field("model", &Vehicle::model),
                                              field("body", &Vehicle::body),
                                              field("vin", &Vehicle::vin),
                                              field("registration", &Vehicle::registration),
                                              field("year", &Vehicle::year),
                                              field("first_registered", &Vehicle::firstRegistered),
                                              field("engine", &Vehicle::engine),
                                              field("fuel", &Vehicle::fuel),
                                              field("gearbox", &Vehicle::gearbox),
                                              field("tyre_size", &Vehicle::tyreSize),
                                              field("brakes", &Vehicle::brakes),
                                              field("odometer", &Vehicle::odometer),
                                              field("wheelbase", &Vehicle::wheelbase),
                                              field("kerb_mass", &Vehicle::kerbMass),
                                              field("gross_mass_plate", &Vehicle::grossMassPlate),
                                              field("front_axle_plate", &Vehicle::frontAxlePlate),
                                              field("rear_axle_plate", &Vehicle::rearAxlePlate),
                                              field("weighed_on", &Vehicle::weighedOn),
                                              field("weighed_with", &Vehicle::weighedWith),
                                              field("front_left", &Vehicle::frontLeft),
                                              field("front_right", &Vehicle::frontRight),
                                              field("rear_left", &Vehicle::rearLeft),
                                              field("rear_right", &Vehicle::rearRight),
                                              field("structure", &Vehicle::structure),
                                              field("note", &Vehicle::note)};
};

template <>
struct RecordTraits<Seller>
{
    static constexpr const char *table = "seller";
    static constexpr const char *plural = "sellers";
    static constexpr auto fields = std::tuple{field("key", &Seller::key, Presence::Required),
                                              field("name", &Seller::name, Presence::Required),
                                              field("kind", &Seller::kind, Presence::Required),
                                              field("place", &Seller::place),
                                              field("contact", &Seller::contact),
                                              field("note", &Seller::note)};
};

template <>
struct RecordTraits<Donor>
{
    static constexpr const char *table = "donor";
    static constexpr const char *plural = "donors";
    static constexpr auto fields = std::tuple{field("key", &Donor::key, Presence::Required),
                                              field("make", &Donor::make, Presence::Required),
                                              field("model", &Donor::model),
                                              field("year", &Donor::year),
                                              field("vin", &Donor::vin),
                                              field("distance", &Donor::distance),
                                              field("damage", &Donor::damage),
                                              field("proof_of_ownership", &Donor::proofOfOwnership),
                                              field("seller", &Donor::seller),
                                              field("note", &Donor::note)};
};

template <>
struct RecordTraits<PartType>
{
    static constexpr const char *table = "part_type";
    static constexpr const char *plural = "types";
    static constexpr auto fields = std::tuple{field("key", &PartType::key, Presence::Required),
                                              field("make", &PartType::make),
                                              field("part_number", &PartType::partNumber),
                                              field("name", &PartType::name, Presence::Required),
                                              field("kind", &PartType::kind, Presence::Required),
                                              field("note", &PartType::note)};
};

template <>
struct RecordTraits<Circuit>
{
    static constexpr const char *table = "circuit";
    static constexpr const char *plural = "circuits";
    static constexpr auto fields =
        std::tuple{field("key", &Circuit::key, Presence::Required),
                   field("name", &Circuit::name, Presence::Required),
                   field("kind", &Circuit::kind, Presence::Required),
                   field("current", &Circuit::current, Presence::Required),
                   field("nominal_voltage", &Circuit::nominalVoltage),
                   field("worst_voltage", &Circuit::worstVoltage),
                   field("worst_voltage_from", &Circuit::worstVoltageFrom),
                   field("note", &Circuit::note)};
};

template <>
struct RecordTraits<Branch>
{
    static constexpr const char *table = "branch";
    static constexpr const char *plural = "branches";
    static constexpr auto fields =
        std::tuple{field("key", &Branch::key, Presence::Required),
                   field("name", &Branch::name, Presence::Required),
                   field("circuit", &Branch::circuit, Presence::Required),
                   field("from_end", &Branch::from),
                   field("to_end", &Branch::to),
                   field("continuous_current", &Branch::continuousCurrent),
                   field("peak_current", &Branch::peakCurrent),
                   field("fuse", &Branch::fuse),
                   field("fuse_rating", &Branch::fuseRating),
                   field("conductor_size", &Branch::conductorSize),
                   field("conductor_length", &Branch::conductorLength),
                   field("conductor", &Branch::conductor),
                   field("colour", &Branch::colour),
                   field("note", &Branch::note)};
};

template <>
struct RecordTraits<Part>
{
    static constexpr const char *table = "part";
    static constexpr const char *plural = "parts";
    static constexpr auto fields =
        std::tuple{field("key", &Part::key, Presence::Required),
                   field("name", &Part::name, Presence::Required),
                   field("kind", &Part::kind, Presence::Required),
                   field("role", &Part::role),
                   field("state", &Part::state, Presence::Required),
                   field("type", &Part::type),
                   field("part_of", &Part::partOf),
                   field("donor", &Part::donor),
                   field("bought", &Part::bought),
                   field("serial", &Part::serial),
                   field("condition", &Part::condition),
                   field("transport_damage", &Part::transportDamage),
                   field("claim_by", &Part::claimBy),
                   field("accepted_because", &Part::acceptedBecause),
                   field("proof_of_ownership", &Part::proofOfOwnership),
                   field("place", &Part::place),
                   field("warranty_until", &Part::warrantyUntil),
                   field("return_until", &Part::returnUntil),
                   field("warranty_terms", &Part::warrantyTerms),
                   field("opened_on", &Part::openedOn),
                   field("opened_because", &Part::openedBecause),
                   field("reworked_on", &Part::reworkedOn),
                   field("replaced_by", &Part::replacedBy),
                   field("estimate", &Part::estimate),
                   field("lead_days", &Part::leadDays),
                   field("least_lead_days", &Part::leastLeadDays),
                   field("most_lead_days", &Part::mostLeadDays),
                   field("option", &Part::option),
                   field("line", &Part::line),
                   field("stock", &Part::stock),
                   field("least_stock", &Part::leastStock),
                   field("counted_to", &Part::countedTo, Presence::Required),
                   field("note", &Part::note)};
};

template <>
struct RecordTraits<PartMove>
{
    static constexpr const char *table = "part_move";
    static constexpr const char *plural = "moves";
    static constexpr auto owners = std::tuple{owner("part_id", "moves", &PartMove::part)};
    static constexpr auto fields = std::tuple{
        field("from_state", &PartMove::from), field("to_state", &PartMove::to, Presence::Required),
        field("moved_on", &PartMove::on, Presence::Required), field("note", &PartMove::note)};
};

template <>
struct RecordTraits<Connection>
{
    static constexpr const char *table = "connection";
    static constexpr const char *plural = "connections";
    static constexpr auto owners = std::tuple{owner("part_id", "connections", &Connection::part)};
    static constexpr auto fields =
        std::tuple{field("circuit", &Connection::circuit, Presence::Required),
                   field("branch", &Connection::branch)};
};

template <>
struct RecordTraits<Rating>
{
    static constexpr const char *table = "rating";
    static constexpr const char *plural = "ratings";
    static constexpr auto owners = std::tuple{owner("part_id", "ratings", &Rating::part),
                                              owner("type_id", "ratings", &Rating::type)};
    static constexpr auto fields =
        std::tuple{field("quantity", &Rating::quantity, Presence::Required),
                   field("kind", &Rating::kind, Presence::Required),
                   field("basis", &Rating::basis, Presence::Required),
                   field("current", &Rating::current),
                   field("duration", &Rating::duration),
                   field("value", &Rating::value),
                   field("evidence", &Rating::evidence, Presence::Required),
                   field("source", &Rating::source),
                   field("dated", &Rating::on),
                   field("settled", &Rating::settled, Presence::Required),
                   field("note", &Rating::note)};
};

template <>
struct RecordTraits<LostFunction>
{
    static constexpr const char *table = "lost_function";
    static constexpr const char *plural = "lost_functions";
    static constexpr auto fields =
        std::tuple{field("key", &LostFunction::key, Presence::Required),
                   field("name", &LostFunction::name, Presence::Required),
                   field("replaced_by", &LostFunction::replacedBy),
                   field("part", &LostFunction::part),
                   field("settled", &LostFunction::settled, Presence::Required),
                   field("note", &LostFunction::note)};
};

} // namespace ohmwright
