// SPDX-License-Identifier: GPL-3.0-or-later
// Chosen: an input that is one of a list (a material, a way of installing), perhaps not known.
#pragma once

#include "core/checks/worksheet.h"

#include <optional>

namespace ohmwright {

template <class T>
struct Chosen
{
    std::optional<T> value;
    Origin origin;
};

template <class T>
Chosen<T> chosen(T value, QString name, Evidence evidence = Evidence::Datasheet)
{
    Origin origin;
    origin.name = std::move(name);
    origin.evidence = evidence;
    return {value, std::move(origin)};
}

template <class T>
std::optional<T> takeChosen(Worksheet &sheet, const Chosen<T> &choice)
{
    sheet.takeChoice(choice.origin, choice.value ? wordOf(*choice.value) : QString());
    return choice.value;
}

} // namespace ohmwright
