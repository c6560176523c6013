// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/interchange.h"
#include "core/interchange/json_writer.h"
#include "core/interchange/nesting.h"
#include "core/quantity/dates.h"
#include "core/quantity/invariant.h"

namespace ohmwright {

namespace {

class Writer
{
public:
    explicit Writer(const Records &records) : m_records(records) {}

    QByteArray run()
    {
        m_json.openObject();
        write("format", QStringLiteral("ohmwright"));
        write("version", kInterchangeVersion);
        forEachKind([&]<class R>() {
            const char *name = RecordTraits<R>::plural;
            if constexpr (SingleRecord<R>) {
                m_json.name(name);
                writeRecord(m_records.all<R>().rows().front());
            } else if constexpr (!OwnedRecord<R>) {
                writeArray(name, m_records.all<R>());
            }
        });
        m_json.closeObject();
        return m_json.take();
    }

private:
    template <class T>
    void write(const char *name, const T &value)
    {
        m_json.name(name);
        writeValue(value);
    }

    template <class Rows>
    void writeArray(const char *name, const Rows &rows)
    {
        if (rows.begin() == rows.end())
            return;
        m_json.name(name);
        m_json.openArray();
        for (const auto &row : rows)
            writeRecord(row);
        m_json.closeArray();
    }

    template <class R>
    void writeRecord(const R &row)
    {
        m_json.openObject();
        forEachField<R>([&](const auto &f) {
            if (!canBeLeftOut(f) || says(row.*f.member))
                write(f.name, row.*f.member);
        });
        forEachNested<R>(
            [&]<class Owned>(const auto &o) { writeArray(o.array, m_records.of<Owned>(row.id)); });
        m_json.closeObject();
    }

    void writeValue(const QString &text) { m_json.text(text); }
    void writeValue(bool flag) { m_json.flag(flag); }
    void writeValue(int number) { m_json.number(number); }
    void writeValue(QDate date) { m_json.text(printDate(date)); }
    void writeValue(const Amount &amount) { m_json.text(printAmount(amount)); }
    void writeValue(const Money &money) { m_json.text(printMoney(money)); }
    void writeValue(const Rate &rate) { m_json.text(rate.print()); }
    void writeValue(const Currency &currency) { m_json.text(currency.code()); }
    template <WordedEnum E>
    void writeValue(E word)
    {
        m_json.text(wordOf(word));
    }
    template <class R>
    void writeValue(Id<R> id)
    {
        const R *row = m_records.find(id);
        require(row != nullptr, "a reference leads to a record");
        m_json.text(row->key);
    }
    template <class T>
    void writeValue(const std::optional<T> &value)
    {
        writeValue(*value);
    }

    static bool says(const QString &text) { return !text.isEmpty(); }
    template <class T>
    static bool says(const std::optional<T> &value)
    {
        return value.has_value();
    }
    template <class T>
    static bool says(const T & /*always*/)
    {
        return true;
    }

    const Records &m_records;
    JsonWriter m_json;
};

} // namespace

QByteArray dump(const Records &records)
{
    return Writer(records).run();
}

} // namespace ohmwright
