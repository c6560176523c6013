// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/forecast/forecast_table.h"

#include "ui/shell/theme.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/section_title.h"

#include <QHeaderView>
#include <QLabel>
#include <QStandardItemModel>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kKeyRole = Qt::UserRole + 1;

} // namespace

ForecastTable::ForecastTable(const Theme &theme, const QString &name,
                             const std::vector<Column> &columns, const QString &none,
                             QWidget *parent)
    : QWidget(parent), m_theme(theme), m_columns(columns), m_heading(new SectionTitle(theme, name)),
      m_view(new QTableView),
      m_model(new QStandardItemModel(0, static_cast<int>(columns.size()), this)),
      m_none(new QLabel(none))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(m_heading);
    column->addWidget(m_view);
    column->addWidget(m_none);
    m_none->setTextFormat(Qt::PlainText);
    m_none->setWordWrap(true);
    m_none->setForegroundRole(QPalette::PlaceholderText);
    m_view->setModel(m_model);
    m_view->setAccessibleName(name);
    auto *delegate = new DraftedTableDelegate(theme, this);
    for (std::size_t c = 0; c < columns.size(); ++c) {
        const int at = static_cast<int>(c);
        m_model->setHeaderData(at, Qt::Horizontal, columns[c].header);
        if (!columns[c].tip.isEmpty())
            m_model->setHeaderData(at, Qt::Horizontal, columns[c].tip, Qt::ToolTipRole);
        if (!columns[c].figure)
            continue;
        delegate->setFigureColumn(at, columns[c].decimals, columns[c].unit);
        m_model->setHeaderData(at, Qt::Horizontal, int(Qt::AlignRight | Qt::AlignVCenter),
                               Qt::TextAlignmentRole);
    }
    delegate->dress(*m_view, false);
    m_view->setSelectionMode(QAbstractItemView::SingleSelection);
    m_view->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_view->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    QHeaderView *header = m_view->horizontalHeader();
    header->setStretchLastSection(false);
    header->setSectionResizeMode(QHeaderView::ResizeToContents);
    header->setSectionResizeMode(0, QHeaderView::Stretch);
    connect(m_view, &QTableView::activated, this, [this](const QModelIndex &index) {
        if (const QString key = index.siblingAtColumn(0).data(kKeyRole).toString(); !key.isEmpty())
            emit activated(key);
    });
    fill({});
}

void ForecastTable::setName(const QString &name)
{
    m_heading->setText(name);
    m_view->setAccessibleName(name);
}

void ForecastTable::setRemark(const QString &remark)
{
    m_heading->setRemark(remark);
}

void ForecastTable::fill(const std::vector<Row> &rows)
{
    const QModelIndex was = m_view->currentIndex();
    const QString wasKey = was.siblingAtColumn(0).data(kKeyRole).toString();
    int current = was.isValid() ? was.row() : -1;
    m_view->clearSpans();
    m_model->setRowCount(0);
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const int at = static_cast<int>(r);
        QList<QStandardItem *> items;
        for (int c = 0; c < m_model->columnCount(); ++c) {
            const QString text = c < rows[r].cells.size() ? rows[r].cells.at(c) : QString();
            auto *item = new QStandardItem(text);
            item->setEditable(false);
            if (m_columns[static_cast<std::size_t>(c)].figure && !rows[r].heading)
                item->setData(text, FigureRole);
            const QString tip = rows[r].tips.value(c, c == 0 ? text : QString());
            if (!tip.isEmpty())
                item->setToolTip(tip);
            if (text.isEmpty())
                item->setData(rows[r].heading ? rows[r].cells.value(0) : tr("nothing"),
                              Qt::AccessibleTextRole);
            items << item;
        }
        items.front()->setData(rows[r].key, kKeyRole);
        if (rows[r].heading)
            items.front()->setFont(m_theme.font(Lettering::Strong));
        m_model->appendRow(items);
        if (rows[r].heading && m_model->columnCount() > 1)
            m_view->setSpan(at, 0, 1, m_model->columnCount());
        // the row one was on, wherever it stands now
        if (!wasKey.isEmpty() && rows[r].key == wasKey && (current < 0 || current == was.row()))
            current = at;
    }
    if (current >= 0 && current < m_model->rowCount())
        m_view->setCurrentIndex(m_model->index(current, std::max(0, was.column())));
    for (std::size_t c = 0; c < m_columns.size(); ++c)
        if (m_columns[c].optional)
            m_view->setColumnHidden(
                static_cast<int>(c), std::all_of(rows.begin(), rows.end(), [&](const Row &row) {
                    return row.heading || row.cells.value(static_cast<qsizetype>(c)).isEmpty();
                }));
    m_view->setVisible(!rows.empty());
    m_none->setVisible(rows.empty());
    m_view->setFixedHeight(m_view->horizontalHeader()->sizeHint().height() +
                           m_model->rowCount() * m_view->verticalHeader()->defaultSectionSize() +
                           2 * m_view->frameWidth() + 2);
}

} // namespace ohmwright::ui
