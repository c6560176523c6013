// SPDX-License-Identifier: GPL-3.0-or-later
// How long deliveries and answers are waited for: in all, and what is left of those under way.
#pragma once

#include "core/forecast/spread.h"
#include "core/records/records.h"

#include <QDate>
#include <QString>

namespace ohmwright::forecast {

// Days from order to arrival, from question to answer; assumed where nobody told them.
ThreePoint leadOf(const Part &part);
ThreePoint answerOf(const Letter &letter);

// What is left of a wait; with a sentence where it should be over (plan/overdue.h).
struct WaitLeft
{
    ThreePoint days;
    QString doubt;
};

// Of a part on order: from the day it was promised for, early and late by as much as its estimates
// are apart. Of a letter asked: the estimate less the days since. What is overdue takes as long
// again as was estimated, from today on at best, and not before the day to ask again.
WaitLeft deliveryLeft(const Records &records, const Part &part, QDate today);
WaitLeft answerLeft(const Letter &letter, QDate today);

// What a task waits for when it is done once more: its own waiting, and what it orders, or asks
// for, anew.
ThreePoint waitAgain(const Records &records, const ohmwright::Task &task);

} // namespace ohmwright::forecast
