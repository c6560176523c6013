// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/save_file.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <csignal>
#include <sys/resource.h>

namespace ohmwright::sheet {

namespace {

QByteArray contentsOf(const QString &path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

// No file of this process may grow beyond `bytes` while this lives: a write fails as on a full
// disk.
class FileSizeLimit
{
public:
    explicit FileSizeLimit(rlim_t bytes)
    {
        m_handler = std::signal(SIGXFSZ, SIG_IGN);
        getrlimit(RLIMIT_FSIZE, &m_before);
        rlimit limit = m_before;
        limit.rlim_cur = bytes;
        setrlimit(RLIMIT_FSIZE, &limit);
    }
    ~FileSizeLimit()
    {
        setrlimit(RLIMIT_FSIZE, &m_before);
        std::signal(SIGXFSZ, m_handler);
    }
    FileSizeLimit(const FileSizeLimit &) = delete;
    FileSizeLimit &operator=(const FileSizeLimit &) = delete;

private:
    rlimit m_before{};
    void (*m_handler)(int) = nullptr;
};

} // namespace

TEST(SaveFile, WritesAndReplaces)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath("sheet.html");
    ASSERT_TRUE(saveFile(path, "first, and longer").has_value());
    ASSERT_TRUE(saveFile(path, "second").has_value());
    EXPECT_EQ(contentsOf(path), "second");
    EXPECT_EQ(QDir(folder.path()).entryList(QDir::Files | QDir::Hidden).size(), 1);
}

TEST(SaveFile, AMissingFolderIsToldPlainly)
{
    const QTemporaryDir folder;
    const Outcome done = saveFile(folder.filePath("no/such/sheet.html"), "x");
    ASSERT_FALSE(done.has_value());
    EXPECT_EQ(done.error().code, ProblemCode::NotFound);
    EXPECT_TRUE(done.error().sentence.startsWith("There is no folder "));
    EXPECT_TRUE(done.error().sentence.endsWith("."));
}

TEST(SaveFile, AFolderInPlaceOfAFileIsToldPlainly)
{
    const QTemporaryDir folder;
    const Outcome done = saveFile(folder.path(), "x");
    ASSERT_FALSE(done.has_value());
    EXPECT_EQ(done.error().code, ProblemCode::BadInput);
    EXPECT_TRUE(QDir(folder.path()).exists());
}

TEST(SaveFile, NoNameIsToldPlainly)
{
    const Outcome done = saveFile(QString(), "x");
    ASSERT_FALSE(done.has_value());
    EXPECT_EQ(done.error().code, ProblemCode::BadInput);
}

TEST(SaveFile, AFailedWriteLeavesTheOldFileAndNothingElse)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath("sheet.html");
    ASSERT_TRUE(saveFile(path, "old").has_value());
    Outcome done;
    {
        const FileSizeLimit limit(4096);
        done = saveFile(path, QByteArray(1 << 20, 'x'));
    }
    ASSERT_FALSE(done.has_value());
    EXPECT_EQ(done.error().code, ProblemCode::Io);
    EXPECT_EQ(contentsOf(path), "old");
    EXPECT_EQ(QDir(folder.path()).entryList(QDir::Files | QDir::Hidden).size(), 1);
}

TEST(SaveFile, WithoutCommitNothingHappens)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath("sheet.html");
    {
        WholeFile whole(path);
        ASSERT_TRUE(whole.open().has_value());
        whole.file().write("half");
    }
    EXPECT_FALSE(QFile::exists(path));
    EXPECT_TRUE(QDir(folder.path()).entryList(QDir::Files | QDir::Hidden).isEmpty());
}

} // namespace ohmwright::sheet
