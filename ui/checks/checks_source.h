// SPDX-License-Identifier: GPL-3.0-or-later
// What the Checks page asks of the book: the worked checks, edits of their inputs, tasks that find
// out what is not known, and a scratch copy to try changes on.
//
// An interface, so that the page knows nothing of how checks are read from a book.
#pragma once

#include "core/checks/check.h"
#include "core/quantity/result.h"
#include "core/verdicts/turning_points.h"

#include <QString>

#include <memory>
#include <optional>
#include <vector>

namespace ohmwright::ui {

struct ScratchChange
{
    QString field;  // as in Origin::field
    QString name;   // "precharge resistor"
    QString before; // "47 Ω"; empty when it was not known
    QString after;
    bool operator==(const ScratchChange &) const = default;
};

// A copy of the book to try changes on. Deleting it forgets them. It follows the book: what is
// edited there meanwhile holds here too, with the changes on top.
class Scratch
{
public:
    virtual ~Scratch() = default;
    // As ChecksSource::edit, on the copy. Setting a field twice is one change.
    virtual Outcome set(const QString &field, const QString &typed) = 0;
    [[nodiscard]] virtual std::vector<Check> checks() = 0;
    [[nodiscard]] virtual std::vector<ScratchChange> changes() const = 0;
    // All changes into the book as one edit. Refused as a whole.
    virtual Outcome keep() = 0;
    // As ChecksSource::turning, of the copy; good until it changes or is gone.
    [[nodiscard]] virtual std::optional<TurningSearch> turning(const Check &check) = 0;
};

class ChecksSource
{
public:
    virtual ~ChecksSource() = default;
    // Of the book as it is now, in any order.
    [[nodiscard]] virtual std::vector<Check> checks() = 0;
    // The name of what a check is about ("Traction circuit"); empty if it has none.
    [[nodiscard]] virtual QString subjectName(const Check &check) const = 0;
    // `field` is Origin::field of an input. `typed` is an amount with its unit ("22 Ω") where the
    // input shows one, else as the person typed it. A refusal changes nothing.
    virtual Outcome edit(const QString &field, const QString &typed) = 0;
    // Makes the task that finds out an input of the check by its name.
    virtual Outcome findOut(const Check &check, const QString &unknownName) = 0;
    // There is such a task, and it is not done.
    [[nodiscard]] virtual bool isBeingFoundOut(const Check &check,
                                               const QString &unknownName) const = 0;
    // The search for what would turn its verdict; good until the book changes. None where that
    // cannot be told.
    [[nodiscard]] virtual std::optional<TurningSearch> turning(const Check &check) = 0;
    [[nodiscard]] virtual std::unique_ptr<Scratch> scratch() = 0;
};

} // namespace ohmwright::ui
