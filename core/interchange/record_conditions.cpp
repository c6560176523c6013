// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/record_conditions.h"

#include "core/interchange/text_forms.h"
#include "core/records/check_figures.h"
#include "core/records/records.h"
#include "core/records/thresholds.h"

#include <algorithm>
#include <initializer_list>
#include <nlohmann/json.hpp>

namespace ohmwright {

using Json = nlohmann::ordered_json;

namespace {

using Names = std::initializer_list<const char *>;

template <WordedEnum E>
std::string word(E value)
{
    return EnumWords<E>::words.at(static_cast<std::size_t>(value));
}

Json required(Names names)
{
    Json list = Json::array();
    for (const char *name : names)
        list.push_back(name);
    return {{"required", std::move(list)}};
}

Json is(const char *field, const Json &value)
{
    return {{"properties", {{field, {{"const", value}}}}}};
}

Json isOneOf(const char *field, const Json &values)
{
    return {{"properties", {{field, {{"enum", values}}}}}};
}

Json says(const char *field) // a text that is there and is not empty
{
    Json schema = required({field});
    schema["properties"] = {{field, {{"minLength", 1}}}};
    return schema;
}

Json absent(Names names)
{
    Json properties = Json::object();
    for (const char *name : names)
        properties[name] = false;
    return {{"properties", std::move(properties)}};
}

Json both(Json a, const Json &b)
{
    for (const auto &[name, value] : b.items()) {
        if (a.contains(name) && value.is_object())
            a[name].update(value);
        else
            a[name] = value;
    }
    return a;
}

Json when(Json condition, Json then)
{
    return {{"if", std::move(condition)}, {"then", std::move(then)}};
}

Json whenElse(Json condition, Json then, Json otherwise)
{
    Json schema = when(std::move(condition), std::move(then));
    schema["else"] = std::move(otherwise);
    return schema;
}

Json measureOfField(const char *field, Measure measure)
{
    return {{"properties", {{field, refTo(measureDefinition(measure))}}}};
}

// Two amounts, where both are there, measure the same.
Json sameMeasure(const char *one, const char *other)
{
    Json choices = Json::array();
    for (const UnitInfo &unit : Unit::all()) {
        const Json choice =
            both(measureOfField(one, unit.measure), measureOfField(other, unit.measure));
        if (choices.empty() || choices.back() != choice) // the table is in order of measure
            choices.push_back(choice);
    }
    return when(required({one, other}), {{"anyOf", std::move(choices)}});
}

Json ofPart()
{
    Json opened = required({"opened_because"});
    opened["properties"] = {{"opened_because", {{"pattern", forms::inkPattern().toStdString()}}}};
    return Json::array(
        {when(required({"opened_on"}), std::move(opened)), sameMeasure("stock", "least_stock")});
}

Json ofRating()
{
    const auto &quantities = EnumWords<RatedQuantity>::words;
    Json list = Json::array();
    for (std::size_t i = 0; i < quantities.size(); ++i)
        list.push_back(when(is("quantity", quantities[i]),
                            measureOfField("value", measureOf(static_cast<RatedQuantity>(i)))));
    const Json nominal = is("basis", word(RatingBasis::Nominal));
    list.push_back(whenElse(is("kind", word(RatingKind::Actual)), nominal, {{"not", nominal}}));
    list.push_back(when(required({"duration"}), is("basis", word(RatingBasis::Peak))));
    list.push_back(when(is("settled", true), required({"value"})));
    return list;
}

Json ofTask()
{
    return Json::array(
        {whenElse(is("state", word(TaskState::Done)), required({"done_on"}), absent({"done_on"})),
         when(is("milestone", false), absent({"fixed_on", "target_on"}))});
}

// Which of a need's fields go with its kind.
Json ofNeed()
{
    struct Rule
    {
        NeedKind kind;
        Json required;
        Names allowed;
    };
    const Json words = Json::array({word(PartState::Ordered), word(PartState::InHand),
                                    word(PartState::Tested), word(PartState::Fitted)});
    const Json someService = {{"anyOf", Json::array({required({"part"}), says("what")})}};
    const Json somePermit = whenElse(required({"permit"}), absent({"met_on"}), says("what"));
    // every field belongs to the kinds that allow it; the rest must be absent
    const Rule rules[] = {
        {NeedKind::Task, required({"after"}), {"after"}},
        {NeedKind::Part,
         both(required({"part"}), isOneOf("state", words)),
         {"part", "state", "each_time"}},
        {NeedKind::Figure, required({"part", "quantity"}), {"part", "quantity", "basis"}},
        {NeedKind::Tool, required({"part"}), {"part", "state"}},
        {NeedKind::Consumable, required({"part", "amount"}), {"part", "amount"}},
        {NeedKind::Money, both(says("what"), required({"money", "what"})), {"money", "met_on"}},
        {NeedKind::Service, someService, {"part", "met_on", "each_time"}},
        {NeedKind::Test, required({"test"}), {"test"}},
        {NeedKind::Letter, required({"letter"}), {"letter", "each_time"}},
        {NeedKind::Person, says("what"), {"met_on"}},
        {NeedKind::Permit, somePermit, {"permit", "met_on"}},
        {NeedKind::Interface, required({"interface"}), {"interface"}},
    };
    const Names all{"after", "part",   "state",     "quantity", "basis",  "amount",   "money",
                    "test",  "letter", "interface", "permit",   "met_on", "each_time"};
    Json list = Json::array();
    for (const Rule &rule : rules) {
        Json others = Json::object();
        for (const char *name : all)
            if (std::find(rule.allowed.begin(), rule.allowed.end(), std::string_view(name)) ==
                rule.allowed.end())
                others[name] = false;
        list.push_back(when(is("kind", word(rule.kind)),
                            both(rule.required, {{"properties", std::move(others)}})));
    }
    return list;
}

Json timeOfDay(const char *field)
{
    return {{"properties", {{field, wholePattern("|" + forms::timeOfDayPattern())}}}};
}

Json ofWorkEntry()
{
    return Json::array(
        {timeOfDay("started"), {{"anyOf", {required({"minutes"}), says("started")}}}});
}

Json ofLetter()
{
    return Json::array({whenElse(is("state", word(LetterState::ToAsk)), absent({"asked_on"}),
                                 required({"asked_on"}))});
}

Json ofTest()
{
    return Json::array({whenElse(is("result", word(TestResult::Open)), true, required({"done_on"})),
                        sameMeasure("limit_value", "value")});
}

// Exactly one of them is told.
Json oneOf(Names names)
{
    Json choices = Json::array();
    for (const char *name : names)
        choices.push_back(required({name}));
    return {{"oneOf", std::move(choices)}};
}

// Which figures there are, what each is a figure of, and what it is measured in.
Json ofCheckFigure()
{
    Json names = Json::array();
    Json list = Json::array();
    const Names subjects{"circuit", "branch", "part", "type", "test"};
    for (const FigureInfo &figure : checkFigures()) {
        names.push_back(std::string(figure.name));
        Json then = Json::object();
        Json properties = Json::object();
        const auto isOf = [&](FigureOf of) {
            return figure.of == of;
        };
        for (const char *subject : subjects) {
            const std::string_view name = subject;
            const bool may = (isOf(FigureOf::Circuit) && name == "circuit") ||
                             (isOf(FigureOf::Branch) && name == "branch") ||
                             (isOf(FigureOf::Part) && (name == "part" || name == "type")) ||
                             (isOf(FigureOf::Test) && name == "test");
            if (!may)
                properties[subject] = false;
        }
        if (isOf(FigureOf::Circuit))
            then = required({"circuit"});
        else if (isOf(FigureOf::Branch))
            then = required({"branch"});
        else if (isOf(FigureOf::Part))
            then = oneOf({"part", "type"});
        else if (isOf(FigureOf::Test))
            then = required({"test"});
        if (figure.measure) {
            properties["value"] = refTo(measureDefinition(*figure.measure));
            properties["word"] = {{"const", ""}};
        } else {
            properties["value"] = false;
            Json words = Json::array({""});
            for (const QString &one : wordsOf(figure))
                words.push_back(one.toStdString());
            properties["word"] = {{"enum", std::move(words)}};
        }
        then["properties"] = std::move(properties);
        list.push_back(when(is("figure", std::string(figure.name)), std::move(then)));
    }
    list.push_back(isOneOf("figure", names));
    return list;
}

Json ofOwnThreshold()
{
    Json names = Json::array();
    Json list = Json::array();
    for (const ThresholdInfo &threshold : knownThresholds()) {
        names.push_back(std::string(threshold.name));
        list.push_back(when(is("name", std::string(threshold.name)),
                            measureOfField("value", threshold.measure)));
    }
    list.push_back(isOneOf("name", names));
    return list;
}

Json ofInterface()
{
    const Json sum = {
        {"properties", {{"parameter_sha256", wholePattern("|" + forms::sha256Pattern())}}}};
    return Json::array(
        {sum, when(is("state", word(InterfaceState::Talks)), required({"talked_on"}))});
}

Json ofAttachment()
{
    const Json noBytes = {{"properties", {{"sha256", {{"const", ""}}}}}};
    Json bytes = required({"sha256"});
    bytes["properties"] = {{"sha256", wholePattern(forms::sha256Pattern())}};
    Json list = Json::array({whenElse(is("kind", word(AttachmentKind::Link)),
                                      both(says("url"), noBytes), std::move(bytes))});
    // it belongs to one thing at most
    const Names owners{"part", "type", "donor", "purchase", "task", "test", "letter"};
    list.push_back(when(is("of_vehicle", true), absent(owners)));
    for (const auto *one = owners.begin(); one != owners.end(); ++one) {
        Json others = Json::object();
        for (const auto *other = one + 1; other != owners.end(); ++other)
            others[*other] = false;
        if (!others.empty())
            list.push_back(when(required({*one}), {{"properties", std::move(others)}}));
    }
    return list;
}

} // namespace

Json recordConditions(std::string_view table)
{
    if (table == RecordTraits<Part>::table)
        return ofPart();
    if (table == RecordTraits<Rating>::table)
        return ofRating();
    if (table == RecordTraits<Task>::table)
        return ofTask();
    if (table == RecordTraits<TaskNeed>::table)
        return ofNeed();
    if (table == RecordTraits<WorkingTime>::table)
        return Json::array({timeOfDay("starts")});
    if (table == RecordTraits<WorkEntry>::table)
        return ofWorkEntry();
    if (table == RecordTraits<Letter>::table)
        return ofLetter();
    if (table == RecordTraits<TestRecord>::table)
        return ofTest();
    if (table == RecordTraits<Attachment>::table)
        return ofAttachment();
    if (table == RecordTraits<CheckFigure>::table)
        return ofCheckFigure();
    if (table == RecordTraits<RatedCurve>::table)
        return Json::array({oneOf({"part", "type"})});
    if (table == RecordTraits<OwnThreshold>::table)
        return ofOwnThreshold();
    if (table == RecordTraits<Interface>::table)
        return ofInterface();
    if (table == RecordTraits<SafetySystem>::table)
        return Json::array({when(is("state", word(SafetyState::Proven)), required({"test"}))});
    if (table == RecordTraits<WorkPermit>::table)
        return Json::array({when(required({"absence_reading"}), required({"absence_proven_on"}))});
    return Json::array();
}

std::string measureDefinition(Measure measure)
{
    return measureName(measure).replace(u' ', u'_').toStdString();
}

Json refTo(const std::string &definition)
{
    return {{"$ref", "#/$defs/" + definition}};
}

Json wholePattern(const QString &pattern)
{
    return {{"pattern", "^(?:" + pattern.toStdString() + ")$"}};
}

} // namespace ohmwright
