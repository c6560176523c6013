// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/interchange.h"
#include "core/parts/consistency.h"
#include "core/records/rules.h"
#include "tests/core/interchange/counting_ids.h"
#include "tests/support/generated_book.h"

#include <gtest/gtest.h>

#include <set>

namespace ohmwright {
namespace {

constexpr std::uint32_t kBooks = 60;

std::string told(const Problem &problem)
{
    return problem.sentence.toStdString() + " at " + problem.where.toStdString();
}

TEST(RoundTrip, generatedBooksKeepEveryRule)
{
    for (std::uint32_t seed = 0; seed < kBooks; ++seed) {
        const GeneratedBook generated = generateBook(seed);
        generated.records.forEachTable([&](const auto &table) {
            EXPECT_GT(table.size(), 0U);
            for (const auto &row : table) {
                const Outcome fine = checkRecord(row);
                EXPECT_TRUE(fine) << seed << " " << told(fine.error());
            }
        });
        for (const Inconsistency &found : findInconsistencies(generated.records))
            ADD_FAILURE() << seed << " " << found.table << " " << found.sentence.toStdString();
    }
}

TEST(RoundTrip, generatedBooksUseEveryUnitAndEveryCurrency)
{
    std::set<QString> units;
    std::set<QString> currencies;
    const auto visit = [&]<class T>(const T &value) {
        if constexpr (std::is_same_v<T, std::optional<Amount>>) {
            if (value)
                units.insert(value->unit().symbol());
        } else if constexpr (std::is_same_v<T, Money>) {
            currencies.insert(value.currency().code());
        } else if constexpr (std::is_same_v<T, std::optional<Money>>) {
            if (value)
                currencies.insert(value->currency().code());
        }
    };
    for (std::uint32_t seed = 0; seed < kBooks; ++seed)
        generateBook(seed).records.forEachTable([&]<class R>(const Table<R> &table) {
            for (const R &row : table)
                forEachField<R>([&](const auto &f) { visit(row.*f.member); });
        });
    for (const UnitInfo &unit : Unit::all())
        EXPECT_TRUE(units.contains(unit.symbol)) << unit.symbol.toStdString();
    for (const Currency &currency : Currency::all())
        EXPECT_TRUE(currencies.contains(currency.code())) << currency.code().toStdString();
}

TEST(RoundTrip, whatIsReadIsWhatWasWritten)
{
    for (std::uint32_t seed = 0; seed < kBooks; ++seed) {
        const GeneratedBook generated = generateBook(seed);
        const Result<Records> read = parse(dump(generated.records), countingIds());
        ASSERT_TRUE(read) << seed << " " << told(read.error());
        const Records before = withPlainIds(generated.records);
        const Records after = withPlainIds(*read);
        before.forEachTable([&]<class R>(const Table<R> &table) {
            EXPECT_TRUE(table == after.all<R>()) << seed << " " << RecordTraits<R>::table;
        });
    }
}

TEST(RoundTrip, writingWhatWasReadGivesTheSameBytes)
{
    for (std::uint32_t seed = 0; seed < kBooks; ++seed) {
        const QByteArray first = dump(generateBook(seed).records);
        const Result<Records> read = parse(first, countingIds());
        ASSERT_TRUE(read) << seed << " " << told(read.error());
        EXPECT_TRUE(dump(*read) == first) << seed;
    }
}

TEST(RoundTrip, positionsWithGapsAreClosedUp)
{
    Records records = generateBook(1).records;
    std::vector<PartMove> moves = records.all<PartMove>().rows();
    for (PartMove &move : moves)
        move.position = move.position * 3 + 7;
    records.all<PartMove>().assign(std::move(moves));
    const Result<Records> read = parse(dump(records), countingIds());
    ASSERT_TRUE(read) << told(read.error());
    EXPECT_TRUE(withPlainIds(*read).all<PartMove>() == withPlainIds(records).all<PartMove>());
}

TEST(RoundTrip, aDumpIsIndentedUtf8ThatEndsWithANewline)
{
    Records records = generateBook(2).records;
    Build build = records.build();
    build.title = QStringLiteral("Ωmega “van”");
    records.all<Build>().put(build);
    const QByteArray bytes = dump(records);
    EXPECT_TRUE(bytes.startsWith("{\n  \"format\": \"ohmwright\",\n  \"version\": 1,\n"
                                 "  \"build\": {\n    \"title\": \"Ωmega “van”\",\n"));
    EXPECT_TRUE(bytes.endsWith("}\n"));
}

TEST(RoundTrip, idsAreNeverGivenTwiceAndStayBeforeTheBooksOwn)
{
    const QDateTime now(QDate(2026, 3, 1), QTime(12, 0), Qt::UTC);
    const IdSource next = idsBefore(now);
    std::int64_t last = 0;
    for (int i = 0; i < 1'000'000; ++i) {
        const std::int64_t id = next();
        ASSERT_GT(id, last);
        last = id;
    }
    EXPECT_LT(last, now.toMSecsSinceEpoch() << 20);
}

} // namespace
} // namespace ohmwright
