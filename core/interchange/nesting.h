// SPDX-License-Identifier: GPL-3.0-or-later
// Which records are nested in which, worked out from their owners (core/records/field.h).
#pragma once

#include "core/records/records.h"

#include <tuple>
#include <type_traits>

namespace ohmwright {

template <class... R>
struct RecordKinds
{};

// Calls visit.template operator()<R>() for every kind of record, in EachRecord's order.
template <class Visitor>
constexpr void forEachKind(Visitor &&visit)
{
    [&]<class... R>(RecordKinds<R...>) {
        (visit.template operator()<R>(), ...);
    }(EachRecord<RecordKinds>{});
}

// Calls visit.template operator()<Owned>(ownerField) for every kind of record nested in `Owner`.
template <class Owner, class Visitor>
constexpr void forEachNested(Visitor &&visit)
{
    forEachKind([&]<class R>() {
        if constexpr (OwnedRecord<R>) {
            forEachOwner<R>([&]<class O>(const OwnerField<R, O> &o) {
                if constexpr (std::is_same_v<O, Owner>)
                    visit.template operator()<R>(o);
            });
        }
    });
}

template <class T>
inline constexpr bool kIsOptional = false;
template <class T>
inline constexpr bool kIsOptional<std::optional<T>> = true;

// What may be left out: texts that say nothing, and values that are not known.
template <class R, class T>
constexpr bool canBeLeftOut(const Field<R, T> &f)
{
    return f.presence == Presence::Optional && (kIsOptional<T> || std::is_same_v<T, QString>);
}

} // namespace ohmwright
