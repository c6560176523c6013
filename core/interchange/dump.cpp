// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/interchange.h"
#include "core/interchange/nesting.h"
#include "core/quantity/dates.h"
#include "core/quantity/invariant.h"

#include <nlohmann/json.hpp>

namespace ohmwright {

using Json = nlohmann::ordered_json;

namespace {

class Writer
{
public:
    explicit Writer(const Records &records) : m_records(records) {}

    Json document() const
    {
        Json document = {{"format", "ohmwright"}, {"version", kInterchangeVersion}};
        forEachKind([&]<class R>() {
            const char *name = RecordTraits<R>::plural;
            if constexpr (SingleRecord<R>)
                document[name] = record(m_records.all<R>().rows().front());
            else if constexpr (!OwnedRecord<R>)
                addArray(document, name, m_records.all<R>());
        });
        return document;
    }

private:
    template <class Rows>
    void addArray(Json &holder, const char *name, const Rows &rows) const
    {
        if (rows.begin() == rows.end())
            return;
        Json array = Json::array();
        for (const auto &row : rows)
            array.push_back(record(row));
        holder.emplace(name, std::move(array));
    }

    template <class R>
    Json record(const R &row) const
    {
        Json object = Json::object();
        forEachField<R>([&](const auto &f) {
            if (!canBeLeftOut(f) || says(row.*f.member))
                object.emplace(f.name, value(row.*f.member));
        });
        forEachNested<R>([&]<class Owned>(const auto &o) {
            addArray(object, o.array, m_records.of<Owned>(row.id));
        });
        return object;
    }

    static bool says(const QString &text) { return !text.isEmpty(); }
    template <class T>
    static bool says(const std::optional<T> &optional)
    {
        return optional.has_value();
    }
    template <class T>
    static bool says(const T & /*always*/)
    {
        return true;
    }

    static Json value(const QString &text) { return text.toStdString(); }
    static Json value(bool flag) { return flag; }
    static Json value(int number) { return number; }
    static Json value(QDate date) { return value(printDate(date)); }
    static Json value(const Amount &amount) { return value(printAmount(amount)); }
    static Json value(Money money) { return value(printMoney(money)); }
    static Json value(const Rate &rate) { return value(rate.print()); }
    static Json value(Currency currency) { return value(currency.code()); }
    template <WordedEnum E>
    static Json value(E word)
    {
        return value(wordOf(word));
    }
    template <class R>
    Json value(Id<R> id) const
    {
        const R *row = m_records.find(id);
        require(row != nullptr, "a reference leads to a record");
        return value(row->key);
    }
    template <class T>
    Json value(const std::optional<T> &optional) const
    {
        return value(*optional);
    }

    const Records &m_records;
};

} // namespace

QByteArray dump(const Records &records)
{
    const std::string text = Writer(records).document().dump(2);
    return QByteArray(text.data(), static_cast<qsizetype>(text.size())) + '\n';
}

} // namespace ohmwright
