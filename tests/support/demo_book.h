// SPDX-License-Identifier: GPL-3.0-or-later
// The demo's van as records, without the bytes of its attachments.
#pragma once

#include "core/interchange/interchange.h"

#include <QFile>

#include <gtest/gtest.h>

namespace ohmwright {

inline Records demoRecords()
{
    QFile file(QStringLiteral(OHMWRIGHT_SOURCE_DIR "/demo/build.json"));
    if (!file.open(QIODevice::ReadOnly))
        return {};
    std::int64_t next = 0;
    const Result<Records> read = parse(file.readAll(), [&next] { return ++next; });
    EXPECT_TRUE(read.has_value()) << (read ? ""
                                           : read.error().sentence.toStdString() + " " +
                                                 read.error().where.toStdString());
    return read ? *read : Records();
}

} // namespace ohmwright
