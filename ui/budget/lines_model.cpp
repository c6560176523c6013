// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/budget/lines_model.h"

#include "ui/widgets/drafted_table_delegate.h"

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

const NumberStyle kStyle = NumberStyle::pointDecimal();

} // namespace

QString bareFigure(Money money)
{
    const QString text = showMoney(money, kStyle);
    const QString code = money.currency().code();
    return text.endsWith(code) ? text.left(text.size() - code.size()).trimmed() : text;
}

QString spokenLine(const LineSums &line)
{
    return LinesModel::tr("%1: %2 spent, %3 committed, %4 to come, %5 got back, of %6; %7 left")
        .arg(line.name, showMoney(line.spent, kStyle), showMoney(line.committed, kStyle),
             showMoney(line.toCome, kStyle), showMoney(line.gotBack, kStyle),
             showMoney(line.allowance, kStyle), showMoney(line.left(), kStyle));
}

LinesModel::LinesModel(QObject *parent) : QAbstractTableModel(parent) {}

void LinesModel::setLines(std::vector<LineSums> lines)
{
    const bool same =
        std::equal(lines.begin(), lines.end(), m_lines.begin(), m_lines.end(),
                   [](const LineSums &a, const LineSums &b) { return a.line == b.line; });
    if (same && !lines.empty()) {
        m_lines = std::move(lines);
        emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
        return;
    }
    beginResetModel();
    m_lines = std::move(lines);
    endResetModel();
}

const LineSums *LinesModel::line(int row) const
{
    return row >= 0 && row < rowCount() ? &m_lines[static_cast<std::size_t>(row)] : nullptr;
}

int LinesModel::rowOf(Id<BudgetLine> wanted) const
{
    for (int row = 0; row < rowCount(); ++row)
        if (line(row)->line == wanted)
            return row;
    return -1;
}

int LinesModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

int LinesModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(ColumnCount);
}

QVariant LinesModel::data(const QModelIndex &index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const LineSums &line = m_lines[static_cast<std::size_t>(index.row())];
    if (role == Qt::AccessibleTextRole)
        return spokenLine(line);
    if (index.column() == Name) {
        if (role == Qt::DisplayRole || role == Qt::ToolTipRole)
            return line.name;
        if (role == SecondLineRole && line.left().minor() < 0)
            return tr("over its allowance");
        if (role == SecondLineRole && line.expectedBack.minor() > 0)
            return tr("%1 expected back").arg(showMoney(line.expectedBack, kStyle));
        return {};
    }
    if (role != FigureRole && role != Qt::DisplayRole)
        return {};
    switch (index.column()) {
    case Allowance:
        return bareFigure(line.allowance);
    case Spent:
        return bareFigure(line.spent);
    case Committed:
        return bareFigure(line.committed);
    case ToCome:
        return bareFigure(line.toCome);
    case GotBack:
        return bareFigure(line.gotBack);
    case Left:
        return bareFigure(line.left());
    default:
        return {};
    }
}

QVariant LinesModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal)
        return {};
    if (role == Qt::TextAlignmentRole && section >= Allowance)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter));
    if (role != Qt::DisplayRole)
        return {};
    switch (section) {
    case Name:
        return tr("Line");
    case Bar:
        return tr("Against its allowance");
    case Allowance:
        return tr("Allowance");
    case Spent:
        return tr("Spent");
    case Committed:
        return tr("Committed");
    case ToCome:
        return tr("To come");
    case GotBack:
        return tr("Got back");
    case Left:
        return tr("Left");
    default:
        return {};
    }
}

} // namespace ohmwright::ui
