// SPDX-License-Identifier: GPL-3.0-or-later
// Types and parts side by side: what differs, what is known of one only, and what each figure rests
// on. Behind the switches of the Parts page; filled from a type's card, from a part, or here.
#pragma once

#include "core/book/book.h"
#include "core/parts/compare.h"
#include "ui/widgets/pick_or_new.h"

#include <QWidget>

#include <vector>

class QLabel;
class QTableView;

namespace ohmwright::ui {

class CompareModel;
class SectionTitle;
class Theme;
class WrapLayout;

class ComparePage : public QWidget
{
    Q_OBJECT

public:
    ComparePage(Book &book, const Theme &theme, QWidget *parent = nullptr);

    // Compares these, in this order, and asks for one more: the line to choose it has the focus. A
    // single one is taken into a comparison that is being made from it already.
    void begin(std::vector<ComparedId> units);
    [[nodiscard]] const std::vector<ComparedId> &units() const { return m_units; }
    [[nodiscard]] QTableView &table() { return *m_view; }

signals:
    void unitWanted(ohmwright::ComparedId unit); // to be shown with all of it
    void left();                                 // Escape

protected:
    void showEvent(QShowEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    void add(const QString &name);
    void remove(ComparedId unit);
    void refresh();
    void showUnits(const std::vector<ComparedUnit> &units);
    [[nodiscard]] std::vector<KnownName> offered() const;

    Book &m_book;
    const Theme &m_theme;
    std::vector<ComparedId> m_units;
    bool m_behind = false;
    SectionTitle *m_title;
    PickOrNew *m_pick;
    WrapLayout *m_chosen;
    QLabel *m_hint;
    QTableView *m_view;
    CompareModel *m_model;
};

} // namespace ohmwright::ui
