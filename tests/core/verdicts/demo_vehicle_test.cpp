// SPDX-License-Identifier: GPL-3.0-or-later
// The demo book through the judges of the vehicle: every check of them is there, and each input it
// lacks can be filled in. With OHMWRIGHT_TELL_CHECKS set, the verdicts are printed.
#include "core/verdicts/judge_book.h"
#include "core/verdicts/judges.h"
#include "tests/support/demo_book.h"
#include "tests/support/test_book.h"

#include <algorithm>
#include <iostream>

namespace ohmwright {
namespace {

void tell(const Check &check)
{
    std::cout << check.sentence.toStdString() << "\n    " << check.result.toStdString() << "\n";
    for (const Comparison &c : check.comparisons)
        std::cout << "      " << wordOf(c.verdict).toStdString() << ": " << c.what.toStdString()
                  << " " << c.value.toStdString() << " " << c.relation.toStdString() << " "
                  << c.limit.toStdString() << " (" << c.limitFrom.toStdString() << ")\n";
    for (const QStringList &list : {check.unknowns, check.doubts, check.refusals})
        for (const QString &line : list)
            std::cout << "      - " << line.toStdString() << "\n";
}

TEST(DemoVehicle, HasEveryCheckAndAnAddressForEachInput)
{
    const Records records = demoRecords();
    const BookInputs inputs(records, QDate(2026, 11, 23));
    for (const Judge &judge : vehicleJudges()) {
        const std::vector<Check> checks = judge.judge(inputs);
        EXPECT_FALSE(checks.empty()) << judge.check;
        for (const Check &check : checks) {
            EXPECT_EQ(check.id.toStdString(), judge.check);
            EXPECT_TRUE(check.refusals.isEmpty())
                << check.title.toStdString() << ": " << check.refusals.join(u' ').toStdString();
            for (const CheckInput &input : check.inputs) {
                const QString &field = input.origin.field;
                EXPECT_TRUE(field.isEmpty() || parseInputAddress(field)) << field.toStdString();
            }
            if (qEnvironmentVariableIsSet("OHMWRIGHT_TELL_CHECKS"))
                tell(check);
        }
    }
}

// What the document says a book takes in, and the checks of the book are those of the document.
TEST(DemoVehicle, IsTheSameInABook)
{
    const Records records = demoRecords();
    TestBook book;
    OHMWRIGHT_ASSERT_OK(
        book->edit(QStringLiteral("load"), [&] { return book->replaceAll(records); }));
    const QDate today(2026, 11, 23);
    EXPECT_EQ(judgeBook(book.records(), today), judgeBook(records, today));
}

// Without the tables a judge does not name it must say the same: else an edit there would leave
// what is shown as it was.
TEST(DemoVehicle, JudgesNameEveryTableTheyRead)
{
    const Records records = demoRecords();
    const QDate today(2026, 11, 23);
    for (const Judge &judge : vehicleJudges()) {
        Records fewer = records;
        fewer.forEachTable([&]<class R>(Table<R> &table) {
            const std::string_view name = RecordTraits<R>::table;
            if (std::find(judge.reads.begin(), judge.reads.end(), name) == judge.reads.end())
                table.assign({});
        });
        EXPECT_EQ(judge.judge(BookInputs(fewer, today)), judge.judge(BookInputs(records, today)))
            << judge.check;
    }
}

} // namespace
} // namespace ohmwright
