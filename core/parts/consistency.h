// SPDX-License-Identifier: GPL-3.0-or-later
// What several records must hold together: moves that end in the part's state, no loops of
// assemblies or of tasks, needs that fit what they name, purchases in one currency, a book in its
// own. What one record holds in itself is in core/records/rules.h.
#pragma once

#include "core/records/records.h"

#include <QString>

#include <string>
#include <vector>

namespace ohmwright {

struct Inconsistency
{
    std::string table; // of the record at fault
    std::int64_t id = 0;
    std::string field; // as in the field list; may be empty
    QString sentence;

    bool operator==(const Inconsistency &) const = default;
};

// All of them, by table in EachRecord's order, then by the tables' reading order. References are
// taken to be whole: the book's foreign keys and the loader see to that.
std::vector<Inconsistency> findInconsistencies(const Records &records);

// What a purchase comes to at most, or what was paid if that is more, in the book's currency; none
// where it is more than a book counts: 10^15 minor units of either currency.
std::optional<Money> countable(const Records &records, const Purchase &purchase);

} // namespace ohmwright
