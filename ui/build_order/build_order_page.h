// SPDX-License-Identifier: GPL-3.0-or-later
// The build order: the loom, below it the moves that bring the chosen milestone nearer, and beside
// those the chosen move and task to act on and edit.
#pragma once

#include "core/book/book.h"
#include "core/plan/loom.h"
#include "core/plan/network.h"
#include "ui/build_order/loom_risks.h"
#include "ui/shell/message_strip.h"

#include <QPageSize>
#include <QWidget>

#include <memory>
#include <optional>

class QMenu;
class QComboBox;
class QLabel;
class QPagedPaintDevice;
class QPushButton;
class QScrollArea;
class QHBoxLayout;
class QSplitter;
class QStackedWidget;
class QTableView;
class QVBoxLayout;

namespace ohmwright::ui {

class ChipRow;
class EmptyPage;
class EntryForm;
class LoomView;
struct ForecastTold;
struct LoomSheetOptions;
class MovePanel;
class MovesModel;
class Outside;
class SectionTitle;
class TaskEditor;
class Theme;

class BuildOrderPage : public QWidget
{
    Q_OBJECT

public:
    // Without `outside` the chart cannot be saved as a file, only printed.
    BuildOrderPage(Book &book, const Theme &theme, Outside *outside = nullptr,
                   QWidget *parent = nullptr);
    ~BuildOrderPage() override;

    // Shows the task and puts the chart's choice on it; an unknown key does nothing.
    void showTask(const QString &key);
    // Turns to the milestone; an unknown key does nothing.
    void showMilestone(const QString &key);
    // Turns to the milestone and to that move of what holds it up, as far as they are there.
    void showMove(const QString &milestone, plan::MoveKind kind, const QString &subject);
    // What the chart shows of dates; `made`: the network it was made of, so that tasks are found
    // again by key after an edit. Kept until the next one.
    // `told`: what the moves take their days from; null leaves those of elapsed days.
    void setForecast(const plan::LoomForecast &forecast, const plan::Network &made,
                     std::shared_ptr<const ForecastTold> told = {});
    // Why there is none: "The forecast is being worked out."
    void setForecastMissing(const QString &sentence);
    [[nodiscard]] LoomView &chart() { return *m_loom; }
    // The chart as it is laid out now, as PDF or SVG by the path's ending, on such paper and at
    // most so many sheets (LoomSheetOptions); what was written, or why not, is said.
    void saveChart(const QString &path, std::optional<QPageSize::PageSizeId> paper, bool tiles,
                   int sheets = 1);
    // The same through a printer, on as many of its sheets as legible letters take; `name` is said.
    void printOn(QPagedPaintDevice &device, const QString &name);

    // Into the line for a new task; after `afterKey` if given.
    void beginTask(const QString &afterKey = {}, const QString &area = {});

signals:
    void said(QString sentence, ohmwright::ui::Tone tone);
    void partWanted(QString key);
    void openingWanted(QString key); // to record that the part was opened
    void recordWanted(QString table, QString key);

protected:
    void showEvent(QShowEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    QWidget *makeHeader();
    void fitHeader();
    void fitRows();
    QWidget *makeSide();
    void makeMoves();
    void makeNewTask();
    void makeChartMenu();
    void connectChart();
    // `kind` is the ending: "pdf", "svg".
    void chooseAndSave(const QString &kind, std::optional<QPageSize::PageSizeId> paper, bool tiles,
                       int sheets);
    void fillPaperMenu(QMenu &menu, const QString &kind);
    void printChart();
    [[nodiscard]] LoomSheetOptions sheetOptions() const;
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
    LoomRisks m_risks;
    plan::HoldUps m_holdUps;
    QString m_milestone; // key; empty for none
    std::optional<plan::LoomForecast> m_forecast;
    plan::Network m_forecastOf;
    std::shared_ptr<const ForecastTold> m_told;
    Outside *m_outside;
    bool m_stale = true;
    bool m_choosing = false;

    QStackedWidget *m_stack;
    EmptyPage *m_empty;
    QComboBox *m_milestones;
    QHBoxLayout *m_headerRow = nullptr;
    QVBoxLayout *m_headerColumn = nullptr;
    QLabel *m_facts;
    QPushButton *m_below; // in a low window: chart, or what stands below it
    QPushButton *m_add;
    QPushButton *m_paper;
    ChipRow *m_by;
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
