// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/book_find.h"

#include "core/cards/record_kind.h"
#include "core/records/field.h"
#include "ui/cards/card_labels.h"
#include "ui/cards/record_list.h"

#include <algorithm>
#include <type_traits>
#include <unordered_map>

namespace ohmwright::ui {

namespace {

constexpr int kPauseMs = 200;
constexpr std::size_t kPerGroup = 6;

QString listed(QStringList words)
{
    words.removeAll(QString());
    return words.join(QStringLiteral(", "));
}

// What a person wrote into a record, whatever the field.
template <class R>
QStringList writtenIn(const R &row)
{
    QStringList texts;
    forEachField<R>([&]<class T>(const Field<R, T> &f) {
        if constexpr (std::is_same_v<T, QString>)
            if (!(row.*f.member).isEmpty())
                texts << row.*f.member;
    });
    return texts;
}

// By id of the holder: what is written in the records it holds, such as the source of a rating.
std::unordered_map<std::int64_t, QStringList> writtenInHeld(const Records &records)
{
    std::unordered_map<std::int64_t, QStringList> texts;
    records.forEachTable([&]<class R>(const Table<R> &table) {
        if constexpr (OwnedRecord<R>)
            for (const R &row : table)
                if (const QStringList written = writtenIn(row); !written.isEmpty())
                    texts[Table<R>::ownerOf(row).second] += written;
    });
    return texts;
}

} // namespace

BookFind::BookFind(const Book &book) : m_book(book)
{
    // A large book takes longer to index than a key may wait: it is done as soon as the edits
    // pause, and at the first key only if that comes sooner.
    m_pause.setSingleShot(true);
    m_pause.setInterval(kPauseMs);
    connect(&m_pause, &QTimer::timeout, this, [this] {
        if (m_stale)
            index();
    });
    connect(&book, &Book::changed, this, [this] {
        m_stale = true;
        m_pause.start();
    });
}

void BookFind::index()
{
    m_stale = false;
    m_entries.clear();
    const Records &records = m_book.records();
    const auto add = [&](const QString &group, const QString &key, const QString &title,
                         const QString &detail, const QString &icon, const QStringList &more) {
        m_entries.push_back({{group, key, title, detail, icon},
                             (QStringList{title, detail} + more).join(u' ').toCaseFolded()});
    };
    const auto held = writtenInHeld(records);
    const auto heldBy = [&](std::int64_t id) {
        const auto found = held.find(id);
        return found == held.end() ? QStringList() : found->second;
    };
    for (const Part &p : records.all<Part>()) {
        const Donor *donor = records.find(p.donor);
        const PartType *type = records.find(p.type);
        const QString detail = listed({wordOf(p.kind), wordOf(p.state), p.place});
        add(tr("Parts"), QStringLiteral("part:") + p.key, p.name, detail, QStringLiteral("parts"),
            QStringList{donor ? donor->make + u' ' + donor->model : QString(),
                        type ? type->make + u' ' + type->partNumber : QString()} +
                writtenIn(p) + heldBy(p.id.value()));
    }
    for (const bool milestones : {false, true})
        for (const Task &t : records.all<Task>())
            if (t.milestone == milestones)
                add(milestones ? tr("Milestones") : tr("Tasks"), QStringLiteral("task:") + t.key,
                    t.title, listed({t.area, wordOf(t.state)}), QStringLiteral("build_order"),
                    writtenIn(t) + heldBy(t.id.value()));
    for (const CardLabels *labels : allCardLabels()) {
        const RecordKind &kind = *recordKind(labels->table);
        if (kind.isSingle() || !kind.holders().empty())
            continue;
        const QString table = QString::fromStdString(kind.table());
        for (const std::int64_t id : kind.ids(records)) {
            QStringList more = heldBy(id);
            const FieldTexts texts = kind.texts(records, id).value_or(FieldTexts());
            for (const auto &[field, text] : texts)
                more << text;
            const QString key = kind.key(records, id);
            add(labelText(labels->many), QStringLiteral("record:") + table + u':' + key,
                kind.name(records, id), detailOf(records, kind, id),
                QString::fromLatin1(labels->icon), more);
        }
    }
}

std::vector<FindHit> BookFind::find(const QString &text)
{
    if (m_stale)
        index();
    const QStringList words = text.toCaseFolded().split(u' ', Qt::SkipEmptyParts);
    const QString whole = words.join(u' ');
    std::vector<FindHit> hits;
    // entries of a group follow each other; sort only what is shown
    for (std::size_t first = 0; first < m_entries.size();) {
        const QString group = m_entries[first].hit.group;
        std::vector<const Entry *> leading;
        std::vector<const Entry *> others;
        std::size_t i = first;
        for (; i < m_entries.size() && m_entries[i].hit.group == group; ++i) {
            const Entry &entry = m_entries[i];
            if (!std::all_of(words.begin(), words.end(),
                             [&](const QString &w) { return entry.haystack.contains(w); }))
                continue;
            (entry.haystack.startsWith(whole) ? leading : others).push_back(&entry);
        }
        leading.insert(leading.end(), others.begin(), others.end());
        for (std::size_t n = 0; n < std::min(leading.size(), kPerGroup); ++n)
            hits.push_back(leading[n]->hit);
        first = i;
    }
    return hits;
}

} // namespace ohmwright::ui
