// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/options.h"

namespace ohmwright {

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

} // namespace ohmwright
