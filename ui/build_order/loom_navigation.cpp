// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_navigation.h"

#include <QStringList>

#include <algorithm>
#include <cmath>
#include <tuple>

namespace ohmwright::ui {

using plan::LoomState;
using plan::LoomTask;

namespace {

// The task for which `worth` is greatest among those for which it has a value.
template <class Worth>
std::optional<std::size_t> bestOf(const plan::Loom &loom, Worth worth)
{
    std::optional<std::size_t> best;
    decltype(worth(loom.tasks.front())) most;
    for (const LoomTask &task : loom.tasks) {
        const auto now = worth(task);
        if (now && (!most || *now > *most)) {
            most = now;
            best = task.task;
        }
    }
    return best;
}

} // namespace

std::optional<std::size_t> loomNeighbour(const plan::Loom &loom, std::size_t task, LoomStep step)
{
    using Worth = std::optional<std::tuple<double, double, double>>;
    const LoomTask &own = loom.tasks[task];
    const bool backward = step == LoomStep::Before || step == LoomStep::First;
    const double sign = backward ? -1 : 1;
    switch (step) {
    case LoomStep::Before:
    case LoomStep::After:
        return bestOf(loom, [&](const LoomTask &other) -> Worth {
            const double ahead = sign * (other.column - own.column);
            if (other.branch != own.branch || ahead <= 0)
                return std::nullopt;
            // Its own run first; from its end on, whatever the branch has next.
            return std::tuple(other.row == own.row ? 1.0 : 0.0, -ahead,
                              -std::abs(other.row - own.row) * 1.0);
        });
    case LoomStep::First:
    case LoomStep::Last:
        return bestOf(loom, [&](const LoomTask &other) -> Worth {
            if (other.branch != own.branch || other.task == task)
                return std::nullopt;
            if (sign * (other.column - own.column) <= 0)
                return std::nullopt;
            return std::tuple(sign * other.column, -std::abs(other.row - own.row) * 1.0, 0.0);
        });
    case LoomStep::Up:
    case LoomStep::Down: {
        const int way = step == LoomStep::Up ? -1 : 1;
        return bestOf(loom, [&](const LoomTask &other) -> Worth {
            const int rows = way * (other.row - own.row);
            if (rows <= 0)
                return std::nullopt;
            return std::tuple(-rows * 1.0,
                              -std::abs(other.body.center().x() - own.body.center().x()),
                              -other.body.left());
        });
    }
    }
    return std::nullopt;
}

std::optional<std::size_t> loomAlongWire(const plan::Loom &loom, std::size_t task, bool forward)
{
    using Worth = std::optional<std::tuple<double, double>>;
    std::vector<bool> joined(loom.tasks.size(), false);
    for (const plan::LoomWire &wire : loom.wires) {
        if ((forward ? wire.from : wire.to) == task)
            joined[forward ? wire.to : wire.from] = true;
    }
    const LoomTask &own = loom.tasks[task];
    return bestOf(loom, [&](const LoomTask &other) -> Worth {
        if (!joined[other.task])
            return std::nullopt;
        // Where the date is driven, then what is nearest.
        const bool driving = own.onDrivingChain && other.onDrivingChain;
        const QPointF way = other.body.center() - own.body.center();
        return std::tuple(driving ? 1.0 : 0.0, -std::hypot(way.x(), way.y()));
    });
}

std::vector<std::size_t> loomWiresOf(const plan::Loom &loom, std::size_t task)
{
    std::vector<std::size_t> wires;
    for (std::size_t at = 0; at < loom.wires.size(); ++at) {
        if (loom.wires[at].to == task)
            wires.push_back(at);
    }
    for (std::size_t at = 0; at < loom.wires.size(); ++at) {
        if (loom.wires[at].from == task)
            wires.push_back(at);
    }
    return wires;
}

std::vector<bool> loomChain(const plan::Network &network, std::size_t task, LoomWay way)
{
    const std::size_t count = network.tasks.size();
    std::vector<std::vector<std::size_t>> then(count);
    for (std::size_t at = 0; at < count; ++at) {
        for (const std::size_t before : network.tasks[at].after) {
            if (before < count)
                then[before].push_back(at);
        }
    }
    std::vector<bool> chain(count, false);
    const auto walk = [&](const auto &next) {
        std::vector<bool> seen(count, false);
        std::vector<std::size_t> open{task};
        seen[task] = true;
        while (!open.empty()) {
            const std::size_t at = open.back();
            open.pop_back();
            chain[at] = true;
            for (const std::size_t other : next(at)) {
                if (other < count && !seen[other]) {
                    seen[other] = true;
                    open.push_back(other);
                }
            }
        }
    };
    if (way != LoomWay::Before)
        walk([&](std::size_t at) -> const std::vector<std::size_t> & { return then[at]; });
    if (way != LoomWay::After)
        walk([&](std::size_t at) -> const std::vector<std::size_t> & {
            return network.tasks[at].after;
        });
    return chain;
}

std::vector<std::size_t> loomFork(const plan::Loom &loom, std::size_t from, bool forward)
{
    std::vector<std::size_t> ends;
    for (const plan::LoomWire &wire : loom.wires) {
        if ((forward ? wire.from : wire.to) == from)
            ends.push_back(forward ? wire.to : wire.from);
    }
    std::stable_sort(ends.begin(), ends.end(), [&](std::size_t left, std::size_t right) {
        return loom.tasks[left].body.center().y() < loom.tasks[right].body.center().y();
    });
    return ends;
}

std::vector<std::size_t> loomFind(const plan::Network &network, const plan::Loom &loom,
                                  const QString &text)
{
    const QString wanted = text.trimmed();
    if (wanted.isEmpty())
        return {};
    std::vector<std::tuple<int, double, double, std::size_t>> found;
    for (const LoomTask &task : loom.tasks) {
        const plan::Task &own = network.tasks[task.task];
        int rank = 3;
        if (own.title.startsWith(wanted, Qt::CaseInsensitive))
            rank = 0;
        else if (own.title.contains(QLatin1Char(' ') + wanted, Qt::CaseInsensitive))
            rank = 1;
        else if (own.title.contains(wanted, Qt::CaseInsensitive))
            rank = 2;
        else if (!own.area.contains(wanted, Qt::CaseInsensitive))
            continue;
        found.emplace_back(rank, task.body.left(), task.body.top(), task.task);
    }
    std::sort(found.begin(), found.end());
    std::vector<std::size_t> tasks;
    tasks.reserve(found.size());
    for (const auto &item : found)
        tasks.push_back(std::get<3>(item));
    return tasks;
}

std::vector<std::size_t> loomEvening(const plan::Network &network, const plan::Loom &loom)
{
    std::optional<int> first;
    for (const LoomTask &task : loom.tasks) {
        const plan::Task &own = network.tasks[task.task];
        if (!own.milestone && !own.done && task.days.start)
            first = first ? std::min(*first, *task.days.start) : task.days.start;
    }
    std::vector<std::size_t> tasks;
    for (const LoomTask &task : loom.tasks) {
        const plan::Task &own = network.tasks[task.task];
        if (own.milestone || own.done)
            continue;
        const bool planned = first ? task.days.start == first : task.state == LoomState::CanStart;
        if (planned || task.state == LoomState::UnderWay)
            tasks.push_back(task.task);
    }
    return tasks;
}

std::optional<std::size_t> loomStart(const plan::Loom &loom)
{
    using Worth = std::optional<std::tuple<double, double, double>>;
    return bestOf(loom, [](const LoomTask &task) -> Worth {
        return std::tuple(task.state == LoomState::CanStart ? 1.0 : 0.0, -task.body.left(),
                          -task.body.top());
    });
}

QString LoomWords::state(const plan::Network &network, std::size_t task)
{
    switch (plan::loomState(network, task)) {
    case LoomState::Done:
        return tr("done");
    case LoomState::UnderWay:
        return tr("under way");
    case LoomState::CanStart:
        return tr("can start now");
    case LoomState::Waits:
        return tr("waits: %1").arg(plan::loomWaits(network, task).join(QStringLiteral(", ")));
    case LoomState::SetAside:
        return tr("set aside");
    }
    return {};
}

QString LoomWords::description(const plan::Network &network, const plan::Loom &loom,
                               std::size_t task)
{
    const plan::Task &own = network.tasks[task];
    QStringList parts{state(network, task)};
    if (own.milestone)
        parts.append(tr("milestone"));
    if (!own.area.isEmpty())
        parts.append(own.area);
    if (own.highVoltage)
        parts.append(tr("high voltage"));
    if (loom.tasks[task].onDrivingChain)
        parts.append(tr("on the chain to the milestone"));
    if (const QString days = forecast(loom, task); !days.isEmpty())
        parts.append(days);
    return parts.join(QStringLiteral("; "));
}

QString LoomWords::forecast(const plan::Loom &loom, std::size_t task)
{
    const plan::LoomDays &days = loom.tasks[task].days;
    const LoomState state = loom.tasks[task].state;
    if (!days.known() || loom.today.isNull() || state == LoomState::Done ||
        state == LoomState::SetAside)
        return {};
    const auto date = [&](std::optional<int> day) {
        return day ? plan::loomDate(loom.today.addDays(*day), loom.today) : tr("not in reach");
    };
    QStringList parts;
    if (days.start && days.finish)
        parts.append(*days.start == *days.finish
                         ? tr("planned %1").arg(date(days.start))
                         : tr("planned %1 to %2").arg(date(days.start), date(days.finish)));
    parts.append(tr("80\u00A0%: %1 (50\u00A0%: %2, 95\u00A0%: %3)")
                     .arg(date(days.ready[1]), date(days.ready[0]), date(days.ready[2])));
    if (days.floatDays.value_or(0) > 0)
        parts.append(*days.floatDays == 1 ? tr("1\u00A0day of float")
                                          : tr("%1\u00A0days of float").arg(*days.floatDays));
    const auto percent = static_cast<int>(std::lround(days.driving * 100));
    if (percent > 0)
        parts.append(tr("drives the end in %1\u00A0% of the runs").arg(percent));
    return parts.join(QStringLiteral("; "));
}

QString LoomWords::wire(const plan::Network &network, const plan::LoomWire &wire)
{
    QString text =
        tr("%1 waits on %2").arg(network.tasks[wire.to].title, network.tasks[wire.from].title);
    if (wire.met)
        text += tr(", which is done");
    if (wire.driving)
        text += tr("; on the chain to the milestone");
    return text;
}

QString LoomWords::toolTip(const plan::Network &network, std::size_t task,
                           const QString &description)
{
    const plan::Task &own = network.tasks[task];
    QString text = QStringLiteral("<p><b>%1</b><br>%2</p>")
                       .arg(own.title.toHtmlEscaped(), description.toHtmlEscaped());
    QStringList rows;
    const auto row = [&](bool met, const QString &what) {
        rows.append(QStringLiteral("<tr><td>%1</td><td>&nbsp;%2</td></tr>")
                        .arg(met ? tr("met") : tr("missing"), what.toHtmlEscaped()));
    };
    for (const std::size_t before : own.after) {
        if (before < network.tasks.size())
            row(network.tasks[before].done, tr("task %1").arg(network.tasks[before].title));
    }
    for (const plan::LeafNeed &need : own.needs) {
        QString what = plan::loomNeed(need);
        if (!need.met && !need.reason.isEmpty())
            what += QStringLiteral(" (%1)").arg(need.reason);
        row(need.met, what);
    }
    if (!rows.isEmpty())
        text += QStringLiteral("<table>%1</table>").arg(rows.join(QString()));
    return text;
}

} // namespace ohmwright::ui
