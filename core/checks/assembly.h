// SPDX-License-Identifier: GPL-3.0-or-later
// Assembly: a part with what it withstands, holding sub-parts at any depth, each with its own.
#pragma once

#include <QString>

#include <vector>

namespace ohmwright {

template <class Limit>
struct Assembly
{
    QString name;
    std::vector<Limit> limits; // as recorded; of several that answer the safer counts
    bool isLive = true;        // false: a box or bracket that only holds others needs no limit
    std::vector<Assembly> inside;
};

// Calls visit(path, part) for each, outer before inner; the path is "Cabin heater › main relay".
template <class Limit, class Visit>
void visitAll(const std::vector<Assembly<Limit>> &parts, Visit &&visit, const QString &within = {})
{
    for (const Assembly<Limit> &part : parts) {
        const QString path =
            within.isEmpty() ? part.name : QString(within + QStringLiteral(" › ") + part.name);
        visit(path, part);
        visitAll(part.inside, visit, path);
    }
}

} // namespace ohmwright
