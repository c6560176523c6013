// SPDX-License-Identifier: GPL-3.0-or-later
// Chance that is the same on every machine: the standard fixes its generators, not its
// distributions.
#pragma once

#include <cstdint>
#include <random>

namespace ohmwright {

class Chance
{
public:
    explicit Chance(std::uint32_t seed) : m_generator(seed) {}

    // 0 to n-1; n at least 1. The bias of % does not matter to tests.
    int below(int n) { return static_cast<int>(m_generator() % static_cast<std::uint32_t>(n)); }
    int between(int least, int most) { return least + below(most - least + 1); }
    bool oneIn(int n) { return below(n) == 0; }
    std::int64_t belowLong(std::int64_t n)
    {
        const std::uint64_t wide = (std::uint64_t{m_generator()} << 32) | m_generator();
        return static_cast<std::int64_t>(wide % static_cast<std::uint64_t>(n));
    }
    template <class Container>
    const auto &pick(const Container &from)
    {
        return *(from.begin() + below(static_cast<int>(from.size())));
    }

private:
    std::mt19937 m_generator;
};

} // namespace ohmwright
