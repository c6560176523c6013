// SPDX-License-Identifier: GPL-3.0-or-later
// PartsIndex: what the Parts table shows and searches of each part beyond the part itself, worked
// out once and kept current change by change, so that typing in the filter never waits.
//
// arrange() is the table's filter, order and grouping: plain values in, rows of ids out.
#pragma once

#include "core/book/book.h"
#include "core/parts/deadlines.h"
#include "core/parts/questions.h"

#include <QDate>
#include <QString>

#include <array>
#include <optional>
#include <set>
#include <unordered_map>
#include <vector>

namespace ohmwright::ui {

struct PartFacts
{
    QString haystack; // lower case: everything a person may look for
    QString sortName;
    QString secondLine; // donor, serial, seller
    QString assembly;   // the outermost one it sits in; empty when it sits in none
    QString assemblyKey;
    bool highVoltage = false;
    std::optional<Money> cost; // book's currency
    int questions = 0;
    std::optional<Deadline> deadline; // the soonest that may still be used

    // What of the part itself bears on costs, questions and assemblies, its own or other parts'.
    struct Bearing
    {
        QString key, name;
        std::optional<Id<Part>> partOf;
        std::optional<Id<PartType>> type;
        std::optional<Id<PurchaseItem>> bought;
        PartKind kind = PartKind::Unit;
        bool gone = false;
        bool operator==(const Bearing &) const = default;
    };
    Bearing bearing;
};

enum class PartColumn { Name, State, Assembly, HighVoltage, Cost, Questions, Deadline, Place };
inline constexpr int kPartColumns = 8;

enum class PartGrouping { None, State, Assembly };

struct PartFilter
{
    QString text;               // words, all of which must be found
    std::set<PartState> states; // empty: all
    std::optional<PartKind> kind;
    PartGrouping grouping = PartGrouping::None;
    PartColumn sortBy = PartColumn::Name;
    bool descending = false;
};

// A part, or the heading of a group.
struct PartRow
{
    Id<Part> part; // not set: a heading
    QString heading;
    int count = 0; // of the group
    bool operator==(const PartRow &) const = default;
};

struct Arrangement
{
    std::vector<PartRow> rows;
    int parts = 0;
    // By state, of what text and kind let through.
    std::array<int, EnumWords<PartState>::words.size()> perState{};
};

class PartsIndex
{
public:
    PartsIndex(const Records &records, QDate today);

    void rebuild(QDate today);
    void update(const Change &change, QDate today);
    void setAskedByChecks(std::vector<Question> questions);
    [[nodiscard]] const PartFacts &of(Id<Part> part) const;
    [[nodiscard]] Arrangement arrange(const PartFilter &filter) const;

private:
    void readOne(const Part &part);
    // One pass over the book each, so only when something they are made of has changed.
    void readCosts();
    void readAssemblies();
    void readQuestions();

    const Records &m_records;
    QDate m_today;
    std::vector<Question> m_askedByChecks;
    std::unordered_map<Id<Part>, PartFacts> m_facts;
    // All by name, so that what the filter lets through need not be sorted at each letter typed.
    struct Named
    {
        Id<Part> part;
        const PartFacts *facts = nullptr;
    };
    void sortByName();
    std::vector<Named> m_byName;
};

} // namespace ohmwright::ui
