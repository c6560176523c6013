// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/natural_order.h"

#include <QStringList>

#include <gtest/gtest.h>

#include <algorithm>

namespace ohmwright::ui {
namespace {

TEST(NaturalOrder, CountsAsPeopleDo)
{
    QStringList names{QStringLiteral("Module 10"), QStringLiteral("module 2"),
                      QStringLiteral("Module 1"), QStringLiteral("Module 2b"),
                      QStringLiteral("Module")};
    std::sort(names.begin(), names.end(),
              [](const QString &a, const QString &b) { return naturalKey(a) < naturalKey(b); });
    EXPECT_EQ(names, (QStringList{QStringLiteral("Module"), QStringLiteral("Module 1"),
                                  QStringLiteral("module 2"), QStringLiteral("Module 2b"),
                                  QStringLiteral("Module 10")}));
}

TEST(NaturalOrder, ReadsNumbersOfAnyLength)
{
    const auto key = [](const char *text) {
        return naturalKey(QString::fromUtf8(text));
    };
    EXPECT_LT(key("SN 999999999999999"), key("SN 1234567890123456"));
    EXPECT_LT(key("SN 1234567890123456"), key("SN 1234567890123457"));
    EXPECT_EQ(key("Module 007"), key("module 7"));
    EXPECT_LT(key("Module 0"), key("Module 1"));
}

} // namespace
} // namespace ohmwright::ui
