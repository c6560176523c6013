// SPDX-License-Identifier: GPL-3.0-or-later
// The window around the pages: title and book menu, find line, undo and redo, light and dark, the
// thumb index, and the message strip.
//
// It knows no book. Whoever does (app/) adds pages, sets the texts, and acts on the signals:
//
//     ShellWindow shell(theme);
//     shell.addPage(new BenchPage(…), tr("Bench"), "bench", "bench");
//     shell.setBookTitle(book.title());
//     shell.setUndoStep(book.undoText());   // empty: nothing to undo
//     connect(&shell, &ShellWindow::undoWanted, …);
#pragma once

#include "ui/shell/find_source.h"
#include "ui/shell/message_strip.h"

#include <QMainWindow>
#include <QPointer>

#include <vector>

class QAction;
class QBoxLayout;
class QMenu;
class QStackedWidget;
class QToolButton;

namespace ohmwright::ui {

class FindLine;
class Theme;
class ThumbIndex;

class ShellWindow : public QMainWindow
{
    Q_OBJECT

public:
    explicit ShellWindow(Theme &theme, QWidget *parent = nullptr);

    // The window owns the page. Pages are numbered in the order added; Ctrl or Alt and the number
    // turn to one. `icon` is a name of widgets/icons.h, `key` names the page in showPage().
    void addPage(QWidget *page, const QString &name, const QString &icon, const QString &key);
    // Turns to the page and puts the focus where it last was on it. An unknown key does nothing.
    void showPage(const QString &key);
    [[nodiscard]] QString currentPage() const;
    [[nodiscard]] QWidget *page(const QString &key) const;
    // "4 open" below the name in the index, read as "4 open questions". Empty removes it.
    void setPageBadge(const QString &key, const QString &words, const QString &spoken);

    void setBookTitle(const QString &title);
    // The entries of the menu behind the title: New, Open, Save a copy…; a null action divides. The
    // keys of the window (F1) stand below them.
    // The actions stay the caller's; their shortcuts work in the whole window.
    void setBookActions(const QList<QAction *> &actions);
    void setFindSource(FindSource *source);
    // What would be undone or redone: "log part “Inverter”". Empty: nothing.
    void setUndoStep(const QString &text);
    void setRedoStep(const QString &text);

    void say(const QString &sentence, Tone tone = Tone::Told);
    [[nodiscard]] MessageStrip &messages() { return *m_messages; }
    [[nodiscard]] FindLine &findLine() { return *m_find; }
    [[nodiscard]] ThumbIndex &thumbIndex() { return *m_index; }

signals:
    void pageShown(const QString &key);
    void hitChosen(const ohmwright::ui::FindHit &hit);
    void undoWanted();
    void redoWanted();

protected:
    void resizeEvent(QResizeEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    // Tab goes through what is shown, as it is read.
    bool focusNextPrevChild(bool next) override;

private:
    struct Page
    {
        QString key;
        QWidget *widget;
        QPointer<QWidget> lastFocus;
    };

    QWidget *makeTopLine();
    void makeShortcuts();
    void turnTo(int index);
    void enterPage();
    void rememberFocus(QWidget *now);
    void nextZone(bool backward);
    void showShade();
    [[nodiscard]] int indexOf(const QString &key) const;

    Theme &m_theme;
    QToolButton *m_book;
    QMenu *m_bookMenu;
    FindLine *m_find;
    QToolButton *m_undo;
    QToolButton *m_redo;
    QToolButton *m_shade;
    QAction *m_keys;
    ThumbIndex *m_index;
    QStackedWidget *m_stack;
    MessageStrip *m_messages;
    QWidget *m_topLine;
    std::vector<Page> m_pages;
    bool m_turning = false; // to another page
};

} // namespace ohmwright::ui
