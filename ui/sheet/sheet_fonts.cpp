// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/sheet_fonts.h"

#include "ui/sheet/font_features.h"

#include <QFile>
#include <QFontDatabase>

#include <initializer_list>
#include <vector>

namespace ohmwright::sheet {

namespace {

void registerFamily(const QString &family, const std::vector<FontFeature> &features,
                    std::initializer_list<const char *> styles)
{
    if (QFontDatabase::hasFamily(family))
        return;
    for (const char *style : styles) {
        const QString name = QString::fromLatin1(style);
        QFile file(QStringLiteral(":/ohmwright/fonts/Inter-%1.otf").arg(name));
        if (!file.open(QIODevice::ReadOnly))
            continue;
        const QByteArray made = withFeatures(file.readAll(), features, family, name);
        if (!made.isEmpty())
            QFontDatabase::addApplicationFontFromData(made);
    }
}

} // namespace

SheetFonts loadSheetFonts()
{
    SheetFonts fonts{QStringLiteral("Inter Tabular"), QStringLiteral("Inter Exact")};
    // Inter's feature also widens point, comma and colon, which belong to running text as well.
    const FontFeature figures{"tnum", QStringLiteral("0123456789")};
    registerFamily(fonts.text, {figures}, {"Regular", "Medium", "SemiBold", "Bold", "Italic"});
    registerFamily(fonts.exact, {figures, {"zero", {}}, {"cv05", {}}, {"cv08", {}}},
                   {"Regular", "SemiBold"});
    return fonts;
}

} // namespace ohmwright::sheet
