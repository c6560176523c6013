// SPDX-License-Identifier: GPL-3.0-or-later
// The field lists of the records in work.h: names as in the book and the interchange.
#pragma once

#include "core/records/work.h"

namespace ohmwright {

template <>
struct RecordTraits<Task>
{
    static constexpr const char *table = "task";
    static constexpr const char *plural = "tasks";
    static constexpr auto fields =
        std::tuple{field("key", &Task::key, Presence::Required),
                   field("title", &Task::title, Presence::Required),
                   field("milestone", &Task::milestone, Presence::Required),
                   field("area", &Task::area),
                   field("high_voltage", &Task::highVoltage, Presence::Required),
                   field("trade", &Task::trade),
                   field("work_minutes", &Task::workMinutes, Presence::Required),
                   field("least_work_minutes", &Task::leastWorkMinutes),
                   field("most_work_minutes", &Task::mostWorkMinutes),
                   field("wait_days", &Task::waitDays, Presence::Required),
                   field("least_wait_days", &Task::leastWaitDays),
                   field("most_wait_days", &Task::mostWaitDays),
                   field("hands", &Task::hands),
                   field("one_sitting", &Task::oneSitting),
                   field("bay", &Task::bay),
                   field("fail_percent", &Task::failPercent),
                   field("redo_from", &Task::redoFrom),
                   field("opens", &Task::opens),
                   field("buys", &Task::buys),
                   field("asks", &Task::asks),
                   field("option", &Task::option),
                   field("state", &Task::state, Presence::Required),
                   field("started_on", &Task::startedOn),
                   field("done_on", &Task::doneOn),
                   field("fixed_on", &Task::fixedOn),
                   field("target_on", &Task::targetOn),
                   field("note", &Task::note)};
};

template <>
struct RecordTraits<TaskNeed>
{
    static constexpr const char *table = "task_need";
    static constexpr const char *plural = "needs";
    static constexpr auto owners = std::tuple{owner("task_id", "needs", &TaskNeed::task)};
    static constexpr auto fields = std::tuple{field("kind", &TaskNeed::kind, Presence::Required),
                                              field("after", &TaskNeed::after),
                                              field("part", &TaskNeed::part),
                                              field("state", &TaskNeed::state),
                                              field("quantity", &TaskNeed::quantity),
                                              field("basis", &TaskNeed::basis),
                                              field("amount", &TaskNeed::amount),
                                              field("money", &TaskNeed::money),
                                              field("test", &TaskNeed::test),
                                              field("letter", &TaskNeed::letter),
                                              field("interface", &TaskNeed::interface),
                                              field("permit", &TaskNeed::permit),
                                              field("what", &TaskNeed::what),
                                              field("met_on", &TaskNeed::metOn),
                                              field("each_time", &TaskNeed::eachTime)};
};

template <>
struct RecordTraits<Letter>
{
    static constexpr const char *table = "letter";
    static constexpr const char *plural = "letters";
    static constexpr auto fields =
        std::tuple{field("key", &Letter::key, Presence::Required),
                   field("subject", &Letter::subject, Presence::Required),
                   field("to_whom", &Letter::toWhom),
                   field("kind", &Letter::kind, Presence::Required),
                   field("state", &Letter::state, Presence::Required),
                   field("asked_on", &Letter::askedOn),
                   field("ask_again_on", &Letter::askAgainOn),
                   field("answered_on", &Letter::answeredOn),
                   field("valid_until", &Letter::validUntil),
                   field("answer_days", &Letter::answerDays),
                   field("least_answer_days", &Letter::leastAnswerDays),
                   field("most_answer_days", &Letter::mostAnswerDays),
                   field("reference", &Letter::reference),
                   field("note", &Letter::note)};
};

template <>
struct RecordTraits<TestRecord>
{
    static constexpr const char *table = "test_record";
    static constexpr const char *plural = "tests";
    static constexpr auto fields =
        std::tuple{field("key", &TestRecord::key, Presence::Required),
                   field("name", &TestRecord::name, Presence::Required),
                   field("kind", &TestRecord::kind, Presence::Required),
                   field("part", &TestRecord::part),
                   field("circuit", &TestRecord::circuit),
                   field("method", &TestRecord::method),
                   field("limit_text", &TestRecord::limitText),
                   field("limit_value", &TestRecord::limit),
                   field("value", &TestRecord::value),
                   field("instrument", &TestRecord::instrument),
                   field("done_by", &TestRecord::doneBy),
                   field("done_on", &TestRecord::doneOn),
                   field("result", &TestRecord::result, Presence::Required),
                   field("note", &TestRecord::note)};
};

template <>
struct RecordTraits<MassEntry>
{
    static constexpr const char *table = "mass_entry";
    static constexpr const char *plural = "masses";
    static constexpr auto fields =
        std::tuple{field("key", &MassEntry::key, Presence::Required),
                   field("name", &MassEntry::name, Presence::Required),
                   field("direction", &MassEntry::direction, Presence::Required),
                   field("mass", &MassEntry::mass),
                   field("behind_front_axle", &MassEntry::behindFrontAxle),
                   field("height", &MassEntry::height),
                   field("part", &MassEntry::part),
                   field("evidence", &MassEntry::evidence, Presence::Required),
                   field("note", &MassEntry::note)};
};

template <>
struct RecordTraits<Attachment>
{
    static constexpr const char *table = "attachment";
    static constexpr const char *plural = "attachments";
    static constexpr auto fields =
        std::tuple{field("key", &Attachment::key, Presence::Required),
                   field("title", &Attachment::title),
                   field("kind", &Attachment::kind, Presence::Required),
                   field("file_name", &Attachment::fileName),
                   field("media_type", &Attachment::mediaType),
                   field("sha256", &Attachment::sha256),
                   field("url", &Attachment::url),
                   field("read_on", &Attachment::readOn),
                   field("taken_on", &Attachment::takenOn),
                   field("on_sheet", &Attachment::onSheet, Presence::Required),
                   field("of_vehicle", &Attachment::ofVehicle, Presence::Required),
                   field("part", &Attachment::part),
                   field("type", &Attachment::type),
                   field("donor", &Attachment::donor),
                   field("purchase", &Attachment::purchase),
                   field("task", &Attachment::task),
                   field("test", &Attachment::test),
                   field("letter", &Attachment::letter),
                   field("note", &Attachment::note)};
};

} // namespace ohmwright
