// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/driving.h"
#include "ui/shell/theme.h"
#include "ui/widgets/icons.h"

#include <QColor>
#include <QFontDatabase>
#include <QFontInfo>
#include <QImage>
#include <QLabel>
#include <QPixmap>
#include <QSignalSpy>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

using namespace ohmwright::ui;
using driving::Themed;

namespace {

// W3C, Web Content Accessibility Guidelines 2.2, definitions "relative luminance" and "contrast
// ratio".
double relativeLuminance(const QColor &colour)
{
    const auto linear = [](int part) {
        const double c = part / 255.0;
        return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.red()) + 0.7152 * linear(colour.green()) +
           0.0722 * linear(colour.blue());
}

double contrast(const QColor &a, const QColor &b)
{
    const double la = relativeLuminance(a);
    const double lb = relativeLuminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

QColor strongestColour(const QImage &image)
{
    QColor strongest;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QColor colour = image.pixelColor(x, y);
            if (!strongest.isValid() || colour.alpha() > strongest.alpha())
                strongest = colour;
        }
    }
    return strongest;
}

class EitherShade : public testing::TestWithParam<Shade>
{
protected:
    Tokens tokens = tokensOf(GetParam());
};

} // namespace

TEST(Contrast, isTheDefinitionsOwnForBlackOnWhiteAndForEqualColours)
{
    // WCAG 2.2: ratios range from 1 to 21
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
    EXPECT_NEAR(contrast(QColor(90, 100, 108), QColor(90, 100, 108)), 1.0, 1e-9);
}

// WCAG 2.2, success criterion 1.4.3 (AA): 4.5 to 1 for text.
TEST_P(EitherShade, writesEveryTextColourReadablyOnPaperAndPanel)
{
    for (const QColor &ground : {tokens.paper, tokens.panel}) {
        for (const QColor &text : {tokens.ink, tokens.mute, tokens.blue, tokens.holds, tokens.tight,
                                   tokens.fails, tokens.unknown, tokens.highVoltageText()})
            EXPECT_GE(contrast(text, ground), 4.5)
                << qPrintable(text.name() + QLatin1String(" on ") + ground.name());
    }
}

TEST_P(EitherShade, writesReadablyOnSelectedRowsAndUnderThePointer)
{
    for (const QColor &ground : {tokens.tint(), tokens.hover()}) {
        for (const QColor &text :
             {tokens.ink, tokens.mute, tokens.holds, tokens.tight, tokens.fails, tokens.unknown})
            EXPECT_GE(contrast(text, ground), 4.5)
                << qPrintable(text.name() + QLatin1String(" on ") + ground.name());
    }
    const Theme theme(GetParam());
    const QPalette palette = theme.palette();
    EXPECT_GE(
        contrast(palette.color(QPalette::HighlightedText), palette.color(QPalette::Highlight)),
        4.5);
    EXPECT_GE(contrast(tokens.paper, tokens.ink), 4.5); // the filled button
}

// The same, success criterion 1.4.11 (AA): 3 to 1 for what shows a control or its focus.
TEST_P(EitherShade, drawsOutlinesFocusAndHighVoltageEdgesVisibly)
{
    for (const QColor &ground : {tokens.paper, tokens.panel}) {
        for (const QColor &line : {tokens.mute, tokens.blue, tokens.fails, tokens.highVoltage})
            EXPECT_GE(contrast(line, ground), 3.0);
    }
}

TEST_P(EitherShade, keepsOrangeForHighVoltage)
{
    // hue of orange, 15 to 45 degrees, with a colour one can name
    const auto orange = [](const QColor &c) {
        return c.hue() >= 15 && c.hue() <= 45 && c.saturation() > 110;
    };
    EXPECT_TRUE(orange(tokens.highVoltage));
    for (const QColor &colour :
         {tokens.paper, tokens.panel, tokens.ink, tokens.mute, tokens.blue, tokens.holds,
          tokens.tight, tokens.fails, tokens.unknown, tokens.tint(), tokens.hover()})
        EXPECT_FALSE(orange(colour)) << qPrintable(colour.name());
}

INSTANTIATE_TEST_SUITE_P(Shades, EitherShade, testing::Values(Shade::Light, Shade::Dark),
                         [](const auto &shade) {
                             return shade.param == Shade::Light ? "Light" : "Dark";
                         });

TEST(Theme, followsADesktopThatWritesLightOnDark)
{
    EXPECT_EQ(Theme::shadeOf(QPalette(QColor(0x30, 0x30, 0x30))), Shade::Dark);
    EXPECT_EQ(Theme::shadeOf(QPalette(QColor(0xEF, 0xEF, 0xEF))), Shade::Light);
}

TEST(Theme, carriesItsOwnLetters)
{
    const Themed themed;
    for (const auto lettering : {Lettering::Small, Lettering::Body, Lettering::Strong,
                                 Lettering::Heading, Lettering::Title, Lettering::Figure})
        EXPECT_EQ(QFontInfo(themed.theme.font(lettering)).family(), QStringLiteral("Inter"));
    EXPECT_TRUE(QFontDatabase::styles(QStringLiteral("Inter")).contains(QStringLiteral("Bold")));
}

TEST(Theme, changesEveryWidgetWhileTheyAreShown)
{
    Themed themed;
    QLabel label(QStringLiteral("Inverter"));
    driving::showActive(label);
    EXPECT_EQ(label.palette().color(QPalette::Window), tokensOf(Shade::Light).paper);
    const QSignalSpy changed(&themed.theme, &Theme::changed);
    themed.theme.setShade(Shade::Dark);
    themed.theme.setShade(Shade::Dark);
    EXPECT_EQ(changed.count(), 1);
    // widgets are told in the next round of events
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return label.palette().color(QPalette::Window) == tokensOf(Shade::Dark).paper; }));
    const QImage picture = label.grab().toImage();
    EXPECT_EQ(picture.pixelColor(picture.width() - 1, 0), tokensOf(Shade::Dark).paper);
}

TEST(Icons, areDrawnInTheInkOfTheMoment)
{
    Themed themed;
    const QIcon icon = themedIcon(themed.theme, QStringLiteral("parts"));
    EXPECT_EQ(strongestColour(icon.pixmap(96, 96).toImage()).rgb(),
              tokensOf(Shade::Light).ink.rgb());
    themed.theme.setShade(Shade::Dark);
    EXPECT_EQ(strongestColour(icon.pixmap(96, 96).toImage()).rgb(),
              tokensOf(Shade::Dark).ink.rgb());
}

TEST(Icons, areThereForEveryPageAndAction)
{
    for (const char *name :
         {"bench",   "parts", "build_order", "budget",   "checks",   "sheet",
          "find",    "undo",  "redo",        "add",      "remove",   "photo",
          "link",    "done",  "sun",         "moon",     "book",     "close",
          "caution", "note",  "file",        "send_out", "question", "chevron_down"})
        EXPECT_TRUE(hasIcon(QString::fromLatin1(name))) << name;
    EXPECT_FALSE(hasIcon(QStringLiteral("no_such_icon")));
}
