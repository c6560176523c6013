// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/message_strip.h"

#include "ui/shell/theme.h"
#include "ui/widgets/icons.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QToolButton>

namespace ohmwright::ui {

MessageStrip::MessageStrip(const Theme &theme, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_shape(new QWidget), m_sentence(new QLabel),
      m_action(new QPushButton), m_close(new QToolButton)
{
    m_shape->setFixedSize(20, 20);
    m_sentence->setTextFormat(Qt::PlainText);
    m_sentence->setWordWrap(true);
    m_close->setIcon(themedIcon(theme, QStringLiteral("close")));
    m_close->setAutoRaise(true);
    // by Tab alone: a click must not take the keys from the form that is being filled in
    m_close->setFocusPolicy(Qt::TabFocus);
    m_close->setAccessibleName(tr("Dismiss the message"));
    m_close->setToolTip(tr("Dismiss (Escape)"));

    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(16, 6, 10, 6);
    row->setSpacing(10);
    row->addWidget(m_shape);
    row->addWidget(m_sentence, 1);
    row->addWidget(m_action);
    row->addWidget(m_close);
    setAccessibleName(tr("Message"));
    hide();
    connect(m_close, &QToolButton::clicked, this, &MessageStrip::dismiss);
    connect(m_action, &QPushButton::clicked, this, [this] {
        const auto todo = std::move(m_do);
        dismiss();
        if (todo)
            todo();
    });
}

void MessageStrip::say(const QString &sentence, Tone tone)
{
    sayWithAction(sentence, {}, {}, tone);
}

void MessageStrip::sayWithAction(const QString &sentence, const QString &actionText,
                                 std::function<void()> action, Tone tone)
{
    m_tone = tone;
    m_do = std::move(action);
    m_sentence->setText(tone == Tone::Problem ? tr("Problem: %1").arg(sentence) : sentence);
    m_action->setText(actionText);
    m_action->setVisible(!actionText.isEmpty());
    show();
    update();
    // the words first, so that who is told of the alert reads the new ones
    QAccessibleEvent renamed(m_sentence, QAccessible::NameChanged);
    QAccessible::updateAccessibility(&renamed);
    QAccessibleEvent alert(m_sentence, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

void MessageStrip::dismiss()
{
    if (!isVisible())
        return;
    const bool heldFocus = m_close->hasFocus() || m_action->hasFocus();
    hide();
    m_do = nullptr;
    if (heldFocus)
        emit dismissed();
}

QString MessageStrip::sentence() const
{
    return isHidden() ? QString() : m_sentence->text();
}

void MessageStrip::paintEvent(QPaintEvent *)
{
    const Tokens &tokens = m_theme.tokens();
    const bool problem = m_tone == Tone::Problem;
    QPainter painter(this);
    painter.fillRect(rect(), tokens.panel);
    painter.fillRect(QRectF(0, 0, width(), 1.5), problem ? tokens.fails : tokens.ink);
    paintIcon(painter, m_shape->geometry(),
              problem ? QStringLiteral("caution") : QStringLiteral("book"),
              problem ? tokens.fails : tokens.mute);
}

} // namespace ohmwright::ui
