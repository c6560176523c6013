// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quantity/dates.h"

#include "core/quantity/invariant.h"
#include "core/quantity/number_text.h"

#include <QStringList>

#include <algorithm>
#include <array>
#include <optional>

using namespace Qt::StringLiterals;

namespace ohmwright {

namespace {

using detail::quoted;

constexpr int kFirstYear = 1900;
constexpr int kLastYear = 2199;

constexpr std::array kMonths{
    u"January", u"February", u"March",     u"April",   u"May",      u"June",
    u"July",    u"August",   u"September", u"October", u"November", u"December",
};

Problem badDate(QString sentence)
{
    return {ProblemCode::BadInput,
            std::move(sentence),
            u"Write a date like 2026-03-01 or 1 Mar 2026."_s,
            {}};
}

Problem notADate(QStringView text)
{
    return badDate(quoted(text) + u" is not a date."_s);
}

// One to `most` digits as a number; nothing otherwise.
std::optional<int> wholeNumber(QStringView text, qsizetype most)
{
    if (text.isEmpty() || text.size() > most ||
        !std::all_of(text.begin(), text.end(), detail::isDigit))
        return std::nullopt;
    return text.toInt();
}

Result<QDate> inRange(QDate date, QStringView text)
{
    if (!date.isValid() || date.year() < kFirstYear || date.year() > kLastYear)
        return fail(badDate(quoted(text) + u" is not between 1900 and 2199."_s));
    return date;
}

Result<QDate> dateOf(int year, int month, int day, QStringView text)
{
    if (!QDate::isValid(year, month, day) && year != 0)
        return fail(badDate(quoted(text) + u" is not a day in the calendar."_s));
    return inRange(QDate(year, month, day), text);
}

// Four digits, or two that mean the year nearest to today's.
std::optional<int> yearOf(QStringView text, QDate today)
{
    if (text.size() != 2 && text.size() != 4)
        return std::nullopt;
    auto year = wholeNumber(text, 4);
    if (year && text.size() == 2) {
        const int latest = today.year() + 20;
        year = latest - (latest - *year) % 100;
    }
    return year;
}

std::optional<int> monthNamed(QStringView name)
{
    if (name.size() < 3)
        return std::nullopt;
    for (std::size_t i = 0; i < kMonths.size(); ++i) {
        if (QStringView(kMonths[i]).startsWith(name, Qt::CaseInsensitive))
            return static_cast<int>(i) + 1;
    }
    return std::nullopt;
}

// "1", "1st", "22nd"
std::optional<int> dayOf(QStringView text)
{
    for (const QStringView ending : {u"st", u"nd", u"rd", u"th"}) {
        if (text.endsWith(ending, Qt::CaseInsensitive))
            return wholeNumber(text.chopped(2), 2);
    }
    return wholeNumber(text, 2);
}

enum class Step { Day, Week, Month, Year };

std::optional<Step> stepOf(const QString &word)
{
    constexpr auto kIs = [](const QString &w, QLatin1String name) {
        return w == name.left(1) || w == name || w == name + u's';
    };
    if (kIs(word, QLatin1String("day")))
        return Step::Day;
    if (kIs(word, QLatin1String("week")))
        return Step::Week;
    if (kIs(word, QLatin1String("month")))
        return Step::Month;
    if (kIs(word, QLatin1String("year")))
        return Step::Year;
    return std::nullopt;
}

// "+90d", "- 3 weeks". QDate's addMonths and addYears take the last day of a month too short.
std::optional<Result<QDate>> readRelative(QStringView text, QDate base)
{
    if (!detail::isSign(text.front()))
        return std::nullopt;
    const QStringView rest = text.mid(1).trimmed();
    const auto *const end = std::find_if_not(rest.begin(), rest.end(), detail::isDigit);
    const qsizetype digits = end - rest.begin();
    const auto number = wholeNumber(rest.left(digits), 5);
    const auto step = stepOf(rest.mid(digits).trimmed().toString().toLower());
    if (!number || !step) {
        return fail(ProblemCode::BadInput, quoted(text) + u" is not a span of time."_s,
                    u"Write it like +90d, +2w, +6m or +1y."_s);
    }
    const int count = text.front() == u'+' ? *number : -*number;
    switch (*step) {
    case Step::Day:
        return inRange(base.addDays(count), text);
    case Step::Week:
        return inRange(base.addDays(7LL * count), text);
    case Step::Month:
        return inRange(base.addMonths(count), text);
    case Step::Year:
        return inRange(base.addYears(count), text);
    }
    brokenInvariant("a step is one of the list");
}

std::optional<QDate> readWord(QStringView text, QDate today)
{
    if (text.compare(u"today", Qt::CaseInsensitive) == 0)
        return today;
    if (text.compare(u"yesterday", Qt::CaseInsensitive) == 0)
        return today.addDays(-1);
    if (text.compare(u"tomorrow", Qt::CaseInsensitive) == 0)
        return today.addDays(1);
    return std::nullopt;
}

// Three numbers with the same separator between them: "2026-03-01", "1.3.2026", "1. 3. 26".
std::optional<Result<QDate>> readNumeric(QStringView text, QDate today)
{
    for (const QChar separator : {u'-', u'.', u'/'}) {
        const QList<QStringView> parts = text.split(separator);
        if (parts.size() != 3)
            continue;
        std::array<int, 3> numbers{};
        for (int i = 0; i < 3; ++i) {
            const auto number = wholeNumber(parts[i].trimmed(), 4);
            if (!number)
                return std::nullopt;
            numbers[static_cast<std::size_t>(i)] = *number;
        }
        if (parts[0].trimmed().size() == 4)
            return dateOf(numbers[0], numbers[1], numbers[2], text);
        if (separator != u'.')
            return fail(badDate(quoted(text) + u" does not tell the day from the month."_s));
        const auto year = yearOf(parts[2].trimmed(), today);
        if (!year || parts[0].trimmed().size() > 2 || parts[1].trimmed().size() > 2)
            return fail(notADate(text));
        return dateOf(*year, numbers[1], numbers[0], text);
    }
    return std::nullopt;
}

// "1 Mar 2026", "1. March 26", "1-Mar-2026", "March 1st, 2026".
std::optional<Result<QDate>> readNamed(QStringView text, QDate today)
{
    QString plain = text.toString();
    for (QChar &c : plain) {
        if (c == u'.' || c == u',' || c == u'-')
            c = u' ';
    }
    const QStringList parts = plain.simplified().split(u' ');
    if (parts.size() != 3)
        return std::nullopt;
    const bool monthFirst = monthNamed(parts[0]).has_value();
    const auto month = monthNamed(parts[monthFirst ? 0 : 1]);
    const auto day = dayOf(parts[monthFirst ? 1 : 0]);
    const auto year = yearOf(parts[2], today);
    if (!month || !day || !year)
        return std::nullopt;
    return dateOf(*year, *month, *day, text);
}

} // namespace

Result<QDate> parseIsoDate(QStringView text)
{
    const bool shape = text.size() == 10 && text[4] == u'-' && text[7] == u'-';
    const auto year = shape ? wholeNumber(text.left(4), 4) : std::nullopt;
    const auto month = shape ? wholeNumber(text.mid(5, 2), 2) : std::nullopt;
    const auto day = shape ? wholeNumber(text.mid(8, 2), 2) : std::nullopt;
    if (!year || !month || !day) {
        return fail(ProblemCode::BadInput, quoted(text) + u" is not a date."_s,
                    u"Write it as year-month-day, like 2026-03-01."_s);
    }
    return dateOf(*year, *month, *day, text);
}

bool isTimeOfDay(QStringView text)
{
    const auto digit = [&](qsizetype at, char16_t most) {
        return text[at] >= u'0' && text[at] <= most;
    };
    return text.size() == 5 && digit(0, u'2') && digit(1, text[0] == u'2' ? u'3' : u'9') &&
           text[2] == u':' && digit(3, u'5') && digit(4, u'9');
}

Result<QDate> parseDate(QStringView text, QDate today, QDate base)
{
    require(today.isValid() && base.isValid(), "dates are counted from a valid day");
    constexpr qsizetype kLongest = 40;
    const QStringView trimmed = text.trimmed();
    if (trimmed.isEmpty())
        return fail(badDate(u"A date is missing."_s));
    if (trimmed.size() > kLongest)
        return fail(notADate(trimmed));
    if (const auto date = readWord(trimmed, today))
        return inRange(*date, trimmed);
    if (auto date = readRelative(trimmed, base))
        return *date;
    if (auto date = readNumeric(trimmed, today))
        return *date;
    if (auto date = readNamed(trimmed, today))
        return *date;
    return fail(notADate(trimmed));
}

QString printDate(QDate date)
{
    return date.toString(Qt::ISODate);
}

QString showDate(QDate date)
{
    if (!date.isValid())
        return {};
    const QString month =
        QString::fromUtf16(kMonths[static_cast<std::size_t>(date.month() - 1)], 3);
    return QString::number(date.day()) + u' ' + month + u' ' + QString::number(date.year());
}

} // namespace ohmwright
