// SPDX-License-Identifier: GPL-3.0-or-later
// What a plot has over the bare chart: its title, the legend with stroke and marker as drawn,
// markers along the lines, and the value on top of each bar.
#pragma once

#include "core/checks/check.h"
#include "ui/checks/plot_scene.h"

#include <QGraphicsItem>

class QAbstractSeries;

namespace ohmwright::ui {

class PlotOverlay : public QGraphicsItem
{
public:
    PlotOverlay(const Plot &plot, const PlotLook &look, QChart &chart);

    // The chart's own series of the plot's, in its order; for bars the one series of all sets.
    void addSeries(QAbstractSeries *series) { m_series.push_back(series); }
    // Of what stands above the axes, at that width: title, legend.
    [[nodiscard]] double headHeight(double width) const;
    void setSize(const QSizeF &size);

    [[nodiscard]] QRectF boundingRect() const override { return {QPointF(), m_size}; }
    void paint(QPainter *painter, const QStyleOptionGraphicsItem *option, QWidget *widget) override;

private:
    [[nodiscard]] bool hasLegend() const;
    // Lays the legend out in rows; paints it when there is a painter. Returns its height.
    double legend(double width, double top, QPainter *painter) const;
    void paintSample(QPainter &painter, const QRectF &rect, std::size_t series) const;
    void paintMarkers(QPainter &painter) const;
    void paintBars(QPainter &painter) const; // hatching, and values where there is room
    void paintBarValue(QPainter &painter, const QRectF &bar, double value) const;

    const Plot m_plot;
    const PlotLook m_look;
    QChart &m_chart;
    std::vector<QAbstractSeries *> m_series;
    QSizeF m_size;
};

} // namespace ohmwright::ui
