// SPDX-License-Identifier: GPL-3.0-or-later
// Records: everything a book says, as plain values.
//
// Loaded by Book, kept current after each edit, and read by everything above it. Computations take
// a const Records & and today's date; nothing computes from the database.
#pragma once

#include "core/records/engineering_fields.h"
#include "core/records/ledger_fields.h"
#include "core/records/planning_fields.h"
#include "core/records/table.h"
#include "core/records/trade_fields.h"
#include "core/records/work_fields.h"

#include <tuple>

namespace ohmwright {

// Every record type, once, in an order in which the interchange reads well.
template <template <class...> class To>
using EachRecord =
    To<Build, Vehicle, Seller, Donor, PartType, Circuit, BudgetLine, DayRate, Purchase,
       PurchaseItem, Payment, Part, PartMove, Connection, Rating, Branch, LostFunction, GotBack,
       WorkingTime, SpecialDay, Choice, ChoiceOption, Task, TaskNeed, WorkEntry, Letter, TestRecord,
       TestStep, MassEntry, CheckFigure, RatedCurve, CurvePoint, OwnThreshold, Interface,
       InterfacePin, Wire, SafetySystem, WorkPermit, Attachment>;

// For template instances, which no type list can make: OHMWRIGHT_EACH_RECORD(X) is X(Build)
// X(Vehicle) …
// clang-format off
#define OHMWRIGHT_EACH_RECORD(X)                                                                   \
    X(Build) X(Vehicle) X(Seller) X(Donor) X(PartType) X(Circuit) X(Branch)                        \
    X(Part) X(PartMove) X(Connection) X(Rating) X(LostFunction)                                    \
    X(BudgetLine) X(DayRate) X(Purchase) X(PurchaseItem) X(Payment) X(GotBack)                     \
    X(Task) X(TaskNeed) X(Letter) X(TestRecord) X(TestStep) X(MassEntry) X(Attachment)             \
    X(CheckFigure) X(RatedCurve) X(CurvePoint) X(OwnThreshold)                                     \
    X(Interface) X(InterfacePin) X(Wire) X(SafetySystem) X(WorkPermit)                             \
    X(WorkingTime) X(SpecialDay) X(WorkEntry) X(Choice) X(ChoiceOption)
// clang-format on

class Records
{
public:
    template <class R>
    [[nodiscard]] const Table<R> &all() const
    {
        return std::get<Table<R>>(m_tables);
    }
    template <class R>
    [[nodiscard]] Table<R> &all()
    {
        return std::get<Table<R>>(m_tables);
    }

    template <class R>
    [[nodiscard]] const R *find(Id<R> id) const
    {
        return all<R>().find(id);
    }
    template <class R>
    [[nodiscard]] const R *find(const std::optional<Id<R>> &id) const
    {
        return all<R>().find(id);
    }
    template <class R>
    [[nodiscard]] const R *byKey(const QString &key) const
    {
        return all<R>().byKey(key);
    }
    template <class R, class Owner>
    [[nodiscard]] std::span<const R> of(Id<Owner> owner) const
    {
        return all<R>().of(owner);
    }

    [[nodiscard]] const Build &build() const { return all<Build>().rows().front(); }
    [[nodiscard]] const Vehicle &vehicle() const { return all<Vehicle>().rows().front(); }

    // Calls visit(table) for every kind of record, in EachRecord's order.
    template <class Visitor>
    void forEachTable(Visitor &&visit) const
    {
        std::apply([&](const auto &...table) { (visit(table), ...); }, m_tables);
    }
    template <class Visitor>
    void forEachTable(Visitor &&visit)
    {
        std::apply([&](auto &...table) { (visit(table), ...); }, m_tables);
    }

private:
    template <class... R>
    using Tables = std::tuple<Table<R>...>;
    EachRecord<Tables> m_tables;
};

} // namespace ohmwright
