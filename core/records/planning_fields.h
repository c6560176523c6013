// SPDX-License-Identifier: GPL-3.0-or-later
// The field lists of the records in planning.h: names as in the book and the interchange.
#pragma once

#include "core/records/planning.h"

namespace ohmwright {

template <>
struct RecordTraits<WorkingTime>
{
    static constexpr const char *table = "working_time";
    static constexpr const char *plural = "working_times";
    static constexpr auto fields =
        std::tuple{field("key", &WorkingTime::key, Presence::Required),
                   field("weekday", &WorkingTime::weekday, Presence::Required),
                   field("starts", &WorkingTime::starts),
                   field("minutes", &WorkingTime::minutes, Presence::Required),
                   field("hands", &WorkingTime::hands, Presence::Required),
                   field("note", &WorkingTime::note)};
};

template <>
struct RecordTraits<SpecialDay>
{
    static constexpr const char *table = "special_day";
    static constexpr const char *plural = "special_days";
    static constexpr auto fields =
        std::tuple{field("key", &SpecialDay::key, Presence::Required),
                   field("first_day", &SpecialDay::from, Presence::Required),
                   field("last_day", &SpecialDay::to),
                   field("minutes", &SpecialDay::minutes, Presence::Required),
                   field("hands", &SpecialDay::hands, Presence::Required),
                   field("note", &SpecialDay::note)};
};

template <>
struct RecordTraits<WorkEntry>
{
    static constexpr const char *table = "work_entry";
    static constexpr const char *plural = "work_log";
    static constexpr auto fields =
        std::tuple{field("key", &WorkEntry::key, Presence::Required),
                   field("task", &WorkEntry::task),
                   field("worked_on", &WorkEntry::on, Presence::Required),
                   field("started", &WorkEntry::started),
                   field("minutes", &WorkEntry::minutes),
                   field("hands", &WorkEntry::hands, Presence::Required),
                   field("note", &WorkEntry::note)};
};

template <>
struct RecordTraits<Choice>
{
    static constexpr const char *table = "choice";
    static constexpr const char *plural = "choices";
    static constexpr auto fields =
        std::tuple{field("key", &Choice::key, Presence::Required),
                   field("question", &Choice::question, Presence::Required),
                   field("decide_by", &Choice::decideBy),
                   field("taken", &Choice::taken),
                   field("decided_on", &Choice::decidedOn),
                   field("because", &Choice::because),
                   field("note", &Choice::note)};
};

template <>
struct RecordTraits<ChoiceOption>
{
    static constexpr const char *table = "choice_option";
    static constexpr const char *plural = "options";
    static constexpr auto owners = std::tuple{owner("choice_id", "options", &ChoiceOption::choice)};
    static constexpr auto fields = std::tuple{
        field("key", &ChoiceOption::key, Presence::Required),
        field("name", &ChoiceOption::name, Presence::Required), field("note", &ChoiceOption::note)};
};

} // namespace ohmwright
