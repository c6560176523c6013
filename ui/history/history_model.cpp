// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/history/history_model.h"

#include "core/quantity/dates.h"
#include "ui/cards/card_labels.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <QCoreApplication>

namespace ohmwright::ui {

namespace {

constexpr std::size_t kReadAtOnce = 60;

QString tr(const char *text)
{
    return QCoreApplication::translate("HistoryModel", text);
}

QString labelOf(const std::string &table, const QString &field)
{
    if (const CardLabels *labels = cardLabels(table))
        if (const FieldLabel *label = fieldLabel(*labels, field); label && *label->label)
            return labelText(label->label);
    QString words = QString(field).replace(u'_', u' ');
    words[0] = words[0].toUpper();
    return words;
}

QString fieldsInShort(const RecordChange &record)
{
    QStringList told;
    for (const FieldChange &field : record.fields)
        told << ohmwright::told(field, labelOf(record.record.table, field.field));
    return told.join(tr("; "));
}

QString stateInWords(StepState state)
{
    switch (state) {
    case StepState::Undone:
        return tr("Taken back.");
    case StepState::Overtaken:
        return tr("Taken back, then overtaken by another edit.");
    case StepState::Kept:
        return tr("What it changed in detail is not kept.");
    case StepState::Done:
        break;
    }
    return {};
}

QString inShort(const StepChange &step, bool withHolder)
{
    if (step.records.empty())
        return stateInWords(step.step.state);
    const RecordChange &first = step.records.front();
    return first.change == RowChange::Changed ? fieldsInShort(first) : told(first, withHolder);
}

QString underIt(const StepChange &step, bool withHolder)
{
    if (step.records.empty())
        return {};
    const RecordChange &first = step.records.front();
    QStringList words;
    if (first.change == RowChange::Changed)
        words << told(first, withHolder);
    if (const std::size_t more = step.records.size() - 1)
        words << tr("and %1 more").arg(more);
    return words.join(tr(", "));
}

QString dayOf(const Step &step)
{
    return showDate(step.madeAt.toLocalTime().date());
}

QString timeOf(const Step &step)
{
    return step.madeAt.toLocalTime().toString(QStringLiteral("HH:mm"));
}

} // namespace

QString changesInFull(const StepChange &step, bool withHolder)
{
    if (step.records.empty())
        return stateInWords(step.step.state);
    return told(step, withHolder, labelOf).join(u'\n');
}

HistoryModel::HistoryModel(QObject *parent) : QAbstractTableModel(parent) {}

Outcome HistoryModel::read(const Book &book, const std::optional<RecordRef> &of)
{
    std::vector<StepChange> steps;
    std::optional<History> left;
    if (of) {
        Result<std::vector<StepChange>> found = historyOf(book, of->table, of->id);
        if (!found)
            return fail(found.error());
        steps = std::move(*found);
    } else {
        Result<History> history = History::of(book);
        if (!history)
            return fail(history.error());
        left = std::move(*history);
    }
    beginResetModel();
    m_steps = std::move(steps);
    m_history = std::move(left);
    m_ofOne = of.has_value();
    endResetModel();
    fetchMore({});
    return {};
}

void HistoryModel::forget()
{
    beginResetModel();
    m_steps.clear();
    m_history.reset();
    endResetModel();
}

int HistoryModel::rowOf(std::int64_t number) const
{
    const auto found = std::find_if(m_steps.begin(), m_steps.end(), [&](const StepChange &step) {
        return step.step.number == number;
    });
    return found == m_steps.end() ? -1 : static_cast<int>(found - m_steps.begin());
}

int HistoryModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_steps.size());
}

int HistoryModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant HistoryModel::data(const QModelIndex &index, int role) const
{
    if (!index.isValid())
        return {};
    const StepChange &told = step(index.row());
    switch (index.column()) {
    case When:
        if (role == Qt::DisplayRole)
            return dayOf(told.step);
        if (role == SecondLineRole)
            return timeOf(told.step);
        if (role == Qt::AccessibleTextRole)
            return tr("%1 at %2").arg(dayOf(told.step), timeOf(told.step));
        break;
    case Edit:
        if (role == Qt::DisplayRole || role == Qt::ToolTipRole)
            return told.step.what;
        if (role == SecondLineRole)
            return tr("edit %1").arg(told.step.number);
        break;
    default:
        if (role == Qt::DisplayRole)
            return inShort(told, !m_ofOne);
        if (role == Qt::AccessibleTextRole)
            return QStringList{inShort(told, !m_ofOne), underIt(told, !m_ofOne)}.join(tr(", "));
        if (role == Qt::ToolTipRole)
            return changesInFull(told, !m_ofOne);
        if (role == SecondLineRole)
            return underIt(told, !m_ofOne);
        break;
    }
    return {};
}

QVariant HistoryModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    return section == When ? tr("When") : section == Edit ? tr("Edit") : tr("What it changed");
}

bool HistoryModel::canFetchMore(const QModelIndex &parent) const
{
    return !parent.isValid() && m_history && m_history->left() > 0;
}

void HistoryModel::fetchMore(const QModelIndex &parent)
{
    if (!canFetchMore(parent))
        return;
    std::vector<StepChange> more;
    while (more.size() < kReadAtOnce) {
        Result<std::optional<StepChange>> step = m_history->next();
        // what cannot be gone back on ends what can be told; the book itself is sound
        if (!step || !*step) {
            m_history.reset();
            break;
        }
        more.push_back(std::move(**step));
    }
    if (more.empty())
        return;
    const int first = rowCount();
    beginInsertRows({}, first, first + static_cast<int>(more.size()) - 1);
    std::move(more.begin(), more.end(), std::back_inserter(m_steps));
    endInsertRows();
}

} // namespace ohmwright::ui
