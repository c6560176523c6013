// SPDX-License-Identifier: GPL-3.0-or-later
// What each record and each field means, in words for the JSON Schema, with the bounds that
// core/records/rules.cpp holds them to. Tests see to it that every field has its note, and that
// the bounds are the rules' own.
#pragma once

#include "core/quantity/amount.h"

#include <optional>
#include <string_view>

namespace ohmwright {

struct FieldBounds
{
    // g++ warns of a member left out of a designated initializer unless it has one of its own
    std::optional<Measure> measure = {}; // any when empty NOLINT(readability-redundant-member-init)
    bool notNegative = false;            // of an amount or a sum of money
    // NOLINTNEXTLINE(readability-redundant-member-init): of a whole number
    std::optional<int> least = {}, most = {};
};

struct FieldNote
{
    std::string_view field;
    std::string_view text;
    FieldBounds bounds = {};
};

struct RecordNote
{
    std::string_view title;
    std::string_view text;
};

// By table name, as in RecordTraits. Nothing when there is no such record or field.
std::optional<RecordNote> recordNote(std::string_view table);
std::optional<FieldNote> fieldNote(std::string_view table, std::string_view field);

} // namespace ohmwright
