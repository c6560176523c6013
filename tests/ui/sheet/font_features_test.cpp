// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/font_features.h"
#include "ui/sheet/sheet_fonts.h"

#include <QFile>
#include <QFont>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QPainterPath>
#include <QRawFont>

#include <gtest/gtest.h>

namespace ohmwright::sheet {

namespace {

QByteArray inter(const char *style)
{
    QFile file(QStringLiteral(":/ohmwright/fonts/Inter-%1.otf").arg(style));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return file.readAll();
}

double advance(const QRawFont &font, const QString &text)
{
    double sum = 0;
    for (const QPointF &step : font.advancesForGlyphIndexes(font.glyphIndexesForString(text)))
        sum += step.x();
    return sum;
}

} // namespace

TEST(FontFeatures, FiguresGetOneWidthAndPointAndCommaStayNarrow)
{
    for (const char *style : {"Regular", "Medium", "SemiBold", "Bold", "Italic"}) {
        const QByteArray original = inter(style);
        const QRawFont before(original, 1000);
        const QRawFont after(
            withFeatures(original, {{"tnum", "0123456789"}}, "Figures", QString::fromLatin1(style)),
            1000);
        ASSERT_TRUE(after.isValid()) << style;
        EXPECT_NE(advance(before, "1"), advance(before, "0")) << "the font has changed";
        // the font's own figures differ by two thousandths of an em in some weights
        for (const QChar digit : QStringLiteral("123456789"))
            EXPECT_NEAR(advance(after, QString(digit)), advance(after, "0"), 2) << style;
        EXPECT_EQ(advance(after, ".,:"), advance(before, ".,:")) << style;
        EXPECT_EQ(advance(after, "Ω µ² → office"), advance(before, "Ω µ² → office")) << style;
    }
}

TEST(FontFeatures, TheNewNameIsTheOneItIsKnownBy)
{
    const QRawFont font(withFeatures(inter("Regular"), {}, "Some Family", "Regular"), 100);
    EXPECT_EQ(font.familyName(), "Some Family");
}

// The OpenType specification wants each table's checksum in the directory, and the licence asks
// that its text stays with the font.
TEST(FontFeatures, CopyrightAndLicenceStayInTheFont)
{
    const QRawFont font(withFeatures(inter("Regular"), {}, "Some Family", "Regular"), 100);
    const QByteArray names = font.fontTable("name");
    EXPECT_TRUE(names.contains(QByteArray("\0O\0p\0e\0n\0 \0F\0o\0n\0t\0 \0L", 22)));
}

TEST(FontFeatures, WithoutSubstitutionsWhatIsTypedIsWhatIsDrawn)
{
    const QRawFont font(withFeatures(inter("Regular"), {}, "Some Family", "Regular"), 100);
    EXPECT_TRUE(font.fontTable("GSUB").isEmpty());
    EXPECT_FALSE(font.fontTable("GPOS").isEmpty());
}

TEST(FontFeatures, ADamagedFontIsRefusedOrHarmless)
{
    EXPECT_TRUE(withFeatures({}, {}, "F", "S").isEmpty());
    EXPECT_TRUE(withFeatures("not a font at all", {}, "F", "S").isEmpty());
    const QByteArray whole = inter("Regular");
    for (qsizetype size = 0; size < 2000; size += 7)
        EXPECT_TRUE(withFeatures(whole.left(size), {{"tnum", {}}}, "F", "S").isEmpty());
    // single bytes knocked over in every table's head; only that it ends counts
    for (qsizetype at = 0; at < whole.size(); at += 4099) {
        QByteArray damaged = whole;
        damaged[at] = static_cast<char>(~damaged[at]);
        withFeatures(damaged, {{"tnum", {}}}, "F", "S");
    }
}

TEST(SheetFonts, BothFamiliesAreThereInTheWeightsUsed)
{
    const SheetFonts fonts = loadSheetFonts();
    for (const QString &family : {fonts.text, fonts.exact}) {
        QFont font(family);
        font.setPixelSize(200);
        EXPECT_EQ(QFontInfo(font).family(), family);
        const QFontMetricsF metrics(font);
        EXPECT_NEAR(metrics.horizontalAdvance("1111"), metrics.horizontalAdvance("0000"), 0.01);
        EXPECT_NEAR(metrics.horizontalAdvance("7171"), metrics.horizontalAdvance("0000"), 0.01);
    }
    QFont regular(fonts.text);
    regular.setPixelSize(200);
    QFont semiBold = regular;
    semiBold.setWeight(QFont::DemiBold);
    EXPECT_GT(QFontMetricsF(semiBold).horizontalAdvance("Weight"),
              QFontMetricsF(regular).horizontalAdvance("Weight"));
}

TEST(SheetFonts, InTheExactFamilyNoTwoCharactersLookAlike)
{
    QFont font(loadSheetFonts().exact);
    font.setPixelSize(200);
    const QRawFont exact = QRawFont::fromFont(font);
    font.setFamily(loadSheetFonts().text);
    const QRawFont text = QRawFont::fromFont(font);
    const auto outline = [](const QRawFont &raw, const char *character) {
        return raw.pathForGlyph(raw.glyphIndexesForString(QString::fromLatin1(character)).at(0));
    };
    for (const char *character : {"0", "I", "l"})
        EXPECT_NE(outline(exact, character), outline(text, character)) << character;
    EXPECT_EQ(outline(exact, "O"), outline(text, "O"));
}

} // namespace ohmwright::sheet
