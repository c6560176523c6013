// SPDX-License-Identifier: GPL-3.0-or-later
// The build order: the loom, below it the moves that bring the chosen milestone nearer, and beside
// those the chosen move and task to act on and edit.
#pragma once

#include "core/book/book.h"
#include "core/plan/network.h"
#include "ui/shell/message_strip.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QPushButton;
class QScrollArea;
class QSplitter;
class QStackedWidget;
class QTableView;

namespace ohmwright::ui {

class EmptyPage;
class EntryForm;
class LoomView;
class MovePanel;
class MovesModel;
class SectionTitle;
class TaskEditor;
class Theme;

class BuildOrderPage : public QWidget
{
    Q_OBJECT

public:
    BuildOrderPage(Book &book, const Theme &theme, QWidget *parent = nullptr);
    ~BuildOrderPage() override;

    // Shows the task and puts the chart's choice on it; an unknown key does nothing.
    void showTask(const QString &key);
    // Turns to the milestone; an unknown key does nothing.
    void showMilestone(const QString &key);
    // Into the line for a new task; after `afterKey` if given.
    void beginTask(const QString &afterKey = {}, const QString &area = {});

signals:
    void said(QString sentence, ohmwright::ui::Tone tone);
    void partWanted(QString key);
    void recordWanted(QString table, QString key);

protected:
    void showEvent(QShowEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    QWidget *makeHeader();
    QWidget *makeSide();
    void makeMoves();
    void makeNewTask();
    void connectChart();
    void bookChanged();
    void refresh();
    void refreshMilestones();
    void refreshMoves();
    void paintChart();
    void chooseMilestone();
    void chooseMove();
    void chooseTask(const QString &key);
    void lightMove(const plan::Move &move, bool follow);
    void showSide();
    Outcome addNewTask();
    void tell(const Outcome &outcome, const QString &sentence);
    [[nodiscard]] Id<Task> idOf(const QString &key) const;

    Book &m_book;
    const Theme &m_theme;
    plan::Network m_network;
    QDate m_shownOn; // "in 8 days" is another number tomorrow
    plan::HoldUps m_holdUps;
    QString m_milestone; // key; empty for none
    bool m_stale = true;
    bool m_choosing = false;

    QStackedWidget *m_stack;
    EmptyPage *m_empty;
    QComboBox *m_milestones;
    QLabel *m_facts;
    QPushButton *m_add;
    QSplitter *m_split;
    QSplitter *m_rows;
    LoomView *m_loom;
    SectionTitle *m_movesHeading;
    QTableView *m_movesView;
    MovesModel *m_moves;
    QLabel *m_noMoves;
    QScrollArea *m_side;
    EntryForm *m_newTask;
    QLabel *m_newAfter;
    QWidget *m_newTaskBox;
    MovePanel *m_movePanel;
    TaskEditor *m_editor;
    QLabel *m_hint;
    QString m_newAfterKey, m_newArea;
};

} // namespace ohmwright::ui
