// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/assembly.h"

namespace ohmwright {

AssemblyTree::AssemblyTree(const Records &records) : m_records(records)
{
    for (const Part &part : records.all<Part>())
        if (part.partOf)
            m_within[*part.partOf].push_back(part.id);
}

const std::vector<Id<Part>> &AssemblyTree::within(Id<Part> part) const
{
    static const std::vector<Id<Part>> none;
    const auto it = m_within.find(part);
    return it == m_within.end() ? none : it->second;
}

std::vector<Id<Part>> AssemblyTree::allWithin(Id<Part> part) const
{
    std::vector<Id<Part>> found = within(part);
    // a loop is refused on the way in, but a damaged book must not hang us
    for (std::size_t i = 0; i < found.size() && found.size() <= m_records.all<Part>().size(); ++i)
        for (const Id<Part> inner : within(found[i]))
            found.push_back(inner);
    return found;
}

Id<Part> AssemblyTree::outermost(Id<Part> part) const
{
    std::size_t steps = 0;
    for (const Part *p = m_records.find(part); p && p->partOf; p = m_records.find(part)) {
        part = *p->partOf;
        if (++steps > m_records.all<Part>().size())
            break;
    }
    return part;
}

QStringList AssemblyTree::path(Id<Part> part) const
{
    QStringList names;
    std::size_t steps = 0;
    for (const Part *p = m_records.find(part); p; p = m_records.find(p->partOf)) {
        names.prepend(p->name);
        if (++steps > m_records.all<Part>().size())
            break;
    }
    return names;
}

} // namespace ohmwright
