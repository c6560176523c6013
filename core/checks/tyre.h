// SPDX-License-Identifier: GPL-3.0-or-later
// What a tyre's marking says: "195/65 R15 91T", "195/70 R15C 104/102R", "P205/55ZR16", "165 R 13".
//
// Overall diameter D = rim + 2·S·aspect (ETRTO; ISO 4000-1). Rolling circumference 3.05·D for
// radials, nominal within about 2 % (ETRTO); a measured one is better. Load-capacity
// indices and speed symbols: UN Regulations 30 and 54, annex 4 and paragraph 2; those that
// were read are named in tests/published/checks/tyre_test.cpp.
#pragma once

#include "core/checks/dimensions.h"
#include "core/quantity/result.h"

#include <QString>
#include <QStringView>

#include <optional>

namespace ohmwright {

enum class TyreBuild { Radial, Diagonal };

struct Tyre
{
    Length width;               // nominal section width
    double aspect = 0;          // section height over width
    bool aspectAssumed = false; // none was marked: taken as a full section
    Length rim;                 // nominal diameter
    TyreBuild build = TyreBuild::Radial;
    bool commercial = false;            // "C", "LT": load index for single and dual fitment
    std::optional<int> loadIndex;       // single fitment
    std::optional<int> loadIndexInDual; // two tyres side by side
    QString speedSymbol;                // may be empty

    [[nodiscard]] Length diameter() const;
    [[nodiscard]] Length rollingCircumference() const;
    [[nodiscard]] Length rollingRadius() const; // of the circumference: for speeds and efforts

    bool operator==(const Tyre &) const = default;
};

// Spaces and capitals do not matter. BadInput for what is no size, or one outside 80 to 400 mm,
// 20 to 100 %, 8 to 30 in; for an index outside 0 to 150; for a symbol nobody defined.
Result<Tyre> parseTyre(QStringView marking);

// What one tyre may carry at that index, 0 to 150; nothing for other indices.
std::optional<Mass> loadOfIndex(int index);
// "T" is 190 km/h. Nothing for a symbol nobody defined; "ZR" in a size says only "over 240".
std::optional<Speed> speedOfSymbol(QStringView symbol);

// Share of its load index that a tyre may carry at a speed: 1 up to 210 km/h (V), 240 (W), 270 (Y),
// falling in a straight line to 0.91 at 240 km/h (V), 0.85 at 270 (W) and 300 (Y); 0 above the
// symbol's speed. Source: UN Regulation 30, maximum load rating, as quoted in the literature.
double loadShareAt(QStringView symbol, Speed speed);

} // namespace ohmwright
