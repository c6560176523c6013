// SPDX-License-Identifier: GPL-3.0-or-later
// The JSON Schema (2020-12) of the interchange, made from the field lists, so that it cannot say
// anything else than the loader does. resources/schema/ohmwright-1.schema.json is its output; a
// test compares, and `ninja schema` writes it anew.
//
// Whatever the loader accepts, the schema accepts. What the schema accepts the loader can still
// refuse, for these reasons only, which no schema can know:
//   - a field given twice in one object, which JSON parsers settle before a schema is asked;
//   - a key given twice (Conflict); a reference to a key that is not there (NotFound), or from a
//     record to itself;
//   - sums of one purchase in several currencies;
//   - what records must hold together (NotAllowed, core/parts/consistency.h): lives of parts,
//   loops,
//     kinds of what is needed, the book's own currency, one rate a day;
//   - a day that the month does not have, for validators that take "format" as a remark only;
//   - a temperature below absolute zero, a number too near zero for a double;
//   - a text of more than 20,000 UTF-16 units in fewer characters;
//   - an attachment whose file is missing or is not what its hash says.
#pragma once

#include <QByteArray>

namespace ohmwright {

QByteArray schema();

} // namespace ohmwright
