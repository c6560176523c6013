// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cards/history.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace {

// A note can be a page long; a line of the history needs only tell which one it was.
constexpr qsizetype kLongestText = 80;

QString tr(const char *text)
{
    return QCoreApplication::translate("History", text);
}

// A row as the records have it at one moment.
struct Moment
{
    QString name;
    std::optional<RecordRef> holder;
    FieldTexts texts; // references by name
};

std::optional<Moment> momentOf(const RecordKind &kind, const Records &records, std::int64_t id)
{
    std::optional<FieldTexts> texts = kind.texts(records, id);
    if (!texts)
        return std::nullopt;
    for (const FieldFacts &facts : kind.fields()) {
        QString &text = (*texts)[facts.name];
        if (facts.form != FieldForm::Reference || text.isEmpty())
            continue;
        const RecordKind *to = recordKind(facts.refersTo);
        const auto referred = to ? to->idOf(records, text) : std::nullopt;
        if (referred)
            text = to->name(records, *referred);
    }
    return Moment{kind.name(records, id), kind.holder(records, id), std::move(*texts)};
}

std::vector<FieldChange> differing(const RecordKind &kind, const std::optional<Moment> &before,
                                   const std::optional<Moment> &after)
{
    std::vector<FieldChange> changes;
    const auto textIn = [](const std::optional<Moment> &moment, const QString &field) {
        if (!moment)
            return QString();
        const auto found = moment->texts.find(field);
        return found == moment->texts.end() ? QString() : found->second;
    };
    for (const FieldFacts &facts : kind.fields()) {
        QString was = textIn(before, facts.name);
        QString is = textIn(after, facts.name);
        if (was != is)
            changes.push_back({facts.name, std::move(was), std::move(is)});
    }
    return changes;
}

// Where a record stands among those of one edit: by what the edit's sentence speaks of.
int rankOf(const RecordChange &change, const Step &step)
{
    if (change.holder)
        return 2;
    return !change.record.name.isEmpty() && step.what.contains(change.record.name) ? 0 : 1;
}

// Before a key: the table, but of a type as `compare` has it.
QString writtenAs(const RecordKind &kind)
{
    return kind.table() == RecordTraits<PartType>::table ? QStringLiteral("type")
                                                         : QString::fromStdString(kind.table());
}

QString shortened(const QString &text)
{
    const QString line = text.simplified();
    return line.size() <= kLongestText ? line : QString(line.left(kLongestText - 1) + u'…');
}

} // namespace

bool RecordChange::concerns(std::string_view table, std::int64_t id) const
{
    return (record.table == table && record.id == id) ||
           (holder && holder->table == table && holder->id == id);
}

History::History(std::unique_ptr<Book> past, std::vector<Step> steps)
    : m_past(std::move(past)), m_steps(std::move(steps))
{}

Result<History> History::of(const Book &book)
{
    Result<std::vector<Step>> steps = book.history();
    if (!steps)
        return fail(steps.error());
    Result<std::unique_ptr<Book>> past = book.copyInMemory();
    if (!past)
        return fail(past.error());
    return History(std::move(*past), std::move(*steps));
}

Result<std::optional<StepChange>> History::next()
{
    if (m_steps.empty())
        return std::nullopt;
    StepChange told{m_steps.back(), {}};
    m_steps.pop_back();
    if (told.step.state != StepState::Done)
        return told;
    const Result<TouchedRows> touched = m_past->touchedBy(told.step.number);
    if (!touched)
        return fail(touched.error());
    struct Row
    {
        const RecordKind *kind;
        TouchedRow touched;
        std::optional<Moment> after;
    };
    std::vector<Row> rows;
    for (const RecordKind *kind : recordKinds())
        if (const auto changes = touched->find(kind->table()); changes != touched->end())
            for (const TouchedRow &row : changes->second)
                rows.push_back({kind, row, momentOf(*kind, m_past->records(), row.id)});
    if (Outcome back = m_past->undo(); !back)
        return fail(back.error());
    for (Row &row : rows) {
        const std::optional<Moment> before = momentOf(*row.kind, m_past->records(), row.touched.id);
        const Moment &now = row.after ? *row.after : *before;
        told.records.push_back({{row.kind->table(), row.touched.id, now.name},
                                now.holder,
                                row.touched.change,
                                differing(*row.kind, before, row.after)});
    }
    std::ranges::stable_sort(told.records, {},
                             [&](const RecordChange &change) { return rankOf(change, told.step); });
    return told;
}

Result<RecordRef> recordNamed(const Records &records, const QString &key)
{
    const QString table = key.contains(u':') ? key.section(u':', 0, 0) : QString();
    const QString rest = table.isEmpty() ? key : key.section(u':', 1);
    std::vector<RecordRef> found;
    for (const RecordKind *kind : recordKinds())
        if (table.isEmpty() || writtenAs(*kind) == table)
            if (const auto id = kind->idOf(records, rest))
                found.push_back({kind->table(), *id, kind->name(records, *id)});
    if (found.empty())
        return fail(ProblemCode::NotFound, tr("Nothing in the book has the key “%1”.").arg(key));
    if (found.size() > 1) {
        QStringList ways;
        for (const RecordRef &one : found)
            ways << tr("“%1:%2”").arg(writtenAs(*recordKind(one.table)), rest);
        return fail(ProblemCode::BadInput, tr("“%1” is the key of several things.").arg(key),
                    tr("Say which: %1.").arg(ways.join(tr(" or "))));
    }
    return found.front();
}

Result<std::vector<StepChange>> historyOf(const Book &book, std::string_view table, std::int64_t id)
{
    Result<History> history = History::of(book);
    if (!history)
        return fail(history.error());
    std::vector<StepChange> found;
    for (;;) {
        Result<std::optional<StepChange>> step = history->next();
        if (!step)
            return fail(step.error());
        if (!*step)
            return found;
        std::erase_if((*step)->records,
                      [&](const RecordChange &change) { return !change.concerns(table, id); });
        if (!(*step)->records.empty())
            found.push_back(std::move(**step));
    }
}

QString told(const FieldChange &change, const QString &label)
{
    if (change.before.isEmpty())
        return tr("%1: %2").arg(label, shortened(change.after));
    if (change.after.isEmpty())
        return tr("%1: %2 → nothing").arg(label, shortened(change.before));
    return tr("%1: %2 → %3").arg(label, shortened(change.before), shortened(change.after));
}

QString told(const RecordChange &change, bool withHolder)
{
    const RecordKind *kind = recordKind(change.record.table);
    const QString word = kind ? kind->word() : QString();
    const QString name =
        change.record.name.isEmpty() ? word : tr("%1 “%2”").arg(word, change.record.name);
    const QString whole =
        withHolder && change.holder ? tr("%1 of “%2”").arg(name, change.holder->name) : name;
    switch (change.change) {
    case RowChange::Added:
        return tr("%1 added").arg(whole);
    case RowChange::Removed:
        return tr("%1 taken out").arg(whole);
    case RowChange::Changed:
        break;
    }
    return tr("%1 changed").arg(whole);
}

QStringList told(const StepChange &step, bool withHolder, const LabelOf &labelOf)
{
    QStringList lines;
    for (const RecordChange &record : step.records) {
        lines << told(record, withHolder);
        if (record.change != RowChange::Removed)
            for (const FieldChange &field : record.fields)
                lines << u"    " + told(field, labelOf(record.record.table, field.field));
    }
    return lines;
}

} // namespace ohmwright
