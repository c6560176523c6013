// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/forecast/forecaster.h"

#include "core/plan/plan_view.h"
#include "core/verdicts/judge_book.h"

#include <QMetaObject>

#include <algorithm>
#include <array>
#include <thread>
#include <utility>

namespace ohmwright::ui {

namespace {

constexpr int kAfterAnEdit = 300; // ms of quiet before it starts
constexpr std::chrono::milliseconds kCopyAtOnce{4};

// What the forecast reads; the checks of options are counted in another way (choices are rare).
constexpr std::array kTables{"build",         "task",        "task_need",   "part",
                             "part_move",     "letter",      "test_record", "purchase",
                             "purchase_item", "payment",     "got_back",    "day_rate",
                             "working_time",  "special_day", "work_entry",  "choice",
                             "choice_option", "rating",      "interface",   "work_permit"};

// Of every option of an open choice; fewer when cancelled.
std::map<Id<ChoiceOption>, VerdictCounts>
checksOf(const std::vector<forecast::ChoiceOutlook> &choices, const Records &records, QDate today,
         const forecast::Watch &watch)
{
    std::map<Id<ChoiceOption>, VerdictCounts> counts;
    for (const forecast::ChoiceOutlook &choice : choices)
        for (const forecast::OptionOutlook &outlook : choice.options) {
            const ChoiceOption *option = records.find(outlook.option);
            if (option && !watch.isCancelled())
                counts[outlook.option] =
                    countVerdicts(judgeBook(forecast::withOption(records, *option), today));
        }
    return counts;
}

} // namespace

Forecaster::Forecaster(Book &book, QObject *parent) : QObject(parent), m_book(book)
{
    m_soon.setSingleShot(true);
    m_soon.setInterval(kAfterAnEdit);
    connect(&m_soon, &QTimer::timeout, this, [this] {
        stop();
        m_copy = std::make_shared<RecordsCopy>();
        m_running = true;
        m_copying.start();
        m_looking.start();
        emit progressed();
    });
    connect(&m_copying, &QTimer::timeout, this, &Forecaster::copyOn);
    m_looking.setInterval(60);
    connect(&m_looking, &QTimer::timeout, this, &Forecaster::progressed);
    connect(&book, &Book::changed, this, &Forecaster::bookChanged);
}

void Forecaster::stop()
{
    m_beside.giveUp();
    m_copying.stop();
    m_copy.reset();
    m_running = false;
    ++m_run; // what it may still deliver is not wanted
}

std::optional<int> Forecaster::progress() const
{
    if (!m_running)
        return std::nullopt;
    if (m_copy)
        return 0;
    return std::min(99, m_beside.samplesDone() * 100 / std::max(1, m_samples));
}

bool Forecaster::isBehind() const
{
    return m_running || m_soon.isActive();
}

forecast::Settings Forecaster::settings() const
{
    forecast::Settings settings;
    settings.samples = m_samples;
    // the window needs a core of its own
    settings.threads = std::max(1, static_cast<int>(std::thread::hardware_concurrency()) - 1);
    return settings;
}

void Forecaster::soon(int milliseconds)
{
    m_soon.start(milliseconds);
    emit progressed();
}

void Forecaster::want()
{
    m_wanted = true;
    if (m_stale && !m_soon.isActive() && !m_copy)
        soon(0);
}

void Forecaster::setMilestone(const QString &key)
{
    if (m_milestone == key)
        return;
    m_milestone = key;
    m_stale = true;
    if (m_wanted)
        soon(kAfterAnEdit);
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
                     [&](const char *table) { return change.touches(table); }) &&
        !m_copy) // of which no part may be older than another
        return;
    m_stale = true;
    m_copying.stop();
    m_copy.reset();
    if (m_wanted)
        soon(kAfterAnEdit);
}

void Forecaster::copyOn()
{
    if (!m_copy->step(m_book.records(), kCopyAtOnce))
        return;
    m_copying.stop();
    start(std::exchange(m_copy, nullptr));
}

void Forecaster::start(const std::shared_ptr<RecordsCopy> &copy)
{
    m_stale = false;
    const int run = ++m_run;
    m_beside.start([this, run, copy, settings = settings(), today = m_book.clock().today(),
                    milestone = m_milestone](const forecast::Watch &watch) {
        using namespace forecast;
        auto told = std::make_shared<ForecastTold>();
        told->records = copy->take();
        const Records &records = *told->records;
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

        const Watch quiet{watch.cancelled, nullptr};
        told->orders = orderByDays(told->plan, simulation, told->confidence, quiet);
        if (watch.isCancelled())
            return;
        told->choices = openChoices(records, today, settings, told->confidence, quiet);
        told->optionChecks = checksOf(told->choices, records, today, quiet);
        if (watch.isCancelled())
            return;
        told->cash =
            cashOf(records, told->plan, simulation, std::min(settings.samples, kCashSamples));
        if (!told->milestone.isEmpty())
            told->gains = sureGains(records, told->plan, simulation, told->forecast,
                                    told->milestone, settings, quiet);
        if (watch.isCancelled())
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
