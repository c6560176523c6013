// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_dress.h"

#include "core/plan/loom_text.h"
#include "ui/build_order/loom_room.h"
#include "ui/build_order/loom_time.h"
#include "ui/build_order/loom_tubes.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace ohmwright::ui {

using plan::LoomLabel;
using plan::LoomTask;
using plan::LoomText;
using plan::loom::Words;

namespace {

// Of what a task lacks so much hangs below it on paper, on so many lines: a line more in each row
// is a sheet more on the wall.
constexpr std::size_t kHang = 3;
constexpr qsizetype kHangLines = 3;
// What may fail is told on so many lines, so far in from the housing's edge, and never narrower
// than "may fail 30 %," is.
constexpr int kRiskLines = 3;
constexpr int kRiskLinesOnPaper = 2;
constexpr double kRiskIndent = 3;
constexpr double kLeastRiskRoom = 92;
// Between two texts below a housing, and beside a loop of slack.
constexpr double kApart = 2;
constexpr double kBesideLoop = 6;
// A bar with its ticks; from one to the next below it, on paper closer; from the texts to the
// first; and between two on one line.
constexpr double kBarHeight = 6;
constexpr double kBarPitch = 6;
constexpr double kPaperPitch = 4;
constexpr double kAboveBars = 2;
constexpr double kBetweenBars = 6;
// Where more tasks than this are under way at once, bars lie over one another.
constexpr int kMostBars = 5;

void setLines(LoomLabel &label, const QStringList &lines, QPointF topLeft, double lineHeight,
              Words &words)
{
    label.lines = lines;
    label.lineHeight = lineHeight;
    label.at = topLeft + QPointF(0, lineHeight * 0.8);
    double width = 0;
    for (const QString &line : lines)
        width = std::max(width, words.width(line));
    label.box =
        lines.isEmpty()
            ? QRectF()
            : QRectF(topLeft, QSizeF(width, lineHeight * static_cast<double>(lines.size())));
}

void moveLabel(LoomLabel &label, QPointF by)
{
    label.at += by;
    label.box.translate(by);
}

class Dresser
{
public:
    Dresser(plan::Loom &loom, const plan::Network &network, const plan::LoomFacts &facts,
            const plan::LoomMetrics &metrics, const LoomDressing &how)
        : m_loom(loom), m_network(network), m_facts(facts), m_metrics(metrics), m_how(how),
          m_small(metrics, LoomText::Missing), m_dates(metrics, LoomText::Date)
    {}

    void dress();

private:
    struct Row
    {
        double before = 0, after = 0;   // lower edge of its texts, then of its bars
        std::vector<QRectF> taken;      // by housings and their texts
        std::vector<std::size_t> dated; // tasks with a bar
    };

    void findRows();
    [[nodiscard]] double roomOf(const LoomTask &task, double left) const;
    void tellPlan(LoomTask &task);
    void hangMore(LoomTask &task);
    void tellRisk(LoomTask &task);
    void placeBars(Row &row, const LoomTime &time);

    plan::Loom &m_loom;
    const plan::Network &m_network;
    const plan::LoomFacts &m_facts;
    const plan::LoomMetrics &m_metrics;
    const LoomDressing &m_how;
    Words m_small, m_dates;
    std::map<int, Row> m_rows;
    std::map<int, double> m_columnRight; // what its housings and texts take
};

void Dresser::findRows()
{
    for (const LoomTask &task : m_loom.tasks) {
        const QRectF reach = reachOf(task);
        Row &row = m_rows[task.row];
        row.before = row.before == 0 ? reach.bottom() : std::max(row.before, reach.bottom());
        const auto [at, added] = m_columnRight.try_emplace(task.column, reach.right());
        if (!added)
            at->second = std::max(at->second, reach.right());
    }
}

double Dresser::roomOf(const LoomTask &task, double left) const
{
    return std::max(m_columnRight.at(task.column), left + m_metrics.housingMinWidth) - left;
}

// From when to when; the float stands beside the 80 % day, where there is room.
void Dresser::tellPlan(LoomTask &task)
{
    if (m_loom.rules.empty() || task.plan.lines.isEmpty() || !task.days.finish)
        return;
    const QDate end = m_loom.today.addDays(*task.days.finish);
    QString words = plan::loomDay(end, m_loom.today);
    if (task.days.start && *task.days.start < *task.days.finish) {
        const QDate start = m_loom.today.addDays(*task.days.start);
        const bool sameMonth = start.year() == end.year() && start.month() == end.month();
        const QString from = plan::loomDay(start, m_loom.today);
        words =
            QStringLiteral("%1–%2").arg(sameMonth || start.year() == end.year()
                                            ? from.section(QLatin1Char(' '), 0, sameMonth ? 0 : 1)
                                            : from,
                                        words);
    }
    setLines(task.plan, {words}, task.plan.box.topLeft(), m_metrics.dateLine, m_dates);
    if (task.slack.lines.isEmpty())
        return;
    // Beside the shorter of the two lines, and at the housing's right edge where it can.
    const bool above = task.plan.box.right() <= task.ready.box.right();
    const double line = (above ? task.plan : task.ready).box.right() + kBesideLoop;
    const QPointF by(std::max(task.slackLoop.left(), line) - task.slackLoop.left(),
                     above ? 0 : m_metrics.dateLine);
    task.slackLoop.translate(by);
    moveLabel(task.slack, by);
}

void Dresser::hangMore(LoomTask &task)
{
    const plan::Task &own = m_network.tasks[task.task];
    if (!m_how.paper || own.done || own.aside || task.missing.lines.isEmpty())
        return;
    std::vector<const plan::LeafNeed *> lacking;
    for (const plan::LeafNeed &need : own.needs)
        if (!need.met)
            lacking.push_back(&need);
    if (lacking.size() < 2)
        return;
    // What takes longest first, as where only one is told.
    std::stable_sort(lacking.begin(), lacking.end(), [](const auto *left, const auto *right) {
        return left->daysToMeet > right->daysToMeet;
    });
    const double room = roomOf(task, task.missing.box.left());
    std::vector<QStringList> told;
    qsizetype spare = kHangLines - static_cast<qsizetype>(std::min(kHang, lacking.size()));
    for (std::size_t at = 0; at < std::min(kHang, lacking.size()); ++at) {
        const plan::LeafNeed &need = *lacking[at];
        plan::Task alone;
        alone.needs = {need};
        QString what = plan::loom::missing(alone).what;
        if (at > 0)
            what.prepend(furtherLack());
        if (at + 1 == kHang && lacking.size() > kHang)
            what += QChar(QChar::Nbsp) + QStringLiteral("+%1").arg(lacking.size() - kHang);
        const Words::Broken broken = m_small.broken(what, room, spare > 0 ? 2 : 1);
        told.push_back(broken.lines);
        spare -= broken.lines.size() - 1;
    }
    // The day it is here, or to order it by, where a line is left.
    for (std::size_t at = 0; at < told.size() && spare > 0; ++at) {
        const QString day =
            m_facts.forecast ? m_facts.forecast->arrivalOf(*lacking[at]) : QString();
        if (day.isEmpty())
            continue;
        told[at] += day;
        --spare;
    }
    QStringList lines;
    for (const QStringList &one : told)
        lines += one;
    setLines(task.missing, lines, task.missing.box.topLeft(), m_metrics.missingLine, m_small);
}

void Dresser::tellRisk(LoomTask &task)
{
    const plan::Task &own = m_network.tasks[task.task];
    if (!m_how.risks || own.done || own.aside)
        return;
    const auto risk = m_how.risks->constFind(own.key);
    if (risk == m_how.risks->constEnd())
        return;
    const QString words = RiskWords::of(*risk);
    if (own.milestone) {
        const double left = task.body.right() + 8;
        const Words::Broken broken = m_dates.broken(words, roomOf(task, left), kRiskLines);
        const QPointF top = task.date.lines.isEmpty() ? QPointF(left, task.body.center().y() + 5)
                                                      : task.date.box.topLeft();
        setLines(task.date, task.date.lines + broken.lines, top, m_metrics.dateLine, m_dates);
        if (!task.missing.lines.isEmpty())
            moveLabel(task.missing,
                      {0, m_metrics.dateLine * static_cast<double>(broken.lines.size())});
        return;
    }
    // Farther left than the days: the lead to what is lacking ends above it.
    const double left = task.body.left() + kRiskIndent + kRiskSign;
    const Words::Broken broken = m_small.broken(words, std::max(roomOf(task, left), kLeastRiskRoom),
                                                m_how.paper ? kRiskLinesOnPaper : kRiskLines);
    setLines(task.date, broken.lines, QPointF(left, reachOf(task).bottom() + kApart),
             m_metrics.missingLine, m_small);
}

// Each bar as high as it can lie below the texts and bars it would cross.
void Dresser::placeBars(Row &row, const LoomTime &time)
{
    std::sort(row.dated.begin(), row.dated.end(), [&](std::size_t left, std::size_t right) {
        return m_loom.tasks[left].body.left() < m_loom.tasks[right].body.left();
    });
    std::vector<QRectF> bars;
    const double pitch = m_how.paper ? kPaperPitch : kBarPitch;
    const double height = m_how.paper ? kPaperPitch : kBarHeight;
    for (const std::size_t at : row.dated) {
        LoomTask &task = m_loom.tasks[at];
        // A week's first column holds what starts on any day of it: nothing ends left of its start.
        const auto place = [&](int day) {
            return std::max(task.body.left(), time.at(day));
        };
        const double from = place(*task.days.ready[0]);
        const double to = place(*task.days.ready[2]);
        const double planned = task.days.finish ? place(*task.days.finish) : from;
        const double left = task.body.left() - kBetweenBars;
        QRectF bar(left, 0, std::max({to, planned, task.body.right()}) - left, height);
        double top = 0;
        for (const QRectF &text : row.taken)
            if (text.right() > bar.left() && text.left() < bar.right())
                top = std::max(top, text.bottom());
        bar.moveTop(top + kAboveBars);
        const auto crosses = [&](const QRectF &other) {
            return other.right() > bar.left() && other.left() < bar.right() &&
                   std::abs(other.top() - bar.top()) < pitch - 0.1;
        };
        for (int line = 1; line < kMostBars && std::any_of(bars.begin(), bars.end(), crosses);
             ++line)
            bar.translate(0, pitch);
        bars.push_back(bar);
        task.whisker = QRectF(from, bar.top(), to - from, height);
        task.whiskerMark = std::clamp(place(*task.days.ready[1]), from, to);
        row.after = std::max(row.after, bar.bottom());
    }
}

void Dresser::dress()
{
    openEmptyTubes(m_loom);
    goOnTo95(m_loom);
    findRows();
    for (LoomTask &task : m_loom.tasks) {
        tellPlan(task);
        hangMore(task);
        tellRisk(task);
        Row &row = m_rows[task.row];
        row.taken.push_back(reachOf(task));
        row.after = std::max({row.after, row.before, row.taken.back().bottom()});
        const bool dated = task.days.ready[0] && task.days.ready[1] && task.days.ready[2] &&
                           task.state != plan::LoomState::Done &&
                           task.state != plan::LoomState::SetAside;
        if (dated && !m_loom.rules.empty())
            row.dated.push_back(task.task);
    }
    const LoomTime time(m_loom);
    std::vector<LoomRoom> lines;
    for (auto &[index, row] : m_rows) {
        if (time.known())
            placeBars(row, time);
        lines.push_back({row.before + 0.5, row.after - row.before});
    }
    std::sort(lines.begin(), lines.end(),
              [](const LoomRoom &left, const LoomRoom &right) { return left.at < right.at; });
    // A task moves as its middle does, and its own line lies below that.
    makeRoomBelow(m_loom, lines);
}

} // namespace

QString furtherLack()
{
    return QStringLiteral("+ ");
}

void dressLoom(plan::Loom &loom, const plan::Network &network, const plan::LoomFacts &facts,
               const plan::LoomMetrics &metrics, const LoomDressing &how)
{
    if (!loom.tasks.empty())
        Dresser(loom, network, facts, metrics, how).dress();
}

} // namespace ohmwright::ui
