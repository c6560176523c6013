// SPDX-License-Identifier: GPL-3.0-or-later
// Buttons, lines to type in, drop-downs, steppers and marks to tick.
#include "ui/shell/drafted_style.h"

#include <QAbstractSpinBox>
#include <QIcon>
#include <QPainter>
#include <QPainterPath>
#include <QPushButton>
#include <QStyleOption>
#include <QWidget>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr double kRadius = 2.5;

// The middle of the outermost row of pixels.
QRectF lineRect(const QRect &rect, double penWidth)
{
    const double in = penWidth / 2;
    return QRectF(rect).adjusted(in, in, -in, -in);
}

QPixmap tinted(QPixmap pixmap, const QColor &colour)
{
    if (pixmap.isNull())
        return pixmap;
    QPainter painter(&pixmap);
    painter.setCompositionMode(QPainter::CompositionMode_SourceIn);
    painter.fillRect(pixmap.rect(), colour);
    return pixmap;
}

} // namespace

void paintFocusRing(QPainter &painter, const QRectF &rect, const Tokens &tokens)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(tokens.blue, 2));
    painter.drawRoundedRect(rect.adjusted(1, 1, -1, -1), kRadius, kRadius);
    painter.restore();
}

void DraftedStyle::box(QPainter &painter, const QRect &rect, const QStyleOption &option,
                       const QColor &fill, const QWidget *widget) const
{
    const bool enabled = option.state & State_Enabled;
    const bool focused = enabled && (option.state & State_HasFocus);
    const bool wrong = widget && widget->property("wrong").toBool();
    QPen pen(m_tokens.mute, 1);
    if (!enabled)
        pen.setDashPattern({4, 3});
    else if (focused)
        pen = QPen(m_tokens.blue, 2);
    else if (wrong)
        pen = QPen(m_tokens.fails, 2);
    else if (option.state & State_MouseOver)
        pen.setColor(m_tokens.ink);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(pen);
    painter.setBrush(fill);
    painter.drawRoundedRect(lineRect(rect, pen.widthF()), kRadius, kRadius);
    painter.restore();
}

void DraftedStyle::chevron(QPainter &painter, const QRectF &rect, Qt::ArrowType way,
                           const QColor &colour) const
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, 1.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    painter.translate(rect.center());
    switch (way) {
    case Qt::UpArrow:
        painter.rotate(180);
        break;
    case Qt::LeftArrow:
        painter.rotate(90);
        break;
    case Qt::RightArrow:
        painter.rotate(-90);
        break;
    case Qt::DownArrow:
    case Qt::NoArrow:
        break;
    }
    const double half = std::min({4.0, rect.width() / 2, rect.height() / 2});
    painter.drawPolyline(QPolygonF{{-half, -half / 2}, {0, half / 2}, {half, -half / 2}});
    painter.restore();
}

void DraftedStyle::drawButton(QPainter &painter, const QStyleOption &option,
                              const QWidget *widget) const
{
    const bool enabled = option.state & State_Enabled;
    const bool down = option.state & (State_Sunken | State_On);
    const bool over = option.state & State_MouseOver;
    if (!isPrimary(widget) || !enabled) {
        QColor fill = m_tokens.panel;
        if (down)
            fill = mix(m_tokens.panel, m_tokens.ink, 0.16);
        else if (over && enabled)
            fill = m_tokens.hover();
        box(painter, option.rect, option, fill, widget);
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(mix(m_tokens.ink, m_tokens.paper, down ? 0.24 : over ? 0.12 : 0.0));
    const bool focused = option.state & State_HasFocus;
    const double in = focused ? 4 : 0;
    painter.drawRoundedRect(QRectF(option.rect).adjusted(in, in, -in, -in), kRadius, kRadius);
    painter.restore();
    if (focused)
        paintFocusRing(painter, option.rect, m_tokens);
}

void DraftedStyle::drawPrimaryLabel(QPainter &painter, const QStyleOption &option,
                                    const QWidget *widget) const
{
    const auto *button = qstyleoption_cast<const QStyleOptionButton *>(&option);
    if (!button)
        return;
    QStyleOptionButton inked(*button);
    inked.palette.setColor(QPalette::ButtonText, m_tokens.paper);
    if (!inked.icon.isNull()) {
        const double ratio = widget ? widget->devicePixelRatioF() : 1.0;
        inked.icon = QIcon(tinted(inked.icon.pixmap(inked.iconSize, ratio), m_tokens.paper));
    }
    QProxyStyle::drawControl(CE_PushButtonLabel, &inked, &painter, widget);
}

void DraftedStyle::drawCheck(QPainter &painter, const QStyleOption &option) const
{
    const bool enabled = option.state & State_Enabled;
    QPen outline(enabled ? m_tokens.ink : m_tokens.mute, 1.25);
    if (!enabled)
        outline.setDashPattern({3, 2});
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(outline);
    painter.setBrush(option.state & State_MouseOver && enabled ? m_tokens.hover() : m_tokens.panel);
    const QRectF square = QRectF(option.rect).adjusted(1, 1, -1, -1);
    painter.drawRoundedRect(square, kRadius, kRadius);
    const QColor stroke = enabled ? m_tokens.ink : m_tokens.mute;
    painter.setPen(QPen(stroke, 2.2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    const QPointF c = square.center();
    if (option.state & State_On)
        painter.drawPolyline(
            QPolygonF{c + QPointF(-4.2, 0.2), c + QPointF(-1.2, 3.4), c + QPointF(4.4, -3.6)});
    else if (option.state & State_NoChange)
        painter.drawLine(c + QPointF(-4, 0), c + QPointF(4, 0));
    painter.restore();
}

void DraftedStyle::drawRadio(QPainter &painter, const QStyleOption &option) const
{
    const bool enabled = option.state & State_Enabled;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(enabled ? m_tokens.ink : m_tokens.mute, 1.25));
    painter.setBrush(m_tokens.panel);
    const QRectF ring = QRectF(option.rect).adjusted(1, 1, -1, -1);
    painter.drawEllipse(ring);
    if (option.state & State_On) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(enabled ? m_tokens.ink : m_tokens.mute);
        painter.drawEllipse(ring.adjusted(4, 4, -4, -4));
    }
    painter.restore();
}

void DraftedStyle::drawCombo(QPainter &painter, const QStyleOptionComplex &option,
                             const QWidget *widget) const
{
    const bool enabled = option.state & State_Enabled;
    const bool over = option.state & State_MouseOver;
    const auto *combo = qstyleoption_cast<const QStyleOptionComboBox *>(&option);
    const bool editable = combo && combo->editable;
    box(painter, option.rect, option,
        over && enabled && !editable ? m_tokens.hover() : m_tokens.panel, widget);
    const QRect arrow = subControlRect(CC_ComboBox, &option, SC_ComboBoxArrow, widget);
    chevron(painter, arrow, Qt::DownArrow, enabled ? m_tokens.ink : m_tokens.mute);
}

void DraftedStyle::drawSpin(QPainter &painter, const QStyleOptionComplex &option,
                            const QWidget *widget) const
{
    const auto *spin = qstyleoption_cast<const QStyleOptionSpinBox *>(&option);
    if (!spin)
        return;
    box(painter, option.rect, option, m_tokens.panel, widget);
    if (spin->buttonSymbols == QAbstractSpinBox::NoButtons)
        return;
    const auto arm = [&](SubControl part, QAbstractSpinBox::StepEnabledFlag flag,
                         Qt::ArrowType way) {
        const QRect rect = subControlRect(CC_SpinBox, &option, part, widget);
        const bool can = (option.state & State_Enabled) && (spin->stepEnabled & flag);
        const bool over =
            can && (option.state & State_MouseOver) && (option.activeSubControls & part);
        if (over)
            painter.fillRect(rect.adjusted(0, 2, -2, -2), m_tokens.hover());
        const double nudge = way == Qt::UpArrow ? 1.5 : -1.5;
        chevron(painter, QRectF(rect).translated(0, nudge), way,
                can ? m_tokens.ink : m_tokens.hairline());
    };
    arm(SC_SpinBoxUp, QAbstractSpinBox::StepUpEnabled, Qt::UpArrow);
    arm(SC_SpinBoxDown, QAbstractSpinBox::StepDownEnabled, Qt::DownArrow);
}

void DraftedStyle::drawToolButton(QPainter &painter, const QStyleOptionToolButton &option,
                                  const QWidget *widget) const
{
    const bool enabled = option.state & State_Enabled;
    const bool down = option.state & (State_Sunken | State_On);
    const bool over = enabled && (option.state & State_MouseOver);
    const bool flat = option.state & State_AutoRaise;
    if (!flat) {
        drawButton(painter, option, widget);
    } else {
        if (down || over) {
            painter.save();
            painter.setRenderHint(QPainter::Antialiasing);
            painter.setPen(Qt::NoPen);
            painter.setBrush(down ? mix(m_tokens.panel, m_tokens.ink, 0.16) : m_tokens.hover());
            painter.drawRoundedRect(option.rect, kRadius, kRadius);
            painter.restore();
        }
        if (enabled && (option.state & State_HasFocus))
            paintFocusRing(painter, option.rect, m_tokens);
    }
    QStyleOptionToolButton label(option);
    label.rect = option.rect.adjusted(4, 0, -4, 0);
    if (option.features & QStyleOptionToolButton::HasMenu) {
        label.rect.adjust(0, 0, -18, 0);
        const QRectF arrow(option.rect.right() - 26, option.rect.top(), 18, option.rect.height());
        chevron(painter, arrow, Qt::DownArrow, enabled ? m_tokens.ink : m_tokens.mute);
    }
    label.state &= ~(State_Sunken | State_On | State_MouseOver);
    QProxyStyle::drawControl(CE_ToolButtonLabel, &label, &painter, widget);
}

void DraftedStyle::drawPrimitive(PrimitiveElement element, const QStyleOption *option,
                                 QPainter *painter, const QWidget *widget) const
{
    switch (element) {
    case PE_PanelLineEdit: {
        const auto *frame = qstyleoption_cast<const QStyleOptionFrame *>(option);
        const bool readOnly = option->state & State_ReadOnly;
        const QColor fill = readOnly ? m_tokens.paper : m_tokens.panel;
        if (frame && frame->lineWidth > 0)
            box(*painter, option->rect, *option, fill, widget);
        return;
    }
    case PE_PanelButtonCommand:
    case PE_PanelButtonBevel:
    case PE_PanelButtonTool:
        drawButton(*painter, *option, widget);
        return;
    case PE_IndicatorCheckBox:
    case PE_IndicatorItemViewItemCheck:
        drawCheck(*painter, *option);
        return;
    case PE_IndicatorRadioButton:
        drawRadio(*painter, *option);
        return;
    case PE_FrameLineEdit:
    case PE_FrameDefaultButton:
        return;
    case PE_FrameFocusRect:
        // a push button already shows its focus on its outline
        if (!qobject_cast<const QPushButton *>(widget))
            paintFocusRing(*painter, option->rect, m_tokens);
        return;
    case PE_IndicatorArrowDown:
        chevron(*painter, option->rect, Qt::DownArrow, m_tokens.ink);
        return;
    case PE_IndicatorArrowUp:
        chevron(*painter, option->rect, Qt::UpArrow, m_tokens.ink);
        return;
    case PE_IndicatorArrowLeft:
        chevron(*painter, option->rect, Qt::LeftArrow, m_tokens.ink);
        return;
    case PE_IndicatorArrowRight:
        chevron(*painter, option->rect, Qt::RightArrow, m_tokens.ink);
        return;
    default:
        if (!drawViewPrimitive(element, *option, *painter, widget))
            QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
}

void DraftedStyle::drawControl(ControlElement element, const QStyleOption *option,
                               QPainter *painter, const QWidget *widget) const
{
    switch (element) {
    case CE_PushButtonBevel: {
        const auto *button = qstyleoption_cast<const QStyleOptionButton *>(option);
        const bool flat = button && (button->features & QStyleOptionButton::Flat);
        const bool quiet = !(option->state & (State_Sunken | State_On | State_MouseOver));
        if (flat && quiet && !(option->state & State_HasFocus))
            return;
        drawButton(*painter, *option, widget);
        if (button && (button->features & QStyleOptionButton::HasMenu))
            chevron(
                *painter,
                QRectF(option->rect.right() - 24, option->rect.top(), 18, option->rect.height()),
                Qt::DownArrow, m_tokens.ink);
        return;
    }
    case CE_PushButtonLabel:
        if (isPrimary(widget) && (option->state & State_Enabled)) {
            drawPrimaryLabel(*painter, *option, widget);
            return;
        }
        break;
    default:
        if (drawViewControl(element, *option, *painter, widget))
            return;
    }
    QProxyStyle::drawControl(element, option, painter, widget);
}

void DraftedStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex *option,
                                      QPainter *painter, const QWidget *widget) const
{
    if (control == CC_ComboBox) {
        drawCombo(*painter, *option, widget);
        return;
    }
    if (control == CC_SpinBox) {
        drawSpin(*painter, *option, widget);
        return;
    }
    if (const auto *tool = qstyleoption_cast<const QStyleOptionToolButton *>(option);
        control == CC_ToolButton && tool) {
        drawToolButton(*painter, *tool, widget);
        return;
    }
    if (const auto *slider = qstyleoption_cast<const QStyleOptionSlider *>(option);
        control == CC_ScrollBar && slider) {
        drawScrollBar(*painter, *slider, widget);
        return;
    }
    QProxyStyle::drawComplexControl(control, option, painter, widget);
}

} // namespace ohmwright::ui
