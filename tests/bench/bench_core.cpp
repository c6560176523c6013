// SPDX-License-Identifier: GPL-3.0-or-later
// Open, edit, hold-ups, budget, filter, dump: on a usual book and on one twenty and more times
// that, beside plain sqlite3 on the same file and networkx on the same graph.
#include "core/book/book.h"
#include "core/budget/budget.h"
#include "core/cards/record_kind.h"
#include "core/forecast/forecast.h"
#include "core/interchange/interchange.h"
#include "core/parts/questions.h"
#include "core/plan/plan_view.h"
#include "tests/bench/bench_book.h"
#include "tests/support/fixed_clock.h"
#include "ui/shell/book_find.h"

#include <QProcess>
#include <QTemporaryDir>

#include <benchmark/benchmark.h>
#include <sqlite3.h>

namespace ohmwright::bench {
namespace {

Size sizeOf(const benchmark::State &state)
{
    return state.range(0) == 0 ? kUsual : kLarge;
}

// One file a size, made once.
QString bookFile(Size size)
{
    static QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("%1.ohmwright").arg(size.parts));
    if (!QFile::exists(path))
        writeBook(path, size);
    return path;
}

void openBook(benchmark::State &state)
{
    const FixedClock clock;
    const QString path = bookFile(sizeOf(state));
    for (auto _ : state)
        benchmark::DoNotOptimize(Book::open(path, clock));
}
BENCHMARK(openBook)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

// The same rows through sqlite3 alone, nothing made of them.
void plainSqliteReadsAllRows(benchmark::State &state)
{
    const QByteArray path = bookFile(sizeOf(state)).toUtf8();
    for (auto _ : state) {
        sqlite3 *db = nullptr;
        sqlite3_open(path.constData(), &db);
        for (const char *table : {"part", "part_move", "rating", "connection", "purchase",
                                  "purchase_item", "task", "task_need"}) {
            sqlite3_stmt *s = nullptr;
            const QByteArray sql = QByteArray("SELECT * FROM ") + table;
            sqlite3_prepare_v2(db, sql.constData(), -1, &s, nullptr);
            while (sqlite3_step(s) == SQLITE_ROW)
                for (int c = 0; c < sqlite3_column_count(s); ++c)
                    benchmark::DoNotOptimize(sqlite3_column_text(s, c));
            sqlite3_finalize(s);
        }
        sqlite3_close(db);
    }
}
BENCHMARK(plainSqliteReadsAllRows)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void editOnePart(benchmark::State &state)
{
    const FixedClock clock;
    const auto book = Book::open(bookFile(sizeOf(state)), clock);
    Part part = (*book)->records().all<Part>().rows()[7];
    int n = 0;
    for (auto _ : state) {
        part.note = QString::number(++n);
        benchmark::DoNotOptimize(
            (*book)->edit(QStringLiteral("note"), [&] { return (*book)->update(part); }));
    }
}
BENCHMARK(editOnePart)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

// One row, one transaction, the same sync: what the disk itself takes.
void plainSqliteUpdatesOneRow(benchmark::State &state)
{
    const QByteArray path = bookFile(sizeOf(state)).toUtf8();
    sqlite3 *db = nullptr;
    sqlite3_open(path.constData(), &db);
    sqlite3_exec(db, "PRAGMA synchronous = EXTRA", nullptr, nullptr, nullptr);
    int n = 0;
    for (auto _ : state)
        sqlite3_exec(db,
                     ("UPDATE part SET note = '" + std::to_string(++n) +
                      "' WHERE rowid = (SELECT min(id) FROM part)")
                         .c_str(),
                     nullptr, nullptr, nullptr);
    sqlite3_close(db);
}
BENCHMARK(plainSqliteUpdatesOneRow)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void holdUpsOfNextMilestone(benchmark::State &state)
{
    const Records records = makeRecords(sizeOf(state));
    for (auto _ : state) {
        const plan::Network network = plan::networkOf(records, QDate(2026, 6, 15));
        benchmark::DoNotOptimize(plan::holdUps(network, *plan::nextMilestone(network)));
    }
}
BENCHMARK(holdUpsOfNextMilestone)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

// ancestors and longest path of the last milestone, as python3-networkx does them; its own clock,
// without the interpreter's start.
void networkxOnTheSameGraph(benchmark::State &state)
{
    const Records records = makeRecords(sizeOf(state));
    const plan::Network network = plan::networkOf(records, QDate(2026, 6, 15));
    QByteArray script = "import networkx as nx, time\ng = nx.DiGraph()\nedges = [";
    for (std::size_t i = 0; i < network.tasks.size(); ++i)
        for (const std::size_t before : network.tasks[i].after)
            script += "(" + QByteArray::number(static_cast<qulonglong>(before)) + "," +
                      QByteArray::number(static_cast<qulonglong>(i)) + "),";
    script += "]\ng.add_edges_from(edges, weight=1)\nt = time.perf_counter()\nnx.ancestors(g, " +
              QByteArray::number(static_cast<qulonglong>(network.tasks.size() - 1)) +
              ")\nnx.dag_longest_path(g)\nprint(time.perf_counter() - t)\n";
    for (auto _ : state) {
        QProcess python;
        python.start(QStringLiteral("/usr/bin/python3"),
                     {QStringLiteral("-c"), QString::fromLatin1(script)});
        python.waitForFinished();
        state.SetIterationTime(python.readAllStandardOutput().trimmed().toDouble());
    }
}
BENCHMARK(networkxOnTheSameGraph)
    ->Arg(0)
    ->Arg(1)
    ->UseManualTime()
    ->Iterations(3)
    ->Unit(benchmark::kMillisecond);

// 10,000 plays of the plan on one thread, of the usual book, of one with 200 tasks still to do (the
// aim is 250 ms), and 500 of the large one.
void forecastOfBook(benchmark::State &state)
{
    // half of the tasks of such a book are done
    const Records records =
        makeRecords(state.range(0) == 2 ? Size{.parts = 300, .tasks = 400} : sizeOf(state));
    const forecast::WorkPlan plan = forecast::workPlanOf(records, QDate(2026, 6, 15));
    forecast::Settings settings;
    settings.threads = 1;
    settings.samples = state.range(0) == 1 ? 500 : 10'000;
    const forecast::Simulation simulation(plan, settings);
    for (auto _ : state)
        benchmark::DoNotOptimize(simulation.run());
    state.counters["activities"] = static_cast<double>(plan.activities.size());
    state.counters["samples"] = settings.samples;
}
BENCHMARK(forecastOfBook)->Arg(0)->Arg(2)->Arg(1)->Unit(benchmark::kMillisecond);

void orderOfPriorityIsSearched(benchmark::State &state)
{
    const Records records = makeRecords(sizeOf(state));
    const forecast::WorkPlan plan = forecast::workPlanOf(records, QDate(2026, 6, 15));
    for (auto _ : state)
        benchmark::DoNotOptimize(forecast::Simulation(plan, {}).order());
}
BENCHMARK(orderOfPriorityIsSearched)->Arg(0)->Unit(benchmark::kMillisecond);

void budgetOfBook(benchmark::State &state)
{
    const Records records = makeRecords(sizeOf(state));
    for (auto _ : state)
        benchmark::DoNotOptimize(budgetOf(records, QDate(2026, 6, 15)));
}
BENCHMARK(budgetOfBook)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void openQuestionsOfBook(benchmark::State &state)
{
    const Records records = makeRecords(sizeOf(state));
    for (auto _ : state)
        benchmark::DoNotOptimize(openQuestions(records));
}
BENCHMARK(openQuestionsOfBook)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void findLineAnswers(benchmark::State &state)
{
    const FixedClock clock;
    const auto book = Book::open(bookFile(sizeOf(state)), clock);
    ui::BookFind find(**book);
    benchmark::DoNotOptimize(find.find(QStringLiteral("warm up")));
    for (auto _ : state)
        benchmark::DoNotOptimize(find.find(QStringLiteral("inverter shelf")));
}
BENCHMARK(findLineAnswers)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

// The first key after an edit: the answers are indexed anew.
void findLineAfterAnEdit(benchmark::State &state)
{
    const FixedClock clock;
    const auto book = Book::open(bookFile(sizeOf(state)), clock);
    ui::BookFind find(**book);
    Part part = (*book)->records().all<Part>().rows()[7];
    int n = 0;
    for (auto _ : state) {
        state.PauseTiming();
        part.note = QString::number(++n);
        benchmark::DoNotOptimize(
            (*book)->edit(QStringLiteral("note"), [&] { return (*book)->update(part); }));
        state.ResumeTiming();
        benchmark::DoNotOptimize(find.find(QStringLiteral("i")));
    }
}
BENCHMARK(findLineAfterAnEdit)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void saveACard(benchmark::State &state)
{
    const FixedClock clock;
    const auto book = Book::open(bookFile(sizeOf(state)), clock);
    const RecordKind &sellers = *recordKind("seller");
    const std::int64_t id = sellers.ids((*book)->records()).front();
    int n = 0;
    for (auto _ : state)
        benchmark::DoNotOptimize(
            sellers.save(**book, id, {{QStringLiteral("note"), QString::number(++n)}}, {}));
}
BENCHMARK(saveACard)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void dumpToJson(benchmark::State &state)
{
    const Records records = makeRecords(sizeOf(state));
    for (auto _ : state)
        benchmark::DoNotOptimize(dump(records));
}
BENCHMARK(dumpToJson)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace ohmwright::bench
