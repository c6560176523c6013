// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/empty_page.h"

#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/icons.h"

#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QResizeEvent>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

constexpr int kColumn = 460; // pixels: about sixty letters a line

// The icon large, between the dimension lines of a drawing that is still to be filled in.
class EmptyDrawing : public QWidget
{
public:
    EmptyDrawing(const Theme &theme, QString icon) : m_theme(theme), m_icon(std::move(icon))
    {
        setFixedSize(120, 92);
    }

protected:
    void paintEvent(QPaintEvent *) override
    {
        const Tokens &tokens = m_theme.tokens();
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        paintIcon(painter, QRectF(32, 8, 56, 56), m_icon, tokens.mute);
        painter.setPen(QPen(tokens.mute, 1));
        const double y = 82.5;
        painter.drawLine(QPointF(20, y), QPointF(100, y));
        for (const double x : {20.5, 99.5}) {
            painter.drawLine(QPointF(x, y - 6), QPointF(x, y + 6));
            painter.drawLine(QPointF(x - 4, y + 4), QPointF(x + 4, y - 4));
        }
    }

private:
    const Theme &m_theme;
    QString m_icon;
};

} // namespace

EmptyPage::EmptyPage(const Theme &theme, const QString &icon, const QString &heading,
                     const QString &sentences, const QString &buttonText, QWidget *parent)
    : QWidget(parent), m_text(new QLabel(sentences))
{
    auto *column = new QVBoxLayout(this);
    column->setSpacing(10);
    column->addStretch(2);
    column->addWidget(new EmptyDrawing(theme, icon), 0, Qt::AlignHCenter);
    column->addSpacing(6);

    auto *title = new QLabel(heading);
    title->setFont(theme.font(Lettering::Heading));
    title->setAlignment(Qt::AlignHCenter);
    title->setWordWrap(true);
    column->addWidget(title);

    m_text->setWordWrap(true);
    m_text->setAlignment(Qt::AlignHCenter);
    m_text->setForegroundRole(QPalette::PlaceholderText);
    column->addWidget(m_text, 0, Qt::AlignHCenter);
    column->addSpacing(8);

    if (!buttonText.isEmpty()) {
        m_button = new QPushButton(buttonText);
        makePrimary(*m_button);
        m_button->setAccessibleDescription(sentences);
        column->addWidget(m_button, 0, Qt::AlignHCenter);
        connect(m_button, &QPushButton::clicked, this, &EmptyPage::started);
        setFocusProxy(m_button);
    }
    column->addStretch(3);
    setMinimumWidth(240);
}

QPushButton *EmptyPage::addButton(const QString &text)
{
    auto *button = new QPushButton(text);
    auto *column = qobject_cast<QVBoxLayout *>(layout());
    column->insertWidget(column->count() - 1, button, 0, Qt::AlignHCenter);
    return button;
}

void EmptyPage::resizeEvent(QResizeEvent *event)
{
    // a layout would give wrapped words the height they need at some other width
    const int width = std::min(kColumn, event->size().width() - 48);
    m_text->setFixedSize(width, m_text->heightForWidth(width));
    QWidget::resizeEvent(event);
}

} // namespace ohmwright::ui
