// SPDX-License-Identifier: GPL-3.0-or-later
// What each record must hold in itself, before it may be written: ranges, currencies that agree,
// references that go with its kind. What several records must hold together is in
// core/parts/consistency.h.
#pragma once

#include "core/quantity/result.h"
#include "core/records/records.h"

namespace ohmwright {

// Required texts and references set, lengths within bounds; then the record's own rule below. A
// Problem's `where` is the field's name.
template <class R>
Outcome checkRecord(const R &row);

// A key: 1 to 80 of lower-case letters, digits, '-', '.', '/' and '_', starting with a letter or
// digit, so that it can be typed, printed on a label and encoded in a QR code as it is.
bool isKey(QStringView text);
// "Rear drive unit (used)" -> "rear-drive-unit-used". Never empty.
QString keyFrom(const QString &name);

} // namespace ohmwright
