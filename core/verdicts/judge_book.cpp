// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/judge_book.h"

#include "core/verdicts/judges.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <tuple>
#include <utility>

namespace ohmwright {

namespace {

std::array<std::span<const Judge>, 2> allJudges()
{
    return {electricalJudges(), vehicleJudges()};
}

auto danger(Verdict verdict)
{
    return std::ranges::find(kWorstFirst, verdict) - kWorstFirst.begin();
}

bool isTouched(const Judge &judge, const Change &change)
{
    return change.everything ||
           std::any_of(judge.reads.begin(), judge.reads.end(), [&](std::string_view table) {
               return change.rows.contains(std::string(table));
           });
}

} // namespace

std::vector<Check> judgeBook(const BookInputs &inputs, std::string_view only)
{
    std::vector<Check> checks;
    for (const std::span<const Judge> judges : allJudges())
        for (const Judge &judge : judges)
            if (only.empty() || judge.check == only)
                std::ranges::move(judge.judge(inputs), std::back_inserter(checks));
    return checks;
}

std::vector<Check> judgeBook(const Records &records, QDate today, std::string_view only)
{
    return judgeBook(BookInputs(records, today), only);
}

std::vector<std::string_view> checkIds()
{
    std::vector<std::string_view> ids;
    for (const std::span<const Judge> judges : allJudges())
        for (const Judge &judge : judges)
            ids.push_back(judge.check);
    return ids;
}

void sortByDanger(std::vector<Check> &checks)
{
    std::stable_sort(checks.begin(), checks.end(), [](const Check &a, const Check &b) {
        return std::tuple(a.protects, danger(a.verdict), a.margin.value_or(0)) <
               std::tuple(b.protects, danger(b.verdict), b.margin.value_or(0));
    });
}

const std::vector<Check> &BookJudge::checks(const Records &records, QDate today)
{
    // a choice decides which parts are of the build at all
    if (today != m_on || m_pending.touches(RecordTraits<Choice>::table) ||
        m_pending.touches(RecordTraits<ChoiceOption>::table))
        m_pending.everything = true;
    m_on = today;
    if (!m_pending.everything && m_pending.rows.empty())
        return m_all;
    const BookInputs inputs(records, today);
    // what stays is moved over: of a large book, checks have thousands of lines
    std::vector<Check> before = std::exchange(m_all, {});
    std::vector<std::ptrdiff_t> ofJudges = std::exchange(m_ofJudges, {});
    auto stays = std::make_move_iterator(before.begin());
    const auto forget = [](auto from, std::ptrdiff_t count) { // its memory serves what comes
        std::fill_n(from.base(), count, Check());
    };
    std::size_t at = 0;
    for (const std::span<const Judge> judges : allJudges())
        for (const Judge &judge : judges) {
            const std::ptrdiff_t had = at < ofJudges.size() ? ofJudges[at] : 0;
            ++at;
            if (isTouched(judge, m_pending)) {
                forget(stays, had);
                std::vector<Check> judged = judge.judge(inputs);
                m_ofJudges.push_back(std::ssize(judged));
                std::ranges::move(judged, std::back_inserter(m_all));
            } else {
                m_ofJudges.push_back(had);
                m_all.insert(m_all.end(), stays, stays + had);
            }
            stays += had;
        }
    m_pending = {};
    return m_all;
}

} // namespace ohmwright
