// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/money_bar.h"

#include "ui/shell/theme.h"

#include <QFontMetrics>
#include <QPainter>
#include <QPen>
#include <QtMath>

#include <algorithm>
#include <array>
#include <cmath>

namespace ohmwright::ui {

namespace {

enum class Pattern { Solid, Hatched, Dotted, Crossed, Empty };

constexpr double kSwatch = 26;
constexpr double kSwatchGap = 7;
constexpr double kEntryGap = 18;

void strokes(QPainter &painter, const QRectF &rect, double pitch, bool rising)
{
    const double start = rect.left() - rect.height();
    for (double x = start; x < rect.right(); x += pitch) {
        const QPointF low(x, rect.bottom());
        const QPointF high(x + rect.height(), rect.top());
        painter.drawLine(rising ? low : QPointF(low.x(), rect.top()),
                         rising ? high : QPointF(high.x(), rect.bottom()));
    }
}

void paintPattern(QPainter &painter, const QRectF &rect, Pattern pattern, const Tokens &tokens)
{
    if (rect.width() <= 0)
        return;
    painter.save();
    painter.setClipRect(rect, Qt::IntersectClip);
    painter.setRenderHint(QPainter::Antialiasing);
    switch (pattern) {
    case Pattern::Solid:
        painter.fillRect(rect, tokens.ink);
        break;
    case Pattern::Hatched:
        painter.setPen(QPen(tokens.ink, 1.25));
        strokes(painter, rect, 5, true);
        break;
    case Pattern::Dotted:
        painter.setPen(Qt::NoPen);
        painter.setBrush(tokens.mute);
        for (int row = 0; row * 5 < rect.height(); ++row) {
            const double shift = row % 2 == 0 ? 2.5 : 5;
            for (double x = rect.left() + shift; x < rect.right(); x += 5)
                painter.drawEllipse(QPointF(x, rect.top() + 2.5 + row * 5), 0.9, 0.9);
        }
        break;
    case Pattern::Crossed:
        painter.setPen(QPen(tokens.fails, 1.5));
        strokes(painter, rect, 6, true);
        strokes(painter, rect, 6, false);
        break;
    case Pattern::Empty:
        break;
    }
    painter.restore();
}

void outline(QPainter &painter, const QRectF &rect, const QColor &colour, double width = 1)
{
    painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(rect.adjusted(width / 2, width / 2, -width / 2, -width / 2));
}

} // namespace

std::int64_t MoneyShares::total() const
{
    return std::max<std::int64_t>(spent, 0) + std::max<std::int64_t>(committed, 0) +
           std::max<std::int64_t>(toCome, 0);
}

MoneyBar::MoneyBar(const Theme &theme, QWidget *parent) : QLabel(parent), m_theme(theme)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void MoneyBar::setShares(const MoneyShares &shares, const QString &spoken, std::int64_t fullScale)
{
    m_shares = shares;
    m_fullScale = fullScale;
    setText(spoken);
    setToolTip(spoken);
    update();
}

void MoneyBar::paintEvent(QPaintEvent *)
{
    const Tokens &tokens = m_theme.tokens();
    QPainter painter(this);
    const std::int64_t end =
        std::max({m_fullScale, m_shares.total(), m_shares.allowance, static_cast<std::int64_t>(1)});
    const QRectF bar(0, 4, width(), height() - 8);
    const auto at = [&](std::int64_t amount) {
        // whole pixels keep the divisions sharp
        return std::round(bar.width() * (static_cast<double>(amount) / static_cast<double>(end)));
    };
    const double limit = at(std::max<std::int64_t>(m_shares.allowance, 0));
    painter.fillRect(QRectF(bar.left(), bar.top(), limit, bar.height()), tokens.panel);

    struct Piece
    {
        std::int64_t amount;
        Pattern pattern;
    };
    const std::array pieces{Piece{m_shares.spent, Pattern::Solid},
                            Piece{m_shares.committed, Pattern::Hatched},
                            Piece{m_shares.toCome, Pattern::Dotted}};
    std::int64_t sum = 0;
    for (const Piece &piece : pieces) {
        const double from = at(sum);
        sum += std::max<std::int64_t>(piece.amount, 0);
        const QRectF rect(bar.left() + from, bar.top(), at(sum) - from, bar.height());
        if (rect.width() <= 0)
            continue;
        paintPattern(painter, rect, piece.pattern, tokens);
        outline(painter, rect, tokens.ink);
    }
    outline(painter, QRectF(bar.left(), bar.top(), limit, bar.height()), tokens.mute);
    if (m_shares.overAllowance()) {
        const QRectF over(bar.left() + limit, bar.top(), at(m_shares.total()) - limit,
                          bar.height());
        painter.fillRect(over, tokens.panel);
        paintPattern(painter, over, Pattern::Crossed, tokens);
        outline(painter, over, tokens.fails, 1.5);
    }
    // the limit stands out above and below, as a gauge mark
    const double mark = std::clamp(bar.left() + limit - 1, 0.0, std::max(0.0, width() - 2.0));
    painter.fillRect(QRectF(mark, 0, 2, height()), tokens.ink);
}

namespace {

struct LegendEntry
{
    Pattern pattern;
    QString word;
};

std::array<LegendEntry, 4> legendEntries()
{
    return {LegendEntry{Pattern::Solid, MoneyBarLegend::tr("spent")},
            LegendEntry{Pattern::Hatched, MoneyBarLegend::tr("committed")},
            LegendEntry{Pattern::Dotted, MoneyBarLegend::tr("to come")},
            LegendEntry{Pattern::Crossed, MoneyBarLegend::tr("over the allowance")}};
}

double widthOf(const LegendEntry &entry, const QFontMetricsF &metrics)
{
    return kSwatch + kSwatchGap + metrics.horizontalAdvance(entry.word);
}

} // namespace

MoneyBarLegend::MoneyBarLegend(const Theme &theme, QWidget *parent) : QLabel(parent), m_theme(theme)
{
    setFont(theme.font(Lettering::Small));
    setText(tr("The bars: spent is solid, committed hatched, to come dotted, and what is over the "
               "allowance crossed."));
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

int MoneyBarLegend::rowHeight() const
{
    return fontMetrics().height() + 6;
}

std::array<QPoint, 4> MoneyBarLegend::places(int width) const
{
    std::array<QPoint, 4> places;
    double x = 0;
    int row = 0;
    std::size_t i = 0;
    for (const LegendEntry &entry : legendEntries()) {
        const double taken = widthOf(entry, QFontMetricsF(font()));
        if (x > 0 && x + taken > width) {
            x = 0;
            ++row;
        }
        places.at(i++) = {qCeil(x), row};
        x += taken + kEntryGap;
    }
    return places;
}

QSize MoneyBarLegend::sizeHint() const
{
    double width = 0;
    for (const LegendEntry &entry : legendEntries())
        width += widthOf(entry, QFontMetricsF(font())) + kEntryGap;
    return {qCeil(width - kEntryGap) + 1, rowHeight()};
}

QSize MoneyBarLegend::minimumSizeHint() const
{
    double widest = 0;
    for (const LegendEntry &entry : legendEntries())
        widest = std::max(widest, widthOf(entry, QFontMetricsF(font())));
    return {qCeil(widest) + 1, rowHeight()};
}

int MoneyBarLegend::heightForWidth(int width) const
{
    return (places(width).back().y() + 1) * rowHeight();
}

void MoneyBarLegend::paintEvent(QPaintEvent *)
{
    const Tokens &tokens = m_theme.tokens();
    QPainter painter(this);
    const QFontMetricsF metrics(font());
    const auto at = places(width());
    std::size_t i = 0;
    for (const LegendEntry &entry : legendEntries()) {
        const QPoint place = at.at(i++);
        const double middle = (place.y() + 0.5) * rowHeight();
        const QRectF swatch(place.x(), std::floor(middle - 6), kSwatch, 12);
        paintPattern(painter, swatch, entry.pattern, tokens);
        outline(painter, swatch, entry.pattern == Pattern::Crossed ? tokens.fails : tokens.ink);
        painter.setPen(tokens.mute);
        painter.drawText(QPointF(place.x() + kSwatch + kSwatchGap,
                                 middle + (metrics.ascent() - metrics.descent()) / 2),
                         entry.word);
    }
}

} // namespace ohmwright::ui
