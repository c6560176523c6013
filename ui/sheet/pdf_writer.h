// SPDX-License-Identifier: GPL-3.0-or-later
// A document as a PDF: embedded fonts, text that can be copied and searched, an outline made from
// the headings, links from the contents, language and title.
#pragma once

#include "core/quantity/result.h"
#include "core/sheet/document.h"
#include "ui/sheet/paged_layout.h"

#include <QDateTime>
#include <QPageSize>
#include <QString>

#include <functional>
#include <optional>

namespace ohmwright::sheet {

struct PdfOptions
{
    ImageLoader loader; // see Image; photos are reduced to what print needs in any case
    QPageSize::PageSizeId pageSize = QPageSize::A4;
    // The date of making that stands in the file. Given the same one, the same document gives the
    // same bytes. Nothing: the computer's clock.
    std::optional<QDateTime> madeAt;
    // Called after each page; false stops the work.
    std::function<bool(int pagesDone, int pages)> progress;
};

// Writes `document` to `path`. On any failure, and when stopped (NotAllowed), an older file there
// is left as it was. May be called on any thread; see PagedLayout for what must be there.
Outcome writePdf(const Document &document, const QString &path, const PdfOptions &options = {});

// The same for pages that are laid out already; the options' loader and page size are not used.
Outcome writePdf(const PagedLayout &layout, const QString &path, const PdfOptions &options = {});

} // namespace ohmwright::sheet
