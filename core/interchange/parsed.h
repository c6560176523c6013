// SPDX-License-Identifier: GPL-3.0-or-later
// What parse() read, with what the loader of files needs beside it.
#pragma once

#include "core/interchange/interchange.h"

#include <QStringList>

namespace ohmwright {

struct Parsed
{
    Records records;
    QStringList attachmentKeys; // in the order of the document, for JSON pointers
};

Result<Parsed> parseForFiles(const QByteArray &json, const IdSource &nextId);

} // namespace ohmwright
