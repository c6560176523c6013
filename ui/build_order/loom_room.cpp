// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_room.h"

#include <QPointF>
#include <QRectF>

#include <algorithm>

namespace ohmwright::ui {

namespace {

// `move`: of any point; a task is moved as its middle is.
template <typename Move>
void moveAll(plan::Loom &loom, const Move &move)
{
    const auto moved = [&](QPointF at) {
        const QPointF before = at;
        move(at);
        return at - before;
    };
    const auto stretch = [&](QRectF &box) {
        QPointF low = box.topLeft();
        QPointF high = box.bottomRight();
        move(low);
        move(high);
        box = QRectF(low, high);
    };
    for (plan::LoomTask &task : loom.tasks) {
        plan::moveBy(task, moved(task.body.center()));
        for (QPointF &lead : task.missingLead)
            move(lead);
    }
    for (plan::LoomBranch &branch : loom.branches) {
        // A name goes with the first housing of its run.
        const auto firstOf = [](const plan::LoomTrunk &run) {
            return QPointF(run.spans.empty() ? run.left : run.spans.front().right, run.y);
        };
        const QPointF by = branch.runs.empty() ? moved(branch.sleeve.center())
                                               : moved(firstOf(branch.runs.front()));
        branch.sleeve.translate(by);
        branch.name.at += by;
        branch.name.box.translate(by);
        branch.top += moved({branch.sleeve.center().x(), branch.top}).y();
        branch.bottom += moved({branch.sleeve.center().x(), branch.bottom}).y();
        for (plan::LoomTrunk &run : branch.runs) {
            const auto right = [&](double x) {
                return x + moved({x, run.y}).x();
            };
            const double start = moved(firstOf(run)).x();
            for (plan::LoomSpan &span : run.spans) {
                span.left = span.left <= run.left ? span.left + start : right(span.left);
                span.right = right(span.right);
            }
            run.left += start;
            run.right = right(run.right);
            run.y += moved(firstOf(run)).y();
            for (QPointF &at : run.fork)
                move(at);
        }
    }
    for (plan::LoomWire &wire : loom.wires)
        for (QPointF &at : wire.path)
            move(at);
    for (plan::LoomTie &tie : loom.ties)
        move(tie.at);
    for (QRectF &bundle : loom.bundles)
        stretch(bundle);
    for (plan::LoomRule &rule : loom.rules)
        rule.x += moved({rule.x, loom.bounds.top()}).x();
    for (double &cut : loom.cuts)
        cut += moved({cut, loom.bounds.top()}).x();
    stretch(loom.bounds);
    if (!loom.axisBand.isNull())
        stretch(loom.axisBand);
}

} // namespace

void makeRoomBelow(plan::Loom &loom, const std::vector<LoomRoom> &lines)
{
    std::vector<double> at;
    std::vector<double> more{0};
    for (const LoomRoom &line : lines) {
        at.push_back(line.at);
        more.push_back(more.back() + line.more);
    }
    if (more.back() <= 0)
        return;
    moveAll(loom, [&](QPointF &point) {
        const auto passed = std::lower_bound(at.begin(), at.end(), point.y()) - at.begin();
        point.ry() += more[static_cast<std::size_t>(passed)];
    });
}

void makeRoomRightOf(plan::Loom &loom, double x, double more)
{
    moveAll(loom, [&](QPointF &point) {
        if (point.x() > x)
            point.rx() += more;
    });
}

} // namespace ohmwright::ui
