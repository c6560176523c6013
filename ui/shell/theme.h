// SPDX-License-Identifier: GPL-3.0-or-later
// The look of the window as one object: colours, letters, and the style drawn from them.
//
// Made once in app/ and passed by reference to whatever paints. Standard widgets need nothing:
// they get their look from the application's style and palette.
//
//     Theme theme(Theme::shadeOf(QApplication::palette()));
//     theme.applyTo(app);
//     theme.setShade(Shade::Dark);   // at any time
//
// A Theme must outlive every widget and icon made with it.
#pragma once

#include <QColor>
#include <QFont>
#include <QObject>
#include <QPalette>
#include <QPointer>

#include <vector>

class QApplication;

namespace ohmwright::ui {

class DraftedStyle;

enum class Shade {
    Light, // ink on paper
    Dark,  // chalk on slate
};

// The colours and what each is for. Orange is for high voltage and nothing else.
struct Tokens
{
    QColor paper; // ground of a page
    QColor panel; // ground of what stands on a page: lines to type in, cards, lists
    QColor ink;   // text, firm lines
    QColor mute;  // text of less weight, outlines of controls
    QColor blue;  // focus, links, today
    QColor holds; // verdicts, always beside a shape and a word
    QColor tight;
    QColor fails;
    QColor unknown;
    QColor highVoltage; // lines and edges; letters in it only in the dark shade

    // Made from the above, so that both shades keep the same weights.
    [[nodiscard]] QColor hairline() const; // rules that only divide, never the edge of a control
    [[nodiscard]] QColor tint() const;     // ground of a selected row
    [[nodiscard]] QColor hover() const;    // ground under the pointer
    [[nodiscard]] QColor highVoltageText() const; // ink in the light shade
};

Tokens tokensOf(Shade shade);

// `share` 0 gives `a`, 1 gives `b`.
QColor mix(const QColor &a, const QColor &b, double share);

enum class Lettering {
    Small,   // second lines, hints, legends
    Body,    // everything else
    Strong,  // body, semi-bold
    Heading, // a section of a page
    Title,   // a page
    Figure,  // the one large number of a panel
};

class Theme : public QObject
{
    Q_OBJECT

public:
    explicit Theme(Shade shade = Shade::Light, QObject *parent = nullptr);
    ~Theme() override;

    // Dark if the palette writes light on dark: what the desktop prefers, before applyTo().
    [[nodiscard]] static Shade shadeOf(const QPalette &palette);

    // Loads the letters, sets style, palette and fonts of the application. A desktop that asks for
    // letters of 13 points or more keeps its size; any smaller wish gives 10.5 points.
    void applyTo(QApplication &app);

    [[nodiscard]] Shade shade() const { return m_shade; }
    void setShade(Shade shade);

    [[nodiscard]] const Tokens &tokens() const { return m_tokens; }
    [[nodiscard]] QFont font(Lettering lettering) const;
    [[nodiscard]] QPalette palette() const;

signals:
    // After palette and style follow the new shade. Only those who keep pictures need it: a palette
    // change repaints every widget anyway.
    void changed();

private:
    void loadLetters();

    Shade m_shade;
    Tokens m_tokens;
    QString m_family;
    double m_points;
    std::vector<int> m_fontIds;
    QPointer<QApplication> m_app;
    QPointer<DraftedStyle> m_style;
};

} // namespace ohmwright::ui
