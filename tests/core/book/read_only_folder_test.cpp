// SPDX-License-Identifier: GPL-3.0-or-later
// A book in a folder that may be read but not written. Root may write anywhere, so as root the
// book is opened by a child process that has given root up.
#include "tests/support/test_book.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include <cstdlib>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

namespace ohmwright {
namespace {

enum class Seen : int { AsExpected, NotOpened, NotReadOnly, NothingToRead, Edited, WrongProblem };

Seen look(const QString &path)
{
    const FixedClock clock;
    const auto book = Book::open(path, clock);
    if (!book)
        return Seen::NotOpened;
    if (!(*book)->isReadOnly())
        return Seen::NotReadOnly;
    if ((*book)->records().all<Part>().size() != 1)
        return Seen::NothingToRead;
    const Outcome done = (*book)->edit(QStringLiteral("Add"), [&]() -> Outcome {
        Seller seller;
        seller.key = seller.name = QStringLiteral("yard");
        const auto id = (*book)->insert(seller);
        return id ? Outcome() : fail(id.error());
    });
    if (done)
        return Seen::Edited;
    return done.error().code == ProblemCode::ReadOnly ? Seen::AsExpected : Seen::WrongProblem;
}

constexpr uid_t kNobody = 65534;

TEST(ReadOnlyFolder, showsTheBookAndRefusesEdits)
{
    QTemporaryDir folder;
    const QByteArray place = QFile::encodeName(folder.path());
    const QString path = folder.filePath(QStringLiteral("van.ohmwright"));
    {
        TestBook book(path);
        book.add(namedPart(QStringLiteral("Motor")));
    }
    const QByteArray before = [&] {
        QFile file(path);
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }();
    // the file itself may be written: it is the folder that leaves no place for a journal
    ASSERT_EQ(chmod(QFile::encodeName(path).constData(), 0666), 0);
    ASSERT_EQ(chmod(place.constData(), 0555), 0);
    if (geteuid() != 0) {
        EXPECT_EQ(look(path), Seen::AsExpected);
    } else {
        const pid_t child = fork();
        ASSERT_GE(child, 0);
        if (child == 0) {
            if (setgid(kNobody) != 0 || setuid(kNobody) != 0)
                _exit(99);
            _exit(static_cast<int>(look(path)));
        }
        int status = 0;
        ASSERT_EQ(waitpid(child, &status, 0), child);
        ASSERT_TRUE(WIFEXITED(status));
        if (WEXITSTATUS(status) == 99) {
            chmod(place.constData(), 0755);
            GTEST_SKIP() << "this root may not become another user";
        }
        EXPECT_EQ(static_cast<Seen>(WEXITSTATUS(status)), Seen::AsExpected);
    }
    ASSERT_EQ(chmod(place.constData(), 0755), 0);
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), before);
    EXPECT_EQ(QDir(folder.path()).entryList(QDir::Files).size(), 1);
}

} // namespace
} // namespace ohmwright
