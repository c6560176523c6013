// SPDX-License-Identifier: GPL-3.0-or-later
// What the find line asks for its answers. Made by whoever knows the book; the shell does not.
#pragma once

#include <QString>

#include <vector>

namespace ohmwright::ui {

struct FindHit
{
    QString group; // heading it stands under: "Parts", "Tasks"; hits of a group follow each other
    QString key;   // whatever leads back to it; the shell only hands it on
    QString title;
    QString detail; // "inverter, in hand, shelf 3"; may be empty
    QString icon;   // name of widgets/icons.h; may be empty

    bool operator==(const FindHit &) const = default;
};

class FindSource
{
public:
    virtual ~FindSource() = default;
    // Best first within a group, few enough to be read. Called while a person types: must answer
    // within some 50 ms. `text` is never blank.
    [[nodiscard]] virtual std::vector<FindHit> find(const QString &text) = 0;
};

} // namespace ohmwright::ui
