// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/generated_planning.h"

#include "tests/support/chance.h"
#include "tests/support/generated_values.h"

#include <algorithm>

namespace ohmwright {

namespace {

class PlanningMaker
{
public:
    PlanningMaker(Records &records, std::uint32_t seed, const BookSize &size, Texts texts)
        : m_records(records), m_chance(seed ^ 0x70616e73U), m_values(m_chance, texts), m_size(size)
    {
        records.forEachTable([&](const auto &table) {
            for (const auto &row : table)
                m_lastId = std::max(m_lastId, row.id.value());
        });
    }

    void make()
    {
        makeHours();
        makeChoices();
        makeWorkLog();
        changeAll<Build>([&](Build &b) {
            b.confidencePercent = m_values.perhaps([&] { return m_chance.between(50, 99); });
            b.saved = m_values.perhaps([&] { return m_values.money(b.currency); });
            b.savedOn = m_values.perhapsDate();
            b.setAside = m_values.perhaps([&] { return m_values.money(b.currency); });
        });
        changeAll<Task>([&](Task &t) { estimate(t); });
        changeAll<Part>([&](Part &p) {
            around(p.leadDays, p.leastLeadDays, p.mostLeadDays, 3650);
            p.option = perhapsOne<ChoiceOption>();
        });
        changeAll<Letter>(
            [&](Letter &l) { around(l.answerDays, l.leastAnswerDays, l.mostAnswerDays, 3650); });
    }

private:
    template <class R>
    R freshKeyed()
    {
        m_lastId += 1 + m_chance.below(1000);
        R row;
        row.id = Id<R>(m_lastId);
        row.key = m_values.key();
        return row;
    }
    template <class R>
    std::optional<Id<R>> perhapsOne()
    {
        const auto &rows = m_records.all<R>().rows();
        if (rows.empty() || m_chance.oneIn(2))
            return std::nullopt;
        return m_chance.pick(rows).id;
    }
    template <class R, class Change>
    void changeAll(Change change)
    {
        std::vector<R> rows = m_records.all<R>().rows();
        for (R &row : rows)
            change(row);
        m_records.all<R>().assign(std::move(rows));
    }

    void around(const std::optional<int> &likely, std::optional<int> &least,
                std::optional<int> &most, int top)
    {
        least = m_values.perhaps([&] { return m_chance.between(0, likely.value_or(top)); });
        most = m_values.perhaps(
            [&] { return m_chance.between(std::max(likely.value_or(0), least.value_or(0)), top); });
    }

    QString timeOfDay()
    {
        return QStringLiteral("%1:%2")
            .arg(m_chance.below(24), 2, 10, QLatin1Char('0'))
            .arg(m_chance.below(60), 2, 10, QLatin1Char('0'));
    }

    void makeHours()
    {
        std::vector<WorkingTime> times;
        std::vector<SpecialDay> days;
        for (int i = 0; i < m_size.workingTimes; ++i) {
            auto w = freshKeyed<WorkingTime>();
            w.weekday = m_values.word<Weekday>();
            w.starts = m_chance.oneIn(2) ? timeOfDay() : QString();
            w.minutes = m_chance.between(1, 1440);
            w.hands = m_chance.between(1, 4);
            w.note = m_values.text();
            times.push_back(w);
            auto d = freshKeyed<SpecialDay>();
            d.from = m_values.date();
            d.to = m_values.perhaps(
                [&] { return std::min(d.from.addDays(m_chance.below(30)), QDate(2199, 12, 31)); });
            d.minutes = m_chance.between(0, 1440);
            d.hands = m_chance.between(1, 4);
            d.note = m_values.text();
            days.push_back(d);
        }
        m_records.all<WorkingTime>().assign(std::move(times));
        m_records.all<SpecialDay>().assign(std::move(days));
    }

    void makeChoices()
    {
        std::vector<Choice> choices;
        std::vector<ChoiceOption> options;
        for (int i = 0; i < m_size.choices; ++i) {
            auto c = freshKeyed<Choice>();
            c.question = m_values.requiredText();
            c.decideBy = m_values.perhapsDate();
            const int count = m_chance.between(i == 0 ? 1 : 0, 3);
            for (int position = 0; position < count; ++position) {
                auto o = freshKeyed<ChoiceOption>();
                o.choice = c.id;
                o.position = position;
                o.name = m_values.requiredText();
                o.note = m_values.text();
                if (m_chance.oneIn(4))
                    c.taken = o.id;
                options.push_back(o);
            }
            if (c.taken)
                c.decidedOn = m_values.perhapsDate();
            c.because = m_values.text();
            c.note = m_values.text();
            choices.push_back(c);
        }
        m_records.all<Choice>().assign(std::move(choices));
        m_records.all<ChoiceOption>().assign(std::move(options));
    }

    void makeWorkLog()
    {
        std::vector<WorkEntry> entries;
        for (int i = 0; i < m_size.workEntries; ++i) {
            auto w = freshKeyed<WorkEntry>();
            w.task = perhapsOne<Task>();
            w.on = m_values.date();
            w.minutes = m_values.perhaps([&] { return m_chance.between(0, 2880); });
            w.started = !w.minutes || m_chance.oneIn(2) ? timeOfDay() : QString();
            w.hands = m_chance.between(1, 4);
            w.note = m_values.text();
            entries.push_back(w);
        }
        m_records.all<WorkEntry>().assign(std::move(entries));
    }

    void estimate(Task &t)
    {
        t.trade = m_values.perhaps([&] { return m_values.word<Trade>(); });
        around(t.workMinutes, t.leastWorkMinutes, t.mostWorkMinutes, 600000);
        around(t.waitDays, t.leastWaitDays, t.mostWaitDays, 3650);
        t.hands = m_values.perhaps([&] { return m_chance.between(1, 4); });
        t.oneSitting = m_values.perhaps([&] { return m_chance.oneIn(2); });
        t.bay = m_chance.oneIn(3) ? m_values.text() : QString();
        t.failPercent = m_values.perhaps([&] { return m_chance.between(0, 95); });
        t.redoFrom = perhapsOne<Task>();
        t.opens = perhapsOne<Part>();
        t.buys = perhapsOne<Part>();
        t.asks = perhapsOne<Letter>();
        t.option = perhapsOne<ChoiceOption>();
    }

    Records &m_records;
    Chance m_chance;
    ValueMaker m_values;
    const BookSize &m_size;
    std::int64_t m_lastId = 0;
};

} // namespace

void addPlanning(Records &records, std::uint32_t seed, const BookSize &size, Texts texts)
{
    PlanningMaker(records, seed, size, texts).make();
}

} // namespace ohmwright
