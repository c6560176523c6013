// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/field.h"

#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/icons.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

// The triangle beside a problem: what is wrong is not told by colour alone.
class CautionShape : public QWidget
{
public:
    explicit CautionShape(const Theme &theme) : m_theme(theme) { setFixedSize(15, 15); }

protected:
    void paintEvent(QPaintEvent *) override
    {
        QPainter painter(this);
        paintIcon(painter, rect(), QStringLiteral("caution"), m_theme.tokens().fails);
    }

private:
    const Theme &m_theme;
};

// Takes its colour from the theme each time, so that it follows a change of shade.
class MessageLabel : public QLabel
{
public:
    explicit MessageLabel(const Theme &theme) : m_theme(theme)
    {
        setTextFormat(Qt::PlainText);
        setWordWrap(true);
        setFont(theme.font(Lettering::Small));
        setForegroundRole(QPalette::PlaceholderText);
    }

    void setWrong(bool wrong)
    {
        m_wrong = wrong;
        colour();
    }

protected:
    void changeEvent(QEvent *event) override
    {
        QLabel::changeEvent(event);
        if (event->type() == QEvent::PaletteChange && !m_colouring)
            colour();
    }

private:
    void colour()
    {
        m_colouring = true;
        QPalette own;
        if (m_wrong)
            own.setColor(QPalette::PlaceholderText, m_theme.tokens().fails);
        setPalette(own);
        m_colouring = false;
    }

    const Theme &m_theme;
    bool m_wrong = false;
    bool m_colouring = false;
};

QString withoutMnemonic(QString label)
{
    static const QString kAnd = QStringLiteral("&");
    const QString keep(QChar(0xE000));
    label.replace(QStringLiteral("&&"), keep);
    label.remove(kAnd);
    return label.replace(keep, kAnd);
}

} // namespace

Field::Field(const Theme &theme, const QString &label, QWidget *editor, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_label(new QLabel(label)), m_editor(editor),
      m_messageRow(new QWidget), m_shape(new CautionShape(theme)),
      m_message(new MessageLabel(theme))
{
    m_label->setFont(theme.font(Lettering::Small));
    m_label->setBuddy(editor);
    m_editor->setAccessibleName(withoutMnemonic(label));

    auto *row = new QHBoxLayout(m_messageRow);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(6);
    row->addWidget(m_shape, 0, Qt::AlignTop);
    row->addWidget(m_message, 1);

    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(m_label);
    column->addWidget(m_editor);
    column->addWidget(m_messageRow);
    setFocusProxy(editor);
    showMessage();
}

void Field::setHint(const QString &hint)
{
    m_hint = hint;
    showMessage();
}

void Field::setProblem(const QString &sentence)
{
    m_problem = sentence;
    showMessage();
}

QString Field::message() const
{
    return m_problem.isEmpty() ? m_hint : m_problem;
}

void Field::keepMessageLine(bool keep)
{
    m_keepLine = keep;
    showMessage();
}

void Field::showMessage()
{
    const QString text = message();
    m_message->setText(text);
    static_cast<MessageLabel *>(m_message)->setWrong(hasProblem());
    m_shape->setVisible(hasProblem());
    m_messageRow->setVisible(m_keepLine || !text.isEmpty());
    m_message->setMinimumHeight(m_keepLine ? m_message->fontMetrics().height() : 0);
    m_editor->setAccessibleDescription(text);
    markWrong(*m_editor, hasProblem());
}

} // namespace ohmwright::ui
