// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/network.h"

#include <QString>
#include <QtGlobal>

namespace ohmwright::plan {

QString moveKindName(MoveKind kind)
{
    switch (kind) {
    case MoveKind::Do:
        return QStringLiteral("do");
    case MoveKind::Order:
        return QStringLiteral("order");
    case MoveKind::Chase:
        return QStringLiteral("chase");
    case MoveKind::FindOut:
        return QStringLiteral("find out");
    case MoveKind::Pay:
        return QStringLiteral("pay");
    case MoveKind::Test:
        return QStringLiteral("test");
    case MoveKind::Ask:
        return QStringLiteral("ask");
    }
    Q_ASSERT_X(false, "plan::moveKindName", "not a kind of move");
    return {};
}

QString needKindName(NeedKind kind)
{
    switch (kind) {
    case NeedKind::Part:
        return QStringLiteral("part");
    case NeedKind::Figure:
        return QStringLiteral("figure");
    case NeedKind::Tool:
        return QStringLiteral("tool");
    case NeedKind::Consumable:
        return QStringLiteral("consumable");
    case NeedKind::Money:
        return QStringLiteral("money");
    case NeedKind::Service:
        return QStringLiteral("service");
    case NeedKind::Test:
        return QStringLiteral("test");
    case NeedKind::Letter:
        return QStringLiteral("letter");
    case NeedKind::Person:
        return QStringLiteral("second person");
    case NeedKind::Permit:
        return QStringLiteral("work permit");
    case NeedKind::Interface:
        return QStringLiteral("interface");
    }
    Q_ASSERT_X(false, "plan::needKindName", "not a kind of need");
    return {};
}

} // namespace ohmwright::plan
