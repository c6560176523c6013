// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/forecast/change_trial.h"

#include "core/forecast/gains.h"
#include "ui/forecast/forecaster.h"

#include <QMetaObject>

namespace ohmwright::ui {

ChangeTrial::ChangeTrial(Forecaster &forecaster, QObject *parent)
    : QObject(parent), m_forecaster(forecaster)
{
    connect(&m_forecaster, &Forecaster::updated, this, &ChangeTrial::askAgain);
}

void ChangeTrial::refuse(const QString &sentence)
{
    m_beside.giveUp();
    ++m_run;
    m_code.clear();
    m_working = false;
    m_answer.clear();
    m_problem = sentence;
    emit changed();
}

void ChangeTrial::ask(const QString &code)
{
    m_code = code;
    const auto told = m_forecaster.latest();
    if (!told) {
        refuse(tr("The forecast is being worked out; ask when it is there."));
        return;
    }
    if (told->plan.milestones.empty()) {
        refuse(tr("There is no milestone to gain days for."));
        return;
    }
    const Result<forecast::PlanChange> change = forecast::parsePlanChange(code, *told->records);
    if (!change) {
        refuse(change.error().sentence);
        return;
    }
    m_asked = told;
    m_problem.clear();
    m_answer.clear();
    m_working = true;
    const int run = ++m_run;
    m_beside.start([this, run, told, change = *change,
                    settings = m_forecaster.settings()](const forecast::Watch &watch) {
        const forecast::Simulation simulation(told->plan, settings, told->forecast.order, watch);
        const std::vector<forecast::Gain> gains = forecast::gainsOf(
            *told->records, told->plan, simulation, told->plan.milestones, change, settings, watch);
        if (watch.isCancelled() || gains.empty())
            return;
        QStringList answer{forecast::describe(change, *told->records)};
        if (const QString why = forecast::whyNothing(change, *told->records, told->plan);
            !why.isEmpty())
            answer << why;
        for (std::size_t m = 0; m < gains.size(); ++m)
            answer << tr("%1: %2.").arg(told->plan.activities[told->plan.milestones[m]].name,
                                        forecast::gainInWords(gains[m]));
        QMetaObject::invokeMethod(
            this, [this, answer, run] { take(answer, run); }, Qt::QueuedConnection);
    });
    emit changed();
}

void ChangeTrial::cancel()
{
    m_beside.giveUp();
    ++m_run;
    m_working = false;
    m_code.clear();
    emit changed();
}

void ChangeTrial::askAgain()
{
    if (!m_code.isEmpty() && m_forecaster.latest() != m_asked.lock())
        ask(m_code);
}

void ChangeTrial::take(const QStringList &answer, int run)
{
    if (run != m_run)
        return; // another was asked meanwhile
    m_working = false;
    m_answer = answer;
    emit changed();
}

} // namespace ohmwright::ui
