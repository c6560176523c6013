// SPDX-License-Identifier: GPL-3.0-or-later
// Checks, safety systems, interfaces, wires and permits on the build sheet.
#include "core/checks/precharge.h"
#include "core/sheet/build_sheet.h"
#include "core/sheet/html_writer.h"
#include "tests/support/test_book.h"

namespace ohmwright {
namespace {

PrechargeInputs known()
{
    PrechargeInputs in;
    in.packVoltage = given(volts(400), QStringLiteral("pack voltage"));
    in.linkCapacitance =
        given(Capacitance::fromSi(1e-3), QStringLiteral("capacitance of the link"));
    in.resistance = given(ohms(47), QStringLiteral("precharge resistor"));
    in.pulseEnergy = given(joules(200), QStringLiteral("pulse energy"));
    in.timeBeforeClosing =
        given(seconds(0.1), QStringLiteral("time before closing"), Evidence::Measured);
    return in;
}

QString sheetOf(const Records &records, std::vector<Check> checks,
                const std::function<QByteArray(const Plot &)> &picture = {})
{
    SheetOptions options;
    options.today = QDate(2026, 3, 9);
    options.revision = 3;
    options.checks = std::move(checks);
    options.plotPicture = picture;
    return QString::fromUtf8(sheet::toHtml(buildSheet(records, options), {}));
}

TEST(SheetChecks, ALooserThresholdStandsBesideThePublishedOneWithItsReason)
{
    TestBook book;
    PrechargeInputs in = known();
    in.reached.own = 0.5;
    in.reached.reason = QStringLiteral("the contactor is rated for making");
    const Check check = judgePrecharge(in);
    ASSERT_TRUE(check.publishedVerdict);
    const QString page = sheetOf(book.records(), {check});
    EXPECT_TRUE(page.contains(QStringLiteral("the contactor is rated for making")));
    EXPECT_TRUE(page.contains(QStringLiteral("fails by the published threshold")));
    EXPECT_TRUE(page.contains(QStringLiteral("precharge resistor"))) << "worked, with its inputs";
}

TEST(SheetChecks, WhatIsNotKnownIsSaidAndHasNoMargin)
{
    TestBook book;
    PrechargeInputs in = known();
    in.pulseEnergy.value.reset();
    in.timeBeforeClosing.value = seconds(0.2); // 99 % reached: what is known holds
    const QString page = sheetOf(book.records(), {judgePrecharge(in)});
    EXPECT_TRUE(page.contains(QStringLiteral("for want of pulse energy")));
    EXPECT_TRUE(page.contains(QStringLiteral("1 unknown")));
}

TEST(SheetChecks, WhatFailsOrIsOpenStandsAmongTheOpenPoints)
{
    TestBook book;
    SafetySystem interlock;
    interlock.name = QStringLiteral("Interlock loop");
    book.add(interlock);
    WorkPermit permit;
    permit.name = QStringLiteral("Building the pack");
    book.add(permit);
    PrechargeInputs in = known();
    in.pulseEnergy.value.reset();
    in.timeBeforeClosing.value = seconds(0.2); // what is known holds
    const QString page = sheetOf(book.records(), {judgePrecharge(in)});
    const qsizetype open = page.indexOf(QStringLiteral("id=\"open-points\""));
    ASSERT_GE(open, 0);
    for (const char *told : {"Checks that fail or cannot be decided", "for want of pulse energy",
                             "Safety systems not proven", "Interlock loop",
                             "Work permits that do not hold", "Building the pack"})
        EXPECT_GT(page.indexOf(QString::fromUtf8(told), open), open) << told;
}

// Nothing asked and nothing tested is not all in order.
TEST(SheetChecks, NothingRecordedIsNoGoodNews)
{
    TestBook book;
    const QString page = sheetOf(book.records(), {});
    EXPECT_EQ(page.count(QStringLiteral("none recorded")), 3);
    for (const char *never : {"all in hand", "all passed", "0 of 0"})
        EXPECT_FALSE(page.contains(QString::fromUtf8(never))) << never;
}

TEST(SheetChecks, PlotsAreDrawnWhereThereIsSomebodyToDrawThem)
{
    TestBook book;
    Check check = judgePrecharge(known());
    Plot plot;
    plot.title = QStringLiteral("Link over time");
    check.plots.push_back(plot);
    EXPECT_FALSE(sheetOf(book.records(), {check}).contains(QStringLiteral("Link over time")));
    const QString drawn = sheetOf(book.records(), {check}, [](const Plot &) {
        return QByteArray("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"4\" height=\"4\"/>");
    });
    EXPECT_TRUE(drawn.contains(QStringLiteral("Link over time")));
}

TEST(SheetChecks, MarginsBeyondTheWholeLimitAreTimes)
{
    TestBook book;
    Check check = judgePrecharge(known());
    check.margin = 2.2;
    check.verdict = Verdict::Holds;
    const QString page = sheetOf(book.records(), {check});
    EXPECT_TRUE(page.contains(QStringLiteral("3.2 times")));
    EXPECT_FALSE(page.contains(QStringLiteral("220 %")));
}

TEST(SheetChecks, RowsAlikeAreJoinedAndWhatWasSaidOfAKindIsSaidOnce)
{
    TestBook book;
    Check check = judgePrecharge(known());
    for (int i = 1; i <= 9; ++i) {
        CheckInput input;
        input.origin.name = QStringLiteral("voltage limit of Module %1").arg(i);
        input.origin.evidence = Evidence::Datasheet;
        input.symbol = QStringLiteral("Uₘ");
        input.shown = i == 4 ? QStringLiteral("500 V") : QStringLiteral("600 V");
        check.inputs.push_back(input);
        Comparison held;
        held.what = QStringLiteral("Module %1 held").arg(i);
        held.value = QStringLiteral("450 V");
        held.limit = input.shown;
        held.margin = i == 4 ? 0.1 : 0.25;
        held.verdict = Verdict::Holds;
        check.comparisons.push_back(held);
    }
    const QString page = sheetOf(book.records(), {check, check});
    EXPECT_EQ(page.count(QStringLiteral("voltage limit of Module 1")), 2); // of each check
    EXPECT_FALSE(page.contains(QStringLiteral("voltage limit of Module 2")));
    EXPECT_EQ(page.count(QStringLiteral("voltage limit of Module 4")), 2); // another value
    EXPECT_TRUE(page.contains(QStringLiteral("and 7 more alike, to “voltage limit of Module 9”")));
    EXPECT_TRUE(page.contains(QStringLiteral("and 7 more alike, to “Module 9 held”")));
    EXPECT_EQ(page.count(QStringLiteral("Then measure the link")), 1);
    EXPECT_EQ(page.count(QStringLiteral("First-order response")), 1);
}

TEST(SheetChecks, ABookWithoutThemHasNoEmptyHeadings)
{
    TestBook book;
    const QString page = sheetOf(book.records(), {});
    for (const char *heading : {"Engineering checks", "Checks, worked", "Safety systems",
                                "Interfaces", "Wire list", "Work permits", "One-line diagram"})
        EXPECT_FALSE(page.contains(QString::fromLatin1(heading))) << heading;
}

TEST(SheetChecks, SafetyInterfacesWiresAndPermitsAreTold)
{
    TestBook book;
    const Id<Part> inverter = book.add(namedPart(QStringLiteral("Inverter")));
    SafetySystem loop;
    loop.name = QStringLiteral("Interlock loop");
    loop.kind = SafetyKind::Interlock;
    loop.place = QStringLiteral("through every orange plug");
    book.add(loop);
    Interface control;
    control.name = QStringLiteral("Inverter, control");
    control.part = inverter;
    control.wakeSignal = QStringLiteral("12 V on pin 12");
    const Id<Interface> interface = book.add(control);
    InterfacePin pin;
    pin.interface = interface;
    pin.pin = QStringLiteral("12");
    pin.signal = QStringLiteral("wake");
    book.add(pin);
    Wire wire;
    wire.name = QStringLiteral("W101");
    wire.from = inverter;
    wire.fromPin = QStringLiteral("12");
    wire.toPin = QStringLiteral("relay box, F7");
    book.add(wire);
    WorkPermit permit;
    permit.name = QStringLiteral("Close the pack");
    book.add(permit);
    const QString page = sheetOf(book.records(), {});
    for (const char *word :
         {"Interlock loop", "through every orange plug", "Inverter, control", "12 V on pin 12",
          "to find out", "W101", "Inverter 12", "relay box, F7", "Close the pack", "does not hold"})
        EXPECT_TRUE(page.contains(QString::fromLatin1(word))) << word;
}

} // namespace
} // namespace ohmwright
