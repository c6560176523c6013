// SPDX-License-Identifier: GPL-3.0-or-later
// Paragraphs set in lines of a given width, with marks among the words.
//
// Lines are drawn one by one, so a block can be continued on the next page at any of them.
// All lengths in layout units (sheet_style.h).
#pragma once

#include "core/sheet/formula_pieces.h"
#include "ui/sheet/sheet_style.h"

#include <QPointF>
#include <QString>
#include <QTextLayout>

#include <memory>
#include <optional>
#include <vector>

class QPainter;

namespace ohmwright::sheet {

struct StyledRun
{
    QString text;
    TextStyle style;
    std::optional<Mark> mark; // stands before the text
    Lettered place = Lettered::OnLine;
};

class TextBlock
{
public:
    struct Line
    {
        double top = 0;
        double height = 0;
    };

    // Adds a paragraph with the leading of its largest run. One without text and marks is left out.
    void add(const std::vector<StyledRun> &runs, double spaceBefore = 0);
    void add(const QString &text, const TextStyle &style, double spaceBefore = 0);
    void add(const std::vector<Mark> &marks, const QString &text, const TextStyle &style,
             double spaceBefore = 0);
    // With its letters lowered and raised.
    void addFormula(const QString &formula, const TextStyle &style);
    // A note behind the text where a line of that width has room for both, else below it.
    void addWithNote(const std::vector<Mark> &marks, const QString &text, const TextStyle &style,
                     const QString &note, const TextStyle &noteStyle, double width);

    [[nodiscard]] bool isEmpty() const { return m_paragraphs.empty(); }
    // Width without any line break but those in the text; width of the longest word or mark.
    [[nodiscard]] double naturalWidth() const;
    [[nodiscard]] double longestWord() const;

    void layOut(double width, Qt::Alignment alignment = Qt::AlignLeft);
    [[nodiscard]] double height() const { return m_height; }
    [[nodiscard]] const std::vector<Line> &lines() const { return m_lines; }
    // The lines whose top lies in [from, to), the block's own top being at `origin`. May be called
    // in another thread than the one that laid the block out, also after that one has ended.
    void paint(QPainter &painter, QPointF origin, double from, double to) const;

private:
    struct Decoration
    {
        MarkKind kind = MarkKind::Unknown;
        int start = 0, length = 0;
    };
    struct Paragraph
    {
        // Holds on to the font engines of its thread: usable in no other.
        std::unique_ptr<QTextLayout> layout;
        Qt::HANDLE thread = nullptr;
        std::vector<Decoration> decorations;
        double leading = 0, baseline = 0, spaceBefore = 0;
        double shapeSize = 0;
        int lineCount = 0;
    };

    static void appendMark(const Mark &mark, const TextStyle &beside, QString &text,
                           QList<QTextLayout::FormatRange> &formats, Paragraph &paragraph);
    static void setLines(QTextLayout &layout, double width);
    static void paintDecorations(QPainter &painter, const Paragraph &paragraph,
                                 const QTextLine &line, QPointF baseline);

    std::vector<Paragraph> m_paragraphs;
    std::vector<Line> m_lines;
    double m_height = 0;
    double m_width = 0;
};

} // namespace ohmwright::sheet
