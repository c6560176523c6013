// SPDX-License-Identifier: GPL-3.0-or-later
// InputAddress: which figure of the book an input of a check is, as text, so that whoever shows the
// check can have it changed in place (edit_input.h) without knowing where it lies.
#pragma once

#include "core/parts/figures.h"
#include "core/records/records.h"

#include <QString>

#include <optional>
#include <string>
#include <variant>

namespace ohmwright {

// A CheckFigure, whether it is in the book yet or not.
struct FigureAddress
{
    QString figure;      // "vehicle.drag_coefficient"
    std::string subject; // table of what it is a figure of; empty for the vehicle
    QString key;         // of that
    bool operator==(const FigureAddress &) const = default;
};

// The figure in force of a part.
struct RatingAddress
{
    QString part; // key
    FigureName figure;
    std::optional<Amount> duration; // of a peak
    bool operator==(const RatingAddress &) const = default;
};

// How long such a peak is allowed.
struct DurationAddress
{
    RatingAddress peak;
    bool operator==(const DurationAddress &) const = default;
};

// A field of any other record.
struct FieldAddress
{
    std::string table;
    QString key; // empty for the build and the vehicle, of which there is one
    QString field;
    bool operator==(const FieldAddress &) const = default;
};

// A curve of a part that is not in the book yet.
struct CurveAddress
{
    QString part; // key
    CurveKind kind = CurveKind::OpenCircuit;
    bool operator==(const CurveAddress &) const = default;
};

using InputAddress =
    std::variant<FigureAddress, RatingAddress, FieldAddress, CurveAddress, DurationAddress>;

QString print(const InputAddress &address);
// None for what print() never gave.
std::optional<InputAddress> parseInputAddress(const QString &text);

} // namespace ohmwright
