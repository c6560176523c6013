// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/records/records.h"
#include "tests/support/generated_book.h"

#include <tuple>
#include <unordered_map>

namespace ohmwright {

namespace {

template <class... R>
using NewIds = std::tuple<std::unordered_map<Id<R>, Id<R>>...>;

class Renumberer
{
public:
    explicit Renumberer(const Records &records) : m_records(records) {}

    Records run()
    {
        // owners before what they own, whatever the order of the kinds
        m_records.forEachTable([&]<class R>(const Table<R> &table) {
            if constexpr (!OwnedRecord<R>)
                number(table.rows());
        });
        m_records.forEachTable([&]<class R>(const Table<R> &table) {
            if constexpr (OwnedRecord<R>)
                numberOwned(table.rows());
        });
        Records plain;
        m_records.forEachTable([&]<class R>(const Table<R> &table) {
            std::vector<R> rows;
            for (const R &row : table)
                rows.push_back(renumbered(row));
            plain.all<R>().assign(std::move(rows));
        });
        return plain;
    }

private:
    template <class R>
    std::unordered_map<Id<R>, Id<R>> &ids()
    {
        return std::get<std::unordered_map<Id<R>, Id<R>>>(m_ids);
    }

    template <class R>
    void number(const std::vector<R> &rows)
    {
        for (const R &row : rows)
            ids<R>().emplace(row.id, Id<R>(static_cast<std::int64_t>(ids<R>().size()) + 1));
    }

    template <class R>
    void numberOwned(std::vector<R> rows)
    {
        for (R &row : rows)
            moveOwners(row);
        Table<R> sorted;
        sorted.assign(std::move(rows)); // the table's own order: owner, position
        number(sorted.rows());
        std::pair<int, std::int64_t> owner{-1, 0};
        int position = 0;
        for (const R &row : sorted) {
            const auto here = Table<R>::ownerOf(row);
            position = here == owner ? position + 1 : 0;
            owner = here;
            m_positions[row.id.value()] = position;
        }
    }

    template <class R>
    void moveOwners(R &row)
    {
        forEachOwner<R>([&](const auto &o) { move(row.*o.member); });
    }

    template <class T>
    void move(T & /*not a reference*/)
    {}
    template <class R>
    void move(Id<R> &id)
    {
        if (id.isSet())
            id = ids<R>().at(id);
    }
    template <class R>
    void move(std::optional<Id<R>> &id)
    {
        if (id)
            move(*id);
    }

    template <class R>
    R renumbered(R row)
    {
        if constexpr (OwnedRecord<R>) {
            row.position = m_positions.at(row.id.value());
            moveOwners(row);
        }
        forEachField<R>([&](const auto &f) { move(row.*f.member); });
        move(row.id);
        return row;
    }

    const Records &m_records;
    EachRecord<NewIds> m_ids;
    std::unordered_map<std::int64_t, int> m_positions; // ids of all owned records are distinct
};

} // namespace

Records withPlainIds(const Records &records)
{
    return Renumberer(records).run();
}

} // namespace ohmwright
