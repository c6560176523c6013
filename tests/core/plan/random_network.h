// SPDX-License-Identifier: GPL-3.0-or-later
// Networks made by hand and by chance, for the tests of the build order.
#pragma once

#include "core/plan/network.h"

#include <QDate>
#include <QString>

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <numeric>
#include <random>
#include <utility>
#include <vector>

namespace ohmwright::plan::testing {

inline Task task(const QString &key, int days, std::vector<std::size_t> after = {})
{
    Task made;
    made.key = key;
    made.title = QStringLiteral("Task ") + key;
    made.elapsedDays = days;
    made.after = std::move(after);
    return made;
}

inline LeafNeed unmet(const QString &key, MoveKind move, const QString &subject, int days)
{
    LeafNeed need;
    need.key = key;
    need.move = move;
    need.subject = subject;
    need.subjectName = QStringLiteral("the ") + subject;
    need.reason = QStringLiteral("because of ") + key;
    need.daysToMeet = days;
    return need;
}

// 0 after nothing, 1 after 0, 2 after 1, …: each a day long.
inline Network longChain(std::size_t length)
{
    Network network;
    network.tasks.resize(length);
    for (std::size_t i = 0; i < length; ++i) {
        network.tasks[i].key = QString::number(i);
        network.tasks[i].elapsedDays = 1;
        if (i > 0)
            network.tasks[i].after = {i - 1};
    }
    return network;
}

struct Chances
{
    std::size_t fewestTasks = 1, mostTasks = 40;
    double linksPerTask = 1.8;
    double backward = 0; // of a link running against the order, so that loops may arise
    double done = 0.25;  // whatever came before is done or not
    double needsPerTask = 1.2;
    double met = 0.4;
    int subjects = 12; // few, so that moves meet several needs
    double dated = 0.7;
};

// Same generator state, same network. Indices follow no order of work, and links are not sorted.
class RandomNetworks
{
public:
    explicit RandomNetworks(unsigned seed) : m_random(seed) {}

    std::size_t below(std::size_t bound) { return m_random() % bound; }
    bool chance(double probability)
    {
        return static_cast<double>(m_random()) < probability * 4294967296.0;
    }
    int days(int most) { return static_cast<int>(below(static_cast<std::size_t>(most) + 1)); }

    Network make(const Chances &chances)
    {
        const std::size_t count =
            chances.fewestTasks + below(chances.mostTasks - chances.fewestTasks + 1);
        Network network;
        network.tasks.resize(count);
        std::vector<std::size_t> order(count);
        std::iota(order.begin(), order.end(), std::size_t{0});
        for (std::size_t i = count; i > 1; --i)
            std::swap(order[i - 1], order[below(i)]);

        std::size_t needs = 0;
        for (std::size_t i = 0; i < count; ++i)
            fill(network.tasks[i], i, needs, chances);
        link(network, order, chances);
        return network;
    }

    // Mostly a task not done that nothing waits on, so that there is something on the way to it.
    std::size_t milestoneOf(const Network &network)
    {
        std::vector<char> waitedOn(network.tasks.size(), 0);
        for (const Task &task : network.tasks) {
            for (const std::size_t before : task.after)
                waitedOn[before] = 1;
        }
        std::vector<std::size_t> last;
        for (std::size_t i = 0; i < network.tasks.size(); ++i) {
            if (!waitedOn[i] && !network.tasks[i].done && !network.tasks[i].after.empty())
                last.push_back(i);
        }
        return last.empty() || chance(0.1) ? below(network.tasks.size()) : last[below(last.size())];
    }

private:
    void fill(Task &made, std::size_t index, std::size_t &needs, const Chances &chances)
    {
        made.key = QStringLiteral("T%1").arg(index, 6, 10, QLatin1Char('0'));
        if (!chance(0.1))
            made.title = QStringLiteral("Task %1").arg(index);
        made.done = chance(chances.done);
        made.started = chance(0.2);
        made.milestone = chance(0.2);
        made.elapsedDays = made.milestone ? 0 : days(15);
        if (chance(chances.dated))
            made.date = QDate(2024, 1, 15).addDays(days(700));
        while (chance(chances.needsPerTask / (1 + chances.needsPerTask)))
            made.needs.push_back(need(needs++, chances));
    }

    LeafNeed need(std::size_t number, const Chances &chances)
    {
        // The last ones sort differently by code point and by UTF-16 code.
        static constexpr const char16_t *kMarks[] = {u"",  u"",       u"b",
                                                     u"Ö", u"\uFB01", u"\U0001F50B"};
        LeafNeed made;
        made.key = QStringLiteral("N%1").arg(number);
        made.kind = static_cast<NeedKind>(below(10));
        made.met = chance(chances.met);
        made.move = static_cast<MoveKind>(1 + below(6));
        const std::size_t subject = below(static_cast<std::size_t>(chances.subjects));
        made.subject = QString::fromUtf16(kMarks[subject % std::size(kMarks)]) +
                       QStringLiteral("S%1").arg(subject);
        if (!chance(0.2))
            made.subjectName = QStringLiteral("thing %1 of %2").arg(subject).arg(number);
        made.reason = QStringLiteral("reason %1").arg(number);
        made.daysToMeet = days(20);
        return made;
    }

    void link(Network &network, const std::vector<std::size_t> &order, const Chances &chances)
    {
        const std::size_t count = order.size();
        const auto links = static_cast<std::size_t>(chances.linksPerTask * double(count));
        for (std::size_t i = 0; i < links; ++i) {
            std::size_t before = below(count);
            std::size_t after = below(count);
            if (before > after)
                std::swap(before, after);
            if (chance(chances.backward))
                std::swap(before, after);
            else if (before == after)
                continue;
            network.tasks[order[after]].after.push_back(order[before]);
        }
    }

    std::mt19937 m_random;
};

} // namespace ohmwright::plan::testing
