// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/forecast/records_copy.h"

#include <QThreadPool>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr std::size_t kRowsAtOnce = 200; // between two looks at the clock

} // namespace

bool RecordsCopy::step(const Records &from, std::chrono::microseconds atMost)
{
    const auto until = std::chrono::steady_clock::now() + atMost;
    std::size_t place = 0;
    bool more = true;
    from.forEachTable([&]<class R>(const Table<R> &table) {
        if (place++ != m_table || !more)
            return;
        auto &rows = std::get<std::vector<R>>(m_rows);
        rows.reserve(table.size());
        while (rows.size() < table.size() && more) {
            const auto first = table.begin() + static_cast<std::ptrdiff_t>(rows.size());
            const std::size_t count = std::min(kRowsAtOnce, table.size() - rows.size());
            rows.insert(rows.end(), first, first + static_cast<std::ptrdiff_t>(count));
            more = std::chrono::steady_clock::now() < until;
        }
        if (rows.size() == table.size())
            ++m_table;
    });
    return m_table == std::tuple_size_v<EachRecord<Rows>>;
}

std::shared_ptr<const Records> RecordsCopy::take()
{
    auto *records = new Records;
    records->forEachTable([&]<class R>(Table<R> &table) {
        table.assign(std::move(std::get<std::vector<R>>(m_rows)));
    });
    *this = RecordsCopy();
    return {records, [](const Records *done) {
                QThreadPool::globalInstance()->start([done] { delete done; });
            }};
}

} // namespace ohmwright::ui
