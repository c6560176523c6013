// SPDX-License-Identifier: GPL-3.0-or-later
// A plot of a check as a chart in the house's look: thin ink lines on paper, told apart by stroke
// and marker as well as by colour, bars by their filling; a legend on top; axes named with units.
//
// The same scene is shown in the window, printed, and written to files.
#pragma once

#include "core/checks/check.h"

#include <QColor>
#include <QFont>
#include <QGraphicsScene>

class QAbstractAxis;
class QAbstractSeries;
class QChart;
class QPainter;

namespace ohmwright::ui {

struct AxisMarks;
class PlotOverlay;
struct Tokens;

struct PlotLook
{
    QColor ink, mute, hairline, blue, ground;
    QFont font;      // of axis marks and legend, in pixels of the scene
    QFont titleFont; // of the plot's title
    bool withTitle = false;
};

// For a screen, from its tokens; `font` is the theme's small lettering.
[[nodiscard]] PlotLook screenLook(const Tokens &tokens, const QFont &font);
// Ink on white, letters of 8 points where one pixel of the scene is one point.
[[nodiscard]] PlotLook printLook();

class PlotScene : public QGraphicsScene
{
    Q_OBJECT

public:
    PlotScene(const Plot &plot, const PlotLook &look, QObject *parent = nullptr);

    void layOut(const QSizeF &size);
    [[nodiscard]] QChart &chart() { return *m_chart; }

private:
    QAbstractAxis *makeAxis(const AxisMarks &marks, const QString &title);
    QAbstractAxis *makeNames(const Plot &plot);
    [[nodiscard]] QAbstractSeries *makeBars(const Plot &plot) const;
    [[nodiscard]] QAbstractSeries *makeLine(const PlotSeries &series, std::size_t index) const;
    void addSeries(const Plot &plot, QAbstractAxis &foot, QAbstractAxis &values);
    void dress(QAbstractAxis &axis);

    PlotLook m_look;
    QChart *m_chart;        // the scene's
    PlotOverlay *m_overlay; // the chart's
};

// Draws the plot into `rect` for paper, in ink on white. `unitsPerPoint`: how many of the painter's
// units are a point (1/72 inch), so that letters come out 8 points tall. Needs a QApplication: a
// chart is made of graphics widgets.
void paintPlot(QPainter &painter, const QRectF &rect, const Plot &plot, double unitsPerPoint,
               bool withTitle = false);

// All of a plot in words, for who cannot see it: what is on the axes, and each line from where to
// where.
[[nodiscard]] QString spokenPlot(const Plot &plot);

} // namespace ohmwright::ui
