// SPDX-License-Identifier: GPL-3.0-or-later
// What the fields of one record ask of each other, as JSON Schema: the part of core/records/rules.h
// that is not a bound of a single field.
#pragma once

#include "core/quantity/amount.h"

#include <QString>

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

namespace ohmwright {

// Schemas that must all hold, by table name; an empty array for most records.
nlohmann::ordered_json recordConditions(std::string_view table);

// Names of definitions that the conditions refer to and the schema makes.
std::string measureDefinition(Measure measure); // "rotation_speed"
nlohmann::ordered_json refTo(const std::string &definition);
nlohmann::ordered_json wholePattern(const QString &pattern); // anchored

} // namespace ohmwright
