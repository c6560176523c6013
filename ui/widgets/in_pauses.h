// SPDX-License-Identifier: GPL-3.0-or-later
// InPauses: long work done a few milliseconds at a time in the pauses between events, on the
// window's own thread, so that it may read the book and nobody waits for it.
//
//     m_search.start([this] { return step(); }, [this] { tell(); });
#pragma once

#include <QTimer>

#include <chrono>
#include <functional>

namespace ohmwright::ui {

class InPauses : public QObject
{
    Q_OBJECT

public:
    explicit InPauses(QObject *parent = nullptr);

    // `step` does a little and says whether more is left; `whenDone` follows the last one. The
    // first comes after `still`, or in the next pause. What was under way is dropped.
    void start(std::function<bool()> step, std::function<void()> whenDone,
               std::chrono::milliseconds still = {});
    // Nothing of it is called any more.
    void stop() { m_pause.stop(); }

private:
    void work();

    QTimer m_pause;
    std::function<bool()> m_step;
    std::function<void()> m_whenDone;
};

} // namespace ohmwright::ui
