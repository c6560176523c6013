// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes, hints and the places of parts. What is drawn stands in the two files beside this one.
#include "ui/shell/drafted_style.h"

#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QCalendarWidget>
#include <QComboBox>
#include <QFontMetrics>
#include <QHeaderView>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QStyleFactory>
#include <QStyleOption>
#include <QTabBar>
#include <QTextCharFormat>
#include <QTextDocument>
#include <QToolButton>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kArrowWidth = 28; // the part of a drop-down or stepper one can press
constexpr int kIndicator = 18;  // check box and radio button
constexpr int kAroundLine = 15; // height of a control above that of its letters
constexpr int kAroundRow = 18;

int lineHeight(const QStyleOption *option, const QWidget *widget)
{
    if (option)
        return option->fontMetrics.height();
    return widget ? widget->fontMetrics().height() : 17;
}

} // namespace

DraftedStyle::DraftedStyle(const Tokens &tokens)
    : QProxyStyle(QStyleFactory::create(QStringLiteral("Fusion"))), m_tokens(tokens)
{}

void makePrimary(QPushButton &button)
{
    button.setProperty("primary", true);
    QFont font = button.font();
    font.setWeight(QFont::DemiBold);
    button.setFont(font);
    button.update();
}

bool isPrimary(const QWidget *widget)
{
    return widget && widget->property("primary").toBool();
}

void markWrong(QWidget &editor, bool wrong)
{
    editor.setProperty("wrong", wrong);
    editor.update();
}

int DraftedStyle::pixelMetric(PixelMetric metric, const QStyleOption *option,
                              const QWidget *widget) const
{
    switch (metric) {
    case PM_DefaultFrameWidth:
    case PM_SpinBoxFrameWidth:
    case PM_ComboBoxFrameWidth:
        return 2; // room for the ring
    case PM_MenuPanelWidth:
    case PM_ToolBarFrameWidth:
        return 1;
    case PM_MenuHMargin:
    case PM_MenuVMargin:
        return 4;
    case PM_ButtonMargin:
        return 12;
    case PM_ButtonShiftHorizontal:
    case PM_ButtonShiftVertical:
    case PM_TabBarTabShiftHorizontal:
    case PM_TabBarTabShiftVertical:
    case PM_TabBarBaseOverlap:
        return 0;
    case PM_IndicatorWidth:
    case PM_IndicatorHeight:
    case PM_ExclusiveIndicatorWidth:
    case PM_ExclusiveIndicatorHeight:
        return kIndicator;
    case PM_FocusFrameHMargin:
        return 6; // left and right of the words in a list
    case PM_CheckBoxLabelSpacing:
    case PM_RadioButtonLabelSpacing:
        return 8;
    case PM_SmallIconSize:
    case PM_ButtonIconSize:
    case PM_TabBarIconSize:
    case PM_ListViewIconSize:
        return 20;
    case PM_SplitterWidth:
        return 11;
    case PM_ScrollBarExtent:
        return 12;
    case PM_ScrollBarSliderMin:
        return 36;
    case PM_ScrollView_ScrollBarSpacing:
        return 0;
    case PM_HeaderMargin:
        return 10; // as the cells below have
    case PM_HeaderMarkSize:
        return 12;
    case PM_TabBarTabHSpace:
        return 28;
    case PM_TabBarTabVSpace:
        return 18;
    case PM_TabBarTabOverlap:
        return 0;
    case PM_ToolTipLabelFrameWidth:
        return 7;
    case PM_LayoutHorizontalSpacing:
    case PM_LayoutVerticalSpacing:
        return 8;
    case PM_LayoutLeftMargin:
    case PM_LayoutTopMargin:
    case PM_LayoutRightMargin:
    case PM_LayoutBottomMargin:
        return 12;
    default:
        return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

int DraftedStyle::styleHint(StyleHint hint, const QStyleOption *option, const QWidget *widget,
                            QStyleHintReturn *data) const
{
    switch (hint) {
    case SH_ComboBox_Popup:
    case SH_DialogButtonBox_ButtonsHaveIcons:
    case SH_EtchDisabledText:
    case SH_Widget_Animate:
    case SH_Widget_Animation_Duration:
    case SH_ScrollBar_Transient:
        return 0;
    case SH_ItemView_ShowDecorationSelected:
    case SH_Menu_MouseTracking:
    case SH_ComboBox_ListMouseTracking:
    case SH_Table_AlwaysDrawLeftTopGridLines:
        return 1;
    case SH_Table_GridLineColor:
        return static_cast<int>(m_tokens.hairline().rgb());
    case SH_ToolTipLabel_Opacity:
        return 255;
    default:
        return QProxyStyle::styleHint(hint, option, widget, data);
    }
}

QSize DraftedStyle::sizeFromContents(ContentsType type, const QStyleOption *option,
                                     const QSize &size, const QWidget *widget) const
{
    const int line = lineHeight(option, widget);
    switch (type) {
    case CT_LineEdit:
        return {size.width() + 8, std::max(size.height(), line + kAroundLine)};
    case CT_PushButton: {
        const auto *button = qstyleoption_cast<const QStyleOptionButton *>(option);
        const bool wordless = button && button->text.isEmpty();
        const int height = std::max(size.height(), line + kAroundLine);
        return {wordless ? std::max(height, size.width() + 12) : size.width() + 28, height};
    }
    case CT_ToolButton: {
        const auto *button = qstyleoption_cast<const QStyleOptionToolButton *>(option);
        const bool worded = button && button->toolButtonStyle != Qt::ToolButtonIconOnly;
        const int height = std::max(size.height() + 8, line + kAroundLine);
        const bool menu = button && (button->features & QStyleOptionToolButton::HasMenu);
        const int width = size.width() + (worded ? 20 : 8) + (menu ? 16 : 0);
        return {std::max(width, height), height};
    }
    case CT_ComboBox:
        return {size.width() + kArrowWidth + 16, std::max(size.height(), line + kAroundLine)};
    case CT_SpinBox:
        return {size.width() + kArrowWidth + 8, std::max(size.height(), line + kAroundLine)};
    case CT_CheckBox:
    case CT_RadioButton: {
        const QSize base = QProxyStyle::sizeFromContents(type, option, size, widget);
        return {base.width() + 8, std::max(base.height(), line + 10)};
    }
    case CT_MenuItem: {
        const auto *item = qstyleoption_cast<const QStyleOptionMenuItem *>(option);
        if (item && item->menuItemType == QStyleOptionMenuItem::Separator)
            return {size.width(), 9};
        return {size.width() + 76, std::max(size.height(), line + 15)};
    }
    case CT_HeaderSection: {
        const QSize base = QProxyStyle::sizeFromContents(type, option, size, widget);
        return {base.width() + 8, line + kAroundRow};
    }
    case CT_ItemViewItem: {
        const QSize base = QProxyStyle::sizeFromContents(type, option, size, widget);
        return {base.width() + 12, std::max(base.height(), line + kAroundRow - 4)};
    }
    default:
        return QProxyStyle::sizeFromContents(type, option, size, widget);
    }
}

QRect DraftedStyle::subElementRect(SubElement element, const QStyleOption *option,
                                   const QWidget *widget) const
{
    switch (element) {
    case SE_CheckBoxFocusRect:
    case SE_RadioButtonFocusRect:
        return option->rect;
    case SE_CheckBoxIndicator:
    case SE_RadioButtonIndicator: {
        const QRect rect(option->rect.left() + 4, option->rect.center().y() - (kIndicator - 1) / 2,
                         kIndicator, kIndicator);
        return visualRect(option->direction, option->rect, rect);
    }
    case SE_CheckBoxContents:
    case SE_RadioButtonContents: {
        const QRect rect = option->rect.adjusted(4 + kIndicator + 8, 0, -4, 0);
        return visualRect(option->direction, option->rect, rect);
    }
    case SE_LineEditContents: {
        // one without a frame lies inside another control's
        const auto *frame = qstyleoption_cast<const QStyleOptionFrame *>(option);
        const int side = frame && frame->lineWidth > 0 ? 6 : 4;
        return option->rect.adjusted(side, 0, -side, 0);
    }
    default:
        return QProxyStyle::subElementRect(element, option, widget);
    }
}

QRect DraftedStyle::subControlRect(ComplexControl control, const QStyleOptionComplex *option,
                                   SubControl part, const QWidget *widget) const
{
    const QRect all = option->rect;
    QRect rect;
    if (control == CC_ComboBox && part == SC_ComboBoxArrow) {
        rect = QRect(all.right() - kArrowWidth + 1, all.top(), kArrowWidth, all.height());
    } else if (control == CC_ComboBox && part == SC_ComboBoxEditField) {
        rect = all.adjusted(2, 2, -kArrowWidth, -2);
        const auto *combo = qstyleoption_cast<const QStyleOptionComboBox *>(option);
        if (combo && !combo->editable)
            rect.adjust(5, 0, 0, 0); // the label adds one more
    } else if (control == CC_SpinBox) {
        const auto *spin = qstyleoption_cast<const QStyleOptionSpinBox *>(option);
        const bool stepped = spin && spin->buttonSymbols != QAbstractSpinBox::NoButtons;
        const int width = stepped ? kArrowWidth : 0;
        const int half = all.height() / 2;
        if (part == SC_SpinBoxUp)
            rect = QRect(all.right() - width + 1, all.top(), width, half);
        else if (part == SC_SpinBoxDown)
            rect = QRect(all.right() - width + 1, all.top() + half, width, all.height() - half);
        else if (part == SC_SpinBoxEditField)
            rect = all.adjusted(2, 2, stepped ? -width : -2, -2);
        else
            return all;
    } else if (control == CC_ScrollBar) {
        if (const auto *slider = qstyleoption_cast<const QStyleOptionSlider *>(option))
            return scrollBarRect(*slider, part, widget);
        return {};
    } else {
        return QProxyStyle::subControlRect(control, option, part, widget);
    }
    return visualRect(option->direction, all, rect);
}

QRect DraftedStyle::scrollBarRect(const QStyleOptionSlider &option, SubControl part,
                                  const QWidget *widget) const
{
    const bool across = option.orientation == Qt::Horizontal;
    const int length = across ? option.rect.width() : option.rect.height();
    const int extent = across ? option.rect.height() : option.rect.width();
    const int range = option.maximum - option.minimum;
    int slider = length;
    if (range > 0) {
        const auto pages = static_cast<double>(range) + option.pageStep;
        slider = static_cast<int>(length * (option.pageStep / pages));
        const int least = pixelMetric(PM_ScrollBarSliderMin, &option, widget);
        slider = std::clamp(slider, std::min(least, length), length);
    }
    const int start = sliderPositionFromValue(option.minimum, option.maximum, option.sliderPosition,
                                              length - slider, option.upsideDown);
    QRect rect;
    switch (part) {
    case SC_ScrollBarGroove:
        rect = QRect(0, 0, length, extent);
        break;
    case SC_ScrollBarSlider:
        rect = QRect(start, 0, slider, extent);
        break;
    case SC_ScrollBarSubPage:
        rect = QRect(0, 0, start, extent);
        break;
    case SC_ScrollBarAddPage:
        rect = QRect(start + slider, 0, length - start - slider, extent);
        break;
    default:
        return {};
    }
    if (!across)
        rect = QRect(rect.y(), rect.x(), rect.height(), rect.width());
    return visualRect(option.direction, option.rect, rect.translated(option.rect.topLeft()));
}

void DraftedStyle::polish(QWidget *widget)
{
    QProxyStyle::polish(widget);
    if (qobject_cast<QPushButton *>(widget) || qobject_cast<QComboBox *>(widget) ||
        qobject_cast<QAbstractSpinBox *>(widget) || qobject_cast<QToolButton *>(widget) ||
        qobject_cast<QScrollBar *>(widget) || qobject_cast<QLineEdit *>(widget) ||
        qobject_cast<QTabBar *>(widget) || qobject_cast<QHeaderView *>(widget))
        widget->setAttribute(Qt::WA_Hover);
    if (auto *text = qobject_cast<QPlainTextEdit *>(widget))
        text->document()->setDocumentMargin(6);
    if (auto *calendar = qobject_cast<QCalendarWidget *>(widget)) {
        calendar->setWeekdayTextFormat(Qt::Saturday, {});
        calendar->setWeekdayTextFormat(Qt::Sunday, {});
        calendar->setVerticalHeaderFormat(QCalendarWidget::NoVerticalHeader);
    }
    if (widget->objectName() == QLatin1String("qt_calendar_navigationbar"))
        widget->setBackgroundRole(QPalette::Base);
    if (auto *button = qobject_cast<QToolButton *>(widget)) {
        if (button->objectName() == QLatin1String("qt_calendar_prevmonth"))
            button->setArrowType(Qt::LeftArrow);
        else if (button->objectName() == QLatin1String("qt_calendar_nextmonth"))
            button->setArrowType(Qt::RightArrow);
    }
    if (auto *view = qobject_cast<QAbstractItemView *>(widget))
        view->viewport()->setAttribute(Qt::WA_Hover);
}

} // namespace ohmwright::ui
