// SPDX-License-Identifier: GPL-3.0-or-later
// How choices stand in a list: the open ones first, then the decided ones with what was taken.
#pragma once

#include "core/cards/record_kind.h"

namespace ohmwright::ui {

// The heading a record stands under in its list; empty for kinds without headings.
struct RecordGroup
{
    int place = 0;
    QString name;
    bool operator==(const RecordGroup &) const = default;
};
RecordGroup groupOf(const Records &records, const RecordKind &kind, std::int64_t id);

// "2 options", "Unit A, taken on 3 Jun 2026".
QString choiceDetail(const Records &records, const Choice &choice);

int openChoiceCount(const Records &records);

} // namespace ohmwright::ui
