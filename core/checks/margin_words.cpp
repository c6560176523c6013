// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/margin_words.h"

#include <QCoreApplication>

#include <cmath>

namespace ohmwright {

namespace {

constexpr double kMostTimes = 100;

QString tr(const char *text)
{
    return QCoreApplication::translate("MarginWords", text);
}

bool isTimes(double margin)
{
    return std::abs(margin) > 1;
}

// of the limit: its own whole and what is beyond
QString times(double margin)
{
    const double times = 1 + std::abs(margin);
    if (times > kMostTimes)
        return tr("over %1 times").arg(kMostTimes);
    return tr("%1 times").arg(QString::number(times, 'f', times < 10 ? 1 : 0));
}

QString percent(double margin)
{
    // a tenth of a percent matters near the limit, and nowhere else
    const double percent = std::abs(margin) * 100;
    return QString(QString::number(percent, 'f', percent < 10 ? 1 : 0) + QStringLiteral(" %"));
}

} // namespace

QString marginFigure(double margin)
{
    if (isTimes(margin))
        return margin < 0 ? tr("%1 over").arg(times(margin)) : times(margin);
    const QString figure = percent(margin);
    const bool isZero = figure.startsWith(QLatin1String("0.0"));
    return margin < 0 && !isZero ? QString(QLatin1Char('-') + figure) : figure;
}

QString marginWords(double margin)
{
    if (isTimes(margin))
        return margin < 0 ? tr("%1 the limit").arg(times(margin))
                          : tr("%1 what is asked").arg(times(margin));
    return margin < 0 ? tr("short by %1").arg(percent(margin))
                      : tr("%1 to spare").arg(percent(margin));
}

} // namespace ohmwright
