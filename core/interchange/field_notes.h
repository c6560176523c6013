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
    std::optional<Measure> measure = {};      // of an amount; any when empty
    bool notNegative = false;                 // of an amount or a sum of money
    std::optional<int> least = {}, most = {}; // of a whole number
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
