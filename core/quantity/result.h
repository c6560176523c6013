// SPDX-License-Identifier: GPL-3.0-or-later
// Result<T>: a value, or the Problem that kept us from it.
//
// For everything a person can meet: input, files, the disk. Broken invariants of our own are
// asserted instead. A Result that nobody looks at does not compile.
//
//     Result<Money> price = parseMoney(text, style);
//     if (!price)
//         return fail(price.error());
#pragma once

#include <QString>

#include <tl/expected.hpp>

#include <utility>

namespace ohmwright {

enum class ProblemCode {
    BadInput,   // a person or a file gave something that cannot be meant
    NotFound,   // a thing named does not exist
    NotAllowed, // understood, but the rules of the book refuse it
    Conflict,   // the book holds something other than what this step expects
    NotABook,   // the file is something else
    NewerBook,  // written by a later version
    ReadOnly,   // the file or its folder cannot be written
    DiskFull,   // no room left
    Locked,     // another program holds the file
    Damaged,    // the file is a book, but broken
    Io,         // any other trouble with a file
};

struct Problem
{
    ProblemCode code = ProblemCode::BadInput;
    QString sentence; // one plain sentence, ends with a full stop
    QString whatToDo; // what the person can do about it; may be empty
    QString where;    // field name or JSON pointer; may be empty

    bool operator==(const Problem &) const = default;
};

template <class T>
class [[nodiscard]] Result : public tl::expected<T, Problem>
{
public:
    using tl::expected<T, Problem>::expected;
};

using Outcome = Result<void>;

[[nodiscard]] inline tl::unexpected<Problem> fail(Problem problem)
{
    return tl::unexpected<Problem>(std::move(problem));
}

[[nodiscard]] inline tl::unexpected<Problem> fail(ProblemCode code, QString sentence,
                                                  QString whatToDo = {}, QString where = {})
{
    return fail(Problem{code, std::move(sentence), std::move(whatToDo), std::move(where)});
}

} // namespace ohmwright
