// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/state_mark.h"

#include "ui/shell/theme.h"

#include <QFontMetrics>
#include <QPainter>

#include <algorithm>

namespace ohmwright::ui {

namespace {
constexpr int kShape = 16;
constexpr int kGap = 7;
} // namespace

StateMark::StateMark(const Theme &theme, Mark mark, QWidget *parent)
    : QLabel(parent), m_theme(theme), m_mark(mark)
{
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    setWords(markWord(mark));
}

void StateMark::setMark(Mark mark)
{
    m_mark = mark;
    setWords(markWord(mark));
}

void StateMark::setWords(const QString &words)
{
    setText(words);
    updateGeometry();
    update();
}

QSize StateMark::sizeHint() const
{
    const QFontMetrics metrics = fontMetrics();
    return {kShape + kGap + metrics.horizontalAdvance(text()) + 2,
            std::max(metrics.height(), kShape) + 4};
}

QSize StateMark::minimumSizeHint() const
{
    return {kShape + kGap + fontMetrics().horizontalAdvance(QStringLiteral("MMM")),
            sizeHint().height()};
}

void StateMark::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    const QColor colour = markColour(m_mark, m_theme.tokens());
    paintMark(painter, QRectF(0, (height() - kShape) / 2.0, kShape, kShape), m_mark, colour);
    painter.setPen(colour);
    const QRect words = rect().adjusted(kShape + kGap, 0, 0, 0);
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter,
                     fontMetrics().elidedText(text(), Qt::ElideRight, words.width()));
}

} // namespace ohmwright::ui
