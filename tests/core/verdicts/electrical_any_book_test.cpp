// SPDX-License-Identifier: GPL-3.0-or-later
// Whatever a book says, its electrical checks can be worked: books made by chance, and the invented
// van with figures, ratings and layout spoiled by chance. An edit of a table no judge says it reads
// changes nothing it says.
#include "core/interchange/interchange.h"
#include "core/verdicts/judges.h"
#include "tests/support/chance.h"
#include "tests/support/generated_book.h"
#include "tests/support/test_book.h"

#include <QElapsedTimer>
#include <QFile>

#include <iostream>

namespace ohmwright {
namespace {

const QDate kToday(2026, 11, 20);

std::size_t judgeAll(const Records &records)
{
    const BookInputs in(records, kToday);
    std::size_t count = 0;
    for (const Judge &judge : electricalJudges())
        for (const Check &check : judge.judge(in)) {
            EXPECT_EQ(check.id,
                      QString::fromUtf8(judge.check.data(), qsizetype(judge.check.size())));
            EXPECT_FALSE(check.title.isEmpty());
            ++count;
        }
    return count;
}

Records demo()
{
    QFile file(QStringLiteral(OHMWRIGHT_SOURCE_DIR "/demo/build.json"));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    std::int64_t lastId = 0;
    return *parse(file.readAll(), [&lastId] { return ++lastId; });
}

TEST(ElectricalAnyBook, BooksMadeByChanceAreJudged)
{
    std::size_t checks = 0;
    for (std::uint32_t seed = 1; seed <= 60; ++seed)
        checks += judgeAll(
            generateBook(seed, seed % 2 ? BookSize::small() : BookSize::tiny(), Texts::Hostile)
                .records);
    EXPECT_GT(checks, 100U);
}

void spoil(std::optional<Amount> &value, Chance &chance)
{
    if (!value)
        return;
    switch (chance.below(6)) {
    case 0:
        value.reset();
        break;
    case 1:
        value = Amount(0, value->unit());
        break;
    case 2:
        value = Amount(-value->number(), value->unit());
        break;
    case 3:
        value = Amount(value->number() * 1e9, value->unit());
        break;
    case 4:
        value = Amount(value->number() * 1e-9, value->unit());
        break;
    default:
        value = Amount(value->number() * 1.5, value->unit());
    }
}

template <class R>
void spoilSome(Records &records, std::optional<Amount> R::*member, Chance &chance)
{
    std::vector<R> rows = records.all<R>().rows();
    for (R &row : rows)
        if (chance.below(10) == 0)
            spoil(row.*member, chance);
    records.all<R>().assign(std::move(rows));
}

TEST(ElectricalAnyBook, SpoiledFiguresAreToldNotStumbledOver)
{
    const Records whole = demo();
    const std::size_t usual = judgeAll(whole);
    Chance chance(7);
    for (int i = 0; i < 150; ++i) {
        Records records = whole;
        spoilSome(records, &CheckFigure::value, chance);
        spoilSome(records, &Rating::value, chance);
        spoilSome(records, &Branch::continuousCurrent, chance);
        spoilSome(records, &Branch::conductorSize, chance);
        spoilSome(records, &Circuit::worstVoltage, chance);
        EXPECT_LE(judgeAll(records), usual + 2);
    }
}

TEST(ElectricalAnyBook, AJudgeReadsNoTableItDoesNotName)
{
    const Records whole = demo();
    const BookInputs in(whole, kToday);
    for (const Judge &judge : electricalJudges()) {
        Records less = whole;
        less.forEachTable([&]<class R>(Table<R> &table) {
            const bool one = std::is_same_v<R, Build> || std::is_same_v<R, Vehicle>;
            const std::string_view name = RecordTraits<R>::table;
            if (!one && std::ranges::find(judge.reads, name) == judge.reads.end())
                table.assign({});
        });
        EXPECT_EQ(judge.judge(BookInputs(less, kToday)), judge.judge(in)) << judge.check;
    }
}

// Not held to anything: said for whoever changes the judges.
TEST(ElectricalAnyBook, TellsHowLongItTakes)
{
    const auto told = [](const char *what, const Records &records) {
        QElapsedTimer timer;
        timer.start();
        const std::size_t checks = judgeAll(records);
        std::cout << what << ": " << checks << " checks in "
                  << static_cast<double>(timer.nsecsElapsed()) / 1e6 << " ms\n";
    };
    told("the invented van", demo());
    BookSize size = BookSize::usual();
    told("a usual book", generateBook(3, size, Texts::Plain).records);
    size.parts = 2000;
    size.circuits = 6;
    size.branches = 40;
    told("2,000 parts", generateBook(3, size, Texts::Plain).records);
}

} // namespace
} // namespace ohmwright
