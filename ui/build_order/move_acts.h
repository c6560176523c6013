// SPDX-License-Identifier: GPL-3.0-or-later
// What pressing Enter on a next move does.
#pragma once

#include "core/book/book.h"
#include "core/plan/network.h"

#include <QString>

#include <optional>

namespace ohmwright::ui {

enum class MoveAct {
    Finish,  // the task is done
    FindOut, // a find-out task is made
    Meet,    // someone said so: agreed, paid, booked
    Part,    // the part's own page
    Open,    // there, the step that records that it was opened
    Letter,  // asked, answered, granted
    Test,    // its result, of one without steps
    Accept,  // a record of acceptance checks is made
    Card,    // the card of an interface, a work permit or a guided test
    None,    // the need has gone from the book
};

struct MoveSubject
{
    MoveAct act = MoveAct::None;
    QString partKey;
    std::optional<Id<Task>> task;
    std::optional<Id<Letter>> letter;
    std::optional<Id<TestRecord>> test;
    QString cardTable, cardKey;
};

[[nodiscard]] MoveSubject subjectOf(const Records &records, const plan::Move &move);

// Finish, find out, meet: one edit, today. The sentence says what was done.
Result<QString> actOn(Book &book, const plan::Move &move);

// What the button says: "Mark it done", "Paid today", …; empty where there is nothing to press.
[[nodiscard]] QString actName(const Records &records, const plan::Move &move);

} // namespace ohmwright::ui
