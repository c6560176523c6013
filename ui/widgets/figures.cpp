// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/figures.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPen>
#include <QRectF>
#include <QStringView>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr double kUnitGap = 0.3; // of the letters' height

double digitWidth(const QFontMetricsF &metrics)
{
    double widest = 0;
    for (char digit = '0'; digit <= '9'; ++digit)
        widest = std::max(widest, metrics.horizontalAdvance(QLatin1Char(digit)));
    return widest;
}

bool isSeparator(QChar c)
{
    return c == QLatin1Char('.') || c == QLatin1Char(',');
}

// The stroke of "2/0", the dash of "3–5", the apostrophe of "1'250".
bool joinsDigits(const QString &text, qsizetype at)
{
    static constexpr char16_t kJoints[] = u"/-\u2013'\u2019";
    const bool joint = QStringView(kJoints).contains(text.at(at));
    return joint && at + 1 < text.size() && text.at(at + 1).isDigit();
}

// Ahead of a number, a hyphen is a minus.
QString withMinus(QString text)
{
    if (text.size() > 1 && text.front() == QLatin1Char('-') && text.at(1).isDigit())
        text[0] = QChar(0x2212);
    return text;
}

} // namespace

FigureText splitFigure(const QString &text)
{
    const QString trimmed = text.trimmed();
    const auto isDigit = [](QChar c) {
        return c.isDigit();
    };
    const auto firstDigit = std::find_if(trimmed.begin(), trimmed.end(), isDigit);
    if (firstDigit == trimmed.end())
        return {trimmed, {}, {}};

    // the number ends at the last of its digits that is not parted from the rest by a letter
    qsizetype end = firstDigit - trimmed.begin();
    for (qsizetype i = end; i < trimmed.size(); ++i) {
        const QChar c = trimmed.at(i);
        if (c.isDigit())
            end = i + 1;
        else if (!isSeparator(c) && !c.isSpace() && !joinsDigits(trimmed, i))
            break;
    }
    const QString number = trimmed.left(end);
    FigureText figure{number, {}, trimmed.mid(end).trimmed()};
    const auto last = std::find_if(number.rbegin(), number.rend(), isSeparator);
    if (last != number.rend() && number.count(*last) == 1) {
        const qsizetype at = number.rend() - last - 1;
        figure.whole = number.left(at);
        figure.fraction = number.mid(at);
    }
    figure.whole = withMinus(figure.whole);
    return figure;
}

int fractionDigits(const FigureText &figure)
{
    return std::max(0, static_cast<int>(figure.fraction.size()) - 1);
}

double tabularWidth(const QFontMetricsF &metrics, const QString &text)
{
    const double digit = digitWidth(metrics);
    double width = 0;
    for (const QChar c : text)
        width += c.isDigit() ? digit : metrics.horizontalAdvance(c);
    return width;
}

double fractionWidth(const QFontMetricsF &metrics, int digits)
{
    if (digits <= 0)
        return 0;
    return metrics.horizontalAdvance(QLatin1Char('.')) + digits * digitWidth(metrics);
}

double paintTabular(QPainter &painter, double x, double baseline, const QString &text)
{
    const QFontMetricsF metrics(painter.font(), painter.device());
    const double digit = digitWidth(metrics);
    const double start = x;
    for (const QChar c : text) {
        const double own = metrics.horizontalAdvance(c);
        const double room = c.isDigit() ? digit : own;
        painter.drawText(QPointF(x + (room - own) / 2, baseline), QString(c));
        x += room;
    }
    return x - start;
}

void paintFigure(QPainter &painter, const QRectF &rect, const FigureText &figure, int digits,
                 double unitWidth, const QColor &unitColour)
{
    const QFontMetricsF metrics(painter.font(), painter.device());
    const double baseline = rect.center().y() + (metrics.ascent() - metrics.descent()) / 2;
    double right = rect.right();
    const auto isDigit = [](QChar c) {
        return c.isDigit();
    };
    if (std::none_of(figure.whole.begin(), figure.whole.end(), isDigit)) {
        painter.drawText(QPointF(right - metrics.horizontalAdvance(figure.whole), baseline),
                         figure.whole);
        return;
    }
    const double ownUnit = metrics.horizontalAdvance(figure.unit);
    const double unitRoom = std::max(unitWidth, ownUnit);
    if (unitRoom > 0) {
        const double gap = metrics.height() * kUnitGap;
        painter.save();
        painter.setPen(unitColour);
        painter.drawText(QPointF(right - unitRoom, baseline), figure.unit);
        painter.restore();
        right -= unitRoom + gap;
    }
    const double room =
        std::max(fractionWidth(metrics, digits), tabularWidth(metrics, figure.fraction));
    const double decimalAt = right - room;
    paintTabular(painter, decimalAt, baseline, figure.fraction);
    paintTabular(painter, decimalAt - tabularWidth(metrics, figure.whole), baseline, figure.whole);
}

} // namespace ohmwright::ui
