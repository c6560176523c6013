// SPDX-License-Identifier: GPL-3.0-or-later
// Work records: tasks and what they need, letters, tests, masses, attachments.
#pragma once

#include "core/quantity/amount.h"
#include "core/quantity/money.h"
#include "core/records/ledger.h"
#include "core/records/planning.h"
#include "core/records/trade.h"

namespace ohmwright {

enum class TaskState { Open, Started, Done };
template <>
struct EnumWords<TaskState>
{
    static constexpr std::array words{"open", "started", "done"};
};

// Kinds of work: estimates of one kind tend to be wrong in the same way.
enum class Trade {
    Paperwork,
    Measuring,
    Dismantling,
    Fabrication,
    Mechanical,
    Electrical,
    Software,
    Bodywork,
    Testing,
    Other,
};
template <>
struct EnumWords<Trade>
{
    static constexpr std::array words{"paperwork",  "measuring",  "dismantling", "fabrication",
                                      "mechanical", "electrical", "software",    "bodywork",
                                      "testing",    "other"};
};

struct Letter;

// A piece of work, or a milestone to reach. Times are likely ones; least and most are what it would
// take if all went well and if it did not (the optimistic and pessimistic estimates).
struct Task
{
    Id<Task> id;
    QString key, title;
    bool milestone = false;
    QString area; // the branch of the loom it hangs on: "battery", "papers"
    bool highVoltage = false;
    std::optional<Trade> trade;
    int workMinutes = 0; // hands-on time in person-minutes, estimate
    std::optional<int> leastWorkMinutes, mostWorkMinutes;
    int waitDays = 0; // curing, machining elsewhere, post: alongside no hands
    std::optional<int> leastWaitDays, mostWaitDays;
    std::optional<int> hands;               // people it takes at once, 1 to 4; 1 when not said
    std::optional<bool> oneSitting;         // cannot be left half done overnight
    QString bay;                            // tasks of one bay take turns in it
    std::optional<int> failPercent;         // chance that it must be done again, 0 to 95
    std::optional<Id<Task>> redoFrom;       // from there; itself alone when not said
    std::optional<Id<Part>> opens;          // the unit whose case it opens
    std::optional<Id<Part>> buys;           // the part it orders: not ordered before
    std::optional<Id<Letter>> asks;         // the letter it asks for: not answered before
    std::optional<Id<ChoiceOption>> option; // counts only with this option of a choice
    TaskState state = TaskState::Open;
    std::optional<QDate> startedOn, doneOn;
    std::optional<QDate> fixedOn;  // a milestone's appointment
    std::optional<QDate> targetOn; // a milestone's wish
    QString note;
    bool operator==(const Task &) const = default;
};

enum class NeedKind {
    Task,
    Part,
    Figure,
    Tool,
    Consumable,
    Money,
    Service,
    Test,
    Letter,
    Person,
    Permit,
    Interface,
};
template <>
struct EnumWords<NeedKind>
{
    static constexpr std::array words{"task",       "part",   "figure",  "tool",
                                      "consumable", "money",  "service", "test",
                                      "letter",     "person", "permit",  "interface"};
};

struct TestRecord;
struct Interface;
struct WorkPermit;

// What must be true before a task can start. Which of the references are set goes by the kind.
struct TaskNeed
{
    Id<TaskNeed> id;
    Id<Task> task; // whose need it is
    int position = 0;
    NeedKind kind = NeedKind::Task;
    std::optional<Id<Task>> after;
    std::optional<Id<Part>> part;          // part, figure, tool, consumable, service
    std::optional<PartState> state;        // at least so far: in hand, tested, fitted
    std::optional<RatedQuantity> quantity; // figure
    std::optional<RatingBasis> basis;
    std::optional<Amount> amount; // consumable
    std::optional<Money> money;
    std::optional<Id<TestRecord>> test;
    std::optional<Id<Letter>> letter;
    std::optional<Id<Interface>> interface;
    std::optional<Id<WorkPermit>> permit; // a permit need may name one, or be said in words
    QString what;                         // person, permit, service, money: in words
    std::optional<QDate> metOn;           // where only a person can say so
    // Part, service, letter: used up by the attempt, needed anew when the work is done again after
    // a failed test (an appointment, a fee, gaskets).
    std::optional<bool> eachTime;
    bool operator==(const TaskNeed &) const = default;
};

enum class LetterKind { Authority, Scheme, Insurer, Engineer, Training, Other };
template <>
struct EnumWords<LetterKind>
{
    static constexpr std::array words{"authority", "scheme",   "insurer",
                                      "engineer",  "training", "other"};
};

enum class LetterState { ToAsk, Asked, Granted, Refused };
template <>
struct EnumWords<LetterState>
{
    static constexpr std::array words{"to ask", "asked", "granted", "refused"};
};

// A question put to an authority, insurer or engineer, and its answer, kept as evidence.
struct Letter
{
    Id<Letter> id;
    QString key, subject, toWhom;
    LetterKind kind = LetterKind::Authority;
    LetterState state = LetterState::ToAsk;
    std::optional<QDate> askedOn, askAgainOn, answeredOn, validUntil;
    std::optional<int> answerDays; // how long an answer usually takes
    std::optional<int> leastAnswerDays, mostAnswerDays;
    QString reference, note;
    bool operator==(const Letter &) const = default;
};

enum class TestKind {
    Isolation,
    Bonding,
    Torque,
    Precharge,
    Brakes,
    Charging,
    Coolant,
    Other,
    FirstPowerUp,
    Acceptance, // low-energy checks on arrival; never energises an unknown unit
};
template <>
struct EnumWords<TestKind>
{
    static constexpr std::array words{"isolation",      "bonding",   "torque",  "precharge",
                                      "brakes",         "charging",  "coolant", "other",
                                      "first power-up", "acceptance"};
};

enum class TestResult { Open, Passed, Failed };
template <>
struct EnumWords<TestResult>
{
    static constexpr std::array words{"open", "passed", "failed"};
};

struct TestRecord
{
    Id<TestRecord> id;
    QString key, name;
    TestKind kind = TestKind::Other;
    std::optional<Id<Part>> part;
    std::optional<Id<Circuit>> circuit;
    QString method, limitText; // limit in words with its source
    std::optional<Amount> limit, value;
    QString instrument, doneBy;
    std::optional<QDate> doneOn;
    TestResult result = TestResult::Open;
    QString note;
    bool operator==(const TestRecord &) const = default;
};

enum class MassDirection { Out, In, Load }; // load: people and luggage, for the laden vehicle
template <>
struct EnumWords<MassDirection>
{
    static constexpr std::array words{"out", "in", "load"};
};

struct MassEntry
{
    Id<MassEntry> id;
    QString key, name;
    MassDirection direction = MassDirection::In;
    std::optional<Amount> mass;
    std::optional<Amount> behindFrontAxle; // of its centre of gravity; negative: ahead of it
    std::optional<Amount> height;          // of the same, above the ground
    std::optional<Id<Part>> part;
    Evidence evidence = Evidence::Assumed;
    QString note;
    bool operator==(const MassEntry &) const = default;
};

enum class AttachmentKind { Photo, Document, Proof, Link };
template <>
struct EnumWords<AttachmentKind>
{
    static constexpr std::array words{"photo", "document", "proof", "link"};
};

// A photo or paper inside the book, or a link with the day it was read. The bytes lie in a table of
// their own, named by their SHA-256, outside the undo steps.
struct Attachment
{
    Id<Attachment> id;
    QString key, title;
    AttachmentKind kind = AttachmentKind::Photo;
    QString fileName, mediaType, sha256; // lower-case hex; empty for a link
    QString url;
    std::optional<QDate> readOn, takenOn;
    bool onSheet = false;
    bool ofVehicle = false; // at most one of this and the references below
    std::optional<Id<Part>> part;
    std::optional<Id<PartType>> type;
    std::optional<Id<Donor>> donor;
    std::optional<Id<Purchase>> purchase;
    std::optional<Id<Task>> task;
    std::optional<Id<TestRecord>> test;
    std::optional<Id<Letter>> letter;
    QString note;
    bool operator==(const Attachment &) const = default;
};

} // namespace ohmwright
