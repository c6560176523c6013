// SPDX-License-Identifier: GPL-3.0-or-later
// RecordKind for one record type, from its field list. Instantiated once, in record_kind.cpp.
#pragma once

#include "core/cards/completing.h"
#include "core/cards/field_text.h"
#include "core/cards/record_kind.h"
#include "core/cards/record_names.h"
#include "core/cards/references.h"
#include "core/parts/consistency.h"
#include "core/parts/keys.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright {

namespace cards {

inline QString tr(const char *text)
{
    return QCoreApplication::translate("Cards", text);
}

template <class T>
struct Bare
{
    using Type = T;
};
template <class T>
struct Bare<std::optional<T>>
{
    using Type = T;
};
template <class T>
using BareType = typename Bare<T>::Type;

template <class T>
struct Referred
{
    static constexpr bool is = false;
};
template <class R>
struct Referred<Id<R>>
{
    static constexpr bool is = true;
    using Record = R;
};

template <class T>
constexpr FieldForm formOf()
{
    if constexpr (std::is_same_v<T, bool>)
        return FieldForm::YesNo;
    else if constexpr (std::is_same_v<T, int>)
        return FieldForm::Whole;
    else if constexpr (std::is_same_v<T, QDate>)
        return FieldForm::Date;
    else if constexpr (std::is_same_v<T, Amount>)
        return FieldForm::Amount;
    else if constexpr (std::is_same_v<T, Money>)
        return FieldForm::Money;
    else if constexpr (std::is_same_v<T, Rate>)
        return FieldForm::Rate;
    else if constexpr (std::is_same_v<T, Currency>)
        return FieldForm::Currency;
    else if constexpr (Referred<T>::is)
        return FieldForm::Reference;
    else if constexpr (WordedEnum<T>)
        return FieldForm::Choice;
    else
        return FieldForm::Line;
}

// A name alone makes one of these.
template <class R>
constexpr bool kMadeFromName = std::is_same_v<R, Seller>;

inline constexpr QChar kNew = QLatin1Char('+');

} // namespace cards

template <class R>
class RecordKindOf final : public RecordKind
{
public:
    RecordKindOf()
    {
        m_table = RecordTraits<R>::table;
        m_single = SingleRecord<R>;
        forEachField<R>([&]<class T>(const Field<R, T> &f) { m_fields.push_back(factsOf(f)); });
        if constexpr (OwnedRecord<R>)
            forEachOwner<R>([&]<class H>(const OwnerField<R, H> &) {
                m_holders.emplace_back(RecordTraits<H>::table);
            });
    }

    std::vector<std::int64_t> ids(const Records &records) const override
    {
        std::vector<std::int64_t> found;
        for (const R &row : records.all<R>())
            found.push_back(row.id.value());
        return found;
    }

    bool has(const Records &records, std::int64_t id) const override
    {
        return records.find(Id<R>(id));
    }

    QString name(const Records &records, std::int64_t id) const override
    {
        const R *row = records.find(Id<R>(id));
        return row ? recordName(records, *row) : QString();
    }

    QString key(const Records &records, std::int64_t id) const override
    {
        if constexpr (KeyedRecord<R>)
            if (const R *row = records.find(Id<R>(id)))
                return row->key;
        return {};
    }

    std::optional<std::int64_t> idOf(const Records &records, const QString &key) const override
    {
        if constexpr (KeyedRecord<R>)
            if (const R *row = records.byKey<R>(key))
                return row->id.value();
        return std::nullopt;
    }

    std::optional<RecordRef> holder(const Records &records, std::int64_t id) const override
    {
        std::optional<RecordRef> found;
        if constexpr (OwnedRecord<R>)
            if (const R *row = records.find(Id<R>(id)))
                forEachOwner<R>([&]<class H>(const OwnerField<R, H> &o) {
                    if (const H *in = records.find(row->*o.member))
                        found = {RecordTraits<H>::table, in->id.value(), recordName(records, *in)};
                });
        return found;
    }

    std::optional<FieldTexts> texts(const Records &records, std::int64_t id) const override
    {
        const R *row = records.find(Id<R>(id));
        return row ? std::optional(textsOf(records, *row)) : std::nullopt;
    }

    FieldTexts blank(const Records &records, QDate today) const override
    {
        FieldTexts texts = textsOf(records, begun(records, today, std::nullopt));
        // what is not known yet is not shown as a sum of nothing, nor as a rate of one
        for (const FieldFacts &f : m_fields)
            if (f.form == FieldForm::Money || f.form == FieldForm::Rate)
                texts[f.name].clear();
        return texts;
    }

    Result<std::int64_t> save(Book &book, std::optional<std::int64_t> id, const FieldTexts &changed,
                              const std::optional<RecordRef> &in) const override
    {
        const QDate today = book.clock().today();
        const R *there = id ? book.records().find(Id<R>(*id)) : nullptr;
        if (id && !there)
            return fail(gone());
        R row = there ? *there : begun(book.records(), today, in);
        // read once outside the edit: what cannot be read makes no step, and the step has its name
        if (const Outcome read = write(nullptr, book.records(), today, changed, row); !read)
            return fail(read.error());
        const QString called = calledNew(book.records(), changed, row);
        const auto before = findInconsistencies(book.records());
        Result<std::int64_t> saved = row.id.value();
        const Outcome done = book.edit(stepName(there, called), [&]() -> Outcome {
            if (Outcome written = write(&book, book.records(), today, changed, row); !written)
                return written;
            align(book.records(), row);
            if (Outcome whole = completing::finish(book.records(), today, changed, row); !whole)
                return whole;
            if (Outcome put = store(book, there != nullptr, row); !put)
                return put;
            saved = row.id.value();
            if (Outcome followed = completing::follow(book, row); !followed)
                return followed;
            return agree(before, findInconsistencies(book.records()), row);
        });
        if (!done)
            return fail(done.error());
        return saved;
    }

    std::vector<RecordRef> referring(const Records &records, std::int64_t id) const override
    {
        return referringTo(records, withAllItHolds(records, {m_table, id}));
    }

    Outcome remove(Book &book, std::int64_t id) const override
    {
        if (!has(book.records(), id))
            return fail(gone());
        const QString called = name(book.records(), id);
        if (m_single)
            return fail(ProblemCode::NotAllowed, cards::tr("Every book has its %1.").arg(word()));
        if (const auto who = referring(book.records(), id); !who.empty())
            return fail(ProblemCode::NotAllowed,
                        cards::tr("“%1” is still named by %2.").arg(called, listed(who)),
                        cards::tr("Name another one there first."));
        const std::set<RecordPlace> all = withAllItHolds(book.records(), {m_table, id});
        return book.edit(cards::tr("Remove the %1 “%2”").arg(word(), called),
                         [&]() -> Outcome { return removeAll(book, all); });
    }

private:
    template <class T>
    static FieldFacts factsOf(const Field<R, T> &f)
    {
        using Value = cards::BareType<T>;
        FieldFacts facts;
        facts.name = QString::fromLatin1(f.name);
        facts.form = cards::formOf<Value>();
        facts.required = f.presence == Presence::Required;
        if (const auto note = fieldNote(RecordTraits<R>::table, f.name))
            facts.bounds = note->bounds;
        facts.known = knownWords(RecordTraits<R>::table, f.name);
        if constexpr (WordedEnum<Value>)
            for (const char *one : EnumWords<Value>::words)
                facts.words << QString::fromLatin1(one);
        if constexpr (cards::Referred<Value>::is) {
            using Record = typename cards::Referred<Value>::Record;
            facts.refersTo = RecordTraits<Record>::table;
            facts.makesNew = cards::kMadeFromName<Record>;
        }
        return facts;
    }

    [[nodiscard]] Problem gone() const
    {
        return {ProblemCode::NotFound,
                cards::tr("This %1 is no longer in the book.").arg(word()),
                {},
                {}};
    }

    [[nodiscard]] QString stepName(bool there, const QString &called) const
    {
        if (m_single)
            return cards::tr("Change the %1").arg(word());
        return (there ? cards::tr("Change the %1 “%2”") : cards::tr("Add the %1 “%2”"))
            .arg(word(), called);
    }

    static R begun(const Records &records, QDate today, const std::optional<RecordRef> &in)
    {
        R row;
        if constexpr (OwnedRecord<R>)
            forEachOwner<R>([&]<class H>(const OwnerField<R, H> &o) {
                if (!in || in->table != RecordTraits<H>::table)
                    return;
                row.*o.member = Id<H>(in->id);
                const auto beside = records.of<R>(Id<H>(in->id));
                row.position = beside.empty() ? 0 : beside.back().position + 1;
            });
        forEachField<R>([&]<class T>(const Field<R, T> &f) {
            if constexpr (std::is_same_v<T, Currency>)
                row.*f.member = records.build().currency;
            else if constexpr (std::is_same_v<T, QDate>)
                row.*f.member = today;
        });
        forEachField<R>([&]<class T>(const Field<R, T> &f) {
            if constexpr (std::is_same_v<T, Money>)
                row.*f.member = Money::zero(completing::moneyCurrency(records, row));
        });
        completing::begin(records, today, row);
        return row;
    }

    static FieldTexts textsOf(const Records &records, const R &row)
    {
        FieldTexts texts;
        forEachField<R>([&]<class T>(const Field<R, T> &f) {
            texts[QString::fromLatin1(f.name)] = textOf(records, row.*f.member);
        });
        return texts;
    }

    template <class T>
    static QString textOf(const Records &records, const T &value)
    {
        if constexpr (cards::Referred<T>::is) {
            const auto *found = records.find(value);
            return found ? found->key : QString();
        } else {
            return fieldtext::print(value);
        }
    }
    template <class T>
    static QString textOf(const Records &records, const std::optional<T> &value)
    {
        return value ? textOf(records, *value) : QString();
    }

    // In the field list's order, so that a record's currency stands before its sums. Without a book
    // nothing new is made: a reference to what is not there yet is passed over.
    Outcome write(Book *book, const Records &records, QDate today, const FieldTexts &changed,
                  R &row) const
    {
        Outcome result;
        forEachField<R>([&]<class T>(const Field<R, T> &f) {
            const QString fieldName = QString::fromLatin1(f.name);
            const auto typed = changed.find(fieldName);
            if (!result || typed == changed.end())
                return;
            fieldtext::Reading with{today, {}, completing::moneyCurrency(records, row)};
            if (const FieldFacts *facts = field(fieldName))
                with.measure = facts->bounds.measure;
            result = writeOne(book, records, typed->second.trimmed(), with, row.*f.member);
            if (!result && result.error().where.isEmpty()) {
                Problem problem = result.error();
                problem.where = fieldName;
                result = fail(problem);
            }
        });
        return result;
    }

    template <class T>
    static Outcome writeOne(Book *book, const Records &records, const QString &text,
                            const fieldtext::Reading &with, T &into)
    {
        if constexpr (cards::Referred<T>::is) {
            return refer(book, records, text, into);
        } else {
            if constexpr (std::is_same_v<T, Money>)
                if (text.isEmpty()) {
                    into = Money::zero(with.currency);
                    return {};
                }
            if constexpr (!std::is_same_v<T, QString> && !std::is_same_v<T, bool>)
                if (text.isEmpty())
                    return fail(ProblemCode::BadInput, cards::tr("This is needed."));
            return fieldtext::read(text, with, into);
        }
    }
    template <class T>
    static Outcome writeOne(Book *book, const Records &records, const QString &text,
                            const fieldtext::Reading &with, std::optional<T> &into)
    {
        if (text.isEmpty()) {
            into.reset();
            return {};
        }
        T value{};
        if (Outcome read = writeOne(book, records, text, with, value); !read)
            return read;
        into = value;
        return {};
    }

    template <class O>
    static Outcome refer(Book *book, const Records &records, const QString &text, Id<O> &into)
    {
        if (text.isEmpty())
            return fail(ProblemCode::BadInput, cards::tr("This is needed."),
                        cards::tr("Pick one of those in the book."));
        if constexpr (cards::kMadeFromName<O>)
            if (text.startsWith(cards::kNew)) {
                if (!book)
                    return {};
                O made;
                made.name = text.mid(1).trimmed();
                made.key = freshKey<O>(records, made.name);
                const auto id = book->insert(made);
                if (!id)
                    return fail(id.error().code, id.error().sentence, id.error().whatToDo);
                into = *id;
                return {};
            }
        if constexpr (KeyedRecord<O>)
            if (const O *found = records.byKey<O>(text)) {
                into = found->id;
                return {};
            }
        return fail(ProblemCode::NotFound, cards::tr("There is no “%1” in the book.").arg(text),
                    cards::tr("Pick one of those it has."));
    }

    // The name it will have, also when what names it is only made within the edit.
    static QString calledNew(const Records &records, const FieldTexts &changed, const R &row)
    {
        QString called = recordName(records, row);
        if constexpr (std::is_same_v<R, Purchase>)
            if (const auto typed = changed.find(QStringLiteral("seller"));
                typed != changed.end() && typed->second.startsWith(cards::kNew))
                called = typed->second.mid(1) + called.mid(called.indexOf(u','));
        return called;
    }

    // A sum of nothing has the currency of its record.
    static void align(const Records &records, R &row)
    {
        forEachField<R>([&]<class T>(const Field<R, T> &f) {
            if constexpr (std::is_same_v<T, Money>)
                if ((row.*f.member).isZero())
                    row.*f.member = Money::zero(completing::moneyCurrency(records, row));
        });
    }

    static Outcome store(Book &book, bool there, R &row)
    {
        if (there)
            return book.update(row);
        if constexpr (KeyedRecord<R>)
            row.key = freshKey<R>(book.records(), recordName(book.records(), row));
        const Result<Id<R>> made = book.insert(row);
        if (!made)
            return fail(made.error());
        row.id = *made;
        return {};
    }

    static Outcome agree(const std::vector<Inconsistency> &before,
                         const std::vector<Inconsistency> &after, const R &row)
    {
        for (const Inconsistency &one : after) {
            if (std::find(before.begin(), before.end(), one) != before.end())
                continue;
            const bool here = one.table == RecordTraits<R>::table && one.id == row.id.value();
            return fail(ProblemCode::NotAllowed, one.sentence, {},
                        here ? QString::fromStdString(one.field) : QString());
        }
        return {};
    }

    static Outcome removeAll(Book &book, const std::set<RecordPlace> &all)
    {
        Outcome result;
        // what is to go is gathered first: the tables change under the removals
        book.records().forEachTable([&]<class O>(const Table<O> &table) {
            std::vector<Id<O>> going;
            for (const O &row : table)
                if (all.contains({RecordTraits<O>::table, row.id.value()}))
                    going.push_back(row.id);
            for (const Id<O> id : going)
                if (result)
                    result = book.remove(id);
        });
        return result;
    }
};

} // namespace ohmwright
