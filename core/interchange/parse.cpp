// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/document.h"
#include "core/interchange/interchange.h"
#include "core/interchange/nesting.h"
#include "core/interchange/parsed.h"
#include "core/interchange/text_forms.h"
#include "core/interchange/value_reader.h"
#include "core/parts/consistency.h"
#include "core/records/rules.h"

#include <QCoreApplication>
#include <QHash>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <span>
#include <string_view>
#include <tuple>
#include <vector>

namespace ohmwright {

using Json = nlohmann::ordered_json;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Interchange", text);
}

const Json *memberOf(const Json &object, const char *name)
{
    const auto it = object.find(name);
    return it == object.end() ? nullptr : &*it;
}

// Two sweeps: the first gives every keyed record its id, so that the second can follow a reference
// to a record that stands further down.
class Reader
{
public:
    Reader(const Json &document, const IdSource &nextId) : m_document(document), m_nextId(nextId) {}

    Result<Parsed> run()
    {
        if (checkHead() && checkMembers()) {
            nameAll();
            readAll();
        }
        if (!m_values.ok())
            return fail(m_values.problem());
        Parsed parsed;
        for (const Attachment &a : rowsOf<Attachment>())
            parsed.attachmentKeys << a.key;
        Records &records = parsed.records;
        forEachKind([&]<class R>() { records.all<R>().assign(std::move(rowsOf<R>())); });
        const std::vector<Inconsistency> found = findInconsistencies(records);
        if (!found.empty())
            return fail(problemOf(found.front(), records));
        return parsed;
    }

private:
    template <class R>
    struct Named
    {
        Id<R> id;
        const Json *record = nullptr; // that has the key first
    };
    template <class... R>
    using NamesOf = std::tuple<QHash<QString, Named<R>>...>;
    template <class... R>
    using RowsOf = std::tuple<std::vector<R>...>;

    template <class R>
    QHash<QString, Named<R>> &namesOf()
    {
        return std::get<QHash<QString, Named<R>>>(m_names);
    }
    template <class R>
    std::vector<R> &rowsOf()
    {
        return std::get<std::vector<R>>(m_rows);
    }

    bool checkHead()
    {
        const Place root;
        if (!m_values.expectObject(m_document, root))
            return false;
        const QString notOurs = tr("This is JSON, but not the interchange of an Ohmwright book.");
        const QString startsWith =
            tr("Such a file starts with \"format\": \"ohmwright\" and \"version\": 1.");
        const Json *format = memberOf(m_document, "format");
        if (!format)
            return m_values.refuse(root, notOurs, startsWith);
        if (*format != "ohmwright")
            return m_values.refuse(Place(root, "format"), notOurs, startsWith);
        const Json *version = memberOf(m_document, "version");
        if (!version)
            return m_values.refuse(root, tr("The “version” of the interchange is missing."));
        const Place at(root, "version");
        int number = 0;
        if (!m_values.read(*version, at, number) || number == kInterchangeVersion)
            return m_values.ok();
        if (number > kInterchangeVersion)
            return m_values.refuse(
                {ProblemCode::NewerBook,
                 tr("This file is of version %1 of the interchange; this Ohmwright reads "
                    "version %2.")
                     .arg(number)
                     .arg(kInterchangeVersion),
                 tr("Install the newer version of Ohmwright to load it."), at.pointer()});
        return m_values.refuse(at, tr("There is no version %1 of the interchange.").arg(number));
    }

    bool checkMembers()
    {
        std::vector<std::string_view> names{"format", "version"};
        forEachKind([&]<class R>() {
            if constexpr (!OwnedRecord<R>)
                names.emplace_back(RecordTraits<R>::plural);
        });
        std::vector<const Json *> members(names.size());
        return matchMembers(m_document, Place(), names, members);
    }

    bool refuseUnknown(const Place &at, const std::string &name)
    {
        return m_values.refuse({ProblemCode::BadInput,
                                tr("There is no field %1 here.").arg(forms::quoted(textOf(name))),
                                tr("Correct its name, or leave it out."),
                                at.pointer() + pointerStep(name)});
    }

    template <class R>
    void name(const Json &record)
    {
        const Json *key = record.is_object() ? memberOf(record, "key") : nullptr;
        if (!key || !key->is_string())
            return; // the second sweep tells
        const auto &text = key->get_ref<const std::string &>();
        Named<R> &named = namesOf<R>()[textOf(text)];
        if (!named.record)
            named = {Id<R>(m_nextId()), &record};
    }

    void nameAll()
    {
        forEachKind([&]<class R>() {
            if constexpr (KeyedRecord<R> && !OwnedRecord<R>) {
                const Json *array = memberOf(m_document, RecordTraits<R>::plural);
                if (!array || !array->is_array())
                    return;
                for (const Json &record : *array) {
                    name<R>(record);
                    nameNested<R>(record);
                }
            }
        });
    }

    template <class Owner>
    void nameNested(const Json &owner)
    {
        forEachNested<Owner>([&]<class R>(const auto &o) {
            if constexpr (KeyedRecord<R>) {
                const Json *array = owner.is_object() ? memberOf(owner, o.array) : nullptr;
                if (!array || !array->is_array())
                    return;
                for (const Json &record : *array)
                    name<R>(record);
            }
        });
    }

    void readAll()
    {
        const Place root;
        forEachKind([&]<class R>() {
            if constexpr (SingleRecord<R>)
                readSingle<R>(root);
            else if constexpr (!OwnedRecord<R>)
                readArray<R>(memberOf(m_document, RecordTraits<R>::plural),
                             Place(root, RecordTraits<R>::plural), [](R &, int) {});
        });
    }

    template <class R>
    void readSingle(const Place &root)
    {
        if (!m_values.ok())
            return;
        const Json *value = memberOf(m_document, RecordTraits<R>::plural);
        if (!value) {
            m_values.refuse(root, missing(RecordTraits<R>::plural));
            return;
        }
        R row;
        row.id = Id<R>(1);
        readRecord(*value, Place(root, RecordTraits<R>::plural), std::move(row));
    }

    // `place` gives each row what its place in the array says about it.
    template <class R, class PlaceRow>
    void readArray(const Json *array, const Place &at, const PlaceRow &place)
    {
        if (!array || !m_values.ok() || !m_values.expectArray(*array, at))
            return;
        for (std::size_t i = 0; i < array->size() && m_values.ok(); ++i) {
            R row;
            place(row, static_cast<int>(i));
            readRecord((*array)[i], Place(at, i), std::move(row));
        }
    }

    template <class R>
    void readRecord(const Json &value, const Place &at, R row)
    {
        static constexpr auto kNames = memberNames<R>();
        std::array<const Json *, kNames.size()> members{};
        if (!matchMembers(value, at, kNames, members))
            return;
        std::size_t i = 0;
        forEachField<R>([&](const auto &f) { readField(members[i++], at, f, row); });
        if (!m_values.ok() || !giveId(value, at, row))
            return;
        if (Outcome fine = checkRecord(row); !fine) {
            refuseAt(value, at, fine.error());
            return;
        }
        const Id<R> id = row.id;
        rowsOf<R>().push_back(std::move(row));
        forEachNested<R>([&]<class Owned>(const auto &o) {
            readArray<Owned>(members[i++], Place(at, o.array), [&](Owned &owned, int position) {
                owned.*o.member = id;
                owned.position = position;
            });
        });
    }

    // Sorts the members of an object by the names there are; refuses one that has none.
    bool matchMembers(const Json &object, const Place &at, std::span<const std::string_view> names,
                      std::span<const Json *> members)
    {
        if (!m_values.expectObject(object, at))
            return false;
        for (auto it = object.begin(); it != object.end(); ++it) {
            const auto name = std::find(names.begin(), names.end(), it.key());
            if (name == names.end())
                return refuseUnknown(at, it.key());
            members[static_cast<std::size_t>(name - names.begin())] = &it.value();
        }
        return true;
    }

    template <class R, class T>
    void readField(const Json *value, const Place &at, const Field<R, T> &f, R &row)
    {
        static_assert(!std::is_same_v<T, std::optional<QString>>, "an unknown text is empty");
        if (!m_values.ok())
            return;
        if (value)
            read(*value, Place(at, f.name), row.*f.member);
        else if (!canBeLeftOut(f))
            m_values.refuse(at, missing(f.name));
    }

    template <class T>
    void read(const Json &value, const Place &at, T &into)
    {
        m_values.read(value, at, into);
    }

    template <class T>
    void read(const Json &value, const Place &at, std::optional<T> &into)
    {
        read(value, at, into.emplace());
    }

    template <class R>
    void read(const Json &value, const Place &at, Id<R> &into)
    {
        QString key;
        if (!m_values.read(value, at, key))
            return;
        const auto it = namesOf<R>().constFind(key);
        if (it != namesOf<R>().constEnd())
            into = it->id;
        else
            m_values.refuse({ProblemCode::NotFound,
                             tr("There is no %1 among the %2 of this file.")
                                 .arg(forms::quoted(key), QLatin1String(RecordTraits<R>::plural)),
                             tr("Correct the key, or add what it refers to."), at.pointer()});
    }

    template <class R>
    bool giveId(const Json &value, const Place &at, R &row)
    {
        if constexpr (SingleRecord<R>) {
            return true;
        } else if constexpr (KeyedRecord<R>) {
            const Named<R> named = namesOf<R>().value(row.key);
            if (named.record != &value)
                return m_values.refuse(
                    {ProblemCode::Conflict,
                     tr("The key %1 is given twice among the %2.")
                         .arg(forms::quoted(row.key), QLatin1String(RecordTraits<R>::plural)),
                     tr("Give one of the two another key."), Place(at, "key").pointer()});
            row.id = named.id;
            return true;
        } else {
            row.id = Id<R>(m_nextId());
            return true;
        }
    }

    static QString missing(const char *name)
    {
        return tr("%1 is missing here.").arg(forms::quoted(QString::fromLatin1(name)));
    }

    // A record's own rule names a field: the place of its value, or the record's if it has none.
    void refuseAt(const Json &record, const Place &at, Problem problem)
    {
        const QByteArray field = problem.where.toLatin1();
        const bool there = !field.isEmpty() && memberOf(record, field.constData());
        problem.where = (there ? Place(at, field.constData()) : at).pointer();
        m_values.refuse(std::move(problem));
    }

    Problem problemOf(const Inconsistency &found, const Records &records)
    {
        Problem problem{ProblemCode::NotAllowed,
                        found.sentence,
                        tr("Correct the document there, or the book it came from, and load again."),
                        {}};
        forEachKind([&]<class R>() {
            if (found.table != RecordTraits<R>::table)
                return;
            if (const R *row = records.find(Id<R>(found.id))) {
                const auto [record, where] = standsAt(*row, records);
                problem.where = where;
                if (memberOf(*record, found.field.c_str()))
                    problem.where += pointerStep(found.field);
                if (const QString name = nameOf(*row, records); !name.isEmpty())
                    problem.sentence = tr("%1: %2").arg(name, found.sentence);
            }
        });
        return problem;
    }

    // What a person knows the record by: "part “inverter”", "move 2 of part “inverter”".
    template <class R>
    QString nameOf(const R &row, const Records &records)
    {
        const QString kind = QString::fromLatin1(RecordTraits<R>::table).replace(u'_', u' ');
        QString name;
        if constexpr (KeyedRecord<R>) {
            name = tr("%1 “%2”").arg(kind, row.key);
        } else if constexpr (OwnedRecord<R>) {
            forEachOwner<R>([&](const auto &o) {
                if (const auto *owner = records.find(row.*o.member))
                    name = tr("%1 %2 of %3")
                               .arg(kind)
                               .arg(row.position + 1)
                               .arg(nameOf(*owner, records));
            });
        }
        return name;
    }

    template <class R>
    std::pair<const Json *, QString> standsAt(const R &row, const Records &records)
    {
        const char *plural = RecordTraits<R>::plural;
        std::pair<const Json *, QString> found{&m_document, QString()};
        if constexpr (SingleRecord<R>) {
            found = {memberOf(m_document, plural), pointerStep(plural)};
        } else if constexpr (OwnedRecord<R>) {
            forEachOwner<R>([&](const auto &o) {
                if (const auto *owner = records.find(row.*o.member)) {
                    const auto [holder, where] = standsAt(*owner, records);
                    const Json &array = *memberOf(*holder, o.array);
                    found = {&array[static_cast<std::size_t>(row.position)],
                             where + pointerStep(o.array) + u'/' + QString::number(row.position)};
                }
            });
        } else {
            const Json *record = namesOf<R>().value(row.key).record;
            const Json &array = *memberOf(m_document, plural);
            found = {record, pointerStep(plural) + u'/' + QString::number(record - &array[0])};
        }
        return found;
    }

    const Json &m_document;
    const IdSource &m_nextId;
    ValueReader m_values;
    EachRecord<NamesOf> m_names;
    EachRecord<RowsOf> m_rows;
};

} // namespace

Result<Parsed> parseForFiles(const QByteArray &json, const IdSource &nextId)
{
    const Result<Json> document = readDocument(json);
    if (!document)
        return fail(document.error());
    return Reader(*document, nextId).run();
}

Result<Records> parse(const QByteArray &json, const IdSource &nextId)
{
    Result<Parsed> parsed = parseForFiles(json, nextId);
    if (!parsed)
        return fail(parsed.error());
    return std::move(parsed->records);
}

} // namespace ohmwright
