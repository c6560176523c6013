// SPDX-License-Identifier: GPL-3.0-or-later
// A second motor, inverter or gearbox in the invented van: whether it is like the first or nothing
// is known of it, no check gets better by it, none goes away.
#include "core/verdicts/judge_book.h"
#include "tests/support/demo_book.h"
#include "tests/support/test_book.h"

#include <algorithm>

namespace ohmwright {
namespace {

constexpr std::int64_t kApart = 1'000'000; // ids of copies, above all there are

// The rows of the part, once more for its copy.
template <class R, class IsOf>
void copyRows(Records &records, IsOf isOf, Id<Part> copy)
{
    std::vector<R> rows = records.all<R>().rows();
    const std::vector<R> old = rows;
    for (R row : old) {
        if (!isOf(row))
            continue;
        row.id = Id<R>(row.id.value() + kApart);
        if constexpr (requires { row.key; })
            row.key += QStringLiteral("-second");
        row.part = copy;
        rows.push_back(row);
    }
    records.all<R>().assign(std::move(rows));
}

Records withSecond(const Records &book, PartRole role, bool isAlike)
{
    Records records = book;
    std::vector<Part> parts = records.all<Part>().rows();
    const auto first =
        std::ranges::find_if(parts, [role](const Part &part) { return part.role == role; });
    EXPECT_NE(first, parts.end());
    const Id<Part> of = first->id;
    Part second = *first;
    second.id = Id<Part>(of.value() + kApart);
    second.key += QStringLiteral("-second");
    second.name += QStringLiteral(", the second");
    if (!isAlike)
        second.type.reset();
    parts.push_back(second);
    records.all<Part>().assign(std::move(parts));
    const auto isOf = [of](const auto &row) {
        return row.part == of;
    };
    copyRows<Connection>(records, isOf, second.id);
    if (isAlike) {
        copyRows<Rating>(records, isOf, second.id);
        copyRows<CheckFigure>(records, isOf, second.id);
    }
    return records;
}

TEST(ASecondPart, MakesNoVerdictBetter)
{
    const Records book = demoRecords();
    const QDate today(2026, 11, 23);
    const std::vector<Check> before = judgeBook(book, today);
    for (const PartRole role : {PartRole::Motor, PartRole::Inverter, PartRole::Gearbox})
        for (const bool isAlike : {true, false}) {
            const std::vector<Check> after = judgeBook(withSecond(book, role, isAlike), today);
            for (const Check &check : before) {
                const auto now = std::ranges::find_if(after, [&](const Check &other) {
                    return other.id == check.id && other.subject == check.subject;
                });
                ASSERT_NE(now, after.end()) << check.title.toStdString();
                EXPECT_GE(now->verdict, check.verdict)
                    << wordOf(role).toStdString() << (isAlike ? ", alike: " : ", unknown: ")
                    << check.title.toStdString() << ": " << check.sentence.toStdString() << " then "
                    << now->sentence.toStdString();
            }
        }
}

} // namespace
} // namespace ohmwright
