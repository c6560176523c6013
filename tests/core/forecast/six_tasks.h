// SPDX-License-Identifier: GPL-3.0-or-later
// A book of six tasks, small enough to be planned with pencil and paper. Today is Monday 15 June
// 2026, day 0. Work is on Tuesday and Thursday evening, two hours each, and five hours on Saturday,
// then with a helper.
//
//   strip     4 h           Tue 16 (day 1) and Thu 18 (day 3)
//   lift      2 x 5 h       after strip; in one sitting, both pairs of hands: Sat 20 (day 5)
//   glue      2 h, 3 days   after strip: Tue 23 (day 8), cured on day 11; before measure, since it
//                           must be finished by day 12 and measure by day 14 only
//   measure   2 h           after lift: Thu 25 (day 10)
//   fit       2 h           after measure, needs the coupling, 14 days from order on day 0: there
//                           on Mon 29 (day 14), fitted on Tue 30 (day 15)
//   rolling   milestone     after fit and glue: day 15
#pragma once

#include "core/forecast/work_plan.h"
#include "tests/support/test_book.h"

#include <functional>
#include <vector>

namespace ohmwright {

inline const QDate kToday(2026, 6, 15);

struct SixTasks
{
    TestBook book;
    Id<Part> coupling;
    Id<Task> strip, lift, measure, glue, fit, rolling;

    SixTasks()
    {
        for (const auto &[day, minutes] : {std::pair(Weekday::Tuesday, 120),
                                           {Weekday::Thursday, 120},
                                           {Weekday::Saturday, 300},
                                           {Weekday::Saturday, 300}}) {
            WorkingTime time;
            time.weekday = day;
            time.minutes = minutes;
            book.add(time);
        }
        Part part;
        part.key = QStringLiteral("coupling");
        part.name = QStringLiteral("Coupling");
        part.leadDays = part.leastLeadDays = part.mostLeadDays = 14;
        part.estimate = euros(18000);
        coupling = book.add(part);
        strip = add("strip", 240, {});
        lift = add("lift", 600, {strip}, [](Task &t) {
            t.hands = 2;
            t.oneSitting = true;
        });
        measure = add("measure", 120, {lift});
        glue = add("glue", 120, {strip}, [](Task &t) {
            t.waitDays = 3;
            t.leastWaitDays = t.mostWaitDays = 3;
        });
        fit = add("fit", 120, {measure});
        TaskNeed need;
        need.task = fit;
        need.kind = NeedKind::Part;
        need.part = coupling;
        book.add(need);
        rolling = add("rolling", 0, {fit, glue}, [](Task &t) { t.milestone = true; });
    }

    Id<Task> add(const char *key, int minutes, const std::vector<Id<Task>> &after,
                 const std::function<void(Task &)> &more = {})
    {
        Task task;
        task.key = QLatin1String(key);
        task.title = task.key;
        task.workMinutes = minutes;
        task.leastWorkMinutes = task.mostWorkMinutes = minutes;
        if (more)
            more(task);
        const Id<Task> id = book.add(task);
        for (const Id<Task> before : after) {
            TaskNeed need;
            need.task = id;
            need.kind = NeedKind::Task;
            need.after = before;
            book.add(need);
        }
        return id;
    }

    template <class R>
    void change(Id<R> id, const std::function<void(R &)> &how)
    {
        R row = *book.records().find(id);
        how(row);
        const Outcome done =
            book->edit(QStringLiteral("change"), [&] { return book->update(row); });
        ASSERT_TRUE(done.has_value()) << done.error().sentence.toStdString();
    }
};

// Where the activity of that key stands in a plan.
inline std::size_t activityOf(const forecast::WorkPlan &plan, const char *key)
{
    for (std::size_t i = 0; i < plan.activities.size(); ++i)
        if (plan.activities[i].key == QLatin1String(key))
            return i;
    ADD_FAILURE() << "no activity " << key;
    return 0;
}

} // namespace ohmwright
