// SPDX-License-Identifier: GPL-3.0-or-later
// The engineering records of a book made by chance: figures, curves, thresholds, interfaces, wires,
// safety systems and work permits, all within the rules.
#pragma once

#include "tests/support/generated_values.h"

#include <cstdint>

namespace ohmwright {

class EngineeringMaker
{
public:
    // Parts, circuits, branches, types and tests must be there already. Ids go on from `lastId`.
    EngineeringMaker(Chance &chance, ValueMaker &values, Records &records, std::int64_t &lastId,
                     const BookSize &size)
        : m_chance(chance), m_values(values), m_records(records), m_lastId(lastId), m_size(size)
    {}

    void make();

private:
    template <class R>
    R fresh();
    template <class R>
    R freshKeyed();
    template <class R>
    Id<R> one();
    template <class R>
    std::optional<Id<R>> perhapsOne();

    void makeFigures();
    void makeCurves();
    void makeThresholds();
    void makeInterfaces();
    void makeWires();
    void makeSafety();
    void makePermits();

    Chance &m_chance;
    ValueMaker &m_values;
    Records &m_records;
    std::int64_t &m_lastId;
    const BookSize &m_size;
};

} // namespace ohmwright
