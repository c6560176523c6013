// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/find_line.h"

#include "ui/shell/theme.h"
#include "ui/widgets/icons.h"
#include "ui/widgets/overlay_list.h"

#include <QApplication>
#include <QKeyEvent>
#include <QPainter>

namespace ohmwright::ui {

namespace {
constexpr int kPauseMs = 80; // shorter than the gap between two keys of a fast hand
constexpr int kIcon = 18;
constexpr int kIconLeft = 10;
} // namespace

FindLine::FindLine(const Theme &theme, QWidget *parent)
    : QLineEdit(parent), m_theme(theme), m_list(new OverlayList(theme, *this, tr("What was found")))
{
    setPlaceholderText(tr("Find a part, task, seller, figure…"));
    setAccessibleName(tr("Find in the book"));
    setTextMargins(kIconLeft + kIcon, 0, 0, 0);
    setMinimumWidth(200);
    m_pause.setSingleShot(true);
    m_pause.setInterval(kPauseMs);
    connect(&m_pause, &QTimer::timeout, this, &FindLine::look);
    connect(this, &QLineEdit::textEdited, this, [this] { m_pause.start(); });
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget *before, QWidget *now) {
        if (now == this && before)
            m_cameFrom = before;
    });
    connect(m_list, &OverlayList::picked, this, &FindLine::choose);
    connect(m_list, &OverlayList::highlighted, this, &FindLine::describe);
}

FindLine::~FindLine()
{
    delete m_list;
}

void FindLine::setSource(FindSource *source)
{
    m_source = source;
    m_list->close();
}

void FindLine::begin()
{
    setFocus(Qt::ShortcutFocusReason);
    selectAll();
}

void FindLine::focusInEvent(QFocusEvent *event)
{
    QLineEdit::focusInEvent(event);
    if (event->reason() == Qt::ActiveWindowFocusReason)
        return;
    setAccessibleDescription(tr("Type to find, arrows to choose, Enter to go there."));
}

void FindLine::look()
{
    m_pause.stop();
    m_hits.clear();
    m_hitOfRow.clear();
    const QString wanted = text().trimmed();
    if (wanted.isEmpty()) {
        m_list->close();
        return;
    }
    if (m_source)
        m_hits = m_source->find(wanted);
    std::vector<OverlayRow> rows;
    for (std::size_t i = 0; i < m_hits.size(); ++i) {
        const FindHit &hit = m_hits[i];
        if (!hit.group.isEmpty() && (i == 0 || m_hits[i - 1].group != hit.group)) {
            rows.push_back({.text = hit.group, .detail = {}, .icon = {}, .heading = true});
            m_hitOfRow.push_back(-1);
        }
        rows.push_back({.text = hit.title, .detail = hit.detail, .icon = hit.icon});
        m_hitOfRow.push_back(static_cast<int>(i));
    }
    int first = -1;
    for (std::size_t row = 0; row < rows.size() && first < 0; ++row) {
        if (rows[row].pickable())
            first = static_cast<int>(row);
    }
    if (rows.empty()) {
        rows.push_back({.text = tr("Nothing in the book matches “%1”.").arg(wanted),
                        .detail = {},
                        .icon = {},
                        .heading = false,
                        .quiet = true});
        m_hitOfRow.push_back(-1);
        setAccessibleDescription(rows.front().text);
    }
    m_list->showRows(std::move(rows), first);
    describe(first);
}

void FindLine::describe(int row)
{
    if (!m_list->isOpen() || row < 0)
        return;
    const int hit = m_hitOfRow.at(static_cast<std::size_t>(row));
    if (hit < 0)
        return;
    const FindHit &found = m_hits[static_cast<std::size_t>(hit)];
    setAccessibleDescription(
        tr("%1 of %2 found: %3, %4").arg(hit + 1).arg(m_hits.size()).arg(found.title, found.group));
}

void FindLine::choose(int row)
{
    if (row < 0 || static_cast<std::size_t>(row) >= m_hitOfRow.size())
        return;
    const int hit = m_hitOfRow[static_cast<std::size_t>(row)];
    if (hit < 0)
        return;
    const FindHit chosen = m_hits[static_cast<std::size_t>(hit)];
    m_list->close();
    clear();
    emit hitChosen(chosen);
}

void FindLine::leave()
{
    clear();
    m_list->close();
    if (m_cameFrom && m_cameFrom->isVisible())
        m_cameFrom->setFocus(Qt::OtherFocusReason);
    else
        nextInFocusChain()->setFocus(Qt::TabFocusReason);
}

bool FindLine::event(QEvent *event)
{
    if (event->type() == QEvent::ShortcutOverride &&
        static_cast<QKeyEvent *>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QLineEdit::event(event);
}

void FindLine::keyPressEvent(QKeyEvent *event)
{
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter) {
        if (m_pause.isActive() || !m_list->isOpen())
            look();
        choose(m_list->currentRow());
        return;
    }
    if (event->key() == Qt::Key_Escape) {
        if (m_list->isOpen())
            m_list->close();
        else
            leave();
        return;
    }
    if (event->key() == Qt::Key_Down && !m_list->isOpen()) {
        look();
        return;
    }
    if (m_list->isOpen() && m_list->step(event->key()))
        return;
    QLineEdit::keyPressEvent(event);
}

void FindLine::paintEvent(QPaintEvent *event)
{
    QLineEdit::paintEvent(event);
    const Tokens &tokens = m_theme.tokens();
    QPainter painter(this);
    paintIcon(painter, QRectF(kIconLeft, (height() - kIcon) / 2.0, kIcon, kIcon),
              QStringLiteral("find"), hasFocus() ? tokens.blue : tokens.mute);
    if (hasFocus() || !text().isEmpty())
        return;
    painter.setFont(m_theme.font(Lettering::Small));
    painter.setPen(tokens.mute);
    const QString keys = tr("Ctrl+F");
    const int room = painter.fontMetrics().horizontalAdvance(keys) + 12;
    const int taken = kIconLeft + kIcon + 10 + fontMetrics().horizontalAdvance(placeholderText());
    if (width() - taken > room)
        painter.drawText(rect().adjusted(0, 0, -12, 0), Qt::AlignRight | Qt::AlignVCenter, keys);
}

} // namespace ohmwright::ui
