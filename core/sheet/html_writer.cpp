// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/html_writer.h"

#include "core/sheet/content_hash.h"
#include "core/sheet/formula_pieces.h"
#include "core/sheet/html_style.h"
#include "core/sheet/html_text.h"
#include "core/sheet/plain_text.h"
#include "core/sheet/save_file.h"

#include <QByteArrayView>

#include <algorithm>
#include <utility>

namespace ohmwright::sheet {

namespace {

class HtmlWriter : private HtmlText
{
public:
    HtmlWriter(const Document &document, const ImageLoader &loader)
        : m_document(document), m_loader(loader), m_headings(anchoredHeadings(document))
    {}

    QByteArray write()
    {
        head();
        for (const Block &block : m_document.blocks)
            std::visit([this](const auto &value) { add(value); }, block);
        foot();
        return taken();
    }

private:
    void head()
    {
        raw("<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"");
        attribute(m_document.language);
        raw("\" xml:lang=\"");
        attribute(m_document.language);
        raw("\">\n<head>\n<meta charset=\"utf-8\"/>\n"
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
            "img-src data:; style-src 'unsafe-inline'\"/>\n"
            "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
            "<meta name=\"generator\" content=\"Ohmwright\"/>\n");
        element("<title>", cleaned(m_document.title).simplified(), "</title>\n<style>");
        raw(htmlStyle());
        raw("</style>\n</head>\n<body>\n");
        raw(htmlShapes());
        element("<header>\n<h1>", m_document.title, "</h1>\n");
        if (!m_document.subtitle.isEmpty())
            element("<p class=\"subtitle\">", m_document.subtitle, "</p>\n");
        if (!m_document.revision.isEmpty() || !m_document.contentHash.isEmpty()) {
            raw("<p class=\"imprint\">");
            if (!m_document.revision.isEmpty())
                element("<span>", m_document.revision, "</span>");
            if (!m_document.contentHash.isEmpty())
                element("<span>content ", shortHash(m_document.contentHash), "</span>");
            raw("</p>\n");
        }
        raw("</header>\n<main>\n");
    }

    void foot()
    {
        raw("</main>\n<footer>\n");
        if (!m_document.footer.isEmpty())
            element("<p>", m_document.footer, "</p>\n");
        if (!m_document.contentHash.isEmpty())
            element("<p>content <span class=\"exact\">", m_document.contentHash, "</span></p>\n");
        raw("</footer>\n</body>\n</html>\n");
    }

    void mark(const Mark &mark)
    {
        if (mark.kind == MarkKind::HighVoltage) {
            raw("<abbr class=\"hv\" title=\"high voltage\">HV</abbr>");
            return;
        }
        const QByteArray kind = wordOf({mark.kind, {}}).toLatin1();
        raw("<span class=\"mark ", kind, "\"><svg aria-hidden=\"true\"><use href=\"#mark-", kind,
            "\"/></svg>");
        element({}, wordOf(mark), "</span>");
    }

    void marks(const std::vector<Mark> &all, bool beforeText)
    {
        for (const Mark &each : all)
            mark(each);
        if (!all.empty() && beforeText)
            raw(" ");
    }

    void emphasised(const QString &plain, Emphasis emphasis)
    {
        if (plain.isEmpty())
            return;
        switch (emphasis) {
        case Emphasis::None:
            text(plain);
            break;
        case Emphasis::Strong:
            element("<strong>", plain, "</strong>");
            break;
        case Emphasis::Muted:
            element("<span class=\"muted\">", plain, "</span>");
            break;
        case Emphasis::Exact:
            element("<span class=\"exact\">", plain, "</span>");
            break;
        }
    }

    // Marks, text and a muted line below, as list items and facts have them.
    void withNote(const std::vector<Mark> &all, const QString &plain, const QString &note,
                  QByteArrayView noteClass, Emphasis emphasis = Emphasis::None)
    {
        marks(all, !plain.isEmpty());
        emphasised(plain, emphasis);
        if (!note.isEmpty()) {
            raw("<span class=\"", noteClass, "\">");
            element({}, note, "</span>");
        }
    }

    void formula(const QString &plain)
    {
        for (const FormulaPiece &piece : formulaPieces(plain)) {
            if (piece.place == Lettered::Lowered)
                element("<sub>", piece.text, "</sub>");
            else if (piece.place == Lettered::Raised)
                element("<sup>", piece.text, "</sup>");
            else
                text(piece.text);
        }
    }

    void add(const Heading &heading)
    {
        const Anchored &anchored = m_headings[m_headingsDone++];
        const QByteArray name = "h" + QByteArray::number(anchored.level + 1);
        raw("<", name, " id=\"");
        attribute(anchored.id);
        raw("\">");
        text(heading.text);
        raw("</", name, ">\n");
    }

    void add(const Paragraph &paragraph)
    {
        raw("<p>");
        for (const Run &run : paragraph.runs) {
            if (run.mark)
                marks({*run.mark}, !run.text.isEmpty());
            emphasised(run.text, run.emphasis);
        }
        raw("</p>\n");
    }

    void add(const List &list)
    {
        if (list.items.empty())
            return;
        const bool numbered = list.kind == ListKind::Numbers;
        raw(numbered                           ? "<ol>\n"
            : list.kind == ListKind::TickBoxes ? "<ul class=\"ticks\">\n"
                                               : "<ul>\n");
        for (const ListItem &item : list.items) {
            raw("<li>");
            withNote(item.marks, item.text, item.note, "note");
            raw("</li>\n");
        }
        raw(numbered ? "</ol>\n" : "</ul>\n");
    }

    void add(const KeyValues &keyValues)
    {
        if (keyValues.rows.empty())
            return;
        raw("<dl class=\"facts\">\n");
        for (const KeyValue &row : keyValues.rows) {
            element("<div><dt>", row.label, "</dt><dd>");
            withNote(row.marks, row.value, row.note, "note", row.emphasis);
            raw("</dd></div>\n");
        }
        raw("</dl>\n");
    }

    void add(const Table &given)
    {
        const Table table = withEveryColumn(given);
        if (table.columns.empty() && table.caption.isEmpty())
            return;
        // a group needs a cell to stand in
        const std::size_t count = std::max<std::size_t>(table.columns.size(), 1);
        const std::vector<double> fractions = fractionWidths(table);

        raw("<section class=\"scroll\" tabindex=\"0\" aria-label=\"");
        attribute(table.caption.isEmpty() ? QStringLiteral("Table") : table.caption);
        raw("\"><table>\n");
        if (!table.caption.isEmpty())
            element("<caption>", table.caption, "</caption>\n");
        columnWidths(table);
        if (!table.columns.empty()) {
            raw("<thead><tr>");
            for (const Column &column : table.columns) {
                raw("<th scope=\"col\"", classOf(column.align), ">");
                if (column.symbolic)
                    formula(column.header);
                else
                    text(column.header);
                raw("</th>");
            }
            raw("</tr></thead>\n");
        }
        raw("<tbody>\n");
        bool bodyIsFresh = true;
        const QByteArray span = " colspan=\"" + QByteArray::number(qulonglong(count)) + "\"";
        for (const Row &row : table.rows) {
            if (row.kind == RowKind::Group) {
                if (!bodyIsFresh)
                    raw("</tbody>\n<tbody>\n");
                raw("<tr><th class=\"group\" scope=\"rowgroup\"", span, ">");
                if (!row.cells.empty())
                    withNote(row.cells[0].marks, row.cells[0].text, row.cells[0].evidence,
                             "evidence");
                raw("</th></tr>\n");
            } else {
                tableRow(table, row, fractions);
            }
            bodyIsFresh = false;
        }
        if (table.rows.empty()) {
            raw("<tr><td class=\"empty\"", span, ">");
            text(table.whenEmpty.isEmpty() ? QStringLiteral("None recorded.") : table.whenEmpty);
            raw("</td></tr>\n");
        }
        raw("</tbody>\n</table></section>\n");
    }

    void columnWidths(const Table &table)
    {
        int total = 0;
        for (const Column &column : table.columns)
            total += std::max(column.share, 0);
        // with columns as wide as their contents beside, the shares are of an unknown rest
        const bool allShared = std::ranges::all_of(
            table.columns, [](const Column &column) { return column.share > 0; });
        if (total == 0 || !allShared)
            return;
        raw("<colgroup>");
        for (const Column &column : table.columns) {
            raw("<col style=\"width:", QByteArray::number(100.0 * column.share / total, 'f', 2),
                "%\"/>");
        }
        raw("</colgroup>\n");
    }

    static std::vector<double> fractionWidths(const Table &table)
    {
        std::vector<double> widths(table.columns.size(), 0.0);
        for (const Row &row : table.rows) {
            if (row.kind == RowKind::Group)
                continue;
            for (std::size_t i = 0; i < row.cells.size(); ++i) {
                if (table.columns[i].align != Align::Decimal)
                    continue;
                if (const auto halves = splitAtDecimal(cleaned(row.cells[i].text)))
                    widths[i] = std::max(widths[i], widestInCh(halves->fraction));
            }
        }
        return widths;
    }

    static QByteArray classOf(Align align)
    {
        switch (align) {
        case Align::Right:
            return " class=\"right\"";
        case Align::Decimal:
            return " class=\"decimal\"";
        case Align::Left:
            break;
        }
        return {};
    }

    void tableRow(const Table &table, const Row &row, const std::vector<double> &fractions)
    {
        raw(row.kind == RowKind::Total ? "<tr class=\"total\">" : "<tr>");
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            const Cell &cell = row.cells[i];
            const QByteArray name = i == 0 ? "th" : "td";
            raw("<", name, (i == 0 ? " scope=\"row\"" : ""), classOf(table.columns[i].align), ">");
            const auto halves = table.columns[i].align == Align::Decimal
                                    ? splitAtDecimal(cleaned(cell.text))
                                    : std::nullopt;
            if (halves) {
                marks(cell.marks, true);
                element("<span class=\"number\">", halves->whole, {});
                raw("<span class=\"fraction\" style=\"min-width:",
                    QByteArray::number(fractions[i], 'f', 1), "ch\">");
                element({}, halves->fraction, "</span></span>");
                if (!cell.evidence.isEmpty())
                    element("<span class=\"evidence\">", cell.evidence, "</span>");
            } else if (table.columns[i].formula) {
                formula(cell.text);
            } else {
                withNote(cell.marks, cell.text, cell.evidence, "evidence", cell.emphasis);
            }
            raw("</", name, ">");
        }
        raw("</tr>\n");
    }

    void add(const Figure &figure)
    {
        // the paper's millimetres, as large again: a screen is read from further away
        const QByteArray tallest =
            QByteArray::number(figure.maxHeight.in(metres(0.001)) * 1.3, 'f', 0);
        raw("<figure style=\"--tallest:", tallest, "mm\"><div class=\"plate\">");
        const QByteArray bytes = imageBytes(figure.image, m_loader);
        const QByteArrayView type = imageType(bytes);
        if (type.isEmpty()) {
            raw("<p class=\"missing\">");
            raw(bytes.isEmpty() ? "This picture could not be found."
                                : "This picture is of a kind that cannot be shown here.");
            raw("</p>");
        } else {
            raw("<img src=\"data:");
            raw(type);
            raw(";base64,");
            raw(bytes.toBase64());
            raw("\" alt=\"");
            attribute(figure.altText.isEmpty() ? figure.caption : figure.altText);
            raw("\"");
            if (figure.image.width > 0 && figure.image.height > 0) {
                raw(" width=\"", QByteArray::number(figure.image.width), "\" height=\"",
                    QByteArray::number(figure.image.height), "\"");
            }
            raw("/>");
        }
        raw("</div>\n<figcaption><span class=\"label\">Figure ", QByteArray::number(++m_figures),
            "</span>");
        element({}, figure.caption, "</figcaption></figure>\n");
    }

    void add(const FigureRow &row)
    {
        raw(row.columns >= 3 ? "<div class=\"row three\">\n" : "<div class=\"row two\">\n");
        for (const Figure &figure : row.figures)
            add(figure);
        raw("</div>\n");
    }

    void add(const Caution &caution)
    {
        raw(caution.highVoltage ? "<div class=\"caution high\" role=\"note\">"
                                : "<div class=\"caution\" role=\"note\">");
        raw("<svg aria-hidden=\"true\"><use href=\"#mark-caution\"/></svg><p class=\"title\">");
        if (caution.highVoltage)
            marks({{MarkKind::HighVoltage, {}}}, true);
        element({}, caution.title, "</p>");
        for (const QString &line : caution.lines)
            element("<p>", line, "</p>");
        raw("</div>\n");
    }

    void add(const Signatures &signatures)
    {
        for (const SignatureLine &line : signatures.lines) {
            element("<div class=\"sign\"><p class=\"role\">", line.role, "</p>");
            if (!line.statement.isEmpty())
                element("<p class=\"statement\">", line.statement, "</p>");
            element("<dl class=\"blanks\"><div><dt>Name in block letters</dt><dd>", line.name,
                    "</dd></div><div><dt>Date</dt><dd></dd></div>"
                    "<div><dt>Signature</dt><dd></dd></div></dl></div>\n");
        }
    }

    void add(const PageBreak & /*unused*/) { raw("<hr class=\"page pagebreak\"/>\n"); }

    void add(const Contents &contents)
    {
        raw("<nav class=\"contents\" aria-label=\"Contents\"><ol>\n");
        for (const Anchored &heading : m_headings) {
            if (heading.level > contents.depth)
                continue;
            raw("<li class=\"level-", QByteArray::number(heading.level), "\"><a href=\"#");
            attribute(heading.id);
            element("\">", heading.text, "</a></li>\n");
        }
        raw("</ol></nav>\n");
    }

    const Document &m_document;
    const ImageLoader &m_loader;
    std::vector<Anchored> m_headings;
    std::size_t m_headingsDone = 0;
    int m_figures = 0;
};

} // namespace

QByteArray toHtml(const Document &document, const ImageLoader &loader)
{
    return HtmlWriter(document, loader).write();
}

Outcome writeHtml(const Document &document, const QString &path, const ImageLoader &loader)
{
    return saveFile(path, toHtml(document, loader));
}

} // namespace ohmwright::sheet
