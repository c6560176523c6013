// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_tubes.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>
#include <vector>

namespace ohmwright::ui {

namespace {

// Heights that differ by less are one run's.
constexpr double kSameHeight = 1;
// A wire may end so far within the stretch: at the seal of a housing.
constexpr double kSeal = 9;

using Stretches = std::vector<std::pair<double, double>>;

// Of the wires that run straight within a run: from where to where, by height.
class Cores
{
public:
    explicit Cores(const plan::Loom &loom)
    {
        for (const plan::LoomWire &wire : loom.wires)
            if (wire.alongTrunk && !wire.path.empty())
                m_at[key(wire.path.front().y())].emplace_back(wire.path.front().x(),
                                                              wire.path.back().x());
    }

    [[nodiscard]] bool fill(double y, double left, double right) const
    {
        for (const int near : {key(y) - 1, key(y), key(y) + 1}) {
            const auto at = m_at.find(near);
            if (at != m_at.end() &&
                std::any_of(at->second.begin(), at->second.end(), [&](const auto &core) {
                    return core.first <= left + kSeal && core.second >= right - kSeal;
                }))
                return true;
        }
        return false;
    }

private:
    static int key(double y) { return static_cast<int>(std::lround(y / kSameHeight)); }

    std::map<int, Stretches> m_at;
};

} // namespace

void openEmptyTubes(plan::Loom &loom)
{
    const Cores cores(loom);
    struct Opened
    {
        double y = 0, left = 0, right = 0;
    };
    std::vector<Opened> opened;
    for (plan::LoomBranch &branch : loom.branches) {
        for (plan::LoomTrunk &trunk : branch.runs) {
            if (!trunk.fork.empty()) {
                // No wire lies in the bend: the run gets a name of its own instead, with as much
                // room as the bend had.
                if (!trunk.spans.empty())
                    trunk.spans.front().left = trunk.fork.front().x();
                trunk.left = trunk.fork.front().x();
                trunk.fork.clear();
            }
            const auto empty = [&](const plan::LoomSpan &span) {
                const bool atName = span.left <= trunk.left;
                if (atName || cores.fill(trunk.y, span.left, span.right))
                    return false;
                opened.push_back({trunk.y, span.left, span.right});
                return true;
            };
            std::erase_if(trunk.spans, empty);
        }
    }
    std::erase_if(loom.ties, [&](const plan::LoomTie &tie) {
        return !tie.acrossUpright &&
               std::any_of(opened.begin(), opened.end(), [&](const Opened &gap) {
                   return std::abs(gap.y - tie.at.y()) < kSameHeight && tie.at.x() > gap.left &&
                          tie.at.x() < gap.right;
               });
    });
}

} // namespace ohmwright::ui
