// SPDX-License-Identifier: GPL-3.0-or-later
// A document as one self-contained HTML file: styles inside, pictures as data: URIs, no scripts,
// nothing fetched from anywhere. The markup is valid HTML5 and well-formed XML as well.
#pragma once

#include "core/quantity/result.h"
#include "core/sheet/document.h"

#include <QByteArray>
#include <QString>

namespace ohmwright::sheet {

// The file's bytes, UTF-8. Pictures go in as the loader gives them; a photo straight from a camera
// carries the place where it was taken, so pass a loader that reduces it (ui/sheet/picture.h).
// A picture that is missing, or of a kind browsers do not show, is told in words in its place.
QByteArray toHtml(const Document &document, const ImageLoader &loader = {});

// Writes toHtml() to `path`. On any failure an older file there is left as it was.
Outcome writeHtml(const Document &document, const QString &path, const ImageLoader &loader = {});

} // namespace ohmwright::sheet
