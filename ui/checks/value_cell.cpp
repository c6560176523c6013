// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/value_cell.h"

#include "core/verdicts/edit_input.h"
#include "ui/checks/check_words.h"
#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"

#include <QClipboard>
#include <QFontMetricsF>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QPointer>
#include <QScopedValueRollback>
#include <QtMath>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kSide = 8; // room for the focus ring beside the figure
constexpr int kAbove = 3;
constexpr int kLeastLine = 132; // of a line to type in
constexpr int kMostWords = 220;
constexpr double kUnitGap = 0.3;

// Every digit the book has, not the four a check shows.
QString editText(const CheckInput &input)
{
    return input.value ? showAmount(*input.value, NumberStyle::pointDecimal()) : input.shown;
}

} // namespace

Result<QString> readTyped(const CheckInput &input, const QString &typed)
{
    QString text = typed.trimmed();
    if (text.isEmpty())
        return fail(ProblemCode::BadInput, ValueCell::tr("Nothing is typed."),
                    ValueCell::tr("Escape leaves the value as it was."), input.origin.field);
    if (!input.value)
        return text;
    const TypedFigure split = splitTyped(text);
    const Result<Amount> amount = parseAmount(split.value, NumberStyle::pointDecimal(),
                                              input.value->measure(), input.value->unit());
    if (!amount)
        return fail(amount.error());
    QStringList read{printAmount(*amount)};
    if (split.evidence)
        read << wordOf(*split.evidence);
    if (!split.source.isEmpty())
        read << split.source;
    return read.join(QStringLiteral(", "));
}

ValueCell::ValueCell(const Theme &theme, const CheckInput &input, Save save, QWidget *parent)
    : QAbstractButton(parent), m_theme(theme), m_input(input), m_save(std::move(save)),
      m_figure(splitFigure(input.shown.isEmpty() ? tr("not known") : input.shown))
{
    setFont(theme.font(Lettering::Body));
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    setCursor(Qt::IBeamCursor);
    setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);
    const QString shown = input.shown.isEmpty() ? tr("not known") : input.shown;
    setText(shown);
    setAccessibleName(tr("%1: %2").arg(input.origin.name, shown));
    setAccessibleDescription(tr("Enter edits the value."));
    const QString hint = tr("Enter or F2 edits the value");
    setToolTip(input.value ? hint : QString(shown + QLatin1Char('\n') + hint));
    connect(this, &QAbstractButton::clicked, this, [this] { startEditing(); });
}

void ValueCell::setDecimals(int digits)
{
    m_decimals = digits;
    updateGeometry();
    update();
}

void ValueCell::setUnitRoom(const QString &widestUnit)
{
    m_widestUnit = widestUnit;
    updateGeometry();
    update();
}

QString ValueCell::typed() const
{
    return m_line ? m_line->text() : QString();
}

void ValueCell::startEditing(const std::optional<QString> &typed)
{
    if (m_line)
        return;
    m_line = new QLineEdit(this);
    m_line->setPlaceholderText(tr("450 V, nameplate, photo 3"));
    m_line->setToolTip(
        tr("The value with its unit, then where it comes from: datasheet, nameplate, "
           "service manual, measured, seller, community. Without that it counts as "
           "assumed."));
    m_line->setAccessibleName(m_input.origin.name);
    m_line->setAlignment(Qt::AlignRight);
    m_line->setText(typed.value_or(editText(m_input)));
    if (!typed)
        m_line->selectAll();
    m_line->installEventFilter(this);
    setTabOrder(this, m_line);
    setFocusPolicy(Qt::NoFocus); // the second half of a double click stays with the line
    updateGeometry();
    m_line->setGeometry(rect());
    m_line->show();
    m_line->setFocus(Qt::OtherFocusReason);
    connect(m_line, &QLineEdit::textEdited, this, [this] { showProblem({}); });
    emit editingStarted();
}

void ValueCell::stopEditing()
{
    if (!m_line)
        return;
    QLineEdit *line = m_line;
    m_line = nullptr; // losing the focus on the way must not take the text once more
    const bool hadFocus = line->hasFocus();
    setFocusPolicy(Qt::StrongFocus);
    if (hadFocus)
        setFocus(Qt::OtherFocusReason);
    line->hide();
    line->deleteLater();
    showProblem({});
    updateGeometry();
    update();
}

void ValueCell::letGo()
{
    if (m_line && !m_taking)
        m_line->removeEventFilter(this);
}

void ValueCell::showProblem(const QString &sentence)
{
    if (m_line) {
        markWrong(*m_line, !sentence.isEmpty());
        m_line->setAccessibleDescription(sentence);
    }
    if (m_problem == sentence)
        return;
    m_problem = sentence;
    emit problemChanged(sentence);
}

void ValueCell::take()
{
    if (!m_line || m_taking)
        return;
    const QScopedValueRollback taking(m_taking, true);
    if (m_line->text().trimmed() == editText(m_input)) {
        stopEditing();
        return;
    }
    const Result<QString> read = readTyped(m_input, m_line->text());
    if (!read) {
        showProblem(toldOf(read.error()));
        return;
    }
    // saving may show the check anew, with another cell in this one's place
    const QPointer<ValueCell> still(this);
    const Outcome saved = m_save(m_input.origin.field, *read);
    if (!still)
        return;
    if (saved)
        stopEditing();
    else
        showProblem(toldOf(saved.error()));
}

bool ValueCell::eventFilter(QObject *watched, QEvent *event)
{
    if (watched == m_line && m_line) {
        if (event->type() == QEvent::KeyPress) {
            const int key = static_cast<QKeyEvent *>(event)->key();
            if (key == Qt::Key_Return || key == Qt::Key_Enter) {
                take();
                return true;
            }
            if (key == Qt::Key_Escape) {
                stopEditing();
                return true;
            }
        } else if (event->type() == QEvent::FocusOut) {
            const Qt::FocusReason reason = static_cast<QFocusEvent *>(event)->reason();
            if (reason != Qt::PopupFocusReason && reason != Qt::ActiveWindowFocusReason)
                take();
        }
    }
    return QAbstractButton::eventFilter(watched, event);
}

void ValueCell::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_F2 || event->key() == Qt::Key_Return ||
        event->key() == Qt::Key_Enter) {
        startEditing();
        return;
    }
    if (event->matches(QKeySequence::Copy)) {
        QGuiApplication::clipboard()->setText(text());
        return;
    }
    QAbstractButton::keyPressEvent(event);
}

void ValueCell::mouseDoubleClickEvent(QMouseEvent *)
{
    startEditing();
}

void ValueCell::resizeEvent(QResizeEvent *event)
{
    QAbstractButton::resizeEvent(event);
    if (m_line)
        m_line->setGeometry(rect());
}

QSize ValueCell::sizeHint() const
{
    const QFontMetricsF metrics(font());
    if (!m_input.value) { // words: a long one is cut short, and whole where it is pointed at
        const int words = qCeil(metrics.horizontalAdvance(text())) + 2 * kSide + 1;
        return {std::clamp(words, m_line ? kLeastLine : 0, kMostWords),
                m_line ? m_line->sizeHint().height() : qCeil(metrics.height()) + 2 * kAbove};
    }
    const double unit =
        std::max(metrics.horizontalAdvance(m_figure.unit), metrics.horizontalAdvance(m_widestUnit));
    const double fraction =
        std::max(fractionWidth(metrics, m_decimals), tabularWidth(metrics, m_figure.fraction));
    const double gap = unit > 0 ? metrics.height() * kUnitGap : 0;
    int width = qCeil(tabularWidth(metrics, m_figure.whole) + fraction + gap + unit) + 2 * kSide;
    int height = qCeil(metrics.height()) + 2 * kAbove;
    if (m_line) {
        width = std::max(width, kLeastLine);
        height = std::max(height, m_line->sizeHint().height());
    }
    return {width, height};
}

void ValueCell::paintEvent(QPaintEvent *)
{
    if (m_line)
        return;
    const Tokens &tokens = m_theme.tokens();
    QPainter painter(this);
    if (underMouse())
        painter.fillRect(rect(), tokens.hover());
    painter.setFont(font());
    painter.setPen(m_input.shown.isEmpty() ? tokens.unknown : tokens.ink);
    const QRectF room = QRectF(rect()).adjusted(kSide, 0, -kSide, 0);
    if (m_input.value)
        paintFigure(painter, room, m_figure, m_decimals,
                    QFontMetricsF(font()).horizontalAdvance(m_widestUnit), tokens.mute);
    else
        painter.drawText(room, Qt::AlignRight | Qt::AlignVCenter | Qt::TextSingleLine,
                         fontMetrics().elidedText(text(), Qt::ElideRight, qFloor(room.width())));
    // the dotted line of a form: here one may write
    QPen dotted(tokens.mute, 1);
    dotted.setDashPattern({1, 2});
    painter.setPen(dotted);
    painter.drawLine(QPointF(room.left(), height() - 1.5), QPointF(room.right(), height() - 1.5));
    if (hasFocus())
        paintFocusRing(painter, QRectF(rect()), tokens);
}

} // namespace ohmwright::ui
