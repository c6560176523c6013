// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/page_breaker.h"

#include <algorithm>

namespace ohmwright::sheet {

namespace {

constexpr double kRounding = 0.01;
// Air above what goes on inside a box or between rules.
constexpr double kContinuedInset = pt(4);

// Where a flowing piece may be cut: not after its first line, nor before its last.
std::vector<double> cutsOf(const Piece &piece)
{
    std::vector<double> cuts = piece.cuts();
    constexpr std::size_t kWorthIt = 3;
    if (piece.flow.flows) {
        if (cuts.size() < kWorthIt)
            return {};
        cuts.erase(cuts.begin());
        cuts.pop_back();
    }
    return cuts;
}

class PageBreaker
{
public:
    PageBreaker(const Pieces &pieces, double bodyHeight)
        : m_pieces(pieces), m_bodyHeight(bodyHeight), m_pages(1)
    {}

    std::vector<Page> run()
    {
        for (std::size_t i = 0; i < m_pieces.size(); ++i) {
            const Piece &piece = *m_pieces[i];
            if (piece.flow.startsPage && !m_pages.back().empty())
                turn(nullptr);
            const bool startsChain = i == 0 || !m_pieces[i - 1]->flow.keepWithNext;
            if (startsChain && !pageIsFresh()) {
                const double needed = chainHeight(i);
                if (m_y + gapBefore(piece) + needed > m_bodyHeight + kRounding &&
                    needed <= m_bodyHeight)
                    turn(&piece);
            }
            place(m_pieces[i]);
        }
        return std::move(m_pages);
    }

private:
    // Nothing but repeated headers yet.
    [[nodiscard]] bool pageIsFresh() const
    {
        return std::ranges::all_of(m_pages.back(), &Placed::again);
    }

    [[nodiscard]] double gapBefore(const Piece &piece) const
    {
        return pageIsFresh() ? 0.0 : std::max(m_spaceAfter, piece.flow.spaceBefore);
    }

    // Cut only where it must: it fits no page, not even an empty one.
    [[nodiscard]] bool isCutAnyway(const Piece &piece) const
    {
        double repeated = 0;
        for (const auto &header : piece.repeats)
            repeated += header->height();
        return piece.flow.flows || piece.height() > m_bodyHeight - repeated;
    }

    // What must fit for the piece to begin here: it, all it is kept with, and of the last, if that
    // is cut anyway, the least part.
    [[nodiscard]] double chainHeight(std::size_t first) const
    {
        double height = 0;
        for (std::size_t i = first; i < m_pieces.size(); ++i) {
            const Piece &piece = *m_pieces[i];
            if (i > first)
                height += std::max(m_pieces[i - 1]->flow.spaceAfter, piece.flow.spaceBefore);
            if (!piece.flow.keepWithNext) {
                const std::vector<double> cuts =
                    isCutAnyway(piece) ? cutsOf(piece) : std::vector<double>();
                return height + (cuts.empty() ? piece.height() : cuts.front());
            }
            height += piece.height();
        }
        return height;
    }

    void turn(const Piece *next)
    {
        if (!m_pages.back().empty())
            m_pages.emplace_back();
        m_y = 0;
        m_spaceAfter = 0;
        if (!next)
            return;
        constexpr double kMost = 0.33; // headers taller than that would leave no room for rows
        double height = 0;
        for (const auto &repeated : next->repeats)
            height += repeated->height();
        if (height > m_bodyHeight * kMost)
            return;
        for (const auto &repeated : next->repeats) {
            m_pages.back().push_back({repeated, m_y, 0, repeated->height(), true});
            m_y += repeated->height();
        }
    }

    void put(const std::shared_ptr<Piece> &piece, double from, double to)
    {
        m_y += gapBefore(*piece);
        m_pages.back().push_back({piece, m_y, from, to, false});
        m_y += to - from;
        m_spaceAfter = piece->flow.spaceAfter;
    }

    void place(const std::shared_ptr<Piece> &piece)
    {
        const double height = piece->height();
        const auto room = [&] {
            return m_bodyHeight - m_y - gapBefore(*piece) + kRounding;
        };
        if (height <= room()) {
            put(piece, 0, height);
            return;
        }
        const std::vector<double> cuts = cutsOf(*piece);
        if (!isCutAnyway(*piece) && !pageIsFresh()) {
            turn(piece.get());
            if (height <= room()) {
                put(piece, 0, height);
                return;
            }
        }
        double from = 0;
        while (height - from > room()) {
            const double limit = from + room();
            double cut = from;
            for (const double candidate : cuts) {
                if (candidate <= limit)
                    cut = std::max(cut, candidate);
            }
            if (cut <= from) {
                if (!pageIsFresh()) {
                    turn(piece.get());
                    continue;
                }
                // not even one line fits an empty page, or nothing says where to cut
                cut = std::min(limit, height);
            }
            put(piece, from, cut);
            from = cut;
            turn(piece.get());
            if (!piece->flow.flows)
                m_y += std::min(kContinuedInset, m_bodyHeight / 100);
        }
        put(piece, from, height);
    }

    const Pieces &m_pieces;
    double m_bodyHeight;
    std::vector<Page> m_pages;
    double m_y = 0;
    double m_spaceAfter = 0;
};

} // namespace

std::vector<Page> breakIntoPages(const Pieces &pieces, double bodyHeight)
{
    return PageBreaker(pieces, bodyHeight).run();
}

} // namespace ohmwright::sheet
