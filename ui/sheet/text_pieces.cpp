// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/text_pieces.h"

#include "core/sheet/content_hash.h"
#include "ui/sheet/mark_painter.h"

#include <QPainter>
#include <QPen>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace ohmwright::sheet {

namespace {

void rule(QPainter &painter, double x, double y, double width, double thickness,
          const QColor &colour = ink::kInk)
{
    painter.fillRect(QRectF(x, y, width, thickness), colour);
}

void frame(QPainter &painter, const QRectF &rect, double thickness, const QColor &colour)
{
    painter.setPen(QPen(colour, thickness, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    const double half = thickness / 2;
    painter.drawRect(rect.adjusted(half, half, -half, -half));
}

QString labelOf(ListKind kind, std::size_t index)
{
    return kind == ListKind::Numbers ? QString::number(qulonglong{index} + 1) + QLatin1Char('.')
                                     : QStringLiteral("–");
}

// One line of the contents: its text, dots, and the page it is on, known when the pages are.
class ContentsLine : public TextPiece
{
public:
    ContentsLine(double width, double textEnd, TextStyle style)
        : TextPiece(width), m_textEnd(textEnd), m_style(std::move(style))
    {}

    void paint(PaintContext &context, QPointF origin, double from, double to) const override
    {
        TextPiece::paint(context, origin, from, to);
        TextBlock number;
        number.add(QString::number(context.pageOfHeading(flow.linkTo)), m_style);
        const double taken = number.naturalWidth();
        number.layOut(width(), Qt::AlignRight);
        number.paint(context.painter, origin, from, to);

        const double y = m_style.leading * 0.72;
        const double start = m_textEnd + pt(4);
        const double end = width() - taken - pt(4);
        if (y < from || end <= start)
            return;
        QPen dots(ink::kMute, pt(0.7), Qt::CustomDashLine, Qt::RoundCap);
        dots.setDashPattern({0.01, 5.0});
        context.painter.setPen(dots);
        context.painter.drawLine(QPointF(origin.x() + end, origin.y() + y - from),
                                 QPointF(origin.x() + start, origin.y() + y - from));
    }

private:
    double m_textEnd;
    TextStyle m_style;
};

} // namespace

int levelOf(const Heading &heading)
{
    return std::clamp(heading.level, 1, 3);
}

std::shared_ptr<TextPiece> TextPieceMaker::append()
{
    auto piece = std::make_shared<TextPiece>(m_width);
    m_pieces.push_back(piece);
    return piece;
}

void TextPieceMaker::setOff(std::size_t first, double before, double after)
{
    if (first >= m_pieces.size())
        return;
    m_pieces[first]->flow.spaceBefore = before;
    m_pieces.back()->flow.spaceAfter = after;
    holdTogether(m_pieces, first, m_bodyHeight);
}

void TextPieceMaker::addTitle(const Document &document)
{
    const auto title = append();
    TextBlock text;
    text.add(document.title, m_style.title);
    text.add(document.subtitle, m_style.subtitle, pt(3));
    text.layOut(m_width);
    title->add(std::move(text), QPointF(0, 0));
    title->setSpaceBelow(pt(9));
    title->flow.keepWithNext = true;

    if (document.revision.isEmpty() && document.contentHash.isEmpty()) {
        title->flow.spaceAfter = pt(10);
        return;
    }
    const auto imprint = append();
    TextBlock revision;
    revision.add(document.revision, m_style.imprint);
    revision.layOut(m_width * 0.6);
    imprint->add(std::move(revision), QPointF(0, pt(5)));
    if (!document.contentHash.isEmpty()) {
        TextBlock hash;
        hash.add({{QStringLiteral("content "), m_style.running, std::nullopt},
                  {shortHash(document.contentHash), m_style.runningExact, std::nullopt}});
        hash.layOut(m_width * 0.4, Qt::AlignRight);
        imprint->add(std::move(hash), QPointF(m_width * 0.6, pt(6)));
    }
    imprint->setSpaceBelow(pt(5));
    imprint->setBackdrop([](QPainter &painter, const QRectF &visible, bool, bool) {
        rule(painter, visible.x(), visible.y(), visible.width(), pt(1.2));
        rule(painter, visible.x(), visible.bottom() - pt(0.4), visible.width(), pt(0.4));
    });
    imprint->flow.spaceAfter = pt(12);
}

void TextPieceMaker::add(const Heading &heading, int index)
{
    const int level = levelOf(heading);
    constexpr std::array<double, 3> kBefore{26, 17, 12};
    constexpr std::array<double, 3> kAfter{7, 5, 3};
    const auto piece = append();
    TextBlock text;
    text.add(heading.text, m_style.heading[level - 1]);
    text.layOut(m_width);
    const bool ruled = level == 1;
    piece->add(std::move(text), QPointF(0, ruled ? pt(6) : 0));
    if (ruled) {
        piece->setBackdrop([](QPainter &painter, const QRectF &visible, bool first, bool) {
            if (first)
                rule(painter, visible.x(), visible.y(), visible.width(), pt(1.2));
        });
    }
    piece->flow.spaceBefore = pt(kBefore[static_cast<std::size_t>(level - 1)]);
    piece->flow.spaceAfter = pt(kAfter[static_cast<std::size_t>(level - 1)]);
    piece->flow.keepWithNext = true;
    piece->flow.heading = index;
}

void TextPieceMaker::add(const Paragraph &paragraph)
{
    const double measure = std::min(m_width, pt(430));
    TextBlock text;
    std::vector<StyledRun> runs;
    for (const Run &run : paragraph.runs)
        runs.push_back({run.text, bodyStyle(m_style, run.emphasis), run.mark});
    text.add(runs);
    if (text.isEmpty())
        return;
    text.layOut(measure);
    // A few words under a heading lead to what follows: at the foot of a page they say nothing.
    constexpr double kLeadLines = 3;
    const bool leads = !m_pieces.empty() && m_pieces.back()->flow.heading >= 0 &&
                       text.height() <= kLeadLines * m_style.body.leading;
    const auto piece = append();
    piece->add(std::move(text), QPointF(0, 0));
    piece->flow = {pt(5), pt(5), leads, false, true, -1, -1};
}

void TextPieceMaker::add(const List &list)
{
    const std::size_t first = m_pieces.size();
    double indent = list.kind == ListKind::TickBoxes ? pt(19) : pt(13);
    if (list.kind == ListKind::Numbers && !list.items.empty()) {
        TextBlock widest;
        widest.add(labelOf(list.kind, list.items.size() - 1), m_style.muted);
        indent = std::max(indent, widest.naturalWidth() + pt(5));
    }
    for (std::size_t i = 0; i < list.items.size(); ++i) {
        const ListItem &item = list.items[i];
        const auto piece = append();
        if (list.kind == ListKind::TickBoxes) {
            const double side = pt(9.5);
            piece->setBackdrop([side](QPainter &painter, const QRectF &visible, bool top, bool) {
                if (top)
                    frame(painter, QRectF(visible.x(), visible.y() + pt(2), side, side), pt(0.8),
                          ink::kInk);
            });
        } else {
            TextBlock label;
            label.add(labelOf(list.kind, i), m_style.muted);
            label.layOut(indent);
            piece->add(std::move(label), QPointF(0, 0));
        }
        TextBlock text;
        text.addWithNote(item.marks, item.text, m_style.body, item.note, m_style.note,
                         m_width - indent);
        text.layOut(m_width - indent);
        piece->add(std::move(text), QPointF(indent, 0));
        piece->setMinimumHeight(m_style.body.leading);
        piece->flow.spaceBefore = pt(3);
    }
    setOff(first, pt(5), pt(6));
}

void TextPieceMaker::add(const KeyValues &keyValues)
{
    const std::size_t first = m_pieces.size();
    const double labelWidth = m_width * 0.27;
    const double valueAt = labelWidth + pt(12);
    for (const KeyValue &row : keyValues.rows) {
        const auto piece = append();
        TextBlock label;
        label.add(row.label, m_style.label);
        label.layOut(labelWidth);
        // the smaller label stands on the value's baseline
        piece->add(std::move(label), QPointF(0, pt(3.5) + pt(1.6)));
        TextBlock value;
        value.addWithNote(row.marks, row.value, bodyStyle(m_style, row.emphasis), row.note,
                          m_style.note, m_width - valueAt);
        value.layOut(m_width - valueAt);
        piece->add(std::move(value), QPointF(valueAt, pt(3.5)));
        piece->setSpaceBelow(pt(3.5));
        const bool isFirst = piece == m_pieces[first];
        piece->setBackdrop(
            [isFirst](QPainter &painter, const QRectF &visible, bool top, bool bottom) {
                if (isFirst && top)
                    rule(painter, visible.x(), visible.y(), visible.width(), pt(0.8));
                if (bottom)
                    rule(painter, visible.x(), visible.bottom() - pt(0.35), visible.width(),
                         pt(0.35), ink::kHairline);
            });
    }
    setOff(first, pt(5), pt(8));
}

void TextPieceMaker::add(const Caution &caution)
{
    constexpr double kSign = 22;
    const double textAt = pt(12 + kSign + 12);
    const auto piece = append();
    TextBlock text;
    std::vector<Mark> marks;
    if (caution.highVoltage)
        marks.push_back(Mark{MarkKind::HighVoltage, QString()});
    text.add(marks, caution.title, m_style.strong);
    for (const QString &line : caution.lines)
        text.add(line, m_style.body, pt(2));
    text.layOut(m_width - textAt - pt(12));
    piece->add(std::move(text), QPointF(textAt, pt(8)));
    piece->setSpaceBelow(pt(8));
    piece->setMinimumHeight(pt(kSign + 16));
    const bool highVoltage = caution.highVoltage;
    piece->setBackdrop(
        [highVoltage](QPainter &painter, const QRectF &visible, bool first, bool last) {
            const double air = pt(4); // where the box is cut
            const QRectF box = visible.adjusted(0, first ? 0 : -air, 0, last ? 0 : air);
            frame(painter, box, pt(0.9), ink::kInk);
            painter.fillRect(QRectF(box.topLeft(), QSizeF(pt(4), box.height())),
                             highVoltage ? ink::kHighVoltage : ink::kInk);
            if (first) {
                paintCautionSign(painter,
                                 QRectF(box.x() + pt(13), box.y() + pt(7), pt(kSign), pt(kSign)));
            }
        });
    piece->flow.spaceBefore = pt(4);
    piece->flow.spaceAfter = pt(5);
}

void TextPieceMaker::add(const Signatures &signatures)
{
    struct Blank
    {
        QString label;
        double share;
    };
    const std::array<Blank, 3> blanks{{{QStringLiteral("Name in block letters"), 0.40},
                                       {QStringLiteral("Date"), 0.18},
                                       {QStringLiteral("Signature"), 0.42}}};
    const double gap = pt(16);
    const double room = pt(40); // to write in
    const std::size_t first = m_pieces.size();
    for (const SignatureLine &line : signatures.lines) {
        const auto piece = append();
        TextBlock head;
        head.add(line.role, m_style.strong);
        head.add(line.statement, m_style.body, pt(1));
        head.layOut(std::min(m_width, pt(430)));
        const double lineAt = head.height() + room;
        piece->add(std::move(head), QPointF(0, 0));

        const double shared = m_width - gap * (blanks.size() - 1);
        double x = 0;
        std::vector<std::pair<double, double>> lines;
        for (std::size_t i = 0; i < blanks.size(); ++i) {
            const double width = shared * blanks[i].share;
            if (i == 0 && !line.name.isEmpty()) {
                TextBlock name;
                name.add(line.name, m_style.body);
                name.layOut(width);
                const double top = std::max(lineAt - name.height() - pt(2), 0.0);
                piece->add(std::move(name), QPointF(x, top));
            }
            TextBlock label;
            label.add(blanks[i].label, m_style.label);
            label.layOut(width);
            piece->add(std::move(label), QPointF(x, lineAt + pt(3)));
            lines.emplace_back(x, width);
            x += width + gap;
        }
        const double whole = piece->height();
        piece->setBackdrop(
            [lines, lineAt, whole](QPainter &painter, const QRectF &visible, bool, bool last) {
                if (!last)
                    return;
                const double y = visible.bottom() - (whole - lineAt);
                for (const auto &[at, width] : lines)
                    rule(painter, visible.x() + at, y, width, pt(0.6));
            });
        piece->flow.spaceBefore = pt(18);
        piece->flow.keepWithNext = true; // all of them are on one page
    }
    setOff(first, pt(10), pt(10));
    if (m_pieces.size() > first)
        m_pieces.back()->flow.keepWithNext = false;
}

void TextPieceMaker::add(const Contents &contents, const Document &document)
{
    const std::size_t first = m_pieces.size();
    int index = -1;
    for (const Block &block : document.blocks) {
        const auto *heading = std::get_if<Heading>(&block);
        if (!heading)
            continue;
        ++index;
        const int level = levelOf(*heading);
        if (level > contents.depth)
            continue;
        const double indent = pt(14) * (level - 1);
        TextBlock text;
        text.add(heading->text, m_style.body);
        const double room = m_width - indent - pt(40);
        const double textEnd = indent + std::min(text.naturalWidth(), room);
        text.layOut(room);
        const double end = text.lines().size() > 1 ? m_width : textEnd;
        auto piece = std::make_shared<ContentsLine>(m_width, end, m_style.body);
        piece->add(std::move(text), QPointF(indent, 0));
        piece->setSpaceBelow(pt(1.5));
        piece->flow.linkTo = index;
        m_pieces.push_back(piece);
    }
    setOff(first, pt(5), pt(8));
}

} // namespace ohmwright::sheet
