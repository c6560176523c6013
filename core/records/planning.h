// SPDX-License-Identifier: GPL-3.0-or-later
// Planning records: the hours there are, the work log, and choices still open.
#pragma once

#include "core/records/field.h"
#include "core/records/id.h"

#include <QDate>
#include <QString>

#include <array>
#include <optional>

namespace ohmwright {

struct Task;

enum class Weekday { Monday, Tuesday, Wednesday, Thursday, Friday, Saturday, Sunday };
template <>
struct EnumWords<Weekday>
{
    static constexpr std::array words{"monday", "tuesday",  "wednesday", "thursday",
                                      "friday", "saturday", "sunday"};
};

// A time of the week when somebody works on the build. Two that overlap on one day add their pairs
// of hands.
struct WorkingTime
{
    Id<WorkingTime> id;
    QString key;
    Weekday weekday = Weekday::Saturday;
    QString starts;    // "19:00"; empty: not said
    int minutes = 120; // 1 to 1440
    int hands = 1;     // pairs of them, 1 to 4
    QString note;      // who, what for
    bool operator==(const WorkingTime &) const = default;
};

// Days that are not like the week: a holiday, a free week in the garage, a helper for one Saturday.
// What they say replaces the weekly pattern on each of them; several on one day add up.
struct SpecialDay
{
    Id<SpecialDay> id;
    QString key;
    QDate from;
    std::optional<QDate> to; // the last of them; that one day when not said
    int minutes = 0;         // 0 to 1440; 0: nobody works
    int hands = 1;           // 1 to 4
    QString note;
    bool operator==(const SpecialDay &) const = default;
};

// Work done: hours of one day on one task. Under way while it has a start and no minutes.
struct WorkEntry
{
    Id<WorkEntry> id;
    QString key;
    std::optional<Id<Task>> task; // none: about the build as a whole
    QDate on;
    QString started;            // "19:40", local; empty: entered after
    std::optional<int> minutes; // of the clock, 0 to 2880
    int hands = 1;              // pairs of them, 1 to 4: person-minutes are minutes * hands
    QString note;
    bool operator==(const WorkEntry &) const = default;
};

struct ChoiceOption;

// A choice still open: unit A or B, one unit or two. Tasks and parts belong to its options; those
// of options not taken stay in the book, for the record, and count for nothing.
struct Choice
{
    Id<Choice> id;
    QString key, question;
    std::optional<QDate> decideBy; // a wish of one's own; the forecast computes another
    std::optional<Id<ChoiceOption>> taken;
    std::optional<QDate> decidedOn;
    QString because;
    QString note;
    bool operator==(const Choice &) const = default;
};

struct ChoiceOption
{
    Id<ChoiceOption> id;
    QString key;
    Id<Choice> choice;
    int position = 0; // while undecided the first one is planned with
    QString name, note;
    bool operator==(const ChoiceOption &) const = default;
};

} // namespace ohmwright
