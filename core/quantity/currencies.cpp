// SPDX-License-Identifier: GPL-3.0-or-later
// ISO 4217, list one of 2024-06-25: codes with their minor units, and the signs people write.
#include "core/quantity/currency_signs.h"
#include "core/quantity/money.h"

#include <QLatin1String>

#include <algorithm>
#include <iterator>
#include <string_view>

namespace ohmwright {

namespace {

struct Row
{
    char code[4];
    int digits;

    [[nodiscard]] constexpr std::string_view view() const { return code; }
    [[nodiscard]] QLatin1String latin1() const { return QLatin1String(code, 3); }
};

// clang-format off
constexpr Row kRows[] = {
    {"AED", 2}, {"AFN", 2}, {"ALL", 2}, {"AMD", 2}, {"ANG", 2}, {"AOA", 2},
    {"ARS", 2}, {"AUD", 2}, {"AWG", 2}, {"AZN", 2}, {"BAM", 2}, {"BBD", 2},
    {"BDT", 2}, {"BGN", 2}, {"BHD", 3}, {"BIF", 0}, {"BMD", 2}, {"BND", 2},
    {"BOB", 2}, {"BRL", 2}, {"BSD", 2}, {"BTN", 2}, {"BWP", 2}, {"BYN", 2},
    {"BZD", 2}, {"CAD", 2}, {"CDF", 2}, {"CHF", 2}, {"CLF", 4}, {"CLP", 0},
    {"CNY", 2}, {"COP", 2}, {"CRC", 2}, {"CUC", 2}, {"CUP", 2}, {"CVE", 2},
    {"CZK", 2}, {"DJF", 0}, {"DKK", 2}, {"DOP", 2}, {"DZD", 2}, {"EGP", 2},
    {"ERN", 2}, {"ETB", 2}, {"EUR", 2}, {"FJD", 2}, {"FKP", 2}, {"GBP", 2},
    {"GEL", 2}, {"GHS", 2}, {"GIP", 2}, {"GMD", 2}, {"GNF", 0}, {"GTQ", 2},
    {"GYD", 2}, {"HKD", 2}, {"HNL", 2}, {"HTG", 2}, {"HUF", 2}, {"IDR", 2},
    {"ILS", 2}, {"INR", 2}, {"IQD", 3}, {"IRR", 2}, {"ISK", 0}, {"JMD", 2},
    {"JOD", 3}, {"JPY", 0}, {"KES", 2}, {"KGS", 2}, {"KHR", 2}, {"KMF", 0},
    {"KPW", 2}, {"KRW", 0}, {"KWD", 3}, {"KYD", 2}, {"KZT", 2}, {"LAK", 2},
    {"LBP", 2}, {"LKR", 2}, {"LRD", 2}, {"LSL", 2}, {"LYD", 3}, {"MAD", 2},
    {"MDL", 2}, {"MGA", 2}, {"MKD", 2}, {"MMK", 2}, {"MNT", 2}, {"MOP", 2},
    {"MRU", 2}, {"MUR", 2}, {"MVR", 2}, {"MWK", 2}, {"MXN", 2}, {"MYR", 2},
    {"MZN", 2}, {"NAD", 2}, {"NGN", 2}, {"NIO", 2}, {"NOK", 2}, {"NPR", 2},
    {"NZD", 2}, {"OMR", 3}, {"PAB", 2}, {"PEN", 2}, {"PGK", 2}, {"PHP", 2},
    {"PKR", 2}, {"PLN", 2}, {"PYG", 0}, {"QAR", 2}, {"RON", 2}, {"RSD", 2},
    {"RUB", 2}, {"RWF", 0}, {"SAR", 2}, {"SBD", 2}, {"SCR", 2}, {"SDG", 2},
    {"SEK", 2}, {"SGD", 2}, {"SHP", 2}, {"SLE", 2}, {"SOS", 2}, {"SRD", 2},
    {"SSP", 2}, {"STN", 2}, {"SVC", 2}, {"SYP", 2}, {"SZL", 2}, {"THB", 2},
    {"TJS", 2}, {"TMT", 2}, {"TND", 3}, {"TOP", 2}, {"TRY", 2}, {"TTD", 2},
    {"TWD", 2}, {"TZS", 2}, {"UAH", 2}, {"UGX", 0}, {"USD", 2}, {"UYI", 0},
    {"UYU", 2}, {"UYW", 4}, {"UZS", 2}, {"VED", 2}, {"VES", 2}, {"VND", 0},
    {"VUV", 0}, {"WST", 2}, {"XAF", 0}, {"XCD", 2}, {"XOF", 0}, {"XPF", 0},
    {"YER", 2}, {"ZAR", 2}, {"ZMW", 2}, {"ZWG", 2}, {"ZWL", 2},
};
// clang-format on

constexpr std::uint16_t rowOf(std::string_view code)
{
    std::uint16_t row = 0;
    while (kRows[row].view() != code)
        ++row;
    return row;
}

static_assert(std::is_sorted(std::begin(kRows), std::end(kRows),
                             [](const Row &a, const Row &b) { return a.view() < b.view(); }));

struct Sign
{
    const char16_t *text = u""; // case-folded, without a full stop at the end
    const char16_t *codes =
        u""; // that use it, separated by spaces; the first is meant if `firstMeant`
    bool firstMeant = false;
};

// Common practice, no published source. Signs of a single currency are its name; of the shared ones
// only the pound and the won are so mostly one currency's that a bare sign is taken for it.
// clang-format off
constexpr Sign kSigns[] = {
    {u"€", u"EUR", true},
    {u"£", u"GBP EGP FKP GIP LBP SDG SHP SSP SYP", true},
    {u"₩", u"KRW KPW", true},
    {u"$", u"USD AUD BBD BMD BND BSD BZD CAD CLP COP CUP CVE DOP FJD GYD HKD JMD KYD LRD MXN NAD "
           u"NZD SBD SGD SRD TTD TWD UYU XCD ARS"},
    {u"us$", u"USD", true}, {u"a$", u"AUD", true}, {u"au$", u"AUD", true},
    {u"c$", u"CAD NIO"}, {u"ca$", u"CAD", true}, {u"can$", u"CAD", true},
    {u"nz$", u"NZD", true}, {u"hk$", u"HKD", true}, {u"s$", u"SGD", true},
    {u"sg$", u"SGD", true}, {u"nt$", u"TWD", true}, {u"mx$", u"MXN", true}, {u"r$", u"BRL", true},
    {u"kr", u"DKK ISK NOK SEK"}, {u"dkr", u"DKK", true}, {u"nkr", u"NOK", true},
    {u"skr", u"SEK", true}, {u"ikr", u"ISK", true},
    {u"fr", u"CHF BIF CDF DJF GNF KMF RWF XAF XOF XPF"}, {u"sfr", u"CHF", true},
    {u"¥", u"CNY JPY"}, {u"円", u"JPY", true}, {u"元", u"CNY", true},
    {u"zł", u"PLN", true}, {u"kč", u"CZK", true}, {u"ft", u"HUF", true}, {u"lei", u"RON MDL"},
    {u"лв", u"BGN", true}, {u"₴", u"UAH", true}, {u"₽", u"RUB", true}, {u"₺", u"TRY", true},
    {u"₾", u"GEL", true}, {u"₪", u"ILS", true}, {u"₹", u"INR", true},
    {u"₨", u"INR LKR MUR NPR PKR SCR"}, {u"rs", u"INR LKR MUR NPR PKR SCR"},
    {u"₱", u"PHP", true}, {u"₫", u"VND", true}, {u"฿", u"THB", true}, {u"₦", u"NGN", true},
    {u"r", u"ZAR", true}, {u"rm", u"MYR", true}, {u"rp", u"IDR", true},
};
// clang-format on

} // namespace

constinit const std::uint16_t Currency::kEuroRow = rowOf("EUR");

std::optional<Currency> Currency::fromCode(QStringView code)
{
    if (code.size() != 3)
        return std::nullopt;
    const auto found = std::lower_bound(
        std::begin(kRows), std::end(kRows), code,
        [](const Row &row, QStringView wanted) { return row.latin1().compare(wanted) < 0; });
    if (found == std::end(kRows) || code != found->latin1())
        return std::nullopt;
    Currency currency;
    currency.m_row = static_cast<std::uint16_t>(found - std::begin(kRows));
    return currency;
}

std::vector<Currency> Currency::all()
{
    std::vector<Currency> currencies(std::size(kRows));
    for (std::size_t row = 0; row < currencies.size(); ++row)
        currencies[row].m_row = static_cast<std::uint16_t>(row);
    return currencies;
}

QString Currency::code() const
{
    return QString(kRows[m_row].latin1());
}

int Currency::digits() const
{
    return kRows[m_row].digits;
}

std::optional<detail::SignMeaning> detail::currenciesOfSign(QStringView text)
{
    QString key = text.trimmed().toString().toCaseFolded();
    if (key.endsWith(u'.'))
        key.chop(1);
    for (const Sign &sign : kSigns) {
        if (key != QStringView(sign.text))
            continue;
        SignMeaning meaning;
        for (const QStringView code : QStringView(sign.codes).split(u' '))
            meaning.currencies.push_back(Currency::fromCode(code).value());
        meaning.firstIsMeant = sign.firstMeant;
        return meaning;
    }
    return std::nullopt;
}

} // namespace ohmwright
