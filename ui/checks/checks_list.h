// SPDX-License-Identifier: GPL-3.0-or-later
// The left half of the Checks page: filter line, verdicts with their counts, and the table. Keeps
// the chosen check chosen while figures change, rows move and the filter narrows.
#pragma once

#include "ui/checks/checks_order.h"

#include <QWidget>

class QLineEdit;
class QStackedWidget;
class QTableView;

namespace ohmwright::ui {

class ChecksDelegate;
class ChecksModel;
class ChipRow;
class EmptyPage;
class SectionTitle;
class Theme;

class ChecksList : public QWidget
{
    Q_OBJECT

public:
    explicit ChecksList(const Theme &theme, QWidget *parent = nullptr);

    // While trying, what turned has a switch of its own among the verdicts.
    void setEntries(std::vector<CheckEntry> entries, bool trying);
    // Takes off the filter if it hides the check.
    void choose(const QString &key);
    [[nodiscard]] const CheckEntry *chosen() const; // null: none
    [[nodiscard]] QTableView &table() { return *m_table; }
    // At the end of the heading: what begins a try.
    void addAtEnd(QWidget *widget);

signals:
    // Another one is chosen, or none. What is told of the same one may change without it.
    void checkChosen();
    // Enter on a row: on to its page.
    void opened();

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    void build();
    void buildTable();
    void shareOutWidth();
    void clearFilter();
    void readFilter();
    void rearrange();
    void restoreCurrent();
    void rowMoved();
    void toTable();

    const Theme &m_theme;
    std::vector<CheckEntry> m_entries;
    CheckFilter m_filter;
    QString m_chosen;
    bool m_trying = false;
    bool m_arranging = false;

    SectionTitle *m_title = nullptr;
    QLineEdit *m_text = nullptr;
    ChipRow *m_verdicts = nullptr;
    ChipRow *m_turned = nullptr;
    QStackedWidget *m_stack = nullptr;
    QTableView *m_table = nullptr;
    EmptyPage *m_none = nullptr;    // the book asks for no check
    EmptyPage *m_nothing = nullptr; // the filter lets none through
    ChecksModel *m_model = nullptr;
    ChecksDelegate *m_delegate = nullptr;
};

} // namespace ohmwright::ui
