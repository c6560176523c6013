// SPDX-License-Identifier: GPL-3.0-or-later
// Table<Record>: all rows of one kind in memory, in their reading order, found by id or key.
//
// Keyed records stand in key order, owned ones by owner and position. A book of 20,000 parts is a
// few tens of megabytes, so pages, checks and plans read from here and never wait for the disk.
#pragma once

#include "core/records/field.h"

#include <QHash>
#include <QString>

#include <algorithm>
#include <span>
#include <tuple>
#include <unordered_map>
#include <vector>

namespace ohmwright {

template <class R>
class Table
{
public:
    [[nodiscard]] const std::vector<R> &rows() const { return m_rows; }
    [[nodiscard]] std::size_t size() const { return m_rows.size(); }
    [[nodiscard]] auto begin() const { return m_rows.begin(); }
    [[nodiscard]] auto end() const { return m_rows.end(); }

    // Null when there is none; the pointer is good until the table changes.
    [[nodiscard]] const R *find(Id<R> id) const
    {
        const auto it = m_byId.find(id.value());
        return it == m_byId.end() ? nullptr : &m_rows[it->second];
    }
    [[nodiscard]] const R *find(const std::optional<Id<R>> &id) const
    {
        return id ? find(*id) : nullptr;
    }
    [[nodiscard]] const R *byKey(const QString &key) const requires KeyedRecord<R>
    {
        const auto it = m_byKey.constFind(key);
        return it == m_byKey.constEnd() ? nullptr : &m_rows[*it];
    }

    // The rows an owner holds, in order of position.
    template <class Owner>
    [[nodiscard]] std::span<const R> of(Id<Owner> ownerId) const requires OwnedRecord<R>
    {
        const auto slot = std::pair(ownerSlot<Owner>(), ownerId.value());
        const auto less = [](const R &row, const std::pair<int, std::int64_t> &value) {
            return ownerOf(row) < value;
        };
        const auto lessToo = [](const std::pair<int, std::int64_t> &value, const R &row) {
            return value < ownerOf(row);
        };
        const auto first = std::lower_bound(m_rows.begin(), m_rows.end(), slot, less);
        const auto last = std::upper_bound(first, m_rows.end(), slot, lessToo);
        return {first, last};
    }

    // Which owner holds the row: (which of the record's owners, its id).
    static std::pair<int, std::int64_t> ownerOf(const R &row) requires OwnedRecord<R>
    {
        std::pair<int, std::int64_t> found{0, 0};
        int slot = 0;
        forEachOwner<R>([&](const auto &o) {
            if ((row.*o.member).isSet())
                found = {slot, (row.*o.member).value()};
            ++slot;
        });
        return found;
    }

    void assign(std::vector<R> rows)
    {
        m_rows = std::move(rows);
        std::sort(m_rows.begin(), m_rows.end(), before);
        m_byId.clear();
        m_byId.reserve(m_rows.size());
        if constexpr (KeyedRecord<R>) {
            m_byKey.clear();
            m_byKey.reserve(static_cast<qsizetype>(m_rows.size()));
        }
        indexFrom(0);
    }

    void put(R row)
    {
        std::size_t from = m_rows.size();
        const auto it = m_byId.find(row.id.value());
        if (it != m_byId.end()) {
            const std::size_t at = it->second;
            R &old = m_rows[at];
            if (!before(old, row) && !before(row, old)) {
                old = std::move(row);
                return;
            }
            forget(at);
            from = at;
        }
        const auto place = std::upper_bound(m_rows.begin(), m_rows.end(), row, before);
        from = std::min(from, static_cast<std::size_t>(place - m_rows.begin()));
        m_rows.insert(place, std::move(row));
        indexFrom(from);
    }

    void erase(Id<R> id)
    {
        const auto it = m_byId.find(id.value());
        if (it == m_byId.end())
            return;
        const std::size_t at = it->second;
        forget(at);
        indexFrom(at);
    }

    bool operator==(const Table &o) const { return m_rows == o.m_rows; }

private:
    template <class Owner>
    static constexpr int ownerSlot()
    {
        int slot = 0;
        int found = -1;
        forEachOwner<R>([&]<class O>(const OwnerField<R, O> &) {
            if constexpr (std::is_same_v<O, Owner>)
                found = slot;
            ++slot;
        });
        return found;
    }

    static bool before(const R &a, const R &b)
    {
        if constexpr (OwnedRecord<R>)
            return std::tuple(ownerOf(a), a.position, a.id) <
                   std::tuple(ownerOf(b), b.position, b.id);
        else if constexpr (KeyedRecord<R>)
            return a.key < b.key;
        else
            return a.id < b.id;
    }

    void forget(std::size_t at)
    {
        m_byId.erase(m_rows[at].id.value());
        if constexpr (KeyedRecord<R>)
            m_byKey.remove(m_rows[at].key);
        m_rows.erase(m_rows.begin() + static_cast<std::ptrdiff_t>(at));
    }

    void indexFrom(std::size_t from)
    {
        for (std::size_t i = from; i < m_rows.size(); ++i) {
            m_byId.insert_or_assign(m_rows[i].id.value(), i);
            if constexpr (KeyedRecord<R>)
                m_byKey.insert(m_rows[i].key, i);
        }
    }

    struct Empty
    {};
    std::vector<R> m_rows;
    std::unordered_map<std::int64_t, std::size_t> m_byId;
    std::conditional_t<KeyedRecord<R>, QHash<QString, std::size_t>, Empty> m_byKey;
};

} // namespace ohmwright
