// SPDX-License-Identifier: GPL-3.0-or-later
// One window on one book: the pages, the find line's answers, undo and redo, and an eye on other
// windows that change the same file.
#pragma once

#include "core/book/book.h"
#include "ui/shell/find_source.h"

#include <QObject>
#include <QTimer>

#include <memory>

class QAction;

namespace ohmwright::ui {

class BenchPage;
class BookChecksSource;
class BudgetPage;
class BuildOrderPage;
class ChecksPage;
class ChecksQuestions;
class Forecaster;
class HistoryWindow;
class Outside;
class PartsPage;
class RecordPages;
class SheetPage;
class ShellWindow;
class Theme;

class BookWindow : public QObject
{
    Q_OBJECT

public:
    BookWindow(std::unique_ptr<Book> book, Theme &theme, Outside &outside,
               QObject *parent = nullptr);
    ~BookWindow() override;

    [[nodiscard]] ShellWindow &shell() { return *m_shell; }
    [[nodiscard]] Book &book() { return *m_book; }

signals:
    // The person asks for another book; whoever made this window opens it.
    void newWanted();
    void openWanted();

private:
    void makePages();
    void makeActions();
    void showState();
    void travel(bool back);
    void saveCopy();
    void writeInterchange();
    void follow(const FindHit &hit);
    void showPart(const QString &key);
    void showTask(const QString &key);
    HistoryWindow &history();
    void showRecord(const QString &table, const QString &key);
    void lookForOthersEdits();

    std::unique_ptr<Book> m_book;
    Theme &m_theme;
    Outside &m_outside;
    std::unique_ptr<BookChecksSource> m_checksSource;
    std::unique_ptr<FindSource> m_find;
    std::unique_ptr<Forecaster> m_forecaster;
    std::unique_ptr<ChecksQuestions> m_checksQuestions;
    std::unique_ptr<ShellWindow> m_shell;
    BenchPage *m_bench = nullptr;
    PartsPage *m_parts = nullptr;
    BuildOrderPage *m_buildOrder = nullptr;
    BudgetPage *m_budget = nullptr;
    ChecksPage *m_checks = nullptr;
    RecordPages *m_checksPages = nullptr;
    RecordPages *m_buildOrderPages = nullptr;
    SheetPage *m_sheet = nullptr;
    HistoryWindow *m_history = nullptr; // made when first asked for
    QTimer m_others;
};

} // namespace ohmwright::ui
