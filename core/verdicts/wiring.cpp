// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/wiring.h"

// first: g++ 12 takes its enumerators for shadows of the quantities' types
#include "core/verdicts/book_inputs.h"
#include "core/verdicts/build_parts.h"

#include <algorithm>

namespace ohmwright {

namespace {

const std::vector<const Part *> kNone;

template <class Key>
const std::vector<const Part *> &at(const std::map<Key, std::vector<const Part *>> &lists, Key key)
{
    const auto found = lists.find(key);
    return found == lists.end() ? kNone : found->second;
}

// A part may be connected to a circuit twice, in two branches.
template <class Key>
void put(std::map<Key, std::vector<const Part *>> &lists, Key key, const Part *part)
{
    std::vector<const Part *> &list = lists[key];
    if (list.empty() || list.back() != part)
        list.push_back(part);
}

} // namespace

Wiring::Wiring(const Records &records) : m_records(records)
{
    for (const Part &part : records.all<Part>()) {
        if (!isOfTheBuild(records, part))
            continue;
        if (part.partOf)
            m_inside[*part.partOf].push_back(&part);
        for (const Connection &connection : connectionsOf(part)) {
            put(m_onCircuit, connection.circuit, &part);
            if (connection.branch)
                put(m_onBranch, *connection.branch, &part);
        }
    }
}

std::span<const Connection> Wiring::connectionsOf(const Part &part) const
{
    const Part *at = &part;
    for (int depth = 0; at && depth < kDeepest; ++depth) {
        const std::span<const Connection> own = m_records.of<Connection>(at->id);
        if (!own.empty())
            return own;
        at = m_records.find(at->partOf);
    }
    return {};
}

const std::vector<const Part *> &Wiring::on(const Circuit &circuit) const
{
    return at(m_onCircuit, circuit.id);
}

const std::vector<const Part *> &Wiring::on(const Branch &branch) const
{
    return at(m_onBranch, branch.id);
}

const std::vector<const Part *> &Wiring::inside(const Part &part) const
{
    return at(m_inside, part.id);
}

bool Wiring::hasLowSide(const Part &part) const
{
    bool low = false, other = false;
    for (const Connection &connection : m_records.of<Connection>(part.id))
        if (const Circuit *circuit = m_records.find(connection.circuit))
            (circuit->kind == CircuitKind::LowVoltage ? low : other) = true;
    return low && other;
}

std::vector<const Part *> Wiring::on(const Circuit &circuit, PartRole role) const
{
    std::vector<const Part *> found;
    std::ranges::copy_if(on(circuit), std::back_inserter(found),
                         [role](const Part *part) { return part->role == role; });
    return found;
}

std::vector<const Part *> Wiring::modulesOn(const Circuit &circuit) const
{
    std::vector<const Part *> modules;
    std::ranges::copy_if(on(circuit), std::back_inserter(modules),
                         [](const Part *part) { return part->kind == PartKind::Module; });
    return modules;
}

bool Wiring::isOn(const Part &part, const Circuit &circuit) const
{
    return std::ranges::any_of(connectionsOf(part), [&](const Connection &connection) {
        return connection.circuit == circuit.id;
    });
}

bool Wiring::isOn(const Part &part, const Branch &branch) const
{
    return std::ranges::any_of(connectionsOf(part), [&](const Connection &connection) {
        return connection.branch == branch.id;
    });
}

bool Wiring::isConnectedItself(const Part &part) const
{
    return !m_records.of<Connection>(part.id).empty();
}

const Wiring &wiringOf(const BookInputs &inputs)
{
    return inputs.once<Wiring>([](const BookInputs &in) { return Wiring(in.records()); });
}

} // namespace ohmwright
