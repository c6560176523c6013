// SPDX-License-Identifier: GPL-3.0-or-later
// All checks of the demo's van (a usual book), the same with 2,000 parts more, what an edit costs
// that touches none of them or some, and a drive cycle at ten steps a second beside numpy.
#include "core/checks/cycle_energy.h"
#include "core/interchange/interchange.h"
#include "core/quantity/invariant.h"
#include "core/verdicts/judge_book.h"
#include "core/verdicts/turning_points.h"

#include <QFile>
#include <QProcess>

#include <benchmark/benchmark.h>

namespace ohmwright::bench {
namespace {

const QDate kToday(2026, 9, 6);

Records van()
{
    QFile file(QStringLiteral(OHMWRIGHT_SOURCE_DIR "/demo/build.json"));
    require(file.open(QIODevice::ReadOnly), "the demo is there");
    std::int64_t last = 0;
    const Result<Records> records = parse(file.readAll(), [&last] { return ++last; });
    require(records.has_value(), "the demo can be read");
    return *records;
}

// Two thousand more relays in the heater, each with its own ratings and on the traction circuit.
Records largeVan()
{
    Records records = van();
    const Part *relay = records.byKey<Part>(QStringLiteral("heater-relay"));
    require(relay != nullptr, "the demo has its relay");
    const Part original = *relay;
    const auto connections = records.of<Connection>(original.id);
    const std::vector<Connection> on(connections.begin(), connections.end());
    std::vector<Part> parts = records.all<Part>().rows();
    std::vector<Connection> all = records.all<Connection>().rows();
    std::vector<Rating> ratings = records.all<Rating>().rows();
    std::int64_t id = 1'000'000;
    for (int i = 0; i < 2000; ++i) {
        Part part = original;
        part.id = Id<Part>(++id);
        part.key = QStringLiteral("relay-%1").arg(i);
        parts.push_back(part);
        for (Connection connection : on) {
            connection.id = Id<Connection>(++id);
            connection.part = part.id;
            all.push_back(connection);
        }
        Rating rating;
        rating.id = Id<Rating>(++id);
        rating.part = part.id;
        rating.current = CurrentKind::Dc;
        rating.value = Amount(600, *Unit::fromSymbol(u"V"));
        rating.evidence = Evidence::Datasheet;
        ratings.push_back(rating);
    }
    records.all<Part>().assign(std::move(parts));
    records.all<Connection>().assign(std::move(all));
    records.all<Rating>().assign(std::move(ratings));
    return records;
}

void judgeWholeBook(benchmark::State &state)
{
    const Records records = state.range(0) == 0 ? van() : largeVan();
    std::size_t checks = 0;
    for (auto _ : state)
        checks = judgeBook(records, kToday).size();
    state.counters["checks"] = static_cast<double>(checks);
}
BENCHMARK(judgeWholeBook)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

// An edit of one table, judged anew by what reads it.
void judgeAfterAnEdit(benchmark::State &state, const char *table)
{
    const Records records = state.range(0) == 0 ? van() : largeVan();
    BookJudge judge;
    (void)judge.checks(records, kToday);
    Change change;
    change.rows[table] = {};
    for (auto _ : state) {
        judge.add(change);
        benchmark::DoNotOptimize(judge.checks(records, kToday).size());
    }
}
BENCHMARK_CAPTURE(judgeAfterAnEdit, ofAPayment, "payment")
    ->Arg(0)
    ->Arg(1)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(judgeAfterAnEdit, ofAMass, "mass_entry")
    ->Arg(0)
    ->Arg(1)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(judgeAfterAnEdit, ofARating, "rating")
    ->Arg(0)
    ->Arg(1)
    ->Unit(benchmark::kMillisecond);

// What would turn the drive's verdict: the longest of the demo's searches; in the window it is cut
// into pauses.
void searchWhatTurnsIt(benchmark::State &state)
{
    const Records records = van();
    const Check check = judgeBook(records, kToday, "drive").front();
    for (auto _ : state)
        benchmark::DoNotOptimize(turningPoints(records, kToday, check).size());
}
BENCHMARK(searchWhatTurnsIt)->Unit(benchmark::kMillisecond);

RoadLoad roadLoad()
{
    RoadLoadFigures figures;
    figures.mass = kilograms(1500);
    figures.rollingCoefficient = 0.01;
    figures.dragCoefficient = 0.36;
    figures.frontalArea = Area::fromSi(2.6);
    figures.rotating = 1.05;
    return roadLoadOf(figures);
}

void cycleAtTenHertz(benchmark::State &state)
{
    const DriveCycle &cycle = publishedDriveCycle(QStringLiteral("wltc-3b"));
    PackSide pack;
    pack.efficiency = 0.85;
    pack.auxiliaries = watts(400);
    for (auto _ : state)
        benchmark::DoNotOptimize(
            energyOver(cycle, roadLoad(), pack, Duration::fromSi(0.1)).net.si());
}
BENCHMARK(cycleAtTenHertz)->Unit(benchmark::kMillisecond);

// The same sums by numpy, with the cycle already in an array; its own clock.
void numpyOnTheSameCycle(benchmark::State &state)
{
    const DriveCycle &cycle = publishedDriveCycle(QStringLiteral("wltc-3b"));
    QByteArray times, speeds;
    for (const auto &[time, speed] : cycle.points) {
        times += QByteArray::number(time.si()) + ',';
        speeds += QByteArray::number(speed.si()) + ',';
    }
    const QByteArray script =
        "import numpy as np, time\n"
        "T=np.array([" +
        times + "]); V=np.array([" + speeds +
        "])\n"
        "s=time.perf_counter()\n"
        "t=np.arange(0,T[-1]+0.05,0.1); v=np.interp(t,T,V)\n"
        "m=(v[1:]+v[:-1])/2; a=np.diff(v)/0.1\n"
        "f=np.where(m>0,1500*9.80665*0.01,0)+0.5*1.2*0.36*2.6*m*m+1500*1.05*a\n"
        "p=f*m; e=np.sum(np.where(p>0,p/0.85,0)+400)*0.1\n"
        "print(time.perf_counter()-s)\n";
    for (auto _ : state) {
        QProcess python;
        python.start(QStringLiteral("/usr/bin/python3"),
                     {QStringLiteral("-c"), QString::fromLatin1(script)});
        python.waitForFinished();
        state.SetIterationTime(python.readAllStandardOutput().trimmed().toDouble());
    }
}
BENCHMARK(numpyOnTheSameCycle)->UseManualTime()->Iterations(3)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace ohmwright::bench
