// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/money.h"

#include "core/quantity/invariant.h"
#include "core/quantity/wide.h"

#include <algorithm>
#include <numeric>

namespace ohmwright {

namespace {

constexpr const char *kOneCurrency = "money of two currencies does not mix; a Rate converts it";
constexpr const char *kFits = "a sum of money fits 64 bits";

} // namespace

Money Money::operator+(Money other) const
{
    require(m_currency == other.m_currency, kOneCurrency);
    std::int64_t sum = 0;
    require(!__builtin_add_overflow(m_minor, other.m_minor, &sum), kFits);
    return {sum, m_currency};
}

Money Money::operator-(Money other) const
{
    require(m_currency == other.m_currency, kOneCurrency);
    std::int64_t difference = 0;
    require(!__builtin_sub_overflow(m_minor, other.m_minor, &difference), kFits);
    return {difference, m_currency};
}

Money Money::operator-() const
{
    return zero(m_currency) - *this;
}

Money Money::operator*(std::int64_t count) const
{
    std::int64_t product = 0;
    require(!__builtin_mul_overflow(m_minor, count, &product), kFits);
    return {product, m_currency};
}

bool Money::operator<(Money other) const
{
    require(m_currency == other.m_currency, kOneCurrency);
    return m_minor < other.m_minor;
}

std::vector<Money> shareOut(Money total, std::span<const std::int64_t> weights)
{
    using detail::Wide;
    require(std::all_of(weights.begin(), weights.end(), [](auto w) { return w >= 0; }),
            "no weight of a share is negative");
    std::vector<Wide> parts(weights.begin(), weights.end());
    Wide whole = std::accumulate(parts.begin(), parts.end(), Wide(0));
    if (whole == 0) {
        std::fill(parts.begin(), parts.end(), Wide(1));
        whole = parts.size();
    }

    // 2^63 * 2^63 fits 128 bits, so quotas and remainders are exact
    const Wide amount = detail::magnitude(total.minor());
    std::vector<Wide> shares(parts.size());
    std::vector<Wide> remainders(parts.size());
    Wide left = amount;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        shares[i] = amount * parts[i] / whole;
        remainders[i] = amount * parts[i] % whole;
        left -= shares[i];
    }
    std::vector<std::size_t> order(parts.size());
    std::iota(order.begin(), order.end(), std::size_t(0));
    std::sort(order.begin(), order.end(), [&remainders](std::size_t a, std::size_t b) {
        return remainders[a] != remainders[b] ? remainders[a] > remainders[b] : a < b;
    });
    for (std::size_t i = 0; i < order.size() && left > 0; ++i, --left)
        ++shares[order[i]];

    std::vector<Money> result;
    result.reserve(shares.size());
    for (const Wide share : shares)
        result.emplace_back(detail::signedMinor(share, total.minor() < 0), total.currency());
    return result;
}

} // namespace ohmwright
