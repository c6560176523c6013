// SPDX-License-Identifier: GPL-3.0-or-later
// Keeps a forecast of the book: anew after each edit that matters, beside the window's thread, in
// two steps (dates; then what takes longer), each told when it is there.
//
// It works on copies and writes nothing; a newer edit cancels what is under way.
#pragma once

#include "core/book/book.h"
#include "core/forecast/cash.h"
#include "core/forecast/choices.h"
#include "core/forecast/gains.h"
#include "core/forecast/learning.h"
#include "core/forecast/order_by.h"

#include <QTimer>

#include <atomic>
#include <memory>
#include <thread>

namespace ohmwright::ui {

// All of one moment; the later parts are empty until `complete`.
struct ForecastTold
{
    forecast::WorkPlan plan;
    plan::Network network; // as the plan was made from it
    forecast::Forecast forecast;
    int confidence = 80;
    QString milestone; // key of the one the gains are for; empty for none
    std::vector<forecast::OrderBy> orders;
    forecast::Cash cash;
    std::vector<forecast::Gain> gains;
    std::vector<QString> gainTexts; // of each gain
    std::vector<forecast::Learned> learned;
    std::vector<forecast::ChoiceOutlook> choices;
    bool complete = false;
};

class Forecaster : public QObject
{
    Q_OBJECT

public:
    explicit Forecaster(Book &book, QObject *parent = nullptr);
    ~Forecaster() override;

    // Null before the first one is there. Never changes once given out.
    [[nodiscard]] std::shared_ptr<const ForecastTold> latest() const { return m_latest; }
    // 0 to 100 while one is under way; none otherwise.
    [[nodiscard]] std::optional<int> progress() const;
    // Nothing is worked out before somebody wants it: a page that is shown.
    void want();
    // The milestone gains are worked out for; the next one by date when empty.
    void setMilestone(const QString &key);
    void setSamples(int samples) { m_samples = samples; }
    void cancel();

signals:
    void updated();
    void progressed();

private:
    void bookChanged(const Change &change);
    void start();
    void stop();
    void take(const std::shared_ptr<const ForecastTold> &told, int run);

    Book &m_book;
    QTimer m_soon;
    QTimer m_looking; // at how far the thread has got
    std::shared_ptr<const ForecastTold> m_latest;
    QString m_milestone;
    std::thread m_thread;
    std::atomic<bool> m_cancelled = false;
    std::atomic<int> m_samplesDone = 0;
    std::atomic<bool> m_running = false;
    int m_samples =
        forecast::Settings().samples; // as the command plays, so that both tell the same
    int m_run = 0;
    bool m_wanted = false;
    bool m_stale = true;
};

} // namespace ohmwright::ui
