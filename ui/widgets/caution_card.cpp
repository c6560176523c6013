// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/caution_card.h"

#include "ui/shell/theme.h"
#include "ui/widgets/hv_tag.h"
#include "ui/widgets/icons.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QToolButton>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {
constexpr int kLeft = 58; // the triangle's column
constexpr int kAround = 14;
} // namespace

CautionCard::CautionCard(const Theme &theme, const QString &title, const QStringList &lines,
                         QWidget *parent)
    : QFrame(parent), m_theme(theme), m_title(title), m_body(new QWidget),
      m_lines(new QVBoxLayout(m_body)), m_tag(new HvTag(theme)), m_fold(new QToolButton)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(kLeft, kAround, kAround + 2, kAround);
    column->setSpacing(6);
    auto *top = new QHBoxLayout;
    top->setSpacing(10);
    auto *heading = new QLabel(tr("Caution: %1").arg(title));
    heading->setFont(theme.font(Lettering::Strong));
    heading->setTextFormat(Qt::PlainText);
    heading->setWordWrap(true);
    top->addWidget(heading, 1);
    top->addWidget(m_tag, 0, Qt::AlignTop);
    top->addWidget(m_fold, 0, Qt::AlignTop);
    m_tag->hide();
    m_fold->hide();
    column->addLayout(top);
    m_lines->setContentsMargins(0, 0, 0, 0);
    m_lines->setSpacing(4);
    column->addWidget(m_body);
    connect(m_fold, &QToolButton::clicked, this, [this] { showFolded(!isFolded()); });
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    setMinimumHeight(64);
    setLines(lines);
}

void CautionCard::setHighVoltage(bool highVoltage)
{
    m_highVoltage = highVoltage;
    m_tag->setVisible(highVoltage);
    update();
}

void CautionCard::fold()
{
    showFolded(true);
}

bool CautionCard::isFolded() const
{
    return m_body->isHidden();
}

void CautionCard::showFolded(bool folded)
{
    m_body->setHidden(folded);
    m_fold->show();
    m_fold->setText(folded ? tr("Read it") : tr("Fold"));
    m_fold->setAccessibleName(folded ? tr("Read the caution: %1").arg(m_title)
                                     : tr("Fold the caution: %1").arg(m_title));
}

void CautionCard::setLines(const QStringList &lines)
{
    while (QLayoutItem *item = m_lines->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    for (const QString &line : lines) {
        auto *label = new QLabel(line);
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        m_lines->addWidget(label);
    }
}

void CautionCard::paintEvent(QPaintEvent *)
{
    const Tokens &tokens = m_theme.tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF frame = QRectF(rect()).adjusted(1, 1, -1, -1);
    const QColor edge = m_highVoltage ? tokens.highVoltage : tokens.ink;
    painter.setPen(QPen(edge, 2, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(tokens.panel);
    painter.drawRect(frame);
    painter.setPen(QPen(edge, 0.75));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(frame.adjusted(3.5, 3.5, -3.5, -3.5));
    paintIcon(painter, QRectF(17, kAround - 2, 28, 28), QStringLiteral("caution"), tokens.ink);
}

} // namespace ohmwright::ui
