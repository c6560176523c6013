// SPDX-License-Identifier: GPL-3.0-or-later
// History: what each edit of a book changed, in words: which rating, from what to what, when.
//
//     Result<History> history = History::of(book);
//     while (const auto step = history->next())   // newest first
//         …
//
// Goes back on a copy, so the book itself is not touched.
#pragma once

#include "core/cards/record_kind.h"

#include <functional>
#include <optional>
#include <vector>

namespace ohmwright {

struct FieldChange
{
    QString field;         // as in the field list
    QString before, after; // as a card shows them; empty for none
};

struct RecordChange
{
    RecordRef record;
    std::optional<RecordRef> holder; // of an owned record
    RowChange change = RowChange::Changed;
    std::vector<FieldChange> fields; // in the field list's order, only those that differ
    // Whether it is the record or something it holds.
    [[nodiscard]] bool concerns(std::string_view table, std::int64_t id) const;
};

struct StepChange
{
    Step step;
    // First what the edit is named after, then what stands on its own, then what others hold; of
    // these in the order of the tables. Empty where the step was undone, or is so old that
    // what it changed is no longer kept.
    std::vector<RecordChange> records;
};

class History
{
public:
    static Result<History> of(const Book &book);

    // The next older step; none after the oldest. Only reads; each call goes back one edit.
    Result<std::optional<StepChange>> next();
    // How many next() has still to tell.
    [[nodiscard]] std::size_t left() const { return m_steps.size(); }

private:
    History(std::unique_ptr<Book> past, std::vector<Step> steps);

    std::unique_ptr<Book> m_past; // as it was after the step next() will tell
    std::vector<Step> m_steps;    // oldest first; told ones are taken off
};

// The one record with this key, of whatever kind: "heater-relay", or "part:heater-relay" where
// several have it.
Result<RecordRef> recordNamed(const Records &records, const QString &key);

// What was done to one record and what it holds, newest first: a part and its ratings.
Result<std::vector<StepChange>> historyOf(const Book &book, std::string_view table,
                                          std::int64_t id);

// "Value: 420 V → 400 V" for one line; long texts are cut.
QString told(const FieldChange &change, const QString &label);
// "rating “DC voltage limit” of “Heater” changed"; without the holder when it is known from around.
QString told(const RecordChange &change, bool withHolder);
// What a field is called, by table and name.
using LabelOf = std::function<QString(const std::string &table, const QString &field)>;
// Every record and, indented below it, what became of its fields.
QStringList told(const StepChange &step, bool withHolder, const LabelOf &labelOf);

} // namespace ohmwright
