// SPDX-License-Identifier: GPL-3.0-or-later
// Keeps a forecast of the book: anew after each edit that matters, beside the window's thread, in
// two steps (dates; then what takes longer), each told when it is there.
//
// It works on a copy of the book, taken between the window's turns, and writes nothing; a newer
// edit gives up what is under way.
#pragma once

#include "core/book/book.h"
#include "core/forecast/cash.h"
#include "core/forecast/choices.h"
#include "core/forecast/gains.h"
#include "core/forecast/learning.h"
#include "core/forecast/order_by.h"
#include "core/verdicts/verdict_counts.h"
#include "ui/forecast/beside.h"
#include "ui/forecast/records_copy.h"

#include <QTimer>

#include <map>
#include <memory>

namespace ohmwright::ui {

// All of one moment; the later parts are empty until `complete`.
struct ForecastTold
{
    std::shared_ptr<const Records> records; // the book it was made from
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
    // The build's checks with each option of an open choice taken.
    std::map<Id<ChoiceOption>, VerdictCounts> optionChecks;
    bool complete = false;
};

class Forecaster : public QObject
{
    Q_OBJECT

public:
    explicit Forecaster(Book &book, QObject *parent = nullptr);

    // Null before the first one is there. Never changes once given out.
    [[nodiscard]] std::shared_ptr<const ForecastTold> latest() const { return m_latest; }
    // 0 to 100 while one is under way; none otherwise.
    [[nodiscard]] std::optional<int> progress() const;
    // One is under way, or soon will be: what latest() tells is of an earlier book.
    [[nodiscard]] bool isBehind() const;
    // Nothing is worked out before somebody wants it: a page that is shown.
    void want();
    // The milestone gains are worked out for; the next one by date when empty.
    void setMilestone(const QString &key);
    void setSamples(int samples) { m_samples = samples; }
    [[nodiscard]] forecast::Settings settings() const;
    void cancel();

signals:
    void updated();
    void progressed();

private:
    void bookChanged(const Change &change);
    void soon(int milliseconds);
    void copyOn();
    void start(const std::shared_ptr<RecordsCopy> &copy);
    void stop();
    void take(const std::shared_ptr<const ForecastTold> &told, int run);

    Book &m_book;
    QTimer m_soon;
    QTimer m_looking; // at how far the thread has got
    QTimer m_copying;
    std::shared_ptr<RecordsCopy> m_copy; // while it is being taken
    std::shared_ptr<const ForecastTold> m_latest;
    QString m_milestone;
    bool m_running = false; // from the start of the copy
    int m_samples =
        forecast::Settings().samples; // as the command plays, so that both tell the same
    int m_run = 0;
    bool m_wanted = false;
    bool m_stale = true;
    Beside m_beside; // last: its end waits for work that uses the others
};

} // namespace ohmwright::ui
