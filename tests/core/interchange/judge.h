// SPDX-License-Identifier: GPL-3.0-or-later
// What a JSON Schema validator of somebody else's says of documents: python3-jsonschema, by way of
// validate.py, one process for all of them.
#pragma once

#include <QByteArray>
#include <QString>

#include <optional>
#include <string>
#include <vector>

namespace ohmwright {

QString committedSchemaPath();

// Whether each document, one line of JSON each, fits the committed schema. Nothing when the
// validator could not run; what it said is then in `trouble`.
std::optional<std::vector<bool>> judge(const std::vector<std::string> &documents,
                                       std::string &trouble);

} // namespace ohmwright
