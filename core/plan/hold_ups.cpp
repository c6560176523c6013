// SPDX-License-Identifier: GPL-3.0-or-later
// The chain of a milestone and the moves that free it. What the words mean stands in network.h.
#include "core/plan/links.h"
#include "core/plan/network.h"

#include <QDate>
#include <QHash>
#include <QString>
#include <QtGlobal>

#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

namespace ohmwright::plan {

namespace {

constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();
constexpr std::size_t kMoveKinds = static_cast<std::size_t>(MoveKind::Ask) + 1;

// The part of the network that a milestone waits on.
struct Chain
{
    std::vector<std::size_t> tasks; // ascending
    std::vector<std::size_t> order; // the same, each after all it waits on
    std::vector<int> tail;          // by task of the network: from its start to the end
    bool looped = false;
};

Chain followChain(const Network &network, const Links &waits, const Links &next,
                  std::size_t milestone)
{
    Chain chain;
    std::vector<char> on(network.tasks.size(), 0);
    chain.tasks.push_back(milestone);
    on[milestone] = 1;
    for (std::size_t i = 0; i < chain.tasks.size(); ++i) {
        for (const std::size_t before : waits[chain.tasks[i]]) {
            if (!on[before]) {
                on[before] = 1;
                chain.tasks.push_back(before);
            }
        }
    }
    std::sort(chain.tasks.begin(), chain.tasks.end());

    std::optional<std::vector<std::size_t>> order = anyOrder(waits, next, on);
    if (!order) {
        chain.looped = true;
        return chain;
    }
    chain.order = std::move(*order);
    // A task off the chain keeps a tail of 0, so it never lengthens that of one on it.
    chain.tail.assign(network.tasks.size(), 0);
    for (std::size_t i = chain.order.size(); i-- > 0;) {
        const std::size_t task = chain.order[i];
        int rest = 0;
        for (const std::size_t after : next[task])
            rest = std::max(rest, chain.tail[after]);
        chain.tail[task] = addDays(boundedDays(network.tasks[task].elapsedDays), rest);
    }
    return chain;
}

Move doMove(const Task &task, std::size_t index, int tail)
{
    Move move;
    move.kind = MoveKind::Do;
    move.subject = task.key;
    move.title = task.title.isEmpty() ? task.key : task.title;
    move.why = task.started ? QStringLiteral("under way") : QStringLiteral("can start now");
    move.for_ = {index};
    move.chainDays = tail;
    return move;
}

// Gathers the unmet needs of the chain into moves: one for each kind and subject.
class MoveGatherer
{
public:
    explicit MoveGatherer(std::size_t atMost)
    {
        m_moves.reserve(atMost);
        m_longest.reserve(atMost);
    }

    // Tasks come in ascending, so that what each move is for does too.
    void add(const LeafNeed &need, std::size_t task, int tail)
    {
        const MoveKind kind = need.move;
        QString subject = need.subject;
        if (subject.isEmpty()) {
            Q_ASSERT_X(false, "plan::holdUps", "an unmet need without a subject");
            subject = need.key;
        }

        const int days = boundedDays(need.daysToMeet);
        QHash<QString, std::size_t> &bySubject = m_bySubject[static_cast<std::size_t>(kind)];
        std::size_t at = m_moves.size();
        if (const auto known = bySubject.constFind(subject); known != bySubject.cend()) {
            at = *known;
        } else {
            bySubject.insert(subject, at);
            m_moves.emplace_back();
            m_moves.back().kind = kind;
            m_moves.back().subject = subject;
            m_longest.push_back(-1);
        }

        Move &move = m_moves[at];
        move.needs.push_back(need.key);
        if (move.for_.empty() || move.for_.back() != task)
            move.for_.push_back(task);
        move.chainDays = std::max(move.chainDays, addDays(days, tail));
        if (need.by && (!move.by || *need.by < *move.by))
            move.by = need.by;
        if (days > m_longest[at]) {
            m_longest[at] = days;
            move.title = need.subjectName.isEmpty() ? subject : need.subjectName;
            move.why = need.reason;
        }
    }

    void add(Move move)
    {
        m_moves.push_back(std::move(move));
        m_longest.push_back(-1);
    }

    [[nodiscard]] std::vector<Move> take() { return std::move(m_moves); }

private:
    std::vector<Move> m_moves;
    std::vector<int> m_longest; // the greatest daysToMeet of each move's needs
    std::array<QHash<QString, std::size_t>, kMoveKinds> m_bySubject;
};

// One bit for each of so many sets of tasks.
constexpr std::size_t kBatch = 256;
using Batch = std::array<std::uint64_t, kBatch / 64>;

template <class Use>
void forEachBit(const std::vector<Batch> &batches, const std::vector<std::size_t> &tasks, Use use)
{
    for (const std::size_t task : tasks) {
        for (std::size_t word = 0; word < batches[task].size(); ++word) {
            for (std::uint64_t bits = batches[task][word]; bits != 0; bits &= bits - 1)
                use(word * 64 + static_cast<std::size_t>(std::countr_zero(bits)), task);
        }
    }
}

// What each of `sources`, sets of tasks on the chain, is waited on by: its own tasks and all that
// come after them, ascending.
// Each task carries one bit for each source of a batch, and hands them on to what waits on it. So
// one pass along the links serves the whole batch, and memory stays with the tasks, where a bit for
// each pair of tasks would not fit for a network of a hundred thousand.
std::vector<std::vector<std::size_t>>
waitingOn(const std::vector<const std::vector<std::size_t> *> &sources, const Chain &chain,
          const Links &waits)
{
    std::vector<std::vector<std::size_t>> waiting(sources.size());
    std::vector<Batch> reached(waits.taskCount());
    for (std::size_t base = 0; base < sources.size(); base += kBatch) {
        const std::size_t count = std::min(kBatch, sources.size() - base);
        std::fill(reached.begin(), reached.end(), Batch{});
        for (std::size_t i = 0; i < count; ++i) {
            for (const std::size_t task : *sources[base + i])
                reached[task][i / 64] |= std::uint64_t{1} << (i % 64);
        }
        for (const std::size_t task : chain.order) {
            Batch bits = reached[task];
            for (const std::size_t before : waits[task]) {
                for (std::size_t word = 0; word < bits.size(); ++word)
                    bits[word] |= reached[before][word];
            }
            reached[task] = bits;
        }
        std::array<std::size_t, kBatch> sizes{};
        forEachBit(reached, chain.tasks, [&](std::size_t bit, std::size_t) { ++sizes[bit]; });
        for (std::size_t i = 0; i < count; ++i)
            waiting[base + i].reserve(sizes[i]);
        forEachBit(reached, chain.tasks,
                   [&](std::size_t bit, std::size_t task) { waiting[base + bit].push_back(task); });
    }
    return waiting;
}

void fillFrees(std::vector<Move> &moves, const Chain &chain, const Links &waits)
{
    // Most moves are for one task, and those for the same task free the same ones.
    std::vector<const std::vector<std::size_t> *> sources;
    std::vector<std::size_t> sourceOfTask(waits.taskCount(), kNone);
    std::vector<std::size_t> sourceOfMove(moves.size());
    std::vector<std::size_t> users;
    for (std::size_t i = 0; i < moves.size(); ++i) {
        std::size_t source = sources.size();
        if (moves[i].for_.size() == 1) {
            std::size_t &known = sourceOfTask[moves[i].for_.front()];
            if (known == kNone)
                known = source;
            source = known;
        }
        if (source == sources.size()) {
            sources.push_back(&moves[i].for_);
            users.push_back(0);
        }
        sourceOfMove[i] = source;
        ++users[source];
    }

    std::vector<std::vector<std::size_t>> waiting = waitingOn(sources, chain, waits);
    for (std::size_t i = 0; i < moves.size(); ++i) {
        std::vector<std::size_t> &frees = moves[i].frees;
        const std::size_t source = sourceOfMove[i];
        if (--users[source] == 0)
            frees = std::move(waiting[source]);
        else
            frees = waiting[source];
        if (moves[i].kind == MoveKind::Do) {
            frees.erase(std::lower_bound(frees.begin(), frees.end(), moves[i].for_.front()));
        }
    }
}

std::vector<Move> sorted(std::vector<Move> moves)
{
    std::vector<std::size_t> places(moves.size());
    for (std::size_t i = 0; i < places.size(); ++i)
        places[i] = i;
    std::sort(places.begin(), places.end(), [&moves](std::size_t left, std::size_t right) {
        const Move &a = moves[left];
        const Move &b = moves[right];
        // without the milestone's date a day of its own comes before none
        if (a.latestStart.has_value() != b.latestStart.has_value())
            return a.latestStart.has_value();
        if (a.latestStart && *a.latestStart != *b.latestStart)
            return *a.latestStart < *b.latestStart;
        if (a.chainDays != b.chainDays)
            return a.chainDays > b.chainDays;
        if (a.frees.size() != b.frees.size())
            return a.frees.size() > b.frees.size();
        if (const int order = a.subject.compare(b.subject); order != 0)
            return order < 0;
        if (a.kind != b.kind)
            return a.kind < b.kind;
        return left < right;
    });
    std::vector<Move> result;
    result.reserve(moves.size());
    for (const std::size_t place : places)
        result.push_back(std::move(moves[place]));
    return result;
}

std::vector<std::size_t> longestFrom(std::size_t start, std::size_t milestone, const Chain &chain,
                                     const Links &next)
{
    std::vector<char> on(next.taskCount(), 0);
    for (const std::size_t task : chain.tasks)
        on[task] = 1;
    std::vector<std::size_t> path{start};
    while (path.back() != milestone) {
        std::size_t longest = kNone;
        for (const std::size_t after : next[path.back()]) {
            if (on[after] && (longest == kNone || chain.tail[after] > chain.tail[longest]))
                longest = after;
        }
        path.push_back(longest);
    }
    return path;
}

} // namespace

HoldUps holdUps(const Network &network, std::size_t milestone)
{
    HoldUps result;
    result.milestone = milestone;
    if (milestone >= network.tasks.size()) {
        Q_ASSERT_X(false, "plan::holdUps", "no such task");
        return result;
    }
    if (network.tasks[milestone].done)
        return result;

    const Links waits = Links::waits(network, Links::Which::Open);
    const Links next = waits.turned();
    Chain chain = followChain(network, waits, next, milestone);
    if (chain.looped) {
        Q_ASSERT_X(false, "plan::holdUps", "the chain has a loop");
        return result;
    }

    std::size_t needs = 0;
    for (const std::size_t task : chain.tasks)
        needs += network.tasks[task].needs.size();
    MoveGatherer gatherer(needs + chain.tasks.size());
    std::size_t start = kNone;
    result.chainDays = -1;
    for (const std::size_t index : chain.tasks) {
        const Task &task = network.tasks[index];
        const int tail = chain.tail[index];
        int longest = -1; // of the moves of this task
        for (const LeafNeed &need : task.needs) {
            if (!need.met) {
                gatherer.add(need, index, tail);
                longest = std::max(longest, addDays(boundedDays(need.daysToMeet), tail));
            }
        }
        if (longest < 0 && waits[index].empty()) {
            gatherer.add(doMove(task, index, tail));
            longest = tail;
        }
        if (longest > result.chainDays) {
            result.chainDays = longest;
            start = index;
        }
    }

    std::vector<Move> moves = gatherer.take();
    const std::optional<QDate> date = network.tasks[milestone].date;
    for (Move &move : moves) {
        if (date && date->isValid())
            move.latestStart = date->addDays(-move.chainDays);
        if (move.by && (!move.latestStart || *move.by < *move.latestStart))
            move.latestStart = move.by;
    }
    fillFrees(moves, chain, waits);
    result.moves = sorted(std::move(moves));
    result.driving = longestFrom(start, milestone, chain, next);
    result.chain = std::move(chain.tasks);
    return result;
}

} // namespace ohmwright::plan
