// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_measure.h"

#include "core/plan/network.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace ohmwright::plan::loom {

namespace {

constexpr int kTitleLines = 2;
constexpr int kMissingLines = 2;
constexpr int kMilestoneLines = 3;

double stripWidth(const Size &size);

class Measurer
{
public:
    Measurer(const Network &network, const LoomFacts &facts, const LoomMetrics &metrics,
             const Placement &placement)
        : m_network(network), m_facts(facts), m_metrics(metrics), m_place(placement)
    {}

    Sizes measure();

private:
    void measureHousing(std::size_t task, Words &titles);
    void measureStrip(std::size_t task, Words &dates);
    void findWhiskerScale();
    [[nodiscard]] QStringList datesOf(std::size_t task) const;
    void measurePlate(std::size_t task, Words &names, Words &dates);

    const Network &m_network;
    const LoomFacts &m_facts;
    const LoomMetrics &m_metrics;
    const Placement &m_place;
    Sizes m_sizes;
};

// Of the widest whisker all but a little of the narrowest housing is taken.
void Measurer::findWhiskerScale()
{
    if (!m_facts.forecast)
        return;
    int most = 0;
    for (std::size_t task = 0; task < m_network.tasks.size(); ++task) {
        const auto &ready = m_facts.forecast->of(task).ready;
        if (!m_network.tasks[task].milestone && !m_network.tasks[task].done && ready[0] && ready[2])
            most = std::max(most, *ready[2] - *ready[0]);
    }
    constexpr double kMostPerDay = 6;
    m_sizes.whiskerPerDay =
        most <= 0 ? kMostPerDay
                  : std::min(kMostPerDay, (m_metrics.housingMinWidth - kBesideLead - 4) / most);
}

// The day, and how long the task may slip; nothing for what is behind us or not in the forecast.
void Measurer::measureStrip(std::size_t task, Words &dates)
{
    const Task &own = m_network.tasks[task];
    if (!m_facts.forecast || own.done || !m_facts.forecast->of(task).known())
        return;
    const LoomForecast &forecast = *m_facts.forecast;
    const LoomDays &days = forecast.of(task);
    Size &size = m_sizes.of[task];
    size.forecast = true;
    const QString day = days.ready[1]
                            ? loomDay(forecast.today.addDays(*days.ready[1]), forecast.today)
                            : QStringLiteral("not in reach");
    size.ready = dates.uncut(QStringLiteral("80\u00A0%: %1").arg(day));
    const bool byDate = !m_place.rules.empty();
    if (byDate && days.finish)
        size.plan = dates.uncut(QStringLiteral("plan %1").arg(
            loomDay(forecast.today.addDays(*days.finish), forecast.today)));
    if (days.floatDays.value_or(0) > 0)
        size.slack = dates.broken(QStringLiteral("%1\u00A0d").arg(*days.floatDays),
                                  m_metrics.housingMaxWidth, 1);
}

// What a housing must be wide for its strip not to reach beyond it.
double stripWidth(const Size &size)
{
    if (!size.forecast)
        return 0;
    const double slack =
        size.slack.lines.isEmpty() ? 0 : kLoopGap + kLoopWidth + 3 + size.slack.width;
    // The float stands beside the first line.
    if (size.plan.lines.isEmpty())
        return kBesideLead + size.ready.width + slack + 1;
    return kBesideLead + std::max(size.plan.width + slack, size.ready.width) + 1;
}

// A milestone's: what was passed in, else its own date and the forecast's days.
QStringList Measurer::datesOf(std::size_t task) const
{
    const Task &own = m_network.tasks[task];
    QString given = task < m_facts.dates.size() ? m_facts.dates[task] : QString();
    if (given.isEmpty() && own.date && !own.done)
        given = QStringLiteral("by %1").arg(own.date->toString(Qt::ISODate));
    QStringList lines = given.split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    if (!m_facts.forecast || own.done || !m_facts.forecast->of(task).known())
        return lines;
    static constexpr std::array kShares{50, 80, 95};
    const LoomForecast &forecast = *m_facts.forecast;
    for (std::size_t at = 0; at < kShares.size(); ++at) {
        const std::optional<int> day = forecast.of(task).ready.at(at);
        lines.append(QStringLiteral("%1\u00A0%: %2")
                         .arg(kShares.at(at))
                         .arg(day ? loomDate(forecast.today.addDays(*day), forecast.today)
                                  : QStringLiteral("not in reach")));
    }
    return lines;
}

void Measurer::measureHousing(std::size_t task, Words &titles)
{
    const Task &own = m_network.tasks[task];
    Size &size = m_sizes.of[task];
    const double pad = 6;
    const double pitch = m_metrics.cavityWidth + m_metrics.cavityGap;
    size.cavities = own.after.size() + own.needs.size();
    const auto fit = [&](double width) {
        return std::max(1.0, std::floor((width - 2 * pad + m_metrics.cavityGap) / pitch));
    };
    const double wanted = titles.narrowest(own.title, kTitleLines) + 2 * pad + 0.5;
    size.width = std::clamp(wanted, m_metrics.housingMinWidth, m_metrics.housingMaxWidth);
    const auto count = static_cast<double>(size.cavities);
    if (count > fit(size.width))
        size.width = std::min(m_metrics.housingMaxWidth,
                              count * pitch - m_metrics.cavityGap + 2 * pad + 0.5);
    // Past what one row can hold, the cavities stand in rows of half the height.
    size.cavityRows = static_cast<int>(std::ceil(std::max(1.0, count) / fit(size.width)));
    if (size.cavityRows > 2) {
        size.width = std::ceil(count / 2) * pitch - m_metrics.cavityGap + 2 * pad + 0.5;
        size.cavityRows = 2;
    }
    size.width = std::max(size.width, stripWidth(size));
    size.height = m_metrics.housingHeight;
    size.title = titles.broken(own.title, size.width - 2 * pad + 0.5, kTitleLines);
    size.cellWidth = size.width;
    // On top of it stand its key, and the mark or the flag.
    const bool flag = !own.done && canStart(m_network, task);
    size.up = size.height / 2 + (own.highVoltage || flag ? 15 : 6);
    size.down = size.height / 2 + 2 + (size.forecast ? stripHeight(m_metrics, size) + 2 : 0);
    size.lack = missing(own);
    if (size.lack.any)
        size.cellWidth = std::max(size.cellWidth, m_metrics.housingMaxWidth * 0.9);
}

void Measurer::measurePlate(std::size_t task, Words &names, Words &dates)
{
    const Task &own = m_network.tasks[task];
    Size &size = m_sizes.of[task];
    size.cavities = own.after.size() + own.needs.size();
    size.width = m_metrics.plateWidth;
    size.height = std::max(m_metrics.housingHeight,
                           static_cast<double>(size.cavities) * m_metrics.plateCavityPitch + 24);
    const double room = m_metrics.housingMaxWidth * 1.05;
    size.title = names.broken(own.title, room, kMilestoneLines);
    const QStringList parts = datesOf(task);
    for (const QString &part : parts) {
        const Words::Broken line = dates.uncut(part);
        size.date.lines += line.lines;
        size.date.width = std::max(size.date.width, line.width);
        size.date.cut = size.date.cut || line.cut;
    }
    size.lack = missing(own);
    size.cellWidth =
        size.width + kPlateTextGap +
        std::max(std::max(size.title.width, size.date.width), size.lack.any ? room * 0.8 : 0.0);
    const auto lines = [](const Words::Broken &text) {
        return static_cast<double>(text.lines.size());
    };
    size.up = std::max(size.height / 2 + (own.highVoltage ? 15 : 3),
                       lines(size.title) * m_metrics.milestoneLine + 8);
    size.down = std::max(size.height / 2 + 3, lines(size.date) * m_metrics.dateLine + 8);
}

Sizes Measurer::measure()
{
    const std::size_t count = m_network.tasks.size();
    m_sizes.of.resize(count);
    Words titles(m_metrics, LoomText::Title);
    Words texts(m_metrics, LoomText::Missing);
    Words names(m_metrics, LoomText::Milestone);
    Words dates(m_metrics, LoomText::Date);
    Words sleeves(m_metrics, LoomText::Sleeve);
    m_sizes.columnWidth.assign(static_cast<std::size_t>(m_place.columns), 0);
    findWhiskerScale();
    for (std::size_t task = 0; task < count; ++task) {
        if (m_network.tasks[task].milestone) {
            measurePlate(task, names, dates);
        } else {
            measureStrip(task, dates);
            measureHousing(task, titles);
        }
        double &width = m_sizes.columnWidth[static_cast<std::size_t>(m_place.column[task])];
        width = std::max(width, m_sizes.of[task].cellWidth);
    }
    // A sleeve stands in the column before its branch's first task; that one is free on its run.
    for (std::size_t branch = 0; branch < m_place.areas.size(); ++branch) {
        const double pad = kSleevePad;
        QString name =
            m_place.areas[branch].isEmpty() ? QStringLiteral("no area") : m_place.areas[branch];
        if (mostlyHighVoltage(m_network, m_place.tasksOf[branch]))
            name += QStringLiteral(" HV");
        m_sizes.sleeves.push_back(sleeves.broken(name, m_metrics.sleeveMaxWidth - 2 * pad, 1));
        const int column = m_place.column[m_place.tasksOf[branch].front()] - 1;
        double &width = m_sizes.columnWidth[static_cast<std::size_t>(column)];
        width = std::max(width, m_sizes.sleeves.back().width + 2 * pad + 0.5);
    }
    for (std::size_t task = 0; task < count; ++task) {
        Size &size = m_sizes.of[task];
        if (!size.lack.any)
            continue;
        const double cell = m_sizes.columnWidth[static_cast<std::size_t>(m_place.column[task])];
        const double room = m_network.tasks[task].milestone ? cell - size.width - kPlateTextGap
                            : size.forecast                 ? cell - kBesideLead
                                                            : cell;
        qsizetype lines = kMissingLines;
        if (m_facts.forecast && !size.lack.aside &&
            size.lack.need < m_network.tasks[task].needs.size()) {
            const QString day =
                m_facts.forecast->arrivalOf(m_network.tasks[task].needs[size.lack.need]);
            if (!day.isEmpty()) {
                size.lack.why = day;
                ++lines; // a day is told whatever the name takes
            }
        }
        size.missing = texts.broken(size.lack.what, room, kMissingLines);
        if (size.missing.lines.size() < lines && !size.lack.why.isEmpty()) {
            const Words::Broken why = texts.broken(size.lack.why, room, 1);
            size.missing.lines += why.lines;
            size.missing.width = std::max(size.missing.width, why.width);
            size.missing.cut = size.missing.cut || why.cut;
        }
        const double height =
            static_cast<double>(size.missing.lines.size()) * m_metrics.missingLine + 6;
        if (m_network.tasks[task].milestone)
            size.down = std::max(size.down,
                                 static_cast<double>(size.date.lines.size()) * m_metrics.dateLine +
                                     6 + height);
        else
            size.down =
                size.height / 2 + (size.forecast ? stripHeight(m_metrics, size) + 2 : 0) + height;
    }
    return std::move(m_sizes);
}

} // namespace

bool mostlyHighVoltage(const Network &network, const std::vector<std::size_t> &tasks)
{
    const auto count = std::count_if(tasks.begin(), tasks.end(), [&](std::size_t task) {
        return network.tasks[task].highVoltage;
    });
    return 2 * count >= static_cast<std::ptrdiff_t>(tasks.size());
}

Sizes measure(const Network &network, const LoomFacts &facts, const LoomMetrics &metrics,
              const Placement &placement)
{
    return Measurer(network, facts, metrics, placement).measure();
}

} // namespace ohmwright::plan::loom
