// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/parts_index.h"

#include "core/budget/part_costs.h"
#include "core/parts/assembly.h"
#include "core/parts/life.h"
#include "core/parts/questions.h"
#include "core/parts/voltage_class.h"
#include "ui/parts/part_words.h"
#include "ui/widgets/natural_order.h"

#include <QCoreApplication>

#include <algorithm>
#include <initializer_list>
#include <map>
#include <numeric>

namespace ohmwright::ui {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("PartsIndex", text);
}

const Purchase *purchaseOf(const Records &records, const Part &part)
{
    const PurchaseItem *item = records.find(part.bought);
    return item ? records.find(item->purchase) : nullptr;
}

QString haystackOf(const Records &records, const Part &part)
{
    QStringList words{part.name,      part.key,  part.serial,      part.place,
                      part.condition, part.note, wordOf(part.kind)};
    if (const Donor *donor = records.find(part.donor))
        words << donorName(*donor) << donor->vin;
    if (const Purchase *purchase = purchaseOf(records, part)) {
        words << purchase->reference;
        if (const Seller *seller = records.find(purchase->seller))
            words << seller->name;
    }
    if (const PartType *type = records.find(part.type))
        words << type->make << type->partNumber << type->name;
    // a word never runs from one field into the next
    return words.join(u'\n').toLower();
}

QString secondLineOf(const Records &records, const Part &part)
{
    QStringList words;
    if (const Donor *donor = records.find(part.donor))
        words << donorName(*donor);
    else if (const Purchase *purchase = purchaseOf(records, part))
        if (const Seller *seller = records.find(purchase->seller))
            words << seller->name;
    if (!part.serial.isEmpty())
        words << tr("no. %1").arg(part.serial);
    if (words.isEmpty())
        words << wordOf(part.kind);
    return words.join(tr(", "));
}

std::optional<Deadline> soonest(const Part &part, QDate today)
{
    if (isGone(part.state))
        return std::nullopt;
    std::optional<Deadline> found;
    for (const Deadline &deadline : deadlinesOf(part, today))
        if (deadline.state != DeadlineState::Over && (!found || deadline.lastDay < found->lastDay))
            found = deadline;
    return found;
}

// What a column orders by: a number first, then text.
struct SortKey
{
    std::int64_t number = 0;
    const QString *text = nullptr;
};

SortKey sortKeyOf(PartColumn column, const Part &part, const PartFacts &facts)
{
    // what is missing stands behind what is there
    constexpr std::int64_t kLast = std::numeric_limits<std::int64_t>::max();
    switch (column) {
    case PartColumn::Name:
        return {};
    case PartColumn::State:
        return {static_cast<std::int64_t>(part.state), nullptr};
    case PartColumn::Assembly:
        return {facts.assembly.isEmpty() ? 1 : 0, &facts.assembly};
    case PartColumn::HighVoltage:
        return {facts.highVoltage ? 0 : 1, nullptr};
    case PartColumn::Cost:
        return {facts.cost ? facts.cost->minor() : kLast, nullptr};
    case PartColumn::Questions:
        return {-facts.questions, nullptr};
    case PartColumn::Deadline:
        return {facts.deadline ? facts.deadline->lastDay.toJulianDay() : kLast, nullptr};
    case PartColumn::Place:
        return {part.place.isEmpty() ? 1 : 0, &part.place};
    }
    return {};
}

struct Candidate
{
    const Part *part;
    const PartFacts *facts;
    SortKey key;
    QString group; // sorts the groups
};

bool before(const Candidate &a, const Candidate &b, bool descending)
{
    if (const int group = a.group.compare(b.group); group != 0)
        return group < 0;
    const Candidate &low = descending ? b : a;
    const Candidate &high = descending ? a : b;
    if (low.key.number != high.key.number)
        return low.key.number < high.key.number;
    if (low.key.text)
        if (const int text = low.key.text->compare(*high.key.text, Qt::CaseInsensitive); text != 0)
            return text < 0;
    if (const int name = low.facts->sortName.compare(high.facts->sortName); name != 0)
        return name < 0;
    return a.part->id < b.part->id;
}

} // namespace

PartsIndex::PartsIndex(const Records &records, QDate today) : m_records(records)
{
    rebuild(today);
}

void PartsIndex::rebuild(QDate today)
{
    m_today = today;
    m_facts.clear();
    m_facts.reserve(m_records.all<Part>().size());
    for (const Part &part : m_records.all<Part>())
        readOne(part);
    sortByName();
    readCosts();
    readAssemblies();
    readQuestions();
}

void PartsIndex::sortByName()
{
    m_byName.clear();
    m_byName.reserve(m_facts.size());
    for (const auto &[id, facts] : m_facts)
        m_byName.push_back({id, &facts});
    std::sort(m_byName.begin(), m_byName.end(), [](const Named &a, const Named &b) {
        const int name = a.facts->sortName.compare(b.facts->sortName);
        return name != 0 ? name < 0 : a.part < b.part;
    });
}

void PartsIndex::update(const Change &change, QDate today)
{
    const auto touched = [&](std::initializer_list<const char *> tables) {
        return std::any_of(tables.begin(), tables.end(),
                           [&](const char *table) { return change.touches(table); });
    };
    if (today != m_today ||
        touched({"build", "donor", "seller", "purchase", "purchase_item", "part_type"})) {
        rebuild(today);
        return;
    }
    bool bears = false; // on other parts, or on more than its own line
    if (const auto parts = change.rows.find("part"); parts != change.rows.end()) {
        for (const TouchedRow &row : parts->second) {
            const Id<Part> id(row.id);
            if (const Part *part = m_records.find(id)) {
                const PartFacts::Bearing before = of(id).bearing;
                readOne(*part);
                bears = bears || before != of(id).bearing;
            } else {
                bears = m_facts.erase(id) > 0 || bears;
            }
        }
    }
    if (bears) { // also a name, or another part
        sortByName();
        readCosts();
        readAssemblies();
    }
    if (bears || touched({"rating", "connection", "circuit", "branch", "task", "task_need"}))
        readQuestions();
}

void PartsIndex::readOne(const Part &part)
{
    PartFacts &facts = m_facts[part.id];
    facts.haystack = haystackOf(m_records, part);
    facts.sortName = naturalKey(part.name);
    facts.secondLine = secondLineOf(m_records, part);
    facts.deadline = soonest(part, m_today);
    facts.bearing = {part.key,    part.name, part.partOf,       part.type,
                     part.bought, part.kind, isGone(part.state)};
}

void PartsIndex::readCosts()
{
    const auto costs = landedCosts(m_records);
    for (auto &[id, facts] : m_facts) {
        const auto cost = costs.find(id);
        facts.cost = cost == costs.end() ? std::nullopt : std::optional(cost->second);
    }
}

void PartsIndex::readAssemblies()
{
    const AssemblyTree tree(m_records);
    for (auto &[id, facts] : m_facts) {
        const Part *outermost = facts.bearing.partOf || !tree.within(id).empty()
                                    ? m_records.find(tree.outermost(id))
                                    : nullptr;
        facts.assembly = outermost ? outermost->name : QString();
        facts.assemblyKey = outermost ? outermost->key : QString();
    }
}

void PartsIndex::readQuestions()
{
    for (auto &[id, facts] : m_facts) {
        facts.questions = 0;
        facts.highVoltage = false;
    }
    for (const Question &question : joined(m_records, openQuestions(m_records), m_askedByChecks))
        if (const auto facts = m_facts.find(question.part); facts != m_facts.end())
            ++facts->second.questions;
    for (const Connection &connection : m_records.all<Connection>()) {
        const Circuit *circuit = m_records.find(connection.circuit);
        if (circuit && isVoltageClassB(*circuit))
            m_facts[connection.part].highVoltage = true;
    }
}

void PartsIndex::setAskedByChecks(std::vector<Question> questions)
{
    m_askedByChecks = std::move(questions);
    readQuestions();
}

const PartFacts &PartsIndex::of(Id<Part> part) const
{
    static const PartFacts kNone;
    const auto found = m_facts.find(part);
    return found == m_facts.end() ? kNone : found->second;
}

Arrangement PartsIndex::arrange(const PartFilter &filter) const
{
    Arrangement result;
    const QStringList words = filter.text.toLower().split(u' ', Qt::SkipEmptyParts);
    std::vector<Candidate> found;
    for (const Named &named : m_byName) {
        const PartFacts &facts = *named.facts;
        if (!std::all_of(words.begin(), words.end(),
                         [&](const QString &word) { return facts.haystack.contains(word); }))
            continue;
        const Part *row = m_records.find(named.part);
        if (!row || (filter.kind && row->kind != *filter.kind))
            continue;
        const Part &part = *row;
        ++result.perState[static_cast<std::size_t>(part.state)];
        if (!filter.states.empty() && !filter.states.contains(part.state))
            continue;
        Candidate candidate{&part, &facts, sortKeyOf(filter.sortBy, part, facts), {}};
        if (filter.grouping == PartGrouping::State)
            candidate.group = QChar(static_cast<char16_t>(u'a' + static_cast<int>(part.state)));
        else if (filter.grouping == PartGrouping::Assembly)
            candidate.group = facts.assembly.isEmpty()
                                  ? QString(QChar(0xFFFD))
                                  : facts.assembly.toLower() + u'\n' + facts.assemblyKey;
        found.push_back(std::move(candidate));
    }
    if (filter.sortBy != PartColumn::Name || filter.descending ||
        filter.grouping != PartGrouping::None)
        std::sort(found.begin(), found.end(), [&](const Candidate &a, const Candidate &b) {
            return before(a, b, filter.descending);
        });
    result.parts = static_cast<int>(found.size());
    std::size_t heading = 0;
    for (std::size_t i = 0; i < found.size(); ++i) {
        const Candidate &one = found[i];
        if (filter.grouping != PartGrouping::None && (i == 0 || found[i - 1].group != one.group)) {
            heading = result.rows.size();
            PartRow row;
            row.heading = filter.grouping == PartGrouping::State ? wordOf(one.part->state)
                          : one.facts->assembly.isEmpty()        ? tr("in no assembly")
                                                                 : one.facts->assembly;
            result.rows.push_back(row);
        }
        PartRow row;
        row.part = one.part->id;
        result.rows.push_back(row);
        if (filter.grouping != PartGrouping::None)
            ++result.rows[heading].count;
    }
    return result;
}

} // namespace ohmwright::ui
