// SPDX-License-Identifier: GPL-3.0-or-later
// What a person does to the build order; each one edit.
#pragma once

#include "core/book/book.h"
#include "core/records/records.h"

namespace ohmwright {

struct NewTask
{
    QString title;
    QString area;
    bool milestone = false;
    bool highVoltage = false;
    int workMinutes = 0;
    int waitDays = 0;
    std::optional<QDate> targetOn;
    std::optional<Id<Task>> after; // waits on this one
};

Result<Id<Task>> addTask(Book &book, const NewTask &task);
// `task` shall wait on `before`. NotAllowed, naming the loop, if that would close one.
Outcome linkTasks(Book &book, Id<Task> before, Id<Task> task);
Outcome unlinkTasks(Book &book, Id<Task> before, Id<Task> task);
// NotAllowed, naming what is missing, unless all it waits on is done and all it needs is met. Takes
// the consumables it needed out of stock.
Outcome finishTask(Book &book, Id<Task> task, QDate on);
// NotAllowed, naming it, if a task that waits on it is done. Puts consumables back.
Outcome reopenTask(Book &book, Id<Task> task);
// Under way since `on`, or not begun after all. NotAllowed for a milestone and for what is done; a
// task may be begun before all it needs is there.
Outcome setTaskStarted(Book &book, Id<Task> task, bool started, QDate on);
// Refuses, naming them, while others wait on it; its own needs go with it.
Outcome removeTask(Book &book, Id<Task> task);
// A need at the end of the task's list; refused with a sentence if it does not fit what it names.
Result<Id<TaskNeed>> addNeed(Book &book, TaskNeed need);
Outcome removeNeed(Book &book, Id<TaskNeed> need);
// Person, permit, money, service: someone says it is so.
Outcome meetNeed(Book &book, Id<TaskNeed> need, std::optional<QDate> on);

} // namespace ohmwright
