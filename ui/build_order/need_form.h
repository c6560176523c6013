// SPDX-License-Identifier: GPL-3.0-or-later
// Adds a need to a task: its kind first, then only what that kind must say. A test or letter that
// is not in the book yet is made by typing its name.
#pragma once

#include "core/book/book.h"

#include <QWidget>

namespace ohmwright::ui {

class EntryForm;
class PickOrNew;
class Theme;

class NeedForm : public QWidget
{
    Q_OBJECT

public:
    NeedForm(Book &book, const Theme &theme, QWidget *parent = nullptr);

    void setTask(Id<Task> task);
    // Names on offer follow the book.
    void refresh();
    void begin();

signals:
    void added();

private:
    [[nodiscard]] NeedKind kind() const;
    void showKind();
    void offer();
    void clear();
    Outcome add();
    Outcome fillIn(TaskNeed &need) const;
    Outcome addWithRecord(TaskNeed need);

    Book &m_book;
    const Theme &m_theme;
    Id<Task> m_task;
    EntryForm *m_form;
    PickOrNew *m_what;
};

} // namespace ohmwright::ui
