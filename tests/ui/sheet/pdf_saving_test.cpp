// SPDX-License-Identifier: GPL-3.0-or-later
// A PDF is written whole or not at all.
#include "tests/ui/sheet/pdf_test.h"
#include "tests/ui/sheet/sample_document.h"
#include "ui/sheet/pdf_writer.h"

#include <QDateTime>

#include <gtest/gtest.h>

#include <csignal>
#include <sys/resource.h>

namespace ohmwright::sheet {

namespace {

using PdfSavingTest = PdfTest;

} // namespace

TEST_F(PdfSavingTest, TheSameDocumentMadeAtTheSameTimeGivesTheSameBytes)
{
    PdfOptions options;
    options.madeAt = QDateTime(QDate(2026, 3, 3), QTime(12, 0), Qt::UTC);
    const QByteArray first = contentsOf(write(sampleDocument(), options));
    const QByteArray second = contentsOf(write(sampleDocument(), options));
    EXPECT_EQ(first, second);
    EXPECT_TRUE(first.contains("D:20260303120000Z"));
    EXPECT_EQ(sampleDocument().contentHash, sampleDocument().contentHash);
}

TEST_F(PdfSavingTest, NothingButTheFileIsLeftInTheFolder)
{
    write(sampleDocument());
    EXPECT_EQ(filesInFolder(), QStringList{"sheet.pdf"});
}

TEST_F(PdfSavingTest, StoppingLeavesTheOldFile)
{
    const QString path = write(sampleDocument());
    const QByteArray before = contentsOf(path);
    int calls = 0;
    PdfOptions options;
    options.progress = [&calls](int done, int pages) {
        EXPECT_EQ(done, ++calls);
        EXPECT_GE(pages, done);
        return done < 2;
    };
    const Outcome done = writePdf(withLongTable(), path, options);
    ASSERT_FALSE(done.has_value());
    EXPECT_EQ(done.error().code, ProblemCode::NotAllowed);
    EXPECT_EQ(calls, 2);
    EXPECT_EQ(contentsOf(path), before);
    EXPECT_EQ(filesInFolder(), QStringList{"sheet.pdf"});
}

TEST_F(PdfSavingTest, AFolderThatIsNotThereIsToldPlainly)
{
    const Outcome done = writePdf(sampleDocument(), m_folder.filePath("no/sheet.pdf"));
    ASSERT_FALSE(done.has_value());
    EXPECT_EQ(done.error().code, ProblemCode::NotFound);
    EXPECT_TRUE(filesInFolder().isEmpty());
}

// Files of this process may not grow beyond so many bytes, for ever larger limits, until one is
// enough: whatever the write that fails, the old file stays.
TEST_F(PdfSavingTest, AWriteThatFailsAnywhereLeavesTheOldFile)
{
    const QString path = write(sampleDocument());
    const QByteArray before = contentsOf(path);
    Document d;
    d.title = "Another";
    d.blocks = {longTable(60)};
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    rlimit unlimited{};
    getrlimit(RLIMIT_FSIZE, &unlimited);
    bool done = false;
    int failures = 0;
    for (rlim_t limit = 0; !done; limit += 8192) {
        rlimit small = unlimited;
        small.rlim_cur = limit;
        setrlimit(RLIMIT_FSIZE, &small);
        const Outcome result = writePdf(d, path);
        setrlimit(RLIMIT_FSIZE, &unlimited);
        done = result.has_value();
        if (done)
            break;
        ++failures;
        EXPECT_EQ(result.error().code, ProblemCode::Io) << limit;
        ASSERT_EQ(contentsOf(path), before) << limit;
        ASSERT_EQ(filesInFolder(), QStringList{"sheet.pdf"}) << limit;
        ASSERT_LT(limit, 10'000'000U);
    }
    std::signal(SIGXFSZ, handler);
    EXPECT_GT(failures, 2);
    EXPECT_EQ(runTool("qpdf", {"--check", path}).exitCode, 0);
}

} // namespace ohmwright::sheet
