// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_colours.h"

namespace ohmwright::ui {

LoomColours LoomColours::light()
{
    return {QColor(0xF6F3EC), QColor(0xFCFAF5), QColor(0x1F2A33), QColor(0x5A646C),
            QColor(0x1F5A8A), QColor(0xC94A08), QColor(0x5B4A8A)};
}

LoomColours LoomColours::dark()
{
    return {QColor(0x1B2126), QColor(0x232B31), QColor(0xECE8DF), QColor(0xA7AFB5),
            QColor(0x82B6DF), QColor(0xFF8A3D), QColor(0xB9A8EA)};
}

LoomColours LoomColours::print()
{
    return {QColor(Qt::white), QColor(Qt::white), QColor(0x12181D), QColor(0x4A5259),
            QColor(0x1F5A8A),  QColor(0xC94A08),  QColor(0x5B4A8A)};
}

} // namespace ohmwright::ui
