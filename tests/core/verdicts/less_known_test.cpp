// SPDX-License-Identifier: GPL-3.0-or-later
// Whoever forgets a rating is never told better: with all that is recorded of one figure of one
// part taken out of the invented van, no check comes to hold or be tight that was worse before, and
// none is gone. A failure may become unknown: what it failed by is no longer known.
// first: g++ 12 takes its enumerators for shadows of the quantities' types
#include "core/parts/figures.h"
#include "core/verdicts/judge_book.h"
#include "tests/support/demo_book.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

namespace ohmwright {
namespace {

using Names = std::pair<QString, QString>; // of a check: its id and what it is about

std::map<Names, Verdict> verdictsOf(const Records &records)
{
    std::map<Names, Verdict> verdicts;
    for (const Check &check : judgeBook(records, QDate(2026, 11, 20)))
        verdicts[{check.id, check.subject}] = check.verdict;
    return verdicts;
}

Records without(const Records &records, const Part &part, const FigureName &figure)
{
    Records less = records;
    std::vector<Rating> kept;
    for (const Rating &rating : records.all<Rating>()) {
        const bool its = rating.part == part.id || (part.type && rating.type == *part.type);
        if (!its || figureOf(rating) != figure)
            kept.push_back(rating);
    }
    less.all<Rating>().assign(std::move(kept));
    return less;
}

TEST(LessKnown, ARatingForgottenNeverMakesAVerdictBetter)
{
    const Records records = demoRecords();
    const std::map<Names, Verdict> before = verdictsOf(records);
    for (const Part &part : records.all<Part>()) {
        std::set<FigureName> figures;
        for (const Rating &rating : records.of<Rating>(part.id))
            figures.insert(figureOf(rating));
        if (part.type)
            for (const Rating &rating : records.of<Rating>(*part.type))
                figures.insert(figureOf(rating));
        for (const FigureName &figure : figures) {
            const std::map<Names, Verdict> after = verdictsOf(without(records, part, figure));
            for (const auto &[names, verdict] : before) {
                const QString told =
                    QStringLiteral("%1 of %2, without %3 of %4")
                        .arg(names.first, names.second, describe(figure), part.name);
                const auto found = after.find(names);
                if (found == after.end()) {
                    ADD_FAILURE() << "gone: " << told.toStdString();
                } else if (found->second <= Verdict::Tight) {
                    EXPECT_GE(found->second, verdict) << told.toStdString();
                }
            }
        }
    }
}

} // namespace
} // namespace ohmwright
