// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/shell_window.h"

#include "ui/shell/find_line.h"
#include "ui/shell/keys_window.h"
#include "ui/shell/theme.h"
#include "ui/shell/thumb_index.h"
#include "ui/widgets/field.h"
#include "ui/widgets/icons.h"
#include "ui/widgets/tab_order.h"

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QKeySequence>
#include <QMenu>
#include <QPainter>
#include <QScrollArea>
#include <QShortcut>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kCompactBelow = 1100; // pixels of window width: a page beside needs the rest

// The rules of a printed page under the top line: one firm, one fine.
class TopLine : public QWidget
{
public:
    explicit TopLine(const Theme &theme) : m_theme(theme) {}

protected:
    void paintEvent(QPaintEvent *) override
    {
        const Tokens &tokens = m_theme.tokens();
        QPainter painter(this);
        painter.fillRect(QRectF(0, height() - 4.5, width(), 1.5), tokens.ink);
        painter.fillRect(QRectF(0, height() - 1, width(), 1), tokens.hairline());
    }

private:
    const Theme &m_theme;
};

// The page's cut edge from the rules down to the first tab.
class PageEdge : public QWidget
{
public:
    explicit PageEdge(const Theme &theme) : m_theme(theme) { setFixedHeight(12); }

protected:
    void paintEvent(QPaintEvent *) override
    {
        QPainter painter(this);
        painter.fillRect(QRectF(0, 0, 1.5, height()), m_theme.tokens().ink);
    }

private:
    const Theme &m_theme;
};

QToolButton *makeTool(const Theme &theme, const QString &icon)
{
    auto *button = new QToolButton;
    button->setIcon(themedIcon(theme, icon));
    button->setIconSize(QSize(22, 22));
    button->setAutoRaise(true);
    button->setFocusPolicy(Qt::StrongFocus);
    return button;
}

bool holds(const QWidget *outer, const QWidget *inner)
{
    return inner && (outer == inner || outer->isAncestorOf(inner));
}

QWidget *firstStop(QWidget *zone)
{
    const std::vector<QWidget *> stops = tabStops(*zone);
    return stops.empty() ? nullptr : stops.front();
}

// A field with its label and the hint below it, whatever of it has the focus.
QWidget *wholeOf(QWidget *focused)
{
    for (QWidget *at = focused; at && !at->isWindow(); at = at->parentWidget())
        if (qobject_cast<Field *>(at))
            return at;
    return focused;
}

// A jump to a field by its letter leaves scrolling to whoever jumped.
void bringIntoSight(QWidget *focused)
{
    constexpr int kAround = 12;
    QWidget *shown = wholeOf(focused);
    for (QWidget *at = shown->parentWidget(); at; at = at->parentWidget())
        if (auto *area = qobject_cast<QScrollArea *>(at);
            area && area->widget() && area->widget()->isAncestorOf(shown))
            area->ensureWidgetVisible(shown, kAround, kAround);
}

} // namespace

ShellWindow::ShellWindow(Theme &theme, QWidget *parent)
    : QMainWindow(parent), m_theme(theme), m_book(new QToolButton), m_bookMenu(new QMenu(this)),
      m_find(new FindLine(theme)), m_undo(makeTool(theme, QStringLiteral("undo"))),
      m_redo(makeTool(theme, QStringLiteral("redo"))),
      m_shade(makeTool(theme, QStringLiteral("moon"))), m_keys(new QAction(tr("&Keys"), this)),
      m_index(new ThumbIndex(theme)), m_stack(new QStackedWidget),
      m_messages(new MessageStrip(theme)), m_topLine(makeTopLine())
{
    auto *all = new QWidget;
    auto *column = new QVBoxLayout(all);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_topLine);
    auto *spread = new QHBoxLayout;
    spread->setSpacing(0);
    auto *edge = new QVBoxLayout;
    edge->setSpacing(0);
    edge->addWidget(new PageEdge(theme));
    edge->addWidget(m_index, 1);
    spread->addWidget(m_stack, 1);
    spread->addLayout(edge);
    column->addLayout(spread, 1);
    column->addWidget(m_messages);
    setCentralWidget(all);
    setMinimumSize(520, 380);
    resize(1280, 800);

    setBookTitle({});
    setUndoStep({});
    setRedoStep({});
    showShade();
    makeShortcuts();
    connect(&m_theme, &Theme::changed, this, &ShellWindow::showShade);
    connect(m_shade, &QToolButton::clicked, this, [this] {
        m_theme.setShade(m_theme.shade() == Shade::Dark ? Shade::Light : Shade::Dark);
    });
    connect(m_index, &ThumbIndex::currentChanged, this, &ShellWindow::turnTo);
    connect(m_index, &ThumbIndex::leafEntered, this, &ShellWindow::enterPage);
    connect(m_find, &FindLine::hitChosen, this, &ShellWindow::hitChosen);
    connect(m_undo, &QToolButton::clicked, this, &ShellWindow::undoWanted);
    connect(m_redo, &QToolButton::clicked, this, &ShellWindow::redoWanted);
    connect(m_messages, &MessageStrip::dismissed, this, &ShellWindow::enterPage);
    connect(qApp, &QApplication::focusChanged, this,
            [this](QWidget *, QWidget *now) { rememberFocus(now); });
}

QWidget *ShellWindow::makeTopLine()
{
    m_book->setIcon(themedIcon(m_theme, QStringLiteral("book")));
    m_book->setIconSize(QSize(24, 24));
    m_book->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    m_book->setPopupMode(QToolButton::InstantPopup);
    m_book->setMenu(m_bookMenu);
    m_book->setAutoRaise(true);
    m_book->setFocusPolicy(Qt::StrongFocus);
    m_book->setFont(m_theme.font(Lettering::Heading));
    m_book->setToolTip(tr("New, open, copies (F10)"));
    m_book->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed);
    m_find->setMaximumWidth(520);

    auto *line = new TopLine(m_theme);
    auto *row = new QHBoxLayout(line);
    row->setContentsMargins(12, 9, 12, 14);
    row->setSpacing(6);
    row->addWidget(m_book);
    row->addStretch(1);
    row->addWidget(m_find, 6);
    row->addStretch(1);
    row->addWidget(m_undo);
    row->addWidget(m_redo);
    row->addSpacing(6);
    row->addWidget(m_shade);
    return line;
}

void ShellWindow::makeShortcuts()
{
    const auto add = [this](const QKeySequence &keys, auto &&act) {
        auto *shortcut = new QShortcut(keys, this);
        connect(shortcut, &QShortcut::activated, this, act);
    };
    add(QKeySequence::Find, [this] { m_find->begin(); });
    add(QKeySequence(Qt::Key_Slash), [this] { m_find->begin(); });
    add(QKeySequence(Qt::CTRL | Qt::Key_Z), [this] { m_undo->click(); });
    add(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), [this] { m_redo->click(); });
    add(QKeySequence(Qt::CTRL | Qt::Key_Y), [this] { m_redo->click(); });
    add(QKeySequence(Qt::Key_F9), [this] { m_shade->click(); });
    add(QKeySequence(Qt::Key_F6), [this] { nextZone(false); });
    add(QKeySequence(Qt::SHIFT | Qt::Key_F6), [this] { nextZone(true); });
    add(QKeySequence(Qt::Key_F10), [this] {
        m_book->setFocus(Qt::ShortcutFocusReason);
        m_book->showMenu();
    });
    m_keys->setShortcut(QKeySequence(Qt::Key_F1));
    connect(m_keys, &QAction::triggered, this, [this] { KeysWindow::showBeside(*this, m_theme); });
    addAction(m_keys);
}

void ShellWindow::addPage(QWidget *page, const QString &name, const QString &icon,
                          const QString &key)
{
    Q_ASSERT_X(indexOf(key) < 0, "addPage", "a page of this key is already there");
    m_pages.push_back({key, page, nullptr});
    // a page that does not fit scrolls, rather than being cut off or squeezed
    auto *scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidgetResizable(true);
    scroll->setWidget(page);
    m_stack->addWidget(scroll);
    const int index = m_index->addLeaf(name, icon);
    const auto turn = [this, index] {
        m_index->setCurrentIndex(index);
        enterPage();
    };
    if (index < 9) {
        const auto digit = static_cast<Qt::Key>(Qt::Key_1 + index);
        for (const auto modifier : {Qt::CTRL, Qt::ALT}) {
            auto *shortcut = new QShortcut(QKeySequence(modifier | digit), this);
            connect(shortcut, &QShortcut::activated, this, turn);
        }
    }
}

int ShellWindow::indexOf(const QString &key) const
{
    const auto found = std::find_if(m_pages.begin(), m_pages.end(),
                                    [&](const Page &page) { return page.key == key; });
    return found == m_pages.end() ? -1 : static_cast<int>(found - m_pages.begin());
}

void ShellWindow::showPage(const QString &key)
{
    const int index = indexOf(key);
    if (index < 0)
        return;
    m_index->setCurrentIndex(index);
    enterPage();
}

QString ShellWindow::currentPage() const
{
    const int index = m_stack->currentIndex();
    return index < 0 ? QString() : m_pages[static_cast<std::size_t>(index)].key;
}

QWidget *ShellWindow::page(const QString &key) const
{
    const int index = indexOf(key);
    return index < 0 ? nullptr : m_pages[static_cast<std::size_t>(index)].widget;
}

void ShellWindow::setPageBadge(const QString &key, const QString &words, const QString &spoken)
{
    if (const int index = indexOf(key); index >= 0)
        m_index->setBadge(index, words, spoken);
}

void ShellWindow::turnTo(int index)
{
    if (index < 0)
        return;
    // the stack hands the focus to some control of the new page; nobody has been there
    m_turning = true;
    m_stack->setCurrentIndex(index);
    m_turning = false;
    emit pageShown(currentPage());
}

void ShellWindow::enterPage()
{
    const int index = m_stack->currentIndex();
    if (index < 0)
        return;
    const Page &page = m_pages[static_cast<std::size_t>(index)];
    if (page.lastFocus && page.lastFocus->isVisible() && page.lastFocus->isEnabled())
        page.lastFocus->setFocus(Qt::ShortcutFocusReason);
    else if (QWidget *own = page.widget->focusProxy(); own && own->isVisible() && own->isEnabled())
        own->setFocus(Qt::TabFocusReason); // where the page itself would have it
    else if (QWidget *first = firstStop(page.widget))
        first->setFocus(Qt::TabFocusReason);
    else
        m_index->setFocus(Qt::TabFocusReason);
}

void ShellWindow::rememberFocus(QWidget *now)
{
    if (m_turning)
        return;
    for (Page &page : m_pages) {
        if (holds(page.widget, now))
            page.lastFocus = now;
    }
    // not between a press and its release: what moves away from under the pointer is not clicked
    if (now && isAncestorOf(now) && QGuiApplication::mouseButtons() == Qt::NoButton)
        bringIntoSight(now);
}

bool ShellWindow::focusNextPrevChild(bool next)
{
    QWidget *stop = nextTabStop(*this, next);
    if (!stop)
        return false;
    stop->setFocus(next ? Qt::TabFocusReason : Qt::BacktabFocusReason);
    return true;
}

void ShellWindow::nextZone(bool backward)
{
    std::vector<QWidget *> zones{m_topLine, m_stack, m_index, m_messages};
    if (backward)
        std::reverse(zones.begin(), zones.end());
    const QWidget *now = QApplication::focusWidget();
    const auto here = std::find_if(zones.begin(), zones.end(),
                                   [now](const QWidget *zone) { return holds(zone, now); });
    const auto start = static_cast<std::size_t>(here - zones.begin());
    for (std::size_t i = 1; i <= zones.size(); ++i) {
        QWidget *zone = zones[(start + i) % zones.size()];
        if (zone == m_stack) {
            enterPage();
            return;
        }
        if (zone == m_topLine) {
            m_find->begin();
            return;
        }
        if (QWidget *stop = firstStop(zone)) {
            stop->setFocus(Qt::TabFocusReason);
            return;
        }
    }
}

void ShellWindow::setBookTitle(const QString &title)
{
    const QString shown = title.isEmpty() ? tr("No book open") : title;
    const QString escaped = QString(shown).replace(QLatin1Char('&'), QStringLiteral("&&"));
    m_book->setText(fontMetrics().elidedText(escaped, Qt::ElideRight, 320));
    m_book->setAccessibleName(tr("Book: %1").arg(shown));
    setWindowTitle(title.isEmpty() ? tr("Ohmwright") : tr("%1 – Ohmwright").arg(title));
}

void ShellWindow::setBookActions(const QList<QAction *> &actions)
{
    m_bookMenu->clear();
    for (QAction *action : actions) {
        if (!action) {
            m_bookMenu->addSeparator();
            continue;
        }
        m_bookMenu->addAction(action);
        addAction(action); // the menu alone would offer shortcuts only while it is open
    }
    m_bookMenu->addSeparator();
    m_bookMenu->addAction(m_keys);
}

void ShellWindow::setFindSource(FindSource *source)
{
    m_find->setSource(source);
}

void ShellWindow::setUndoStep(const QString &text)
{
    const QString words = text.isEmpty() ? tr("Nothing to undo") : tr("Undo: %1").arg(text);
    m_undo->setEnabled(!text.isEmpty());
    m_undo->setToolTip(tr("%1 (Ctrl+Z)").arg(words));
    m_undo->setAccessibleName(words);
}

void ShellWindow::setRedoStep(const QString &text)
{
    const QString words = text.isEmpty() ? tr("Nothing to redo") : tr("Redo: %1").arg(text);
    m_redo->setEnabled(!text.isEmpty());
    m_redo->setToolTip(tr("%1 (Ctrl+Shift+Z)").arg(words));
    m_redo->setAccessibleName(words);
}

void ShellWindow::say(const QString &sentence, Tone tone)
{
    m_messages->say(sentence, tone);
}

void ShellWindow::showShade()
{
    const bool dark = m_theme.shade() == Shade::Dark;
    m_shade->setIcon(themedIcon(m_theme, dark ? QStringLiteral("sun") : QStringLiteral("moon")));
    const QString words = dark ? tr("Light: ink on paper") : tr("Dark: chalk on slate");
    m_shade->setToolTip(words);
    m_shade->setAccessibleName(words);
}

void ShellWindow::resizeEvent(QResizeEvent *event)
{
    QMainWindow::resizeEvent(event);
    m_index->setCompact(width() < kCompactBelow);
}

void ShellWindow::keyPressEvent(QKeyEvent *event)
{
    // only what nothing inside wanted arrives here
    if (event->key() == Qt::Key_Escape && m_messages->isVisible()) {
        m_messages->dismiss();
        return;
    }
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        auto *button = qobject_cast<QAbstractButton *>(QApplication::focusWidget());
        if (button && !button->isCheckable() && !event->isAutoRepeat()) {
            button->click();
            return;
        }
    }
    QMainWindow::keyPressEvent(event);
}

} // namespace ohmwright::ui
