// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/checks_model.h"

#include "ui/widgets/drafted_table_delegate.h"

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

// What could be computed of an unknown one may have plenty to spare; told in a list that would
// sound like a promise.
std::optional<double> marginOf(const Check &check)
{
    return check.verdict == Verdict::Unknown ? std::nullopt : check.margin;
}

// Under the verdict: by how much; a loosened one never without the published one.
QString underVerdict(const Check &check)
{
    if (check.publishedVerdict)
        return ChecksModel::tr("published: %1").arg(verdictWord(*check.publishedVerdict));
    const auto margin = marginOf(check);
    return margin ? marginFigure(*margin).replace(u'-', QChar(0x2212)) : QString();
}

// Under the title: what came out, with whatever has no place elsewhere in the row.
QString underTitle(const CheckEntry &entry)
{
    QString told = entry.check.result.isEmpty() ? entry.check.sentence : entry.check.result;
    if (!entry.subject.isEmpty() && !entry.check.title.contains(entry.subject))
        told = ChecksModel::tr("%1: %2").arg(entry.subject, told);
    if (const auto margin = marginOf(entry.check); margin && entry.check.publishedVerdict)
        told = ChecksModel::tr("%1; %2").arg(marginWords(*margin), told);
    return told;
}

} // namespace

QString turnedWords(const CheckEntry &entry)
{
    const QString now = verdictWord(entry.check.verdict);
    if (entry.isNew)
        return ChecksModel::tr("new: %1").arg(now);
    return entry.before ? QString(verdictWord(*entry.before) + QStringLiteral(" → ") + now) : now;
}

QString spokenCheck(const CheckEntry &entry)
{
    QString words = turnedWords(entry);
    if (entry.before)
        words = ChecksModel::tr("turned from %1 to %2")
                    .arg(verdictWord(*entry.before), verdictWord(entry.check.verdict));
    if (entry.check.publishedVerdict)
        words = ChecksModel::tr("%1, as published %2")
                    .arg(words, verdictWord(*entry.check.publishedVerdict));
    words = ChecksModel::tr("%1: %2").arg(words, entry.check.title);
    if (!entry.subject.isEmpty())
        words = ChecksModel::tr("%1, %2").arg(words, entry.subject);
    return ChecksModel::tr("%1. %2").arg(words, entry.check.sentence);
}

ChecksModel::ChecksModel(QObject *parent) : QAbstractTableModel(parent) {}

void ChecksModel::show(std::vector<CheckEntry> entries, std::vector<CheckRow> rows)
{
    const bool same =
        rows == m_rows && entries.size() == m_entries.size() &&
        std::equal(entries.begin(), entries.end(), m_entries.begin(),
                   [](const CheckEntry &a, const CheckEntry &b) { return a.key == b.key; });
    if (same && !rows.empty()) {
        m_entries = std::move(entries);
        emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
        return;
    }
    beginResetModel();
    m_entries = std::move(entries);
    m_rows = std::move(rows);
    endResetModel();
}

const CheckEntry *ChecksModel::entryAt(int row) const
{
    if (row < 0 || row >= rowCount() || isHeading(row))
        return nullptr;
    return &m_entries[static_cast<std::size_t>(m_rows[static_cast<std::size_t>(row)].entry)];
}

int ChecksModel::rowOf(const QString &key) const
{
    for (int row = 0; row < rowCount(); ++row)
        if (const CheckEntry *entry = entryAt(row); entry && entry->key == key)
            return row;
    return -1;
}

bool ChecksModel::isHeading(int row) const
{
    return row >= 0 && row < rowCount() && m_rows[static_cast<std::size_t>(row)].entry < 0;
}

int ChecksModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int ChecksModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(ColumnCount);
}

QVariant ChecksModel::headingData(const CheckRow &row, int column, int role) const
{
    if (column != 0) // the heading goes over the whole row
        return role == Qt::AccessibleTextRole ? protectedName(row.group) : QVariant();
    if (role == Qt::DisplayRole)
        return protectedName(row.group);
    if (role == CountsRole)
        return QVariant::fromValue(QList<int>(row.counts.begin(), row.counts.end()));
    if (role != Qt::AccessibleTextRole)
        return {};
    QStringList counted;
    for (const Verdict verdict : kWorstFirst)
        if (const int count = row.counts[static_cast<std::size_t>(verdict)]; count > 0)
            counted << tr("%1 %2").arg(count).arg(verdictWord(verdict));
    return tr("%1: %2").arg(protectedName(row.group), counted.join(QStringLiteral(", ")));
}

QVariant ChecksModel::data(const QModelIndex &index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const CheckEntry *entry = entryAt(index.row());
    if (!entry)
        return headingData(m_rows[static_cast<std::size_t>(index.row())], index.column(), role);
    const Check &check = entry->check;
    switch (index.column()) {
    case VerdictColumn:
        if (role == Qt::DisplayRole)
            return turnedWords(*entry);
        if (role == MarkRole)
            return QVariant::fromValue(markOf(check.verdict));
        if (role == SecondLineRole)
            return underVerdict(check);
        if (role == Qt::AccessibleTextRole)
            return spokenCheck(*entry);
        break;
    case What:
        if (role == Qt::DisplayRole)
            return check.title;
        if (role == SecondLineRole)
            return underTitle(*entry);
        if (role == Qt::ToolTipRole)
            return QString(check.title + u'\n' + check.sentence);
        if (role == Qt::AccessibleTextRole)
            return spokenCheck(*entry);
        break;
    default:
        break;
    }
    return {};
}

QVariant ChecksModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal)
        return {};
    if (role != Qt::DisplayRole)
        return {};
    switch (section) {
    case VerdictColumn:
        return tr("Verdict");
    case What:
        return tr("Check");
    default:
        return {};
    }
}

Qt::ItemFlags ChecksModel::flags(const QModelIndex &index) const
{
    // arrow keys pass over headings, as they pass over whatever is not enabled
    if (!index.isValid() || isHeading(index.row()))
        return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
}

} // namespace ohmwright::ui
