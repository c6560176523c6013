// SPDX-License-Identifier: GPL-3.0-or-later
// Fuzz target for the reader of quantities: whatever the bytes, reading them gives an amount that
// prints to something that reads back equal, or an error with a sentence. It is built by clang with
// -fsanitize=fuzzer (DEVELOPERS.md) and driven over mutations by fuzz_amount_test.cpp.
#include "core/quantity/amount.h"

#include <QString>

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

using namespace ohmwright;

namespace {

[[noreturn]] void stop(const char *what, const QString &text)
{
    std::fprintf(stderr, "%s: %s\n", what, qUtf8Printable(text));
    std::abort();
}

void checkSentence(const Problem &problem, const QString &text)
{
    if (problem.code != ProblemCode::BadInput || !problem.sentence.endsWith(QLatin1Char('.')) ||
        problem.sentence.size() < 3)
        stop("an error without a sentence", text);
}

void checkAmount(const QString &text, NumberStyle style, std::optional<Measure> expected,
                 std::optional<Unit> unit)
{
    const Result<Amount> amount = parseAmount(text, style, expected, unit);
    if (!amount)
        return checkSentence(amount.error(), text);
    if (!std::isfinite(amount->number()) || !std::isfinite(amount->si()))
        stop("an amount that is no number", text);
    if (expected && amount->measure() != *expected)
        stop("an amount of another measure than asked for", text);
    const QString printed = printAmount(*amount);
    // with the measure that was read: "C" alone is a coulomb
    const Result<Amount> again =
        parseAmount(printed, NumberStyle::pointDecimal(), amount->measure());
    if (!again || *again != *amount)
        stop("an amount that does not read back", text);
    if (showAmount(*amount, style).isEmpty())
        stop("an amount that shows as nothing", text);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size)
{
    constexpr std::size_t kLongest = 4096;
    if (size > kLongest)
        return 0;
    const QString text =
        QString::fromUtf8(reinterpret_cast<const char *>(data), static_cast<qsizetype>(size));
    const AmountWithKind split = splitCurrentKind(text);
    for (const NumberStyle style : {NumberStyle::pointDecimal(), NumberStyle::commaDecimal()}) {
        for (const QString &part : {text, split.amountText}) {
            checkAmount(part, style, std::nullopt, std::nullopt);
            checkAmount(part, style, Measure::Temperature, std::nullopt);
            checkAmount(part, style, Measure::Area, Unit::fromSymbol(u"AWG"));
            checkAmount(part, style, Measure::Power, Unit::fromSymbol(u"kW"));
        }
        if (const Result<double> number = parseNumber(text, style); !number)
            checkSentence(number.error(), text);
    }
    return 0;
}
