// SPDX-License-Identifier: GPL-3.0-or-later
// Source: the calendar arithmetic of Python's standard library (datetime, calendar.monthrange), run
// from here over the same dates. The rule that a day missing in a month is its last day is the
// usual one for terms in months and years; Python is told it through monthrange.
#include "core/quantity/dates.h"
#include "tests/core/quantity/printers.h"

#include <QProcess>
#include <QStandardPaths>
#include <QStringList>

#include <gtest/gtest.h>

#include <random>

namespace ohmwright {

namespace {

// Reads lines "2028-02-29 +1y", writes the date each comes to.
constexpr const char *kScript = R"(
import calendar, datetime, sys
for line in sys.stdin:
    start, span = line.split()
    date = datetime.date.fromisoformat(start)
    count, step = int(span[:-1]), span[-1]
    if step in "dw":
        date += datetime.timedelta(days=count * (7 if step == "w" else 1))
    else:
        months = date.year * 12 + date.month - 1 + count * (12 if step == "y" else 1)
        year, month = months // 12, months % 12 + 1
        last = calendar.monthrange(year, month)[1]
        date = datetime.date(year, month, min(date.day, last))
    print(date.isoformat())
)";

struct Term
{
    QDate start;
    QString span;
};

QString spanOf(qint64 count, char step)
{
    return (count < 0 ? QString() : QStringLiteral("+")) + QString::number(count) +
           QLatin1Char(step);
}

// The cases a warranty meets at the end of February, then random ones.
std::vector<Term> terms()
{
    std::vector<Term> all;
    for (const QDate start :
         {QDate(2024, 2, 28), QDate(2024, 2, 29), QDate(2023, 3, 1), QDate(2023, 8, 31),
          QDate(2000, 2, 29), QDate(2096, 2, 29), QDate(2100, 2, 28), QDate(2025, 12, 31)}) {
        for (const char *span : {"+1d", "+90d", "+365d", "+366d", "-1d", "+2w", "+1m", "+6m",
                                 "+12m", "+18m", "-1m", "+1y", "+2y", "+4y", "-1y", "-4y"})
            all.push_back({start, QString::fromLatin1(span)});
    }
    std::mt19937_64 random(29022024);
    const QDate first(1930, 1, 1);
    const auto days = static_cast<std::uint64_t>(first.daysTo(QDate(2160, 1, 1)));
    while (all.size() < 5000) {
        const QDate start = first.addDays(static_cast<qint64>(random() % days));
        const char step = "dwmy"[random() % 4];
        const qint64 most = step == 'y' ? 30 : step == 'm' ? 360 : step == 'w' ? 1500 : 9999;
        const auto count = static_cast<qint64>(random() % std::uint64_t(2 * most + 1)) - most;
        all.push_back({start, spanOf(count, step)});
    }
    return all;
}

} // namespace

TEST(Calendar, TermsEndOnTheDayPythonComesTo)
{
    const QString python = QStandardPaths::findExecutable(
        QStringLiteral("python3"), {QStringLiteral("/usr/bin"), QStringLiteral("/usr/local/bin")});
    if (python.isEmpty())
        GTEST_SKIP() << "python3 is not installed, so there is nothing to compare with";

    const std::vector<Term> all = terms();
    QByteArray input;
    for (const Term &term : all)
        input += printDate(term.start).toLatin1() + ' ' + term.span.toLatin1() + '\n';
    QProcess process;
    process.start(python, {QStringLiteral("-I"), QStringLiteral("-c"), QLatin1String(kScript)});
    ASSERT_TRUE(process.waitForStarted());
    process.write(input);
    process.closeWriteChannel();
    ASSERT_TRUE(process.waitForFinished(60000));
    ASSERT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();

    const QStringList lines = QString::fromLatin1(process.readAllStandardOutput())
                                  .split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    ASSERT_EQ(static_cast<std::size_t>(lines.size()), all.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Result<QDate> end = parseDate(all[i].span, QDate(2026, 3, 1), all[i].start);
        ASSERT_TRUE(end) << end.error().sentence.toStdString();
        ASSERT_EQ(printDate(*end), lines[static_cast<qsizetype>(i)])
            << printDate(all[i].start).toStdString() << ' ' << all[i].span.toStdString();
    }
}

} // namespace ohmwright
