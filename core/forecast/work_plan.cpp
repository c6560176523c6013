// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/work_plan.h"

#include "core/budget/budget.h"
#include "core/forecast/hours.h"
#include "core/forecast/milestone_dates.h"
#include "core/forecast/part_price.h"
#include "core/forecast/waits.h"
#include "core/plan/plan_view.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>
#include <unordered_map>

namespace ohmwright::forecast {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Forecast", text);
}

constexpr std::size_t kHands = 0;

ThreePoint lessLogged(ThreePoint minutes, int logged)
{
    for (int *one : {&minutes.least, &minutes.likely, &minutes.most})
        *one = std::max(kSlotMinutes, *one - logged);
    return minutes;
}

class WorkPlanMaker
{
public:
    WorkPlanMaker(const Records &records, QDate today)
        : m_records(records), m_today(today), m_network(plan::networkOf(records, today))
    {}

    WorkPlan make()
    {
        m_plan.today = m_today;
        addHands();
        addTasks();
        addNeeds();
        keepAppointments(m_plan, m_records);
        addRedoing();
        finishResources();
        sortMilestones(m_plan, m_network);
        for (const Activity &a : m_plan.activities)
            m_plan.estimatesAssumed += int{a.work.assumed || a.wait.assumed};
        m_plan.doubts.removeDuplicates();
        return std::move(m_plan);
    }

private:
    const std::vector<ohmwright::Task> &tasks() const
    {
        return m_records.all<ohmwright::Task>().rows();
    }

    void addHands()
    {
        Hours hours = hoursOf(m_records, m_today);
        m_plan.timeline = std::move(hours.timeline);
        m_plan.hoursAssumed = hours.assumed;
        m_plan.minutesPerWeek = hours.minutesPerWeek;
        m_mostHands = std::max(1, hours.mostHands);
        m_longestSitting = std::move(hours.longestSitting);
        m_plan.resources = {tr("pairs of hands")};
        m_plan.held = {0};
        for (const WorkEntry &entry : m_records.all<WorkEntry>())
            if (const auto *task = entry.minutes ? m_records.find(entry.task) : nullptr)
                m_logged[task->id] += *entry.minutes * std::min(entry.hands, workersOf(*task, 4));
    }

    std::size_t resource(const QString &name, int capacity, bool held)
    {
        const auto [at, fresh] = m_resources.emplace(name, m_plan.resources.size());
        if (fresh) {
            m_plan.resources.push_back(name);
            m_plan.held.push_back(held ? 1 : 0);
            m_capacities.push_back(capacity);
        }
        return at->second;
    }

    static int handsIn(const Activity &a)
    {
        return a.demand.empty() ? 1 : std::max(1, a.demand[kHands]);
    }

    static void demand(Activity &activity, std::size_t which, int count)
    {
        if (activity.demand.size() <= which)
            activity.demand.resize(which + 1, 0);
        activity.demand[which] = count;
    }

    // Bays and tools are there whenever hands are.
    void finishResources()
    {
        for (std::vector<int> &profile : m_plan.timeline.profiles)
            profile.insert(profile.end(), m_capacities.begin(), m_capacities.end());
    }

    // Who shares a task's person-minutes, of `hands` at it: one who stands by for safety, as a need
    // of a person asks, makes it no shorter.
    [[nodiscard]] int workersOf(const ohmwright::Task &task, int hands) const
    {
        const int told = task.hands.value_or(1);
        return plan::handsOf(m_records, task) > told ? std::min(told, hands) : hands;
    }

    Activity ofTask(const ohmwright::Task &task)
    {
        Activity a;
        a.key = task.key;
        a.name = task.title;
        a.kind = task.milestone ? ActivityKind::Milestone : ActivityKind::Task;
        int hands = plan::handsOf(m_records, task);
        if (hands > m_mostHands) {
            m_plan.doubts << tr("“%1” takes %2 people at once, and there are never more than %3: "
                                "planned with %3.")
                                 .arg(task.title)
                                 .arg(hands)
                                 .arg(m_mostHands);
            hands = m_mostHands;
        }
        const int workers = workersOf(task, hands);
        ThreePoint work = threePoint(task.workMinutes, task.leastWorkMinutes, task.mostWorkMinutes);
        for (int *minutes : {&work.least, &work.likely, &work.most})
            *minutes = (*minutes + workers - 1) / workers;
        a.work = work;
        a.wait = threePoint(task.waitDays, task.leastWaitDays, task.mostWaitDays);
        if (work.most > 0) {
            demand(a, kHands, hands);
            if (const QString bay = task.bay.trimmed(); !bay.isEmpty())
                demand(a, resource(bay.toCaseFolded(), 1, true), 1);
            for (const TaskNeed &need : m_records.of<TaskNeed>(task.id))
                if (const Part *tool =
                        need.kind == NeedKind::Tool ? m_records.find(need.part) : nullptr)
                    demand(a, resource(QStringLiteral("tool:") + tool->key, 1, false), 1);
        }
        if (task.oneSitting.value_or(false)) {
            a.manner = plan::Manner::OneSitting;
            doubtSitting(task, hands, work, a);
        }
        return a;
    }

    // A sitting that is too long even if all goes as it likely does is planned over several; one
    // that only may be is kept wherever it fits.
    void doubtSitting(const ohmwright::Task &task, int hands, const ThreePoint &work, Activity &a)
    {
        const auto place = static_cast<std::size_t>(hands) - 1;
        const int longest = place < m_longestSitting.size() ? m_longestSitting[place] : 0;
        if (work.most <= longest)
            return;
        const bool likely = work.likely > longest;
        const QString there = hands > 1 ? tr("with %1 pairs of hands").arg(hands) : tr("there is");
        m_plan.doubts << (likely ? tr("“%1” is to be done in one sitting of %2, and the longest "
                                      "%3 has %4: planned over several.")
                                 : tr("“%1” is to be done in one sitting and may take %2, and the "
                                      "longest %3 has %4: then it is left half done."))
                             .arg(task.title, duration(likely ? work.likely : work.most), there,
                                  duration(longest));
        if (likely)
            a.manner = plan::Manner::Split;
    }

    void addTasks()
    {
        m_activityOf.assign(tasks().size(), kNone);
        for (std::size_t i = 0; i < tasks().size(); ++i) {
            if (m_network.tasks[i].done)
                continue;
            const ohmwright::Task &task = tasks()[i];
            Activity a = ofTask(task);
            a.task = i;
            if (const auto logged = m_logged.find(task.id);
                task.state == TaskState::Started && logged != m_logged.end()) {
                a.work = lessLogged(a.work, logged->second / workersOf(task, handsIn(a)));
            }
            m_activityOf[i] = m_plan.activities.size();
            if (task.milestone)
                m_plan.milestones.push_back(m_plan.activities.size());
            m_plan.activities.push_back(std::move(a));
        }
        for (std::size_t i = 0; i < tasks().size(); ++i) {
            if (m_activityOf[i] == kNone)
                continue;
            for (const std::size_t before : m_network.tasks[i].after)
                if (m_activityOf[before] != kNone)
                    m_plan.activities[m_activityOf[i]].after.push_back(m_activityOf[before]);
        }
    }

    // What the unmet needs wait for, once for each part and letter.
    void addNeeds()
    {
        std::unordered_map<Id<Part>, std::size_t> buyers; // activities
        const auto shares = plan::StockShares::of(m_records);
        std::unordered_map<Id<Letter>, std::size_t> askers;
        for (std::size_t i = 0; i < tasks().size(); ++i) {
            if (m_activityOf[i] == kNone)
                continue;
            if (tasks()[i].buys)
                buyers.emplace(*tasks()[i].buys, m_activityOf[i]);
            if (tasks()[i].asks)
                askers.emplace(*tasks()[i].asks, m_activityOf[i]);
        }
        // none: there is none, it is the one in need itself, or it waits on the one in need
        const auto senderOf = [&](const auto &senders, auto id, std::size_t needy) {
            const auto found = senders.find(id);
            return found == senders.end() || waitsOn(found->second, needy)
                       ? std::nullopt
                       : std::optional(found->second);
        };
        for (std::size_t i = 0; i < tasks().size(); ++i) {
            if (m_activityOf[i] == kNone)
                continue;
            for (const TaskNeed &need : m_records.of<TaskNeed>(tasks()[i].id)) {
                if (need.kind == NeedKind::Task)
                    continue;
                const plan::LeafNeed leaf = plan::judge(m_records, need, shares, m_today);
                if (leaf.met)
                    continue;
                const Part *part = m_records.find(need.part);
                const Letter *letter = m_records.find(need.letter);
                std::optional<std::size_t> wait;
                if (part &&
                    (leaf.move == plan::MoveKind::Order || leaf.move == plan::MoveKind::Chase)) {
                    wait = delivery(*part, leaf, senderOf(buyers, part->id, m_activityOf[i]));
                } else if (letter) {
                    wait = answer(*letter, leaf, senderOf(askers, letter->id, m_activityOf[i]));
                }
                if (wait &&
                    (m_plan.activities[*wait].after.empty() || !waitsOn(*wait, m_activityOf[i])))
                    m_plan.activities[m_activityOf[i]].after.push_back(*wait);
            }
        }
    }

    std::size_t delivery(const Part &part, const plan::LeafNeed &leaf,
                         std::optional<std::size_t> buyer)
    {
        const QString key = QStringLiteral("part:") + part.key;
        const auto [at, fresh] = m_waits.emplace(key, m_plan.activities.size());
        if (!fresh)
            return at->second;
        Activity a;
        a.key = key;
        a.name = part.name;
        a.kind = ActivityKind::Delivery;
        a.part = part.key;
        a.toOrder = leaf.move == plan::MoveKind::Order;
        if (a.toOrder) {
            a.wait = leadOf(part);
            if (buyer)
                a.after.push_back(*buyer);
            a.cost = estimateOf(m_records, part, m_today);
            a.forShop = part.countedTo == CountedTo::Shop;
        } else {
            a.wait = stillWaited(deliveryLeft(m_records, part, m_today));
        }
        m_plan.activities.push_back(std::move(a));
        return at->second;
    }

    std::size_t answer(const Letter &letter, const plan::LeafNeed &leaf,
                       std::optional<std::size_t> asker)
    {
        const QString key = QStringLiteral("letter:") + letter.key;
        const auto [at, fresh] = m_waits.emplace(key, m_plan.activities.size());
        if (!fresh)
            return at->second;
        Activity a;
        a.key = key;
        a.name = letter.subject;
        a.kind = ActivityKind::Answer;
        a.toAsk = leaf.move != plan::MoveKind::Chase;
        a.wait = a.toAsk ? answerOf(letter) : stillWaited(answerLeft(letter, m_today));
        a.letter = letter.key;
        if (a.toAsk && asker)
            a.after.push_back(*asker);
        m_plan.activities.push_back(std::move(a));
        return at->second;
    }

    // Whether one activity waits on the other, by the links there are up to now, or is it.
    [[nodiscard]] bool waitsOn(std::size_t one, std::size_t other) const
    {
        return one == other || waitedOn(m_plan, one)[other] != 0;
    }

    ThreePoint stillWaited(const WaitLeft &left)
    {
        if (!left.doubt.isEmpty())
            m_plan.doubts << left.doubt;
        return left.days;
    }

    void addRedoing()
    {
        const std::vector<std::size_t> order = plan::topologicalOrder(m_network);
        std::unordered_map<Id<ohmwright::Task>, std::size_t> index;
        for (std::size_t i = 0; i < tasks().size(); ++i)
            index.emplace(tasks()[i].id, i);
        for (std::size_t i = 0; i < tasks().size(); ++i) {
            const ohmwright::Task &task = tasks()[i];
            if (m_activityOf[i] == kNone || task.failPercent.value_or(0) == 0)
                continue;
            const auto first = task.redoFrom ? index.find(*task.redoFrom) : index.end();
            std::vector<std::size_t> again =
                first == index.end() ? std::vector{i}
                                     : plan::tasksBetween(m_network, first->second, i, order);
            std::erase_if(again, [&](std::size_t t) { return m_network.tasks[t].aside; });
            if (again.empty()) // it does not wait on the task it names
                again = {i};
            redo(i, again);
        }
    }

    void redo(std::size_t test, const std::vector<std::size_t> &again)
    {
        const std::size_t tested = m_activityOf[test];
        const std::size_t risk = m_plan.risks.size();
        m_plan.risks.push_back({tested, *tasks()[test].failPercent / 100.0});
        // what waits on the test waits on its repetition
        const std::size_t firstCopy = m_plan.activities.size();
        const std::size_t lastCopy = firstCopy + again.size() - 1;
        for (Activity &a : m_plan.activities)
            if (std::find(a.after.begin(), a.after.end(), tested) != a.after.end())
                a.after.push_back(lastCopy);
        std::unordered_map<std::size_t, std::size_t> copies; // by task
        for (const std::size_t task : again) {
            Activity a = ofTask(tasks()[task]);
            a.wait = waitAgain(m_records, tasks()[task]);
            if (const Part *bought = m_records.find(tasks()[task].buys))
                buysAnew(a, *bought);
            a.key = tasks()[task].key;
            for (const std::size_t before : m_network.tasks[task].after)
                if (const auto copy = copies.find(before); copy != copies.end())
                    a.after.push_back(copy->second);
            copies.emplace(task, firstCopy + copies.size());
            addCopy(std::move(a), task, tested, risk);
        }
        addUsedUp(again, copies, tested, risk);
    }

    // What the tasks use up each time is waited for before they are done again; but for what one of
    // them sends for, which waits for it already.
    void addUsedUp(const std::vector<std::size_t> &again,
                   const std::unordered_map<std::size_t, std::size_t> &copies, std::size_t tested,
                   std::size_t risk)
    {
        const auto isSentFor = [&](const TaskNeed &need) {
            return std::ranges::any_of(again, [&](std::size_t task) {
                return (need.part && tasks()[task].buys == need.part) ||
                       (need.letter && tasks()[task].asks == need.letter);
            });
        };
        std::map<QString, std::size_t> waits;
        for (const std::size_t task : again) {
            for (const TaskNeed &need : m_records.of<TaskNeed>(tasks()[task].id)) {
                const Part *part = m_records.find(need.part);
                const Letter *letter = m_records.find(need.letter);
                if (!need.eachTime.value_or(false) || (!part && !letter) || isSentFor(need))
                    continue;
                const QString key = part ? QStringLiteral("part:") + part->key
                                         : QStringLiteral("letter:") + letter->key;
                const auto [wait, fresh] = waits.emplace(key, m_plan.activities.size());
                if (fresh) {
                    Activity a;
                    a.key = key;
                    a.name = part ? part->name : letter->subject;
                    a.wait = part ? leadOf(*part) : answerOf(*letter);
                    if (part)
                        buysAnew(a, *part);
                    addCopy(std::move(a), task, tested, risk);
                }
                m_plan.activities[copies.at(task)].after.push_back(wait->second);
            }
        }
    }

    void buysAnew(Activity &a, const Part &part) const
    {
        a.part = part.key;
        a.cost = estimateOf(m_records, part, m_today);
        a.forShop = part.countedTo == CountedTo::Shop;
    }

    void addCopy(Activity a, std::size_t task, std::size_t tested, std::size_t risk)
    {
        a.kind = ActivityKind::Redo;
        a.task = task;
        a.key = QStringLiteral("again:") + m_plan.activities[tested].key + u'/' + a.key;
        a.risk = risk;
        a.after.push_back(tested);
        m_plan.activities.push_back(std::move(a));
    }

    static constexpr std::size_t kNone = static_cast<std::size_t>(-1);

    const Records &m_records;
    QDate m_today;
    plan::Network m_network;
    WorkPlan m_plan;
    int m_mostHands = 1;
    std::vector<int> m_longestSitting;                     // minutes, per pairs of hands
    std::map<QString, std::size_t> m_resources;            // by name
    std::vector<int> m_capacities;                         // of those after the hands
    std::unordered_map<Id<ohmwright::Task>, int> m_logged; // person-minutes
    std::vector<std::size_t> m_activityOf;                 // by task
    std::map<QString, std::size_t> m_waits;                // deliveries and answers by key
};

} // namespace

WorkPlan workPlanOf(const Records &records, QDate today)
{
    return WorkPlanMaker(records, today).make();
}

std::vector<char> waitedOn(const WorkPlan &plan, std::size_t goal)
{
    std::vector<char> found(plan.activities.size(), 0);
    std::vector<std::size_t> open{goal};
    found[goal] = 1;
    while (!open.empty()) {
        const std::size_t at = open.back();
        open.pop_back();
        for (const std::size_t before : plan.activities[at].after)
            if (!found[before]) {
                found[before] = 1;
                open.push_back(before);
            }
    }
    return found;
}

} // namespace ohmwright::forecast
