// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_draw.h"

#include "core/plan/loom_dates.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace ohmwright::plan::loom {

namespace {

// Ties on a trunk: distance from the housing's edge, and half their height.
constexpr double kTieFromHousing = 12;
constexpr double kTrunkTie = 4.5;

class Drawer
{
public:
    Drawer(const Network &network, const LoomFacts &facts, const LoomMetrics &metrics,
           const Placement &placement, const Sizes &sizes, Wired wired)
        : m_network(network), m_facts(facts), m_metrics(metrics), m_place(placement),
          m_sizes(sizes), m_wired(std::move(wired))
    {}

    Loom draw();

private:
    void drawTasks(Loom &result) const;
    void drawCavities(LoomTask &task, const Size &size) const;
    void drawHousingTexts(LoomTask &task, const Size &size, QPointF centre, double cellLeft) const;
    void drawStrip(LoomTask &task, const Size &size) const;
    void drawPlateTexts(LoomTask &task, const Size &size) const;
    void drawWires(Loom &result);
    void drawBranches(Loom &result) const;
    void drawTrunks(Loom &result, LoomBranch &branch, std::size_t index, double trunkStart) const;
    static void findBounds(Loom &result, double margin);

    const Network &m_network;
    const LoomFacts &m_facts;
    const LoomMetrics &m_metrics;
    const Placement &m_place;
    const Sizes &m_sizes;
    Wired m_wired;
};

void setLabel(LoomLabel &label, const Words::Broken &text, QPointF topLeft, double lineHeight)
{
    label.lines = text.lines;
    label.cut = text.cut;
    label.lineHeight = lineHeight;
    label.at = topLeft + QPointF(0, lineHeight * 0.8);
    label.box = text.lines.isEmpty()
                    ? QRectF()
                    : QRectF(topLeft, QSizeF(text.width,
                                             lineHeight * static_cast<double>(text.lines.size())));
}

void Drawer::drawCavities(LoomTask &task, const Size &size) const
{
    const Task &own = m_network.tasks[task.task];
    const bool plate = own.milestone;
    const double pitch = m_metrics.cavityWidth + m_metrics.cavityGap;
    const auto perRow =
        static_cast<std::size_t>(std::ceil(static_cast<double>(size.cavities) / size.cavityRows));
    for (std::size_t at = 0; at < size.cavities; ++at) {
        LoomCavity cavity;
        cavity.forTask = at < own.after.size();
        cavity.index = cavity.forTask ? at : at - own.after.size();
        cavity.filled = cavity.forTask ? own.after[at] >= m_network.tasks.size() ||
                                             m_network.tasks[own.after[at]].done
                                       : own.needs[cavity.index].met;
        if (plate) {
            const double y =
                task.body.center().y() + (static_cast<double>(m_wired.plateAt[task.task][at]) -
                                          (static_cast<double>(size.cavities) - 1) / 2) *
                                             m_metrics.plateCavityPitch;
            const double height = m_metrics.plateCavityPitch - 3;
            cavity.box =
                QRectF(task.body.left() + 6, y - height / 2, task.body.width() - 12, height);
        } else {
            const std::size_t row = at / perRow;
            const std::size_t inRow = std::min(perRow, size.cavities - row * perRow);
            const double rowWidth = static_cast<double>(inRow) * pitch - m_metrics.cavityGap;
            const double height =
                size.cavityRows > 1 ? (m_metrics.cavityHeight + 1) / 2 : m_metrics.cavityHeight;
            const double top =
                task.body.bottom() - 5 - m_metrics.cavityHeight - (size.cavityRows > 1 ? 1.5 : 0);
            cavity.box = QRectF(task.body.center().x() - rowWidth / 2 +
                                    static_cast<double>(at - row * perRow) * pitch,
                                top + static_cast<double>(row) * (height + 1.5),
                                m_metrics.cavityWidth, height);
        }
        task.cavities.push_back(cavity);
    }
}

void Drawer::drawHousingTexts(LoomTask &task, const Size &size, QPointF centre,
                              double cellLeft) const
{
    const double cavitiesTop = size.cavities == 0 ? task.body.bottom() - 4
                                                  : task.body.bottom() - 7 - m_metrics.cavityHeight;
    const double height = static_cast<double>(size.title.lines.size()) * m_metrics.titleLine;
    const double top = task.body.top() + 2;
    setLabel(task.title, size.title,
             QPointF(centre.x() - size.title.width / 2,
                     top + std::max(0.0, (cavitiesTop - top - height) / 2)),
             m_metrics.titleLine);
    if (size.forecast)
        drawStrip(task, size);
    if (size.lack.any) {
        const double cellRight =
            cellLeft + m_sizes.columnWidth[static_cast<std::size_t>(task.column)];
        if (size.forecast) {
            // Round the strip, along the housing's left edge.
            const double left =
                std::clamp(task.body.left() + kBesideLead, cellLeft + kBesideLead,
                           std::max(cellLeft + kBesideLead, cellRight - size.missing.width));
            const double below = task.body.bottom() + stripHeight(m_metrics, size) + 7;
            setLabel(task.missing, size.missing, QPointF(left, below), m_metrics.missingLine);
            const double lead = left - kBesideLead + kLeadIndent;
            const double round = task.body.bottom() + 2.5;
            const double foot = below + m_metrics.missingLine * 0.5;
            task.missingLead = {task.missingFrom,
                                {task.missingFrom.x(), round},
                                {lead, round},
                                {lead, foot},
                                {left - 2, foot}};
            return;
        }
        const double from = size.lack.aside ? task.body.left() : task.missingFrom.x() + 5;
        const double left =
            std::clamp(from, cellLeft, std::max(cellLeft, cellRight - size.missing.width));
        setLabel(task.missing, size.missing, QPointF(left, task.body.bottom() + 6),
                 m_metrics.missingLine);
    }
}

void Drawer::drawStrip(LoomTask &task, const Size &size) const
{
    const double left = task.body.left() + kBesideLead;
    const double top = task.body.bottom() + 5;
    const bool both = !size.plan.lines.isEmpty();
    if (both)
        setLabel(task.plan, size.plan, QPointF(left, top), m_metrics.dateLine);
    setLabel(task.ready, size.ready, QPointF(left, top + (both ? m_metrics.dateLine : 0)),
             m_metrics.dateLine);
    if (!size.slack.lines.isEmpty()) {
        const double right = task.body.right() - 1;
        setLabel(task.slack, size.slack, QPointF(right - size.slack.width, top),
                 m_metrics.dateLine);
        task.slackLoop = QRectF(task.slack.box.left() - 3 - kLoopWidth, top + 1, kLoopWidth,
                                m_metrics.dateLine - 3);
    }
    const auto &ready = m_facts.forecast->of(task.task).ready;
    if (both || !ready[0] || !ready[1] || !ready[2] || *ready[2] <= *ready[0])
        return;
    const double perDay = m_sizes.whiskerPerDay;
    task.whisker = QRectF(left, top + m_metrics.dateLine, (*ready[2] - *ready[0]) * perDay,
                          kWhiskerHeight - 2);
    task.whiskerMark = left + (*ready[1] - *ready[0]) * perDay;
}

void Drawer::drawPlateTexts(LoomTask &task, const Size &size) const
{
    const double left = task.body.right() + kPlateTextGap;
    const double centre = task.body.center().y();
    setLabel(
        task.title, size.title,
        QPointF(left, centre - 5 -
                          static_cast<double>(size.title.lines.size()) * m_metrics.milestoneLine),
        m_metrics.milestoneLine);
    setLabel(task.date, size.date, QPointF(left, centre + 5), m_metrics.dateLine);
    if (size.lack.any)
        setLabel(
            task.missing, size.missing,
            QPointF(left,
                    centre + 6 + static_cast<double>(size.date.lines.size()) * m_metrics.dateLine),
            m_metrics.missingLine);
}

void Drawer::drawTasks(Loom &result) const
{
    std::vector<bool> drives(m_network.tasks.size(), false);
    for (const std::size_t task : m_facts.driving) {
        if (task < drives.size())
            drives[task] = true;
    }
    for (std::size_t at = 0; at < m_network.tasks.size(); ++at) {
        const Size &size = m_sizes.of[at];
        LoomTask task;
        task.task = at;
        task.branch = m_place.branchOf[at];
        task.column = m_place.column[at];
        task.row = m_wired.in.row[at];
        task.state = loomState(m_network, at);
        task.onDrivingChain = drives[at];
        if (m_facts.forecast)
            task.days = m_facts.forecast->of(at);
        const double cellLeft = m_wired.routed.columnLeft[static_cast<std::size_t>(task.column)];
        const double y = m_wired.routed.rowY[static_cast<std::size_t>(task.row)];
        task.body =
            QRectF(cellLeft + m_wired.in.enterAt[at], y - size.height / 2, size.width, size.height);
        drawCavities(task, size);
        if (size.lack.any && !size.lack.aside) {
            const QRectF &box =
                task.cavities[m_network.tasks[at].after.size() + size.lack.need].box;
            task.missingFrom = QPointF(box.center().x(), box.bottom());
            task.missingIsQuestion = size.lack.question;
        }
        if (m_network.tasks[at].milestone)
            drawPlateTexts(task, size);
        else
            drawHousingTexts(task, size, QPointF(task.body.center().x(), y), cellLeft);
        if (m_network.tasks[at].highVoltage)
            task.highVoltageMark = QRectF(task.body.right() - 22, task.body.top() - 14, 22, 12);
        const auto drawn = [&](std::size_t link) {
            return m_place.links[link].drawn;
        };
        task.wireEnters = std::any_of(m_place.into[at].begin(), m_place.into[at].end(), drawn);
        task.wireLeaves = std::any_of(m_place.outOf[at].begin(), m_place.outOf[at].end(), drawn);
        result.tasks.push_back(std::move(task));
    }
}

void Drawer::drawWires(Loom &result)
{
    const auto share = [&](std::size_t task) {
        if (task < m_facts.drives.size())
            return std::clamp(m_facts.drives[task], 0.0, 1.0);
        return m_facts.forecast ? std::clamp(m_facts.forecast->of(task).driving, 0.0, 1.0) : 0.0;
    };
    for (std::size_t at = 0; at < m_place.links.size(); ++at) {
        const Link &link = m_place.links[at];
        if (!link.drawn) {
            result.impliedOmitted += link.implied ? 1 : 0;
            continue;
        }
        LoomWire wire;
        wire.from = link.from;
        wire.to = link.to;
        wire.cavity = link.afterIndex;
        wire.path = std::move(m_wired.routed.path[at]);
        wire.driving = link.driving;
        wire.alongTrunk = m_wired.routed.alongTrunk[at];
        wire.highVoltage =
            m_network.tasks[link.from].highVoltage && m_network.tasks[link.to].highVoltage;
        wire.implied = link.implied;
        wire.met = m_network.tasks[link.from].done;
        wire.aside = m_network.tasks[link.from].aside || m_network.tasks[link.to].aside;
        wire.share = std::min(share(link.from), share(link.to));
        result.wires.push_back(std::move(wire));
    }
}

// The runs of one branch, with a tie where the trunk enters and leaves each housing.
void Drawer::drawTrunks(Loom &result, LoomBranch &branch, std::size_t index,
                        double trunkStart) const
{
    const auto runs = static_cast<std::size_t>(m_place.runsOf[index]);
    branch.runs.resize(runs);
    std::vector<std::vector<std::size_t>> on(runs);
    for (const std::size_t task : m_place.tasksOf[index])
        on[static_cast<std::size_t>(m_place.run[task])].push_back(task);
    for (std::size_t run = 0; run < runs; ++run) {
        LoomTrunk &trunk = branch.runs[run];
        const QRectF first = result.tasks[on[run].front()].body;
        trunk.y = first.center().y();
        trunk.right = result.tasks[on[run].back()].body.left();
        const int column = m_place.column[on[run].front()];
        if (run == 0) {
            trunk.left = trunkStart;
        } else {
            // Out of the run above, within the gap before the first housing.
            const auto before = static_cast<std::size_t>(column - 1);
            const double from = m_wired.routed.columnLeft[before] + m_sizes.columnWidth[before];
            const double to = m_wired.routed.columnLeft[before + 1];
            std::size_t parent = run - 1;
            while (parent > 0 && branch.runs[parent].left > from)
                --parent;
            const double above = branch.runs[parent].y;
            trunk.left = to;
            trunk.fork = {{from, above},
                          {from + (to - from) * 0.6, above},
                          {from + (to - from) * 0.4, trunk.y},
                          {to, trunk.y}};
            // The run above may have ended before: then its trunk goes on to here.
            LoomTrunk &forked = branch.runs[parent];
            const double end = std::max(result.tasks[on[parent].back()].body.right(), forked.right);
            if (from > end) {
                forked.spans.push_back({end, from, false});
                forked.right = from;
            }
        }
        double from = trunk.left;
        for (std::size_t at = 0; at < on[run].size(); ++at) {
            const std::size_t task = on[run][at];
            const QRectF body = result.tasks[task].body;
            const bool hot =
                m_network.tasks[task].highVoltage &&
                (at == 0 ? branch.highVoltage : m_network.tasks[on[run][at - 1]].highVoltage);
            trunk.spans.push_back({from, body.left(), hot});
            result.ties.push_back(
                {{body.left() - kTieFromHousing, trunk.y}, kTrunkTie, false, hot});
            if (at > 0 && body.left() - from > 3 * kTieFromHousing &&
                !m_network.tasks[on[run][at - 1]].milestone)
                result.ties.push_back({{from + kTieFromHousing, trunk.y}, kTrunkTie, false, hot});
            from = body.right();
        }
    }
}

void Drawer::drawBranches(Loom &result) const
{
    for (const std::size_t index : m_wired.stacking.order) {
        const auto row = static_cast<std::size_t>(m_wired.stacking.firstRow[index]);
        LoomBranch branch;
        branch.area = m_place.areas[index];
        const auto runs = static_cast<std::size_t>(m_place.runsOf[index]);
        branch.top = m_wired.routed.rowY[row] - m_wired.in.rowUp[row];
        branch.bottom = m_wired.routed.rowY[row + runs - 1] + m_wired.in.rowDown[row + runs - 1];
        const auto column =
            static_cast<std::size_t>(m_place.column[m_place.tasksOf[index].front()] - 1);
        const double width = m_sizes.sleeves[index].width + 2 * kSleevePad;
        const double right = m_wired.routed.columnLeft[column] + m_sizes.columnWidth[column];
        const double trunkY = result.tasks[m_place.tasksOf[index].front()].body.center().y();
        branch.sleeve = QRectF(right - width, trunkY - m_metrics.sleeveHeight / 2, width,
                               m_metrics.sleeveHeight);
        setLabel(branch.name, m_sizes.sleeves[index],
                 QPointF(branch.sleeve.left() + kSleevePad,
                         branch.sleeve.center().y() - m_metrics.missingLine / 2),
                 m_metrics.missingLine);
        branch.highVoltage = mostlyHighVoltage(m_network, m_place.tasksOf[index]);
        drawTrunks(result, branch, index, branch.sleeve.left() - 14);
        for (const std::size_t task : m_place.tasksOf[index])
            result.tasks[task].branch = result.branches.size();
        result.branches.push_back(std::move(branch));
    }
}

void Drawer::findBounds(Loom &result, double margin)
{
    QRectF bounds;
    for (const LoomTask &task : result.tasks)
        bounds |= reachOf(task);
    for (const LoomBranch &branch : result.branches) {
        bounds |= branch.sleeve;
        for (const LoomTrunk &trunk : branch.runs)
            bounds |= QRectF(QPointF(trunk.left, trunk.y - 1), QPointF(trunk.right, trunk.y + 1));
    }
    // A cubic stays within its control points.
    for (const LoomWire &wire : result.wires) {
        for (const QPointF &point : wire.path)
            bounds |= QRectF(point - QPointF(1, 1), point + QPointF(1, 1));
    }
    result.bounds = bounds.isNull() ? bounds : bounds.adjusted(-margin, -margin, margin, margin);
}

Loom Drawer::draw()
{
    Loom result;
    result.crossings = m_wired.routed.crossings;
    result.wireLength = m_wired.routed.length;
    drawTasks(result);
    drawBranches(result);
    drawWires(result);
    result.ties.insert(result.ties.end(), m_wired.routed.ties.begin(), m_wired.routed.ties.end());
    result.bundles = std::move(m_wired.routed.bundles);
    if (m_facts.forecast) {
        result.today = m_facts.forecast->today;
        result.whiskerPerDay = m_sizes.whiskerPerDay;
    }
    findBounds(result, 16);
    ruleAxis(m_place, m_wired.routed.columnLeft, m_sizes.columnWidth, result.bounds.top() + 16,
             result);
    result.bounds |= result.axisBand;
    // Wires have come to their height where a column begins, and so have rules to stand with it.
    const std::vector<double> room = roomForRules(m_place);
    for (std::size_t column = 1; column < m_wired.routed.columnLeft.size(); ++column)
        result.cuts.push_back(m_wired.routed.columnLeft[column] - room[column - 1] - 1.5);
    return result;
}

} // namespace

Loom draw(const Network &network, const LoomFacts &facts, const LoomMetrics &metrics,
          const Placement &placement, const Sizes &sizes, Wired wired)
{
    return Drawer(network, facts, metrics, placement, sizes, std::move(wired)).draw();
}

} // namespace ohmwright::plan::loom
