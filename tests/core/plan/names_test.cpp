// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/network.h"

#include <QSet>
#include <QString>

#include <gtest/gtest.h>

namespace ohmwright::plan {
namespace {

TEST(PlanNames, MovesAreNamedAsTheJobNamesThem)
{
    EXPECT_EQ(moveKindName(MoveKind::Do), u"do");
    EXPECT_EQ(moveKindName(MoveKind::Order), u"order");
    EXPECT_EQ(moveKindName(MoveKind::Chase), u"chase");
    EXPECT_EQ(moveKindName(MoveKind::FindOut), u"find out");
    EXPECT_EQ(moveKindName(MoveKind::Pay), u"pay");
    EXPECT_EQ(moveKindName(MoveKind::Test), u"test");
    EXPECT_EQ(moveKindName(MoveKind::Ask), u"ask");
}

TEST(PlanNames, EveryKindOfNeedHasANameOfItsOwn)
{
    QSet<QString> names;
    for (int kind = 0; kind <= static_cast<int>(NeedKind::Permit); ++kind) {
        const QString name = needKindName(static_cast<NeedKind>(kind));
        EXPECT_FALSE(name.isEmpty()) << kind;
        names.insert(name);
    }
    EXPECT_EQ(names.size(), static_cast<int>(NeedKind::Permit) + 1);
    EXPECT_EQ(needKindName(NeedKind::Letter), u"letter");
    EXPECT_EQ(needKindName(NeedKind::Person), u"second person");
    EXPECT_EQ(needKindName(NeedKind::Permit), u"work permit");
}

} // namespace
} // namespace ohmwright::plan
