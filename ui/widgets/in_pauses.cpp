// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/in_pauses.h"

#include <QElapsedTimer>

#include <utility>

namespace ohmwright::ui {

namespace {

// Shorter than anybody notices while typing.
constexpr int kMilliseconds = 8;

} // namespace

InPauses::InPauses(QObject *parent) : QObject(parent)
{
    connect(&m_pause, &QTimer::timeout, this, &InPauses::work);
}

void InPauses::start(std::function<bool()> step, std::function<void()> whenDone,
                     std::chrono::milliseconds still)
{
    m_step = std::move(step);
    m_whenDone = std::move(whenDone);
    m_pause.start(still);
}

void InPauses::work()
{
    if (m_pause.interval() > 0)
        m_pause.setInterval(0);
    QElapsedTimer taken;
    taken.start();
    while (m_step())
        if (taken.elapsed() >= kMilliseconds)
            return;
    m_pause.stop();
    // it may start the next
    const std::function<void()> whenDone = m_whenDone;
    whenDone();
}

} // namespace ohmwright::ui
