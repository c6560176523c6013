// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/sheet/sample_document.h"
#include "ui/sheet/paged_layout.h"

#include <QColor>
#include <QImage>
#include <QPainter>
#include <QThread>

#include <gtest/gtest.h>

#include <algorithm>
#include <memory>

namespace ohmwright::sheet {

namespace {

int orangeDots(const std::vector<QImage> &pages)
{
    int count = 0;
    for (const QImage &page : pages) {
        for (int y = 0; y < page.height(); ++y) {
            for (int x = 0; x < page.width(); ++x) {
                const QColor colour = page.pixelColor(x, y);
                if (colour.red() > 180 && colour.green() < 110 && colour.blue() < 60)
                    ++count;
            }
        }
    }
    return count;
}

bool isBlank(const QImage &image, const QRect &area)
{
    for (int y = area.top(); y <= area.bottom(); ++y) {
        for (int x = area.left(); x <= area.right(); ++x) {
            if (image.pixel(x, y) != qRgb(255, 255, 255))
                return false;
        }
    }
    return true;
}

Document hardDocument()
{
    const QString word = QStringLiteral("Unbreakable").repeated(60);
    const QString lines = QStringLiteral("one\ntwo\nthree");
    Document d;
    d.title = word;
    d.subtitle = word;
    d.revision = word;
    d.footer = word + QStringLiteral(" and words ").repeated(200);
    d.contentHash = word;
    FigureRow photos;
    for (int i = 0; i < 7; ++i) {
        Figure figure;
        figure.image.bytes = photo(i % 2 ? QSize(300, 200) : QSize(20, 900), i);
        figure.caption = i == 0 ? word : QString();
        photos.figures.push_back(figure);
    }
    photos.columns = 3;
    d.blocks = {
        Contents{3},
        Heading{-4, word, word},
        Heading{9, QString(), QString()},
        Paragraph{},
        Paragraph{{{word, Emphasis::Exact, Mark{MarkKind::Fails, word}}}},
        List{ListKind::Numbers, {{word, word, {MarkKind::Holds}}, {lines}}},
        List{},
        KeyValues{{{word, word, word}, {QString(), lines}}},
        KeyValues{},
        Table{},
        Table{word, {}, {}, word},
        Table{word,
              {{word, Align::Left, 1}, {word, Align::Decimal, 1}, {"c", Align::Right, 0}},
              {{{{word, word}, {"1." + QStringLiteral("9").repeated(300)}, {lines, lines}}},
               {{}, RowKind::Group},
               {{{word}}, RowKind::Group},
               {{{"1"}, {"2"}, {"3"}, {"4"}, {"5"}}, RowKind::Total},
               {{}, RowKind::Plain}},
              {}},
        Table{"tall", {{"a"}}, {{{{QStringLiteral("line\n").repeated(300)}}}}, {}},
        photos,
        FigureRow{},
        Figure{},
        Caution{word, {word, QStringLiteral("words ").repeated(3000)}, true},
        Caution{},
        Signatures{{{word, word, word}, {}, {}}},
        Signatures{},
        PageBreak{},
        PageBreak{},
    };
    return d;
}

} // namespace

// ISO 216: A4 is 210 mm by 297 mm. ANSI/ASME Y14.1: letter is 8.5 in by 11 in.
TEST(PagedLayout, PagesHaveTheStandardSize)
{
    const PagedLayout a4{Document()};
    EXPECT_NEAR(a4.pageSize().width(), 210 / 25.4 * 72, 0.01);
    EXPECT_NEAR(a4.pageSize().height(), 297 / 25.4 * 72, 0.01);
    const PagedLayout letter(Document(), {}, QPageSize::Letter);
    EXPECT_NEAR(letter.pageSize().width(), 612, 0.1);
    EXPECT_NEAR(letter.pageSize().height(), 792, 0.1);
}

TEST(PagedLayout, AnEmptyDocumentIsOnePage)
{
    const PagedLayout layout{Document()};
    EXPECT_EQ(layout.pageCount(), 1);
    EXPECT_EQ(renderPages(layout, 30).size(), 1U);
}

TEST(PagedLayout, EveryHeadingHasItsPlaceInReadingOrder)
{
    const PagedLayout layout(sampleDocument());
    const auto &bookmarks = layout.bookmarks();
    ASSERT_EQ(bookmarks.size(), 11U);
    EXPECT_EQ(bookmarks.front().text, "Vehicle");
    EXPECT_EQ(bookmarks[1].level, 2);
    EXPECT_TRUE(std::ranges::is_sorted(bookmarks, [](const auto &a, const auto &b) {
        return std::pair(a.page, a.top) < std::pair(b.page, b.top);
    }));
    for (const auto &link : layout.links())
        EXPECT_LT(link.bookmark, bookmarks.size());
    EXPECT_EQ(layout.links().size(), 10U) << "the contents go down to level 2";
}

TEST(PagedLayout, OrangeIsForHighVoltageAlone)
{
    Document d;
    d.title = "No high voltage here";
    d.blocks = {Caution{"Batteries burn", {"and re-ignite"}, false},
                Paragraph{{{"a", Emphasis::None, Mark{MarkKind::Holds}},
                           {"b", Emphasis::None, Mark{MarkKind::Tight}},
                           {"c", Emphasis::None, Mark{MarkKind::Fails}},
                           {"d", Emphasis::None, Mark{MarkKind::Unknown}}}},
                longTable(60)};
    EXPECT_EQ(orangeDots(renderPages(PagedLayout(d), 150)), 0);
    d.blocks.push_back(Paragraph{{{"e", Emphasis::None, Mark{MarkKind::HighVoltage}}}});
    EXPECT_GT(orangeDots(renderPages(PagedLayout(d), 150)), 20);
}

TEST(PagedLayout, NothingReachesIntoTheMarginsWhateverTheContent)
{
    constexpr double kDotsPerInch = 50;
    const PagedLayout layout(hardDocument());
    EXPECT_GT(layout.pageCount(), 5);
    const int side = static_cast<int>(16 / 25.4 * kDotsPerInch);
    const int foot = static_cast<int>(5 / 25.4 * kDotsPerInch);
    for (const QImage &page : renderPages(layout, kDotsPerInch)) {
        EXPECT_TRUE(isBlank(page, {0, 0, side, page.height()}));
        EXPECT_TRUE(isBlank(page, {page.width() - side, 0, side, page.height()}));
        EXPECT_TRUE(isBlank(page, {0, 0, page.width(), foot}));
        EXPECT_TRUE(isBlank(page, {0, page.height() - foot, page.width(), foot}));
        // between the body and the foot, too
        const int body = page.height() - static_cast<int>(19 / 25.4 * kDotsPerInch);
        EXPECT_TRUE(
            isBlank(page, {0, body, page.width(), static_cast<int>(3 / 25.4 * kDotsPerInch)}));
    }
}

TEST(PagedLayout, PaintingLeavesThePainterAsItWas)
{
    const PagedLayout layout(sampleDocument());
    QImage image(100, 100, QImage::Format_RGB32);
    QPainter painter(&image);
    painter.setPen(Qt::red);
    const QTransform before = painter.transform();
    layout.paintPage(painter, 0);
    EXPECT_EQ(painter.transform(), before);
    EXPECT_EQ(painter.pen().color(), QColor(Qt::red));
}

TEST(PagedLayout, PagesBreakAlikeAtEveryResolution)
{
    const PagedLayout layout(sampleDocument());
    const QImage coarse = renderPage(layout, 1, 36);
    const QImage fine = renderPage(layout, 1, 144)
                            .scaled(coarse.size(), Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    double difference = 0;
    for (int y = 0; y < coarse.height(); ++y) {
        for (int x = 0; x < coarse.width(); ++x)
            difference += std::abs(qGray(coarse.pixel(x, y)) - qGray(fine.pixel(x, y)));
    }
    EXPECT_LT(difference / (coarse.width() * coarse.height()), 6);
}

// The sheet page lays out beside the window's thread and paints in it, long after: font engines
// are each thread's own and go when it ends.
TEST(PagedLayout, IsPaintedAfterTheThreadThatLaidItOutHasEnded)
{
    const std::vector<QImage> expected = renderPages(PagedLayout(sampleDocument()), 60);
    std::unique_ptr<const PagedLayout> layout;
    const std::unique_ptr<QThread> thread(
        QThread::create([&] { layout = std::make_unique<const PagedLayout>(sampleDocument()); }));
    thread->start();
    ASSERT_TRUE(thread->wait());
    EXPECT_EQ(renderPages(*layout, 60), expected);
}

TEST(PagedLayout, TheLoaderIsAskedForEveryPicture)
{
    Document d;
    d.blocks = {Figure{{"one", {}, 0, 0}, "a", {}, metres(0.05)},
                Figure{{"two", {}, 640, 480}, "b", {}, metres(0.05)}};
    std::vector<QString> asked;
    const PagedLayout layout(d, [&asked](const Image &image) {
        asked.push_back(image.id);
        return photo({64, 48}, 1);
    });
    EXPECT_EQ(asked, std::vector<QString>{"one"}) << "a known size saves the asking";
    asked.clear();
    renderPages(layout, 30);
    EXPECT_EQ(asked, (std::vector<QString>{"one", "two"}));
}

} // namespace ohmwright::sheet
