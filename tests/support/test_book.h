// SPDX-License-Identifier: GPL-3.0-or-later
// A book in memory and short ways to put things into it.
#pragma once

#include "core/book/book.h"
#include "core/parts/keys.h"
#include "core/parts/life.h"
#include "tests/support/fixed_clock.h"
#include "tests/support/shell_check.h"

#include <gtest/gtest.h>

#include <memory>
#include <utility>

namespace ohmwright {

#define OHMWRIGHT_ASSERT_OK(result)                                                                \
    do {                                                                                           \
        const auto &outcome_ = (result);                                                           \
        ASSERT_TRUE(outcome_.has_value()) << outcome_.error().sentence.toStdString() << " ["       \
                                          << outcome_.error().where.toStdString() << "]";          \
    } while (false)

inline Currency euro()
{
    return *Currency::fromCode(u"EUR");
}

inline Money euros(std::int64_t cents)
{
    return {cents, euro()};
}

class TestBook
{
public:
    explicit TestBook(const QString &path = {})
        : m_book(std::move(*Book::create(path, QStringLiteral("Test build"), euro(), clock)))
    {}
    ~TestBook()
    {
        if (m_book)
            kShellCheck.take(*m_book);
    }
    TestBook(const TestBook &) = delete;
    TestBook &operator=(const TestBook &) = delete;

    FixedClock clock;

    Book &operator*() { return *m_book; }
    Book *operator->() { return m_book.get(); }
    const Records &records() const { return m_book->records(); }

    // Inserts in an edit of its own; a key is made when there is none.
    template <class R>
    Id<R> add(R row)
    {
        Id<R> id;
        const Outcome done = m_book->edit(QStringLiteral("add"), [&]() -> Outcome {
            if constexpr (KeyedRecord<R>)
                if (row.key.isEmpty())
                    row.key = freshKey<R>(m_book->records(), QLatin1String(RecordTraits<R>::table));
            if constexpr (OwnedRecord<R>)
                row.position = next(row);
            const Result<Id<R>> made = m_book->insert(row);
            if (!made)
                return fail(made.error());
            id = *made;
            if constexpr (std::is_same_v<R, Part>) {
                Part part = row;
                part.id = id;
                return recordBirth(*m_book, part, clock.today().addDays(-100));
            }
            return {};
        });
        EXPECT_TRUE(done.has_value()) << (done ? "" : done.error().sentence.toStdString());
        return id;
    }

private:
    template <OwnedRecord R>
    int next(const R &row) const
    {
        int position = 0;
        for (const R &other : m_book->records().template all<R>())
            if (Table<R>::ownerOf(other) == Table<R>::ownerOf(row))
                position = std::max(position, other.position + 1);
        return position;
    }

    std::unique_ptr<Book> m_book;
};

inline Part namedPart(const QString &name, PartState state = PartState::InHand,
                      PartKind kind = PartKind::Unit)
{
    Part part;
    part.name = name;
    part.state = state;
    part.kind = kind;
    return part;
}

inline Task namedTask(const QString &title, bool milestone = false)
{
    Task task;
    task.title = title;
    task.milestone = milestone;
    return task;
}

inline Amount amount(const char *text)
{
    return *parseAmount(QString::fromUtf8(text), NumberStyle::pointDecimal());
}

} // namespace ohmwright
