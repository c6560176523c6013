// SPDX-License-Identifier: GPL-3.0-or-later
// Work beside the window's thread, one job at a time. A new job, or giving up, never waits: what is
// under way is told to stop and left to end by itself. Only the end of Beside waits for all of it.
#pragma once

#include "core/forecast/forecast.h"

#include <atomic>
#include <functional>
#include <memory>
#include <thread>
#include <vector>

namespace ohmwright::ui {

class Beside
{
public:
    Beside() = default;
    Beside(const Beside &) = delete;
    Beside &operator=(const Beside &) = delete;
    ~Beside();

    // Gives up what is under way. The work must look at the watch now and then.
    void start(std::function<void(const forecast::Watch &)> work);
    void giveUp();
    [[nodiscard]] int samplesDone() const; // by the last job started

private:
    struct Job
    {
        std::atomic<bool> cancelled = false;
        std::atomic<bool> ended = false;
        std::atomic<int> samplesDone = 0;
        std::thread thread;
    };
    void reap();

    std::vector<std::unique_ptr<Job>> m_jobs; // the last one is the newest; the others are given up
};

} // namespace ohmwright::ui
