// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/hv_tag.h"

#include "ui/shell/theme.h"

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>

namespace ohmwright::ui {

namespace {

QFont tagFont(QFont font)
{
    font.setPointSizeF(font.pointSizeF() * 0.84);
    font.setWeight(QFont::Bold);
    font.setLetterSpacing(QFont::PercentageSpacing, 104);
    return font;
}

QString letters()
{
    return QStringLiteral("HV");
}

} // namespace

QSizeF highVoltageTagSize(const QFont &font)
{
    const QFontMetricsF metrics(tagFont(font));
    return {metrics.horizontalAdvance(letters()) + 10, metrics.capHeight() + 8};
}

void paintHighVoltageTag(QPainter &painter, const QRectF &rect, const QFont &font,
                         const Tokens &tokens)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(tokens.highVoltage, 1.5));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(rect.adjusted(0.75, 0.75, -0.75, -0.75), 2.5, 2.5);
    const QFont small = tagFont(font);
    const QFontMetricsF metrics(small);
    painter.setFont(small);
    painter.setPen(tokens.highVoltageText());
    painter.drawText(QPointF(rect.center().x() - metrics.horizontalAdvance(letters()) / 2,
                             rect.center().y() + metrics.capHeight() / 2),
                     letters());
    painter.restore();
}

HvTag::HvTag(const Theme &theme, QWidget *parent) : QLabel(letters(), parent), m_theme(theme)
{
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setAccessibleName(tr("High voltage"));
    setToolTip(tr("High voltage"));
}

QSize HvTag::sizeHint() const
{
    return highVoltageTagSize(font()).toSize() + QSize(1, 1);
}

void HvTag::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    paintHighVoltageTag(painter, rect(), font(), m_theme.tokens());
}

} // namespace ohmwright::ui
