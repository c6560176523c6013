// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_painter.h"

#include "ui/build_order/loom_painter_canvas.h"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <array>

namespace ohmwright::ui {

using plan::LoomTask;
using plan::LoomText;

QColor mixed(const QColor &over, const QColor &under, double share)
{
    return QColor::fromRgbF(
        static_cast<float>(over.redF() * share + under.redF() * (1 - share)),
        static_cast<float>(over.greenF() * share + under.greenF() * (1 - share)),
        static_cast<float>(over.blueF() * share + under.blueF() * (1 - share)));
}

LoomPainter::LoomPainter(const QString &family, const LoomColours &colours, double letters)
    : m_family(family), m_colours(colours), m_letters(letters)
{}

QFont LoomPainter::font(LoomText kind) const
{
    QFont result(m_family);
    // Widths must not depend on the zoom.
    result.setHintingPreference(QFont::PreferNoHinting);
    switch (kind) {
    case LoomText::Title:
        result.setPixelSize(12);
        result.setWeight(QFont::Medium);
        break;
    case LoomText::Missing:
        result.setPixelSize(m_small);
        break;
    case LoomText::Sleeve:
        result.setPixelSize(12);
        break;
    case LoomText::Milestone:
        result.setPixelSize(13);
        result.setWeight(QFont::DemiBold);
        break;
    case LoomText::Date:
        result.setPixelSize(m_small);
        break;
    }
    return result;
}

plan::LoomMetrics LoomPainter::metrics() const
{
    plan::LoomMetrics metrics;
    const std::array<QFontMetricsF, 5> fonts{
        QFontMetricsF(font(LoomText::Title)), QFontMetricsF(font(LoomText::Missing)),
        QFontMetricsF(font(LoomText::Sleeve)), QFontMetricsF(font(LoomText::Milestone)),
        QFontMetricsF(font(LoomText::Date))};
    metrics.textWidth = [fonts](LoomText kind, const QString &text) {
        return fonts.at(static_cast<std::size_t>(kind)).horizontalAdvance(text);
    };
    if (m_paper) {
        metrics.housingMaxWidth = 110;
        metrics.housingHeight = 46;
        metrics.gap = 20;
        metrics.channel = 10;
        metrics.wirePitch = 4;
        metrics.plateCavityPitch = 15;
    }
    return metrics;
}

LoomPainter LoomPainter::forPaper(const QString &family)
{
    LoomPainter made(family, LoomColours::print());
    made.m_paper = true;
    made.m_small = 12;
    return made;
}

void LoomPainter::paint(QPainter &painter, const plan::Network &network, const plan::Loom &loom,
                        const LoomMarks &marks, const QRectF &exposed, double scale) const
{
    paintScene(painter, network, loom, marks, placeNames(network, loom, scale), exposed, scale);
    paintLabels(painter, network, loom, marks, exposed, scale);
}

void LoomPainter::paintScene(QPainter &painter, const plan::Network &network,
                             const plan::Loom &loom, const LoomMarks &marks,
                             const std::vector<LoomName> &names, const QRectF &exposed,
                             double scale) const
{
    Canvas canvas{painter, network, loom, marks, exposed, scale};
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintRules(canvas);
    paintBundles(canvas);
    paintBars(canvas);
    paintWires(canvas, Layer::Beneath);
    paintTrunks(canvas);
    paintWires(canvas, Layer::Above);
    paintTies(canvas);
    for (const LoomTask &task : loom.tasks) {
        const double flag = kFlagHeight / std::min(1.0, scale);
        QRectF reach = task.body.adjusted(-8, -std::max(16.0, flag), std::max(8.0, flag), 8);
        reach |= task.title.box;
        reach |= task.date.box;
        reach |= task.missing.box;
        reach |= task.plan.box;
        reach |= task.ready.box;
        reach |= task.slack.box;
        if (loom.rules.empty())
            reach |= task.whisker;
        if (!reach.intersects(exposed))
            continue;
        painter.setOpacity(canvas.lit(task.task) ? 1 : kDimmed);
        if (network.tasks[task.task].milestone)
            paintPlate(canvas, task);
        else
            paintHousing(canvas, task);
        paintCavities(canvas, task);
        paintFlag(canvas, task);
        paintRisk(canvas, task);
        if (canvas.full()) {
            paintMissing(canvas, task);
            paintStrip(canvas, task);
        }
    }
    paintFarNames(canvas, names);
    painter.restore();
}

void LoomPainter::paintLabels(QPainter &painter, const plan::Network &network,
                              const plan::Loom &loom, const LoomMarks &marks, const QRectF &exposed,
                              double scale) const
{
    Canvas canvas{painter, network, loom, marks, exposed, scale};
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.save();
    if (!loom.rules.empty() && marks.slideTop) {
        // Names of branches go under the dates as all else does.
        const double edge = axisBand(loom, scale, marks.slideTop).bottom();
        painter.setClipRect(
            exposed.intersected(QRectF(exposed.left(), edge, exposed.width(), exposed.height())),
            Qt::IntersectClip);
    }
    paintSleeves(canvas);
    painter.restore();
    paintAxis(canvas);
    painter.restore();
}

} // namespace ohmwright::ui
