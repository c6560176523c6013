// SPDX-License-Identifier: GPL-3.0-or-later
// RecordKind: any kind of record as a card shows it, made from the record's field list, so that a
// form needs to know no record type. Values stand as text, as a person reads and types them.
//
//     const RecordKind *donors = recordKind("donor");
//     donors->texts(records, id)                    // {"make": "Sample", "year": "2018", …}
//     donors->save(book, id, {{"year", "2019"}})    // one edit, "Change the donor “Sample …”"
//
// Nothing here knows the window: labels are the window's, ranges and rules are the record's own.
#pragma once

#include "core/book/book.h"
#include "core/cards/known_words.h"
#include "core/interchange/field_notes.h"

#include <QString>
#include <QStringList>

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ohmwright {

enum class FieldForm {
    Line, // also a longer text: the window decides
    YesNo,
    Choice,
    Whole,
    Date,
    Amount,
    Money,
    Rate,
    Currency,
    Reference,
};

struct FieldFacts
{
    QString name; // as in the field list
    FieldForm form = FieldForm::Line;
    bool required = false;
    FieldBounds bounds;           // as the interchange tells them
    QStringList words;            // of a choice, in the enum's order
    std::string refersTo;         // table of a reference
    std::vector<KnownWord> known; // of a text that only takes what the program knows by name
    // The reference may name one that is not there yet, as "+Name": it is made with the record.
    bool makesNew = false;
};

// By field name. Dates as "1 Mar 2026", amounts and money as they are printed, yes or no, a
// choice's word, a reference's key; empty for none.
using FieldTexts = std::map<QString, QString>;

// A record named from outside.
struct RecordRef
{
    std::string table;
    std::int64_t id = 0;
    QString name;
};

class RecordKind
{
public:
    virtual ~RecordKind() = default;

    [[nodiscard]] const std::string &table() const { return m_table; }
    [[nodiscard]] const std::vector<FieldFacts> &fields() const { return m_fields; }
    [[nodiscard]] const FieldFacts *field(const QString &name) const;
    [[nodiscard]] bool isSingle() const { return m_single; }
    // Tables that can hold such a record nested; empty for one that stands on its own.
    [[nodiscard]] const std::vector<std::string> &holders() const { return m_holders; }
    // One of them in a sentence: "seller", "lost function".
    [[nodiscard]] QString word() const;

    // In reading order.
    [[nodiscard]] virtual std::vector<std::int64_t> ids(const Records &records) const = 0;
    [[nodiscard]] virtual bool has(const Records &records, std::int64_t id) const = 0;
    // What a person calls it; empty when it is not there.
    [[nodiscard]] virtual QString name(const Records &records, std::int64_t id) const = 0;
    [[nodiscard]] virtual QString key(const Records &records, std::int64_t id) const = 0;
    [[nodiscard]] virtual std::optional<std::int64_t> idOf(const Records &records,
                                                           const QString &key) const = 0;
    // Of an owned record, whose it is.
    [[nodiscard]] virtual std::optional<RecordRef> holder(const Records &records,
                                                          std::int64_t id) const = 0;
    [[nodiscard]] virtual std::optional<FieldTexts> texts(const Records &records,
                                                          std::int64_t id) const = 0;
    // What a new one starts with.
    [[nodiscard]] virtual FieldTexts blank(const Records &records, QDate today) const = 0;

    // One edit. `changed` holds the fields to write, the others keep what the book has. Without an
    // id a record is made, with a key from its name; an owned one goes last into its holder `in`.
    // Refused as a Problem whose `where` is the field at fault: text that cannot be read, the
    // record's own rules, and whatever would no longer agree with other records.
    virtual Result<std::int64_t> save(Book &book, std::optional<std::int64_t> id,
                                      const FieldTexts &changed,
                                      const std::optional<RecordRef> &in = {}) const = 0;

    // Who refers to it or to what it holds, each record once; of nested ones their holder.
    [[nodiscard]] virtual std::vector<RecordRef> referring(const Records &records,
                                                           std::int64_t id) const = 0;
    // With what it holds, in one edit. NotAllowed, saying who, while anything refers to it.
    virtual Outcome remove(Book &book, std::int64_t id) const = 0;

protected:
    std::string m_table;
    std::vector<FieldFacts> m_fields;
    std::vector<std::string> m_holders;
    bool m_single = false;
};

// By table name; null for none.
const RecordKind *recordKind(std::string_view table);
// In EachRecord's order.
std::vector<const RecordKind *> recordKinds();

} // namespace ohmwright
