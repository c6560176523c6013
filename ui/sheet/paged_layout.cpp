// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/paged_layout.h"

#include "core/sheet/content_hash.h"
#include "ui/sheet/figure_pieces.h"
#include "ui/sheet/page_breaker.h"
#include "ui/sheet/sheet_style.h"
#include "ui/sheet/table_pieces.h"
#include "ui/sheet/text_pieces.h"

#include <QPainter>

#include <algorithm>
#include <cmath>
#include <utility>

namespace ohmwright::sheet {

namespace {

// The paper's own margins; head and foot stand within the upper and lower one.
constexpr double kSideMargin = mm(18);
constexpr double kTopMargin = mm(19);
constexpr double kBottomMargin = mm(20);
constexpr double kHeadAt = mm(10);
constexpr double kFootAt = mm(14); // from the lower edge

QSizeF sizeInUnits(QPageSize::PageSizeId id)
{
    // In millimetres: QPageSize rounds points to whole ones.
    const QSizeF size = QPageSize::size(id, QPageSize::Millimeter);
    return {mm(size.width()), mm(size.height())};
}

QString oneLine(const QString &text)
{
    return text.simplified();
}

} // namespace

class PagedLayout::Impl
{
public:
    Impl(Document given, ImageLoader givenLoader, QPageSize::PageSizeId pageSize)
        : document(std::move(given)), loader(std::move(givenLoader)), style(makeSheetStyle()),
          size(sizeInUnits(pageSize)), width(size.width() - 2 * kSideMargin),
          bodyHeight(size.height() - kTopMargin - kBottomMargin)
    {
        makePieces();
        pages = breakIntoPages(pieces, bodyHeight);
        findPlaces();
    }

    void paint(QPainter &painter, int page) const
    {
        PaintContext context{painter, [this](int heading) {
                                 return bookmarks.at(static_cast<std::size_t>(heading)).page + 1;
                             }};
        painter.save();
        painter.scale(1 / kUnitsPerPoint, 1 / kUnitsPerPoint);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setRenderHint(QPainter::TextAntialiasing);
        if (page > 0)
            paintHead(painter, page);
        for (const Placed &placed : pages.at(static_cast<std::size_t>(page))) {
            painter.save();
            placed.piece->paint(context, QPointF(kSideMargin, kTopMargin + placed.y), placed.from,
                                placed.to);
            painter.restore();
        }
        paintFoot(painter, page);
        painter.restore();
    }

    Document document;
    ImageLoader loader;
    SheetStyle style;
    QSizeF size;
    double width, bodyHeight; // of what stands between the margins
    Pieces pieces;
    std::vector<Page> pages;
    std::vector<Bookmark> bookmarks;
    std::vector<Link> links;

private:
    void makePieces()
    {
        constexpr double kTallestPlate = 0.78; // of the body: leaves room for heading and caption
        TextPieceMaker text(style, width, bodyHeight, pieces);
        FigurePieceMaker figures(style, width, bodyHeight * kTallestPlate, loader, pieces);
        text.addTitle(document);
        bool startsPage = false;
        int headings = 0;
        for (const Block &block : document.blocks) {
            const std::size_t first = pieces.size();
            if (std::holds_alternative<PageBreak>(block))
                startsPage = true;
            else if (const auto *heading = std::get_if<Heading>(&block))
                text.add(*heading, headings++);
            else if (const auto *paragraph = std::get_if<Paragraph>(&block))
                text.add(*paragraph);
            else if (const auto *list = std::get_if<List>(&block))
                text.add(*list);
            else if (const auto *keyValues = std::get_if<KeyValues>(&block))
                text.add(*keyValues);
            else if (const auto *caution = std::get_if<Caution>(&block))
                text.add(*caution);
            else if (const auto *signatures = std::get_if<Signatures>(&block))
                text.add(*signatures);
            else if (const auto *contents = std::get_if<Contents>(&block))
                text.add(*contents, document);
            else if (const auto *table = std::get_if<Table>(&block))
                addTable(*table, style, width, bodyHeight, pieces);
            else if (const auto *figure = std::get_if<Figure>(&block))
                figures.add(*figure);
            else if (const auto *row = std::get_if<FigureRow>(&block))
                figures.add(*row);
            if (pieces.size() > first)
                pieces[first]->flow.startsPage = std::exchange(startsPage, false);
        }
    }

    void findPlaces()
    {
        for (const Block &block : document.blocks) {
            if (const auto *heading = std::get_if<Heading>(&block))
                bookmarks.push_back({levelOf(*heading), oneLine(heading->text), 0, 0});
        }
        for (std::size_t page = 0; page < pages.size(); ++page) {
            for (const Placed &placed : pages[page]) {
                const Flow &flow = placed.piece->flow;
                const double top = (kTopMargin + placed.y) / kUnitsPerPoint;
                if (flow.heading >= 0 && placed.from <= 0) {
                    Bookmark &bookmark = bookmarks.at(static_cast<std::size_t>(flow.heading));
                    bookmark.page = static_cast<int>(page);
                    bookmark.top = top;
                }
                if (flow.linkTo >= 0) {
                    const QRectF area(kSideMargin / kUnitsPerPoint, top, width / kUnitsPerPoint,
                                      (placed.to - placed.from) / kUnitsPerPoint);
                    links.push_back(
                        {static_cast<int>(page), area, static_cast<std::size_t>(flow.linkTo)});
                }
            }
        }
    }

    // The section a page's top belongs to.
    [[nodiscard]] QString sectionOf(int page) const
    {
        constexpr double kAtTop = 1.0;
        QString section;
        for (const Bookmark &bookmark : bookmarks) {
            const bool before =
                bookmark.page < page ||
                (bookmark.page == page && bookmark.top <= kTopMargin / kUnitsPerPoint + kAtTop);
            if (before && bookmark.level == 1)
                section = bookmark.text;
        }
        return section;
    }

    // At most `lines` lines, the rest elided; gives the width taken.
    static double paintLines(QPainter &painter, QPointF at, double room, const QString &text,
                             const TextStyle &textStyle, Qt::Alignment alignment = Qt::AlignLeft,
                             std::size_t lines = 1)
    {
        QString shown = oneLine(text);
        TextBlock block;
        block.add(shown, textStyle);
        block.layOut(room, alignment);
        while (block.lines().size() > lines) {
            // a tenth at a time: a note is a line or two, and a hostile one ends soon as well
            shown.chop(std::max<qsizetype>(shown.size() / 10, 1));
            shown = shown.trimmed();
            block = TextBlock();
            block.add(shown + QChar(0x2026), textStyle);
            block.layOut(room, alignment);
        }
        block.paint(painter, at, 0, block.height());
        return std::min(block.naturalWidth(), room);
    }

    void paintHead(QPainter &painter, int page) const
    {
        const double gap = pt(10);
        const double left = kSideMargin;
        const double taken = paintLines(painter, QPointF(left, kHeadAt), width * 0.4,
                                        document.title, style.runningStrong);
        paintLines(painter, QPointF(left + taken + gap, kHeadAt), width * 0.66 - taken - gap * 2,
                   sectionOf(page), style.running);
        paintLines(painter, QPointF(left + width * 0.66, kHeadAt), width * 0.34, document.revision,
                   style.running, Qt::AlignRight);
        painter.fillRect(QRectF(left, kHeadAt + pt(12.5), width, pt(0.4)), ink::kInk);
    }

    void paintFoot(QPainter &painter, int page) const
    {
        const double left = kSideMargin;
        const double y = size.height() - kFootAt;
        const double noteWidth = width * 0.68;
        painter.fillRect(QRectF(left, y, width, pt(0.4)), ink::kInk);
        paintLines(painter, QPointF(left, y + pt(3.5)), noteWidth, document.footer, style.running,
                   Qt::AlignLeft, 2);
        const QPointF right(left + noteWidth, y + pt(3.5));
        const QString number = QStringLiteral("page %1 of %2").arg(page + 1).arg(pages.size());
        paintLines(painter, right, width - noteWidth, number, style.runningStrong, Qt::AlignRight);
        if (document.contentHash.isEmpty())
            return;
        TextBlock hash;
        hash.add({{QStringLiteral("content "), style.running, std::nullopt},
                  {shortHash(document.contentHash), style.runningExact, std::nullopt}});
        hash.layOut(width - noteWidth, Qt::AlignRight);
        hash.paint(painter, right + QPointF(0, style.running.leading), 0, hash.height());
    }
};

PagedLayout::PagedLayout(Document document, ImageLoader loader, QPageSize::PageSizeId pageSize)
    : m_impl(std::make_unique<Impl>(std::move(document), std::move(loader), pageSize))
{}

PagedLayout::~PagedLayout() = default;
PagedLayout::PagedLayout(PagedLayout &&) noexcept = default;
PagedLayout &PagedLayout::operator=(PagedLayout &&) noexcept = default;

const Document &PagedLayout::document() const
{
    return m_impl->document;
}

int PagedLayout::pageCount() const
{
    return static_cast<int>(m_impl->pages.size());
}

QSizeF PagedLayout::pageSize() const
{
    return m_impl->size / kUnitsPerPoint;
}

const std::vector<PagedLayout::Bookmark> &PagedLayout::bookmarks() const
{
    return m_impl->bookmarks;
}

const std::vector<PagedLayout::Link> &PagedLayout::links() const
{
    return m_impl->links;
}

void PagedLayout::paintPage(QPainter &painter, int page) const
{
    m_impl->paint(painter, page);
}

QImage renderPage(const PagedLayout &layout, int page, double dotsPerInch)
{
    const double scale = dotsPerInch / kPointsPerInch;
    const QSizeF size = layout.pageSize() * scale;
    QImage image(std::max(1, static_cast<int>(std::lround(size.width()))),
                 std::max(1, static_cast<int>(std::lround(size.height()))), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(scale, scale);
    layout.paintPage(painter, page);
    return image;
}

std::vector<QImage> renderPages(const PagedLayout &layout, double dotsPerInch)
{
    std::vector<QImage> images;
    for (int page = 0; page < layout.pageCount(); ++page)
        images.push_back(renderPage(layout, page, dotsPerInch));
    return images;
}

} // namespace ohmwright::sheet
