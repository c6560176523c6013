// SPDX-License-Identifier: GPL-3.0-or-later
// A copy of the whole book for work beside the window, taken a little at a time.
//
// All rows of a book of 20,000 parts at once took 110 ms of the window's thread, nearly all of it
// for fresh memory. Rows alone, some at a time, leave the window its turns between; sorting and
// indexing them is left to the thread that wants the copy.
#pragma once

#include "core/records/records.h"

#include <chrono>
#include <memory>

namespace ohmwright::ui {

class RecordsCopy
{
public:
    // Copies rows for about so long; true once all are there. The book must not change between the
    // steps of one copy.
    bool step(const Records &from, std::chrono::microseconds atMost);

    // In any thread, once step() said true; the copy is empty after. What is given out frees its
    // memory in a thread of its own, whoever lets go of it last.
    std::shared_ptr<const Records> take();

private:
    template <class... R>
    using Rows = std::tuple<std::vector<R>...>;
    EachRecord<Rows> m_rows;
    std::size_t m_table = 0; // being copied
};

} // namespace ohmwright::ui
