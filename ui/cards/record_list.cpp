// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/record_list.h"

#include "ui/cards/card_labels.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <algorithm>

namespace ohmwright::ui {

QString wordedAs(const FieldLabel &label, FieldForm form, const QString &text)
{
    const QString words = labelText(label.listedAs);
    if (words.isEmpty())
        return text;
    if (form == FieldForm::YesNo)
        return words.section(u'|', text == QLatin1String("yes") ? 0 : 1,
                             text == QLatin1String("yes") ? 0 : 1);
    return words.arg(text);
}

QString detailOf(const Records &records, const RecordKind &kind, std::int64_t id)
{
    const CardLabels *labels = cardLabels(kind.table());
    if (!labels)
        return {};
    const std::optional<FieldTexts> texts = kind.texts(records, id);
    if (!texts)
        return {};
    QStringList words;
    for (const FieldLabel &label : labels->fields) {
        if (!label.listed)
            continue;
        const QString name =
            QString::fromLatin1(label.field.data(), static_cast<qsizetype>(label.field.size()));
        const FieldFacts *facts = kind.field(name);
        QString text = texts->at(name);
        if (facts->form == FieldForm::Reference)
            if (const RecordKind *other = recordKind(facts->refersTo))
                if (const auto found = other->idOf(records, text))
                    text = other->name(records, *found);
        if (!text.isEmpty())
            words << wordedAs(label, facts->form, text);
    }
    return words.join(RecordList::tr(", "));
}

std::vector<KnownName> knownOf(const Records &records, const RecordKind &kind)
{
    std::vector<KnownName> known;
    for (const std::int64_t id : kind.ids(records)) {
        const QString key = kind.key(records, id);
        const QString detail = detailOf(records, kind, id);
        known.push_back({key, kind.name(records, id), detail.isEmpty() ? key : detail});
    }
    return known;
}

RecordList::RecordList(const RecordKind &kind, QObject *parent)
    : QAbstractTableModel(parent), m_kind(kind)
{}

void RecordList::read(const Records &records, const Which &which)
{
    const QStringList wanted = which.text.toCaseFolded().split(u' ', Qt::SkipEmptyParts);
    std::vector<Row> rows;
    m_outOf = 0;
    for (const std::int64_t id : m_kind.ids(records)) {
        if (which.holder) {
            const RecordKind *over = recordKind(which.holder->table);
            const bool here =
                which.within.isEmpty()
                    ? m_kind.holder(records, id).value_or(RecordRef{}).id == which.holder->id
                    : m_kind.texts(records, id)->at(which.within) ==
                          over->key(records, which.holder->id);
            if (!here)
                continue;
        }
        ++m_outOf;
        Row row{id, m_kind.name(records, id), detailOf(records, m_kind, id)};
        const QString known = QString(row.name + u' ' + row.detail).toCaseFolded();
        if (std::all_of(wanted.begin(), wanted.end(),
                        [&](const QString &word) { return known.contains(word); }))
            rows.push_back(std::move(row));
    }
    if (m_kind.holders().empty()) // what is held has an order of its own
        std::stable_sort(rows.begin(), rows.end(), [](const Row &a, const Row &b) {
            return a.name.compare(b.name, Qt::CaseInsensitive) < 0;
        });
    if (rows == m_rows)
        return;
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

std::int64_t RecordList::idAt(int row) const
{
    return row >= 0 && row < rowCount() ? m_rows[static_cast<std::size_t>(row)].id : 0;
}

int RecordList::rowOf(std::int64_t id) const
{
    for (int row = 0; row < rowCount(); ++row)
        if (idAt(row) == id)
            return row;
    return -1;
}

int RecordList::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int RecordList::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : 1;
}

QVariant RecordList::data(const QModelIndex &index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const Row &row = m_rows[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Qt::DisplayRole:
        return row.name;
    case SecondLineRole:
        return row.detail;
    case Qt::AccessibleTextRole:
        return row.detail.isEmpty() ? row.name : tr("%1, %2").arg(row.name, row.detail);
    case Qt::ToolTipRole:
        return row.detail.isEmpty() ? row.name : QString(row.name + u'\n' + row.detail);
    default:
        return {};
    }
}

} // namespace ohmwright::ui
