// SPDX-License-Identifier: GPL-3.0-or-later
// Wiring: which parts of a build hang on which circuit and branch, worked out once for all of them.
//
// A part that is not connected itself is where the nearest part it sits in is: the windings of a
// motor are on the motor's circuit. One that is connected is only where it says: the control head
// of a heater may be on the 12 V side alone, and the relay within it on the traction circuit again.
#pragma once

#include "core/checks/assembly.h"
#include "core/records/records.h"

#include <functional>
#include <map>
#include <vector>

namespace ohmwright {

class Wiring
{
public:
    explicit Wiring(const Records &records);

    // In key order.
    [[nodiscard]] const std::vector<const Part *> &on(const Circuit &circuit) const;
    [[nodiscard]] const std::vector<const Part *> &on(const Branch &branch) const;
    [[nodiscard]] const std::vector<const Part *> &inside(const Part &part) const;
    [[nodiscard]] std::vector<const Part *> on(const Circuit &circuit, PartRole role) const;
    [[nodiscard]] bool isOn(const Part &part, const Circuit &circuit) const;
    [[nodiscard]] bool isOn(const Part &part, const Branch &branch) const;
    // On a 12 V circuit and on another: its ratings are of that other side.
    [[nodiscard]] bool hasLowSide(const Part &part) const;
    // Whether it says itself what it is connected to.
    [[nodiscard]] bool isConnectedItself(const Part &part) const;

    // The parts that are on something, as assemblies: each outermost one with what is inside, to
    // any depth, less what leads to nothing that is on it. `limits` gives those of a part and
    // whether it is live.
    template <class Limit, class On>
    std::vector<Assembly<Limit>>
    assemblies(const On &what, const std::function<QString(const Part &)> &nameOfOutermost,
               const std::function<void(const Part &, Assembly<Limit> &)> &limits) const
    {
        std::vector<Assembly<Limit>> made;
        for (const Part *part : on(what))
            if (!sitsInOneOn(*part, what)) {
                Assembly<Limit> assembly = assemblyOf<Limit>(*part, what, limits, 0);
                assembly.name = nameOfOutermost(*part);
                made.push_back(std::move(assembly));
            }
        return made;
    }

    // Battery modules on the circuit, in key order.
    [[nodiscard]] std::vector<const Part *> modulesOn(const Circuit &circuit) const;

private:
    // deeper than any vehicle; a loop of assemblies is refused elsewhere and here only must end
    static constexpr int kDeepest = 32;

    template <class On>
    bool sitsInOneOn(const Part &part, const On &what) const
    {
        const Part *above = m_records.find(part.partOf);
        for (int depth = 0; above && depth < kDeepest; ++depth) {
            if (isOn(*above, what))
                return true;
            above = m_records.find(above->partOf);
        }
        return false;
    }
    template <class Limit, class On>
    Assembly<Limit> assemblyOf(const Part &part, const On &what,
                               const std::function<void(const Part &, Assembly<Limit> &)> &limits,
                               int depth) const
    {
        Assembly<Limit> made;
        made.name = part.name;
        made.isLive = isOn(part, what);
        if (made.isLive)
            limits(part, made);
        if (depth < kDeepest)
            for (const Part *inner : inside(part)) {
                Assembly<Limit> within = assemblyOf<Limit>(*inner, what, limits, depth + 1);
                if (within.isLive || !within.inside.empty())
                    made.inside.push_back(std::move(within));
            }
        return made;
    }
    [[nodiscard]] std::span<const Connection> connectionsOf(const Part &part) const;

    const Records &m_records;
    std::map<Id<Circuit>, std::vector<const Part *>> m_onCircuit;
    std::map<Id<Branch>, std::vector<const Part *>> m_onBranch;
    std::map<Id<Part>, std::vector<const Part *>> m_inside;
};

class BookInputs;
// Of the records of these inputs, and as long-lived as they are.
const Wiring &wiringOf(const BookInputs &inputs);

} // namespace ohmwright
