// SPDX-License-Identifier: GPL-3.0-or-later
// The records of one kind as rows to choose from: name, and below it what its card lists. Choices
// stand under headings, which are rows that cannot be chosen.
#pragma once

#include "core/cards/record_kind.h"
#include "ui/cards/choice_words.h"
#include "ui/widgets/pick_or_new.h"

#include <QAbstractTableModel>

#include <vector>

namespace ohmwright::ui {

// The listed fields of one record: "dismantler, Harbour Road". A reference by its name.
QString detailOf(const Records &records, const RecordKind &kind, std::int64_t id);
// All of a kind, for picking one.
std::vector<KnownName> knownOf(const Records &records, const RecordKind &kind);

class RecordList : public QAbstractTableModel
{
    Q_OBJECT

public:
    explicit RecordList(const RecordKind &kind, QObject *parent = nullptr);

    struct Which
    {
        QString text;                    // every word of it occurs
        std::optional<RecordRef> holder; // only those it holds
        QString within;                  // field that names the holder; empty for owned records
        QDate today;                     // for what only holds on its day
    };
    void read(const Records &records, const Which &which);

    // 0 for no such row, and for a heading; -1 for no such record.
    [[nodiscard]] std::int64_t idAt(int row) const;
    [[nodiscard]] int rowOf(std::int64_t id) const;
    [[nodiscard]] int recordCount() const; // without headings
    // The next record from that row on, or the last before it; 0 for none.
    [[nodiscard]] std::int64_t firstFrom(int row) const;
    [[nodiscard]] int outOf() const { return m_outOf; } // before the text was looked for

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex &index) const override;

private:
    struct Row
    {
        std::int64_t id;
        QString name, detail;
        RecordGroup group;
        bool operator==(const Row &) const = default;
    };
    static void addHeadings(std::vector<Row> &rows);

    const RecordKind &m_kind;
    std::vector<Row> m_rows;
    int m_outOf = 0;
};

} // namespace ohmwright::ui
