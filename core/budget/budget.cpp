// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/budget/budget.h"

#include "core/parts/log_part.h"
#include "core/parts/options.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>
#include <unordered_map>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Budget", text);
}

class Tally
{
public:
    Tally(const Records &records, QDate today) : m_records(records), m_today(today)
    {
        m_budget.currency = records.build().currency;
        for (const BudgetLine &line : records.all<BudgetLine>())
            m_lines.emplace(line.id, blank(line.id, line.name, line.allowance));
        m_lines.emplace(Id<BudgetLine>(), blank({}, tr("Without a line"), zero()));
        m_budget.total = blank({}, tr("Total"), zero());
        m_budget.shop = zero();
        for (const Part &part : records.all<Part>()) {
            if (!part.bought)
                continue;
            ++m_partsOfItem[*part.bought];
            if (part.countedTo == CountedTo::Shop)
                ++m_shopPartsOfItem[*part.bought];
        }
    }

    Budget run()
    {
        for (const Purchase &purchase : m_records.all<Purchase>())
            addPurchase(purchase);
        for (const Part &part : m_records.all<Part>())
            addWanted(part);
        for (const GotBack &back : m_records.all<GotBack>())
            addGotBack(back);
        return finish();
    }

private:
    [[nodiscard]] Money zero() const { return Money::zero(m_budget.currency); }

    [[nodiscard]] LineSums blank(Id<BudgetLine> id, const QString &name, Money allowance) const
    {
        return {id, name, allowance, zero(), zero(), zero(), zero(), zero()};
    }

    LineSums &lineOf(const std::optional<Id<BudgetLine>> &id)
    {
        const auto it = m_lines.find(id.value_or(Id<BudgetLine>()));
        return it == m_lines.end() ? m_lines.at({}) : it->second;
    }

    // Turns an estimate; without a rate it cannot be counted, and that is said.
    std::optional<Money> inBook(Money money, const QString &of)
    {
        if (const auto rate = rateOn(m_records, money.currency(), m_today))
            return rate->convert(money, m_budget.currency);
        m_budget.gaps << tr("“%1” (%2) is not counted: the book has no rate for %3.")
                             .arg(of, printMoney(money), money.currency().code());
        return std::nullopt;
    }

    void addPurchase(const Purchase &purchase)
    {
        const LandedPurchase landed = landedCost(m_records, purchase);
        if (landed.items.empty()) {
            lineOf({}).spent += landed.spent;
            lineOf({}).committed += landed.committed;
            return;
        }
        for (const LandedItem &item : landed.items) {
            const PurchaseItem &record = *m_records.find(item.item);
            LineSums &line = lineOf(record.line);
            const auto all = m_partsOfItem[item.item];
            const auto shop = m_shopPartsOfItem[item.item];
            if (shop > 0) {
                const std::array<std::int64_t, 2> weights{shop, all - shop};
                m_budget.shop += shareOut(item.inBook, weights)[0];
                line.spent += shareOut(item.spent, weights)[1];
                line.committed += shareOut(item.committed, weights)[1];
            } else {
                line.spent += item.spent;
                line.committed += item.committed;
            }
            if (!item.core.isZero()) {
                const Money core = purchase.rate.convert(item.core, m_budget.currency);
                (record.coreReturnedOn ? line.gotBack : line.expectedBack) += core;
            }
        }
    }

    void addWanted(const Part &part)
    {
        if (part.state != PartState::Wanted || part.countedTo == CountedTo::Shop ||
            !isPlannedWith(m_records, part.option))
            return;
        if (!part.estimate) {
            m_budget.gaps << tr("“%1” is wanted and has no estimate.").arg(part.name);
            return;
        }
        if (const auto money = inBook(*part.estimate, part.name))
            lineOf(part.line).toCome += *money;
    }

    void addGotBack(const GotBack &back)
    {
        const Money money = back.rate.convert(back.amount, m_budget.currency);
        LineSums &line = lineOf(back.line);
        (back.receivedOn ? line.gotBack : line.expectedBack) += money;
    }

    Budget finish()
    {
        std::vector<BudgetLine> order(m_records.all<BudgetLine>().begin(),
                                      m_records.all<BudgetLine>().end());
        std::stable_sort(order.begin(), order.end(), [](const BudgetLine &a, const BudgetLine &b) {
            return a.position < b.position;
        });
        for (const BudgetLine &line : order)
            m_budget.lines.push_back(m_lines.at(line.id));
        const LineSums &without = m_lines.at({});
        if (!(without.spent.isZero() && without.committed.isZero() && without.toCome.isZero() &&
              without.gotBack.isZero() && without.expectedBack.isZero()))
            m_budget.lines.push_back(without);
        LineSums &total = m_budget.total;
        for (const LineSums &line : m_budget.lines) {
            total.allowance += line.allowance;
            total.spent += line.spent;
            total.committed += line.committed;
            total.toCome += line.toCome;
            total.gotBack += line.gotBack;
            total.expectedBack += line.expectedBack;
        }
        const int percent = m_records.build().contingencyPercent;
        const std::array<std::int64_t, 2> parts{percent, 100 - percent};
        m_budget.contingency = shareOut(total.allowance, parts)[0];
        return std::move(m_budget);
    }

    const Records &m_records;
    QDate m_today;
    Budget m_budget;
    std::map<Id<BudgetLine>, LineSums> m_lines;
    std::unordered_map<Id<PurchaseItem>, std::int64_t> m_partsOfItem, m_shopPartsOfItem;
};

} // namespace

Budget budgetOf(const Records &records, QDate today)
{
    return Tally(records, today).run();
}

} // namespace ohmwright
