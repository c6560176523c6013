// SPDX-License-Identifier: GPL-3.0-or-later
// derived(): an input of a check that is computed from what a book says. It is as good as the
// weakest figure it comes from; if one of them is not known, that one is what is missing, and is
// named with its own address.
#pragma once

// first: g++ 12 takes its enumerators for shadows of the quantities' types
#include "core/checks/given.h"

#include <algorithm>
#include <array>

namespace ohmwright {

// The enum goes from papers to assumptions, so the later word is the weaker one.
inline Evidence weakerOf(Evidence a, Evidence b)
{
    return std::max(a, b);
}

// `told` brings name, source and, if it can be replaced as a whole, the address; else the address
// is that of the weakest figure: it is what there is to better.
template <class Compute, class... From>
auto derived(Origin told, Compute compute, const Given<From> &...from)
    -> Given<decltype(compute(*from.value...))>
{
    const std::array<const Origin *, sizeof...(From)> origins{&from.origin...};
    const std::array<bool, sizeof...(From)> known{from.value.has_value()...};
    const Origin *weakest = origins[0];
    bool safest = !told.clash || told.safest;
    for (std::size_t i = 0; i < origins.size(); ++i) {
        if (!known[i])
            return {std::nullopt, *origins[i]};
        if (weakest->evidence < origins[i]->evidence)
            weakest = origins[i];
        told.stale = told.stale || origins[i]->stale;
        told.clash = told.clash || origins[i]->clash;
        safest = safest && (!origins[i]->clash || origins[i]->safest);
    }
    told.safest = told.clash && safest;
    told.evidence = weakest->evidence;
    if (told.field.isEmpty())
        told.field = weakest->field;
    return {compute(*from.value...), std::move(told)};
}

inline Origin called(QString name, QString source = {}, QString field = {})
{
    Origin origin;
    origin.name = std::move(name);
    origin.source = std::move(source);
    origin.field = std::move(field);
    return origin;
}

} // namespace ohmwright
