// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/voltage_class.h"

#include <algorithm>

namespace ohmwright {

namespace {

constexpr double kMostClassADc = 60.0; // V
constexpr double kMostClassAAc = 30.0; // V rms

} // namespace

bool isVoltageClassB(const Circuit &circuit)
{
    const std::optional<Amount> &voltage =
        circuit.worstVoltage ? circuit.worstVoltage : circuit.nominalVoltage;
    if (!voltage)
        return circuit.kind != CircuitKind::LowVoltage;
    return voltage->si() > (circuit.current == CurrentKind::Dc ? kMostClassADc : kMostClassAAc);
}

bool isVoltageClassB(const Records &records, const Part &part)
{
    const auto connections = records.of<Connection>(part.id);
    return std::any_of(connections.begin(), connections.end(), [&](const Connection &connection) {
        const Circuit *circuit = records.find(connection.circuit);
        return circuit && isVoltageClassB(*circuit);
    });
}

} // namespace ohmwright
