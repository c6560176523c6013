// SPDX-License-Identifier: GPL-3.0-or-later
// What the HTML writer puts into every file: its style sheet and the drawn shapes of the marks.
#pragma once

#include <QByteArrayView>

namespace ohmwright::sheet {

QByteArrayView htmlStyle();
// An <svg> of <symbol>s "mark-holds", "mark-tight", "mark-fails", "mark-unknown", "mark-caution".
QByteArrayView htmlShapes();

} // namespace ohmwright::sheet
