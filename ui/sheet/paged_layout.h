// SPDX-License-Identifier: GPL-3.0-or-later
// A document cut into pages, ready to be painted: by the PDF writer, and by a preview on screen,
// which so shows the very pages that will be printed.
//
//     const PagedLayout layout(document, loader);
//     for (int page = 0; page < layout.pageCount(); ++page)
//         layout.paintPage(painter, page);
//
// May be made and used on any one thread at a time. Making one for a few hundred rows takes some
// tens of milliseconds, for many thousands seconds.
#pragma once

#include "core/sheet/document.h"

#include <QImage>
#include <QPageSize>
#include <QRectF>
#include <QSizeF>
#include <QString>

#include <memory>
#include <vector>

class QPainter;

namespace ohmwright::sheet {

class PagedLayout
{
public:
    // Where a heading ended up; lengths in points (1/72 inch) from the page's top left corner.
    struct Bookmark
    {
        int level = 1; // 1 to 3
        QString text;
        int page = 0; // from 0
        double top = 0;
    };
    // A place that leads to a heading.
    struct Link
    {
        int page = 0;
        QRectF area;
        std::size_t bookmark = 0;
    };

    // The loader is kept and asked whenever a page with pictures is painted. Needs a
    // QGuiApplication and registerResources(); on a page smaller than A6 the result is unspecified.
    explicit PagedLayout(Document document, ImageLoader loader = {},
                         QPageSize::PageSizeId pageSize = QPageSize::A4);
    ~PagedLayout();
    PagedLayout(PagedLayout &&) noexcept;
    PagedLayout &operator=(PagedLayout &&) noexcept;

    [[nodiscard]] const Document &document() const;
    [[nodiscard]] int pageCount() const;   // at least 1
    [[nodiscard]] QSizeF pageSize() const; // in points; A4 is 595.276 by 841.890
    [[nodiscard]] const std::vector<Bookmark> &bookmarks() const; // in reading order
    [[nodiscard]] const std::vector<Link> &links() const;

    // Draws one page, 0 to pageCount() - 1, with a point as the painter's unit and the page's top
    // left corner at the origin. Draws ink only: the paper is the caller's.
    void paintPage(QPainter &painter, int page) const;

private:
    class Impl;
    std::unique_ptr<Impl> m_impl;
};

// One page, or all, as pictures on white paper.
QImage renderPage(const PagedLayout &layout, int page, double dotsPerInch);
std::vector<QImage> renderPages(const PagedLayout &layout, double dotsPerInch);

} // namespace ohmwright::sheet
