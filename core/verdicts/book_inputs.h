// SPDX-License-Identifier: GPL-3.0-or-later
// BookInputs: what a book says, handed over as inputs of checks: the value, where it comes from,
// and the address under which it can be changed in place.
//
//     const BookInputs in(records, today);
//     inputs.dragCoefficient = in.figure<double>("vehicle.drag_coefficient");
//     inputs.pulseEnergy = in.figure<Energy>("precharge.pulse_energy", resistor);
//     inputs.peakTorque = in.rating<Torque>(motor, {RatedQuantity::Torque, RatingKind::Limit,
//                                                   RatingBasis::Peak});
//     inputs.wheelbase = in.field<Length>(records.vehicle(), &Vehicle::wheelbase, "wheelbase",
//                                         tr("wheelbase"));
//     in.hold(inputs.startGrade);   // the book's own threshold, if it has one
//     const BookInputs other(records, today, Instead{address, 120.0}); // were it 120 there
//
// Nothing is guessed: what the book does not say comes out as not known, under its name.
#pragma once

// first: g++ 12 takes its enumerators for shadows of the quantities' types
#include "core/checks/chosen.h"
#include "core/checks/curve.h"
#include "core/checks/given.h"
#include "core/parts/figures.h"
#include "core/records/check_figures.h"
#include "core/records/records.h"
#include "core/verdicts/input_address.h"

#include <QDate>

#include <any>
#include <cmath>
#include <map>
#include <typeindex>
#include <utility>

namespace ohmwright {

// A value to be read in place of what the book has at an address: to ask what would follow of it
// for one thing.
struct Instead
{
    QString address; // as in Origin::field
    double si = 0;
    QString about; // key of the circuit, branch or part; empty asks of all
};

class BookInputs
{
public:
    BookInputs(const Records &records, QDate today, std::optional<Instead> instead = {});

    [[nodiscard]] const Records &records() const { return m_records; }
    [[nodiscard]] QDate today() const { return m_today; }

    // Judges of many branches or circuits may leave out those nobody asks of.
    [[nodiscard]] bool isAsked(const QString &subject) const
    {
        return !m_instead || m_instead->about.isEmpty() || m_instead->about == subject;
    }

    // A figure of the list in core/records/check_figures.h, of the vehicle, or of a circuit,
    // branch, part (its own before its type's) or test. The name must be in the list, and of that
    // measure (asserted). Named "drag coefficient", or "Resistor 2: pulse energy" where it is of a
    // part.
    template <class Q>
    [[nodiscard]] Given<Q> figure(const char *name) const
    {
        return given<Q>(foundOf(name));
    }
    template <class Q, class R>
    [[nodiscard]] Given<Q> figure(const char *name, const R &of) const
    {
        return given<Q>(foundOf(name, of));
    }
    // What to say for a figure nobody put into the book: an assumption, told as one, that can be
    // replaced in place.
    template <class Q, class... R>
    [[nodiscard]] Given<Q> figureOr(Q assumed, const QString &because, const char *name,
                                    const R &...of) const
    {
        Given<Q> given = figure<Q>(name, of...);
        if (!given.value && !has(name, of...)) {
            given.value = assumed;
            given.origin.evidence = Evidence::Assumed;
            given.origin.source = because;
        }
        return given;
    }
    // A choice, by its word; the enum's words must be the list's.
    template <class E, class... R>
    [[nodiscard]] Chosen<E> choice(const char *name, const R &...of) const
    {
        const Found found = foundOf(name, of...);
        return {found.record ? fromWord<E>(found.record->word) : std::nullopt, found.origin};
    }
    // A choice of "yes" and "no".
    template <class... R>
    [[nodiscard]] std::optional<bool> yesNo(const char *name, const R &...of) const
    {
        const CheckFigure *record = recordOf(name, of...);
        if (!record || record->word.isEmpty())
            return std::nullopt;
        return record->word == QLatin1String("yes");
    }
    // Whether anything is recorded under that name, were it only that it is not known.
    template <class... R>
    [[nodiscard]] bool has(const char *name, const R &...of) const
    {
        return recordOf(name, of...) != nullptr;
    }
    template <class... R>
    [[nodiscard]] Origin originOf(const char *name, const R &...of) const
    {
        return foundOf(name, of...).origin;
    }

    // What several checks ask alike, worked out for the first of them and kept as long as these
    // inputs are.
    template <class Facts, class WorkOut>
    [[nodiscard]] const Facts &once(WorkOut workOut) const
    {
        const auto kept = m_once.find(typeid(Facts));
        return std::any_cast<const Facts &>(
            kept != m_once.end() ? kept->second
                                 : m_once.emplace(typeid(Facts), workOut(*this)).first->second);
    }

    // The figure in force of a part, its clash and staleness told. The SI value is taken.
    template <class Q>
    [[nodiscard]] Given<Q> rating(const Part &part, const FigureName &name) const
    {
        const RatingFound found = foundRating(part, name);
        return read<Q>(found.si, found.origin);
    }
    // One certain rating, where a check wants each of several.
    template <class Q>
    [[nodiscard]] Given<Q> rating(const Part &part, const Rating &one) const
    {
        return read<Q>(siOf(one.value), ratingOrigin(part, one));
    }

    // How long the peak of that rating is allowed.
    [[nodiscard]] Given<Duration> durationOf(const Part &part, const Rating &one,
                                             const QString &name) const;

    // A field of a record. `evidence` is what such a field rests on: the papers for a plate.
    template <class Q, class R>
    [[nodiscard]] Given<Q> field(const R &row, std::optional<Amount> R::*member, const char *column,
                                 const QString &name, Evidence evidence,
                                 const QString &source = {}) const
    {
        Origin origin = fieldOrigin(RecordTraits<R>::table, keyOf(row), column, name);
        origin.evidence = evidence;
        origin.source = source;
        return read<Q>(siOf(row.*member), origin);
    }

    // The curve of a part, its own before its type's; null for none.
    [[nodiscard]] const RatedCurve *curve(const Part &part, CurveKind kind) const;
    template <class X, class Y>
    [[nodiscard]] Curve<X, Y> pointsOf(const RatedCurve &curve) const
    {
        std::vector<std::pair<X, Y>> points;
        for (const CurvePoint &point : m_records.of<CurvePoint>(curve.id))
            points.emplace_back(fromSi<X>(point.along.si()), fromSi<Y>(point.up.si()));
        return Curve<X, Y>(std::move(points));
    }
    // With an address only while there is none: points that are there are changed on their card.
    [[nodiscard]] Origin curveOrigin(const Part &part, CurveKind kind, const QString &name) const;

    // Puts the book's own threshold in, if it has one of that name.
    template <class Q>
    void hold(Threshold<Q> &threshold) const
    {
        const OwnThreshold *own = ownThreshold(threshold.name);
        if (!own)
            return;
        threshold.own = fromSi<Q>(own->value.si());
        threshold.reason = own->reason;
    }

    // "Cabin heater › main relay".
    [[nodiscard]] QString pathOf(const Part &part) const;

private:
    // The same, for an input whose name has the part's already; empty for one that sits in nothing.
    [[nodiscard]] QString withinOf(const Part &part) const;

    struct Found
    {
        const CheckFigure *record = nullptr; // null: nobody recorded anything
        Origin origin;
    };
    struct RatingFound
    {
        std::optional<double> si;
        Origin origin;
    };

    template <class Q>
    static Q fromSi(double si)
    {
        if constexpr (std::is_same_v<Q, double>)
            return si;
        else
            return Q::fromSi(si);
    }
    static std::optional<double> siOf(const std::optional<Amount> &amount)
    {
        return amount ? std::optional(amount->si()) : std::nullopt;
    }
    // What the book says, or what is to be read in its place.
    template <class Q>
    [[nodiscard]] Given<Q> read(std::optional<double> si, const Origin &origin) const
    {
        if (m_instead && m_instead->address == origin.field)
            si = m_instead->si;
        return {si ? std::optional(fromSi<Q>(*si)) : std::nullopt, origin};
    }
    template <class Q>
    [[nodiscard]] Given<Q> given(const Found &found) const
    {
        return read<Q>(found.record ? siOf(found.record->value) : std::nullopt, found.origin);
    }
    template <class R>
    static QString keyOf(const R &row)
    {
        if constexpr (KeyedRecord<R>)
            return row.key;
        else
            return {};
    }

    [[nodiscard]] Found foundOf(const char *name) const
    {
        return found(name, {}, {}, recordOf(name));
    }
    template <class R>
    [[nodiscard]] Found foundOf(const char *name, const R &of) const
    {
        return found(name, RecordTraits<R>::table, keyOf(of), recordOf(name, of));
    }
    [[nodiscard]] Found foundOf(const char *name, const Part &of) const;
    [[nodiscard]] Found found(const char *name, const std::string &table, const QString &key,
                              const CheckFigure *record) const;
    // Null: nobody recorded anything. Of a part its own before its type's.
    [[nodiscard]] const CheckFigure *recordOf(const char *name) const
    {
        return recorded(name, "", 0);
    }
    template <class R>
    [[nodiscard]] const CheckFigure *recordOf(const char *name, const R &of) const
    {
        return recorded(name, RecordTraits<R>::table, of.id.value());
    }
    [[nodiscard]] const CheckFigure *recordOf(const char *name, const Part &of) const;
    [[nodiscard]] const CheckFigure *recorded(const char *name, const char *table,
                                              std::int64_t id) const;
    [[nodiscard]] RatingFound foundRating(const Part &part, const FigureName &name) const;
    [[nodiscard]] Origin ratingOrigin(const Part &part, const Rating &rating) const;
    [[nodiscard]] Origin fieldOrigin(const char *table, const QString &key, const char *column,
                                     const QString &name) const;
    [[nodiscard]] const OwnThreshold *ownThreshold(const QString &name) const;

    const Records &m_records;
    QDate m_today;
    std::optional<Instead> m_instead;
    // (table, id) of what it is of, and which; a book has hundreds, checks ask thousands of times
    using FigureKey = std::tuple<std::int64_t, std::string_view, QString>;
    std::map<FigureKey, const CheckFigure *> m_figures;
    mutable std::map<std::type_index, std::any> m_once;
};

} // namespace ohmwright
