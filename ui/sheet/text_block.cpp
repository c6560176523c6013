// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/text_block.h"

#include "core/sheet/plain_text.h"
#include "ui/sheet/mark_painter.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QTextCharFormat>
#include <QTextOption>
#include <QThread>

#include <algorithm>

namespace ohmwright::sheet {

namespace {

constexpr double kUnbroken = 1e7;
constexpr QChar kHeldSpace(QChar::Nbsp);

QTextCharFormat formatOf(const TextStyle &style)
{
    QTextCharFormat format;
    format.setFont(style.font);
    format.setForeground(style.colour);
    return format;
}

void append(QString &text, QList<QTextLayout::FormatRange> &formats, const QString &more,
            const QTextCharFormat &format)
{
    QTextLayout::FormatRange range;
    range.start = static_cast<int>(text.size());
    range.length = static_cast<int>(more.size());
    range.format = format;
    formats.append(range);
    text += more;
}

// Marks are a little taller than capitals.
double shapeSizeOf(const TextStyle &style)
{
    constexpr double kOfCapitals = 1.15;
    return QFontMetricsF(style.font).capHeight() * kOfCapitals;
}

QString lineOf(const QString &text)
{
    QString clean = cleaned(text);
    clean.replace(QLatin1Char('\n'), QChar(QChar::LineSeparator));
    clean.replace(QLatin1Char('\t'), QLatin1Char(' '));
    return clean;
}

} // namespace

void TextBlock::add(const QString &text, const TextStyle &style, double spaceBefore)
{
    add(std::vector<StyledRun>{{text, style, std::nullopt}}, spaceBefore);
}

void TextBlock::add(const std::vector<Mark> &marks, const QString &text, const TextStyle &style,
                    double spaceBefore)
{
    std::vector<StyledRun> runs;
    for (const Mark &mark : marks)
        runs.push_back({QString(), style, mark});
    if (runs.empty())
        runs.push_back({text, style, std::nullopt});
    else
        runs.back().text = text;
    add(runs, spaceBefore);
}

void TextBlock::addFormula(const QString &formula, const TextStyle &style)
{
    std::vector<StyledRun> runs;
    for (const FormulaPiece &piece : formulaPieces(formula))
        runs.push_back({piece.text, style, std::nullopt, piece.place});
    add(runs);
}

void TextBlock::addWithNote(const std::vector<Mark> &marks, const QString &text,
                            const TextStyle &style, const QString &note, const TextStyle &noteStyle,
                            double width)
{
    const QString gap = QStringLiteral("   ");
    if (!text.isEmpty() && !note.isEmpty() && !text.contains(u'\n') && !note.contains(u'\n')) {
        std::vector<StyledRun> runs;
        for (const Mark &mark : marks)
            runs.push_back({QString(), style, mark});
        if (runs.empty())
            runs.push_back({text, style, std::nullopt});
        else
            runs.back().text = text;
        runs.push_back({gap + note, noteStyle, std::nullopt});
        TextBlock oneLine;
        oneLine.add(runs);
        if (oneLine.naturalWidth() <= width) {
            add(runs);
            return;
        }
    }
    add(marks, text, style);
    add(note, noteStyle);
}

void TextBlock::appendMark(const Mark &mark, const TextStyle &beside, QString &text,
                           QList<QTextLayout::FormatRange> &formats, Paragraph &paragraph)
{
    Decoration decoration;
    decoration.kind = mark.kind;
    decoration.start = static_cast<int>(text.size());
    if (mark.kind == MarkKind::HighVoltage) {
        append(text, formats, kHeldSpace + wordOf(mark) + kHeldSpace,
               formatOf(highVoltageStyle(beside)));
    } else {
        // The shape's place is a space as wide as the shape, which never leaves its word.
        QTextCharFormat place = formatOf(beside);
        QFont font = beside.font;
        const double gap = paragraph.shapeSize * 0.4;
        font.setLetterSpacing(
            QFont::AbsoluteSpacing,
            std::max(0.0, paragraph.shapeSize + gap -
                              QFontMetricsF(beside.font).horizontalAdvance(QString(kHeldSpace))));
        place.setFont(font);
        append(text, formats, QString(kHeldSpace), place);
        append(text, formats, lineOf(wordOf(mark)), formatOf(markWordStyle(beside, mark.kind)));
    }
    decoration.length = static_cast<int>(text.size()) - decoration.start;
    paragraph.decorations.push_back(decoration);
}

void TextBlock::add(const std::vector<StyledRun> &runs, double spaceBefore)
{
    if (runs.empty())
        return;
    const TextStyle &base = std::ranges::max_element(runs, {}, [](const StyledRun &run) {
                                return run.style.leading;
                            })->style;
    const QFontMetricsF metrics(base.font);
    Paragraph paragraph;
    paragraph.leading = base.leading;
    paragraph.baseline =
        (base.leading - metrics.ascent() - metrics.descent()) / 2 + metrics.ascent();
    paragraph.spaceBefore = m_paragraphs.empty() ? 0 : spaceBefore;
    paragraph.shapeSize = shapeSizeOf(base);

    QString text;
    QList<QTextLayout::FormatRange> formats;
    bool afterMark = false;
    for (const StyledRun &run : runs) {
        if (run.mark) {
            if (afterMark)
                append(text, formats, QStringLiteral("  "), formatOf(run.style));
            appendMark(*run.mark, run.style, text, formats, paragraph);
            afterMark = true;
        }
        if (!run.text.isEmpty()) {
            if (afterMark)
                append(text, formats, QStringLiteral("  "), formatOf(run.style));
            QTextCharFormat format = formatOf(run.style);
            if (run.place == Lettered::Lowered)
                format.setVerticalAlignment(QTextCharFormat::AlignSubScript);
            else if (run.place == Lettered::Raised)
                format.setVerticalAlignment(QTextCharFormat::AlignSuperScript);
            append(text, formats, lineOf(run.text), format);
            afterMark = false;
        }
    }
    if (text.isEmpty())
        return;
    paragraph.layout = std::make_unique<QTextLayout>(text, base.font);
    paragraph.layout->setFormats(formats);
    paragraph.layout->setCacheEnabled(true);
    paragraph.thread = QThread::currentThreadId();
    m_paragraphs.push_back(std::move(paragraph));
}

double TextBlock::naturalWidth() const
{
    double widest = 0;
    for (const Paragraph &paragraph : m_paragraphs) {
        QTextLayout &layout = *paragraph.layout;
        layout.beginLayout();
        for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
            line.setLineWidth(kUnbroken);
            widest = std::max(widest, line.naturalTextWidth());
        }
        layout.endLayout();
    }
    return widest;
}

double TextBlock::longestWord() const
{
    double widest = 0;
    for (const Paragraph &paragraph : m_paragraphs) {
        QTextLayout &layout = *paragraph.layout;
        layout.setTextOption(QTextOption()); // breaks between words only
        layout.beginLayout();
        for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
            line.setLineWidth(1);
            widest = std::max(widest, line.naturalTextWidth());
        }
        layout.endLayout();
    }
    return widest;
}

void TextBlock::setLines(QTextLayout &layout, double width)
{
    layout.beginLayout();
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(std::max(width, 1.0));
        line.setPosition(QPointF(0, 0));
    }
    layout.endLayout();
}

void TextBlock::layOut(double width, Qt::Alignment alignment)
{
    m_width = width;
    QTextOption option(alignment);
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    m_lines.clear();
    m_height = 0;
    for (Paragraph &paragraph : m_paragraphs) {
        QTextLayout &layout = *paragraph.layout;
        layout.setTextOption(option);
        setLines(layout, width);
        m_height += paragraph.spaceBefore;
        paragraph.lineCount = layout.lineCount();
        for (int i = 0; i < paragraph.lineCount; ++i) {
            m_lines.push_back({m_height, paragraph.leading});
            m_height += paragraph.leading;
        }
    }
}

void TextBlock::paint(QPainter &painter, QPointF origin, double from, double to) const
{
    std::size_t index = 0;
    for (const Paragraph &paragraph : m_paragraphs) {
        // Font engines go with the thread they were made in, so elsewhere the same lines are set
        // anew: of the same fonts and width they come out the same.
        std::optional<QTextLayout> own;
        const auto layout = [&]() -> const QTextLayout & {
            if (paragraph.thread == QThread::currentThreadId())
                return *paragraph.layout;
            if (!own) {
                own.emplace(paragraph.layout->text(), paragraph.layout->font());
                own->setFormats(paragraph.layout->formats());
                own->setTextOption(paragraph.layout->textOption());
                setLines(*own, m_width);
            }
            return *own;
        };
        for (int i = 0; i < paragraph.lineCount; ++i, ++index) {
            const double top = m_lines[index].top;
            if (top < from || top >= to)
                continue;
            const QTextLine line = layout().lineAt(i);
            // Set by the paragraph's own baseline: a fallback font's taller ascent moves nothing.
            const QPointF baseline = origin + QPointF(0, top + paragraph.baseline);
            line.draw(&painter, baseline - QPointF(0, line.ascent()));
            paintDecorations(painter, paragraph, line, baseline);
        }
    }
}

void TextBlock::paintDecorations(QPainter &painter, const Paragraph &paragraph,
                                 const QTextLine &line, QPointF baseline)
{
    constexpr double kOfCapitals = 1.15;
    const double capitals = paragraph.shapeSize / kOfCapitals;
    for (const Decoration &decoration : paragraph.decorations) {
        const int start = decoration.start;
        if (start < line.textStart() || start >= line.textStart() + line.textLength())
            continue;
        const double x = baseline.x() + line.cursorToX(start);
        if (decoration.kind == MarkKind::HighVoltage) {
            const double end = baseline.x() + line.cursorToX(start + decoration.length);
            const double above = pt(2.2);
            const QRectF frame(QPointF(x, baseline.y() - capitals * 0.8 - above),
                               QPointF(end, baseline.y() + above));
            paintHighVoltageFrame(painter, frame);
        } else {
            const double top = baseline.y() - (capitals + paragraph.shapeSize) / 2;
            paintMark(painter, decoration.kind,
                      QRectF(x, top, paragraph.shapeSize, paragraph.shapeSize));
        }
    }
}

} // namespace ohmwright::sheet
