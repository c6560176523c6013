// SPDX-License-Identifier: GPL-3.0-or-later
// The content hash: two sheets that say the same have the same one, whenever they were printed.
#pragma once

#include "core/sheet/document.h"

#include <QString>

namespace ohmwright::sheet {

// SHA-256, in lower-case hexadecimals, of title, subtitle, language and blocks. Left out, because
// they tell of the printing and not of the build: revision, footer, and contentHash itself. A
// picture counts by its id, or by the SHA-256 of its bytes when it has none.
QString contentHash(const Document &document);

// The start of a hash, for people to compare: "3f9a 12bc 77d0 e41b".
QString shortHash(const QString &hash);

} // namespace ohmwright::sheet
