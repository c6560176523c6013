// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/interchange/mutation.h"

#include "core/interchange/nesting.h"

#include <vector>

namespace ohmwright {

using Json = nlohmann::ordered_json;
using Pointer = Json::json_pointer;

namespace {

void collect(const Json &value, const Pointer &at, std::vector<Pointer> &all)
{
    all.push_back(at);
    if (value.is_object())
        for (const auto &[name, member] : value.items())
            collect(member, at / name, all);
    else if (value.is_array())
        for (std::size_t i = 0; i < value.size(); ++i)
            collect(value[i], at / i, all);
}

// Every word of every enum that a record has.
std::vector<std::string> allWords()
{
    std::vector<std::string> words;
    forEachKind([&]<class R>() {
        forEachField<R>([&]<class T>(const Field<R, T> &) {
            if constexpr (WordedEnum<T>)
                words.insert(words.end(), EnumWords<T>::words.begin(), EnumWords<T>::words.end());
        });
    });
    return words;
}

const std::vector<Json> &odds()
{
    static const std::vector<Json> kOdds{nullptr, true,          false,          0, 1.5, "",
                                         "x",     Json::array(), Json::object(), -1};
    return kOdds;
}

const std::vector<Json> &oddNumbers()
{
    static const std::vector<Json> kNumbers{-1,
                                            0,
                                            1,
                                            2,
                                            2.0,
                                            1.5,
                                            100,
                                            101,
                                            168,
                                            169,
                                            1879,
                                            1880,
                                            2199,
                                            2200,
                                            3650,
                                            3651,
                                            1e5,
                                            1e300,
                                            100000,
                                            100001,
                                            600000,
                                            600001,
                                            2147483647,
                                            2147483648LL,
                                            -2147483648LL,
                                            -2147483649LL};
    return kNumbers;
}

using Odds = std::vector<std::string>;

const Odds &oddWords()
{
    static const Odds kTexts{"",
                             " ",
                             "\t\n",
                             "\u00a0\u3000",
                             std::string(1, '\0') + "x",
                             std::string(81, 'a'),
                             std::string(80, 'a'),
                             std::string(20000, 'x'),
                             std::string(20001, 'x'),
                             "Key",
                             "-key",
                             "key\n"};
    return kTexts;
}

const Odds &oddDays()
{
    static const Odds kTexts{
        "2026-02-28", "2026-02-29",  "2024-02-29",   "2026-13-01",          "1899-12-31",
        "1900-01-01", "2199-12-31",  "2200-01-01",   "01.02.2026",          "20260301",
        "2026-3-1",   "2026-03-01 ", "2026-03-01\n", "2026-03-01T00:00:00",
    };
    return kTexts;
}

const Odds &oddMoney()
{
    static const Odds kTexts{
        "1 EUR",
        "1.5 EUR",
        "1.50 EUR",
        "1.501 EUR",
        "1 eur",
        "EUR 1",
        "€1",
        "-1 EUR",
        "-0 EUR",
        "-0.00 EUR",
        "1,50 EUR",
        "1 XXX",
        "1.5 JPY",
        "1 JPY",
        "1.2345 CLF",
        "1.123 KWD",
        "10000000000000.00 EUR",
        "10000000000000.01 EUR",
        "9999999999999.99 EUR",
        "1  EUR",
        "01 EUR",
        "1 EUR\n",
        "EUR",
        "JPY",
        "eur",
    };
    return kTexts;
}

const Odds &oddAmounts()
{
    static const Odds kTexts{
        "5 V",
        "-5 V",
        "-0 V",
        "-0.5 V",
        "0 V",
        "+5 V",
        "5V",
        "5  V",
        " 5 V",
        "5 V ",
        "5 V\n",
        "5 v",
        "5. V",
        ".5 V",
        "05 V",
        "5,5 V",
        "1e3 V",
        "1,250 V",
        "5 mm2",
        "5 mm²",
        "5 kg",
        "-5 kg",
        "5 s",
        "5 min",
        "5 km",
        "-5 km",
        "5 A",
        "-5 A",
        "5 Ohm",
        "5 Ω",
        "5 :1",
        "5 %",
        "5 °C",
        "-273.15 °C",
        "-273.16 °C",
        "-1 K",
        "5",
        "-5",
        "0",
        "2/0 AWG",
        "5/0 AWG",
        "0 AWG",
        "56 AWG",
        "57 AWG",
        "-1 AWG",
        "AWG 10",
        "1000000000000000 V",
        "1000000000000001 V",
        "0." + std::string(399, '0') + "1 V",
        "0." + std::string(400, '0') + "1 V",
        "5 furlong",
        "5 V DC",
    };
    return kTexts;
}

const Odds &oddRates()
{
    static const Odds kTexts{
        "1",
        "1.0842",
        "0.0",
        "000.1",
        "123456789012345",
        "1234567890123456",
        "0.123456789012",
        "0.1234567890123",
        "-1.5",
        "1.5 ",
    };
    return kTexts;
}

// Mostly of the kind that stands there, sometimes of another.
const Odds &oddsLike(const std::string &text, Chance &chance)
{
    const bool number = !text.empty() && text.front() >= '0' && text.front() <= '9';
    const auto space = text.find(' ');
    if (number && !chance.oneIn(4)) {
        if (text.size() == 10 && text[4] == '-')
            return oddDays();
        if (space == std::string::npos)
            return oddRates();
        const bool code = text.size() == space + 4 && text.back() >= 'A' && text.back() <= 'Z';
        return code ? oddMoney() : oddAmounts();
    }
    return *chance.pick(
        std::vector{&oddWords(), &oddDays(), &oddMoney(), &oddAmounts(), &oddRates()});
}

// Fields that only some records have or only some of their kinds may have, with a fitting value.
Json oddMember(std::string &name, const Json &document, Chance &chance)
{
    static const std::vector<std::pair<std::string, Json>> kMembers{
        {"colour_of_money", "x"},
        {"done_on", "2026-01-01"},
        {"asked_on", "2026-01-01"},
        {"fixed_on", "2026-01-01"},
        {"target_on", "2026-01-01"},
        {"met_on", "2026-01-01"},
        {"opened_on", "2026-01-01"},
        {"opened_because", "to look"},
        {"opened_because", " "},
        {"settled", true},
        {"settled", false},
        {"duration", "5 s"},
        {"value", "5 V"},
        {"value", "5 A"},
        {"limit_value", "5 A"},
        {"stock", "5 kg"},
        {"least_stock", "5"},
        {"least_stock", "1 g"},
        {"what", "somebody"},
        {"what", ""},
        {"state", "in hand"},
        {"state", "wanted"},
        {"quantity", "voltage"},
        {"basis", "peak"},
        {"basis", "nominal"},
        {"amount", "5 kg"},
        {"amount", "-5 kg"},
        {"money", "5 EUR"},
        {"sha256", ""},
        {"sha256", "abc"},
        {"sha256", std::string(64, 'a')},
        {"sha256", std::string(64, 'A')},
        {"url", ""},
        {"url", "a:b"},
        {"of_vehicle", true},
        {"milestone", true},
        {"from_state", "wanted"},
        {"from_state", "in hand"},
        {"current", "DC"},
        {"kind", "link"},
        {"kind", "limit"},
        {"kind", "service"},
        {"ratings", Json::array()},
        {"moves", Json::array()},
        {"needs", Json::array()},
        {"items", Json::array()},
        {"position", 3},
        {"id", 3},
    };
    static const std::vector<std::pair<std::string, std::string>> kReferences{
        {"part", "parts"},        {"after", "tasks"},        {"test", "tests"},
        {"letter", "letters"},    {"donor", "donors"},       {"type", "types"},
        {"task", "tasks"},        {"purchase", "purchases"}, {"seller", "sellers"},
        {"part_of", "parts"},     {"replaced_by", "parts"},  {"circuit", "circuits"},
        {"line", "budget_lines"}, {"fuse", "parts"},
    };
    if (chance.oneIn(3)) {
        const auto &[field, array] = chance.pick(kReferences);
        name = field;
        if (document.contains(array) && document[array].is_array() && !document[array].empty())
            return chance.pick(document[array]).value("key", Json("nobody"));
    }
    const auto &[field, value] = chance.pick(kMembers);
    name = field;
    return value;
}

std::string changedText(const std::string &text, Chance &chance)
{
    static const std::vector<std::string> kWords = allWords();
    switch (chance.below(8)) {
    case 0:
        return text + "\n";
    case 1:
        return " " + text;
    case 2:
        return "-" + text;
    case 3:
        return text + text;
    case 4:
        return chance.pick(kWords);
    default:
        return chance.pick(oddsLike(text, chance));
    }
}

void change(Json &value, const Json &document, Chance &chance)
{
    if (value.is_object()) {
        std::string name;
        Json member = oddMember(name, document, chance);
        value[name] = std::move(member);
    } else if (value.is_array()) {
        switch (chance.below(4)) {
        case 0:
            value.push_back(chance.pick(odds()));
            return;
        case 1:
            if (!value.empty())
                value.push_back(value.front());
            return;
        case 2:
            if (!value.empty())
                value.erase(value.size() - 1);
            return;
        default:
            if (!value.empty())
                value.erase(0);
            return;
        }
    } else if (value.is_string()) {
        value = changedText(value.get<std::string>(), chance);
    } else if (value.is_boolean()) {
        value = !value.get<bool>();
    } else {
        value = chance.pick(oddNumbers());
    }
}

} // namespace

Mutation mutate(const Json &valid, Chance &chance)
{
    Mutation made{"", valid};
    Json &document = made.document;
    std::vector<Pointer> all;
    collect(document, Pointer(), all);
    const Pointer at = chance.pick(all);
    if (chance.oneIn(6) && !at.empty()) {
        made.what = "without " + at.to_string();
        Json &holder = document[at.parent_pointer()];
        if (holder.is_object())
            holder.erase(at.back());
        else
            holder.erase(std::stoul(at.back()));
        return made;
    }
    Json &value = document[at];
    const std::string before = value.is_structured() ? "" : value.dump().substr(0, 100);
    if (chance.oneIn(8))
        value = chance.pick(odds());
    else
        change(value, Json(document), chance);
    made.what = at.to_string() + ": " + before + " becomes " + value.dump().substr(0, 300);
    return made;
}

} // namespace ohmwright
