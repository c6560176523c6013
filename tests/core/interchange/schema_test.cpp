// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/interchange/field_notes.h"
#include "core/interchange/interchange.h"
#include "core/interchange/nesting.h"
#include "core/interchange/schema.h"
#include "tests/core/interchange/counting_ids.h"
#include "tests/core/interchange/judge.h"
#include "tests/core/interchange/mutation.h"
#include "tests/support/generated_book.h"

#include <QFile>

#include <gtest/gtest.h>

#include <map>

namespace ohmwright {
namespace {

using Json = nlohmann::ordered_json;

QByteArray bytesOf(const QString &path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

TEST(Schema, theCommittedFileIsWhatTheFieldListsSay)
{
    EXPECT_TRUE(bytesOf(committedSchemaPath()) == schema())
        << "The records have changed: write the schema anew with `ninja schema`.";
}

TEST(Schema, everyRecordAndEveryFieldHasItsNote)
{
    forEachKind([]<class R>() {
        EXPECT_TRUE(recordNote(RecordTraits<R>::table)) << RecordTraits<R>::table;
        forEachField<R>([](const auto &f) {
            const auto note = fieldNote(RecordTraits<R>::table, f.name);
            ASSERT_TRUE(note) << RecordTraits<R>::table << "." << f.name;
            EXPECT_TRUE(note->text.ends_with('.') || note->text.ends_with("…")) << note->text;
        });
    });
    EXPECT_FALSE(recordNote("cupboard"));
    EXPECT_FALSE(fieldNote("part", "shoe_size"));
}

TEST(Schema, generatedBooksFitIt)
{
    std::vector<std::string> documents;
    for (std::uint32_t seed = 0; seed < 12; ++seed)
        documents.push_back(Json::parse(dump(generateBook(seed).records)).dump());
    documents.push_back(R"({"format": "ohmwright", "version": 1, "vehicle": {}})");
    std::string trouble;
    const auto verdicts = judge(documents, trouble);
    ASSERT_TRUE(verdicts) << trouble;
    ASSERT_EQ(verdicts->size(), documents.size());
    EXPECT_FALSE(verdicts->back()) << "it refuses as well";
    for (std::size_t i = 0; i + 1 < verdicts->size(); ++i)
        EXPECT_TRUE((*verdicts)[i]) << i;
}

// The reasons in schema.h; a refusal for any other must be the schema's too.
std::string onlyTheLoaderKnows(const Problem &problem)
{
    switch (problem.code) {
    case ProblemCode::Conflict:
        return "key given twice";
    case ProblemCode::NotFound:
        return "reference to nothing";
    case ProblemCode::NotAllowed:
        return "records that do not go together";
    default:
        break;
    }
    const std::pair<const char *, const char *> sentences[] = {
        {"but this purchase is in", "two currencies in a purchase"},
        {"itself.", "reference to itself"},
        {"is colder than anything can be", "below absolute zero"},
        {"too near zero", "too near zero"},
        {"looser than the published", "a value beside a published one, in whatever unit"},
    };
    for (const auto &[part, reason] : sentences)
        if (problem.sentence.contains(QLatin1String(part)))
            return reason;
    return {};
}

// Structural slips are judged alike by the loader and by a validator with the schema.
TEST(Schema, loaderAndSchemaAgreeOnMutatedDocuments)
{
    constexpr int kBooks = 40;
    constexpr int kMutationsOfEach = 25;
    Chance chance(2026);
    std::vector<Mutation> mutations;
    std::vector<std::string> documents;
    for (int book = 0; book < kBooks; ++book) {
        const auto seed = static_cast<std::uint32_t>(1000 + book);
        const Json valid =
            Json::parse(dump(generateBook(seed, BookSize::tiny(), Texts::Plain).records));
        for (int i = 0; i < kMutationsOfEach; ++i) {
            mutations.push_back(mutate(valid, chance));
            documents.push_back(mutations.back().document.dump());
        }
    }
    std::string trouble;
    const auto verdicts = judge(documents, trouble);
    ASSERT_TRUE(verdicts) << trouble;
    ASSERT_EQ(verdicts->size(), documents.size());
    std::map<std::string, int> tally;
    for (std::size_t i = 0; i < documents.size(); ++i) {
        const Result<Records> read = parse(QByteArray::fromStdString(documents[i]), countingIds());
        if (read) {
            EXPECT_TRUE((*verdicts)[i]) << "the schema alone refuses: " << mutations[i].what;
            ++tally["fine"];
            continue;
        }
        const Problem &problem = read.error();
        EXPECT_FALSE(problem.sentence.isEmpty());
        if (!(*verdicts)[i]) {
            ++tally["refused by both"];
            continue;
        }
        const std::string reason = onlyTheLoaderKnows(problem);
        EXPECT_FALSE(reason.empty())
            << "the loader alone refuses: " << mutations[i].what << "\n  "
            << problem.sentence.toStdString() << " at " << problem.where.toStdString();
        ++tally[reason];
    }
    EXPECT_GT(tally["fine"], kBooks) << "some slips leave a document as good as before";
    EXPECT_GT(tally["refused by both"], kBooks * 5);
    for (const auto &[reason, count] : tally)
        RecordProperty(reason, count);
}

} // namespace
} // namespace ohmwright
