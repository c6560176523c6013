// SPDX-License-Identifier: GPL-3.0-or-later
// The budget: what there is and what is left on top, the lines, what the chosen line is made of,
// and beside them everything that can be recorded about it. Behind the switches on top: purchases
// with their items and payments, money got back, day rates.
#pragma once

#include "core/book/book.h"
#include "core/budget/budget.h"
#include "ui/shell/message_strip.h"

#include <QWidget>

class QLabel;
class QListWidget;
class QPushButton;
class QScrollArea;
class QSplitter;
class QStackedWidget;
class QTableView;

namespace ohmwright::ui {

class Account;
class EmptyPage;
class EntriesModel;
class EntryForm;
class EntryPanel;
class LinesModel;
class RecordPages;
class SectionTitle;
class Theme;

class BudgetPage : public QWidget
{
    Q_OBJECT

public:
    BudgetPage(Book &book, const Theme &theme, QWidget *parent = nullptr);

    // Turns to the line; an unknown key does nothing.
    void showLine(const QString &key);
    // The card of a purchase, of one of its items, of money got back or of a day rate. False for
    // any other.
    bool showRecord(const QString &table, const QString &key);
    [[nodiscard]] RecordPages &pages() { return *m_pages; }

signals:
    void said(QString sentence, ohmwright::ui::Tone tone);
    void partWanted(QString key);

protected:
    void showEvent(QShowEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    static constexpr int kNameLetters = 20; // room for the name of a line

    void makeTables();
    void shareOutWidth();
    QWidget *makeSide();
    void makeForms();
    void bookChanged();
    void refresh();
    void refreshLines();
    void refreshEntries();
    void refreshGaps();
    void chooseLine();
    void chooseEntry();
    void fillLineForm();
    void fillContingency();
    void beginLine();
    [[nodiscard]] Result<Money> allowanceTyped(const EntryForm &form) const;
    Outcome keepLine();
    Outcome makeLine();
    Outcome keepContingency();
    Outcome makeGotBack();
    void removeChosenLine();
    [[nodiscard]] Id<BudgetLine> chosenLine() const; // not set: none, or what has no line

    Book &m_book;
    const Theme &m_theme;
    Budget m_budget;
    bool m_stale = true;
    bool m_refreshing = false;
    bool m_narrow = false;
    std::optional<Id<BudgetLine>> m_shownLine;

    RecordPages *m_pages;
    QStackedWidget *m_stack;
    EmptyPage *m_empty;
    Account *m_account;
    SectionTitle *m_linesHeading;
    QTableView *m_linesView;
    LinesModel *m_lines;
    SectionTitle *m_entriesHeading;
    QTableView *m_entriesView;
    EntriesModel *m_entries;
    QLabel *m_noEntries;
    QScrollArea *m_side;
    EntryPanel *m_entryPanel;
    SectionTitle *m_lineHeading;
    EntryForm *m_line;
    QPushButton *m_removeLine;
    QWidget *m_newLineBox;
    EntryForm *m_newLine;
    EntryForm *m_contingency;
    EntryForm *m_gotBack;
    SectionTitle *m_gapsHeading;
    QListWidget *m_gaps;
    QStringList m_gapsShown;
};

} // namespace ohmwright::ui
