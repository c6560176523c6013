// SPDX-License-Identifier: GPL-3.0-or-later
// The left half of the Parts page: filter line, states with their counts, kind, grouping, and the
// table. Keeps the chosen part chosen through edits, undo, sorting and filtering.
#pragma once

#include "core/book/book.h"
#include "ui/parts/parts_index.h"
#include "ui/parts/parts_model.h"

#include <QWidget>

#include <optional>

class QBoxLayout;
class QComboBox;
class QLineEdit;
class QPushButton;
class QStackedWidget;
class QTableView;

namespace ohmwright::ui {

class ChipRow;
class DraftedTableDelegate;
class EmptyPage;
class SectionTitle;
class Theme;

class PartsList : public QWidget
{
    Q_OBJECT

public:
    PartsList(Book &book, const Theme &theme, QWidget *parent = nullptr);

    [[nodiscard]] Id<Part> chosen() const { return m_chosen; }
    // Takes off the filter if it hides the part.
    void choose(Id<Part> part);
    void bookChanged(const Change &change);
    void setAskedByChecks(std::vector<Question> questions);
    [[nodiscard]] const PartsIndex &index() const { return m_index; }
    [[nodiscard]] QTableView &table() { return *m_table; }

signals:
    void partChosen(ohmwright::Id<ohmwright::Part> part); // not set: none
    void logWanted();

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    void build();
    void buildTable();
    void shareOutWidth();
    void readFilter();
    void arrange();
    void spanHeadings();
    void rowMoved();
    void sortBy(int column);

    Book &m_book;
    const Theme &m_theme;
    PartsIndex m_index;
    PartFilter m_filter;
    Id<Part> m_chosen;
    bool m_arranging = false;
    std::optional<PartsRoom> m_room; // not set: no width shared out yet

    SectionTitle *m_title = nullptr;
    QBoxLayout *m_filters = nullptr;
    QLineEdit *m_text = nullptr;
    ChipRow *m_states = nullptr;
    QComboBox *m_kind = nullptr;
    QComboBox *m_grouping = nullptr;
    QStackedWidget *m_stack = nullptr;
    QTableView *m_table = nullptr;
    EmptyPage *m_none = nullptr;    // the book has no parts
    EmptyPage *m_nothing = nullptr; // the filter lets none through
    PartsModel *m_model = nullptr;
    DraftedTableDelegate *m_delegate = nullptr;
};

} // namespace ohmwright::ui
