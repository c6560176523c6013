// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/keys_window.h"

#include "ui/shell/theme.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/section_title.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QScreen>
#include <QStandardItemModel>
#include <QTableView>
#include <QVBoxLayout>

#include <array>

namespace ohmwright::ui {

namespace {

constexpr QSize kSize(620, 640);
constexpr int kKeysWidth = 190;

struct Line
{
    const char *keys; // empty: a heading
    const char *what;
};

constexpr std::array kLines{
    Line{"", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "Everywhere")},
    Line{"Ctrl+1 … Ctrl+6", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "turn to a page")},
    Line{"Ctrl+F or /", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "find anything")},
    Line{"Ctrl+L", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "log a part")},
    Line{"Ctrl+Z", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "take back the last edit")},
    Line{"Ctrl+Shift+Z",
         QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "do again what was taken back")},
    Line{"Ctrl+H", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "what was changed, and when")},
    Line{"F6, Shift+F6", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow",
                                           "to the next part of the window, and back")},
    Line{"F9", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "light or dark")},
    Line{"F10", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "the book menu")},
    Line{"Escape", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "close a message, leave a form")},
    Line{"Ctrl+N, Ctrl+O",
         QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "a new book, open a book")},
    Line{"Ctrl+Shift+S", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "save a copy")},
    Line{"", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "Lists and their cards")},
    Line{"Up, Down", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "from one to the next")},
    Line{"Enter", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "into the card")},
    Line{"Insert", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "a new one")},
    Line{"Delete", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "take the chosen one out")},
    Line{"Escape",
         QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "back to the list; in a filter: empty it")},
    Line{"", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "Logging a part")},
    Line{"Tab", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow",
                                  "take what is offered and go to the next field")},
    Line{"Enter", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "save the part")},
    Line{"Escape",
         QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "leave it; what was typed stays")},
    Line{"", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "The chart of the build order")},
    Line{"Arrows", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "to the task beside")},
    Line{"Ctrl+Left, Ctrl+Right",
         QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "along a wire, back and on")},
    Line{"Enter", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "open the task")},
    Line{"N", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "new task behind this one")},
    Line{"L", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow",
                                "link to another: arrows to it, then Enter")},
    Line{"S, D", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "started, done; again: not")},
    Line{"T", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "its time")},
    Line{"W", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "choose one of its wires")},
    Line{"Delete", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "take the chosen wire out")},
    Line{"F, P, A", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow",
                                      "light the chain, what comes before, what comes after")},
    Line{"B", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "by date or by chain")},
    Line{"+, −, 0, 1",
         QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "larger, smaller, all of it, full size")},
    Line{"E", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "what can be done this evening")},
    Line{"/", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "find a task")},
    Line{"", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "The build sheet’s preview")},
    Line{"+, −", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "larger, smaller")},
    Line{"Page Up, Page Down", QT_TRANSLATE_NOOP("ohmwright::ui::KeysWindow", "a page on, back")},
};

} // namespace

KeysWindow::KeysWindow(const Theme &theme, QWidget *parent)
    : QWidget(parent, Qt::Window), m_view(new QTableView)
{
    setWindowTitle(tr("Keys"));
    // with large letters not beyond the screen
    resize(kSize.boundedTo(screen()->availableSize() * 0.9));
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(20, 14, 20, 14);
    column->setSpacing(10);
    column->addWidget(new SectionTitle(theme, tr("Keys"), TitleLevel::Page));
    auto *model = new QStandardItemModel(0, 2, this);
    model->setHorizontalHeaderLabels({tr("Key"), tr("What it does")});
    m_view->setModel(model);
    for (const Line &line : kLines) {
        const bool heading = !*line.keys;
        auto *keys = new QStandardItem(heading ? tr(line.what) : QString::fromUtf8(line.keys));
        auto *what = new QStandardItem(heading ? QString() : tr(line.what));
        for (QStandardItem *item : {keys, what})
            item->setEditable(false);
        if (heading) {
            keys->setFont(theme.font(Lettering::Strong));
            what->setData(tr(line.what), Qt::AccessibleTextRole);
        }
        model->appendRow({keys, what});
        if (heading)
            m_view->setSpan(model->rowCount() - 1, 0, 1, 2);
    }
    auto *delegate = new DraftedTableDelegate(theme, this);
    delegate->dress(*m_view, false);
    m_view->setAccessibleName(tr("Keys"));
    m_view->horizontalHeader()->resizeSection(0, kKeysWidth);
    m_view->horizontalHeader()->setStretchLastSection(true);
    column->addWidget(m_view, 1);
    setFocusProxy(m_view);
}

void KeysWindow::showBeside(QWidget &window, const Theme &theme)
{
    auto *keys = window.findChild<KeysWindow *>(QString(), Qt::FindDirectChildrenOnly);
    if (!keys)
        keys = new KeysWindow(theme, &window);
    keys->show();
    keys->raise();
    keys->activateWindow();
    keys->m_view->setFocus(Qt::OtherFocusReason);
}

void KeysWindow::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Escape || event->key() == Qt::Key_F1) {
        close();
        return;
    }
    QWidget::keyPressEvent(event);
}

} // namespace ohmwright::ui
