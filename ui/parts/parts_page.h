// SPDX-License-Identifier: GPL-3.0-or-later
// The Parts page: the table of all parts, one of them in detail beside it, and the sheet to log a
// part on, which takes the place of the detail while it is open. Behind the switches on top: types,
// donors, sellers and circuits, each as a list with its cards, and types and parts side by side.
#pragma once

#include "core/book/book.h"
#include "core/parts/compare.h"
#include "core/parts/questions.h"
#include "ui/shell/message_strip.h"
#include "ui/shell/outside.h"

#include <QWidget>

class QShortcut;
class QSplitter;
class QStackedWidget;

namespace ohmwright::ui {

class ComparePage;
class LogSheet;
class PartDetail;
class PartsList;
class RecordCard;
class RecordPages;
class Theme;

class PartsPage : public QWidget
{
    Q_OBJECT

public:
    PartsPage(Book &book, const Theme &theme, Outside &outside, QWidget *parent = nullptr);

    // Shows the part with that key, as after a hit in the find line. An unknown key does nothing.
    void showPart(const QString &key);
    // The same, at the step that records that it was opened.
    void showOpening(const QString &key);
    // Likewise a type, donor, seller, circuit or branch, by its table. False for any other.
    bool showRecord(const QString &table, const QString &key);
    // Side by side, and asks what to compare it with; a part that is replaced by another at once
    // with that one.
    void compare(ComparedId unit);
    void openLogSheet();
    void closeLogSheet();
    // For a window that takes Ctrl+L itself, on every page: two shortcuts would block each other.
    void leaveLogKeyToWindow();

    [[nodiscard]] RecordPages &pages() { return *m_pages; }
    [[nodiscard]] PartsList &list() { return *m_list; }
    [[nodiscard]] PartDetail &detail() { return *m_detail; }
    [[nodiscard]] LogSheet &logSheet() { return *m_sheet; }
    [[nodiscard]] ComparePage &comparison() { return *m_comparison; }

    void setAskedByChecks(const std::vector<Question> &questions);

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);
    void taskWanted(const QString &key);
    void historyWanted(ohmwright::Id<ohmwright::Part> part);

protected:
    void showEvent(QShowEvent *event) override;

private:
    void addToTypes(RecordCard &card, const Theme &theme);
    void catchUp();
    void showUnit(ComparedId unit);
    void leaveComparison();

    Book &m_book;
    Change m_missed; // while the page was not to be seen
    bool m_behind = false;
    RecordPages *m_pages;
    QShortcut *m_logKey;
    QSplitter *m_splitter;
    QStackedWidget *m_side;
    PartsList *m_list;
    PartDetail *m_detail;
    LogSheet *m_sheet;
    ComparePage *m_comparison;
    std::optional<ComparedId> m_comparedFrom; // where Escape leads back to
};

} // namespace ohmwright::ui
