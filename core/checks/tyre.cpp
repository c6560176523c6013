// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/tyre.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <array>
#include <iterator>
#include <numbers>

namespace ohmwright {

namespace {

constexpr double kInch = 0.0254;
constexpr double kKmh = 1 / 3.6;
constexpr double kRadialRolling = 3.05;
constexpr double kDiagonalRolling = 2.99; // ETRTO
constexpr double kFullSection = 0.82;     // common practice, no published source

QString tr(const char *text)
{
    return QCoreApplication::translate("Tyre", text);
}

// kg at load-capacity index 0, 1, 2 …
// clang-format off
constexpr std::array kLoads{
    45.0, 46.2, 47.5, 48.7, 50.0, 51.5, 53.0, 54.5, 56.0, 58.0,
    60.0, 61.5, 63.0, 65.0, 67.0, 69.0, 71.0, 73.0, 75.0, 77.5,
    80.0, 82.5, 85.0, 87.5, 90.0, 92.5, 95.0, 97.5, 100.0, 103.0,
    106.0, 109.0, 112.0, 115.0, 118.0, 121.0, 125.0, 128.0, 132.0, 136.0,
    140.0, 145.0, 150.0, 155.0, 160.0, 165.0, 170.0, 175.0, 180.0, 185.0,
    190.0, 195.0, 200.0, 206.0, 212.0, 218.0, 224.0, 230.0, 236.0, 243.0,
    250.0, 257.0, 265.0, 272.0, 280.0, 290.0, 300.0, 307.0, 315.0, 325.0,
    335.0, 345.0, 355.0, 365.0, 375.0, 387.0, 400.0, 412.0, 425.0, 437.0,
    450.0, 462.0, 475.0, 487.0, 500.0, 515.0, 530.0, 545.0, 560.0, 580.0,
    600.0, 615.0, 630.0, 650.0, 670.0, 690.0, 710.0, 730.0, 750.0, 775.0,
    800.0, 825.0, 850.0, 875.0, 900.0, 925.0, 950.0, 975.0, 1000.0, 1030.0,
    1060.0, 1090.0, 1120.0, 1150.0, 1180.0, 1215.0, 1250.0, 1285.0, 1320.0, 1360.0,
    1400.0, 1450.0, 1500.0, 1550.0, 1600.0, 1650.0, 1700.0, 1750.0, 1800.0, 1850.0,
    1900.0, 1950.0, 2000.0, 2060.0, 2120.0, 2180.0, 2240.0, 2300.0, 2360.0, 2430.0,
    2500.0, 2575.0, 2650.0, 2725.0, 2800.0, 2900.0, 3000.0, 3075.0, 3150.0, 3250.0,
    3350.0,
};

struct SpeedRow
{
    char16_t symbol;
    int kmh;
};
constexpr SpeedRow kSpeeds[] = {
    {u'F', 80},  {u'G', 90},  {u'J', 100}, {u'K', 110}, {u'L', 120}, {u'M', 130}, {u'N', 140},
    {u'P', 150}, {u'Q', 160}, {u'R', 170}, {u'S', 180}, {u'T', 190}, {u'U', 200}, {u'H', 210},
    {u'V', 240}, {u'W', 270}, {u'Y', 300},
};
// clang-format on

Problem badTyre(QString sentence)
{
    Problem problem;
    problem.code = ProblemCode::BadInput;
    problem.sentence = std::move(sentence);
    problem.whatToDo = tr("Copy it from the sidewall, as in \"195/65 R15 91T\".");
    return problem;
}

const QRegularExpression &pattern()
{
    // 195 / 65 R 15 C  104 / 102  R; letters in the size as found on tyres of all ages
    static const QRegularExpression kPattern(QStringLiteral(
        "^(P|LT)?(\\d{2,3})(?:/(\\d{2,3}))?(SR|HR|VR|ZR|R|-|D|B)(\\d{1,2}(?:\\.5)?)(C|LT)?"
        "(?:(\\d{1,3})(?:/"
        "(\\d{1,3}))?([A-Z])|\\((\\d{1,3})([A-Z])\\))?(?:XL|RF|REINFORCED|TL|M\\+S)*$"));
    return kPattern;
}

} // namespace

Length Tyre::diameter() const
{
    return rim + 2 * (width * aspect);
}

Length Tyre::rollingCircumference() const
{
    return diameter() * (build == TyreBuild::Radial ? kRadialRolling : kDiagonalRolling);
}

Length Tyre::rollingRadius() const
{
    return rollingCircumference() / (2 * std::numbers::pi);
}

Result<Tyre> parseTyre(QStringView marking)
{
    constexpr qsizetype kLongest = 60;
    QString text = marking.size() > kLongest ? QString() : marking.toString().toUpper();
    text.remove(QLatin1Char(' ')).remove(QChar(0x00A0));
    const QRegularExpressionMatch match = pattern().match(text);
    if (!match.hasMatch())
        return tl::unexpected(badTyre(tr("This is no tyre size.")));

    Tyre tyre;
    const double width = match.captured(2).toDouble();
    const double rim = match.captured(5).toDouble();
    tyre.aspectAssumed = match.captured(3).isEmpty();
    tyre.aspect = tyre.aspectAssumed ? kFullSection : match.captured(3).toDouble() / 100;
    if (width < 80 || width > 400)
        return tl::unexpected(badTyre(tr("A tyre is 80 to 400 mm wide.")));
    if (tyre.aspect < 0.2 || tyre.aspect > 1)
        return tl::unexpected(badTyre(tr("A tyre's section is 20 to 100 % as high as wide.")));
    if (rim < 8 || rim > 30)
        return tl::unexpected(badTyre(tr("A rim is 8 to 30 inches across.")));
    tyre.width = metres(width * 1e-3);
    tyre.rim = metres(rim * kInch);
    const QString build = match.captured(4);
    tyre.build = build.endsWith(QLatin1Char('R')) ? TyreBuild::Radial : TyreBuild::Diagonal;
    tyre.commercial = !match.captured(6).isEmpty() || match.captured(1) == QLatin1String("LT");

    const bool bracketed = !match.captured(10).isEmpty();
    const QString index = match.captured(bracketed ? 10 : 7);
    if (!index.isEmpty()) {
        tyre.loadIndex = index.toInt();
        if (!match.captured(8).isEmpty())
            tyre.loadIndexInDual = match.captured(8).toInt();
        tyre.speedSymbol = match.captured(bracketed ? 11 : 9);
        if (!loadOfIndex(*tyre.loadIndex) ||
            (tyre.loadIndexInDual && !loadOfIndex(*tyre.loadIndexInDual)))
            return tl::unexpected(badTyre(tr("A load index is 0 to 150.")));
        if (!speedOfSymbol(tyre.speedSymbol))
            return tl::unexpected(
                badTyre(tr("There is no speed symbol %1.").arg(tyre.speedSymbol)));
    } else if (build.size() == 2 && build != QLatin1String("ZR")) {
        tyre.speedSymbol = build.left(1); // "165 SR 13", as marked before the load index came
    }
    return tyre;
}

std::optional<Mass> loadOfIndex(int index)
{
    if (index < 0 || static_cast<std::size_t>(index) >= kLoads.size())
        return std::nullopt;
    return kilograms(kLoads[static_cast<std::size_t>(index)]);
}

std::optional<Speed> speedOfSymbol(QStringView symbol)
{
    if (symbol.size() != 1)
        return std::nullopt;
    for (const SpeedRow &row : kSpeeds) {
        if (symbol.front().toUpper() == QChar(row.symbol))
            return Speed::fromSi(row.kmh * kKmh);
    }
    return std::nullopt;
}

double loadShareAt(QStringView symbol, Speed speed)
{
    const std::optional<Speed> limit = speedOfSymbol(symbol);
    constexpr double kRounding = 1e-9;
    if (!limit || speed.si() > limit->si() + kRounding)
        return 0;
    const auto falling = [&](double fromKmh, double toKmh, double least) {
        const double share = (speed.si() / kKmh - fromKmh) / (toKmh - fromKmh);
        return share <= 0 ? 1.0 : 1 - share * (1 - least);
    };
    const QChar letter = symbol.front().toUpper();
    if (letter == QLatin1Char('V'))
        return falling(210, 240, 0.91);
    if (letter == QLatin1Char('W'))
        return falling(240, 270, 0.85);
    if (letter == QLatin1Char('Y'))
        return falling(270, 300, 0.85);
    return 1;
}

} // namespace ohmwright
