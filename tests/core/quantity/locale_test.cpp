// SPDX-License-Identifier: GPL-3.0-or-later
// Reading and printing do not change with the process's locale.
#include "core/quantity/amount.h"
#include "core/quantity/dates.h"
#include "core/quantity/money.h"
#include "tests/core/quantity/printers.h"

#include <QFile>
#include <QLocale>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <array>
#include <clocale>
#include <cstdio>
#include <locale>

namespace ohmwright {

namespace {

// Everything that is read and printed, in one text.
QString everything()
{
    const NumberStyle point = NumberStyle::pointDecimal();
    const NumberStyle comma = NumberStyle::commaDecimal();
    QStringList all;
    for (const NumberStyle style : {point, comma}) {
        for (const QStringView text : {u"1.250", u"1,250", u"1250.5", u"1.250,5", u"0,5", u"1e-3"})
            all.append(printAmount(Amount(parseNumber(text, style).value_or(-1), Unit())));
        all.append(showAmount(*parseAmount(u"12500,25 kW", style), style));
        all.append(printMoney(*parseMoney(u"€ 1.250,50", style)));
        all.append(showMoney(*parseMoney(u"-1250.50 USD", style), style));
        all.append(Rate::parse(u"1.0842", style)->print());
    }
    all.append(printAmount(*parseAmount(u"12 KWH", point))); // Turkish I and the like
    all.append(sentenceOf(parseAmount(u"3 MIN", point)));
    all.append(showDate(*parseDate(u"3 apr 2026", QDate(2026, 3, 1))));
    all.append(printDate(*parseDate(u"1.3.26", QDate(2026, 3, 1))));
    return all.join(u'|');
}

class CommaPunctuation : public std::numpunct<char>
{
protected:
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

} // namespace

TEST(Locale, OfQtHasNoInfluence)
{
    const QString before = everything();
    for (const QLocale &locale : {QLocale(QLocale::German), QLocale(QLocale::Turkish),
                                  QLocale(QLocale::Arabic, QLocale::Egypt)}) {
        const QLocale kept;
        QLocale::setDefault(locale);
        EXPECT_EQ(everything(), before);
        QLocale::setDefault(kept);
    }
}

TEST(Locale, OfTheStandardStreamsHasNoInfluence)
{
    const QString before = everything();
    const std::locale kept =
        std::locale::global(std::locale(std::locale::classic(), new CommaPunctuation));
    EXPECT_EQ(everything(), before);
    std::locale::global(kept);
}

TEST(Locale, OfTheProcessHasNoInfluence)
{
    // A locale with a decimal comma is made for this test, as few systems come with one.
    const QString tool = QStandardPaths::findExecutable(QStringLiteral("localedef"));
    if (tool.isEmpty())
        GTEST_SKIP() << "localedef is not installed, so no other locale can be made";
    const QTemporaryDir folder;
    ASSERT_TRUE(folder.isValid());
    QFile source(folder.filePath(QStringLiteral("source")));
    ASSERT_TRUE(source.open(QIODevice::WriteOnly));
    source.write("LC_NUMERIC\ndecimal_point \",\"\nthousands_sep \".\"\ngrouping 3;3\n"
                 "END LC_NUMERIC\n");
    source.close();
    QProcess make;
    make.start(tool,
               {QStringLiteral("-c"), QStringLiteral("-i"), source.fileName(), QStringLiteral("-f"),
                QStringLiteral("ISO-8859-1"), folder.filePath(QStringLiteral("comma"))});
    ASSERT_TRUE(make.waitForFinished());

    const QString before = everything();
    qputenv("LOCPATH", folder.path().toLocal8Bit());
    const bool set = std::setlocale(LC_NUMERIC, "comma") != nullptr;
    std::array<char, 16> shown{};
    std::snprintf(shown.data(), shown.size(), "%.1f", 1.5);
    const QString after = everything();
    std::setlocale(LC_NUMERIC, "C");
    qunsetenv("LOCPATH");
    if (!set)
        GTEST_SKIP() << "localedef could not make a locale: its character sets are not installed";
    EXPECT_STREQ(shown.data(), "1,5"); // it was in force
    EXPECT_EQ(after, before);
}

} // namespace ohmwright
