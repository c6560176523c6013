// SPDX-License-Identifier: GPL-3.0-or-later
// How each field type lies in columns: names, bind, read. Walks a record's field list.
#pragma once

#include "core/book/statement.h"
#include "core/quantity/amount.h"
#include "core/quantity/dates.h"
#include "core/quantity/money.h"
#include "core/records/field.h"

#include <QByteArrayList>

namespace ohmwright {

// Reads and binds columns from left to right. A value the CHECKs should have kept out marks the
// row as damaged rather than being guessed at.
class RowCursor
{
public:
    RowCursor(Statement &statement, int first) : m_statement(statement), m_at(first) {}
    Statement &statement() { return m_statement; }
    int next() { return m_at++; }
    void markDamaged() { m_damaged = true; }
    [[nodiscard]] bool damaged() const { return m_damaged; }

private:
    Statement &m_statement;
    int m_at;
    bool m_damaged = false;
};

template <class T>
struct Column;

template <>
struct Column<QString>
{
    static QByteArrayList names(const QByteArray &name) { return {name}; }
    static void bind(RowCursor &c, const QString &v)
    {
        // a null QString would bind as NULL, and every text column is NOT NULL
        c.statement().bind(c.next(), v.isNull() ? QStringLiteral("") : v);
    }
    static QString read(RowCursor &c) { return c.statement().text(c.next()); }
};

template <>
struct Column<bool>
{
    static QByteArrayList names(const QByteArray &name) { return {name}; }
    static void bind(RowCursor &c, bool v) { c.statement().bind(c.next(), std::int64_t{v}); }
    static bool read(RowCursor &c) { return c.statement().integer(c.next()) != 0; }
};

template <>
struct Column<int>
{
    static QByteArrayList names(const QByteArray &name) { return {name}; }
    static void bind(RowCursor &c, int v) { c.statement().bind(c.next(), std::int64_t{v}); }
    static int read(RowCursor &c) { return static_cast<int>(c.statement().integer(c.next())); }
};

template <>
struct Column<QDate>
{
    static QByteArrayList names(const QByteArray &name) { return {name}; }
    static void bind(RowCursor &c, QDate v) { c.statement().bind(c.next(), printDate(v)); }
    static QDate read(RowCursor &c)
    {
        const Result<QDate> date = parseIsoDate(c.statement().text(c.next()));
        if (!date)
            c.markDamaged();
        return date.value_or(QDate());
    }
};

template <>
struct Column<Currency>
{
    static QByteArrayList names(const QByteArray &name) { return {name}; }
    static void bind(RowCursor &c, Currency v) { c.statement().bind(c.next(), v.code()); }
    static Currency read(RowCursor &c)
    {
        const auto currency = Currency::fromCode(c.statement().text(c.next()));
        if (!currency)
            c.markDamaged();
        return currency.value_or(Currency());
    }
};

template <>
struct Column<Rate>
{
    static QByteArrayList names(const QByteArray &name) { return {name}; }
    static void bind(RowCursor &c, const Rate &v) { c.statement().bind(c.next(), v.print()); }
    static Rate read(RowCursor &c)
    {
        const Result<Rate> rate =
            Rate::parse(c.statement().text(c.next()), NumberStyle::pointDecimal());
        if (!rate)
            c.markDamaged();
        return rate.value_or(Rate());
    }
};

template <>
struct Column<Money>
{
    static QByteArrayList names(const QByteArray &name)
    {
        return {name + "_minor", name + "_currency"};
    }
    static void bind(RowCursor &c, Money v)
    {
        c.statement().bind(c.next(), v.minor());
        Column<Currency>::bind(c, v.currency());
    }
    static Money read(RowCursor &c)
    {
        const std::int64_t minor = c.statement().integer(c.next());
        return {minor, Column<Currency>::read(c)};
    }
};

template <>
struct Column<Amount>
{
    static QByteArrayList names(const QByteArray &name)
    {
        return {name + "_number", name + "_unit"};
    }
    static void bind(RowCursor &c, const Amount &v)
    {
        c.statement().bind(c.next(), v.number());
        c.statement().bind(c.next(), v.unit().symbol());
    }
    static Amount read(RowCursor &c)
    {
        const double number = c.statement().real(c.next());
        const auto unit = Unit::fromSymbol(c.statement().text(c.next()));
        if (!unit)
            c.markDamaged();
        return {number, unit.value_or(Unit())};
    }
};

template <WordedEnum E>
struct Column<E>
{
    static QByteArrayList names(const QByteArray &name) { return {name}; }
    static void bind(RowCursor &c, E v) { c.statement().bind(c.next(), wordOf(v)); }
    static E read(RowCursor &c)
    {
        const std::optional<E> value = fromWord<E>(c.statement().text(c.next()));
        if (!value)
            c.markDamaged();
        return value.value_or(E{});
    }
};

template <class R>
struct Column<Id<R>>
{
    static QByteArrayList names(const QByteArray &name) { return {name + "_id"}; }
    static void bind(RowCursor &c, Id<R> v) { c.statement().bind(c.next(), v.value()); }
    static Id<R> read(RowCursor &c) { return Id<R>(c.statement().integer(c.next())); }
};

template <class T>
struct Column<std::optional<T>>
{
    static QByteArrayList names(const QByteArray &name) { return Column<T>::names(name); }
    static void bind(RowCursor &c, const std::optional<T> &v)
    {
        if (v) {
            Column<T>::bind(c, *v);
            return;
        }
        for (qsizetype i = names("").size(); i > 0; --i)
            c.statement().bindNull(c.next());
    }
    static std::optional<T> read(RowCursor &c)
    {
        RowCursor peek = c;
        if (peek.statement().isNull(peek.next())) {
            for (qsizetype i = names("").size(); i > 0; --i)
                c.next();
            return std::nullopt;
        }
        return Column<T>::read(c);
    }
};

// id, owners and position where there are any, then the fields.
template <class R>
QByteArrayList columnsOf()
{
    QByteArrayList columns{"id"};
    if constexpr (OwnedRecord<R>) {
        forEachOwner<R>([&](const auto &o) { columns << o.column; });
        columns << "position";
    }
    forEachField<R>([&]<class T>(const Field<R, T> &f) { columns << Column<T>::names(f.name); });
    return columns;
}

template <class R>
void bindRow(Statement &statement, const R &row)
{
    RowCursor c(statement, 1);
    statement.bind(c.next(), row.id.value());
    if constexpr (OwnedRecord<R>) {
        forEachOwner<R>([&](const auto &o) {
            const auto id = row.*o.member;
            if (id.isSet())
                statement.bind(c.next(), id.value());
            else
                statement.bindNull(c.next());
        });
        statement.bind(c.next(), std::int64_t{row.position});
    }
    forEachField<R>([&]<class T>(const Field<R, T> &f) { Column<T>::bind(c, row.*f.member); });
}

template <class R>
Result<R> readRow(Statement &statement)
{
    R row;
    RowCursor c(statement, 0);
    row.id = Id<R>(statement.integer(c.next()));
    if constexpr (OwnedRecord<R>) {
        forEachOwner<R>([&]<class O>(const OwnerField<R, O> &o) {
            row.*o.member = Id<O>(statement.integer(c.next()));
        });
        row.position = static_cast<int>(statement.integer(c.next()));
    }
    forEachField<R>([&]<class T>(const Field<R, T> &f) { row.*f.member = Column<T>::read(c); });
    if (c.damaged())
        return fail(ProblemCode::Damaged,
                    QStringLiteral("The book is damaged: a %1 cannot be read.")
                        .arg(QLatin1String(RecordTraits<R>::table)));
    return row;
}

} // namespace ohmwright
