// SPDX-License-Identifier: GPL-3.0-or-later
// The edges of voltage class B: above 60 V DC, above 30 V AC rms. Source: 49 CFR 571.305 S3, the
// same edges as ISO 6469-3's classes and UN R100's "high voltage" (those two from memory).
#include "core/parts/voltage_class.h"
#include "tests/support/test_book.h"

namespace ohmwright {
namespace {

Circuit circuitAt(const char *worst, CurrentKind current, CircuitKind kind = CircuitKind::Traction)
{
    Circuit circuit;
    circuit.name = QStringLiteral("Circuit");
    circuit.kind = kind;
    circuit.current = current;
    if (*worst)
        circuit.worstVoltage = amount(worst);
    return circuit;
}

TEST(VoltageClass, sixtyVoltsDcIsStillClassA)
{
    EXPECT_FALSE(isVoltageClassB(circuitAt("60 V", CurrentKind::Dc)));
    EXPECT_TRUE(isVoltageClassB(circuitAt("60.1 V", CurrentKind::Dc)));
}

TEST(VoltageClass, thirtyVoltsAcIsStillClassA)
{
    EXPECT_FALSE(isVoltageClassB(circuitAt("30 V", CurrentKind::Ac)));
    EXPECT_TRUE(isVoltageClassB(circuitAt("30.1 V", CurrentKind::Ac)));
}

TEST(VoltageClass, goesByTheWorstVoltageNotTheNominalOne)
{
    Circuit circuit = circuitAt("67.2 V", CurrentKind::Dc);
    circuit.nominalVoltage = amount("57.6 V");
    EXPECT_TRUE(isVoltageClassB(circuit));
    circuit.worstVoltage.reset();
    EXPECT_FALSE(isVoltageClassB(circuit));
}

TEST(VoltageClass, anUnknownVoltageCountsAsClassB)
{
    for (const CircuitKind kind :
         {CircuitKind::Traction, CircuitKind::Phases, CircuitKind::ChargeInlet, CircuitKind::Other})
        EXPECT_TRUE(isVoltageClassB(circuitAt("", CurrentKind::Dc, kind)));
    EXPECT_FALSE(isVoltageClassB(circuitAt("", CurrentKind::Dc, CircuitKind::LowVoltage)));
}

TEST(VoltageClass, callingACircuitLowVoltageDoesNotMakeItOne)
{
    EXPECT_TRUE(isVoltageClassB(circuitAt("72 V", CurrentKind::Dc, CircuitKind::LowVoltage)));
}

TEST(VoltageClass, aPartIsClassBOnceOneOfItsCircuitsIs)
{
    TestBook book;
    const Id<Part> converter = book.add(namedPart(QStringLiteral("Converter")));
    const auto connect = [&](Circuit circuit) {
        Connection connection;
        connection.part = converter;
        connection.circuit = book.add(std::move(circuit));
        book.add(connection);
    };
    const auto isB = [&] {
        return isVoltageClassB(book.records(), *book.records().find(converter));
    };
    EXPECT_FALSE(isB());
    connect(circuitAt("14.8 V", CurrentKind::Dc, CircuitKind::LowVoltage));
    EXPECT_FALSE(isB());
    connect(circuitAt("453.6 V", CurrentKind::Dc));
    EXPECT_TRUE(isB());
}

} // namespace
} // namespace ohmwright
