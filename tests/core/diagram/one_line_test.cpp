// SPDX-License-Identifier: GPL-3.0-or-later
// The one-line diagram says what the book says, and what the book leaves open.
#include "core/diagram/one_line.h"
#include "tests/support/test_book.h"

#include <QXmlStreamReader>

#include <gtest/gtest.h>

namespace ohmwright {
namespace {

class OneLineDiagram : public testing::Test
{
protected:
    Id<Part> on(const char *name, PartRole role, std::optional<Id<Branch>> branch = {})
    {
        Part part = namedPart(QString::fromUtf8(name));
        part.role = role;
        const Id<Part> id = book.add(part);
        Connection connection;
        connection.part = id;
        connection.circuit = traction;
        connection.branch = branch;
        book.add(connection);
        return id;
    }

    Id<Branch> branch(const char *name)
    {
        Branch row;
        row.name = QString::fromUtf8(name);
        row.circuit = traction;
        row.conductorSize = amount("50 mm2");
        row.conductorLength = amount("3 m");
        row.continuousCurrent = amount("110 A");
        return book.add(row);
    }

    void makeTraction()
    {
        Circuit circuit;
        circuit.name = QStringLiteral("Traction");
        circuit.nominalVoltage = amount("389 V");
        traction = book.add(circuit);
    }

    static QStringList texts(const QByteArray &svg)
    {
        QStringList found;
        QXmlStreamReader xml(svg);
        while (!xml.atEnd())
            if (xml.readNext() == QXmlStreamReader::StartElement &&
                xml.name() == QLatin1String("text"))
                found << xml.readElementText();
        EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
        return found;
    }

    TestBook book;
    Id<Circuit> traction;
};

TEST_F(OneLineDiagram, IsEmptyWithoutATractionCircuit)
{
    EXPECT_TRUE(oneLineOf(book.records()).svg.isEmpty());
}

TEST_F(OneLineDiagram, DrawsEveryUnitOnceWithItsConductor)
{
    makeTraction();
    const auto main = branch("Pack to box");
    on("Plus contactor", PartRole::Contactor, main);
    on("Disconnect <middle>", PartRole::Disconnect, main);
    on("Inverter", PartRole::Inverter, branch("Box to inverter"));
    on("Heater", PartRole::Heater, branch("Box to heater"));
    const OneLine line = oneLineOf(book.records());
    const QStringList words = texts(line.svg);
    EXPECT_EQ(words.count(QStringLiteral("Inverter")), 1);
    EXPECT_EQ(words.count(QStringLiteral("Heater")), 1);
    EXPECT_TRUE(words.contains(QStringLiteral("Disconnect <middle>")));
    EXPECT_TRUE(words.contains(QStringLiteral("50 mm², 3 m")));
    EXPECT_TRUE(line.description.contains(QStringLiteral("feeds Inverter")));
}

TEST_F(OneLineDiagram, KeepsNamesWholeInFewLinesAndNumbersWithTheirUnits)
{
    makeTraction();
    on("12 V converter, in the charger's case", PartRole::Converter, branch("To converter"));
    on("Cabin heater of 5 kW", PartRole::Heater, branch("To heater"));
    on("Main fuse 250 A with holder", PartRole::Fuse, branch("Pack to box"));
    const QStringList words = texts(oneLineOf(book.records()).svg);
    EXPECT_TRUE(words.contains(QStringLiteral("12 V converter,"))) << words.join('|').toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("in the charger's")));
    EXPECT_TRUE(words.contains(QStringLiteral("case")));
    EXPECT_TRUE(words.contains(QStringLiteral("Cabin heater of")));
    EXPECT_TRUE(words.contains(QStringLiteral("5 kW")));
}

TEST_F(OneLineDiagram, SaysWhatTheBookLeavesOpen)
{
    makeTraction();
    on("Inverter", PartRole::Inverter);
    const OneLine line = oneLineOf(book.records());
    EXPECT_FALSE(line.svg.isEmpty());
    const QString open = line.notDrawn.join(u' ');
    EXPECT_TRUE(open.contains(QStringLiteral("contactor")));
    EXPECT_TRUE(open.contains(QStringLiteral("disconnect")));
    EXPECT_TRUE(open.contains(QStringLiteral("none of its branches")));
    EXPECT_TRUE(open.contains(QStringLiteral("motor")));
}

TEST_F(OneLineDiagram, OnlyTheHighVoltageIsInItsColour)
{
    makeTraction();
    on("Inverter", PartRole::Inverter, branch("Box to inverter"));
    DiagramColours colours;
    colours.highVoltage = QStringLiteral("#123456");
    const QByteArray svg = oneLineOf(book.records(), colours).svg;
    QXmlStreamReader xml(svg);
    while (!xml.atEnd()) {
        if (xml.readNext() == QXmlStreamReader::StartElement &&
            xml.name() == QLatin1String("text")) {
            EXPECT_NE(xml.attributes().value(QLatin1String("fill")), QLatin1String("#123456"))
                << "orange is for lines, never for small text";
        }
    }
    EXPECT_TRUE(svg.contains("#123456"));
}

} // namespace
} // namespace ohmwright
