// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/book_find.h"

#include "core/quantity/dates.h"

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr std::size_t kPerGroup = 6;

QString listed(QStringList words)
{
    words.removeAll(QString());
    return words.join(QStringLiteral(", "));
}

} // namespace

BookFind::BookFind(const Book &book) : m_book(book)
{
    connect(&book, &Book::changed, this, [this] { m_stale = true; });
}

void BookFind::index()
{
    m_stale = false;
    m_entries.clear();
    const Records &records = m_book.records();
    const auto add = [&](const QString &group, const QString &key, const QString &title, const QString &detail,
                         const QString &icon, const QStringList &more) {
        m_entries.push_back({{group, key, title, detail, icon}, (QStringList{title, detail} + more).join(u' ').toCaseFolded()});
    };
    for (const Part &p : records.all<Part>()) {
        const Donor *donor = records.find(p.donor);
        const PartType *type = records.find(p.type);
        const QString detail = listed({wordOf(p.kind), wordOf(p.state), p.place});
        add(tr("Parts"), QStringLiteral("part:") + p.key, p.name, detail, QStringLiteral("parts"),
            {p.key, p.serial, p.note, donor ? donor->make + u' ' + donor->model : QString(),
             type ? type->make + u' ' + type->partNumber : QString()});
    }
    for (const bool milestones : {false, true})
        for (const Task &t : records.all<Task>())
            if (t.milestone == milestones)
                add(milestones ? tr("Milestones") : tr("Tasks"), QStringLiteral("task:") + t.key, t.title,
            listed({t.area, wordOf(t.state)}), QStringLiteral("build_order"), {t.key, t.note});
    for (const Purchase &p : records.all<Purchase>())
        if (const Seller *seller = records.find(p.seller))
            add(tr("Orders"), QStringLiteral("budget"), seller->name, tr("ordered %1").arg(showDate(p.orderedOn)),
                QStringLiteral("budget"), {p.key, p.reference, p.note});
    for (const Letter &l : records.all<Letter>())
        add(tr("Letters"), QStringLiteral("build_order"), l.subject, listed({l.toWhom, wordOf(l.state)}),
            QStringLiteral("note"), {l.key, l.reference, l.note});
    for (const TestRecord &t : records.all<TestRecord>())
        add(tr("Tests"), QStringLiteral("sheet"), t.name, wordOf(t.result), QStringLiteral("checks"), {t.key, t.note, t.instrument});
    for (const Attachment &a : records.all<Attachment>()) {
        const Part *part = records.find(a.part);
        add(tr("Photos and papers"), part ? QStringLiteral("part:") + part->key : QStringLiteral("sheet"), a.title,
            part ? part->name : wordOf(a.kind), QStringLiteral("photo"), {a.key, a.fileName, a.url, a.note});
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
            if (!std::all_of(words.begin(), words.end(), [&](const QString &w) { return entry.haystack.contains(w); }))
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
