// SPDX-License-Identifier: GPL-3.0-or-later
// Id<Record>: which row of which table. Ids of two tables never convert into each other.
#pragma once

#include <compare>
#include <cstdint>
#include <functional>

namespace ohmwright {

template <class Record>
class Id
{
public:
    constexpr Id() = default; // not yet in the book
    explicit constexpr Id(std::int64_t value) : m_value(value) {}

    [[nodiscard]] constexpr std::int64_t value() const { return m_value; }
    [[nodiscard]] constexpr bool isSet() const { return m_value != 0; }
    constexpr auto operator<=>(const Id &) const = default;

private:
    std::int64_t m_value = 0;
};

} // namespace ohmwright

template <class Record>
struct std::hash<ohmwright::Id<Record>>
{
    std::size_t operator()(ohmwright::Id<Record> id) const noexcept
    {
        return std::hash<std::int64_t>{}(id.value());
    }
};
