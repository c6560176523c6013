// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cards/references.h"

#include "core/cards/record_names.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

constexpr std::size_t kMostNamed = 3;

QString tr(const char *text)
{
    return QCoreApplication::translate("Cards", text);
}

template <class T>
struct Target;
template <class R>
struct Target<Id<R>>
{
    static constexpr const char *table = RecordTraits<R>::table;
    static std::int64_t id(Id<R> value) { return value.value(); }
};
template <class R>
struct Target<std::optional<Id<R>>>
{
    static constexpr const char *table = RecordTraits<R>::table;
    static std::int64_t id(const std::optional<Id<R>> &value) { return value ? value->value() : 0; }
};

template <class O>
bool refersInto(const O &row, const std::set<RecordPlace> &places)
{
    bool found = false;
    forEachField<O>([&]<class T>(const Field<O, T> &f) {
        if constexpr (requires { Target<T>::table; })
            if (const std::int64_t id = Target<T>::id(row.*f.member); id != 0)
                found = found || places.contains({Target<T>::table, id});
    });
    return found;
}

// Of an owned record its holder's place, of any other its own.
template <class O>
RecordRef toldAs(const Records &records, const O &row)
{
    RecordRef ref{RecordTraits<O>::table, row.id.value(), recordName(records, row)};
    if constexpr (OwnedRecord<O>)
        forEachOwner<O>([&]<class H>(const OwnerField<O, H> &o) {
            if (const H *holder = records.find(row.*o.member))
                ref = {RecordTraits<H>::table, holder->id.value(), recordName(records, *holder)};
        });
    return ref;
}

} // namespace

std::set<RecordPlace> withAllItHolds(const Records &records, const RecordPlace &place)
{
    std::set<RecordPlace> places{place};
    records.forEachTable([&]<class O>(const Table<O> &table) {
        if constexpr (OwnedRecord<O>)
            for (const O &row : table)
                forEachOwner<O>([&]<class H>(const OwnerField<O, H> &o) {
                    if ((row.*o.member).isSet() &&
                        places.contains({RecordTraits<H>::table, (row.*o.member).value()}))
                        places.insert({RecordTraits<O>::table, row.id.value()});
                });
    });
    return places;
}

std::vector<RecordRef> referringTo(const Records &records, const std::set<RecordPlace> &places)
{
    std::vector<RecordRef> found;
    std::set<RecordPlace> told;
    records.forEachTable([&]<class O>(const Table<O> &table) {
        for (const O &row : table) {
            if (places.contains({RecordTraits<O>::table, row.id.value()}) ||
                !refersInto(row, places))
                continue;
            RecordRef ref = toldAs(records, row);
            if (!places.contains({ref.table, ref.id}) && told.insert({ref.table, ref.id}).second)
                found.push_back(std::move(ref));
        }
    });
    return found;
}

QString listed(const std::vector<RecordRef> &records)
{
    QStringList names;
    for (const RecordRef &ref : records) {
        if (static_cast<std::size_t>(names.size()) == kMostNamed)
            break;
        const RecordKind *kind = recordKind(ref.table);
        names << tr("the %1 “%2”").arg(kind ? kind->word() : QString(), ref.name);
    }
    const auto more = records.size() - static_cast<std::size_t>(names.size());
    if (more > 0)
        return tr("%1 and %2 more").arg(names.join(tr(", "))).arg(more);
    const QString last = names.isEmpty() ? QString() : names.takeLast();
    return names.isEmpty() ? last : tr("%1 and %2").arg(names.join(tr(", ")), last);
}

} // namespace ohmwright
