// SPDX-License-Identifier: GPL-3.0-or-later
// Scratch: trying changes on a copy of the book in memory, to see which verdicts turn before any of
// it is kept.
#pragma once

#include "core/verdicts/judge_book.h"

#include <QString>

#include <memory>
#include <vector>

namespace ohmwright {

class Scratch
{
public:
    struct Tried
    {
        QString address, typed;
    };
    // A check whose verdict is another than the book's.
    struct Turned
    {
        const Check *now = nullptr; // good until the next change
        std::optional<Verdict> before;
    };

    // As the book is at this moment; later edits of it are not seen.
    static Result<std::unique_ptr<Scratch>> of(const Book &book);

    // As editInput(), on the copy.
    Outcome set(const QString &address, const QString &typed);
    [[nodiscard]] const std::vector<Check> &checks() const { return m_checks; }
    [[nodiscard]] const std::vector<Check> &before() const { return m_before; }
    [[nodiscard]] std::vector<Turned> turned() const;
    [[nodiscard]] const std::vector<Tried> &tried() const { return m_tried; } // each address once

    [[nodiscard]] const Records &records() const { return m_copy->records(); }

    // Everything tried, as one edit of the real book.
    Outcome keep(Book &book) const;

private:
    explicit Scratch(std::unique_ptr<Book> copy);

    std::unique_ptr<Book> m_copy;
    std::vector<Check> m_before, m_checks;
    std::vector<Tried> m_tried;
};

} // namespace ohmwright
