// SPDX-License-Identifier: GPL-3.0-or-later
// What would turn a verdict: for each input of a check, the value at which the verdict becomes
// another while all the rest of the book stays as it is. Found by judging anew, so that it is true
// of the very book, whatever else hangs on the input.
//
//     TurningSearch search(records, today, check);
//     while (search.step()) {}          // each step judges once: for whoever may not wait
//     for (const TurningPoint &point : search.found()) …
#pragma once

#include "core/checks/check.h"
#include "core/records/records.h"

#include <QDate>
#include <QStringList>

#include <cstddef>
#include <memory>
#include <vector>

namespace ohmwright {

struct TurningPoint
{
    QString input;   // its name
    QString address; // as Origin::field
    // Mended: it fails no more, or holds where it was tight or unknown. Spoilt: a value that is
    // only said or assumed, and what it must not come to.
    enum class Way { Mended, Spoilt } way = Way::Mended;
    enum class Side { AtLeast, AtMost } side = Side::AtMost;
    Amount value;           // in the unit the check shows, three significant digits
    QString shown, instead; // "141 N·m", "148 N·m"; `instead` is empty for what is not known
    Verdict verdict = Verdict::Holds; // what it becomes
    bool operator==(const TurningPoint &) const = default;
};

// Looks from each input's value outward, to half and double of it, temperatures 40 K either way;
// where the only unknown is a number, over all magnitudes. What would mend it comes first, and what
// needs the least change before what needs more. Choices and curves are not tried. `records` must
// stay as they are until the search is over.
class TurningSearch
{
public:
    enum class For { Mending, Both };
    TurningSearch(const Records &records, QDate today, Check check, For what = For::Both);
    ~TurningSearch();
    TurningSearch(TurningSearch &&) noexcept;
    TurningSearch &operator=(TurningSearch &&) noexcept;
    TurningSearch(const TurningSearch &) = delete;
    TurningSearch &operator=(const TurningSearch &) = delete;

    // Judges once; false when there is nothing more to judge.
    bool step();
    // Of each input the nearest, at most kMost of them; all of them once step() gave false.
    [[nodiscard]] std::vector<TurningPoint> found() const;

    static constexpr std::size_t kMost = 5;

private:
    struct State;
    std::unique_ptr<State> m_state;
};

// All steps at once.
std::vector<TurningPoint> turningPoints(const Records &records, QDate today, const Check &check,
                                        TurningSearch::For what = TurningSearch::For::Both);

} // namespace ohmwright
