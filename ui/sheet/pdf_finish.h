// SPDX-License-Identifier: GPL-3.0-or-later
// What QPdfWriter has no way to say is added to its file here: outline, links, language, the title
// in the window's frame, the exact page size.
#pragma once

#include "ui/sheet/paged_layout.h"

#include <QByteArrayView>
#include <QDateTime>
#include <QString>

#include <functional>
#include <optional>

namespace ohmwright::sheet {

// Reads the PDF at `rawPath` and hands the finished file piece by piece to `sink`; a sink that
// returns false ends the work. False then, and when the raw file is no whole PDF.
bool finishPdf(const QString &rawPath, const PagedLayout &layout,
               const std::optional<QDateTime> &madeAt,
               const std::function<bool(QByteArrayView)> &sink);

} // namespace ohmwright::sheet
