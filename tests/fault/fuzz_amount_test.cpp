// SPDX-License-Identifier: GPL-3.0-or-later
// The fuzz target of the reader of quantities, over seeds and some thousand mutations of them that
// are the same on every machine.
#include "tests/support/chance.h"

#include <QByteArray>
#include <QList>

#include <gtest/gtest.h>

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size);

namespace ohmwright {

namespace {

const QList<QByteArray> kSeeds{
    "35mm²",
    "2/0 AWG",
    "AWG 10",
    "1.250,5 W",
    "12 V DC",
    "1,250.5 W",
    "1 250,5 kW",
    "1'250.5 W",
    "230 V~",
    "30 V AC rms",
    "-40 °C",
    "−40 ℃",
    "1.2e-6 F",
    "3,3 kΩ",
    "0.125",
    "400",
    "1.250",
    "5' ",
    "6000 1/min",
    "50 lbf·ft",
    "1\xE2\x80\xAF"
    "250 A",
    "500 MΩ",
    "0,2 J",
    "100 %",
    "4.1:1",
    "9.81 m/s²",
    "0.3 kW/K",
    "1000000000000000 V",
    "1e999 V",
    "C",
    "",
    "AC 230 V DC",
    "\xFF\xFE V",
    "12 furlong",
};
const QByteArray kSpice = "0123456789.,'+-eE/ ~%°²µΩVAWGDCmk\xC2\xA0\xE2\x88\x92\xF0\x9F\x98\x80";

void feed(const QByteArray &bytes)
{
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t *>(bytes.constData()),
                           static_cast<std::size_t>(bytes.size()));
}

QByteArray mutated(Chance &chance)
{
    QByteArray bytes = chance.pick(kSeeds);
    for (int times = chance.between(1, 5); times > 0; --times) {
        const int at = chance.below(static_cast<int>(bytes.size()) + 1);
        const char spice = kSpice[chance.below(static_cast<int>(kSpice.size()))];
        switch (chance.below(6)) {
        case 0: // flips bits, also into broken UTF-8
            if (at < bytes.size())
                bytes[at] = static_cast<char>(bytes[at] ^ (1 << chance.below(8)));
            break;
        case 1:
            bytes.insert(at, spice);
            break;
        case 2:
            bytes.remove(at, chance.between(1, 3));
            break;
        case 3:
            if (at < bytes.size())
                bytes[at] = spice;
            break;
        case 4: // two seeds grown together
            bytes = bytes.left(at) + chance.pick(kSeeds).mid(chance.below(4));
            break;
        default: // a piece over and over
            bytes.insert(at, bytes.mid(at, 4).repeated(chance.between(1, 40)));
            break;
        }
    }
    return bytes;
}

} // namespace

// The target aborts on what it does not accept, and prints the text.
TEST(FuzzAmount, TakesEverySeed)
{
    for (const QByteArray &seed : kSeeds)
        feed(seed);
}

TEST(FuzzAmount, TakesThousandsOfMutations)
{
    Chance chance(2024);
    for (int i = 0; i < 8000; ++i)
        feed(mutated(chance));
}

} // namespace ohmwright
