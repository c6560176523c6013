// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cards/record_kind.h"
#include "ui/cards/card_labels.h"
#include "ui/widgets/icons.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

namespace ohmwright::ui {
namespace {

// Edited where they stand rather than on a card: the part's detail with its sections, the tasks of
// the build order, the lines of the budget.
const std::set<std::string> kElsewhere{"part", "part_move", "connection", "rating",
                                       "task", "task_need", "budget_line"};

TEST(CardLabels, EveryRecordHasACardOrIsEditedElsewhere)
{
    for (const RecordKind *kind : recordKinds())
        EXPECT_NE(cardLabels(kind->table()) != nullptr, kElsewhere.contains(kind->table()))
            << kind->table();
}

TEST(CardLabels, EveryFieldOfEveryRecordOfferedHasItsLabelOnce)
{
    for (const CardLabels *labels : allCardLabels()) {
        const RecordKind *kind = recordKind(labels->table);
        ASSERT_NE(kind, nullptr) << labels->table;
        for (const FieldFacts &facts : kind->fields()) {
            const auto mine = [&](const FieldLabel &label) {
                return facts.name.toStdString() == label.field;
            };
            EXPECT_EQ(std::count_if(labels->fields.begin(), labels->fields.end(), mine), 1)
                << labels->table << " " << facts.name.toStdString();
        }
        EXPECT_EQ(labels->fields.size(), kind->fields().size()) << labels->table;
        for (const FieldLabel &label : labels->fields)
            EXPECT_STRNE(label.label, "") << labels->table << " " << label.field;
    }
}

TEST(CardLabels, NoTwoFieldsOfACardAreCalledTheSame)
{
    for (const CardLabels *labels : allCardLabels()) {
        std::set<std::string> seen;
        for (const FieldLabel &label : labels->fields)
            EXPECT_TRUE(seen.insert(label.label).second) << labels->table << " " << label.label;
    }
}

TEST(CardLabels, EveryListSaysWhatGoesInItAndHasItsIcon)
{
    for (const CardLabels *labels : allCardLabels()) {
        EXPECT_STRNE(labels->many, "");
        EXPECT_TRUE(hasIcon(QString::fromLatin1(labels->icon))) << labels->icon;
        if (recordKind(labels->table)->isSingle())
            continue;
        EXPECT_STRNE(labels->add, "") << labels->table;
        EXPECT_STRNE(labels->teach, "") << labels->table;
    }
}

// A record its holder owns is listed on that card anyway; naming the field would look for one that
// such records do not have.
TEST(CardLabels, TheFieldARecordIsListedByIsOneOfItsOwn)
{
    for (const CardLabels *labels : allCardLabels()) {
        if (labels->within.empty())
            continue;
        const RecordKind *kind = recordKind(labels->table);
        const FieldFacts *link = kind->field(QString::fromLatin1(
            labels->within.data(), static_cast<qsizetype>(labels->within.size())));
        ASSERT_NE(link, nullptr) << labels->table;
        EXPECT_NE(recordKind(link->refersTo), nullptr) << labels->table;
    }
}

} // namespace
} // namespace ohmwright::ui
