// SPDX-License-Identifier: GPL-3.0-or-later
// Choices still open, their options side by side, and the day by which to decide.
#pragma once

#include "core/forecast/forecast.h"
#include "core/quantity/money.h"

namespace ohmwright::forecast {

struct OptionOutlook
{
    Id<ChoiceOption> option;
    QString name;
    int openTasks = 0;
    int openMinutes = 0;          // person-minutes, likely
    Money cost;                   // of its wanted parts, book's currency
    int unpriced = 0;             // of them, without a price that can be counted
    int ready50 = 0, ready80 = 0; // of the last milestone (the end, without one), days from today
    // Latest day for its first task or order that moves no milestone; none if it has nothing to do
    // or no milestone waits on it.
    std::optional<int> startBy;
};

struct ChoiceOutlook
{
    Id<Choice> choice;
    QString key, question;
    std::vector<OptionOutlook> options; // in order of position
    std::optional<int> decideBy;        // the soonest startBy: all options are still open till then
};

// The records as if that option had been taken; a copy, nothing is written.
Records withOption(const Records &records, const ChoiceOption &option);

// Of every choice without an option taken, in key order. Each option on the same luck; the other
// choices as they are planned.
std::vector<ChoiceOutlook> openChoices(const Records &records, QDate today,
                                       const Settings &settings, int confidencePercent,
                                       const Watch &watch = {});

} // namespace ohmwright::forecast
