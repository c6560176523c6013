// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/page_breaker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <random>

namespace ohmwright::sheet {

namespace {

// So many lines, each 10 high, and a name to be found again by.
class LinesPiece : public Piece
{
public:
    LinesPiece(int piece, int lines) : id(piece), m_lines(lines) {}
    [[nodiscard]] double height() const override { return m_lines * 10.0; }
    [[nodiscard]] std::vector<double> cuts() const override
    {
        std::vector<double> result;
        for (int i = 1; i < m_lines; ++i)
            result.push_back(i * 10.0);
        return result;
    }
    void paint(PaintContext & /*unused*/, QPointF /*unused*/, double /*unused*/,
               double /*unused*/) const override
    {}

    int id;

private:
    int m_lines;
};

std::shared_ptr<LinesPiece> lines(int id, int count)
{
    return std::make_shared<LinesPiece>(id, count);
}

int idOf(const Placed &placed)
{
    return static_cast<const LinesPiece &>(*placed.piece).id;
}

// The page, from 0, a piece begins on.
int pageOf(const std::vector<Page> &pages, int id)
{
    for (std::size_t page = 0; page < pages.size(); ++page) {
        for (const Placed &placed : pages[page]) {
            if (!placed.again && idOf(placed) == id && placed.from <= 0)
                return static_cast<int>(page);
        }
    }
    return -1;
}

} // namespace

TEST(PageBreaker, NothingStillMakesAPage)
{
    EXPECT_EQ(breakIntoPages({}, 100).size(), 1U);
}

TEST(PageBreaker, PiecesFollowOneAnotherAndTurnThePageWhenItIsFull)
{
    const auto pages = breakIntoPages({lines(0, 4), lines(1, 4), lines(2, 4)}, 100);
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_EQ(pageOf(pages, 1), 0);
    EXPECT_EQ(pages[0][1].y, 40);
    EXPECT_EQ(pageOf(pages, 2), 1);
    EXPECT_EQ(pages[1][0].y, 0);
}

TEST(PageBreaker, TheLargerOfTwoSpacesCountsAndNoneAtTheTopOfAPage)
{
    const auto one = lines(0, 4);
    one->flow.spaceBefore = 30;
    one->flow.spaceAfter = 5;
    const auto two = lines(1, 4);
    two->flow.spaceBefore = 12;
    const auto three = lines(2, 4);
    three->flow.spaceBefore = 12;
    const auto pages = breakIntoPages({one, two, three}, 100);
    EXPECT_EQ(pages[0][0].y, 0);
    EXPECT_EQ(pages[0][1].y, 52);
    EXPECT_EQ(pages[1][0].y, 0);
}

TEST(PageBreaker, AHeadingGoesWithWhatItHeads)
{
    const auto heading = lines(1, 2);
    heading->flow.keepWithNext = true;
    const auto caption = lines(2, 1);
    caption->flow.keepWithNext = true;
    const auto pages = breakIntoPages({lines(0, 6), heading, caption, lines(3, 2)}, 100);
    EXPECT_EQ(pageOf(pages, 1), 1);
    EXPECT_EQ(pageOf(pages, 2), 1);
    EXPECT_EQ(pageOf(pages, 3), 1);
}

TEST(PageBreaker, ARowIsNotCutUnlessTallerThanAPage)
{
    const auto pages = breakIntoPages({lines(0, 5), lines(1, 9)}, 100);
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_EQ(pages[1][0].from, 0);
    EXPECT_EQ(pages[1][0].to, 90);
}

TEST(PageBreaker, ATallRowIsCutBetweenLinesAndAllOfItIsShown)
{
    const auto pages = breakIntoPages({lines(0, 5), lines(1, 33)}, 100);
    double shown = 0;
    for (const Page &page : pages) {
        for (const Placed &placed : page) {
            if (idOf(placed) != 1)
                continue;
            EXPECT_EQ(placed.from, shown);
            EXPECT_EQ(std::fmod(placed.to, 10.0), 0);
            EXPECT_LE(placed.y + placed.to - placed.from, 100.01);
            shown = placed.to;
        }
    }
    EXPECT_EQ(shown, 330);
}

TEST(PageBreaker, AParagraphLeavesTwoLinesOnEitherSide)
{
    const auto paragraph = lines(1, 6);
    paragraph->flow.flows = true;
    auto pages = breakIntoPages({lines(0, 9), paragraph}, 100);
    EXPECT_EQ(pageOf(pages, 1), 1) << "one line would have fitted";
    pages = breakIntoPages({lines(0, 5), paragraph}, 100);
    EXPECT_EQ(pages[0][1].to, 40) << "five lines would have fitted";
}

TEST(PageBreaker, HeadersComeAgainOnEveryPageOfATable)
{
    const auto header = lines(100, 1);
    header->flow.keepWithNext = true;
    Pieces pieces{header};
    for (int i = 0; i < 30; ++i) {
        pieces.push_back(lines(i, 1));
        pieces.back()->repeats = {header};
    }
    const auto pages = breakIntoPages(pieces, 100);
    EXPECT_EQ(pages.size(), 4U);
    for (std::size_t page = 1; page < pages.size(); ++page) {
        EXPECT_TRUE(pages[page][0].again);
        EXPECT_EQ(idOf(pages[page][0]), 100);
        EXPECT_EQ(pages[page][1].y, 10);
    }
}

TEST(PageBreaker, HeadersTooTallToRepeatAreNot)
{
    const auto header = lines(100, 6);
    Pieces pieces{header};
    for (int i = 0; i < 12; ++i) {
        pieces.push_back(lines(i, 1));
        pieces.back()->repeats = {header};
    }
    for (const Page &page : breakIntoPages(pieces, 100))
        EXPECT_FALSE(page[0].again);
}

TEST(PageBreaker, APieceMayAskForANewPage)
{
    const auto first = lines(0, 1);
    first->flow.startsPage = true;
    const auto second = lines(1, 1);
    second->flow.startsPage = true;
    const auto pages = breakIntoPages({first, second}, 100);
    ASSERT_EQ(pages.size(), 2U) << "no empty page before the first";
    EXPECT_EQ(pageOf(pages, 1), 1);
}

// Whatever there is, all of it is shown once, in order, within the page.
TEST(PageBreaker, NothingIsLostWhateverThePieces)
{
    for (unsigned seed = 0; seed < 300; ++seed) {
        std::mt19937 random(seed);
        const auto upTo = [&random](int most) {
            return std::uniform_int_distribution<int>(0, most)(random);
        };
        Pieces pieces;
        const auto header = lines(1000, 1 + upTo(4));
        for (int i = 0; i < 40; ++i) {
            pieces.push_back(lines(i, 1 + (upTo(9) == 0 ? upTo(40) : upTo(3))));
            Flow &flow = pieces.back()->flow;
            flow.spaceBefore = upTo(15);
            flow.spaceAfter = upTo(15);
            flow.keepWithNext = upTo(2) == 0;
            flow.flows = upTo(3) == 0;
            flow.startsPage = upTo(19) == 0;
            if (upTo(1) == 0)
                pieces.back()->repeats = {header};
        }
        std::vector<double> shown(pieces.size(), 0.0);
        int last = -1;
        for (const Page &page : breakIntoPages(pieces, 100)) {
            EXPECT_FALSE(page.empty());
            double reached = 0;
            for (const Placed &placed : page) {
                EXPECT_GE(placed.y, reached) << seed;
                reached = placed.y + placed.to - placed.from;
                EXPECT_LE(reached, 100.02) << seed;
                if (placed.again)
                    continue;
                EXPECT_GE(idOf(placed), last) << seed;
                last = idOf(placed);
                EXPECT_EQ(placed.from, shown[static_cast<std::size_t>(last)]) << seed;
                shown[static_cast<std::size_t>(last)] = placed.to;
            }
        }
        for (std::size_t i = 0; i < pieces.size(); ++i)
            EXPECT_EQ(shown[i], pieces[i]->height()) << seed;
    }
}

} // namespace ohmwright::sheet
