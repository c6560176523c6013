// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/piece.h"

#include <QPainter>

#include <algorithm>
#include <utility>

namespace ohmwright::sheet {

void holdTogether(const Pieces &pieces, std::size_t first, double bodyHeight)
{
    constexpr double kShort = 0.12;
    const std::size_t count = pieces.size() - first;
    double height = 0;
    for (std::size_t i = first; i < pieces.size(); ++i)
        height += pieces[i]->flow.spaceBefore + pieces[i]->height();
    for (std::size_t i = 0; i + 1 < count; ++i) {
        if (i == 0 || i + 2 == count || height <= bodyHeight * kShort)
            pieces[first + i]->flow.keepWithNext = true;
    }
}

void TextPiece::add(TextBlock text, QPointF at)
{
    if (text.isEmpty())
        return;
    m_bottom = std::max(m_bottom, at.y() + text.height());
    m_parts.push_back({std::move(text), at});
}

double TextPiece::height() const
{
    return std::max(m_bottom + m_spaceBelow, m_minimumHeight);
}

std::vector<double> TextPiece::cuts() const
{
    std::vector<TextBlock::Line> lines;
    for (const Part &part : m_parts) {
        for (const TextBlock::Line &line : part.text.lines())
            lines.push_back({line.top + part.at.y(), line.height});
    }
    std::ranges::sort(lines, {}, &TextBlock::Line::top);
    constexpr double kTouching = 0.5;
    std::vector<double> result;
    double reached = 0;
    for (const TextBlock::Line &line : lines) {
        if (reached > 0 && line.top >= reached - kTouching)
            result.push_back(line.top);
        reached = std::max(reached, line.top + line.height);
    }
    return result;
}

void TextPiece::paint(PaintContext &context, QPointF origin, double from, double to) const
{
    const double whole = height();
    if (m_backdrop) {
        const QRectF visible(origin, QSizeF(m_width, std::min(to, whole) - from));
        m_backdrop(context.painter, visible, from <= 0, to >= whole);
    }
    for (const Part &part : m_parts) {
        const QPointF at = origin + part.at - QPointF(0, from);
        part.text.paint(context.painter, at, from - part.at.y(), to - part.at.y());
    }
}

} // namespace ohmwright::sheet
