// SPDX-License-Identifier: GPL-3.0-or-later
// Half of a surrogate pair in a text: refused on entry and at load, with a sentence.
#include "core/interchange/interchange.h"
#include "tests/core/interchange/counting_ids.h"
#include "tests/support/test_book.h"

namespace ohmwright {
namespace {

TEST(HalfCharacters, areRefusedOnEntryAndNothingIsWritten)
{
    TestBook book;
    for (const char16_t half : {u'\xD83D', u'\xDE97'}) {
        Seller seller;
        seller.key = QStringLiteral("yard");
        seller.name = QStringLiteral("Yard ") + QChar(half);
        const Outcome done = book->edit(QStringLiteral("Add"), [&]() -> Outcome {
            const auto id = book->insert(seller);
            return id ? Outcome() : fail(id.error());
        });
        ASSERT_FALSE(done.has_value());
        EXPECT_EQ(done.error().where, QStringLiteral("name"));
        EXPECT_TRUE(done.error().sentence.contains(QStringLiteral("half a character")));
        EXPECT_EQ(book.records().all<Seller>().size(), 0U);
    }
}

TEST(HalfCharacters, areRefusedAtLoad)
{
    for (const char *half : {"\\ud83d", "\\ude97", "\\ud83d\\u0041"}) {
        const QByteArray document =
            QByteArray(R"({"format": "ohmwright", "version": 1, "build": {"title": ")") + half +
            R"(", "currency": "EUR", "hours_per_week": 6, "contingency_percent": 10},
               "vehicle": {}})";
        const Result<Records> read = parse(document, countingIds());
        ASSERT_FALSE(read) << half;
        EXPECT_EQ(read.error().code, ProblemCode::BadInput);
        EXPECT_TRUE(read.error().sentence.endsWith(u'.'));
    }
}

TEST(HalfCharacters, wholePairsAreKept)
{
    TestBook book;
    Seller seller;
    seller.name = QString::fromUtf8("Yard \xF0\x9F\x9A\x97");
    book.add(seller);
    const Result<Records> read = parse(dump(book.records()), countingIds());
    OHMWRIGHT_ASSERT_OK(read);
    EXPECT_EQ(read->all<Seller>().begin()->name, seller.name);
}

} // namespace
} // namespace ohmwright
