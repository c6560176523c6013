// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/book_checks_source.h"

#include "core/verdicts/edit_input.h"
#include "core/verdicts/scratch.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright::ui {

namespace {

// The core's scratch copy, made anew when the book was edited meanwhile.
class BookScratch final : public QObject, public Scratch
{
public:
    explicit BookScratch(Book &book) : m_book(book)
    {
        connect(&book, &Book::changed, this, [this] { m_stale = true; });
    }

    Outcome set(const QString &field, const QString &typed) override
    {
        if (Outcome ready = follow(); !ready)
            return ready;
        return m_copy->set(field, typed);
    }

    std::vector<Check> checks() override
    {
        // without a copy the book's own verdicts are the best there is
        if (!follow())
            return judgeBook(m_book.records(), m_book.clock().today());
        return m_copy->checks();
    }

    std::vector<ScratchChange> changes() const override
    {
        std::vector<ScratchChange> changes;
        if (!m_copy)
            return changes;
        for (const ohmwright::Scratch::Tried &tried : m_copy->tried()) {
            const CheckInput *before = inputAt(m_copy->before(), tried.address);
            const CheckInput *after = inputAt(m_copy->checks(), tried.address);
            const CheckInput *any = after ? after : before;
            changes.push_back({tried.address, any ? any->origin.name : QString(),
                               before ? before->shown : QString(),
                               after ? after->shown : tried.typed});
        }
        return changes;
    }

    Outcome keep() override
    {
        if (Outcome ready = follow(); !ready)
            return ready;
        return m_copy->keep(m_book);
    }

    std::optional<TurningSearch> turning(const Check &check) override
    {
        if (!follow())
            return std::nullopt;
        return TurningSearch(m_copy->records(), m_book.clock().today(), check);
    }

private:
    static const CheckInput *inputAt(const std::vector<Check> &checks, const QString &address)
    {
        for (const Check &check : checks)
            for (const CheckInput &input : check.inputs)
                if (input.origin.field == address)
                    return &input;
        return nullptr;
    }

    // What was tried is tried again; what no longer can be is dropped.
    Outcome follow()
    {
        if (m_copy && !m_stale)
            return {};
        Result<std::unique_ptr<ohmwright::Scratch>> fresh = ohmwright::Scratch::of(m_book);
        if (!fresh)
            return fail(fresh.error());
        if (m_copy)
            for (const ohmwright::Scratch::Tried &tried : m_copy->tried())
                (void)(*fresh)->set(tried.address, tried.typed);
        m_copy = std::move(*fresh);
        m_stale = false;
        return {};
    }

    Book &m_book;
    std::unique_ptr<ohmwright::Scratch> m_copy;
    bool m_stale = false;
};

template <class R>
QString nameIn(const Records &records, const QString &key)
{
    const R *row = records.byKey<R>(key);
    return row ? row->name : QString();
}

} // namespace

BookChecksSource::BookChecksSource(Book &book, QObject *parent) : QObject(parent), m_book(book)
{
    connect(&book, &Book::changed, this, [this](const Change &change) { m_judge.add(change); });
}

std::vector<Check> BookChecksSource::checks()
{
    return m_judge.checks(m_book.records(), m_book.clock().today());
}

QString BookChecksSource::subjectName(const Check &check) const
{
    const Records &records = m_book.records();
    for (const QString &name :
         {nameIn<Circuit>(records, check.subject), nameIn<Branch>(records, check.subject),
          nameIn<Part>(records, check.subject), nameIn<TestRecord>(records, check.subject)})
        if (!name.isEmpty())
            return name;
    return {};
}

Outcome BookChecksSource::edit(const QString &field, const QString &typed)
{
    return editInput(m_book, field, typed);
}

Outcome BookChecksSource::findOut(const Check &check, const QString &unknownName)
{
    const Result<Id<Task>> made = ohmwright::findOut(m_book, check, unknownName);
    return made ? Outcome() : Outcome(fail(made.error()));
}

bool BookChecksSource::isBeingFoundOut(const Check &check, const QString &unknownName) const
{
    return ohmwright::isBeingFoundOut(m_book.records(), check, unknownName);
}

std::optional<TurningSearch> BookChecksSource::turning(const Check &check)
{
    return TurningSearch(m_book.records(), m_book.clock().today(), check);
}

std::unique_ptr<Scratch> BookChecksSource::scratch()
{
    return std::make_unique<BookScratch>(m_book);
}

} // namespace ohmwright::ui
