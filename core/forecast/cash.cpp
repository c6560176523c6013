// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/cash.h"

#include "core/budget/budget.h"
#include "core/forecast/part_price.h"
#include "core/parts/log_part.h"
#include "core/parts/options.h"

#include <QCoreApplication>

#include <algorithm>
#include <set>

namespace ohmwright::forecast {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Forecast", text);
}

constexpr int kMostMonths = 240;

QDate monthOf(QDate day)
{
    return {day.year(), day.month(), 1};
}

int monthsBetween(QDate from, QDate to)
{
    return (to.year() - from.year()) * 12 + to.month() - from.month();
}

// The month of each day from today, looked up instead of reckoned in every sample.
class Months
{
public:
    explicit Months(QDate today) : m_today(today) {}
    std::size_t at(int day)
    {
        if (day > kMostMonths * 31) // never, too
            return kMostMonths;
        day = std::max(0, day);
        while (m_months.size() <= static_cast<std::size_t>(day)) {
            const QDate date = m_today.addDays(static_cast<qint64>(m_months.size()));
            m_months.push_back(std::min(kMostMonths, monthsBetween(m_today, date)));
        }
        return static_cast<std::size_t>(m_months[static_cast<std::size_t>(day)]);
    }

private:
    QDate m_today;
    std::vector<int> m_months;
};

class CashCounter
{
public:
    CashCounter(const Records &records, const WorkPlan &plan)
        : m_records(records), m_plan(plan), m_own(records.build().currency), m_months(plan.today)
    {
        addPurchases();
        addGotBack();
        findOrders();
    }

    Cash count(const Simulation &simulation, int samples)
    {
        std::vector<std::vector<std::int64_t>> due( // per month, per sample, summed up
            kMostMonths + 1, std::vector<std::int64_t>(static_cast<std::size_t>(samples)));
        std::size_t sample = 0;
        std::vector<int> lastMonth;
        simulation.forEachSample(samples, [&](const plan::Levelled &levelled, const Drawn &drawn) {
            std::vector<std::int64_t> month = m_fixed;
            for (const Order &order : m_orders)
                month[m_months.at(dayOf(order, levelled, drawn.waitDays))] += order.cost;
            for (const Anew &anew : m_anew)
                if (const int times = drawn.failures[anew.risk]; times > 0)
                    month[m_months.at(levelled.startDay[anew.activity])] += anew.cost * times;
            for (const std::int64_t late : m_atEnd)
                month[m_months.at(levelled.endDay)] += late;
            std::int64_t sum = 0;
            int last = 0;
            for (std::size_t m = 0; m < month.size(); ++m) {
                sum += month[m];
                due[m][sample] = sum;
                if (month[m] != 0)
                    last = static_cast<int>(m);
            }
            lastMonth.push_back(last);
            ++sample;
        });
        Cash cash;
        cash.gaps = m_gaps;
        const int months = std::min(kMostMonths - 1, dayAt(lastMonth, 95)) + 1;
        for (int m = 0; m < months; ++m) {
            CashMonth one;
            one.month = monthOf(m_plan.today).addMonths(m);
            std::vector<std::int64_t> &sums = due[static_cast<std::size_t>(m)];
            one.due50 = Money(atPercent(sums, 50), m_own);
            one.due80 = Money(atPercent(sums, 80), m_own);
            one.available = availableBy(one.month);
            if (one.available && one.due80.minor() > one.available->minor() && !cash.runsOut)
                cash.runsOut = one.month;
            cash.months.push_back(one);
        }
        return cash;
    }

private:
    struct Order
    {
        std::size_t delivery = 0;
        std::optional<std::size_t> buyer;
        std::vector<std::size_t> consumers;
        std::int64_t cost = 0;
    };

    struct Anew // what is paid once more, as often as a test fails
    {
        std::size_t activity = 0;
        std::size_t risk = 0;
        std::int64_t cost = 0;
    };

    static std::int64_t atPercent(std::vector<std::int64_t> &sums, int percent)
    {
        const std::size_t rank = (sums.size() * static_cast<std::size_t>(percent) + 99) / 100;
        const auto at =
            sums.begin() + static_cast<std::ptrdiff_t>(std::max<std::size_t>(rank, 1) - 1);
        std::nth_element(sums.begin(), at, sums.end());
        return *at;
    }

    void addPurchases()
    {
        for (const Purchase &purchase : m_records.all<Purchase>()) {
            const LandedPurchase landed = landedCost(m_records, purchase);
            if (landed.committed.isZero())
                continue;
            const QDate due = purchase.promisedOn.value_or(m_plan.today);
            m_fixed[m_months.at(static_cast<int>(m_plan.today.daysTo(due)))] +=
                landed.committed.minor();
        }
    }

    void addGotBack()
    {
        for (const GotBack &back : m_records.all<GotBack>())
            if (!back.receivedOn && back.expectedOn)
                m_fixed[m_months.at(static_cast<int>(m_plan.today.daysTo(*back.expectedOn)))] -=
                    back.rate.convert(back.amount, m_own).minor();
    }

    void findOrders()
    {
        std::set<QString> ordered;
        std::vector<std::vector<std::size_t>> next(m_plan.activities.size());
        for (std::size_t i = 0; i < m_plan.activities.size(); ++i)
            for (const std::size_t before : m_plan.activities[i].after)
                next[before].push_back(i);
        for (std::size_t i = 0; i < m_plan.activities.size(); ++i) {
            const Activity &a = m_plan.activities[i];
            if (a.risk)
                findAnew(i);
            if (!a.toOrder)
                continue;
            ordered.insert(a.part);
            const Part *part = m_records.byKey<Part>(a.part);
            if (a.forShop)
                continue;
            if (!a.cost) {
                m_gaps << tr("“%1” has no price that can be counted.").arg(a.name);
                continue;
            }
            if (part && part->state != PartState::Wanted)
                m_short += *a.cost;
            Order order{i, std::nullopt, next[i], a.cost->minor()};
            if (!a.after.empty())
                order.buyer = a.after.front();
            m_orders.push_back(std::move(order));
        }
        for (const Part &part : m_records.all<Part>()) {
            if (part.state != PartState::Wanted || part.countedTo == CountedTo::Shop ||
                ordered.contains(part.key) || !isPlannedWith(m_records, part.option))
                continue;
            if (const auto price = priceOf(m_records, part, m_plan.today))
                m_atEnd.push_back(price->minor());
            else
                m_gaps << tr("“%1” has no price that can be counted.").arg(part.name);
        }
        sayWhatIsNotCounted();
    }

    void findAnew(std::size_t activity)
    {
        const Activity &a = m_plan.activities[activity];
        const Part *part = m_records.byKey<Part>(a.part);
        if (!part || a.forShop || (a.cost && a.cost->isZero()))
            return;
        const QString price = a.cost ? printMoney(*a.cost) : tr("no price that can be counted");
        m_anewNames << tr("%1 (%2)").arg(part->name, price);
        if (a.cost)
            m_anew.push_back({activity, *a.risk, a.cost->minor()});
    }

    // So that the sum can be held against the budget's.
    void sayWhatIsNotCounted()
    {
        Money shop = Money::zero(m_own);
        for (const Part &part : m_records.all<Part>()) {
            if (part.state != PartState::Wanted || part.countedTo != CountedTo::Shop ||
                !isPlannedWith(m_records, part.option))
                continue;
            if (const auto price = estimateOf(m_records, part, m_plan.today))
                shop += *price;
            else
                m_gaps << tr("“%1” has no price that can be counted.").arg(part.name);
        }
        if (!shop.isZero())
            m_gaps << tr("What is bought for the shop is not counted: %1.").arg(printMoney(shop));
        if (!m_short.isZero())
            m_gaps << tr("%1 of it are for what is in stock but will not last; the budget has that "
                         "not among what is to come.")
                          .arg(printMoney(m_short));
        Money cores = Money::zero(m_own);
        for (const Purchase &purchase : m_records.all<Purchase>())
            for (const PurchaseItem &item : m_records.of<PurchaseItem>(purchase.id))
                if (!item.coreReturnedOn && !item.coreCharge.isZero())
                    cores += purchase.rate.convert(item.coreCharge, m_own);
        if (!cores.isZero())
            m_gaps << tr("Core charges that are to come back, and nobody knows when, are not "
                         "counted: %1.")
                          .arg(printMoney(cores));
        if (!m_anewNames.isEmpty())
            m_gaps << tr("Paid anew as often as a test fails, and not in the budget: %1.")
                          .arg(m_anewNames.join(QStringLiteral("; ")));
        QStringList conditions;
        for (const TaskNeed &need : m_records.all<TaskNeed>()) {
            const auto *task = need.kind == NeedKind::Money ? m_records.find(need.task) : nullptr;
            if (!task || need.metOn || task->state == TaskState::Done ||
                !isPlannedWith(m_records, task->option))
                continue;
            const QString sum = need.money ? printMoney(*need.money) : tr("a sum");
            conditions += need.what.isEmpty() ? tr("%1 (“%2”)").arg(sum, task->title)
                                              : tr("%1 (%2)").arg(sum, need.what);
        }
        if (!conditions.isEmpty())
            m_gaps
                << tr("Sums that tasks wait to be paid are counted with the part or service they "
                      "pay for; a fee for which none is logged is in no sum: %1.")
                       .arg(conditions.join(QStringLiteral("; ")));
    }

    static int dayOf(const Order &order, const plan::Levelled &levelled,
                     const std::vector<int> &waits)
    {
        if (order.buyer)
            return levelled.readyDay[*order.buyer];
        int first = plan::kNever;
        for (const std::size_t consumer : order.consumers)
            first = std::min(first, levelled.startDay[consumer]);
        return first == plan::kNever ? first : std::max(0, first - waits[order.delivery]);
    }

    std::optional<Money> availableBy(QDate month) const
    {
        const Build &build = m_records.build();
        if (!build.saved && !build.setAside)
            return std::nullopt;
        Money sum = build.saved.value_or(Money(0, m_own));
        const int ends =
            std::max(0, monthsBetween(build.savedOn.value_or(m_plan.today), month) + 1);
        if (build.setAside)
            sum += Money(build.setAside->minor() * ends, m_own);
        return sum;
    }

    const Records &m_records;
    const WorkPlan &m_plan;
    Currency m_own;
    Months m_months;
    std::vector<std::int64_t> m_fixed = std::vector<std::int64_t>(kMostMonths + 1);
    std::vector<Order> m_orders;
    std::vector<Anew> m_anew;
    QStringList m_anewNames;
    std::vector<std::int64_t> m_atEnd;  // prices of parts no task waits for
    Money m_short = Money::zero(m_own); // for consumables in stock, but too few
    QStringList m_gaps;
};

} // namespace

Cash cashOf(const Records &records, const WorkPlan &plan, const Simulation &simulation, int samples)
{
    return CashCounter(records, plan).count(simulation, std::max(1, samples));
}

} // namespace ohmwright::forecast
