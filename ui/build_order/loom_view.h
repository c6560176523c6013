// SPDX-License-Identifier: GPL-3.0-or-later
// The build-order chart: the loom on the screen, to look at, walk through and edit.
//
// The view changes nothing itself: an edit is a signal, and what comes of it arrives by
// setNetwork(). Keyboard: arrows along the branch and to the next, Ctrl+Left/Right along a wire,
// and Ctrl+Up/Down between the wires of that fork. Enter opens, N adds after, L links (arrows and
// Enter choose the target), S started or not, D done or not, T its time, W the next wire of the
// task and Delete to unlink it. F follows the chain, P only before, A only after. B by chain or by
// date. / finds. + - zoom; 0 the whole build, 1 full size, E the next evening's work. Escape.
#pragma once

#include "core/plan/loom.h"
#include "ui/build_order/loom_navigation.h"
#include "ui/build_order/loom_painter.h"
#include "ui/build_order/loom_risks.h"

#include <QAbstractScrollArea>
#include <QPixmap>
#include <QPoint>
#include <QRectF>
#include <QString>
#include <QThreadPool>

#include <cstddef>
#include <optional>
#include <vector>

class QHelpEvent;
class QLabel;

namespace ohmwright::ui {

class LoomLegendBar;

class LoomView : public QAbstractScrollArea
{
    Q_OBJECT

public:
    explicit LoomView(QWidget *parent = nullptr);
    ~LoomView() override;

    // Selection, zoom and place are kept as far as the tasks still exist, by key. A large network
    // is laid out beside the window's thread; until then the one before it stays on the screen.
    void setNetwork(const plan::Network &network, const plan::LoomFacts &facts,
                    const LoomRisks &risks = {});
    void setColours(const LoomColours &colours);
    void setImpliedLinks(plan::ImpliedLinks implied);
    // By date it needs LoomFacts::forecast; until there is one it says so.
    void setBy(plan::LoomBy by);
    [[nodiscard]] plan::LoomBy by() const { return m_by; }
    // Why the forecast is not there, shown by date: "The forecast is being worked out."
    void setForecastMissing(const QString &sentence);

    [[nodiscard]] const plan::Network &network() const { return m_network; }
    [[nodiscard]] const plan::Loom &loom() const { return m_loom; }
    // As a screen reader and the tool tip tell a task: state, days, and whether it may fail.
    [[nodiscard]] QString description(std::size_t task) const;

    // Key of the selected task; empty for none.
    [[nodiscard]] QString currentTask() const;
    // Selects and scrolls to it, as soon as it is laid out; an unknown key selects nothing.
    void setCurrentTask(const QString &key);
    [[nodiscard]] std::optional<std::size_t> currentIndex() const { return m_marks.task; }
    [[nodiscard]] std::optional<std::size_t> currentWire() const { return m_marks.wire; }

    // 1 is 100 %: text as large as the widget's font has it; 2 is the most.
    [[nodiscard]] double zoom() const { return m_zoom; }
    void setZoom(double zoom);
    [[nodiscard]] bool isLinking() const { return m_marks.linkFrom.has_value(); }
    [[nodiscard]] bool isFollowing() const
    {
        return m_light == Light::Chain || m_light == Light::Before || m_light == Light::After;
    }
    [[nodiscard]] bool isFinding() const { return m_finding; }
    // Which tasks stand out now; empty: all.
    [[nodiscard]] const std::vector<bool> &lit() const { return m_marks.lit; }
    [[nodiscard]] const plan::LoomFacts &facts() const { return m_facts; }

    // Where a task's housing is, in viewport pixels.
    [[nodiscard]] QRect taskRect(std::size_t task) const;

public slots:
    void fitAll();
    void zoomIn();
    void zoomOut();
    void resetZoom();
    // Highlights all before and after the selected task, or ends it.
    void setFollowing(bool following);
    // Begins to find a task by what is typed; Enter stays there, Escape goes back.
    void startFinding();
    // The next evening's tasks, large and lit.
    void showEvening();
    // From the selected task on: the next task chosen gets a link from it.
    void startLinking();
    void cancel();
    // Branches stay where they are when the network changes; this finds them better places.
    void untangle();

signals:
    void currentTaskChanged(const QString &key);
    void zoomChanged(double zoom);
    void taskActivated(const QString &key);
    // `afterKey` and `area` are empty when nothing is selected.
    void addRequested(const QString &afterKey, const QString &area);
    void linkRequested(const QString &beforeKey, const QString &taskKey);
    void unlinkRequested(const QString &beforeKey, const QString &taskKey);
    void doneToggled(const QString &key);
    void startedToggled(const QString &key);
    void timeRequested(const QString &key); // its estimate is to be typed
    void byChanged(ohmwright::plan::LoomBy by);

protected:
    bool event(QEvent *event) override;
    bool viewportEvent(QEvent *event) override;
    void paintEvent(QPaintEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void scrollContentsBy(int dx, int dy) override;
    void changeEvent(QEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void keyReleaseEvent(QKeyEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void mouseReleaseEvent(QMouseEvent *event) override;
    void mouseDoubleClickEvent(QMouseEvent *event) override;
    void wheelEvent(QWheelEvent *event) override;
    void focusInEvent(QFocusEvent *event) override;
    void focusOutEvent(QFocusEvent *event) override;

private:
    enum class Drag { None, Pan, Link, Overview };
    enum class Light { None, Chain, Before, After, Evening }; // why tasks stand out

    struct Coming
    {
        plan::Network network;
        plan::LoomFacts facts;
        LoomRisks risks;
        QString wanted; // task to select once it is there
    };

    void take(const plan::Network &network, const plan::LoomFacts &facts, const LoomRisks &risks,
              std::optional<plan::Loom> loom);
    void layOutBeside();
    void layOutAnew(bool keepBranches);
    void showLoom(plan::Loom loom);
    void layOut(bool keepBranches);
    void updateScrollBars();
    void placeLegend();
    [[nodiscard]] double scale() const; // pixels per scene unit
    void rescale(double zoom);
    [[nodiscard]] double fontFactor() const;
    [[nodiscard]] QPointF origin() const; // of the scene, viewport pixels
    [[nodiscard]] QPointF toScene(QPointF at) const;
    [[nodiscard]] QPointF toView(QPointF at) const;
    // Down to here the dates lie over the chart, viewport pixels; 0 by chain.
    [[nodiscard]] double datesBottom() const;
    void toScene(QPainter &painter) const;
    void zoomAbout(double zoom, QPointF at);
    void select(std::optional<std::size_t> task);
    void selectWire(std::optional<std::size_t> wire);
    void reveal(const QRectF &sceneRect);
    void announce();
    [[nodiscard]] QString spoken() const;
    void refreshLit();
    void light(Light light);
    void endFinding(bool stay);
    void findAgain();
    bool findKey(QKeyEvent *event);
    bool forkKey(QKeyEvent *event);
    void wentAlong(std::size_t from, bool forward);
    [[nodiscard]] bool lacksForecast() const;
    [[nodiscard]] QString hint() const;
    void linkTo(std::size_t task);
    [[nodiscard]] std::optional<std::size_t> taskAt(QPointF at) const;
    [[nodiscard]] std::optional<std::size_t> linkHandleAt(QPointF at) const;
    [[nodiscard]] std::optional<std::size_t> wireAt(QPointF at) const;
    bool stepKey(QKeyEvent *event);
    bool editKey(QKeyEvent *event);
    bool zoomKey(QKeyEvent *event);
    void nextWire(bool backward);
    void showToolTip(QHelpEvent *event);
    void paintEmpty(QPainter &painter) const;
    void paintLack(QPainter &painter) const;
    void paintBase();
    void paintOnBase(const QRect &pixels);
    [[nodiscard]] bool scrollBase();
    [[nodiscard]] QPointF baseOrigin() const; // device pixels
    void repaintAll();
    void paintOverview(QPainter &painter);
    [[nodiscard]] QRectF overviewRect() const; // viewport pixels; empty when not shown
    void goByOverview(QPointF at);

    plan::Network m_network;
    plan::LoomFacts m_facts;
    LoomRisks m_risks;
    plan::ImpliedLinks m_implied = plan::ImpliedLinks::Omit;
    plan::Loom m_loom;
    LoomPainter m_painter;
    LoomMarks m_marks;
    LoomLegendBar *m_legend = nullptr;
    QPixmap m_base;       // the chart without what follows the pointer; null: to be painted
    QPointF m_baseOrigin; // where the scene began when it was painted, device pixels
    std::vector<LoomName> m_names; // of far milestones, at this zoom
    QPixmap m_overview;            // likewise
    double m_zoom = 1;
    QRectF m_scene;       // all there is to see at this zoom, scene units
    bool m_fitted = true; // stays fitted when the window changes, until zoomed by hand
    plan::LoomBy m_by = plan::LoomBy::Chain;
    QString m_forecastMissing;
    Light m_light = Light::None;
    std::optional<std::size_t> m_lightFrom; // whose chain is followed
    struct Fork
    {
        std::size_t from = 0;
        bool forward = false;
    };
    std::optional<Fork> m_fork; // how the selected task was come to
    bool m_finding = false;
    QString m_findText;
    std::vector<std::size_t> m_found;
    std::size_t m_foundAt = 0;
    std::optional<std::size_t> m_beforeFinding;
    bool m_spaceHeld = false;
    Drag m_drag = Drag::None;
    QPoint m_pressedAt, m_draggedTo;
    std::optional<Coming> m_coming; // being laid out
    int m_run = 0;                  // which of them is the newest
    QThreadPool m_worker;           // last, so that it has finished before anything else goes
};

} // namespace ohmwright::ui
