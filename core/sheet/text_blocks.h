// SPDX-License-Identifier: GPL-3.0-or-later
// What a document says in words and figures: running text, lists, facts and tables, and the marks
// among them. Part of the document model; see document.h.
#pragma once

#include <QString>

#include <optional>
#include <utility>
#include <vector>

namespace ohmwright::sheet {

// Marks ------------------------------------------------------------------------------------------

// A state told by shape and word. HighVoltage is a bordered tag, "HV", and the only orange thing.
enum class MarkKind { Holds, Tight, Fails, Unknown, HighVoltage };

struct Mark
{
    Mark() = default;
    Mark(MarkKind theKind, QString theWord = {}) : kind(theKind), word(std::move(theWord)) {}

    MarkKind kind = MarkKind::Unknown;
    QString word; // beside the shape: "met", "3 open"; empty: the kind's own word
};

// "holds", "tight", "fails", "unknown", "HV": the mark's word, or its kind's own.
QString wordOf(const Mark &mark);

// Running text -----------------------------------------------------------------------------------

// Exact is for serial numbers and hashes: figures of one width, no two characters alike.
enum class Emphasis { None, Strong, Muted, Exact };

struct Run
{
    QString text;
    Emphasis emphasis = Emphasis::None;
    std::optional<Mark> mark = std::nullopt; // stands before the text
};

struct Heading
{
    int level = 1; // 1 to 3; anything else counts as the nearest
    QString text;
    QString anchor; // target for links, unique in the document; empty: none is needed
};

struct Paragraph
{
    std::vector<Run> runs;
};

enum class ListKind { Bullets, Numbers, TickBoxes };

struct ListItem
{
    ListItem() = default;
    ListItem(QString theText, QString theNote = {}, std::vector<Mark> theMarks = {})
        : text(std::move(theText)), note(std::move(theNote)), marks(std::move(theMarks))
    {}

    QString text;
    QString note; // muted, below or where the line has room behind it
    std::vector<Mark> marks;
};

struct List
{
    ListKind kind = ListKind::Bullets;
    std::vector<ListItem> items;
};

// Facts ------------------------------------------------------------------------------------------

struct KeyValue
{
    KeyValue() = default;
    KeyValue(QString theLabel, QString theValue, QString theNote = {},
             std::vector<Mark> theMarks = {}, Emphasis theEmphasis = Emphasis::None)
        : label(std::move(theLabel)), value(std::move(theValue)), note(std::move(theNote)),
          marks(std::move(theMarks)), emphasis(theEmphasis)
    {}

    QString label;
    QString value;
    QString note; // evidence or remark, muted
    std::vector<Mark> marks;
    Emphasis emphasis = Emphasis::None; // of the value
};

struct KeyValues
{
    std::vector<KeyValue> rows;
};

// Decimal lines a column up on the decimal sign, whatever follows it; a cell without a figure is
// set flush right.
enum class Align { Left, Right, Decimal };

struct Column
{
    QString header;
    Align align = Align::Left;
    // Relative width. 0: as wide as its contents need, within reason.
    int share = 0;
    // Its cells are symbols or formulas: "m_f" gets an index (formula_pieces.h).
    bool formula = false;
    bool symbolic = false; // its header is one
};

struct Cell
{
    Cell() = default;
    Cell(QString theText, QString theEvidence = {}, std::vector<Mark> theMarks = {},
         Emphasis theEmphasis = Emphasis::None)
        : text(std::move(theText)), evidence(std::move(theEvidence)), marks(std::move(theMarks)),
          emphasis(theEmphasis)
    {}

    QString text;
    QString evidence; // a second, muted line: where the figure comes from
    std::vector<Mark> marks;
    Emphasis emphasis = Emphasis::None; // of the text
};

// A Group row is a header over the rows that follow it; of its cells only the first is shown.
enum class RowKind { Plain, Group, Total };

struct Row
{
    std::vector<Cell> cells; // fewer than columns: the rest is blank
    RowKind kind = RowKind::Plain;
};

struct Table
{
    QString caption;
    std::vector<Column> columns;
    std::vector<Row> rows;
    QString whenEmpty; // said in place of rows; empty: "None recorded."
};

// The same table with as many columns as its longest row has cells, so that no cell is left out.
Table withEveryColumn(Table table);

} // namespace ohmwright::sheet
