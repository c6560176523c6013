// SPDX-License-Identifier: GPL-3.0-or-later
// Given: an input of a check, perhaps not known, with where it comes from. Threshold: what a result
// is held to, as published and as this book has it.
#pragma once

#include "core/checks/check.h"
#include "core/quantity/quantity.h"
#include "core/records/thresholds.h"

#include <optional>
#include <utility>

namespace ohmwright {

template <class Q>
struct Given
{
    std::optional<Q> value;
    Origin origin;
};

// For what is written down in code: tests, assumptions of a check.
template <class Q>
Given<Q> given(Q value, QString name, Evidence evidence = Evidence::Datasheet, QString source = {})
{
    Origin origin;
    origin.name = std::move(name);
    origin.evidence = evidence;
    origin.source = std::move(source);
    return {value, std::move(origin)};
}

template <class Q>
Given<Q> notKnown(QString name)
{
    Origin origin;
    origin.name = std::move(name);
    return {std::nullopt, std::move(origin)};
}

// Thresholds are data: tightening is free, loosening is shown beside the published one.
template <class Q>
struct Threshold
{
    QString name;   // stable, as in the book: "discharge.voltage"
    Q published{};  //
    QString source; // "UN R100, 5.1.1.3"; "common practice, no published source"
    Tighter tighter = Tighter::Lower;
    std::optional<Q> own;
    QString reason; // why it is the own one

    [[nodiscard]] Q inForce() const { return own.value_or(published); }
    [[nodiscard]] bool isLoosened() const
    {
        return own && (tighter == Tighter::Lower ? published < *own : *own < published);
    }
};

} // namespace ohmwright
