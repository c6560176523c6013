// SPDX-License-Identifier: GPL-3.0-or-later
// Ledger records: the build and its vehicle, parts, where they came from, what they are rated for.
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/money.h"
#include "core/records/field.h"
#include "core/records/id.h"

#include <QDate>
#include <QString>

#include <optional>

namespace ohmwright {

struct BudgetLine;
struct ChoiceOption;
struct PurchaseItem;

struct Build
{
    Id<Build> id;
    QString title;
    Currency currency;                    // the book's own; every sum is told in it
    int hoursPerWeek = 6;                 // 1 to 168
    int contingencyPercent = 10;          // of the allowances, 0 to 100
    QString place;                        // jurisdiction: whose rules and inspector
    std::optional<int> confidencePercent; // at which dates are told, 50 to 99; 80 when not said
    std::optional<Money> saved;           // what lies ready on `savedOn`, in the book's currency
    std::optional<QDate> savedOn;
    std::optional<Money> setAside; // every month from then on
    QString note;
    bool operator==(const Build &) const = default;
};

// The base vehicle as it came (before anything was taken off: it can never be weighed again).
struct Vehicle
{
    Id<Vehicle> id;
    QString make, model, body, vin, registration;
    std::optional<int> year;
    std::optional<QDate> firstRegistered;
    QString engine, fuel, gearbox, tyreSize, brakes;
    std::optional<Amount> odometer, wheelbase;
    std::optional<Amount> kerbMass, grossMassPlate, frontAxlePlate, rearAxlePlate;
    std::optional<QDate> weighedOn;
    QString weighedWith; // fuel level, load, who sat in it, which scales
    std::optional<Amount> frontLeft, frontRight, rearLeft, rearRight; // corner weights
    QString structure; // rust, repairs, mounting points, as found
    QString note;
    bool operator==(const Vehicle &) const = default;
};

enum class SellerKind { Dismantler, Auction, Private, Dealer, Distributor, Workshop };
template <>
struct EnumWords<SellerKind>
{
    static constexpr std::array words{"dismantler", "auction",     "private",
                                      "dealer",     "distributor", "workshop"};
};

struct Seller
{
    Id<Seller> id;
    QString key, name;
    SellerKind kind = SellerKind::Private;
    QString place, contact, note;
    bool operator==(const Seller &) const = default;
};

struct Donor
{
    Id<Donor> id;
    QString key, make, model;
    std::optional<int> year;
    QString vin;
    std::optional<Amount> distance;
    QString damage, proofOfOwnership;
    std::optional<Id<Seller>> seller;
    QString note;
    bool operator==(const Donor &) const = default;
};

enum class PartKind { Unit, Module, Hardware, Tool, Consumable, Service };
template <>
struct EnumWords<PartKind>
{
    static constexpr std::array words{"unit", "module",     "hardware",
                                      "tool", "consumable", "service"};
};

struct PartType
{
    Id<PartType> id;
    QString key, make, partNumber, name;
    PartKind kind = PartKind::Unit;
    QString note;
    bool operator==(const PartType &) const = default;
};

enum class CircuitKind { Traction, Phases, ChargeInlet, LowVoltage, Other };
template <>
struct EnumWords<CircuitKind>
{
    static constexpr std::array words{"traction", "phases", "charge inlet", "low voltage", "other"};
};

template <>
struct EnumWords<CurrentKind>
{
    static constexpr std::array words{"DC", "AC"};
};

// What shares a voltage.
struct Circuit
{
    Id<Circuit> id;
    QString key, name;
    CircuitKind kind = CircuitKind::Traction;
    CurrentKind current = CurrentKind::Dc;
    std::optional<Amount> nominalVoltage, worstVoltage;
    QString worstVoltageFrom; // "pack at full charge, 108 × 4.2 V"
    QString note;
    bool operator==(const Circuit &) const = default;
};

struct Part;

// What shares a current and the fuse within it, with its conductor as entered.
struct Branch
{
    Id<Branch> id;
    QString key, name;
    Id<Circuit> circuit;
    QString from, to;
    std::optional<Amount> continuousCurrent, peakCurrent;
    std::optional<Id<Part>> fuse;
    std::optional<Amount> fuseRating, conductorSize, conductorLength;
    QString conductor; // material, class, insulation: "copper, class 5, cross-linked, 125 °C"
    QString colour, note;
    bool operator==(const Branch &) const = default;
};

enum class PartState {
    Wanted,
    Ordered,
    InHand,
    Tested,
    Fitted,
    Returned,
    Sold,
    Scrapped,
    Quarantined,
};
template <>
struct EnumWords<PartState>
{
    static constexpr std::array words{"wanted",   "ordered", "in hand",  "tested",     "fitted",
                                      "returned", "sold",    "scrapped", "quarantined"};
};

// What a part does, as far as checks and diagram must know.
enum class PartRole {
    Motor,
    Inverter,
    Gearbox,
    Charger,
    Converter,
    Contactor,
    PrechargeResistor,
    DischargeResistor,
    Fuse,
    Disconnect,
    Heater,
    Compressor,
    Pump,
    Radiator,
    BatteryMonitor,
    AuxiliaryBattery,
    ChargeInlet,
    BatteryBox,
    Coupling,
    Bay,
};
template <>
struct EnumWords<PartRole>
{
    static constexpr std::array words{"motor",
                                      "inverter",
                                      "gearbox",
                                      "charger",
                                      "DC-DC converter",
                                      "contactor",
                                      "precharge resistor",
                                      "discharge resistor",
                                      "fuse",
                                      "disconnect",
                                      "heater",
                                      "compressor",
                                      "pump",
                                      "radiator",
                                      "battery monitor",
                                      "auxiliary battery",
                                      "charge inlet",
                                      "battery box",
                                      "coupling",
                                      "bay"};
};

enum class CountedTo { Build, Shop };
template <>
struct EnumWords<CountedTo>
{
    static constexpr std::array words{"build", "shop"};
};

struct Part
{
    Id<Part> id;
    QString key, name;
    PartKind kind = PartKind::Unit;
    std::optional<PartRole> role;
    PartState state = PartState::Wanted; // the last move's; verify() holds the two together
    std::optional<Id<PartType>> type;
    std::optional<Id<Part>> partOf; // the assembly it sits in, to any depth
    std::optional<Id<Donor>> donor;
    std::optional<Id<PurchaseItem>> bought;
    QString serial;
    QString condition; // on arrival
    QString transportDamage;
    std::optional<QDate> claimBy; // last day to claim from the carrier
    QString acceptedBecause;      // "accepted as is, because …"
    QString proofOfOwnership;
    QString place; // shelf, box
    std::optional<QDate> warrantyUntil, returnUntil;
    QString warrantyTerms;
    std::optional<QDate> openedOn; // opening may end a warranty: recorded with its reason
    QString openedBecause;
    std::optional<QDate> reworkedOn; // evidence older than this is stale
    std::optional<Id<Part>> replacedBy;
    std::optional<Money> estimate; // what it is expected to cost while not bought
    std::optional<int> leadDays;   // from order to arrival, the likely, 0 to 3650
    std::optional<int> leastLeadDays, mostLeadDays;
    std::optional<Id<ChoiceOption>> option; // counts only with this option of a choice
    std::optional<Id<BudgetLine>> line;
    std::optional<Amount> stock, leastStock;
    CountedTo countedTo = CountedTo::Build;
    QString note;
    bool operator==(const Part &) const = default;
};

// One dated step of a part's life. The first has no `from`.
struct PartMove
{
    Id<PartMove> id;
    Id<Part> part;
    int position = 0;
    std::optional<PartState> from;
    PartState to = PartState::Wanted;
    QDate on;
    QString note;
    bool operator==(const PartMove &) const = default;
};

// A part connected to a circuit, in one of its branches if that is known.
struct Connection
{
    Id<Connection> id;
    Id<Part> part;
    int position = 0;
    Id<Circuit> circuit;
    std::optional<Id<Branch>> branch;
    bool operator==(const Connection &) const = default;
};

enum class RatedQuantity {
    Voltage,
    Current,
    Power,
    Energy,
    Capacity,
    InternalResistance,
    Capacitance,
    IsolationResistance,
    BreakingCapacity,
    CrossSection,
    Torque,
    RotationSpeed,
    Temperature,
    Pressure,
    Flow,
    Mass,
    Length,
    Width,
    Height,
    CellsInSeries,
    Ratio,
    Frequency,
};
template <>
struct EnumWords<RatedQuantity>
{
    static constexpr std::array words{"voltage",
                                      "current",
                                      "power",
                                      "energy",
                                      "capacity",
                                      "resistance",
                                      "capacitance",
                                      "isolation resistance",
                                      "breaking capacity",
                                      "cross-section",
                                      "torque",
                                      "rotation speed",
                                      "temperature",
                                      "pressure",
                                      "flow",
                                      "mass",
                                      "length",
                                      "width",
                                      "height",
                                      "cells in series",
                                      "ratio",
                                      "frequency"};
};

// What the quantity is measured in: a breaking capacity is a current, cells in series are counted.
Measure measureOf(RatedQuantity quantity);

// limit: what it withstands. actual: what it is.
enum class RatingKind { Limit, Actual };
template <>
struct EnumWords<RatingKind>
{
    static constexpr std::array words{"limit", "actual"};
};

// Which figure of the quantity: of limits the highest for good, the highest for `duration`, the
// lowest (a window's lower end); of actual values the nominal one.
enum class RatingBasis { Continuous, Peak, Least, Nominal };
template <>
struct EnumWords<RatingBasis>
{
    static constexpr std::array words{"continuous", "peak", "least", "nominal"};
};

enum class Evidence { Datasheet, Nameplate, ServiceManual, Measured, Seller, Community, Assumed };
template <>
struct EnumWords<Evidence>
{
    static constexpr std::array words{"datasheet", "nameplate", "service manual", "measured",
                                      "seller",    "community", "assumed"};
};

struct Rating
{
    Id<Rating> id;
    Id<Part> part; // exactly one of part and type is set
    Id<PartType> type;
    int position = 0;
    RatedQuantity quantity = RatedQuantity::Voltage;
    RatingKind kind = RatingKind::Limit;
    RatingBasis basis = RatingBasis::Continuous;
    std::optional<CurrentKind> current; // voltages and currents: DC and AC limits never mix
    std::optional<Amount> duration;     // of a peak
    std::optional<Amount> value;        // none: looked for and not known
    Evidence evidence = Evidence::Assumed;
    QString source;          // document and page, instrument, who said so
    std::optional<QDate> on; // when read or measured
    bool settled = false;    // this one stands, of clashing ones
    QString note;            // why settled, why unknown
    bool operator==(const Rating &) const = default;
};

// What goes with the engine, and what replaces it.
struct LostFunction
{
    Id<LostFunction> id;
    QString key, name, replacedBy;
    std::optional<Id<Part>> part;
    bool settled = false;
    QString note;
    bool operator==(const LostFunction &) const = default;
};

} // namespace ohmwright
