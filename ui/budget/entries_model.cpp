// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/budget/entries_model.h"

#include "core/quantity/dates.h"
#include "ui/budget/lines_model.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <utility>

namespace ohmwright::ui {

namespace {

const NumberStyle kStyle = NumberStyle::pointDecimal();
// Items stand in from their purchase.
const QString kIndent = QStringLiteral("    ");

QString shown(Money money)
{
    return showMoney(money, kStyle);
}

QString shown(const std::optional<Money> &money)
{
    return money ? shown(*money) : QString();
}

QString tr(const char *text)
{
    return EntriesModel::tr(text);
}

QString purchaseRemark(const Records &records, const LineEntry &entry)
{
    const Purchase *purchase = records.find(entry.purchase);
    if (!purchase)
        return {};
    QStringList said{tr("ordered %1").arg(showDate(purchase->orderedOn))};
    if (!purchase->reference.isEmpty())
        said << purchase->reference;
    if (purchase->arrivedOn)
        said << tr("arrived %1").arg(showDate(*purchase->arrivedOn));
    else if (purchase->promisedOn)
        said << tr("promised for %1").arg(showDate(*purchase->promisedOn));
    const Currency own = records.build().currency;
    if (purchase->currency != own)
        said << tr("1 %1 = %2 %3")
                    .arg(purchase->currency.code(), purchase->rate.print(), own.code());
    return said.join(tr(", "));
}

QString remarkOf(const Records &records, const LineEntry &entry)
{
    switch (entry.kind) {
    case EntryKind::Purchase:
        return purchaseRemark(records, entry);
    case EntryKind::Item: {
        const PurchaseItem *item = records.find(entry.item);
        QStringList said;
        if (item && item->count > 1)
            said << tr("%1 at %2").arg(item->count).arg(shown(item->unitPrice));
        if (item && item->coreReturnedOn)
            said << tr("core back %1").arg(showDate(*item->coreReturnedOn));
        if (entry.forShop)
            said << tr("partly for the shop");
        return said.join(tr(", "));
    }
    case EntryKind::Wanted:
        return entry.counted ? tr("wanted, estimate")
               : entry.price ? tr("wanted; not counted, no rate for its currency")
                             : tr("wanted; not counted, no estimate");
    case EntryKind::GotBack:
        if (!entry.on)
            return tr("to come back, no day known");
        return entry.gotBack.isZero() ? tr("expected %1").arg(showDate(*entry.on))
                                      : tr("received %1").arg(showDate(*entry.on));
    }
    return {};
}

} // namespace

QString standing(const LineEntry &entry)
{
    switch (entry.kind) {
    case EntryKind::Purchase:
    case EntryKind::Item: {
        if (entry.kind == EntryKind::Purchase && entry.paid && entry.landed) {
            const Money all = entry.core ? *entry.landed + *entry.core : *entry.landed;
            if (*entry.paid < all)
                return tr("%1 to pay").arg(bareFigure(all - *entry.paid));
            return tr("paid");
        }
        return entry.committed.isZero() ? tr("paid")
                                        : tr("%1 to pay").arg(bareFigure(entry.committed));
    }
    case EntryKind::Wanted:
        return entry.counted ? tr("to come") : tr("not counted");
    case EntryKind::GotBack:
        return entry.gotBack.isZero() ? tr("expected back") : tr("got back");
    }
    return {};
}

EntriesModel::EntriesModel(QObject *parent) : QAbstractTableModel(parent) {}

void EntriesModel::setEntries(const Records &records, std::vector<LineEntry> entries)
{
    std::vector<QString> remarks;
    remarks.reserve(entries.size());
    for (const LineEntry &entry : entries)
        remarks.push_back(remarkOf(records, entry));
    const QString own = records.build().currency.code();
    if (entries == m_entries && remarks == m_remarks && own == m_own)
        return; // a view of thousands of rows need not be made anew
    beginResetModel();
    m_entries = std::move(entries);
    m_remarks = std::move(remarks);
    m_own = own;
    endResetModel();
}

const LineEntry *EntriesModel::entry(int row) const
{
    return row >= 0 && row < rowCount() ? &m_entries[static_cast<std::size_t>(row)] : nullptr;
}

int EntriesModel::rowOf(const LineEntry &wanted) const
{
    for (int row = 0; row < rowCount(); ++row) {
        const LineEntry &e = *entry(row);
        if (e.kind == wanted.kind && e.purchase == wanted.purchase && e.item == wanted.item &&
            e.back == wanted.back && (e.kind != EntryKind::Wanted || e.part == wanted.part))
            return row;
    }
    return -1;
}

int EntriesModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_entries.size());
}

int EntriesModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(ColumnCount);
}

QVariant EntriesModel::data(const QModelIndex &index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const LineEntry &entry = m_entries[static_cast<std::size_t>(index.row())];
    const QString &remark = m_remarks[static_cast<std::size_t>(index.row())];
    const bool item = entry.kind == EntryKind::Item;
    if (role == Qt::AccessibleTextRole)
        return tr("%1, %2, %3, %4")
            .arg(entry.name, remark, entry.inBook ? shown(*entry.inBook) : shown(entry.price),
                 standing(entry));
    if (index.column() == What) {
        if (role == Qt::DisplayRole)
            return item ? QString(kIndent + entry.name) : entry.name;
        if (role == SecondLineRole)
            return item && !remark.isEmpty() ? QString(kIndent + remark) : remark;
        return role == Qt::ToolTipRole ? QVariant(QString(entry.name + u'\n' + remark))
                                       : QVariant();
    }
    if (index.column() == Standing)
        return role == Qt::DisplayRole ? QVariant(standing(entry)) : QVariant();
    if (role != FigureRole && role != Qt::DisplayRole)
        return {};
    switch (index.column()) {
    case Price:
        return shown(entry.price);
    case Shared:
        return entry.shared && !entry.shared->isZero() ? bareFigure(*entry.shared) : QString();
    case Core:
        return entry.core && !entry.core->isZero() ? bareFigure(*entry.core) : QString();
    case InBook:
        return entry.inBook ? bareFigure(*entry.inBook) : QString();
    default:
        return {};
    }
}

QVariant EntriesModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal)
        return {};
    if (role == Qt::TextAlignmentRole && section >= Price && section <= InBook)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter));
    if (role == Qt::ToolTipRole && section == Shared)
        return tr("Freight, duty and tax, shared out");
    if (role != Qt::DisplayRole)
        return {};
    switch (section) {
    case What:
        return tr("What it is made of");
    case Price:
        return tr("Price");
    case Shared:
        return tr("Shared costs");
    case Core:
        return tr("Core");
    case InBook:
        return tr("In %1").arg(m_own);
    case Standing:
        return tr("Stands");
    default:
        return {};
    }
}

} // namespace ohmwright::ui
