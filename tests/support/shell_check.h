// SPDX-License-Identifier: GPL-3.0-or-later
// The sqlite3 shell as the outside reader of every book the tests make: integrity, references and
// our application id. Copies are gathered and read when the program's tests are done.
#pragma once

#include "core/book/book.h"
#include "core/book/book_file.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <memory>

namespace ohmwright {

class ShellCheck : public testing::Environment
{
public:
    // The one of this program.
    static ShellCheck &instance()
    {
        static ShellCheck *one =
            static_cast<ShellCheck *>(testing::AddGlobalTestEnvironment(new ShellCheck));
        return *one;
    }

    void take(const Book &book)
    {
        const QString path = nextPath();
        if (book.saveCopy(path)) // not where a test keeps the disk from writing
            ++m_taken;
    }

    // Every book in a folder of files.
    void takeAll(const QString &folder)
    {
        for (const QFileInfo &file : QDir(folder).entryInfoList(QDir::Files))
            if (recogniseBook(file.filePath()) && QFile::copy(file.filePath(), nextPath()))
                ++m_taken;
    }

    void TearDown() override
    {
        QByteArray script;
        QByteArray expected;
        for (int i = 1; i <= m_taken; ++i) {
            script += ".open '" + QFile::encodeName(pathOf(i)) +
                      "'\nPRAGMA integrity_check;\nPRAGMA foreign_key_check;\n"
                      "PRAGMA application_id;\n";
            expected += "ok\n" + QByteArray::number(0x4F484D57) + "\n"; // "OHMW"
        }
        if (m_taken == 0)
            return;
        QProcess shell;
        shell.start(QStringLiteral("sqlite3"), {QStringLiteral("-batch")});
        ASSERT_TRUE(shell.waitForStarted()) << "the sqlite3 shell is missing";
        shell.write(script);
        shell.closeWriteChannel();
        ASSERT_TRUE(shell.waitForFinished(60000));
        EXPECT_EQ(shell.readAllStandardOutput(), expected);
        EXPECT_EQ(shell.readAllStandardError(), QByteArray());
    }

private:
    [[nodiscard]] QString pathOf(int number) const
    {
        return m_folder->filePath(QString::number(number) + QStringLiteral(".ohmwright"));
    }
    QString nextPath()
    {
        if (!m_folder)
            m_folder = std::make_unique<QTemporaryDir>();
        return pathOf(m_taken + 1);
    }

    std::unique_ptr<QTemporaryDir> m_folder; // none before the first book
    int m_taken = 0;
};

inline ShellCheck &kShellCheck = ShellCheck::instance(); // registered before the tests begin

} // namespace ohmwright
