// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>

#include <benchmark/benchmark.h>

#include "resources/resources.h"

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    benchmark::Initialize(&argc, argv);
    ohmwright::registerResources();
    const QApplication app(argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
