// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/plan_view.h"

#include "core/parts/options.h"
#include "core/plan/opening.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>
#include <unordered_map>

namespace ohmwright::plan {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("PlanView", text);
}

} // namespace

int handsOf(const Records &records, const ohmwright::Task &task)
{
    const auto needs = records.of<TaskNeed>(task.id);
    const bool accompanied = std::any_of(needs.begin(), needs.end(), [](const TaskNeed &need) {
        return need.kind == ohmwright::NeedKind::Person;
    });
    return std::max(task.hands.value_or(1), accompanied ? 2 : 1);
}

std::array<int, kMostHands> minutesPerWeek(const Records &records)
{
    // hands in each minute of a day; what runs over midnight counts all the same
    std::map<Weekday, std::array<int, std::size_t{2} * 24 * 60>> week;
    std::map<Weekday, int> first; // a time without a start begins with the earliest that has one
    const auto minuteOf = [](const QString &time) {
        return std::clamp(time.left(2).toInt() * 60 + time.mid(3).toInt(), 0, 24 * 60 - 1);
    };
    for (const WorkingTime &time : records.all<WorkingTime>())
        if (!time.starts.isEmpty()) {
            const int starts = minuteOf(time.starts);
            const auto [at, fresh] = first.emplace(time.weekday, starts);
            at->second = std::min(at->second, starts);
        }
    for (const WorkingTime &time : records.all<WorkingTime>()) {
        const int from = time.starts.isEmpty() ? first[time.weekday] : minuteOf(time.starts);
        auto &hands = week[time.weekday];
        for (int minute = from; minute < from + time.minutes; ++minute)
            hands[static_cast<std::size_t>(minute)] += time.hands;
    }
    std::array<int, kMostHands> minutes{};
    for (const auto &[weekday, hands] : week)
        for (const int there : hands)
            for (int count = 0; count < std::min(there, kMostHands); ++count)
                ++minutes[static_cast<std::size_t>(count)];
    if (minutes[0] == 0)
        minutes[0] = records.build().hoursPerWeek * 60;
    for (std::size_t count = 1; count < minutes.size(); ++count)
        if (minutes[count] == 0)
            minutes[count] = minutes[count - 1];
    return minutes;
}

int elapsedDays(const Records &records, const ohmwright::Task &task,
                const std::array<int, kMostHands> &minutesPerWeek)
{
    const int told = std::max(1, task.hands.value_or(1));
    const int minutes = (task.workMinutes + told - 1) / told;
    const int perWeek = minutesPerWeek.at(
        static_cast<std::size_t>(std::min(handsOf(records, task), kMostHands)) - 1);
    // ceil(minutes * 7 / minutes a week), whole numbers throughout
    return static_cast<int>((7LL * minutes + perWeek - 1) / perWeek) + task.waitDays;
}

namespace {

// Which task not done yet orders a part that is wanted, or asks for a letter that is still to ask.
class Sending
{
public:
    explicit Sending(const Records &records)
    {
        for (const ohmwright::Task &task : records.all<ohmwright::Task>()) {
            if (task.state == TaskState::Done || !isPlannedWith(records, task.option))
                continue;
            const Part *part = records.find(task.buys);
            if (part && part->state == PartState::Wanted)
                m_buyers.emplace(part->id, &task);
            if (task.asks)
                m_askers.emplace(*task.asks, &task);
        }
    }
    // Null when there is none, and for a need that no order and no question meets: a figure may be
    // known before the part is bought.
    [[nodiscard]] const ohmwright::Task *of(const TaskNeed &need, MoveKind move) const
    {
        if (need.part && move == MoveKind::Order)
            return in(m_buyers, *need.part);
        return need.letter && move == MoveKind::Ask ? in(m_askers, *need.letter) : nullptr;
    }

private:
    template <class Map, class Key>
    static const ohmwright::Task *in(const Map &map, const Key &key)
    {
        const auto found = map.find(key);
        return found == map.end() ? nullptr : found->second;
    }

    std::unordered_map<Id<Part>, const ohmwright::Task *> m_buyers;
    std::unordered_map<Id<Letter>, const ohmwright::Task *> m_askers;
};

struct SentNeed
{
    std::size_t task, need, sender;
};

// A need of a part that a task is still to order, or of a letter that one is still to ask for: the
// one in need waits on that task, whose end includes the delivery or the answer, and the need
// itself is no move of its own before. Unless that would close a loop; then it is ordered or asked
// as if no task were for it.
void linkSenders(Network &network, const std::vector<SentNeed> &needs)
{
    std::unordered_map<std::size_t, int> waits;                // by sender
    for (auto it = needs.rbegin(); it != needs.rend(); ++it) { // from behind: needs are taken out
        Task &task = network.tasks[it->task];
        if (task.done || !loopIfLinked(network, it->sender, it->task).empty())
            continue;
        task.after.push_back(it->sender);
        int &days = waits[it->sender];
        days = std::max(days, task.needs[it->need].daysToMeet);
        task.needs.erase(task.needs.begin() + static_cast<std::ptrdiff_t>(it->need));
    }
    for (const auto &[sender, days] : waits)
        network.tasks[sender].elapsedDays += days;
}

} // namespace

Network networkOf(const Records &records, QDate today)
{
    const Table<ohmwright::Task> &tasks = records.all<ohmwright::Task>();
    std::unordered_map<Id<ohmwright::Task>, std::size_t> index;
    index.reserve(tasks.size());
    for (const ohmwright::Task &task : tasks)
        index.emplace(task.id, index.size());
    const std::array<int, kMostHands> perWeek = minutesPerWeek(records);
    const Sending sending(records);
    const StockShares shares = StockShares::of(records);
    std::vector<SentNeed> sent;
    Network network;
    network.tasks.reserve(tasks.size());
    for (const ohmwright::Task &task : tasks) {
        Task node;
        node.key = task.key;
        node.title = task.title;
        node.area = task.area;
        node.milestone = task.milestone;
        node.aside = !isPlannedWith(records, task.option);
        node.done = task.state == TaskState::Done || node.aside;
        node.started = task.state == TaskState::Started;
        node.highVoltage = task.highVoltage;
        node.elapsedDays = elapsedDays(records, task, perWeek);
        node.date = task.fixedOn ? task.fixedOn : task.targetOn;
        for (const TaskNeed &need : records.of<TaskNeed>(task.id)) {
            if (need.kind == ohmwright::NeedKind::Task) {
                if (const auto it = index.find(need.after.value_or(Id<ohmwright::Task>()));
                    it != index.end())
                    node.after.push_back(it->second);
                continue;
            }
            LeafNeed leaf = judge(records, need, shares, today);
            if (const ohmwright::Task *sender = leaf.met ? nullptr : sending.of(need, leaf.move);
                sender && sender->id != task.id) {
                sent.push_back({network.tasks.size(), node.needs.size(), index.at(sender->id)});
                leaf.reason = need.letter ? tr("asked by “%1”").arg(sender->title)
                                          : tr("bought by “%1”").arg(sender->title);
            }
            node.needs.push_back(std::move(leaf));
        }
        if (std::optional<LeafNeed> opening = openingNeed(records, task, today))
            node.needs.push_back(std::move(*opening));
        network.tasks.push_back(std::move(node));
    }
    linkSenders(network, sent);
    return network;
}

std::optional<std::size_t> nextMilestone(const Network &network)
{
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < network.tasks.size(); ++i) {
        const Task &task = network.tasks[i];
        if (!task.milestone || task.done)
            continue;
        const auto day = [](const Task &t) {
            return t.date.value_or(QDate(9999, 12, 31));
        };
        if (!best || day(task) < day(network.tasks[*best]))
            best = i;
    }
    return best;
}

} // namespace ohmwright::plan
