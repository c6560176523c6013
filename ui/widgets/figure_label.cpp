// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/figure_label.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QtMath>

#include <algorithm>

namespace ohmwright::ui {

FigureLabel::FigureLabel(const Theme &theme, QWidget *parent) : QLabel(parent), m_theme(theme)
{
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void FigureLabel::setFigure(const QString &text)
{
    setText(text);
    setTextFormat(Qt::PlainText);
    m_figure = splitFigure(text);
    updateGeometry();
    update();
}

void FigureLabel::setDecimals(int digits)
{
    m_decimals = std::max(0, digits);
    updateGeometry();
    update();
}

void FigureLabel::setUnitRoom(const QString &widestUnit)
{
    m_widestUnit = widestUnit;
    updateGeometry();
    update();
}

void FigureLabel::setLettering(Lettering lettering)
{
    setFont(m_theme.font(lettering));
    updateGeometry();
}

QSize FigureLabel::sizeHint() const
{
    const QFontMetricsF metrics(font());
    const double unit =
        std::max(metrics.horizontalAdvance(m_figure.unit), metrics.horizontalAdvance(m_widestUnit));
    const double fraction =
        std::max(fractionWidth(metrics, m_decimals), tabularWidth(metrics, m_figure.fraction));
    const double gap = unit > 0 ? metrics.height() * 0.3 : 0;
    const double width = tabularWidth(metrics, m_figure.whole) + fraction + gap + unit;
    return {qCeil(width) + 1, qCeil(metrics.height())};
}

void FigureLabel::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    painter.setFont(font());
    painter.setPen(palette().color(foregroundRole()));
    paintFigure(painter, rect(), m_figure, m_decimals,
                QFontMetricsF(font()).horizontalAdvance(m_widestUnit), m_theme.tokens().mute);
}

} // namespace ohmwright::ui
