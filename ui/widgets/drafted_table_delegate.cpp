// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/drafted_table_delegate.h"

#include "ui/shell/theme.h"
#include "ui/widgets/figures.h"
#include "ui/widgets/hv_tag.h"

#include <QApplication>
#include <QFontMetricsF>
#include <QHeaderView>
#include <QPainter>
#include <QTableView>

#include <algorithm>
#include <optional>

namespace ohmwright::ui {

namespace {

constexpr int kSide = 10;
constexpr int kShape = 16;
constexpr int kShapeGap = 7;

std::optional<Mark> markOf(const QModelIndex &index)
{
    const QVariant mark = index.data(MarkRole);
    if (!mark.canConvert<Mark>())
        return std::nullopt;
    return mark.value<Mark>();
}

int heightFor(const Theme &theme, bool twoLines)
{
    const int first = QFontMetrics(theme.font(Lettering::Body)).height();
    const int second = QFontMetrics(theme.font(Lettering::Small)).height();
    return twoLines ? first + second + 18 : first + 17;
}

} // namespace

DraftedTableDelegate::DraftedTableDelegate(const Theme &theme, QObject *parent)
    : QStyledItemDelegate(parent), m_theme(theme)
{}

void DraftedTableDelegate::setFigureColumn(int column, int decimals, const QString &widestUnit)
{
    m_figureColumns.insert(column, {decimals, widestUnit});
}

void DraftedTableDelegate::dress(QTableView &view, bool twoLines)
{
    view.setItemDelegate(this);
    view.setShowGrid(false);
    view.setSelectionBehavior(QAbstractItemView::SelectRows);
    view.setWordWrap(false);
    view.setTabKeyNavigation(false);
    view.setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    view.setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    view.verticalHeader()->hide();
    view.verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    view.verticalHeader()->setDefaultSectionSize(heightFor(m_theme, twoLines));
    view.horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    view.horizontalHeader()->setHighlightSections(false);
    view.horizontalHeader()->setStretchLastSection(true);
}

QSize DraftedTableDelegate::sizeHint(const QStyleOptionViewItem &option,
                                     const QModelIndex &index) const
{
    const QFontMetricsF metrics(option.font);
    const QFontMetricsF small(m_theme.font(Lettering::Small));
    const QString second = index.data(SecondLineRole).toString();
    double width = metrics.horizontalAdvance(index.data(Qt::DisplayRole).toString());
    const QString figure = index.data(FigureRole).toString();
    if (!figure.isEmpty()) {
        const FigureColumn column = m_figureColumns.value(index.column());
        const FigureText parts = splitFigure(figure);
        width = tabularWidth(metrics, parts.whole) +
                std::max(fractionWidth(metrics, column.decimals),
                         tabularWidth(metrics, parts.fraction)) +
                std::max(metrics.horizontalAdvance(parts.unit),
                         metrics.horizontalAdvance(column.widestUnit)) +
                metrics.height() * 0.3;
    }
    if (const auto mark = markOf(index)) {
        if (index.data(Qt::DisplayRole).toString().isEmpty())
            width = metrics.horizontalAdvance(markWord(*mark));
        width += kShape + kShapeGap;
    }
    if (index.data(HighVoltageRole).toBool())
        width += 8 + highVoltageTagSize(option.font).width();
    width = std::max(width, small.horizontalAdvance(second));
    return {static_cast<int>(width) + 2 * kSide + 2, heightFor(m_theme, !second.isEmpty())};
}

void DraftedTableDelegate::paint(QPainter *painter, const QStyleOptionViewItem &option,
                                 const QModelIndex &index) const
{
    QStyleOptionViewItem item(option);
    initStyleOption(&item, index);
    const QStyle *style = item.widget ? item.widget->style() : QApplication::style();
    const Tokens &tokens = m_theme.tokens();

    painter->save();
    style->drawPrimitive(QStyle::PE_PanelItemViewItem, &item, painter, item.widget);
    painter->fillRect(QRect(item.rect.left(), item.rect.bottom(), item.rect.width(), 1),
                      tokens.hairline());
    const auto *table = qobject_cast<const QTableView *>(item.widget);
    if ((item.state & QStyle::State_Selected) && table &&
        table->horizontalHeader()->visualIndex(index.column()) == 0)
        painter->fillRect(QRect(item.rect.topLeft(), QSize(3, item.rect.height())), tokens.blue);
    painter->setFont(item.font);
    painter->setPen(item.state & QStyle::State_Enabled ? tokens.ink : tokens.mute);
    const QRect inner = item.rect.adjusted(kSide, 0, -kSide, -1);
    const QString figure = index.data(FigureRole).toString();
    if (figure.isEmpty()) {
        paintWords(*painter, inner, item, index);
    } else {
        const FigureColumn column = m_figureColumns.value(index.column());
        paintFigure(*painter, inner, splitFigure(figure), column.decimals,
                    QFontMetricsF(item.font).horizontalAdvance(column.widestUnit), tokens.mute);
    }
    if (item.state & QStyle::State_HasFocus) {
        QStyleOptionFocusRect ring;
        ring.QStyleOption::operator=(item);
        style->drawPrimitive(QStyle::PE_FrameFocusRect, &ring, painter, item.widget);
    }
    painter->restore();
}

void DraftedTableDelegate::paintWords(QPainter &painter, QRect rect,
                                      const QStyleOptionViewItem &option,
                                      const QModelIndex &index) const
{
    const Tokens &tokens = m_theme.tokens();
    const QString second = index.data(SecondLineRole).toString();
    const QFontMetrics metrics(option.font);
    QRect first = rect;
    if (!second.isEmpty()) {
        const QFont small = m_theme.font(Lettering::Small);
        const QFontMetrics smallMetrics(small);
        const int both = metrics.height() + smallMetrics.height() + 1;
        first =
            QRect(rect.left(), rect.center().y() - both / 2 + 1, rect.width(), metrics.height());
        const QRect below(rect.left(), first.bottom() + 2, rect.width(), smallMetrics.height());
        painter.save();
        painter.setFont(small);
        painter.setPen(tokens.mute);
        painter.drawText(below, Qt::AlignLeft | Qt::AlignVCenter,
                         smallMetrics.elidedText(second, Qt::ElideRight, below.width()));
        painter.restore();
    }
    QString text = option.text;
    if (const auto mark = markOf(index)) {
        const QColor colour = markColour(*mark, tokens);
        paintMark(painter,
                  QRectF(first.left(), first.center().y() - kShape / 2.0 + 0.5, kShape, kShape),
                  *mark, colour);
        first.adjust(kShape + kShapeGap, 0, 0, 0);
        if (text.isEmpty())
            text = markWord(*mark);
        painter.setPen(colour);
    }
    const bool highVoltage = index.data(HighVoltageRole).toBool();
    const QSizeF tag = highVoltage ? highVoltageTagSize(option.font) : QSizeF(0, 0);
    const int room = first.width() - (highVoltage ? static_cast<int>(tag.width()) + 9 : 0);
    const QString shown = metrics.elidedText(text, option.textElideMode, room);
    painter.drawText(first, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, shown);
    if (highVoltage) {
        const double x = first.left() + metrics.horizontalAdvance(shown) + 9;
        paintHighVoltageTag(painter,
                            QRectF(QPointF(x, first.center().y() + 0.5 - tag.height() / 2), tag),
                            option.font, tokens);
    }
}

} // namespace ohmwright::ui
