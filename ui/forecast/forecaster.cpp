// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/forecast/forecaster.h"

#include "core/plan/plan_view.h"

#include <QMetaObject>

#include <algorithm>
#include <array>

namespace ohmwright::ui {

namespace {

constexpr int kAfterAnEdit = 300; // ms of quiet before it starts

// What the forecast reads.
constexpr std::array kTables{"build",         "task",        "task_need",   "part",
                             "part_move",     "letter",      "test_record", "purchase",
                             "purchase_item", "payment",     "got_back",    "day_rate",
                             "working_time",  "special_day", "work_entry",  "choice",
                             "choice_option", "rating",      "interface",   "work_permit"};

} // namespace

Forecaster::Forecaster(Book &book, QObject *parent) : QObject(parent), m_book(book)
{
    m_soon.setSingleShot(true);
    m_soon.setInterval(kAfterAnEdit);
    connect(&m_soon, &QTimer::timeout, this, &Forecaster::start);
    m_looking.setInterval(60);
    connect(&m_looking, &QTimer::timeout, this, &Forecaster::progressed);
    connect(&book, &Book::changed, this, &Forecaster::bookChanged);
}

Forecaster::~Forecaster()
{
    stop();
}

void Forecaster::stop()
{
    m_cancelled = true;
    if (m_thread.joinable())
        m_thread.join();
    m_running = false;
}

std::optional<int> Forecaster::progress() const
{
    if (!m_running)
        return std::nullopt;
    return std::min(99, m_samplesDone.load() * 100 / std::max(1, m_samples));
}

void Forecaster::want()
{
    m_wanted = true;
    if (m_stale)
        m_soon.start(0);
}

void Forecaster::setMilestone(const QString &key)
{
    if (m_milestone == key)
        return;
    m_milestone = key;
    m_stale = true;
    if (m_wanted)
        m_soon.start();
}

void Forecaster::cancel()
{
    m_soon.stop();
    stop();
    m_looking.stop();
    emit progressed();
}

void Forecaster::bookChanged(const Change &change)
{
    if (std::none_of(kTables.begin(), kTables.end(),
                     [&](const char *table) { return change.touches(table); }))
        return;
    m_stale = true;
    if (m_wanted)
        m_soon.start(kAfterAnEdit);
}

void Forecaster::start()
{
    stop();
    m_stale = false;
    m_cancelled = false;
    m_samplesDone = 0;
    m_running = true;
    m_looking.start();
    const int run = ++m_run;
    forecast::Settings settings;
    settings.samples = m_samples;
    // the window needs a core of its own
    settings.threads = std::max(1, static_cast<int>(std::thread::hardware_concurrency()) - 1);
    m_thread = std::thread([this, run, settings, records = m_book.records(),
                            today = m_book.clock().today(), milestone = m_milestone]() {
        using namespace forecast;
        const Watch watch{&m_cancelled, &m_samplesDone};
        auto told = std::make_shared<ForecastTold>();
        told->plan = workPlanOf(records, today);
        told->network = plan::networkOf(records, today);
        told->confidence = records.build().confidencePercent.value_or(80);
        const Simulation simulation(told->plan, settings, {}, watch);
        told->forecast = simulation.run(watch);
        if (told->forecast.cancelled)
            return;
        for (const std::size_t m : told->plan.milestones)
            if (told->milestone.isEmpty() || told->plan.activities[m].key == milestone)
                told->milestone = told->plan.activities[m].key;
        told->learned = learnedFrom(records);
        const auto deliver = [&](const std::shared_ptr<const ForecastTold> &what) {
            QMetaObject::invokeMethod(
                this, [this, what, run] { take(what, run); }, Qt::QueuedConnection);
        };
        deliver(std::make_shared<ForecastTold>(*told));

        const Watch quiet{&m_cancelled, nullptr};
        Settings few = settings;
        few.samples = std::min(settings.samples, kOrderBySamples);
        const Simulation quick(told->plan, few, simulation.order());
        told->orders = orderByDays(told->plan, quick, told->confidence, quiet);
        if (m_cancelled)
            return;
        told->choices = openChoices(records, today, few, told->confidence, quiet);
        if (m_cancelled)
            return;
        told->cash =
            cashOf(records, told->plan, simulation, std::min(settings.samples, kCashSamples));
        if (!told->milestone.isEmpty())
            told->gains = sureGains(records, told->plan, simulation, told->forecast,
                                    told->milestone, settings, quiet);
        if (m_cancelled)
            return;
        for (const Gain &gain : told->gains)
            told->gainTexts.push_back(describe(gain.change, records));
        told->complete = true;
        deliver(told);
    });
}

void Forecaster::take(const std::shared_ptr<const ForecastTold> &told, int run)
{
    if (run != m_run)
        return; // a newer one is under way
    // The dates of a moment and what follows from them change together, once there is anything.
    if (told->complete || !m_latest || !m_latest->complete)
        m_latest = told;
    if (told->complete) {
        m_running = false;
        m_looking.stop();
    }
    emit updated();
    emit progressed();
}

} // namespace ohmwright::ui
