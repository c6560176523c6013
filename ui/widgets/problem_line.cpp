// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/problem_line.h"

#include "ui/shell/theme.h"
#include "ui/widgets/icons.h"

#include <QPainter>

namespace ohmwright::ui {

namespace {
constexpr int kShapeRoom = 22;
} // namespace

ProblemLine::ProblemLine(const Theme &theme, QWidget *parent) : QLabel(parent), m_theme(theme)
{
    setWordWrap(true);
    setTextFormat(Qt::PlainText);
    setTextInteractionFlags(Qt::NoTextInteraction);
    setContentsMargins(kShapeRoom, 2, 0, 2);
    hide();
}

void ProblemLine::setProblem(const QString &sentence)
{
    setText(sentence);
    setVisible(!sentence.isEmpty());
}

void ProblemLine::paintEvent(QPaintEvent *)
{
    // painted here so that the colour follows a change of shade
    const QColor colour = m_theme.tokens().fails;
    QPainter painter(this);
    paintIcon(painter, QRectF(0, 3, 16, 16), QStringLiteral("caution"), colour);
    painter.setPen(colour);
    painter.drawText(contentsRect(), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, text());
}

} // namespace ohmwright::ui
