// SPDX-License-Identifier: GPL-3.0-or-later
// The dates of milestones: wishes that tell which comes first, and appointments (Task::fixedOn):
// the hall, the engineer, the crane are there on that day and not before it, however early
// everything else is ready.
#pragma once

#include "core/forecast/work_plan.h"

namespace ohmwright::forecast {

// Gives a milestone with an appointment that day as its release day, and likewise the work that
// keeps the appointment: the task the milestone waits on if that is only one, else those of them
// that may fail. What is done again after a failure comes behind it, by its links. An appointment
// that is past holds nothing back. To be called before risks are added.
void keepAppointments(WorkPlan &plan, const Records &records);

// The milestones in the order of their dates, those without one last, and their due days.
void sortMilestones(WorkPlan &plan, const plan::Network &network);

// The day a milestone of the plan is fixed on; none if there is no appointment.
std::optional<QDate> appointmentOf(const Records &records, const Activity &milestone);

} // namespace ohmwright::forecast
