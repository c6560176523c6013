// SPDX-License-Identifier: GPL-3.0-or-later
// The bytes of an interchange file as a JSON document, and where in it something stands.
//
// Refused here, before any record is looked at: what is not JSON (told with line and column), not
// UTF-8, has a byte order mark, names a field twice in one object, or nests deeper or holds more
// fields in one object than any record does.
#pragma once

#include "core/quantity/result.h"

#include <QByteArray>
#include <QString>

#include <cstddef>
#include <nlohmann/json_fwd.hpp>
#include <string>

namespace ohmwright {

// A chain of steps from a value up to the document, on the stack of whoever reads; it becomes a
// JSON pointer (RFC 6901) only when there is something to tell.
class Place
{
public:
    Place() = default; // the document
    // `name` lives as long as the place does.
    Place(const Place &up, const char *name) : m_up(&up), m_name(name) {}
    Place(const Place &up, std::size_t index) : m_up(&up), m_index(index) {}

    [[nodiscard]] QString pointer() const;

private:
    const Place *m_up = nullptr;
    const char *m_name = nullptr; // an item of an array when null
    std::size_t m_index = 0;
};

// UTF-8 as it is, a zero-width no-break space at its start included (which fromUtf8 takes for a
// mark).
QString textOf(const std::string &utf8);

// A member's name as a step of a pointer: "/name", with ~ and / escaped.
QString pointerStep(const std::string &name);

Result<nlohmann::ordered_json> readDocument(const QByteArray &bytes);

} // namespace ohmwright
