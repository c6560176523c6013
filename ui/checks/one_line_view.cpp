// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/one_line_view.h"

#include "ui/shell/outside.h"
#include "ui/shell/theme.h"
#include "ui/widgets/section_title.h"
#include "ui/widgets/spoken_role.h"

#include <QEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QSaveFile>
#include <QScrollArea>
#include <QSvgRenderer>
#include <QVBoxLayout>

#include <algorithm>
#include <functional>

namespace ohmwright::ui {

namespace {

// Smaller, its letters could not be read; then it is scrolled instead.
constexpr double kSmallest = 0.85;
constexpr double kLargest = 1.6;

// Draws the SVG as large as there is room for, within reason.
class Canvas : public QWidget
{
public:
    void setRoom(const QSize &room)
    {
        m_room = room;
        fit();
    }
    void setLine(const OneLine &line)
    {
        m_svg.load(line.svg);
        m_size = QSizeF(line.width, line.height);
        setMinimumWidth(static_cast<int>(m_size.width() * kSmallest));
        fit();
    }

protected:
    void paintEvent(QPaintEvent *) override
    {
        if (m_size.isEmpty())
            return;
        QPainter painter(this);
        const QSizeF drawn = m_size * scale();
        m_svg.render(&painter,
                     QRectF(QPointF(std::max(0.0, (width() - drawn.width()) / 2), 0), drawn));
    }

private:
    [[nodiscard]] double scale() const
    {
        if (m_size.isEmpty() || m_room.isEmpty())
            return 1;
        const double wide = m_room.width() / m_size.width();
        const double high = m_room.height() / m_size.height();
        return std::clamp(std::min(wide, high), kSmallest, kLargest);
    }
    void fit()
    {
        setFixedHeight(static_cast<int>(m_size.height() * scale()));
        update();
    }

    QSvgRenderer m_svg;
    QSizeF m_size;
    QSize m_room;
};

DiagramColours coloursOf(const Theme &theme)
{
    const Tokens tokens = theme.tokens();
    return {tokens.ink.name(), tokens.mute.name(), tokens.highVoltage.name(), tokens.panel.name()};
}

} // namespace

OneLineView::OneLineView(Book &book, const Theme &theme, Outside &outside, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_outside(outside),
      m_title(new SectionTitle(theme, tr("One-line diagram"))),
      m_save(new QPushButton(tr("&Save as SVG…"))), m_canvas(new Canvas), m_scroll(new QScrollArea),
      m_open(new QLabel)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(20, 14, 20, 12);
    column->setSpacing(12);
    column->addWidget(m_title);
    m_title->addAtEnd(m_save);
    m_scroll->setWidget(m_canvas);
    // one ground from frame to frame: the drawing brings its own
    m_scroll->setBackgroundRole(QPalette::Base);
    m_canvas->setBackgroundRole(QPalette::Base);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFocusPolicy(Qt::StrongFocus);
    speakAs(*m_scroll, QAccessible::Graphic);
    m_scroll->viewport()->installEventFilter(this);
    column->addWidget(m_scroll, 1);
    m_open->setWordWrap(true);
    m_open->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column->addWidget(m_open);
    setFocusProxy(m_scroll);
    connect(m_save, &QPushButton::clicked, this, &OneLineView::save);
    connect(&book, &Book::changed, this, &OneLineView::bookChanged);
    connect(&theme, &Theme::changed, this, &OneLineView::bookChanged);
}

void OneLineView::bookChanged()
{
    m_behind = true;
    if (isVisible())
        refresh();
}

bool OneLineView::eventFilter(QObject *watched, QEvent *event)
{
    if (watched == m_scroll->viewport() && event->type() == QEvent::Resize)
        static_cast<Canvas *>(m_canvas)->setRoom(m_scroll->viewport()->size());
    return QWidget::eventFilter(watched, event);
}

void OneLineView::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_behind)
        refresh();
}

void OneLineView::refresh()
{
    m_behind = false;
    m_line = oneLineOf(m_book.records(), coloursOf(m_theme));
    static_cast<Canvas *>(m_canvas)->setLine(m_line);
    m_scroll->setAccessibleName(tr("One-line diagram of the traction circuit"));
    m_scroll->setAccessibleDescription(m_line.description);
    m_save->setEnabled(!m_line.svg.isEmpty());
    m_open->setText(
        m_line.svg.isEmpty()
            ? tr("The book has no traction circuit yet. Add it among the circuits on "
                 "the Parts page, and say on each part what it does.")
        : m_line.notDrawn.isEmpty()
            ? tr("Symbols after IEC 60617; one line stands for both poles.")
            : tr("Left open by the book: %1").arg(m_line.notDrawn.join(QStringLiteral(" "))));
}

void OneLineView::save()
{
    const QString path = m_outside.chooseSaveFile(
        this, tr("Save the diagram"), tr("One-line diagram.svg"), tr("SVG drawing (*.svg)"));
    if (path.isEmpty())
        return;
    QSaveFile file(path);
    const QByteArray svg = oneLineOf(m_book.records()).svg; // in the colours of paper
    if (!file.open(QIODevice::WriteOnly) || file.write(svg) != svg.size() || !file.commit())
        emit said(tr("The diagram could not be written to %1: %2.").arg(path, file.errorString()),
                  Tone::Problem);
    else
        emit said(tr("Wrote %1.").arg(path), Tone::Told);
}

} // namespace ohmwright::ui
