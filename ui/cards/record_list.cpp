// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/record_list.h"

#include "ui/cards/card_labels.h"
#include "ui/cards/choice_words.h"
#include "ui/cards/listed_words.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <QFont>

#include <algorithm>
#include <map>

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
    if (const auto told = listedWords(records, kind, id))
        return told->detail;
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
    const std::vector<std::int64_t> ids = kind.ids(records);
    std::map<QString, int> named; // how many go by it
    for (const std::int64_t id : ids)
        ++named[kind.name(records, id)];
    std::vector<KnownName> known;
    for (const std::int64_t id : ids) {
        const QString key = kind.key(records, id);
        const QString name = kind.name(records, id);
        QString detail = detailOf(records, kind, id);
        if (detail.isEmpty()) // whose it is: the question an option answers
            detail = kind.holder(records, id).value_or(RecordRef{}).name;
        if (detail.isEmpty() && named[name] > 1)
            detail = key; // nothing else tells them apart
        known.push_back({key, name, detail});
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
        const auto told = listedWords(records, m_kind, id);
        Row row{id, told ? told->name : m_kind.name(records, id), detailOf(records, m_kind, id),
                groupOf(records, m_kind, id)};
        if (const QString lacking = lackingToday(records, m_kind, id, which.today);
            !lacking.isEmpty())
            row.detail = lacking;
        const QString known = QString(row.name + u' ' + row.detail).toCaseFolded();
        if (std::all_of(wanted.begin(), wanted.end(),
                        [&](const QString &word) { return known.contains(word); }))
            rows.push_back(std::move(row));
    }
    if (m_kind.holders().empty()) { // what is held has an order of its own
        std::map<std::int64_t, QString> order;
        for (const Row &row : rows)
            order.emplace(row.id, listedOrder(records, m_kind, row.id, row.name));
        std::stable_sort(rows.begin(), rows.end(), [&](const Row &a, const Row &b) {
            return order.at(a.id) < order.at(b.id);
        });
    }
    addHeadings(rows);
    if (rows == m_rows)
        return;
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

void RecordList::addHeadings(std::vector<Row> &rows)
{
    std::stable_sort(rows.begin(), rows.end(),
                     [](const Row &a, const Row &b) { return a.group.place < b.group.place; });
    for (std::size_t r = 0; r < rows.size(); ++r)
        if (const RecordGroup group = rows[r].group;
            !group.name.isEmpty() && (r == 0 || !(rows[r - 1].group == group)))
            rows.insert(rows.begin() + static_cast<std::ptrdiff_t>(r),
                        Row{0, group.name, {}, group});
}

int RecordList::recordCount() const
{
    return static_cast<int>(
        std::count_if(m_rows.begin(), m_rows.end(), [](const Row &row) { return row.id != 0; }));
}

std::int64_t RecordList::firstFrom(int row) const
{
    for (int at = std::max(0, row); at < rowCount(); ++at)
        if (const std::int64_t id = idAt(at))
            return id;
    for (int at = std::min(row, rowCount()) - 1; at >= 0; --at)
        if (const std::int64_t id = idAt(at))
            return id;
    return 0;
}

Qt::ItemFlags RecordList::flags(const QModelIndex &index) const
{
    // a heading is passed over by keys and pointer
    return idAt(index.row()) == 0 ? Qt::NoItemFlags : QAbstractTableModel::flags(index);
}

std::int64_t RecordList::idAt(int row) const
{
    return row >= 0 && row < rowCount() ? m_rows[static_cast<std::size_t>(row)].id : 0;
}

int RecordList::rowOf(std::int64_t id) const
{
    for (int row = 0; id != 0 && row < rowCount(); ++row)
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
    case Qt::FontRole: {
        if (row.id != 0)
            return {};
        QFont font;
        font.setWeight(QFont::DemiBold);
        return font;
    }
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
