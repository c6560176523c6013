// SPDX-License-Identifier: GPL-3.0-or-later
// The build-order chart with 2,000 tasks: a frame while it is dragged about, near and far, by chain
// and by date; a turn of the wheel; and laying it out. Offscreen, 1280 by 800.
#include "tests/core/plan/loom_networks.h"
#include "ui/build_order/loom_view.h"

#include <QApplication>
#include <QScrollBar>

#include <benchmark/benchmark.h>

namespace ohmwright::bench {
namespace {

constexpr std::size_t kTasks = 2000;

struct OpenChart
{
    explicit OpenChart(plan::LoomBy by)
    {
        network = plan::randomNetwork(11, kTasks, 14, 12);
        view.resize(1280, 800);
        view.setNetwork(network, plan::inventedForecast(network));
        view.setBy(by);
        view.show();
        qApp->processEvents();
    }
    plan::Network network;
    ui::LoomView view;
};

plan::LoomBy byOf(const benchmark::State &state)
{
    return state.range(0) == 0 ? plan::LoomBy::Chain : plan::LoomBy::Date;
}

// One frame: some pixels on, all painted. range(1): zoom in percent.
void dragChart(benchmark::State &state)
{
    OpenChart chart(byOf(state));
    chart.view.setZoom(static_cast<double>(state.range(1)) / 100);
    QScrollBar *along = chart.view.horizontalScrollBar();
    QScrollBar *down = chart.view.verticalScrollBar();
    along->setValue(along->maximum() / 3);
    down->setValue(down->maximum() / 3);
    int step = 11;
    for (auto _ : state) {
        if (along->value() + step > along->maximum() || along->value() + step < 0)
            step = -step;
        along->setValue(along->value() + step);
        down->setValue(down->value() + (step > 0 ? 3 : -3));
        chart.view.viewport()->repaint();
    }
}
BENCHMARK(dragChart)->ArgsProduct({{0, 1}, {100, 50, 20}})->Unit(benchmark::kMillisecond);

void zoomChart(benchmark::State &state)
{
    OpenChart chart(byOf(state));
    bool in = false;
    for (auto _ : state) {
        chart.view.setZoom(in ? 0.5 : 0.6);
        in = !in;
        chart.view.viewport()->repaint();
    }
}
BENCHMARK(zoomChart)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void layOutChart(benchmark::State &state)
{
    const plan::Network network = plan::randomNetwork(11, kTasks, 14, 12);
    const plan::LoomFacts facts = plan::inventedForecast(network);
    plan::LoomOptions options;
    options.by = byOf(state);
    for (auto _ : state)
        benchmark::DoNotOptimize(plan::layOutLoom(network, facts, {}, options));
}
BENCHMARK(layOutChart)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace ohmwright::bench
