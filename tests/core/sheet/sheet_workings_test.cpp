// SPDX-License-Identifier: GPL-3.0-or-later
// The working of checks at the end of the build sheet: nothing is told twice, nothing is lost.
#include "core/checks/origin_words.h"
#include "core/sheet/build_sheet.h"
#include "tests/support/test_book.h"

#include <algorithm>

namespace ohmwright {
namespace {

using namespace sheet;

CheckInput input(const QString &symbol, const QString &name, const QString &shown,
                 const QString &source, const QString &path = {})
{
    CheckInput one;
    one.symbol = symbol;
    one.shown = shown;
    one.origin.name = name;
    one.origin.path = path;
    one.origin.evidence = Evidence::Datasheet;
    one.origin.source = source;
    return one;
}

Comparison held(const QString &what, const QString &value, const QString &limit,
                const QString &from, Verdict verdict = Verdict::Holds)
{
    return {what, value, QStringLiteral("≤"), limit, from, 0.25, verdict};
}

// A branch of the given current through parts of the given limits, all of one box.
Check ratings(const QString &branch, Verdict verdict, const QStringList &parts)
{
    Check check;
    check.id = QStringLiteral("branch_ratings");
    check.subject = branch;
    check.title = QStringLiteral("Current ratings on the branch “%1”").arg(branch);
    check.verdict = verdict;
    check.sentence = QStringLiteral("So it is with %1.").arg(branch);
    check.inputs.push_back(input(QStringLiteral("I"),
                                 QStringLiteral("continuous current of %1").arg(branch),
                                 QStringLiteral("110 A"), QStringLiteral("drive sheet, p. 9")));
    for (const QString &part : parts) {
        const QString path = QStringLiteral("Box › ") + part;
        check.inputs.push_back(
            input(QStringLiteral("Iₘ"), QStringLiteral("DC current limit of %1").arg(part),
                  QStringLiteral("150 A"), QStringLiteral("leaflet, p. 2"), path));
        check.comparisons.push_back(held(
            path + QStringLiteral(": continuous"), QStringLiteral("110 A"), QStringLiteral("150 A"),
            QStringLiteral("datasheet of %1, continuous").arg(path), verdict));
    }
    check.steps.push_back({QStringLiteral("deciding part"), QStringLiteral("I ≤ Iₘ"),
                           QStringLiteral("continuous"), QStringLiteral("Box › ") + parts.front()});
    check.turnedBy << QStringLiteral("Box › %1 replaced.").arg(parts.front());
    check.source = QStringLiteral("common practice, no published source");
    return check;
}

Check conductor(const QString &branch, Verdict verdict, int length, const QString &source)
{
    Check check;
    check.id = QStringLiteral("conductor");
    check.subject = branch;
    check.title = QStringLiteral("Conductor: %1").arg(branch);
    check.verdict = verdict;
    check.sentence = QStringLiteral("So it is with %1.").arg(branch);
    check.inputs.push_back(input({}, QStringLiteral("material of the conductor"),
                                 QStringLiteral("copper"), QStringLiteral("marking")));
    check.inputs.push_back(input(QStringLiteral("l"), QStringLiteral("length of %1").arg(branch),
                                 QStringLiteral("%1 m").arg(length), source));
    check.steps.push_back({QStringLiteral("resistance"), QStringLiteral("R = ρ·l/S"),
                           QStringLiteral("at 77 °C"), QStringLiteral("%1 mΩ").arg(length * 3)});
    check.comparisons.push_back(held(QStringLiteral("voltage drop"),
                                     QStringLiteral("%1 %").arg(length * 0.1),
                                     QStringLiteral("3 %"), QStringLiteral("IEC 60364-5-52")));
    check.turnedBy << QStringLiteral("A larger size.");
    check.source = QStringLiteral("IEC 60228");
    return check;
}

// All that a document says, block by block.
class Said
{
public:
    explicit Said(const Document &document)
    {
        for (const Block &block : document.blocks)
            std::visit([this](const auto &one) { take(one); }, block);
    }
    QString text;
    std::vector<sheet::Table> tables;
    std::vector<Heading> headings;

    [[nodiscard]] qsizetype at(const QString &words) const { return text.indexOf(words); }

private:
    void say(const QString &words) { text += words + u'\n'; }
    void take(const Heading &heading)
    {
        headings.push_back(heading);
        say(heading.text);
    }
    void take(const Paragraph &paragraph)
    {
        for (const Run &run : paragraph.runs)
            say(run.text);
    }
    void take(const sheet::Table &table)
    {
        tables.push_back(table);
        for (const Column &column : table.columns)
            say(column.header);
        for (const Row &row : table.rows)
            for (const Cell &cell : row.cells) {
                say(cell.text);
                say(cell.evidence);
            }
    }
    template <class Other>
    void take(const Other & /*unused*/)
    {}
};

Said workingOf(std::vector<Check> checks, Working working = Working::Short)
{
    const TestBook book;
    SheetOptions options;
    options.today = QDate(2026, 3, 9);
    options.working = working;
    options.checks = std::move(checks);
    Document document = buildSheet(book.records(), options);
    const auto begins =
        std::find_if(document.blocks.begin(), document.blocks.end(), [](const Block &block) {
            const auto *heading = std::get_if<Heading>(&block);
            return heading && heading->anchor.startsWith(QStringLiteral("checks-worked"));
        });
    document.blocks.erase(document.blocks.begin(), begins);
    return Said(document);
}

TEST(SheetWorkings, ALimitIsToldOnceWithAllOfItsEvidence)
{
    Check check;
    check.id = QStringLiteral("fuse");
    check.title = QStringLiteral("Fuse: Heater");
    check.verdict = Verdict::Tight;
    check.inputs = {input(QStringLiteral("Uₙ"), QStringLiteral("DC voltage limit of Fuse 25 A"),
                          QStringLiteral("500 V"), QStringLiteral("fuse list, p. 4"),
                          QStringLiteral("Contactor box › Fuse 25 A")),
                    input(QStringLiteral("P_c"), QStringLiteral("power limit"),
                          QStringLiteral("42 kW"), QStringLiteral("drive sheet"))};
    check.steps = {
        {QStringLiteral("speed"), QStringLiteral("F·v ≤ P_c·η"), {}, QStringLiteral("9")}};
    check.comparisons = {held(QStringLiteral("voltage across it"), QStringLiteral("453.6 V"),
                              QStringLiteral("500 V"),
                              QStringLiteral("DC voltage limit of Fuse 25 A: datasheet")),
                         held(QStringLiteral("power"), QStringLiteral("14 kW"),
                              QStringLiteral("42 kW"), QStringLiteral("power limit"))};
    const Said said = workingOf({check});
    EXPECT_EQ(said.text.count(QStringLiteral("DC voltage limit of Fuse 25 A")), 1);
    EXPECT_TRUE(said.text.contains(QStringLiteral("datasheet, fuse list, p. 4")));
    // what a formula uses is given, for it has to be put into it
    EXPECT_EQ(said.text.count(QStringLiteral("power limit")), 2);
    EXPECT_GT(workingOf({check}, Working::Full)
                  .text.count(QStringLiteral("DC voltage limit of Fuse 25 A")),
              1);
}

TEST(SheetWorkings, RatingsOfManyBranchesShareAHeadingAndTheFormula)
{
    const QStringList modules{QStringLiteral("Module 1"), QStringLiteral("Module 2"),
                              QStringLiteral("Module 3"), QStringLiteral("Spare for number 4")};
    Check unknown = ratings(QStringLiteral("Phases"), Verdict::Unknown, {QStringLiteral("Motor")});
    CheckInput missing =
        input(QStringLiteral("Iₘ"), QStringLiteral("peak current limit of Cable"), {}, {});
    missing.origin.path = QStringLiteral("Cable");
    unknown.inputs.push_back(missing);
    const Said said =
        workingOf({ratings(QStringLiteral("Main"), Verdict::Tight, modules), unknown,
                   ratings(QStringLiteral("Heater"), Verdict::Holds, {QStringLiteral("Relay")}),
                   ratings(QStringLiteral("Charger"), Verdict::Holds, {QStringLiteral("Fuse")})});
    EXPECT_EQ(said.text.count(QStringLiteral("Current ratings on the branches")), 2);
    EXPECT_EQ(said.text.count(QStringLiteral("I ≤ Iₘ")), 2) << "once for each schedule";
    EXPECT_TRUE(said.text.contains(QStringLiteral("Module 1, 2, 3; Spare for number 4")))
        << "alike but for the name, and every name told";
    EXPECT_EQ(said.text.count(QStringLiteral("Box › Module")), 0) << "no path repeats the name";
    EXPECT_TRUE(said.text.contains(QStringLiteral("in Box")));
    EXPECT_TRUE(said.text.contains(QStringLiteral("peak current limit of Cable")));
    EXPECT_TRUE(said.text.contains(QStringLiteral("So it is with Main.")));
    EXPECT_TRUE(said.text.contains(QStringLiteral("Module 1 replaced.")));
    EXPECT_FALSE(said.text.contains(QStringLiteral("Relay replaced."))) << "it holds";
    EXPECT_LT(said.at(QStringLiteral("Phases")), said.at(QStringLiteral("Main"))) << "worst first";
    EXPECT_LT(said.at(QStringLiteral("Main")), said.at(QStringLiteral("Heater")));
}

TEST(SheetWorkings, ConductorsThatHoldShareAScheduleWithARowEach)
{
    const Said said = workingOf(
        {conductor(QStringLiteral("Pump"), Verdict::Tight, 30, QStringLiteral("tape")),
         conductor(QStringLiteral("Heater"), Verdict::Holds, 5, QStringLiteral("tape")),
         conductor(QStringLiteral("Charger"), Verdict::Holds, 6, QStringLiteral("tape")),
         conductor(QStringLiteral("Inverter"), Verdict::Holds, 7, QStringLiteral("drawing"))});
    // in full for the one that is tight, and in the head of the schedule
    EXPECT_EQ(said.text.count(QStringLiteral("R = ρ·l/S")), 2);
    EXPECT_TRUE(said.text.contains(QStringLiteral("Conductor: Pump")));
    EXPECT_FALSE(said.text.contains(QStringLiteral("Conductor: Heater")));
    const auto rowsOf = [&said](const QString &name) {
        int rows = 0;
        for (const sheet::Table &table : said.tables)
            for (const Row &row : table.rows)
                rows += row.cells.front().text == name ? 1 : 0;
        return rows;
    };
    EXPECT_EQ(rowsOf(QStringLiteral("Heater")), 3) << "given, worked, held against";
    EXPECT_EQ(rowsOf(QStringLiteral("Inverter")), 3);
    EXPECT_TRUE(said.text.contains(QStringLiteral("7 m")));
    EXPECT_TRUE(said.text.contains(QStringLiteral("datasheet, drawing")));
    EXPECT_TRUE(said.text.contains(QStringLiteral("at 77 °C")))
        << "a figure that stands nowhere else is told under the result";
    EXPECT_LT(said.at(QStringLiteral("Conductor: Pump")), said.at(QStringLiteral("Heater")));
    EXPECT_EQ(said.text.count(QStringLiteral("A larger size.")), 1) << "of the tight one";
}

TEST(SheetWorkings, WhatIsGivenOfOneThingAfterAnotherIsARowForEach)
{
    Check check;
    check.id = QStringLiteral("axle_loads");
    check.title = QStringLiteral("Axle loads");
    check.verdict = Verdict::Tight;
    check.inputs.push_back(
        input(QStringLiteral("L"), QStringLiteral("wheelbase"), QStringLiteral("2.69 m"), {}));
    for (const char *load : {"Inverter", "Charger 6.6 kW", "Motor mounts"}) {
        const QString name = QString::fromLatin1(load);
        check.inputs.push_back(input(QStringLiteral("m"), QStringLiteral("mass of %1").arg(name),
                                     QStringLiteral("11 kg"), QStringLiteral("scale")));
        check.inputs.push_back(input(QStringLiteral("x"),
                                     QStringLiteral("place of %1 behind the front axle").arg(name),
                                     QStringLiteral("0.3 m"), QStringLiteral("tape")));
    }
    check.comparisons.push_back(held(QStringLiteral("front axle"), QStringLiteral("900 kg"),
                                     QStringLiteral("930 kg"), QStringLiteral("plate")));
    const Said said = workingOf({check});
    EXPECT_EQ(said.text.count(QStringLiteral("Motor mounts")), 1);
    EXPECT_TRUE(said.text.contains(QStringLiteral("m mass; x place behind the front axle")));
    EXPECT_TRUE(said.text.contains(QStringLiteral("m: datasheet, scale; x: datasheet, tape")));
    EXPECT_TRUE(said.text.contains(QStringLiteral("wheelbase")));
}

// Whatever a check was given and found, and from where, is in either working.
TEST(SheetWorkings, NeitherLeavesOutAFigureEvidenceFormulaOrSource)
{
    const std::vector<Check> checks{
        ratings(QStringLiteral("Main"), Verdict::Tight,
                {QStringLiteral("Fuse"), QStringLiteral("Relay")}),
        ratings(QStringLiteral("Heater"), Verdict::Holds, {QStringLiteral("Switch")}),
        conductor(QStringLiteral("Pump"), Verdict::Tight, 30, QStringLiteral("tape")),
        conductor(QStringLiteral("Far"), Verdict::Holds, 5, QStringLiteral("string")),
        conductor(QStringLiteral("Near"), Verdict::Holds, 6, QStringLiteral("rule")),
        conductor(QStringLiteral("Wide"), Verdict::Holds, 7, QStringLiteral("drawing"))};
    for (const Working working : {Working::Short, Working::Full}) {
        const Said said = workingOf(checks, working);
        for (const Check &check : checks) {
            QStringList words{check.source};
            for (const CheckInput &one : check.inputs)
                words << one.shown << evidenceOf(one.origin);
            for (const CheckStep &step : check.steps)
                words << step.formula << step.result.section(QStringLiteral(" › "), -1);
            for (const Comparison &one : check.comparisons)
                words << one.value << one.limit;
            for (const QString &word : words)
                EXPECT_TRUE(said.text.contains(word))
                    << check.title.toStdString() << ": " << word.toStdString();
        }
    }
}

TEST(SheetWorkings, FullWorksEachCheckOnItsOwnInTheOrderOfTheOverview)
{
    const Said said =
        workingOf({conductor(QStringLiteral("Heater"), Verdict::Holds, 5, QStringLiteral("tape")),
                   conductor(QStringLiteral("Pump"), Verdict::Tight, 30, QStringLiteral("tape")),
                   conductor(QStringLiteral("Charger"), Verdict::Holds, 6, QStringLiteral("tape"))},
                  Working::Full);
    EXPECT_EQ(said.text.count(QStringLiteral("R = ρ·l/S")), 3);
    EXPECT_LT(said.at(QStringLiteral("Conductor: Heater")),
              said.at(QStringLiteral("Conductor: Pump")));
    ASSERT_EQ(said.headings.size(), 4U);
    EXPECT_EQ(said.headings[0].text, QStringLiteral("Checks, worked"));
}

} // namespace
} // namespace ohmwright
