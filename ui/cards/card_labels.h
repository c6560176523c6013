// SPDX-License-Identifier: GPL-3.0-or-later
// The one place where a record gets its card: what it is called, and a label for each of its
// fields. Forms, ranges, choices, units and references come from the record itself (core/cards).
//
// To give a new record its card: a table of FieldLabel in card_labels.cpp, one for each field, and
// a line in kCards. A test sees to it that no field is forgotten.
#pragma once

#include <QString>

#include <span>
#include <string_view>
#include <vector>

namespace ohmwright::ui {

enum class FieldPlace {
    Half,   // two to a row
    Full,   // a row of its own
    Note,   // a row of its own, several lines
    Fixed,  // shown, but not to be changed here
    Hidden, // made by the program or kept elsewhere
};

struct FieldLabel
{
    std::string_view field; // as in the field list
    const char *label = "";
    const char *hint = ""; // an example with its unit, what is meant; replaces the one of its form
    FieldPlace place = FieldPlace::Half;
    bool listed = false;    // also told below the name in a list
    const char *group = ""; // heading that starts at this field
    // How a list words it, where the bare value would not say what it is: "taken %1", or of a yes
    // or no both: "fitted|not fitted".
    const char *listedAs = "";
};

struct CardLabels
{
    std::string_view table;
    const char *many = "";  // heading of the list: "Donors"
    const char *add = "";   // its button: "New donor"
    const char *icon = "";  // name of widgets/icons.h
    const char *teach = ""; // what goes here, for a list that is empty
    std::span<const FieldLabel> fields;
    std::string_view within = {}; // field naming the record on whose card these are listed
};

// Null when the record has no card.
const CardLabels *cardLabels(std::string_view table);
std::vector<const CardLabels *> allCardLabels();
const FieldLabel *fieldLabel(const CardLabels &labels, const QString &field);
// In the language of the window.
QString labelText(const char *text);

} // namespace ohmwright::ui
