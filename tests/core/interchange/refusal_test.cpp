// SPDX-License-Identifier: GPL-3.0-or-later
// What the loader refuses, with the place it points at.
#include "core/interchange/interchange.h"
#include "tests/core/interchange/counting_ids.h"

#include <gtest/gtest.h>

#include <string>

namespace ohmwright {
namespace {

const char *const kHead = R"("format": "ohmwright", "version": 1)";
const char *const kBuild =
    R"("build": {"title": "Van", "currency": "EUR", "hours_per_week": 6,
        "contingency_percent": 10})";

// A whole document with these members beside the ones it must have.
QByteArray with(const QByteArray &members)
{
    return QByteArray("{") + kHead + ", " + kBuild + R"(, "vehicle": {})" +
           (members.isEmpty() ? "" : ", ") + members + "}";
}

QByteArray withSeller(const QByteArray &members)
{
    return with(R"("sellers": [{"key": "yard", "name": "Yard", "kind": "dismantler")" +
                (members.isEmpty() ? QByteArray() : QByteArray(", " + members)) + "}]");
}

QByteArray withPart(const QByteArray &members)
{
    return with(R"("parts": [{"key": "inverter", "name": "Inverter", "kind": "unit", "state":
        "in hand", "counted_to": "build", "moves": [{"to_state": "in hand", "moved_on":
        "2026-01-01"}])" +
                (members.isEmpty() ? QByteArray() : QByteArray(", " + members)) + "}]");
}

struct Refusal
{
    const char *name;
    QByteArray document;
    ProblemCode code;
    std::string where;
    const char *sentence; // a part of it
};

void PrintTo(const Refusal &refusal, std::ostream *out)
{
    *out << refusal.name;
}

class Refused : public testing::TestWithParam<Refusal>
{};

TEST_P(Refused, withOneSentenceAndItsPlace)
{
    const Refusal &refusal = GetParam();
    const Result<Records> read = parse(refusal.document, countingIds());
    ASSERT_FALSE(read);
    const Problem &problem = read.error();
    EXPECT_EQ(problem.code, refusal.code);
    EXPECT_EQ(problem.where.toStdString(), refusal.where);
    EXPECT_TRUE(problem.sentence.contains(QString::fromUtf8(refusal.sentence)))
        << problem.sentence.toStdString();
    EXPECT_TRUE(problem.sentence.endsWith(u'.')) << problem.sentence.toStdString();
    EXPECT_FALSE(problem.sentence.contains(u'\n')) << problem.sentence.toStdString();
}

const auto kBad = ProblemCode::BadInput;

QByteArray deep(int levels)
{
    return withSeller(R"("note": )" + QByteArray(levels, '[') + QByteArray(levels, ']'));
}

// 32 levels are read: the document, the array, the seller and 29 of the note's.
std::string deepest()
{
    std::string where = "/sellers/0/note";
    for (int i = 0; i < 29; ++i)
        where += "/0";
    return where;
}

QByteArray manyFields()
{
    QByteArray members;
    for (int i = 0; i < 100; ++i)
        members += (i > 0 ? ", \"a" : "\"a") + QByteArray::number(i) + "\": 1";
    return withSeller(members);
}

const Refusal kNotADocument[] = {
    {"empty", "", kBad, "", "is empty"},
    {"blank", " \n ", kBad, "", "is empty"},
    {"notJson", "{\n  \"format\": ohm", kBad, "", "Line 2, column 13"},
    {"cutShort", "{\"format\": \"ohmwright\",", kBad, "", "in the middle of its JSON"},
    {"moreBehind", with({}) + "{}", kBad, "", "Line 2"},
    {"comment", "// mine\n" + with({}), kBad, "", "Line 1, column 1 "},
    {"notANumber", withSeller(R"("note": NaN)"), kBad, "", "Line 2"},
    {"numberBeyondAnyDouble", with(R"("parts": 1e999)"), kBad, "", "too large"},
    {"controlCharacterInText", withSeller("\"note\": \"a\tb\""), kBad, "", "Line 2"},
    {"halfAPair", withSeller(R"("note": "\ud83d")"), kBad, "", "Line 2"},
    {"notUtf8", withSeller("\"note\": \"\xE4\""), kBad, "", "not UTF-8"},
    {"byteOrderMark", "\xEF\xBB\xBF" + with({}), kBad, "", "byte order mark"},
    {"utf16", QByteArray("\xFF\xFE{\0}\0", 6), kBad, "", "UTF-16"},
    {"fieldTwice", withSeller(R"("name": "Other")"), kBad, "/sellers/0/name", "given twice"},
    {"arrayTwice", with(R"("sellers": [], "sellers": [])"), kBad, "/sellers", "given twice"},
    {"tooDeep", deep(100), kBad, deepest(), "nested deeper"},
    {"tooManyFields", manyFields(), kBad, "/sellers/0", "more fields"},
};

const Refusal kNotTheFormat[] = {
    {"anArray", "[]", kBad, "", "an array where an object"},
    {"otherJson", R"({"name": "x"})", kBad, "", "not the interchange"},
    {"otherFormat", R"({"format": "other", "version": 1})", kBad, "/format", "not the interchange"},
    {"formatOfOtherType", R"({"format": 1, "version": 1})", kBad, "/format", "not the interchange"},
    {"noVersion", R"({"format": "ohmwright"})", kBad, "", "“version”"},
    {"versionAsText", R"({"format": "ohmwright", "version": "1"})", kBad, "/version",
     "text where a whole number"},
    {"newerVersion", R"({"format": "ohmwright", "version": 2, "shelves": []})",
     ProblemCode::NewerBook, "/version", "version 2"},
    {"versionZero", R"({"format": "ohmwright", "version": 0})", kBad, "/version", "no version 0"},
    {"noBuild", R"({"format": "ohmwright", "version": 1, "vehicle": {}})", kBad, "", "“build”"},
    {"noVehicle", QByteArray("{") + kHead + ", " + kBuild + "}", kBad, "", "“vehicle”"},
    {"unknownArray", with(R"("shelves": [])"), kBad, "/shelves", "no field “shelves”"},
    {"ownedArrayAtTheTop", with(R"("payments": [])"), kBad, "/payments", "no field “payments”"},
    {"arrayAsObject", with(R"("sellers": {})"), kBad, "/sellers", "an object where an array"},
    {"nullArray", with(R"("sellers": null)"), kBad, "/sellers", "null where an array"},
    {"recordAsText", with(R"("sellers": ["yard"])"), kBad, "/sellers/0", "text where an object"},
};

const Refusal kWrongValues[] = {
    {"unknownField", withSeller(R"("colour": "red")"), kBad, "/sellers/0/colour", "“colour”"},
    {"unknownFieldWithOddName", withSeller(R"("a/b~c": 1)"), kBad, "/sellers/0/a~1b~0c", "“a/b~c”"},
    {"missingField", with(R"("sellers": [{"key": "yard", "kind": "auction"}])"), kBad, "/sellers/0",
     "“name” is missing"},
    {"emptyRequiredText", with(R"("sellers": [{"key": "yard", "name": " ", "kind": "auction"}])"),
     kBad, "/sellers/0/name", "missing"},
    {"null", withSeller(R"("note": null)"), kBad, "/sellers/0/note", "null where text"},
    {"numberForText", withSeller(R"("note": 5)"), kBad, "/sellers/0/note", "a number where text"},
    {"textForFlag", with(R"("lost_functions": [{"key": "a", "name": "b", "settled": "yes"}])"),
     kBad, "/lost_functions/0/settled", "text where true or false"},
    {"wrongWord", with(R"("sellers": [{"key": "yard", "name": "Yard", "kind": "friend"}])"), kBad,
     "/sellers/0/kind", "“friend”"},
    {"wordInCapitals", with(R"("sellers": [{"key": "yard", "name": "Yard", "kind": "Auction"}])"),
     kBad, "/sellers/0/kind", "“Auction”"},
    {"badKey", with(R"("sellers": [{"key": "Yard", "name": "Yard", "kind": "auction"}])"), kBad,
     "/sellers/0/key", "not a key"},
    {"nullCharacter", withSeller("\"note\": \"a\\u0000b\""), kBad, "/sellers/0/note",
     "null character"},
    {"tooLong", withSeller("\"note\": \"" + QByteArray(20001, 'x') + "\""), kBad, "/sellers/0/note",
     "longer than 20000"},
    {"fraction", withPart(R"("lead_days": 1.5)"), kBad, "/parts/0/lead_days", "fraction"},
    {"outOfRange", withPart(R"("lead_days": 3651)"), kBad, "/parts/0/lead_days", "0 and 3650"},
    {"beyondInt", withPart(R"("lead_days": 3000000000)"), kBad, "/parts/0/lead_days", "too large"},
    {"badDate", withPart(R"("claim_by": "1.3.2026")"), kBad, "/parts/0/claim_by", "not a date"},
    {"noSuchDay", withPart(R"("claim_by": "2026-02-29")"), kBad, "/parts/0/claim_by", "calendar"},
    {"wrongMeasure", with(R"("masses": [{"key": "a", "name": "b", "direction": "in", "evidence":
        "measured", "mass": "5 mm"}])"),
     kBad, "/masses/0/mass", "must be a mass"},
    {"unknownUnit", withPart(R"("stock": "5 furlong")"), kBad, "/parts/0/stock", "furlong"},
    {"unitWrittenOtherwise", withPart(R"("stock": "5 mm2")"), kBad, "/parts/0/stock", "“5 mm2”"},
    {"commaDecimal", withPart(R"("stock": "5,5 kg")"), kBad, "/parts/0/stock", "“5,5 kg”"},
    {"grouped", withPart(R"("stock": "1,250 kg")"), kBad, "/parts/0/stock", "“1,250 kg”"},
    {"amountAsNumber", withPart(R"("stock": 5)"), kBad, "/parts/0/stock", "a number where text"},
    {"negativeOdometer",
     "{" + QByteArray(kHead) + ", " + kBuild + R"(, "vehicle": {"odometer": "-5 km"}})", kBad,
     "/vehicle/odometer", "negative"},
    {"negativeWheelbase",
     "{" + QByteArray(kHead) + ", " + kBuild + R"(, "vehicle": {"wheelbase": "-2.5 m"}})", kBad,
     "/vehicle/wheelbase", "negative"},
    {"negativeCornerWeight",
     "{" + QByteArray(kHead) + ", " + kBuild + R"(, "vehicle": {"rear_left": "-250 kg"}})", kBad,
     "/vehicle/rear_left", "negative"},
    {"negativeMass", with(R"("masses": [{"key": "a", "name": "b", "direction": "in", "evidence":
        "measured", "mass": "-5 kg"}])"),
     kBad, "/masses/0/mass", "negative"},
    {"negativeStock", withPart(R"("stock": "-5 kg")"), kBad, "/parts/0/stock", "negative"},
    {"colderThanAbsoluteZero", withPart(R"("stock": "-300 °C")"), kBad, "/parts/0/stock", "colder"},
    {"moneyWithoutCurrency", withPart(R"("estimate": "5.00")"), kBad, "/parts/0/estimate",
     "currency"},
    {"tooManyDecimals", withPart(R"("estimate": "5.001 EUR")"), kBad, "/parts/0/estimate",
     "decimals"},
    {"moneyWithASign", withPart(R"("estimate": "€ 5")"), kBad, "/parts/0/estimate", "“€ 5”"},
    {"unknownCurrency", with(R"("day_rates": [{"key": "a", "currency": "XXX", "dated": "2026-01-01",
        "rate": "1"}])"),
     kBad, "/day_rates/0/currency", "“XXX”"},
    {"rateOfZero", with(R"("day_rates": [{"key": "a", "currency": "USD", "dated": "2026-01-01",
        "rate": "0"}])"),
     kBad, "/day_rates/0/rate", "“0”"},
    {"ruleOfTheRecord", withPart(R"("opened_on": "2026-01-01")"), kBad, "/parts/0",
     "why it was opened"},
    {"ownedRecord", withPart(R"("ratings": [{"quantity": "voltage", "kind": "limit", "basis":
        "continuous", "evidence": "nameplate", "settled": false, "value": "5 A"}])"),
     kBad, "/parts/0/ratings/0/value", "voltage"},
};

const Refusal kNotTogether[] = {
    {"keyTwice", with(R"("sellers": [{"key": "yard", "name": "A", "kind": "auction"},
        {"key": "yard", "name": "B", "kind": "auction"}])"),
     ProblemCode::Conflict, "/sellers/1/key", "“yard” is given twice"},
    {"nestedKeyTwice", with(R"("sellers": [{"key": "yard", "name": "A", "kind": "auction"}],
        "purchases": [
        {"key": "p1", "seller": "yard", "ordered_on": "2026-01-01", "currency": "EUR", "rate": "1",
         "freight": "0 EUR", "duty": "0 EUR", "tax": "0 EUR", "share_by": "price", "items": [
         {"key": "i", "name": "x", "count": 1, "unit_price": "1 EUR", "core_charge": "0 EUR"}]},
        {"key": "p2", "seller": "yard", "ordered_on": "2026-01-01", "currency": "EUR", "rate": "1",
         "freight": "0 EUR", "duty": "0 EUR", "tax": "0 EUR", "share_by": "price", "items": [
         {"key": "i", "name": "x", "count": 1, "unit_price": "1 EUR", "core_charge": "0 EUR"}]}])"),
     ProblemCode::Conflict, "/purchases/1/items/0/key", "“i” is given twice"},
    {"danglingReference", withPart(R"("donor": "van")"), ProblemCode::NotFound, "/parts/0/donor",
     "no “van” among the donors"},
    {"referenceToAnotherKind", withPart(R"("donor": "inverter")"), ProblemCode::NotFound,
     "/parts/0/donor", "no “inverter” among the donors"},
    {"danglingReferenceInAnOwnedRecord", withPart(R"("connections": [{"circuit": "traction"}])"),
     ProblemCode::NotFound, "/parts/0/connections/0/circuit", "no “traction” among the circuits"},
    {"partOfItself", withPart(R"("part_of": "inverter")"), kBad, "/parts/0/part_of", "itself"},
    {"twoCurrencies", with(R"("sellers": [{"key": "yard", "name": "A", "kind": "auction"}],
        "purchases": [{"key": "p1", "seller": "yard", "ordered_on": "2026-01-01", "currency": "EUR",
        "rate": "1", "freight": "0 USD", "duty": "0 EUR", "tax": "0 EUR", "share_by": "price"}])"),
     kBad, "/purchases/0/freight", "USD"},
    {"lifeThatEndsElsewhere", with(R"("parts": [{"key": "a", "name": "A", "kind": "unit", "state":
        "tested", "counted_to": "build", "moves": [{"to_state": "in hand", "moved_on":
        "2026-01-01"}]}])"),
     ProblemCode::NotAllowed, "/parts/0/state", "part “a”: "},
    {"moveThatStartsElsewhere", with(R"("parts": [{"key": "a", "name": "A", "kind": "unit", "state":
        "tested", "counted_to": "build", "moves": [
        {"to_state": "in hand", "moved_on": "2026-01-01"},
        {"from_state": "ordered", "to_state": "tested", "moved_on": "2026-01-02"}]}])"),
     ProblemCode::NotAllowed, "/parts/0/moves/1/from_state",
     "move 2 of part “a”: This move does not start where"},
    {"partsInALoop", with(R"("parts": [
        {"key": "a", "name": "A", "kind": "unit", "state": "in hand", "counted_to": "build",
         "part_of": "b", "moves": [{"to_state": "in hand", "moved_on": "2026-01-01"}]},
        {"key": "b", "name": "B", "kind": "unit", "state": "in hand", "counted_to": "build",
         "part_of": "a", "moves": [{"to_state": "in hand", "moved_on": "2026-01-01"}]}])"),
     ProblemCode::NotAllowed, "/parts/0/part_of", "loop"},
    {"foreignAllowance", with(R"("budget_lines": [{"key": "a", "name": "A", "allowance": "5 USD",
        "position": 0}])"),
     ProblemCode::NotAllowed, "/budget_lines/0/allowance", "EUR"},
};

const auto kNameOf = [](const testing::TestParamInfo<Refusal> &info) {
    return std::string(info.param.name);
};

INSTANTIATE_TEST_SUITE_P(NotADocument, Refused, testing::ValuesIn(kNotADocument), kNameOf);
INSTANTIATE_TEST_SUITE_P(NotTheFormat, Refused, testing::ValuesIn(kNotTheFormat), kNameOf);
INSTANTIATE_TEST_SUITE_P(WrongValues, Refused, testing::ValuesIn(kWrongValues), kNameOf);
INSTANTIATE_TEST_SUITE_P(NotTogether, Refused, testing::ValuesIn(kNotTogether), kNameOf);

TEST(Accepted, theLeastDocument)
{
    const Result<Records> read = parse(with({}), countingIds());
    ASSERT_TRUE(read) << read.error().sentence.toStdString();
    EXPECT_EQ(read->build().title, QLatin1String("Van"));
    EXPECT_EQ(read->vehicle(), [] {
        Vehicle vehicle;
        vehicle.id = Id<Vehicle>(1);
        return vehicle;
    }());
}

TEST(Accepted, theDocumentsTheRefusalsAreMadeFrom)
{
    for (const QByteArray &document : {withSeller({}), withPart({})}) {
        const Result<Records> read = parse(document, countingIds());
        EXPECT_TRUE(read) << read.error().sentence.toStdString();
    }
}

TEST(Accepted, aReferenceToARecordFurtherDown)
{
    const Result<Records> read = parse(with(R"("parts": [
        {"key": "b", "name": "B", "kind": "unit", "state": "in hand", "counted_to": "build",
         "part_of": "c", "moves": [{"to_state": "in hand", "moved_on": "2026-01-01"}]},
        {"key": "c", "name": "C", "kind": "unit", "state": "in hand", "counted_to": "build",
         "moves": [{"to_state": "in hand", "moved_on": "2026-01-01"}]}])"),
                                       countingIds());
    ASSERT_TRUE(read) << read.error().sentence.toStdString();
    const Part *b = read->byKey<Part>(QStringLiteral("b"));
    const Part *c = read->byKey<Part>(QStringLiteral("c"));
    ASSERT_TRUE(b && c);
    EXPECT_EQ(b->partOf, c->id);
}

TEST(Accepted, valuesWrittenOtherwiseThanADumpDoes)
{
    const Result<Records> read =
        parse(withPart(R"("stock": "5.50 kg", "estimate": "5 EUR", "lead_days": 7.0, "note": "")"),
              countingIds());
    ASSERT_TRUE(read) << read.error().sentence.toStdString();
    const Part &part = read->all<Part>().rows().front();
    EXPECT_EQ(part.stock, Amount(5.5, *Unit::fromSymbol(u"kg")));
    EXPECT_EQ(part.estimate, Money(500, *Currency::fromCode(u"EUR")));
    EXPECT_EQ(part.leadDays, 7);
}

TEST(Accepted, aTextThatStartsWithAZeroWidthNoBreakSpaceKeepsIt)
{
    const Result<Records> read = parse(withSeller("\"note\": \"\\ufeffx\""), countingIds());
    ASSERT_TRUE(read) << read.error().sentence.toStdString();
    EXPECT_EQ(read->all<Seller>().rows().front().note, QString(QChar(0xFEFF)) + u'x');
}

// However a document is cut off, it is told and nothing worse happens.
TEST(Refusal, ofEveryBeginningOfADocument)
{
    const QByteArray document = withPart(R"("stock": "5 kg", "note": "Ω")");
    for (qsizetype length = 0; length < document.size(); ++length)
        EXPECT_FALSE(parse(document.left(length), countingIds())) << length;
}

} // namespace
} // namespace ohmwright
