// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/checks/sample_checks.h"
#include "ui/checks/checks_model.h"
#include "ui/checks/checks_order.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include <gtest/gtest.h>

using namespace ohmwright;
using namespace ohmwright::ui;

namespace {

Check check(const char *title, Protects protects, Verdict verdict,
            std::optional<double> margin = std::nullopt)
{
    Check made;
    made.id = QString::fromLatin1(title).toLower();
    made.title = QString::fromLatin1(title);
    made.protects = protects;
    made.verdict = verdict;
    made.margin = margin;
    made.sentence = QStringLiteral("As it is.");
    return made;
}

QStringList titles(const std::vector<CheckEntry> &entries, const ArrangedChecks &arranged)
{
    QStringList shown;
    for (const CheckRow &row : arranged.rows)
        shown << (row.entry < 0 ? QString(QLatin1Char('#') + protectedName(row.group))
                                : entries[static_cast<std::size_t>(row.entry)].check.title);
    return shown;
}

const std::vector<Check> kFew{
    check("Roomy", Protects::Chassis, Verdict::Holds, 0.5),
    check("Close", Protects::Pack, Verdict::Tight, 0.04),
    check("Open", Protects::Pack, Verdict::Unknown),
    check("Snug", Protects::Pack, Verdict::Tight, 0.02),
    check("Broken", Protects::Pack, Verdict::Fails, -0.1),
    check("Worse", Protects::Pack, Verdict::Fails, -0.4),
    check("Kind", Protects::People, Verdict::Holds, 0.9),
};

} // namespace

TEST(ChecksOrder, GroupsByWhatIsProtectedAndPutsTheWorstFirst)
{
    samples::SampleSource source;
    const auto entries = entriesOf(kFew, source);
    EXPECT_EQ(titles(entries, arrange(entries, {})),
              QStringList({"#People", "Kind", "#Pack", "Worse", "Broken", "Open", "Snug", "Close",
                           "#Chassis", "Roomy"}));
}

TEST(ChecksOrder, CountsEachVerdictUnderItsHeadingAndOverAll)
{
    samples::SampleSource source;
    const auto entries = entriesOf(kFew, source);
    const ArrangedChecks all = arrange(entries, {});
    EXPECT_EQ(all.perVerdict, (VerdictCounts{2, 2, 1, 2})); // holds, tight, unknown, fails
    EXPECT_EQ(all.rows[2].counts, (VerdictCounts{0, 2, 1, 2}));
    EXPECT_EQ(all.shown, 7);
}

TEST(ChecksOrder, FiltersByVerdictAndByWordsWhateverTheirCase)
{
    samples::SampleSource source;
    auto entries = entriesOf(kFew, source);
    CheckFilter filter;
    filter.verdicts = {Verdict::Unknown, Verdict::Fails};
    EXPECT_EQ(titles(entries, arrange(entries, filter)),
              QStringList({"#Pack", "Worse", "Broken", "Open"}));
    filter = {};
    filter.text = QStringLiteral("PACK tight");
    EXPECT_EQ(titles(entries, arrange(entries, filter)), QStringList({"#Pack", "Snug", "Close"}));
    filter.text = QStringLiteral("pack nowhere");
    EXPECT_TRUE(arrange(entries, filter).rows.empty());
}

TEST(ChecksOrder, TellsWhatATriedChangeTurnsAndWhatItMakes)
{
    samples::SampleSource source;
    std::vector<Check> tried = kFew;
    tried[0].verdict = Verdict::Fails;
    tried.push_back(check("Extra", Protects::People, Verdict::Holds, 0.3));
    const auto entries = entriesOf(tried, source, &kFew);
    EXPECT_EQ(entries[0].before, Verdict::Holds);
    EXPECT_FALSE(entries[1].before);
    EXPECT_TRUE(entries.back().isNew);
    EXPECT_EQ(turnedWords(entries[0]), QStringLiteral("holds → fails"));
    CheckFilter filter;
    filter.turnedOnly = true;
    EXPECT_EQ(titles(entries, arrange(entries, filter)),
              QStringList({"#People", "Extra", "#Chassis", "Roomy"}));
}

TEST(ChecksOrder, KeepsApartChecksThatShareTheirKey)
{
    samples::SampleSource source;
    const auto entries = entriesOf({kFew[0], kFew[0]}, source);
    EXPECT_NE(entries[0].key, entries[1].key);
}

TEST(TheChecksModel, KeepsTheContractOfAModelAndResetsOnlyForOtherRows)
{
    samples::SampleSource source;
    ChecksModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    const auto entries = entriesOf(kFew, source);
    model.show(entries, arrange(entries, {}).rows);
    QSignalSpy reset(&model, &ChecksModel::modelReset);
    QSignalSpy changed(&model, &ChecksModel::dataChanged);
    auto other = entries;
    other[0].check.margin = 0.45;
    model.show(other, arrange(other, {}).rows);
    EXPECT_EQ(reset.count(), 0);
    EXPECT_EQ(changed.count(), 1);
    model.show({}, {});
    EXPECT_EQ(reset.count(), 1);
}

TEST(TheChecksModel, SaysALoosenedVerdictNeverWithoutThePublishedOne)
{
    samples::SampleSource source;
    ChecksModel model;
    Check loose = check("Loose", Protects::Pack, Verdict::Holds, 0.2);
    loose.publishedVerdict = Verdict::Fails;
    const auto entries = entriesOf({loose}, source);
    model.show(entries, arrange(entries, {}).rows);
    const QModelIndex verdict = model.index(1, ChecksModel::VerdictColumn);
    EXPECT_EQ(verdict.data(SecondLineRole).toString(), QStringLiteral("published: fails"));
    EXPECT_TRUE(verdict.data(Qt::AccessibleTextRole).toString().contains("as published fails"));
}

TEST(TheChecksModel, PromisesNoMarginWhereTheVerdictIsUnknown)
{
    samples::SampleSource source;
    ChecksModel model;
    const auto entries = entriesOf({check("Half", Protects::Pack, Verdict::Unknown, 6.25),
                                    check("Whole", Protects::Pack, Verdict::Holds, 0.25)},
                                   source);
    model.show(entries, arrange(entries, {}).rows);
    const auto under = [&](int row) {
        return model.index(row, ChecksModel::VerdictColumn).data(SecondLineRole).toString();
    };
    EXPECT_EQ(under(1), QString());
    EXPECT_EQ(under(2), QStringLiteral("25 %"));
}
