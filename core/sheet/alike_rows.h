// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of a table that say the same of several like things ("Module 1" to "Module 9") as one, so
// that a pack of nine modules does not fill a page nine times over.
#pragma once

#include <QHash>
#include <QRegularExpression>
#include <QString>

#include <vector>

namespace ohmwright::sections {

// A text with its numbers taken out: "Module 3, row 12" and "Module 4, row 7" are the same.
inline QString withoutNumbers(const QString &text)
{
    static const QRegularExpression kNumbers(QStringLiteral("\\d+"));
    QString shape = text;
    return shape.replace(kNumbers, QStringLiteral("#"));
}

template <class Row>
struct Alike
{
    const Row *first = nullptr;
    const Row *last = nullptr;
    int count = 1;
};

// In the order of the first of each. Rows of one key are joined from three on: two are read as
// quickly as the remark that there is another. The rows must outlive what is given back.
template <class Row, class KeyOf>
std::vector<Alike<Row>> joinAlike(const std::vector<Row> &rows, KeyOf keyOf)
{
    constexpr int kFewest = 3;
    QHash<QString, int> counts;
    std::vector<QString> keys;
    keys.reserve(rows.size());
    for (const Row &row : rows) {
        keys.push_back(keyOf(row));
        ++counts[keys.back()];
    }
    std::vector<Alike<Row>> joined;
    QHash<QString, std::size_t> places;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto place = places.constFind(keys[i]);
        if (counts[keys[i]] >= kFewest && place != places.constEnd()) {
            joined[*place].last = &rows[i];
            ++joined[*place].count;
            continue;
        }
        places.insert(keys[i], joined.size());
        joined.push_back({&rows[i], &rows[i], 1});
    }
    return joined;
}

} // namespace ohmwright::sections
