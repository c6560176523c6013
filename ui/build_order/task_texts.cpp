// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/task_texts.h"

#include "core/forecast/hours.h"
#include "core/quantity/amount.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <array>
#include <cmath>

namespace ohmwright::ui {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("TaskTexts", text);
}

// Far beyond what a record takes, so that rounding stays within an int; the record says the bound.
constexpr double kMost = 1e8;

Result<double> readSeconds(const QString &typed, QStringView unit)
{
    if (typed.isEmpty())
        return 0.0;
    const Result<Amount> amount =
        parseAmount(typed, NumberStyle::pointDecimal(), Measure::Duration, Unit::fromSymbol(unit));
    if (!amount)
        return fail(amount.error());
    if (amount->number() < 0)
        return fail(ProblemCode::BadInput, tr("A time cannot be negative."));
    return amount->si();
}

} // namespace

QString showWorkTime(int minutes)
{
    if (minutes == 0)
        return {};
    // in a field it is typed over, with the plain space of a keyboard
    return forecast::duration(minutes).replace(QChar::Nbsp, QLatin1Char(' '));
}

Result<int> readWorkMinutes(const QString &typed)
{
    static const QRegularExpression kBoth(
        QStringLiteral(R"(^\s*(\d{1,5})\s*h\s*(\d{1,2})\s*min\s*$)"));
    if (const QRegularExpressionMatch both = kBoth.match(typed); both.hasMatch())
        return both.captured(1).toInt() * 60 + both.captured(2).toInt();
    const Result<double> seconds = readSeconds(typed, u"h");
    if (!seconds)
        return fail(seconds.error());
    return static_cast<int>(std::lround(std::min(*seconds / 60, kMost)));
}

QString showWaitDays(int days)
{
    return days == 0 ? QString() : tr("%1 d").arg(days);
}

Result<int> readWaitDays(const QString &typed)
{
    const Result<double> seconds = readSeconds(typed, u"d");
    if (!seconds)
        return fail(seconds.error());
    return static_cast<int>(std::ceil(std::min(*seconds / 86400, kMost)));
}

std::optional<CautionText> cautionFor(const Task &task)
{
    if (task.highVoltage)
        return cautionById(QStringLiteral("high-voltage"));
    struct Sign
    {
        const char *words;
        const char *caution;
    };
    static constexpr std::array kSigns{
        Sign{R"(\b(battery|module|modules|pack|cell|cells)\b)", "battery"},
        Sign{R"(\b(petrol|fuel|tank)\b)", "petrol"},
        Sign{R"(\b(lift|hoist|jack|engine out|remove engine)\b)", "lifting"},
    };
    const QString about = task.area + u' ' + task.title;
    for (const Sign &sign : kSigns) {
        const QRegularExpression words(QString::fromLatin1(sign.words),
                                       QRegularExpression::CaseInsensitiveOption);
        if (words.match(about).hasMatch())
            return cautionById(QString::fromLatin1(sign.caution));
    }
    return std::nullopt;
}

} // namespace ohmwright::ui
