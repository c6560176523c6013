// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cards/record_kind.h"

#include "core/cards/record_kind_of.h"

#include <memory>

namespace ohmwright {

namespace {

using Kinds = std::vector<std::unique_ptr<const RecordKind>>;

template <class... R>
struct All
{
    static Kinds make()
    {
        Kinds kinds;
        (kinds.push_back(std::make_unique<const RecordKindOf<R>>()), ...);
        return kinds;
    }
};

const Kinds &all()
{
    static const Kinds kAll = EachRecord<All>::make();
    return kAll;
}

} // namespace

const FieldFacts *RecordKind::field(const QString &name) const
{
    const auto found = std::find_if(m_fields.begin(), m_fields.end(),
                                    [&](const FieldFacts &facts) { return facts.name == name; });
    return found == m_fields.end() ? nullptr : &*found;
}

QString RecordKind::word() const
{
    const auto note = recordNote(m_table);
    if (!note)
        return QString::fromStdString(m_table);
    return QString::fromUtf8(note->title.data(), static_cast<qsizetype>(note->title.size()))
        .toLower();
}

const RecordKind *recordKind(std::string_view table)
{
    for (const auto &kind : all())
        if (kind->table() == table)
            return kind.get();
    return nullptr;
}

std::vector<const RecordKind *> recordKinds()
{
    std::vector<const RecordKind *> kinds;
    for (const auto &kind : all())
        kinds.push_back(kind.get());
    return kinds;
}

} // namespace ohmwright
