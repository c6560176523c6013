// SPDX-License-Identifier: GPL-3.0-or-later
// How every standard widget is drawn: thin lines on paper, no shading, a blue ring two pixels wide
// around what has the focus. Unavailable controls have a dashed outline, as a wire not yet run.
//
// Three files: sizes and hints (drafted_style.cpp), controls, and views with what surrounds them.
#pragma once

#include "ui/shell/theme.h"

#include <QProxyStyle>

class QPushButton;
class QStyleOptionHeader;
class QStyleOptionMenuItem;
class QStyleOptionSlider;
class QStyleOptionTab;
class QStyleOptionToolButton;

namespace ohmwright::ui {

// The one button of a page or sheet that goes forward: filled with ink.
void makePrimary(QPushButton &button);
[[nodiscard]] bool isPrimary(const QWidget *widget);

// An editor whose content cannot be taken: its outline tells so. See widgets/field.h.
void markWrong(QWidget &editor, bool wrong);

// The ring around what has the focus, 2 pixels wide, just inside `rect`.
void paintFocusRing(QPainter &painter, const QRectF &rect, const Tokens &tokens);

class DraftedStyle : public QProxyStyle
{
    Q_OBJECT

public:
    explicit DraftedStyle(const Tokens &tokens);
    void setTokens(const Tokens &tokens) { m_tokens = tokens; }

    int pixelMetric(PixelMetric metric, const QStyleOption *option,
                    const QWidget *widget) const override;
    int styleHint(StyleHint hint, const QStyleOption *option, const QWidget *widget,
                  QStyleHintReturn *data) const override;
    QSize sizeFromContents(ContentsType type, const QStyleOption *option, const QSize &size,
                           const QWidget *widget) const override;
    QRect subElementRect(SubElement element, const QStyleOption *option,
                         const QWidget *widget) const override;
    QRect subControlRect(ComplexControl control, const QStyleOptionComplex *option, SubControl part,
                         const QWidget *widget) const override;
    void drawPrimitive(PrimitiveElement element, const QStyleOption *option, QPainter *painter,
                       const QWidget *widget) const override;
    void drawControl(ControlElement element, const QStyleOption *option, QPainter *painter,
                     const QWidget *widget) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex *option,
                            QPainter *painter, const QWidget *widget) const override;
    using QProxyStyle::polish;
    void polish(QWidget *widget) override;

private:
    void box(QPainter &painter, const QRect &rect, const QStyleOption &option, const QColor &fill,
             const QWidget *widget) const;
    void chevron(QPainter &painter, const QRectF &rect, Qt::ArrowType way,
                 const QColor &colour) const;
    void drawButton(QPainter &painter, const QStyleOption &option, const QWidget *widget) const;
    void drawPrimaryLabel(QPainter &painter, const QStyleOption &option,
                          const QWidget *widget) const;
    void drawCheck(QPainter &painter, const QStyleOption &option) const;
    void drawRadio(QPainter &painter, const QStyleOption &option) const;
    void drawCombo(QPainter &painter, const QStyleOptionComplex &option,
                   const QWidget *widget) const;
    void drawSpin(QPainter &painter, const QStyleOptionComplex &option,
                  const QWidget *widget) const;
    void drawToolButton(QPainter &painter, const QStyleOptionToolButton &option,
                        const QWidget *widget) const;
    void drawScrollBar(QPainter &painter, const QStyleOptionSlider &option,
                       const QWidget *widget) const;
    void drawMenuItem(QPainter &painter, const QStyleOptionMenuItem &option) const;
    void drawHeaderSection(QPainter &painter, const QStyleOptionHeader &option) const;
    void drawTab(QPainter &painter, const QStyleOptionTab &option) const;
    void drawItemPanel(QPainter &painter, const QStyleOption &option) const;
    void drawSplitter(QPainter &painter, const QStyleOption &option) const;
    bool drawViewPrimitive(PrimitiveElement element, const QStyleOption &option, QPainter &painter,
                           const QWidget *widget) const;
    bool drawViewControl(ControlElement element, const QStyleOption &option, QPainter &painter,
                         const QWidget *widget) const;
    QRect scrollBarRect(const QStyleOptionSlider &option, SubControl part,
                        const QWidget *widget) const;

    Tokens m_tokens;
};

} // namespace ohmwright::ui
