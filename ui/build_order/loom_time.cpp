// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_time.h"

#include "ui/build_order/loom_room.h"

#include <algorithm>
#include <map>
#include <optional>

namespace ohmwright::ui {

using plan::LoomRule;
using plan::LoomTask;

namespace {

// A week in which nothing starts, behind the last in which something does, scene units.
constexpr double kQuietWeek = 11;
constexpr int kMostQuietWeeks = 53;
// Left of the line of what has no day, and right of the last line.
constexpr double kBesideLine = 7;
constexpr double kAfterLast = 16;
constexpr int kWeek = 7;

bool hasDays(const LoomTask &task)
{
    return task.days.known() && task.state != plan::LoomState::Done &&
           task.state != plan::LoomState::SetAside;
}

} // namespace

LoomTime::LoomTime(const plan::Loom &loom)
{
    if (loom.rules.empty() || loom.today.isNull())
        return;
    std::vector<Known> all;
    m_right = loom.bounds.right();
    std::optional<double> undated;
    for (const LoomRule &rule : loom.rules) {
        if (rule.kind == LoomRule::Kind::NoDate)
            undated = m_right = rule.x - kBesideLine;
        else
            all.push_back({rule.x, static_cast<double>(loom.today.daysTo(rule.day))});
    }
    // Where a column stands tells its days more closely than the week's lines do: what starts last
    // in it counts, so that nothing seems to end behind what waits on it.
    std::map<int, Known> columns;
    for (const LoomTask &task : loom.tasks) {
        if (!hasDays(task) || !task.days.start)
            continue;
        const Known own{task.body.left(), static_cast<double>(std::max(0, *task.days.start))};
        const auto [at, added] = columns.try_emplace(task.column, own);
        if (!added) {
            at->second.x = std::min(at->second.x, own.x);
            at->second.day = std::max(at->second.day, own.day);
        }
    }
    for (const auto &[column, known] : columns)
        if (!undated || known.x < *undated)
            all.push_back(known);
    std::sort(all.begin(), all.end(),
              [](const Known &left, const Known &right) { return left.x < right.x; });
    for (const Known &known : all)
        if (m_known.empty() || known.day >= m_known.back().day)
            m_known.push_back(known);
    // The last week is as long as any.
    if (!m_known.empty() && m_right > m_known.back().x)
        m_known.push_back({m_right, m_known.back().day + kWeek});
}

double LoomTime::at(int day) const
{
    if (m_known.empty())
        return 0;
    const double middle = day + 0.5;
    const auto after =
        std::upper_bound(m_known.begin(), m_known.end(), middle,
                         [](double wanted, const Known &known) { return wanted < known.day; });
    if (after == m_known.begin())
        return m_known.front().x;
    if (after == m_known.end())
        return m_known.back().x;
    const Known &before = *(after - 1);
    return before.x + (after->x - before.x) * (middle - before.day) / (after->day - before.day);
}

void goOnTo95(plan::Loom &loom)
{
    if (loom.rules.empty() || loom.today.isNull())
        return;
    int last = 0;
    for (const LoomTask &task : loom.tasks)
        if (hasDays(task))
            last = std::max({last, task.days.ready[2].value_or(0), task.days.finish.value_or(0)});
    const auto undated =
        std::find_if(loom.rules.begin(), loom.rules.end(),
                     [](const LoomRule &rule) { return rule.kind == LoomRule::Kind::NoDate; });
    const auto ruled = std::find_if(std::make_reverse_iterator(undated), loom.rules.rend(),
                                    [](const LoomRule &rule) { return rule.day.isValid(); });
    if (ruled == loom.rules.rend())
        return;
    const QDate end = loom.today.addDays(last);
    std::vector<LoomRule> more;
    const bool rest = undated != loom.rules.end();
    double x = rest ? undated->x : loom.bounds.right();
    QDate monday = ruled->day.addDays(kWeek + 1 - ruled->day.dayOfWeek());
    for (int week = 0; week < kMostQuietWeeks && monday <= end.addDays(kWeek); ++week) {
        more.push_back(
            {monday.day() <= kWeek ? LoomRule::Kind::Month : LoomRule::Kind::Week, x, monday});
        x += kQuietWeek;
        monday = monday.addDays(kWeek);
    }
    if (more.size() < 2) // it ends within the last week that is there anyway
        return;
    const auto at = undated - loom.rules.begin();
    if (rest)
        makeRoomRightOf(loom, undated->x - kBesideLine, x - undated->x + kBesideLine);
    else
        loom.bounds.setRight(x - kQuietWeek + kAfterLast);
    loom.axisBand.setRight(std::max(loom.axisBand.right(), loom.bounds.right()));
    loom.rules.insert(loom.rules.begin() + at, more.begin(), more.end());
}

} // namespace ohmwright::ui
