// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/table_pieces.h"

#include "core/sheet/plain_text.h"
#include "ui/sheet/column_widths.h"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <optional>
#include <utility>

namespace ohmwright::sheet {

namespace {

constexpr double kGap = pt(11);
constexpr double kCellPadding = pt(1.8);

void rule(QPainter &painter, const QRectF &visible, double y, double thickness,
          const QColor &colour = ink::kInk)
{
    painter.fillRect(QRectF(visible.x(), y, visible.width(), thickness), colour);
}

class TableMaker
{
public:
    TableMaker(const Table &table, const SheetStyle &style, double width, double bodyHeight,
               Pieces &pieces)
        : m_table(withEveryColumn(table)), m_style(style), m_width(width), m_bodyHeight(bodyHeight),
          m_pieces(pieces)
    {}

    void make()
    {
        if (m_table.columns.empty() && m_table.rows.empty() && m_table.caption.isEmpty())
            return;
        const std::size_t first = m_pieces.size();
        measure();
        addCaption();
        addHeader();
        const std::size_t firstRow = m_pieces.size();
        for (std::size_t i = 0; i < m_table.rows.size(); ++i)
            addRow(m_table.rows[i], i + 1 == m_table.rows.size());
        if (m_table.rows.empty())
            addEmpty();
        holdTogether(m_pieces, firstRow, m_bodyHeight);
        m_pieces[first]->flow.spaceBefore = pt(8);
        m_pieces.back()->flow.spaceAfter = pt(12);
    }

private:
    struct Axis
    {
        double whole = 0;    // the widest half before the decimal sign
        double fraction = 0; // the widest half behind it
    };
    struct Halves
    {
        TextBlock whole;
        TextBlock fraction;
    };

    const TextStyle &styleOf(const Row &row, const Cell &cell) const
    {
        return row.kind == RowKind::Total ? m_style.cellStrong : cellStyle(m_style, cell.emphasis);
    }

    void measure()
    {
        std::vector<ColumnNeed> needs;
        m_axes.assign(m_table.columns.size(), {});
        for (std::size_t c = 0; c < m_table.columns.size(); ++c)
            needs.push_back(needOf(c));
        if (!needs.empty()) {
            needs.back().least -= kGap;
            needs.back().natural -= kGap;
        }
        m_widths = shareOutWidth(needs, m_width);
        double x = 0;
        for (std::size_t c = 0; c < m_widths.size(); ++c) {
            m_left.push_back(x);
            x += m_widths[c];
            if (c + 1 < m_widths.size())
                m_widths[c] -= kGap;
        }
    }

    ColumnNeed needOf(std::size_t c)
    {
        // words longer than this may be broken, lines longer than that are
        const double longestWord = m_width * 0.24;
        const double longestLine = m_width * 0.45;
        const Column &column = m_table.columns[c];
        double word = 0;
        double natural = 0;
        const auto take = [&](const QString &text, const TextStyle &style) {
            if (text.isEmpty())
                return;
            TextBlock block;
            block.add(text, style);
            word = std::max(word, block.longestWord());
            natural = std::max(natural, block.naturalWidth());
        };
        take(column.header, m_style.label);
        Axis &axis = m_axes[c];
        for (const Row &row : m_table.rows) {
            if (row.kind == RowKind::Group)
                continue;
            const Cell &cell = row.cells[c];
            take(cell.evidence, m_style.note);
            if (const auto halves = halvesOf(row, c)) {
                axis.whole = std::max(axis.whole, halves->whole.naturalWidth());
                axis.fraction = std::max(axis.fraction, halves->fraction.naturalWidth());
            } else {
                TextBlock block;
                addText(block, row, c);
                word = std::max(word, block.longestWord());
                natural = std::max(natural, block.naturalWidth());
            }
        }
        const double figure = axis.whole + axis.fraction;
        ColumnNeed need;
        need.least = std::max(std::min(word, longestWord), figure) + kGap;
        need.natural = std::max(std::min(natural, longestLine), figure) + kGap;
        need.share = std::max(column.share, 0);
        need.stretches = column.align == Align::Left;
        return need;
    }

    // Nothing for a cell that is not lined up on its decimal sign: it is set like any other text.
    std::optional<Halves> halvesOf(const Row &row, std::size_t c) const
    {
        const Cell &cell = row.cells[c];
        if (m_table.columns[c].align != Align::Decimal)
            return std::nullopt;
        const auto texts = splitAtDecimal(cleaned(cell.text));
        if (!texts)
            return std::nullopt;
        Halves halves;
        halves.whole.add(cell.marks, texts->whole, styleOf(row, cell));
        halves.fraction.add(texts->fraction, styleOf(row, cell));
        const double longest = m_width * 0.15;
        if (halves.whole.naturalWidth() > longest || halves.fraction.naturalWidth() > longest)
            return std::nullopt;
        return halves;
    }

    std::shared_ptr<TextPiece> append()
    {
        auto piece = std::make_shared<TextPiece>(m_width);
        m_pieces.push_back(piece);
        return piece;
    }

    void addCaption()
    {
        if (m_table.caption.isEmpty())
            return;
        const auto caption = append();
        TextBlock text;
        text.add(m_table.caption, m_style.caption);
        text.layOut(m_width);
        caption->add(std::move(text), QPointF(0, 0));
        caption->setSpaceBelow(pt(3));
        caption->flow.keepWithNext = true;

        const auto again = std::make_shared<TextPiece>(m_width);
        TextBlock continued;
        continued.add(m_table.caption + QStringLiteral(", continued"), m_style.label);
        continued.layOut(m_width);
        again->add(std::move(continued), QPointF(0, 0));
        again->setSpaceBelow(pt(2));
        m_repeats.push_back(again);
    }

    void addHeader()
    {
        const bool anyHeader = std::ranges::any_of(
            m_table.columns, [](const Column &column) { return !column.header.isEmpty(); });
        const auto header = append();
        double height = 0;
        std::vector<TextBlock> texts;
        for (std::size_t c = 0; c < m_table.columns.size(); ++c) {
            TextBlock text;
            if (m_table.columns[c].symbolic)
                text.addFormula(m_table.columns[c].header, m_style.label);
            else
                text.add(m_table.columns[c].header, m_style.label);
            text.layOut(m_widths[c], alignmentOf(c));
            height = std::max(height, text.height());
            texts.push_back(std::move(text));
        }
        for (std::size_t c = 0; c < texts.size(); ++c) {
            const double top = height - texts[c].height(); // all stand on the rule
            header->add(std::move(texts[c]), QPointF(m_left[c], top));
        }
        if (anyHeader)
            header->setSpaceBelow(pt(3));
        header->setMinimumHeight(pt(0.9));
        header->setBackdrop([](QPainter &painter, const QRectF &visible, bool, bool last) {
            if (last)
                rule(painter, visible, visible.bottom() - pt(0.9), pt(0.9));
        });
        header->flow.keepWithNext = true;
        m_repeats.push_back(header);
        m_repeatsOfTable = m_repeats.size();
    }

    Qt::Alignment alignmentOf(std::size_t c) const
    {
        return m_table.columns[c].align == Align::Left ? Qt::AlignLeft : Qt::AlignRight;
    }

    void addRow(const Row &row, bool last)
    {
        if (row.kind == RowKind::Group) {
            addGroup(row, last);
            return;
        }
        if (row.kind == RowKind::Total)
            m_pieces.back()->flow.keepWithNext = true;
        const auto piece = append();
        piece->repeats = m_repeats;
        for (std::size_t c = 0; c < m_table.columns.size(); ++c)
            addCell(*piece, row, c);
        piece->setSpaceBelow(kCellPadding);
        piece->setMinimumHeight(m_style.cell.leading + 2 * kCellPadding);
        const bool total = row.kind == RowKind::Total;
        piece->setBackdrop(
            [last, total](QPainter &painter, const QRectF &visible, bool top, bool bottom) {
                if (total && top)
                    rule(painter, visible, visible.y() - pt(0.45), pt(0.9));
                if (last && bottom)
                    rule(painter, visible, visible.bottom() - pt(0.9), pt(0.9));
                else
                    rule(painter, visible, visible.bottom() - pt(0.35), pt(0.35), ink::kHairline);
            });
    }

    void addText(TextBlock &block, const Row &row, std::size_t c) const
    {
        const Cell &cell = row.cells[c];
        if (m_table.columns[c].formula)
            block.addFormula(cell.text, styleOf(row, cell));
        else
            block.add(cell.marks, cell.text, styleOf(row, cell));
    }

    void addCell(TextPiece &piece, const Row &row, std::size_t c)
    {
        const Cell &cell = row.cells[c];
        auto halves = halvesOf(row, c);
        if (!halves) {
            TextBlock text;
            if (m_table.columns[c].formula) {
                addText(text, row, c);
            } else if (m_table.columns[c].align == Align::Left) {
                text.addWithNote(cell.marks, cell.text, styleOf(row, cell), cell.evidence,
                                 m_style.note, m_widths[c]);
            } else {
                text.add(cell.marks, cell.text, styleOf(row, cell));
                text.add(cell.evidence, m_style.note);
            }
            text.layOut(m_widths[c], alignmentOf(c));
            piece.add(std::move(text), QPointF(m_left[c], kCellPadding));
            return;
        }
        const double axisAt = m_left[c] + m_widths[c] - m_axes[c].fraction;
        const double room = pt(0.5); // against breaking a line that fits exactly
        const double width = halves->whole.naturalWidth();
        halves->whole.layOut(width + room);
        piece.add(std::move(halves->whole), QPointF(axisAt - width, kCellPadding));
        halves->fraction.layOut(m_axes[c].fraction + room);
        piece.add(std::move(halves->fraction), QPointF(axisAt, kCellPadding));
        TextBlock evidence;
        evidence.add(cell.evidence, m_style.note);
        evidence.layOut(m_widths[c], Qt::AlignRight);
        piece.add(std::move(evidence), QPointF(m_left[c], kCellPadding + m_style.cell.leading));
    }

    std::shared_ptr<TextPiece> makeGroup(const Row &row, bool again) const
    {
        auto piece = std::make_shared<TextPiece>(m_width);
        TextBlock text;
        if (!row.cells.empty()) {
            const Cell &cell = row.cells.front();
            text.addWithNote(cell.marks,
                             again ? cell.text + QStringLiteral(", continued") : cell.text,
                             m_style.cellStrong, again ? QString() : cell.evidence, m_style.note,
                             m_width - pt(10));
        }
        text.layOut(m_width - pt(10));
        piece->add(std::move(text), QPointF(pt(5), kCellPadding));
        piece->setSpaceBelow(kCellPadding);
        piece->setMinimumHeight(m_style.cell.leading + 2 * kCellPadding);
        piece->setBackdrop([](QPainter &painter, const QRectF &visible, bool, bool) {
            painter.fillRect(visible, ink::kTint);
            rule(painter, visible, visible.bottom() - pt(0.35), pt(0.35), ink::kHairline);
        });
        return piece;
    }

    void addGroup(const Row &row, bool last)
    {
        const auto piece = makeGroup(row, false);
        m_repeats.resize(m_repeatsOfTable);
        piece->repeats = m_repeats;
        piece->flow.keepWithNext = !last;
        m_pieces.push_back(piece);
        m_repeats.push_back(makeGroup(row, true));
    }

    void addEmpty()
    {
        const auto piece = append();
        TextBlock text;
        text.add(m_table.whenEmpty.isEmpty() ? QStringLiteral("None recorded.") : m_table.whenEmpty,
                 m_style.cellQuiet);
        text.layOut(m_width);
        piece->add(std::move(text), QPointF(0, kCellPadding));
        piece->setSpaceBelow(kCellPadding);
        piece->setBackdrop([](QPainter &painter, const QRectF &visible, bool, bool) {
            rule(painter, visible, visible.bottom() - pt(0.9), pt(0.9));
        });
    }

    const Table m_table;
    const SheetStyle &m_style;
    double m_width;
    double m_bodyHeight; // of a page
    Pieces &m_pieces;
    std::vector<Axis> m_axes;     // by column
    std::vector<double> m_widths; // without the gap
    std::vector<double> m_left;
    std::vector<std::shared_ptr<const Piece>> m_repeats;
    std::size_t m_repeatsOfTable = 0;
};

} // namespace

void addTable(const Table &table, const SheetStyle &style, double width, double bodyHeight,
              Pieces &pieces)
{
    TableMaker(table, style, width, bodyHeight, pieces).make();
}

} // namespace ohmwright::sheet
