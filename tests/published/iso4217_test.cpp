// SPDX-License-Identifier: GPL-3.0-or-later
// Source: ISO 4217, list one dated 2024-06-25, column "minor unit" (read in reprints of the list).
#include "core/quantity/money.h"
#include "tests/core/quantity/printers.h"

#include <QStringList>

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

QStringList codes(const char *text)
{
    return QString::fromLatin1(text).split(QLatin1Char(' '));
}

const QStringList kNoDigits =
    codes("BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF");
const QStringList kThreeDigits = codes("BHD IQD JOD KWD LYD OMR TND");
const QStringList kFourDigits = codes("CLF UYW");

int digitsOf(const QString &code)
{
    const auto currency = Currency::fromCode(code);
    return currency ? currency->digits() : -1;
}

} // namespace

TEST(Iso4217, CurrenciesWithoutMinorUnit)
{
    for (const QString &code : kNoDigits)
        EXPECT_EQ(digitsOf(code), 0) << code.toStdString();
}

TEST(Iso4217, CurrenciesWithThreeOrFourDigits)
{
    for (const QString &code : kThreeDigits)
        EXPECT_EQ(digitsOf(code), 3) << code.toStdString();
    for (const QString &code : kFourDigits)
        EXPECT_EQ(digitsOf(code), 4) << code.toStdString();
}

// AFN, ALL, IQD, LAK, LBP and RSD have fewer digits in common locale data: not so in ISO 4217.
TEST(Iso4217, AllOthersHaveTwoDigits)
{
    for (const QString &code : codes("EUR USD GBP CHF HUF MGA AFN ALL LAK LBP RSD"))
        EXPECT_EQ(digitsOf(code), 2) << code.toStdString();
    for (const Currency &currency : Currency::all()) {
        const QString code = currency.code();
        if (kNoDigits.contains(code) || kThreeDigits.contains(code) || kFourDigits.contains(code))
            continue;
        EXPECT_EQ(currency.digits(), 2) << code.toStdString();
    }
}

// Of the list's 180 codes (read in a reprint), 161 are money a price can be in: not the bond units,
// metals, test and no-currency codes, nor the funds BOV CHE CHW COU MXV USN XDR XSU XUA.
TEST(Iso4217, HoldsTheListOfThatDay)
{
    EXPECT_EQ(Currency::all().size(), 161U);
    for (const QString &there : codes("ANG CUC VED VES ZWG ZWL SLE BGN"))
        EXPECT_NE(digitsOf(there), -1) << there.toStdString();
    for (const QString &gone : codes("HRK SLL XCG BOV CHE CHW COU MXV USN XDR XSU XUA XBA XBB XBC "
                                     "XBD XTS XXX XAU XAG XPT XPD DEM"))
        EXPECT_EQ(digitsOf(gone), -1) << gone.toStdString();
}

} // namespace ohmwright
