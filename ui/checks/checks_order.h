// SPDX-License-Identifier: GPL-3.0-or-later
// Which checks the list shows and in what order: grouped by what they protect, worst first within.
#pragma once

#include "core/verdicts/verdict_counts.h"
#include "ui/checks/check_words.h"
#include "ui/checks/checks_source.h"

#include <array>
#include <optional>
#include <set>
#include <vector>

namespace ohmwright::ui {

struct CheckEntry
{
    Check check;
    QString key; // checkKey(), made unique
    QString subject;
    std::optional<Verdict> before; // in the book, where a tried change turns the verdict
    bool isNew = false;            // only there through a tried change
    QString haystack;              // all that the typed filter looks through
    bool operator==(const CheckEntry &) const = default;
};

struct CheckFilter
{
    std::set<Verdict> verdicts; // empty: any
    QString text;               // every word of it somewhere, whatever case or accents
    bool turnedOnly = false;
};

struct CheckRow
{
    int entry = -1; // into the entries; -1: a heading
    Protects group = Protects::People;
    VerdictCounts counts{}; // of a heading, what is shown below it
    bool operator==(const CheckRow &) const = default;
};

struct ArrangedChecks
{
    std::vector<CheckRow> rows;
    VerdictCounts perVerdict{}; // of what fits the text, whatever verdicts are asked for
    int turned = 0;
    int shown = 0;
};

// `inBook`: what the book says, while `checks` come from a scratch copy; null otherwise.
std::vector<CheckEntry> entriesOf(std::vector<Check> checks, const ChecksSource &source,
                                  const std::vector<Check> *inBook = nullptr);

// Among one group: fails, unknown, tight, holds; the narrowest margin first; then by title.
ArrangedChecks arrange(const std::vector<CheckEntry> &entries, const CheckFilter &filter);

} // namespace ohmwright::ui
