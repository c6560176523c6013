// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/schema.h"

#include "core/interchange/field_notes.h"
#include "core/interchange/interchange.h"
#include "core/interchange/nesting.h"
#include "core/interchange/record_conditions.h"
#include "core/interchange/text_forms.h"
#include "core/quantity/invariant.h"

#include <QStringList>

#include <limits>
#include <nlohmann/json.hpp>
#include <string>

namespace ohmwright {

using Json = nlohmann::ordered_json;

namespace {

constexpr const char *kText = "text";
constexpr const char *kRequiredText = "required_text";
constexpr const char *kKey = "key";
constexpr const char *kDate = "date";
constexpr const char *kAnyAmount = "amount";
constexpr const char *kMoney = "money";
constexpr const char *kRate = "rate";
constexpr const char *kCurrency = "currency";
constexpr int kLongestText = 20000; // as in core/records/rules.cpp

Json textForm(const QString &pattern, const std::string &description)
{
    Json schema = {{"description", description}, {"type", "string"}};
    schema.update(wholePattern(pattern));
    return schema;
}

// A definition of its own, narrowed to what has no minus sign.
Json notNegative(Json schema)
{
    schema["pattern"] = "^[^-]";
    return schema;
}

// The schema of one field by its type.
class FieldSchema
{
public:
    FieldSchema(const FieldBounds &bounds, Presence presence, bool isKey)
        : m_bounds(bounds), m_presence(presence), m_isKey(isKey)
    {}

    template <class T>
    Json of() const
    {
        return make(static_cast<const T *>(nullptr));
    }

private:
    // by pointer to the type, for overloading without a value
    Json make(const QString *) const
    {
        if (m_isKey)
            return refTo(kKey);
        return refTo(m_presence == Presence::Required ? kRequiredText : kText);
    }
    Json make(const bool *) const { return {{"type", "boolean"}}; }
    Json make(const int *) const
    {
        return {{"type", "integer"},
                {"minimum", m_bounds.least.value_or(std::numeric_limits<int>::min())},
                {"maximum", m_bounds.most.value_or(std::numeric_limits<int>::max())}};
    }
    Json make(const QDate *) const { return refTo(kDate); }
    Json make(const Amount *) const
    {
        const Json schema =
            refTo(m_bounds.measure ? measureDefinition(*m_bounds.measure) : kAnyAmount);
        return m_bounds.notNegative ? notNegative(schema) : schema;
    }
    Json make(const Money *) const
    {
        return m_bounds.notNegative ? notNegative(refTo(kMoney)) : refTo(kMoney);
    }
    Json make(const Rate *) const { return refTo(kRate); }
    Json make(const Currency *) const { return refTo(kCurrency); }
    template <WordedEnum E>
    Json make(const E *) const
    {
        Json words = Json::array();
        for (const char *word : EnumWords<E>::words)
            words.push_back(word);
        return {{"enum", std::move(words)}};
    }
    template <class R>
    Json make(const Id<R> *) const
    {
        return refTo(kKey);
    }
    template <class T>
    Json make(const std::optional<T> *) const
    {
        return of<T>();
    }

    FieldBounds m_bounds;
    Presence m_presence;
    bool m_isKey;
};

std::string sv(std::string_view text)
{
    return std::string(text);
}

template <class R>
Json arrayOf()
{
    return {{"type", "array"}, {"items", refTo(RecordTraits<R>::table)}};
}

// A part's life starts somewhere, and each later move starts somewhere too.
Json movesOfPart()
{
    const Json from = {{"required", Json::array({"from_state"})}};
    Json schema = arrayOf<PartMove>();
    schema["minItems"] = 1;
    schema["prefixItems"] = Json::array({Json{
        {"allOf", Json::array({refTo(RecordTraits<PartMove>::table), Json{{"not", from}}})}}});
    schema["items"] = {{"allOf", Json::array({refTo(RecordTraits<PartMove>::table), from})}};
    return schema;
}

template <class R>
Json recordSchema()
{
    const auto about = recordNote(RecordTraits<R>::table);
    require(about.has_value(), "every record has its note");
    Json properties = Json::object();
    Json required = Json::array();
    forEachField<R>([&]<class T>(const Field<R, T> &f) {
        const auto note = fieldNote(RecordTraits<R>::table, f.name);
        require(note.has_value(), "every field has its note");
        Json schema = {{"description", sv(note->text)}};
        const bool isKey = KeyedRecord<R> && std::string_view(f.name) == "key";
        schema.update(FieldSchema(note->bounds, f.presence, isKey).template of<T>());
        properties[f.name] = std::move(schema);
        if (!canBeLeftOut(f))
            required.push_back(f.name);
    });
    forEachNested<R>([&]<class Owned>(const auto &o) {
        properties[o.array] = arrayOf<Owned>();
        if constexpr (std::is_same_v<Owned, PartMove>) {
            properties[o.array] = movesOfPart();
            required.push_back(o.array);
        }
    });
    Json schema = {{"title", sv(about->title)},
                   {"description", sv(about->text)},
                   {"type", "object"},
                   {"properties", std::move(properties)}};
    if (!required.empty())
        schema["required"] = std::move(required);
    schema["additionalProperties"] = false;
    if (Json conditions = recordConditions(RecordTraits<R>::table); !conditions.empty())
        schema["allOf"] = std::move(conditions);
    return schema;
}

std::string howToGive(Measure measure)
{
    if (measure == Measure::Count)
        return "A number of pieces, without a unit.";
    QStringList symbols;
    for (const Unit &unit : Unit::ofMeasure(measure))
        symbols << unit.symbol();
    return "A number, a space and a unit of " + measureName(measure).toStdString() + ": " +
           symbols.join(QLatin1String(", ")).toStdString() + ".";
}

Json definitions()
{
    Json defs = Json::object();
    forEachKind([&]<class R>() { defs[RecordTraits<R>::table] = recordSchema<R>(); });

    const std::string ink = forms::inkPattern().toStdString();
    defs[kText] = {{"description", "Any text; empty says the same as leaving it out."},
                   {"type", "string"},
                   {"maxLength", kLongestText},
                   {"pattern", "^[^\\u0000]*$"}};
    defs[kRequiredText] = {{"description", "A text with something other than spaces in it."},
                           {"type", "string"},
                           {"maxLength", kLongestText},
                           {"pattern", "^[^\\u0000]*$"},
                           {"allOf", Json::array({Json{{"pattern", ink}}})}};
    defs[kKey] = textForm(forms::keyPattern(),
                          "What names a record among its kind: 1 to 80 lower-case letters, digits "
                          "and - . / _, starting with a letter or digit.");
    defs[kDate] = textForm(forms::datePattern(), "A day, ISO 8601, in 1900 to 2199.");
    defs[kDate]["format"] = "date";
    defs[kMoney] = textForm(forms::moneyPattern(),
                            "A sum and its ISO 4217 currency, with at most the currency's decimals "
                            "and at most 10^15 of its smallest unit: 1250.00 EUR.");
    defs[kRate] =
        textForm(forms::ratePattern(),
                 "An exchange rate as an exact decimal, more than 0, of at most 15 digits "
                 "that count and 12 decimals: 1.0842.");
    Json codes = Json::array();
    for (const Currency &currency : Currency::all())
        codes.push_back(currency.code().toStdString());
    defs[kCurrency] = {{"description", "An ISO 4217 currency code."}, {"enum", std::move(codes)}};
    defs[kAnyAmount] =
        textForm(forms::anyAmountPattern(),
                 "A number, a space and a unit: 403 V. A number alone is a count of pieces.");
    for (const UnitInfo &unit : Unit::all()) {
        const std::string name = measureDefinition(unit.measure);
        if (!defs.contains(name)) // the table is in order of measure
            defs[name] = textForm(forms::amountPattern(unit.measure), howToGive(unit.measure));
    }
    return defs;
}

} // namespace

QByteArray schema()
{
    Json properties = {
        {"format", {{"description", "Tells this format from others."}, {"const", "ohmwright"}}},
        {"version",
         {{"description", "Of the format."}, {"type", "integer"}, {"const", kInterchangeVersion}}}};
    Json required = Json::array({"format", "version"});
    forEachKind([&]<class R>() {
        const char *name = RecordTraits<R>::plural;
        if constexpr (SingleRecord<R>) {
            properties[name] = refTo(RecordTraits<R>::table);
            required.push_back(name);
        } else if constexpr (!OwnedRecord<R>) {
            properties[name] = arrayOf<R>();
        }
    });
    const Json document = {
        {"$schema", "https://json-schema.org/draft/2020-12/schema"},
        {"title", "Ohmwright interchange, version " + std::to_string(kInterchangeVersion)},
        {"description",
         "Everything a book says about one build. Records with a key are referred to by it; what "
         "is "
         "not known is left out, never null; attachments are files named by their SHA-256 in the "
         "folder NAME.attachments beside NAME.json. A reader of books holds documents to more than "
         "a schema can say: keys given once, references that lead somewhere, one currency within a "
         "purchase, lives of parts that follow on, no loops, attachments that are what their hash "
         "says."},
        {"type", "object"},
        {"properties", std::move(properties)},
        {"required", std::move(required)},
        {"additionalProperties", false},
        {"$defs", definitions()}};
    return QByteArray::fromStdString(document.dump(2)) + '\n';
}

} // namespace ohmwright
