// SPDX-License-Identifier: GPL-3.0-or-later
// Every check a book allows, worked; and the same kept current while the book is edited.
#pragma once

#include "core/book/book.h"
#include "core/checks/check.h"

#include <cstddef>
#include <string_view>
#include <vector>

namespace ohmwright {

class BookInputs;

// In the judges' order. With `only`, the checks of that id alone.
std::vector<Check> judgeBook(const BookInputs &inputs, std::string_view only = {});
std::vector<Check> judgeBook(const Records &records, QDate today, std::string_view only = {});
// Ids of all checks there are, in that order.
std::vector<std::string_view> checkIds();

// Worst first within what they protect; people first.
void sortByDanger(std::vector<Check> &checks);

class BookJudge
{
public:
    // Says what an edit touched; nothing is judged before it is asked for.
    void add(const Change &change) { m_pending.add(change); }
    // Judges anew only what the edits since touched. `changed` is set if anything was.
    const std::vector<Check> &checks(const Records &records, QDate today);

private:
    Change m_pending{.everything = true, .rows = {}};
    QDate m_on;               // a stale figure is stale another day too, but a permit is not
    std::vector<Check> m_all; // in the judges' order
    std::vector<std::ptrdiff_t> m_ofJudges; // how many of them are each judge's
};

} // namespace ohmwright
