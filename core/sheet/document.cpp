// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/document.h"

namespace ohmwright::sheet {

QByteArray imageBytes(const Image &image, const ImageLoader &loader)
{
    return loader ? loader(image) : image.bytes;
}

} // namespace ohmwright::sheet
