// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/consistency.h"

#include "core/parts/life.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <unordered_map>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Consistency", text);
}

using Found = std::vector<Inconsistency>;

template <class R>
void report(Found &found, const R &row, const char *field, const QString &sentence)
{
    found.push_back({RecordTraits<R>::table, row.id.value(), field, sentence});
}

// The members of one loop of "goes before" arrows, each once; empty if there is none. Depth first
// with a stack of our own, so that a long chain cannot exhaust the thread's.
template <class R>
std::vector<Id<R>> loopIn(const std::vector<Id<R>> &nodes,
                          const std::unordered_map<Id<R>, std::vector<Id<R>>> &arrows)
{
    enum class Mark { New, OnPath, Finished };
    std::unordered_map<Id<R>, Mark> marks;
    static const std::vector<Id<R>> none;
    const auto next = [&](Id<R> node) -> const std::vector<Id<R>> & {
        const auto it = arrows.find(node);
        return it == arrows.end() ? none : it->second;
    };
    for (const Id<R> start : nodes) {
        if (marks[start] != Mark::New)
            continue;
        std::vector<std::pair<Id<R>, std::size_t>> path{{start, 0}};
        marks[start] = Mark::OnPath;
        while (!path.empty()) {
            const auto node = path.back().first;
            if (path.back().second == next(node).size()) {
                marks[node] = Mark::Finished;
                path.pop_back();
                continue;
            }
            const Id<R> to = next(node)[path.back().second++];
            if (marks[to] == Mark::OnPath) {
                std::vector<Id<R>> loop;
                auto it =
                    std::find_if(path.begin(), path.end(), [&](auto &p) { return p.first == to; });
                for (; it != path.end(); ++it)
                    loop.push_back(it->first);
                return loop;
            }
            if (marks[to] == Mark::New) {
                marks[to] = Mark::OnPath;
                path.emplace_back(to, 0);
            }
        }
    }
    return {};
}

void checkCurrencies(const Records &records, Found &found)
{
    const Build &build = records.build();
    const Currency own = build.currency;
    const auto inOwn = [&](const char *field, const std::optional<Money> &money) {
        if (money && money->currency() != own)
            report(found, build, field,
                   tr("This book is in %1, this money in %2.")
                       .arg(own.code(), money->currency().code()));
    };
    inOwn("saved", build.saved);
    inOwn("set_aside", build.setAside);
    for (const BudgetLine &line : records.all<BudgetLine>())
        if (line.allowance.currency() != own)
            report(found, line, "allowance",
                   tr("An allowance is in the book's currency, %1.").arg(own.code()));
    for (const Purchase &p : records.all<Purchase>())
        if (p.currency == own && !(p.rate.convert(Money(1000000, own), own) == Money(1000000, own)))
            report(found, p, "rate", tr("A purchase in the book's own currency has rate 1."));
}

void checkPurchases(const Records &records, Found &found)
{
    // single sums are bounded where they are read; here what they come to together
    constexpr double kMostOfBook = 1e18; // minor units
    double ofBook = 0;
    for (const Purchase &p : records.all<Purchase>()) {
        const std::optional<Money> comesTo = countable(records, p);
        ofBook += comesTo ? std::abs(static_cast<double>(comesTo->minor())) : 0;
        if (!comesTo || ofBook > kMostOfBook)
            report(found, p, "rate", tr("These sums are larger than a book can count."));
    }
    for (const PurchaseItem &item : records.all<PurchaseItem>()) {
        const Purchase *p = records.find(item.purchase);
        if (p && item.unitPrice.currency() != p->currency)
            report(found, item, "unit_price",
                   tr("This purchase is in %1, the item in %2.")
                       .arg(p->currency.code(), item.unitPrice.currency().code()));
    }
    for (const Payment &payment : records.all<Payment>()) {
        const Purchase *p = records.find(payment.purchase);
        if (p && payment.amount.currency() != p->currency)
            report(found, payment, "amount",
                   tr("This purchase is in %1, the payment in %2.")
                       .arg(p->currency.code(), payment.amount.currency().code()));
    }
    std::map<std::pair<QString, QDate>, int> days;
    for (const DayRate &r : records.all<DayRate>())
        if (++days[{r.currency.code(), r.on}] == 2)
            report(found, r, "dated",
                   tr("There are two rates of %1 for %2.").arg(r.currency.code(), printDate(r.on)));
}

void checkParts(const Records &records, Found &found)
{
    std::unordered_map<Id<Part>, std::vector<Id<Part>>> holds;
    std::vector<Id<Part>> parts;
    for (const Part &part : records.all<Part>()) {
        parts.push_back(part.id);
        if (part.partOf)
            holds[part.id].push_back(*part.partOf);
    }
    if (const auto loop = loopIn(parts, holds); !loop.empty()) {
        QStringList names;
        for (const Id<Part> id : loop)
            names << records.find(id)->name;
        names << names.front();
        report(found, *records.find(loop.front()), "part_of",
               tr("Parts hold each other in a loop: %1.").arg(names.join(tr(" in "))));
    }
}

void checkMoves(const Records &records, Found &found)
{
    for (const Part &part : records.all<Part>()) {
        const auto moves = records.of<PartMove>(part.id);
        if (moves.empty()) {
            report(found, part, "moves", tr("The part “%1” has no first move.").arg(part.name));
            continue;
        }
        const PartMove *last = nullptr;
        for (const PartMove &move : moves) {
            if (!last && move.from)
                report(found, move, "from_state",
                       tr("The first move of a part comes from nowhere."));
            if (last && move.from != last->to)
                report(found, move, "from_state",
                       tr("This move does not start where the one before it ended, at “%1”.")
                           .arg(wordOf(last->to)));
            else if (last) {
                if (Outcome may = mayMove(part.kind, last->to, move.to); !may)
                    report(found, move, "to_state", may.error().sentence);
            }
            if (last && move.on < last->on)
                report(found, move, "moved_on",
                       tr("This move is dated before the one it follows."));
            last = &move;
        }
        if (last->to != part.state)
            report(found, part, "state",
                   tr("The part “%1” is %2, but its last move made it %3.")
                       .arg(part.name, wordOf(part.state), wordOf(last->to)));
    }
}

void checkNeeds(const Records &records, Found &found)
{
    for (const TaskNeed &need : records.all<TaskNeed>()) {
        const Part *part = records.find(need.part);
        if (!part)
            continue;
        if (need.kind == NeedKind::Tool && part->kind != PartKind::Tool)
            report(found, need, "part", tr("“%1” is not a tool.").arg(part->name));
        if (need.kind == NeedKind::Service && part->kind != PartKind::Service)
            report(found, need, "part", tr("“%1” is not a service.").arg(part->name));
        if (need.kind == NeedKind::Consumable) {
            if (part->kind != PartKind::Consumable)
                report(found, need, "part", tr("“%1” is not a consumable.").arg(part->name));
            else if (part->stock && need.amount && part->stock->measure() != need.amount->measure())
                report(found, need, "amount",
                       tr("“%1” is counted as a %2, the need as a %3.")
                           .arg(part->name, measureName(part->stock->measure()),
                                measureName(need.amount->measure())));
        }
    }
}

void checkTasks(const Records &records, Found &found)
{
    std::unordered_map<Id<Task>, std::vector<Id<Task>>> after;
    std::vector<Id<Task>> tasks;
    for (const Task &task : records.all<Task>())
        tasks.push_back(task.id);
    for (const TaskNeed &need : records.all<TaskNeed>())
        if (need.after)
            after[need.task].push_back(*need.after);
    if (const auto loop = loopIn(tasks, after); !loop.empty()) {
        QStringList names;
        for (const Id<Task> id : loop)
            names << records.find(id)->title;
        names << names.front();
        report(
            found, *records.find(loop.front()), "needs",
            tr("Tasks wait on each other in a loop: %1.").arg(names.join(tr(", which waits on "))));
    }
    for (const Task &task : records.all<Task>()) {
        if (task.state != TaskState::Done)
            continue;
        const auto it = after.find(task.id);
        if (it == after.end())
            continue;
        for (const Id<Task> before : it->second)
            if (const Task *b = records.find(before); b && b->state != TaskState::Done) {
                report(found, task, "state",
                       tr("“%1” is done, but “%2”, which it waits on, is not.")
                           .arg(task.title, b->title));
                break;
            }
    }
}

// The optimistic estimate is not above the likely, nor the pessimistic below it.
template <class R>
void checkThreePoints(Found &found, const R &row, const char *leastField,
                      const std::optional<int> &least, int likely, const char *mostField,
                      const std::optional<int> &most)
{
    if (least && *least > likely)
        report(found, row, leastField,
               tr("The least, %1, is more than the likely, %2.").arg(*least).arg(likely));
    if (most && *most < likely)
        report(found, row, mostField,
               tr("The most, %1, is less than the likely, %2.").arg(*most).arg(likely));
}

void checkPlanning(const Records &records, Found &found)
{
    for (const Task &t : records.all<Task>()) {
        checkThreePoints(found, t, "least_work_minutes", t.leastWorkMinutes, t.workMinutes,
                         "most_work_minutes", t.mostWorkMinutes);
        checkThreePoints(found, t, "least_wait_days", t.leastWaitDays, t.waitDays, "most_wait_days",
                         t.mostWaitDays);
    }
    for (const Part &p : records.all<Part>())
        if (p.leadDays)
            checkThreePoints(found, p, "least_lead_days", p.leastLeadDays, *p.leadDays,
                             "most_lead_days", p.mostLeadDays);
    for (const Letter &l : records.all<Letter>())
        if (l.answerDays)
            checkThreePoints(found, l, "least_answer_days", l.leastAnswerDays, *l.answerDays,
                             "most_answer_days", l.mostAnswerDays);
    for (const SpecialDay &d : records.all<SpecialDay>())
        if (d.to && *d.to < d.from)
            report(found, d, "last_day", tr("The last of these days lies before the first."));
    for (const Choice &c : records.all<Choice>()) {
        const ChoiceOption *taken = records.find(c.taken);
        if (taken && taken->choice != c.id)
            report(found, c, "taken",
                   tr("“%1” is not an option of “%2”.").arg(taken->name, c.question));
    }
}

void checkEngineering(const Records &records, Found &found)
{
    using Subject = std::array<std::int64_t, 5>;
    std::set<std::pair<QString, Subject>> told;
    for (const CheckFigure &f : records.all<CheckFigure>()) {
        const auto idOf = [](const auto &id) {
            return id ? id->value() : 0;
        };
        const Subject subject{idOf(f.circuit), idOf(f.branch), idOf(f.part), idOf(f.type),
                              idOf(f.test)};
        if (!told.insert({f.figure, subject}).second)
            report(found, f, "figure", tr("“%1” is told twice of the same thing.").arg(f.figure));
    }
    for (const RatedCurve &curve : records.all<RatedCurve>()) {
        for (const CurvePoint &point : records.of<CurvePoint>(curve.id)) {
            const auto hold = [&](const char *field, const Amount &amount, Measure measure) {
                if (amount.measure() != measure)
                    report(
                        found, point, field,
                        tr("A point of “%1” is a %2 here, not a %3.")
                            .arg(curve.name, measureName(measure), measureName(amount.measure())));
            };
            hold("along", point.along, measureAlong(curve.kind));
            hold("up", point.up, measureUp(curve.kind));
        }
    }
    std::set<QString> thresholds;
    for (const OwnThreshold &own : records.all<OwnThreshold>())
        if (!thresholds.insert(own.name).second)
            report(found, own, "name", tr("The threshold “%1” is set twice.").arg(own.name));
    for (const TestRecord &test : records.all<TestRecord>()) {
        if (test.result != TestResult::Passed)
            continue;
        for (const TestStep &step : records.of<TestStep>(test.id))
            if (step.result != TestResult::Passed) {
                report(found, test, "result",
                       tr("“%1” is passed, but its step “%2” is not.").arg(test.name, step.name));
                break;
            }
    }
    for (const SafetySystem &system : records.all<SafetySystem>()) {
        const TestRecord *test = records.find(system.test);
        if (system.state == SafetyState::Proven && test && test->result != TestResult::Passed)
            report(found, system, "state",
                   tr("“%1” is told to be proven, but the test “%2” is not passed.")
                       .arg(system.name, test->name));
    }
}

} // namespace

std::optional<Money> countable(const Records &records, const Purchase &purchase)
{
    constexpr double kMost = 1e15; // minor units, what parseMoney takes as well
    double total = 0;
    double paid = 0;
    const auto add = [](double &sum, const Money &money, int count) {
        sum += std::abs(static_cast<double>(money.minor())) * count;
    };
    for (const Money &shared : {purchase.freight, purchase.duty, purchase.tax})
        add(total, shared, 1);
    for (const PurchaseItem &item : records.of<PurchaseItem>(purchase.id)) {
        add(total, item.unitPrice, item.count);
        add(total, item.coreCharge, 1);
    }
    for (const Payment &payment : records.of<Payment>(purchase.id))
        add(paid, payment.amount, 1);
    if (std::max(total, paid) > kMost)
        return std::nullopt;
    const auto largest = static_cast<std::int64_t>(std::max(total, paid));
    return purchase.rate.convertIfFits(Money(largest, purchase.currency), records.build().currency);
}

std::vector<Inconsistency> findInconsistencies(const Records &records)
{
    Found found;
    checkCurrencies(records, found);
    checkPurchases(records, found);
    checkParts(records, found);
    checkMoves(records, found);
    checkNeeds(records, found);
    checkTasks(records, found);
    checkPlanning(records, found);
    checkEngineering(records, found);
    return found;
}

} // namespace ohmwright
