// SPDX-License-Identifier: GPL-3.0-or-later
// How a record describes itself: one list of (name, member) for each record type.
//
// The book's rows, the interchange JSON, its schema and the generated books of the property tests
// all walk the same list, so a field exists everywhere or nowhere. To add one: a member in the
// struct, a line in its list, a migration for the column.
//
//     template <> struct RecordTraits<Seller> {
//         static constexpr const char *table = "seller";      // table in the book
//         static constexpr const char *plural = "sellers";    // array in the interchange
//         static constexpr auto fields = std::tuple{field("key", &Seller::key, Presence::Required),
//         …};
//     };
//
// Three shapes of record: keyed ones stand in an array of their own and are referred to by key;
// owned ones (with `owners`) are nested in their owner, in order of `position`; the two singles
// (`single = true`) are there exactly once.
#pragma once

#include "core/records/id.h"

#include <QString>

#include <array>
#include <cstddef>
#include <optional>
#include <tuple>
#include <type_traits>

namespace ohmwright {

enum class Presence { Required, Optional };

template <class R, class T>
struct Field
{
    const char *name;
    T R::*member;
    Presence presence;
};

template <class R, class T>
constexpr Field<R, T> field(const char *name, T R::*member, Presence presence = Presence::Optional)
{
    return {name, member, presence};
}

// An owned record names the member that holds its owner and the array it is nested in there.
template <class R, class Owner>
struct OwnerField
{
    const char *column;
    const char *array;
    Id<Owner> R::*member;
};

template <class R, class Owner>
constexpr OwnerField<R, Owner> owner(const char *column, const char *array, Id<Owner> R::*member)
{
    return {column, array, member};
}

template <class R>
struct RecordTraits;

template <class R>
concept OwnedRecord = requires
{
    RecordTraits<R>::owners;
};
template <class R>
concept SingleRecord = requires
{
    RecordTraits<R>::single;
};
template <class R>
concept KeyedRecord = requires(R r)
{
    r.key;
};

template <class R, class Visitor>
constexpr void forEachField(Visitor &&visit)
{
    std::apply([&](const auto &...f) { (visit(f), ...); }, RecordTraits<R>::fields);
}

template <OwnedRecord R, class Visitor>
constexpr void forEachOwner(Visitor &&visit)
{
    std::apply([&](const auto &...f) { (visit(f), ...); }, RecordTraits<R>::owners);
}

// Words of an enum, in the order of its values; the same words in the book, the interchange and
// the commands.
template <class E>
struct EnumWords;

template <class E>
concept WordedEnum = std::is_enum_v<E> && requires
{
    EnumWords<E>::words;
};

template <WordedEnum E>
QString wordOf(E value)
{
    return QString::fromLatin1(EnumWords<E>::words.at(static_cast<std::size_t>(value)));
}

template <WordedEnum E>
std::optional<E> fromWord(QStringView word)
{
    for (std::size_t i = 0; i < EnumWords<E>::words.size(); ++i)
        if (word == QLatin1String(EnumWords<E>::words[i]))
            return static_cast<E>(i);
    return std::nullopt;
}

} // namespace ohmwright
