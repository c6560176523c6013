// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/theme.h"

#include "ui/shell/drafted_style.h"

#include <QApplication>
#include <QFontDatabase>

#include <algorithm>
#include <array>

namespace ohmwright::ui {

namespace {

constexpr double kBodyPoints = 10.5;      // 14 px at 96 dots an inch
constexpr double kKeepDesktopFrom = 13.0; // points; a desktop set this large is meant for the eyes

double sizeOf(Lettering lettering)
{
    switch (lettering) {
    case Lettering::Small:
        return 0.88;
    case Lettering::Body:
    case Lettering::Strong:
        return 1.0;
    case Lettering::Heading:
        return 1.12;
    case Lettering::Title:
        return 1.55;
    case Lettering::Figure:
        return 1.9;
    }
    Q_UNREACHABLE();
}

QFont::Weight weightOf(Lettering lettering)
{
    switch (lettering) {
    case Lettering::Small:
    case Lettering::Body:
        return QFont::Normal;
    case Lettering::Figure:
        return QFont::Medium;
    case Lettering::Strong:
    case Lettering::Heading:
    case Lettering::Title:
        return QFont::DemiBold;
    }
    Q_UNREACHABLE();
}

} // namespace

QColor mix(const QColor &a, const QColor &b, double share)
{
    const auto between = [share](int from, int to) {
        return qRound(from + (to - from) * share);
    };
    return {between(a.red(), b.red()), between(a.green(), b.green()), between(a.blue(), b.blue())};
}

QColor Tokens::hairline() const
{
    return mix(paper, ink, 0.22);
}

QColor Tokens::tint() const
{
    return mix(panel, blue, 0.14);
}

QColor Tokens::hover() const
{
    return mix(panel, ink, 0.06);
}

QColor Tokens::highVoltageText() const
{
    return paper.lightness() > ink.lightness() ? ink : highVoltage;
}

Tokens tokensOf(Shade shade)
{
    switch (shade) {
    case Shade::Light:
        return {.paper = QColor(0xF6, 0xF3, 0xEC),
                .panel = QColor(0xFC, 0xFA, 0xF5),
                .ink = QColor(0x1F, 0x2A, 0x33),
                .mute = QColor(0x5A, 0x64, 0x6C),
                .blue = QColor(0x1F, 0x5A, 0x8A),
                .holds = QColor(0x2C, 0x6A, 0x3F),
                .tight = QColor(0x6B, 0x59, 0x00),
                .fails = QColor(0x9E, 0x2A, 0x2B),
                .unknown = QColor(0x5B, 0x4A, 0x8A),
                .highVoltage = QColor(0xC9, 0x4A, 0x08)};
    case Shade::Dark:
        return {.paper = QColor(0x1B, 0x21, 0x26),
                .panel = QColor(0x23, 0x2B, 0x31),
                .ink = QColor(0xEC, 0xE8, 0xDF),
                .mute = QColor(0xA7, 0xAF, 0xB5),
                .blue = QColor(0x82, 0xB6, 0xDF),
                .holds = QColor(0x86, 0xC2, 0x94),
                .tight = QColor(0xD8, 0xC3, 0x6A),
                .fails = QColor(0xEE, 0x8F, 0x8F),
                .unknown = QColor(0xB9, 0xA8, 0xEA),
                .highVoltage = QColor(0xFF, 0x8A, 0x3D)};
    }
    Q_UNREACHABLE();
}

Theme::Theme(Shade shade, QObject *parent)
    : QObject(parent), m_shade(shade), m_tokens(tokensOf(shade)), m_family(QStringLiteral("Inter")),
      m_points(kBodyPoints)
{
    loadLetters();
}

Theme::~Theme()
{
    for (const int id : m_fontIds)
        QFontDatabase::removeApplicationFont(id);
}

Shade Theme::shadeOf(const QPalette &palette)
{
    const bool dark = palette.color(QPalette::Window).lightness() <
                      palette.color(QPalette::WindowText).lightness();
    return dark ? Shade::Dark : Shade::Light;
}

void Theme::loadLetters()
{
    static constexpr std::array kFiles{"Regular", "Medium", "SemiBold", "Bold", "Italic"};
    for (const char *file : kFiles) {
        const int id = QFontDatabase::addApplicationFont(
            QStringLiteral(":/ohmwright/fonts/Inter-%1.otf").arg(QLatin1String(file)));
        if (id >= 0)
            m_fontIds.push_back(id);
    }
}

void Theme::applyTo(QApplication &app)
{
    m_app = &app;
    const double wished = QApplication::font().pointSizeF();
    m_points = wished >= kKeepDesktopFrom ? wished : kBodyPoints;
    m_style = new DraftedStyle(m_tokens);
    QApplication::setStyle(m_style);
    QApplication::setPalette(palette());
    QApplication::setFont(font(Lettering::Body));
    QFont header = font(Lettering::Small);
    header.setWeight(QFont::Medium);
    QApplication::setFont(header, "QHeaderView");
    QApplication::setFont(font(Lettering::Small), "QToolTip");
    QApplication::setFont(font(Lettering::Small), "QTipLabel");
}

void Theme::setShade(Shade shade)
{
    if (shade == m_shade)
        return;
    m_shade = shade;
    m_tokens = tokensOf(shade);
    if (m_style)
        m_style->setTokens(m_tokens);
    if (m_app)
        QApplication::setPalette(palette());
    emit changed();
}

QFont Theme::font(Lettering lettering) const
{
    QFont font(m_family);
    font.setPointSizeF(m_points * sizeOf(lettering));
    font.setWeight(weightOf(lettering));
    return font;
}

QPalette Theme::palette() const
{
    const Tokens &t = m_tokens;
    QPalette palette;
    palette.setColor(QPalette::Window, t.paper);
    palette.setColor(QPalette::WindowText, t.ink);
    palette.setColor(QPalette::Base, t.panel);
    palette.setColor(QPalette::AlternateBase, mix(t.panel, t.paper, 0.6));
    palette.setColor(QPalette::Text, t.ink);
    palette.setColor(QPalette::PlaceholderText, t.mute);
    palette.setColor(QPalette::Button, t.panel);
    palette.setColor(QPalette::ButtonText, t.ink);
    palette.setColor(QPalette::BrightText, t.fails);
    palette.setColor(QPalette::ToolTipBase, t.panel);
    palette.setColor(QPalette::ToolTipText, t.ink);
    palette.setColor(QPalette::Highlight, mix(t.panel, t.blue, 0.28));
    palette.setColor(QPalette::HighlightedText, t.ink);
    palette.setColor(QPalette::Link, t.blue);
    palette.setColor(QPalette::LinkVisited, t.blue);
    palette.setColor(QPalette::Light, t.panel);
    palette.setColor(QPalette::Midlight, t.hover());
    palette.setColor(QPalette::Mid, t.hairline());
    palette.setColor(QPalette::Dark, t.mute);
    palette.setColor(QPalette::Shadow, t.ink);
    for (const auto role :
         {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::HighlightedText})
        palette.setColor(QPalette::Disabled, role, t.mute);
    return palette;
}

} // namespace ohmwright::ui
