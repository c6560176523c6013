// SPDX-License-Identifier: GPL-3.0-or-later
#include "resources/resources.h"

#include <QApplication>

#include <benchmark/benchmark.h>

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    benchmark::Initialize(&argc, argv);
    ohmwright::registerResources();
    const QApplication app(argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
