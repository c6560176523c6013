// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/checks_delegate.h"

#include "ui/checks/check_words.h"
#include "ui/checks/checks_model.h"
#include "ui/shell/theme.h"

#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <array>

namespace ohmwright::ui {

namespace {

constexpr int kSide = 10;
constexpr double kShape = 13;
constexpr double kShapeGap = 5;
constexpr double kApart = 14;

// From the right end leftwards; returns where the words of the heading have to stop.
double paintCounts(QPainter &painter, const QRectF &rect, const QList<int> &counts,
                   const Tokens &tokens, bool withWords)
{
    const QFontMetricsF metrics(painter.font());
    double right = rect.right();
    std::array bestFirst = kWorstFirst;
    std::reverse(bestFirst.begin(), bestFirst.end());
    for (const Verdict verdict : bestFirst) {
        const int count = counts.value(static_cast<int>(verdict));
        if (count == 0)
            continue;
        QString words = QString::number(count);
        if (withWords)
            words += QString(QLatin1Char(' ') + verdictWord(verdict));
        const double width = metrics.horizontalAdvance(words);
        const QColor colour = markColour(markOf(verdict), tokens);
        painter.setPen(colour);
        painter.drawText(QRectF(right - width, rect.top(), width + 1, rect.height()),
                         Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, words);
        right -= width + kShapeGap + kShape;
        paintMark(painter, QRectF(right, rect.center().y() - kShape / 2, kShape, kShape),
                  markOf(verdict), colour);
        right -= kApart;
    }
    return right;
}

double widthOfCounts(const QFont &font, const QList<int> &counts)
{
    const QFontMetricsF metrics(font);
    double width = 0;
    for (const Verdict verdict : kWorstFirst)
        if (const int count = counts.value(static_cast<int>(verdict)); count > 0)
            width += metrics.horizontalAdvance(
                         QString(QString::number(count) + u' ' + verdictWord(verdict))) +
                     kShapeGap + kShape + kApart;
    return width;
}

} // namespace

ChecksDelegate::ChecksDelegate(const Theme &theme, QObject *parent)
    : DraftedTableDelegate(theme, parent), m_theme(theme)
{}

void ChecksDelegate::paint(QPainter *painter, const QStyleOptionViewItem &option,
                           const QModelIndex &index) const
{
    const QVariant counts = index.data(ChecksModel::CountsRole);
    if (!counts.isValid()) {
        DraftedTableDelegate::paint(painter, option, index);
        return;
    }
    const Tokens &tokens = m_theme.tokens();
    const QList<int> numbers = counts.value<QList<int>>();
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    // stands low in its row, so that it belongs to what follows
    const QRectF room = QRectF(option.rect).adjusted(kSide, 12, -kSide, -3);
    const QString name = index.data().toString();
    const QFont strong = m_theme.font(Lettering::Strong);
    const QFont small = m_theme.font(Lettering::Small);
    const double nameWidth = QFontMetricsF(strong).horizontalAdvance(name);
    painter->setFont(small);
    const bool words = nameWidth + widthOfCounts(small, numbers) < room.width();
    paintCounts(*painter, room, numbers, tokens, words);
    painter->setFont(strong);
    painter->setPen(tokens.ink);
    painter->drawText(room, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, name);
    painter->fillRect(QRectF(option.rect.left(), option.rect.bottom(), option.rect.width(), 1),
                      tokens.mute);
    painter->restore();
}

} // namespace ohmwright::ui
