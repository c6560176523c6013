// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/options.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Options", text);
}

} // namespace

const ChoiceOption *plannedOption(const Records &records, const Choice &choice)
{
    if (const ChoiceOption *taken = records.find(choice.taken))
        return taken;
    const auto options = records.of<ChoiceOption>(choice.id);
    return options.empty() ? nullptr : &options.front();
}

bool isPlannedWith(const Records &records, const std::optional<Id<ChoiceOption>> &option)
{
    const ChoiceOption *one = records.find(option);
    const Choice *choice = one ? records.find(one->choice) : nullptr;
    if (!choice)
        return true;
    const ChoiceOption *planned = plannedOption(records, *choice);
    return planned && planned->id == one->id;
}

Outcome takeOption(Book &book, Id<ChoiceOption> option, const QString &because)
{
    const ChoiceOption *taken = book.records().find(option);
    const Choice *choice = taken ? book.records().find(taken->choice) : nullptr;
    if (!choice)
        return fail(ProblemCode::NotFound, tr("This option is no longer in the book."));
    if (choice->taken)
        return fail(ProblemCode::NotAllowed, tr("“%1” is decided already.").arg(choice->question),
                    tr("Empty “Taken” on its card first, to open it again."));
    Choice decided = *choice;
    decided.taken = option;
    decided.decidedOn = book.clock().today();
    decided.because = because.trimmed();
    return book.edit(tr("Take “%1” for “%2”").arg(taken->name, choice->question),
                     [&] { return book.update(decided); });
}

} // namespace ohmwright
