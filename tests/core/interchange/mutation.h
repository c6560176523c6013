// SPDX-License-Identifier: GPL-3.0-or-later
// A valid document, made a little different: what slips of a hand or of another program do to it.
#pragma once

#include "tests/support/chance.h"

#include <nlohmann/json.hpp>
#include <string>

namespace ohmwright {

struct Mutation
{
    std::string what; // for the message of a failing test
    nlohmann::ordered_json document;
};

Mutation mutate(const nlohmann::ordered_json &valid, Chance &chance);

} // namespace ohmwright
