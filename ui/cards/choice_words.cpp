// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/choice_words.h"

#include "core/quantity/dates.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright::ui {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("ChoiceWords", text);
}

} // namespace

RecordGroup groupOf(const Records &records, const RecordKind &kind, std::int64_t id)
{
    if (kind.table() != "choice")
        return {};
    const Choice *choice = records.find(Id<Choice>(id));
    return choice && choice->taken ? RecordGroup{1, tr("Decided")} : RecordGroup{0, tr("Open")};
}

QString choiceDetail(const Records &records, const Choice &choice)
{
    if (const ChoiceOption *taken = records.find(choice.taken))
        return choice.decidedOn
                   ? tr("%1, taken on %2").arg(taken->name, showDate(*choice.decidedOn))
                   : tr("%1, taken").arg(taken->name);
    const auto options = records.of<ChoiceOption>(choice.id).size();
    QString words = options == 1 ? tr("1 option") : tr("%1 options").arg(options);
    if (choice.decideBy)
        words += tr(", to decide by %1").arg(showDate(*choice.decideBy));
    return words;
}

int openChoiceCount(const Records &records)
{
    const auto &choices = records.all<Choice>();
    return static_cast<int>(std::count_if(choices.begin(), choices.end(),
                                          [](const Choice &choice) { return !choice.taken; }));
}

} // namespace ohmwright::ui
