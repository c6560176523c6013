// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/plot_scene.h"

#include "ui/checks/plot_axis.h"
#include "ui/checks/plot_overlay.h"
#include "ui/checks/plot_strokes.h"
#include "ui/sheet/sheet_fonts.h"
#include "ui/shell/theme.h"

#include <QBarCategoryAxis>
#include <QBarSeries>
#include <QBarSet>
#include <QCategoryAxis>
#include <QChart>
#include <QCoreApplication>
#include <QFontMetricsF>
#include <QGraphicsLayout>
#include <QLegend>
#include <QLineSeries>
#include <QPainter>

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmwright::ui {

namespace {

constexpr int kAcross = 7; // intervals wished for along the foot
constexpr int kUpright = 5;
constexpr double kAxisWidth = 1.2;
constexpr double kGridWidth = 0.7;

QString tr(const char *text)
{
    return QCoreApplication::translate("ohmwright::ui::PlotScene", text);
}

struct Extent
{
    double least = std::numeric_limits<double>::infinity();
    double most = -std::numeric_limits<double>::infinity();

    void take(double value)
    {
        if (!std::isfinite(value))
            return;
        least = std::min(least, value);
        most = std::max(most, value);
    }
};

bool hasBars(const Plot &plot)
{
    return std::any_of(plot.series.begin(), plot.series.end(),
                       [](const PlotSeries &series) { return series.bars; });
}

AxisMarks marksOf(const Plot &plot, bool upright)
{
    Extent extent;
    for (const PlotSeries &series : plot.series)
        for (const auto &[x, y] : series.points)
            extent.take(upright ? y : x);
    const bool bars = upright && hasBars(plot);
    AxisMarks marks = axisMarks(extent.least, extent.most, upright ? kUpright : kAcross, bars);
    // room above the tallest bar for its value
    if (bars && extent.most > marks.most - 0.3 * marks.step)
        marks.most += marks.step;
    return marks;
}

QString range(const Extent &extent, const QString &unit)
{
    const auto show = [](double value) {
        return showNumber(value, NumberStyle::pointDecimal(), 4);
    };
    const QString told = tr("%1 to %2").arg(show(extent.least), show(extent.most));
    return unit.isEmpty() ? told : QString(told + QLatin1Char(' ') + unit);
}

} // namespace

PlotLook screenLook(const Tokens &tokens, const QFont &font)
{
    PlotLook look;
    look.ink = tokens.ink;
    look.mute = tokens.mute;
    look.hairline = tokens.hairline();
    look.blue = tokens.blue;
    look.ground = tokens.paper;
    look.font = font;
    look.titleFont = font;
    look.titleFont.setWeight(QFont::DemiBold);
    return look;
}

PlotLook printLook()
{
    constexpr int kLetters = 8;
    Tokens paper = tokensOf(Shade::Light);
    paper.paper = Qt::white;
    QFont font(sheet::loadSheetFonts().text);
    font.setPixelSize(kLetters);
    font.setHintingPreference(QFont::PreferNoHinting);
    PlotLook look = screenLook(paper, font);
    look.titleFont.setPixelSize(kLetters + 2);
    return look;
}

PlotScene::PlotScene(const Plot &plot, const PlotLook &look, QObject *parent)
    : QGraphicsScene(parent), m_look(look), m_chart(new QChart),
      m_overlay(new PlotOverlay(plot, look, *m_chart))
{
    addItem(m_chart);
    m_chart->setBackgroundVisible(false);
    m_chart->setPlotAreaBackgroundVisible(false);
    m_chart->setMargins(QMargins(0, 0, 0, 0));
    m_chart->setBackgroundRoundness(0);
    m_chart->legend()->hide();
    QAbstractAxis *values = makeAxis(marksOf(plot, true), axisTitle(plot.yName, plot.yUnit));
    QAbstractAxis *foot = hasBars(plot)
                              ? makeNames(plot)
                              : makeAxis(marksOf(plot, false), axisTitle(plot.xName, plot.xUnit));
    m_chart->addAxis(values, Qt::AlignLeft);
    m_chart->addAxis(foot, Qt::AlignBottom);
    addSeries(plot, *foot, *values);
}

QAbstractAxis *PlotScene::makeAxis(const AxisMarks &marks, const QString &title)
{
    // categories on values: the only axis whose words we may write ourselves, grouped digits and
    // all
    auto *axis = new QCategoryAxis;
    axis->setLabelsPosition(QCategoryAxis::AxisLabelsPositionOnValue);
    axis->setStartValue(marks.least - marks.step * 1e-6);
    for (int i = 0; i < marks.count(); ++i) {
        double value = marks.least + i * marks.step;
        if (std::abs(value) < marks.step * 1e-6)
            value = 0;
        axis->append(showNumber(value, NumberStyle::pointDecimal(), 12), value);
    }
    axis->setRange(marks.least, marks.most);
    axis->setTruncateLabels(false);
    axis->setTitleText(title);
    dress(*axis);
    return axis;
}

void PlotScene::dress(QAbstractAxis &axis)
{
    axis.setLabelsFont(m_look.font);
    axis.setLabelsBrush(m_look.ink);
    axis.setTitleFont(m_look.font);
    axis.setTitleBrush(m_look.mute);
    axis.setLinePen(QPen(m_look.ink, kAxisWidth));
    axis.setGridLinePen(QPen(m_look.hairline, kGridWidth));
    axis.setShadesVisible(false);
    axis.setMinorGridLineVisible(false);
}

QAbstractAxis *PlotScene::makeNames(const Plot &plot)
{
    auto *names = new QBarCategoryAxis;
    names->append(plot.barNames);
    names->setTitleText(axisTitle(plot.xName, plot.xUnit));
    dress(*names);
    names->setGridLineVisible(false);
    return names;
}

QAbstractSeries *PlotScene::makeBars(const Plot &plot) const
{
    auto *bars = new QBarSeries;
    bars->setBarWidth(kBarsShare);
    for (std::size_t i = 0; i < plot.series.size(); ++i) {
        if (!plot.series[i].bars)
            continue;
        auto *set = new QBarSet(plot.series[i].name);
        for (const auto &point : plot.series[i].points)
            *set << point.second;
        set->setPen(QPen(m_look.ink, 1));
        set->setBrush(fillingOf(i, plot.series.size(), m_look));
        bars->append(set);
    }
    return bars;
}

QAbstractSeries *PlotScene::makeLine(const PlotSeries &series, std::size_t index) const
{
    auto *line = new QLineSeries;
    line->setName(series.name);
    QList<QPointF> points;
    for (const auto &[x, y] : series.points)
        if (std::isfinite(x) && std::isfinite(y))
            points.append({x, y});
    line->append(points);
    line->setPen(strokeOf(index, m_look));
    return line;
}

void PlotScene::addSeries(const Plot &plot, QAbstractAxis &foot, QAbstractAxis &values)
{
    const auto add = [&](QAbstractSeries *series) {
        m_chart->addSeries(series);
        series->attachAxis(&foot);
        series->attachAxis(&values);
        return series;
    };
    // bars first: lines lie over them
    QAbstractSeries *bars = hasBars(plot) ? add(makeBars(plot)) : nullptr;
    for (std::size_t i = 0; i < plot.series.size(); ++i)
        m_overlay->addSeries(plot.series[i].bars ? bars : add(makeLine(plot.series[i], i)));
}

void PlotScene::layOut(const QSizeF &size)
{
    const double head = m_overlay->headHeight(size.width());
    // the last word along the foot reaches beyond the axis
    const double beyond = QFontMetricsF(m_look.font).horizontalAdvance(QStringLiteral("0000")) / 2;
    m_chart->layout()->setContentsMargins(0, head, beyond, 0);
    m_chart->resize(size);
    m_chart->layout()->activate();
    m_overlay->setSize(size);
    setSceneRect(QRectF(QPointF(), size));
}

void paintPlot(QPainter &painter, const QRectF &rect, const Plot &plot, double unitsPerPoint,
               bool withTitle)
{
    PlotLook look = printLook();
    look.withTitle = withTitle;
    PlotScene scene(plot, look);
    scene.layOut(rect.size() / unitsPerPoint);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    scene.render(&painter, rect, scene.sceneRect(), Qt::IgnoreAspectRatio);
    painter.restore();
}

QString spokenPlot(const Plot &plot)
{
    QStringList words;
    Extent across;
    Extent up;
    for (const PlotSeries &series : plot.series)
        for (const auto &[x, y] : series.points) {
            across.take(x);
            up.take(y);
        }
    if (across.least > across.most)
        return tr("%1: nothing to draw.").arg(plot.title);
    if (hasBars(plot))
        words << tr("Bars of %1, %2, for %3.")
                     .arg(plot.yName, range(up, plot.yUnit),
                          plot.barNames.join(QStringLiteral(", ")));
    else
        words << tr("%1, %2, over %3, %4.")
                     .arg(plot.yName, range(up, plot.yUnit), plot.xName, range(across, plot.xUnit));
    for (const PlotSeries &series : plot.series) {
        if (series.points.empty())
            continue;
        Extent own;
        for (const auto &point : series.points)
            own.take(point.second);
        words << tr("%1: %2.").arg(series.name, range(own, plot.yUnit));
    }
    return words.join(QLatin1Char(' '));
}

} // namespace ohmwright::ui
