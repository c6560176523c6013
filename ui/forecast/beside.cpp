// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/forecast/beside.h"

#include <algorithm>

namespace ohmwright::ui {

Beside::~Beside()
{
    giveUp();
    for (const auto &job : m_jobs)
        job->thread.join();
}

void Beside::start(std::function<void(const forecast::Watch &)> work)
{
    giveUp();
    reap();
    auto job = std::make_unique<Job>();
    Job *own = job.get();
    own->thread = std::thread([own, work = std::move(work)]() mutable {
        work({&own->cancelled, &own->samplesDone});
        work = nullptr; // what it holds goes here, not in the window's thread
        own->ended = true;
    });
    m_jobs.push_back(std::move(job));
}

void Beside::giveUp()
{
    for (const auto &job : m_jobs)
        job->cancelled = true;
}

void Beside::reap()
{
    const auto ended = std::partition(m_jobs.begin(), m_jobs.end(),
                                      [](const std::unique_ptr<Job> &job) { return !job->ended; });
    for (auto job = ended; job != m_jobs.end(); ++job)
        (*job)->thread.join();
    m_jobs.erase(ended, m_jobs.end());
}

int Beside::samplesDone() const
{
    return m_jobs.empty() ? 0 : m_jobs.back()->samplesDone.load();
}

} // namespace ohmwright::ui
