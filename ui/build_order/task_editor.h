// SPDX-License-Identifier: GPL-3.0-or-later
// One task, all of it: what it is, how long it takes, how it stands, what it needs. A line is kept
// when it is left; each is one step to undo.
#pragma once

#include "core/book/book.h"

#include <QWidget>

class QPushButton;
class QTableView;
class QVBoxLayout;

namespace ohmwright::ui {

class CautionCard;
class EntryForm;
class EstimateForm;
class NeedForm;
class NeedsModel;
class PickOrNew;
class ProblemLine;
class SectionTitle;
class StateMark;
class Theme;

class TaskEditor : public QWidget
{
    Q_OBJECT

public:
    TaskEditor(Book &book, const Theme &theme, QWidget *parent = nullptr);

    // What was typed and could not be kept is told before the next task is shown.
    void setTask(Id<Task> task);
    [[nodiscard]] Id<Task> task() const { return m_task; }
    // Reads the book again; lines being typed in stay as they are.
    void refresh();
    // Into the title, all of it marked.
    void begin();
    // Done, or open again if it was; the problem shown here.
    void toggleDone();
    // Under way, or not begun after all; likewise.
    void toggleStarted();
    // Into the time it takes, all of it marked.
    void beginTime();

signals:
    void done(const QString &sentence);
    void notKept(const QString &sentence);
    void partWanted(const QString &key);

private:
    void makeForm();
    void makeNeeds();
    Outcome keep();
    Outcome fillIn(Task &task) const;
    void showCaution(const Task &task);
    void showNeeds(const Task &task);
    void remove();
    void takeOutNeed();
    void meetChosenNeed();
    void openNeed();
    void chooseNeed();
    void tell(const Outcome &outcome);

    Book &m_book;
    const Theme &m_theme;
    Id<Task> m_task;
    SectionTitle *m_heading;
    StateMark *m_state;
    QPushButton *m_done;
    QPushButton *m_start;
    QPushButton *m_remove;
    ProblemLine *m_problem;
    QVBoxLayout *m_cautions;
    CautionCard *m_caution = nullptr;
    QString m_cautionId;
    EntryForm *m_form;
    PickOrNew *m_area;
    SectionTitle *m_needsHeading;
    NeedsModel *m_needs;
    QTableView *m_needsView;
    QPushButton *m_takeOut;
    QPushButton *m_meet;
    NeedForm *m_needForm;
    EstimateForm *m_estimate;
};

} // namespace ohmwright::ui
