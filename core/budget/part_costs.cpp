// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/budget/part_costs.h"

#include <algorithm>

namespace ohmwright {

std::unordered_map<Id<Part>, Money> landedCosts(const Records &records)
{
    // in the order of the parts' keys, which decides who gets the odd minor unit
    std::unordered_map<Id<PurchaseItem>, std::vector<Id<Part>>> partsOfItem;
    for (const Part &part : records.all<Part>())
        if (part.bought)
            partsOfItem[*part.bought].push_back(part.id);
    std::unordered_map<Id<Part>, Money> costs;
    for (const Purchase &purchase : records.all<Purchase>()) {
        for (const LandedItem &landed : landedCost(records, purchase).items) {
            const auto parts = partsOfItem.find(landed.item);
            if (parts == partsOfItem.end())
                continue;
            const auto count = static_cast<std::size_t>(records.find(landed.item)->count);
            const std::vector<std::int64_t> equal(std::max(parts->second.size(), count), 1);
            const std::vector<Money> shares = shareOut(landed.inBook, equal);
            for (std::size_t i = 0; i < parts->second.size(); ++i)
                costs.emplace(parts->second[i], shares[i]);
        }
    }
    return costs;
}

} // namespace ohmwright
