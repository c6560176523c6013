// SPDX-License-Identifier: GPL-3.0-or-later
// Which single changes may be looked at at all: what no plan leaves out, what cannot be ordered
// today.
#pragma once

#include "core/records/records.h"

#include <QDate>
#include <QString>

#include <map>

namespace ohmwright::forecast {

// By task, an open one that waits on it, milestones included; the first by key.
using WaitedOn = std::map<Id<ohmwright::Task>, const ohmwright::Task *>;
WaitedOn waitedOnBy(const Records &records);

// Why no plan leaves out an open task, a sentence; empty if it is free work. Kept is
// - what any open task or milestone waits on: that it could do without is for the book to say, by
//   taking the link away, not for a forecast to guess;
// - what may protect people: high voltage, or parts on its circuits; parts and tests of the
//   register of safety systems; testing, paperwork, what may fail, what needs a test, a permit, a
//   letter or a second person;
// - what buys or opens a part, or asks for a letter; and a milestone.
// `waited`: waitedOnBy(), once for many tasks.
QString whyKept(const Records &records, const ohmwright::Task &task, const WaitedOn &waited);

// Why a part that is wanted cannot be ordered today, a sentence: the task that orders it waits for
// something that is not done, drawn, decided, answered or known yet. Empty if it can.
QString whyNotToday(const Records &records, const Part &part);

} // namespace ohmwright::forecast
