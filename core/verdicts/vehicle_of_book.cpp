// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/vehicle_of_book.h"

#include "core/quantity/dates.h"
#include "core/verdicts/vehicle_tools.h"

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("VehicleOfBook", text);
}

constexpr FigureName kMassOfPart{RatedQuantity::Mass, RatingKind::Actual, RatingBasis::Nominal, {}};

// Not known while one wheel is not, under that wheel's field.
Given<Mass> axleAsItCame(const BookInputs &in, const QString &name,
                         std::optional<Amount> Vehicle::*left, const char *leftColumn,
                         std::optional<Amount> Vehicle::*right, const char *rightColumn)
{
    const Vehicle &vehicle = in.records().vehicle();
    const QString source = vehicle.weighedOn ? showDate(*vehicle.weighedOn) : QString();
    const auto onWheel = [&](std::optional<Amount> Vehicle::*wheel, const char *column) {
        return in.field<Mass>(vehicle, wheel, column, name, Evidence::Measured, source);
    };
    Given<Mass> axle = onWheel(left, leftColumn);
    const Given<Mass> other = onWheel(right, rightColumn);
    if (!axle.value)
        return axle;
    if (!other.value)
        return other;
    *axle.value += *other.value;
    return axle;
}

MassMove moveOf(MassDirection direction)
{
    switch (direction) {
    case MassDirection::Out:
        return MassMove::Out;
    case MassDirection::In:
        return MassMove::In;
    case MassDirection::Load:
        break;
    }
    return MassMove::Load;
}

MovedMass movedMass(const BookInputs &in, const MassEntry &entry)
{
    MovedMass moved;
    moved.name = entry.name;
    moved.move = moveOf(entry.direction);
    moved.mass = in.field<Mass>(entry, &MassEntry::mass, "mass", tr("mass of %1").arg(entry.name),
                                entry.evidence, entry.note);
    const Part *part = in.records().find(entry.part);
    if (!moved.mass.value && part) {
        const Given<Mass> weighed = in.rating<Mass>(*part, kMassOfPart);
        if (weighed.value)
            moved.mass = weighed;
    }
    moved.place =
        in.field<Length>(entry, &MassEntry::behindFrontAxle, "behind_front_axle",
                         tr("place of %1 behind the front axle").arg(entry.name), entry.evidence);
    moved.height = in.field<Length>(entry, &MassEntry::height, "height",
                                    tr("height of %1").arg(entry.name), entry.evidence);
    return moved;
}

// Told by no mass entry, people and load are asked for as one.
MovedMass loadAsOne(const BookInputs &in)
{
    MovedMass load;
    load.name = tr("people and load");
    load.move = MassMove::Load;
    load.mass = in.figure<Mass>("vehicle.load_mass");
    load.place = in.figure<Length>("vehicle.load_place");
    load.height = in.figure<Length>("vehicle.load_height");
    return load;
}

AxleLoadsInputs::AxleTyres tyresOf(const BookInputs &in, bool rear)
{
    const Vehicle &vehicle = in.records().vehicle();
    AxleLoadsInputs::AxleTyres tyres;
    Origin &origin = tyres.load.origin;
    origin.name = rear ? tr("load index of the rear tyres") : tr("load index of the front tyres");
    origin.field =
        print(FieldAddress{RecordTraits<Vehicle>::table, {}, QStringLiteral("tyre_size")});
    const std::optional<Tyre> tyre = tyreOf(vehicle);
    if (!tyre || !tyre->loadIndex)
        return tyres;
    origin.evidence = Evidence::Nameplate;
    origin.source = tr("marking %1").arg(vehicle.tyreSize);
    tyres.load.value = loadOfIndex(*tyre->loadIndex);
    if (!rear || !tyre->loadIndexInDual)
        return tyres;
    // marked for twins too: whether it has them only a person knows
    constexpr double kTwo = 2;
    tyres.count =
        in.figureOr<double>(kTwo, tr("an axle has two tyres unless told"), "axles.rear_tyres");
    if (tyres.count->value && *tyres.count->value > kTwo)
        tyres.load.value = loadOfIndex(*tyre->loadIndexInDual);
    return tyres;
}

// What rests on several inputs rests on the weakest.
class Basis
{
public:
    template <class Q>
    bool has(const Given<Q> &input)
    {
        m_weakest = std::max(m_weakest, input.origin.evidence); // in order of trust
        m_stale = m_stale || input.origin.stale;
        return input.value.has_value();
    }
    template <class Q>
    Given<Q> given(Q value, const Origin &as) const
    {
        Given<Q> made{value, as};
        made.origin.evidence = m_weakest;
        made.origin.stale = m_stale;
        made.origin.source = tr("worked out from the masses of the book");
        return made;
    }

private:
    Evidence m_weakest = Evidence::Measured;
    bool m_stale = false;
};

struct Driven
{
    std::optional<AxleMasses> axles;
    std::optional<Length> height;
    Basis basis;
};

Driven workedOut(const AxleLoadsInputs &axles)
{
    Driven driven;
    const bool weighed = axles.frontWeighed && axles.rearWeighed;
    const Given<Mass> &front = weighed ? *axles.frontWeighed : axles.frontBefore;
    const Given<Mass> &rear = weighed ? *axles.rearWeighed : axles.rearBefore;
    Basis &basis = driven.basis;
    if (!basis.has(front) || !basis.has(rear) || !basis.has(axles.wheelbase))
        return driven;
    AxleMasses now{*front.value, *rear.value};
    const auto height = axles.heightAfter ? axles.heightAfter
                        : weighed         ? std::nullopt
                                          : axles.heightBefore;
    bool heightKnown = height && basis.has(*height);
    auto moment = now.total() * (heightKnown ? *height->value : Length());
    for (const MovedMass &moved : axles.moved) {
        if (weighed && moved.move != MassMove::Load)
            continue;
        if (!basis.has(moved.mass) || !basis.has(moved.place))
            return driven;
        const Mass mass = moved.move == MassMove::Out ? -*moved.mass.value : *moved.mass.value;
        now = withMass(now, mass, *moved.place.value, *axles.wheelbase.value);
        heightKnown = heightKnown && moved.height && basis.has(*moved.height);
        if (heightKnown)
            moment += mass * *moved.height->value;
    }
    driven.axles = now;
    if (heightKnown && now.total().si() > 0)
        driven.height = moment / now.total();
    return driven;
}

} // namespace

std::optional<Tyre> tyreOf(const Vehicle &vehicle)
{
    const Result<Tyre> tyre = parseTyre(vehicle.tyreSize);
    return tyre ? std::optional(*tyre) : std::nullopt;
}

AxleLoadsInputs axleLoadsInputs(const BookInputs &in)
{
    const Vehicle &vehicle = in.records().vehicle();
    AxleLoadsInputs axles;
    axles.wheelbase = in.field<Length>(vehicle, &Vehicle::wheelbase, "wheelbase", tr("wheelbase"),
                                       Evidence::Datasheet, tr("vehicle's papers"));
    axles.frontBefore = axleAsItCame(in, tr("front axle as it came"), &Vehicle::frontLeft,
                                     "front_left", &Vehicle::frontRight, "front_right");
    axles.rearBefore = axleAsItCame(in, tr("rear axle as it came"), &Vehicle::rearLeft, "rear_left",
                                    &Vehicle::rearRight, "rear_right");
    bool loaded = false;
    for (const MassEntry &entry : in.records().all<MassEntry>()) {
        axles.moved.push_back(movedMass(in, entry));
        loaded = loaded || entry.direction == MassDirection::Load;
    }
    if (!loaded)
        axles.moved.push_back(loadAsOne(in));
    if (in.has("axles.front_after") || in.has("axles.rear_after")) {
        axles.frontWeighed = in.figure<Mass>("axles.front_after");
        axles.rearWeighed = in.figure<Mass>("axles.rear_after");
    }
    const auto plate = [&](std::optional<Amount> Vehicle::*member, const char *column,
                           const QString &name) {
        return in.field<Mass>(vehicle, member, column, name, Evidence::Nameplate);
    };
    axles.frontPlate = plate(&Vehicle::frontAxlePlate, "front_axle_plate",
                             tr("permitted mass of the front axle, plate"));
    axles.rearPlate = plate(&Vehicle::rearAxlePlate, "rear_axle_plate",
                            tr("permitted mass of the rear axle, plate"));
    axles.grossPlate =
        plate(&Vehicle::grossMassPlate, "gross_mass_plate", tr("permitted laden mass, plate"));
    axles.frontTyres = tyresOf(in, false);
    axles.rearTyres = tyresOf(in, true);
    axles.heightBefore = figureIfAny<Length>(in, "axles.height_before");
    axles.heightAfter = figureIfAny<Length>(in, "axles.height_after");
    return axles;
}

DrivenVehicle drivenVehicle(const BookInputs &in)
{
    DrivenVehicle driven{in.figure<Mass>("vehicle.driven_mass"),
                         in.figure<Mass>("vehicle.driven_front_axle"),
                         in.figure<Length>("vehicle.driven_height")};
    const Driven worked = workedOut(axleLoadsInputs(in));
    const bool massToldApart = in.has("vehicle.driven_mass");
    if (worked.axles && !massToldApart)
        driven.mass = worked.basis.given(worked.axles->total(), driven.mass.origin);
    // beside a mass that is not the sum of the masses their axle load would not be its share
    if (worked.axles && !massToldApart && !in.has("vehicle.driven_front_axle"))
        driven.frontAxle = worked.basis.given(worked.axles->front, driven.frontAxle.origin);
    if (worked.height && !in.has("vehicle.driven_height"))
        driven.height = worked.basis.given(*worked.height, driven.height.origin);
    return driven;
}

} // namespace ohmwright
