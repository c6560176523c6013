// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/plan_view.h"

#include "core/parts/figures.h"
#include "core/parts/life.h"
#include "core/parts/options.h"
#include "core/parts/permits.h"
#include "core/plan/opening.h"
#include "core/quantity/dates.h"

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

int daysUntil(QDate today, QDate day)
{
    return std::max(0, static_cast<int>(today.daysTo(day)));
}

// What subjects are called; ':' cannot stand in a key, so no two of them can be mixed up.
QString subjectOf(const char *kind, const QString &key)
{
    return QLatin1String(kind) + u':' + key;
}

struct Judged
{
    MoveKind move = MoveKind::Order;
    QString reason;
    int days = 0;
};

Judged toBuy(const Part &part, const QString &why)
{
    Judged j;
    j.move = MoveKind::Order;
    j.days = part.leadDays.value_or(kAssumedLeadDays);
    j.reason = part.leadDays ? tr("%1; %2 days from order").arg(why).arg(j.days)
                             : tr("%1; %2 days from order assumed").arg(why).arg(j.days);
    return j;
}

Judged onItsWay(const Records &records, const Part &part, QDate today)
{
    Judged j;
    j.move = MoveKind::Chase;
    const PurchaseItem *item = records.find(part.bought);
    const Purchase *purchase = item ? records.find(item->purchase) : nullptr;
    if (purchase && purchase->promisedOn) {
        j.days = daysUntil(today, *purchase->promisedOn);
        j.reason =
            *purchase->promisedOn < today
                ? tr("ordered, promised for %1, overdue").arg(showDate(*purchase->promisedOn))
                : tr("ordered, promised for %1").arg(showDate(*purchase->promisedOn));
        return j;
    }
    const QDate ordered = purchase ? purchase->orderedOn : today;
    j.days = daysUntil(today, ordered.addDays(part.leadDays.value_or(kAssumedLeadDays)));
    j.reason = purchase ? tr("ordered %1, no day promised").arg(showDate(ordered))
                        : tr("ordered, no day promised");
    return j;
}

// A part that must have got as far as `wanted`.
Judged judgePart(const Records &records, const Part &part, PartState wanted, QDate today)
{
    switch (part.state) {
    case PartState::Wanted:
        return toBuy(part,
                     part.kind == PartKind::Service ? tr("not booked yet") : tr("not ordered yet"));
    case PartState::Ordered:
        return onItsWay(records, part, today);
    case PartState::InHand:
        if (wanted == PartState::Tested ||
            (wanted == PartState::Fitted && !mayMove(part.kind, part.state, PartState::Fitted)))
            return {MoveKind::Test, tr("in hand, not tested yet"), 0};
        return {MoveKind::Do, tr("in hand, not fitted yet"), 0};
    case PartState::Tested:
        return {MoveKind::Do, tr("tested, not fitted yet"), 0};
    case PartState::Fitted:
        return {MoveKind::Do, tr("fitted"), 0};
    case PartState::Quarantined:
        return toBuy(part, tr("quarantined: find another"));
    case PartState::Returned:
    case PartState::Sold:
    case PartState::Scrapped:
        return toBuy(part, tr("%1: find another").arg(wordOf(part.state)));
    }
    return {};
}

Judged judgeLetter(const Letter &letter, QDate today)
{
    const int usual = letter.answerDays.value_or(kAssumedAnswerDays);
    const QString takes = letter.answerDays ? tr("an answer takes %1 days").arg(usual)
                                            : tr("%1 days for an answer assumed").arg(usual);
    switch (letter.state) {
    case LetterState::ToAsk:
        return {MoveKind::Ask, tr("not asked yet; %1").arg(takes), usual};
    case LetterState::Refused:
        return {MoveKind::Ask, tr("refused: ask what would be accepted; %1").arg(takes), usual};
    case LetterState::Granted:
        return {MoveKind::Ask,
                tr("ran out on %1: ask again; %2").arg(showDate(*letter.validUntil), takes), usual};
    case LetterState::Asked:
        break;
    }
    const int left = daysUntil(today, letter.askedOn->addDays(usual));
    if (letter.askAgainOn)
        return {MoveKind::Chase,
                tr("asked %1, no answer; ask again %2")
                    .arg(showDate(*letter.askedOn), showDate(*letter.askAgainOn)),
                left};
    return {MoveKind::Chase, tr("asked %1, no answer yet").arg(showDate(*letter.askedOn)), left};
}

bool letterHolds(const Letter &letter, QDate today)
{
    return letter.state == LetterState::Granted &&
           (!letter.validUntil || *letter.validUntil >= today);
}

void judgeConsumable(const Records &records, const Part &part, const TaskNeed &need, double left,
                     QDate today, LeafNeed &leaf)
{
    const Amount &amount = *need.amount;
    leaf.met = part.stock && StockShares::isEnough(left, amount);
    if (leaf.met)
        return;
    const QString have =
        !part.stock ? tr("none in stock")
        : left < part.stock->si()
            ? tr("%1 in stock, promised to tasks before it").arg(printAmount(*part.stock))
            : tr("%1 in stock").arg(printAmount(*part.stock));
    const Judged j = part.state == PartState::Ordered
                         ? onItsWay(records, part, today)
                         : toBuy(part, tr("%1, %2 needed").arg(have, printAmount(amount)));
    leaf.move = j.move;
    leaf.reason = j.reason;
    leaf.daysToMeet = j.days;
}

} // namespace

int minutesPerWeek(const Records &records)
{
    // who begins together works together; a time without a start goes with the others of its day
    struct DayTimes
    {
        std::map<QString, int> byStart; // the longest that begins then
        int anyTime = 0;
    };
    std::map<Weekday, DayTimes> week;
    for (const WorkingTime &time : records.all<WorkingTime>()) {
        DayTimes &day = week[time.weekday];
        int &longest = time.starts.isEmpty() ? day.anyTime : day.byStart[time.starts];
        longest = std::max(longest, time.minutes);
    }
    int minutes = 0;
    for (const auto &[weekday, day] : week) {
        int told = 0;
        for (const auto &[start, longest] : day.byStart)
            told += longest;
        minutes += std::max(told, day.anyTime);
    }
    return minutes > 0 ? minutes : records.build().hoursPerWeek * 60;
}

int elapsedDays(const ohmwright::Task &task, int minutesPerWeek)
{
    // ceil(minutes * 7 / minutes a week), whole numbers throughout
    const int hands = (task.workMinutes * 7 + minutesPerWeek - 1) / minutesPerWeek;
    return hands + task.waitDays;
}

LeafNeed judge(const Records &records, const TaskNeed &need, const StockShares &shares, QDate today)
{
    using Kind = ohmwright::NeedKind;
    LeafNeed leaf;
    const auto take = [&](const Judged &j) {
        leaf.move = j.move;
        leaf.reason = j.reason;
        leaf.daysToMeet = j.days;
    };
    const Part *part = records.find(need.part);
    if (part) {
        leaf.subject = subjectOf("part", part->key);
        leaf.subjectName = part->name;
    } else {
        leaf.subject = subjectOf(wordOf(need.kind).toLatin1().constData(), need.what);
        leaf.subjectName = need.what;
    }
    const auto asPart = [&](PartState wanted) {
        leaf.met = part && hasReached(part->state, wanted);
        if (!leaf.met && part)
            take(judgePart(records, *part, wanted, today));
    };
    const auto bySaying = [&](MoveKind move, const QString &reason) {
        leaf.met = need.metOn.has_value();
        take({move, reason, 0});
    };
    switch (need.kind) {
    case Kind::Task:
        break;
    case Kind::Part:
        leaf.kind = NeedKind::Part;
        asPart(need.state.value_or(PartState::InHand));
        break;
    case Kind::Tool:
        leaf.kind = NeedKind::Tool;
        asPart(need.state.value_or(PartState::InHand));
        break;
    case Kind::Figure:
        leaf.kind = NeedKind::Figure;
        leaf.met = part && answersNeed(records, *part, need);
        if (part) {
            leaf.subject += u':' + wordOf(*need.quantity) +
                            (need.basis ? u':' + wordOf(*need.basis) : QString());
            leaf.subjectName = tr("%1 of %2")
                                   .arg((need.basis ? wordOf(*need.basis) + u' ' : QString()) +
                                            wordOf(*need.quantity),
                                        part->name);
        }
        take({MoveKind::FindOut, tr("not known"), 0});
        break;
    case Kind::Consumable:
        leaf.kind = NeedKind::Consumable;
        if (part && need.amount)
            judgeConsumable(records, *part, need, shares.leftFor(need, *part), today, leaf);
        break;
    case Kind::Service:
        leaf.kind = NeedKind::Service;
        if (part)
            asPart(PartState::InHand);
        else
            bySaying(MoveKind::Order, tr("not booked yet"));
        break;
    case Kind::Money:
        leaf.kind = NeedKind::Money;
        bySaying(MoveKind::Pay,
                 tr("%1 to be paid").arg(need.money ? printMoney(*need.money) : QString()));
        break;
    case Kind::Test: {
        leaf.kind = NeedKind::Test;
        if (const TestRecord *test = records.find(need.test)) {
            leaf.met = test->result == TestResult::Passed;
            leaf.subject = subjectOf("test", test->key);
            leaf.subjectName = test->name;
            take({MoveKind::Test,
                  test->result == TestResult::Failed
                      ? tr("failed %1: mend and repeat").arg(showDate(*test->doneOn))
                      : tr("not done yet"),
                  0});
        }
        break;
    }
    case Kind::Letter:
        leaf.kind = NeedKind::Letter;
        if (const Letter *letter = records.find(need.letter)) {
            leaf.met = letterHolds(*letter, today);
            leaf.subject = subjectOf("letter", letter->key);
            leaf.subjectName = letter->subject;
            if (!leaf.met)
                take(judgeLetter(*letter, today));
        }
        break;
    case Kind::Person:
        leaf.kind = NeedKind::Person;
        bySaying(MoveKind::Ask, tr("nobody has agreed yet"));
        break;
    case Kind::Permit:
        leaf.kind = NeedKind::Permit;
        bySaying(MoveKind::Ask, tr("no permit yet"));
        if (const WorkPermit *permit = records.find(need.permit)) {
            const QStringList lacking = lackingOf(*permit, today);
            leaf.met = lacking.isEmpty();
            leaf.subject = subjectOf("permit", permit->key);
            leaf.subjectName = permit->name;
            leaf.reason = lacking.join(tr(", "));
        }
        break;
    case Kind::Interface:
        leaf.kind = NeedKind::Interface;
        if (const Interface *interface = records.find(need.interface)) {
            leaf.met = interface->state == InterfaceState::Talks;
            leaf.subject = subjectOf("interface", interface->key);
            leaf.subjectName = interface->name;
            if (!leaf.met)
                take({MoveKind::FindOut,
                      interface->state == InterfaceState::Understood
                          ? tr("understood, but has not talked yet")
                          : tr("it cannot be made to talk yet"),
                      0});
        }
        break;
    }
    leaf.key = QString::number(need.id.value());
    return leaf;
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
    const int perWeek = minutesPerWeek(records);
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
        node.elapsedDays = elapsedDays(task, perWeek);
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
