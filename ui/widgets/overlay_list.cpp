// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/overlay_list.h"

#include "ui/shell/theme.h"
#include "ui/widgets/icons.h"

#include <QAbstractListModel>
#include <QEvent>
#include <QLineEdit>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>

#include <algorithm>

namespace ohmwright::ui {

class OverlayModel : public QAbstractListModel
{
public:
    void setRows(std::vector<OverlayRow> rows)
    {
        beginResetModel();
        m_rows = std::move(rows);
        endResetModel();
    }

    [[nodiscard]] const std::vector<OverlayRow> &rows() const { return m_rows; }

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override
    {
        return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
    }

    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override
    {
        if (!index.isValid())
            return {};
        const OverlayRow &row = at(index);
        if (role == Qt::DisplayRole)
            return row.text;
        if (role == Qt::AccessibleTextRole)
            return row.detail.isEmpty() ? row.text
                                        : QString(row.text + QLatin1String(", ") + row.detail);
        return {};
    }

    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex &index) const override
    {
        // the view asks once more about a row that a click has just closed the list on
        return index.isValid() && at(index).pickable() ? Qt::ItemIsEnabled | Qt::ItemIsSelectable
                                                       : Qt::NoItemFlags;
    }

    [[nodiscard]] const OverlayRow &at(const QModelIndex &index) const
    {
        return m_rows.at(static_cast<std::size_t>(index.row()));
    }

private:
    std::vector<OverlayRow> m_rows;
};

namespace {

constexpr int kMaxRows = 11;
constexpr int kSide = 14;
constexpr int kIcon = 18;

class OverlayDelegate : public QStyledItemDelegate
{
public:
    OverlayDelegate(const Theme &theme, const OverlayModel &model) : m_theme(theme), m_model(model)
    {}

    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem &option,
                                 const QModelIndex &) const override
    {
        return {200, option.fontMetrics.height() + 15};
    }

    void paint(QPainter *painter, const QStyleOptionViewItem &option,
               const QModelIndex &index) const override
    {
        const OverlayRow &row = m_model.at(index);
        const Tokens &tokens = m_theme.tokens();
        painter->save();
        if (row.heading)
            paintHeading(*painter, option.rect, row);
        else
            paintRow(*painter, option, row, tokens);
        painter->restore();
    }

private:
    void paintHeading(QPainter &painter, const QRect &rect, const OverlayRow &row) const
    {
        const Tokens &tokens = m_theme.tokens();
        QFont font = m_theme.font(Lettering::Small);
        font.setWeight(QFont::DemiBold);
        painter.setFont(font);
        painter.setPen(tokens.mute);
        const QRect words = rect.adjusted(kSide, 4, -kSide, 0);
        painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter, row.text);
        const int from = kSide + QFontMetrics(font).horizontalAdvance(row.text) + 10;
        painter.fillRect(QRect(rect.left() + from, words.center().y() + 1,
                               std::max(0, rect.width() - from - kSide), 1),
                         tokens.hairline());
    }

    void paintRow(QPainter &painter, const QStyleOptionViewItem &option, const OverlayRow &row,
                  const Tokens &tokens) const
    {
        const bool selected = option.state & QStyle::State_Selected;
        if (selected) {
            painter.fillRect(option.rect, tokens.tint());
            painter.fillRect(QRect(option.rect.topLeft(), QSize(3, option.rect.height())),
                             tokens.blue);
        } else if ((option.state & QStyle::State_MouseOver) && row.pickable()) {
            painter.fillRect(option.rect, tokens.hover());
        }
        QRect words = option.rect.adjusted(kSide, 0, -kSide, 0);
        if (!row.icon.isEmpty()) {
            paintIcon(painter,
                      QRectF(words.left(), words.center().y() - kIcon / 2.0 + 0.5, kIcon, kIcon),
                      row.icon, tokens.ink);
            words.adjust(kIcon + 9, 0, 0, 0);
        }
        painter.setFont(option.font);
        painter.setPen(row.quiet ? tokens.mute : tokens.ink);
        const QFontMetrics metrics(option.font);
        const QString text = metrics.elidedText(row.text, Qt::ElideRight, words.width());
        painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter, text);
        words.adjust(metrics.horizontalAdvance(text) + 16, 0, 0, 0);
        if (row.detail.isEmpty() || words.width() < 24)
            return;
        painter.setFont(m_theme.font(Lettering::Small));
        painter.setPen(tokens.mute);
        painter.drawText(
            words, Qt::AlignRight | Qt::AlignVCenter,
            QFontMetrics(painter.font()).elidedText(row.detail, Qt::ElideRight, words.width()));
    }

    const Theme &m_theme;
    const OverlayModel &m_model;
};

} // namespace

OverlayList::OverlayList(const Theme &theme, QLineEdit &line, const QString &name)
    : QListView(&line), m_line(line), m_model(std::make_unique<OverlayModel>())
{
    hide();
    setAccessibleName(name);
    setModel(m_model.get());
    auto *delegate = new OverlayDelegate(theme, *m_model);
    delegate->setParent(this);
    setItemDelegate(delegate);
    setFocusPolicy(Qt::NoFocus);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setUniformItemSizes(true);
    setMouseTracking(true);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setFont(theme.font(Lettering::Body));
    line.installEventFilter(this);
    connect(this, &QListView::clicked, this, [this](const QModelIndex &index) {
        if (m_model->at(index).pickable())
            emit picked(index.row());
    });
}

OverlayList::~OverlayList()
{
    setModel(nullptr);
}

void OverlayList::showRows(std::vector<OverlayRow> rows, int current)
{
    if (rows.empty() || !m_line.isVisible()) {
        close();
        return;
    }
    m_model->setRows(std::move(rows));
    follow(m_line.window());
    place();
    show();
    raise();
    setCurrentIndex(current >= 0 ? m_model->index(current) : QModelIndex());
    if (current >= 0 && current <= 1)
        scrollToTop(); // so that a heading above the first row is seen
}

void OverlayList::close()
{
    hide();
    m_model->setRows({});
    follow(nullptr);
}

int OverlayList::currentRow() const
{
    return isVisible() && currentIndex().isValid() ? currentIndex().row() : -1;
}

const std::vector<OverlayRow> &OverlayList::rows() const
{
    return m_model->rows();
}

bool OverlayList::step(int key)
{
    const bool page = key == Qt::Key_PageDown || key == Qt::Key_PageUp;
    const bool down = key == Qt::Key_Down || key == Qt::Key_PageDown;
    if (!page && key != Qt::Key_Down && key != Qt::Key_Up)
        return false;
    const auto &all = m_model->rows();
    const int count = static_cast<int>(all.size());
    const auto pickable = [&](int row) {
        return all[static_cast<std::size_t>(row)].pickable();
    };
    if (std::none_of(all.begin(), all.end(), [](const OverlayRow &row) { return row.pickable(); }))
        return true;
    int row = currentRow();
    for (int steps = page ? kMaxRows - 2 : 1; steps > 0; --steps) {
        int next = row;
        do {
            next = down ? next + 1 : next - 1;
            if (next >= count || next < 0) {
                if (page)
                    break;
                next = down ? 0 : count - 1;
            }
        } while (!pickable(next));
        if (next < 0 || next >= count)
            break;
        row = next;
    }
    setCurrentIndex(m_model->index(row));
    if (row == 1 && all.front().heading)
        scrollToTop();
    emit highlighted(row);
    return true;
}

void OverlayList::follow(QWidget *window)
{
    if (window == m_window)
        return;
    if (m_window)
        m_window->removeEventFilter(this);
    m_window = window;
    // back under the line while closed, so that it goes wherever the line goes
    setParent(window ? window : static_cast<QWidget *>(&m_line));
    if (window)
        window->installEventFilter(this);
}

void OverlayList::place()
{
    const int rowHeight = sizeHintForRow(0);
    const int count = std::min(static_cast<int>(m_model->rows().size()), kMaxRows);
    const int wanted = count * rowHeight + 2 * frameWidth();
    const QPoint below = m_line.mapTo(m_window, QPoint(0, m_line.height() + 2));
    const int above = below.y() - m_line.height() - 4;
    const int roomBelow = m_window->height() - below.y() - 4;
    const bool upward = roomBelow < wanted && above > roomBelow;
    const int height = std::min(wanted, std::max(rowHeight, upward ? above : roomBelow));
    const int width = std::min(std::max(m_line.width(), 280), m_window->width() - 8);
    const int x = std::clamp(below.x(), 4, std::max(4, m_window->width() - width - 4));
    setGeometry(x, upward ? above - height : below.y(), width, height);
}

bool OverlayList::eventFilter(QObject *watched, QEvent *event)
{
    if (watched == &m_line) {
        if (event->type() == QEvent::FocusOut || event->type() == QEvent::Hide)
            close();
        else if (isVisible() && (event->type() == QEvent::Move || event->type() == QEvent::Resize))
            place();
    } else if (watched == m_window && event->type() == QEvent::Resize && isVisible()) {
        place();
    }
    return QListView::eventFilter(watched, event);
}

} // namespace ohmwright::ui
