// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/parts_model.h"

#include "core/quantity/dates.h"
#include "ui/parts/part_words.h"
#include "ui/shell/theme.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <array>

namespace ohmwright::ui {

namespace {

// Above this many rows of change a view is quicker reading all anew.
constexpr std::ptrdiff_t kManyRows = 300;

QString daysWords(int days)
{
    return days == 0   ? PartsModel::tr("today")
           : days == 1 ? PartsModel::tr("1 day")
                       : PartsModel::tr("%1 days").arg(days);
}

using Getter = QVariant (*)(const Part &, const PartFacts &, int role);

QVariant name(const Part &part, const PartFacts &facts, int role)
{
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
        return part.name;
    case SecondLineRole:
        return facts.secondLine;
    case Qt::AccessibleTextRole:
        return QString(part.name + QStringLiteral(", ") + facts.secondLine);
    default:
        return {};
    }
}

QVariant state(const Part &part, const PartFacts &, int role)
{
    if (role == MarkRole)
        return QVariant::fromValue(markOf(part.state));
    if (role == Qt::DisplayRole)
        return markWord(markOf(part.state));
    return {};
}

QVariant assembly(const Part &, const PartFacts &facts, int role)
{
    return role == Qt::DisplayRole || role == Qt::ToolTipRole ? facts.assembly : QVariant();
}

QVariant highVoltage(const Part &, const PartFacts &facts, int role)
{
    if (role == HighVoltageRole)
        return facts.highVoltage;
    if (role == Qt::AccessibleTextRole)
        return facts.highVoltage ? PartsModel::tr("high voltage") : QString();
    return {};
}

QVariant cost(const Part &, const PartFacts &facts, int role)
{
    if (role == Qt::AccessibleTextRole && facts.cost)
        return showMoney(*facts.cost, pageStyle());
    // the currency is the book's for every row and stands in the header
    if (role == FigureRole && facts.cost) {
        QString text = showMoney(*facts.cost, pageStyle());
        text.chop(facts.cost->currency().code().size());
        return text.trimmed();
    }
    if (role == Qt::TextAlignmentRole)
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    return {};
}

QVariant questions(const Part &, const PartFacts &facts, int role)
{
    if (role == FigureRole && facts.questions > 0)
        return QString::number(facts.questions);
    if (role == Qt::AccessibleTextRole && facts.questions > 0)
        return facts.questions == 1 ? PartsModel::tr("1 open question")
                                    : PartsModel::tr("%1 open questions").arg(facts.questions);
    return {};
}

QVariant deadline(const Part &, const PartFacts &facts, int role)
{
    if (!facts.deadline)
        return {};
    switch (role) {
    case Qt::DisplayRole:
        return showDate(facts.deadline->lastDay);
    case SecondLineRole:
        return facts.deadline->state == DeadlineState::EndingSoon
                   ? PartsModel::tr("%1, %2").arg(daysWords(facts.deadline->daysLeft),
                                                  deadlineName(facts.deadline->kind))
                   : deadlineName(facts.deadline->kind);
    case Qt::AccessibleTextRole:
    case Qt::ToolTipRole:
        return describe(*facts.deadline);
    default:
        return {};
    }
}

QVariant place(const Part &part, const PartFacts &, int role)
{
    return role == Qt::DisplayRole || role == Qt::ToolTipRole ? part.place : QVariant();
}

struct Column
{
    const char *header = "";
    const char *spoken = "";
    const char *none = ""; // what a screen reader says of a cell with nothing in it
    Getter get = nullptr;
    bool figure = false;
};

// In the order of PartColumn.
constexpr std::array<Column, kPartColumns> kColumns{{
    {QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "Part"), "", "", name},
    {QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "State"), "", "", state},
    {QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "Assembly"), "",
     QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "in no assembly"), assembly},
    {QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "HV"),
     QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "High voltage"),
     QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "on no high voltage circuit"), highVoltage},
    {QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "Cost, %1"),
     QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "Landed cost"),
     QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "no cost recorded"), cost, true},
    {QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "Open"),
     QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "Open questions"),
     QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "no open question"), questions, true},
    {QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "Ends"),
     QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "Warranty, return or claim ends"),
     QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "no window runs"), deadline},
    {QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "Place"), "",
     QT_TRANSLATE_NOOP("ohmwright::ui::PartsModel", "no place recorded"), place},
}};

} // namespace

PartsModel::PartsModel(const Records &records, const PartsIndex &index, const Theme &theme,
                       QObject *parent)
    : QAbstractTableModel(parent), m_records(records), m_index(index), m_theme(theme)
{}

void PartsModel::show(std::vector<PartRow> rows)
{
    const auto [oldAt, newAt] =
        std::mismatch(m_rows.begin(), m_rows.end(), rows.begin(), rows.end());
    const std::ptrdiff_t first = oldAt - m_rows.begin();
    const std::ptrdiff_t most = std::min<std::ptrdiff_t>(std::ssize(m_rows), std::ssize(rows));
    std::ptrdiff_t same = 0; // at the end
    while (same < most - first && m_rows[m_rows.size() - 1 - static_cast<std::size_t>(same)] ==
                                      rows[rows.size() - 1 - static_cast<std::size_t>(same)])
        ++same;
    const std::ptrdiff_t gone = std::ssize(m_rows) - same - first;
    const std::ptrdiff_t come = std::ssize(rows) - same - first;
    if (gone + come > kManyRows) {
        beginResetModel();
        m_rows = std::move(rows);
        endResetModel();
        return;
    }
    if (gone > 0) {
        beginRemoveRows({}, static_cast<int>(first), static_cast<int>(first + gone - 1));
        m_rows.erase(m_rows.begin() + first, m_rows.begin() + first + gone);
        endRemoveRows();
    }
    if (come > 0) {
        beginInsertRows({}, static_cast<int>(first), static_cast<int>(first + come - 1));
        m_rows.insert(m_rows.begin() + first, rows.begin() + first, rows.begin() + first + come);
        endInsertRows();
    }
}

void PartsModel::contentChanged()
{
    if (!m_rows.empty())
        emit dataChanged(index(0, 0), index(rowCount() - 1, kPartColumns - 1));
}

void PartsModel::setRoom(PartsRoom room)
{
    if (m_room == room)
        return;
    m_room = room;
    contentChanged();
}

QString PartsModel::belowName(const Part &part) const
{
    const PartFacts &facts = m_index.of(part.id);
    QStringList told;
    if (m_room >= PartsRoom::Less) {
        if (facts.deadline && facts.deadline->state == DeadlineState::EndingSoon)
            told << deadline(part, facts, SecondLineRole).toString();
        if (facts.questions > 0)
            told << questions(part, facts, Qt::AccessibleTextRole).toString();
    }
    if (part.partOf)
        told << tr("in %1").arg(facts.assembly);
    if (!facts.secondLine.isEmpty())
        told << facts.secondLine;
    return told.join(QStringLiteral(", "));
}

QVariant PartsModel::narrowData(const Part &part, PartColumn column, int role) const
{
    const PartFacts &facts = m_index.of(part.id);
    if (column == PartColumn::State && role == SecondLineRole)
        return part.place;
    if (column == PartColumn::State && role == Qt::ToolTipRole && !part.place.isEmpty())
        return part.place;
    if (column != PartColumn::Name)
        return {};
    if (role == HighVoltageRole)
        return facts.highVoltage;
    if (role == SecondLineRole)
        return belowName(part);
    if (role == Qt::ToolTipRole)
        return QString(part.name + u'\n' + belowName(part)).trimmed();
    if (role == Qt::AccessibleTextRole && m_room >= PartsRoom::Less) {
        const QString more = belowName(part);
        return more.isEmpty() ? part.name : QString(part.name + QStringLiteral(", ") + more);
    }
    return {};
}

Id<Part> PartsModel::partAt(int row) const
{
    return row >= 0 && row < rowCount() ? m_rows[static_cast<std::size_t>(row)].part : Id<Part>();
}

int PartsModel::rowOf(Id<Part> part) const
{
    const auto found = std::find_if(m_rows.begin(), m_rows.end(), [&](const PartRow &row) {
        return part.isSet() && row.part == part;
    });
    return found == m_rows.end() ? -1 : static_cast<int>(found - m_rows.begin());
}

bool PartsModel::isHeading(int row) const
{
    return row >= 0 && row < rowCount() && !m_rows[static_cast<std::size_t>(row)].part.isSet();
}

int PartsModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int PartsModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : kPartColumns;
}

QVariant PartsModel::data(const QModelIndex &index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const PartRow &row = m_rows[static_cast<std::size_t>(index.row())];
    if (!row.part.isSet()) {
        if (index.column() != 0)
            return {};
        if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole)
            return tr("%1 (%2)").arg(row.heading).arg(row.count);
        if (role == Qt::FontRole)
            return m_theme.font(Lettering::Strong);
        return {};
    }
    const Part *part = m_records.find(row.part);
    if (!part)
        return {};
    if (m_room != PartsRoom::Wide) {
        QVariant told = narrowData(*part, static_cast<PartColumn>(index.column()), role);
        if (told.isValid())
            return told;
    }
    const Column &column = kColumns[static_cast<std::size_t>(index.column())];
    const PartFacts &facts = m_index.of(row.part);
    QVariant told = column.get(*part, facts, role);
    if (role == Qt::AccessibleTextRole && told.toString().isEmpty() && *column.none &&
        column.get(*part, facts, Qt::DisplayRole).toString().isEmpty())
        return tr(column.none);
    return told;
}

QVariant PartsModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || section < 0 || section >= kPartColumns)
        return {};
    const Column &column = kColumns[static_cast<std::size_t>(section)];
    if (role == Qt::DisplayRole) {
        const QString header = tr(column.header);
        return section == static_cast<int>(PartColumn::Cost)
                   ? header.arg(m_records.build().currency.code())
                   : header;
    }
    if (role == Qt::AccessibleTextRole || role == Qt::ToolTipRole)
        return tr(*column.spoken ? column.spoken : column.header);
    if (role == Qt::TextAlignmentRole && column.figure)
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    return {};
}

Qt::ItemFlags PartsModel::flags(const QModelIndex &index) const
{
    if (!index.isValid())
        return Qt::NoItemFlags;
    // arrow keys pass over headings, as they pass over whatever is not enabled
    if (isHeading(index.row()))
        return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
}

} // namespace ohmwright::ui
