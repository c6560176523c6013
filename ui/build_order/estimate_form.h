// SPDX-License-Identifier: GPL-3.0-or-later
// What the forecast asks of one task: how long at least and at most, the people and the room it
// takes, whether it can fail, what it opens, buys and asks for, and the option it belongs to. A
// line is kept when it is left; each is one step to undo.
#pragma once

#include "core/book/book.h"

#include <QWidget>

namespace ohmwright::ui {

class EntryForm;
class PickOrNew;
class SectionTitle;
class Theme;

class EstimateForm : public QWidget
{
    Q_OBJECT

public:
    EstimateForm(Book &book, const Theme &theme, QWidget *parent = nullptr);

    // Keeps what was typed for the task before, or tells why not.
    void setTask(Id<Task> task);
    void refresh();

signals:
    void notKept(const QString &sentence);

private:
    Outcome keep();
    Outcome fillIn(Task &task) const;
    void setKnown(const Task &task);

    Book &m_book;
    Id<Task> m_task;
    SectionTitle *m_heading;
    EntryForm *m_form;
    PickOrNew *m_redoFrom;
    PickOrNew *m_opens;
    PickOrNew *m_buys;
    PickOrNew *m_asks;
    PickOrNew *m_option;
};

} // namespace ohmwright::ui
