// SPDX-License-Identifier: GPL-3.0-or-later
// The process is killed while a forecast is being worked out after an edit: the edit is in the
// book, and the book is whole.
#include "tests/support/test_book.h"
#include "tests/support/test_folder.h"
#include "ui/forecast/forecaster.h"

#include <QCoreApplication>
#include <QProcess>
#include <QTest>

#include <csignal>

namespace ohmwright::ui {
namespace {

constexpr const char *kBook = "OHMWRIGHT_BOOK_OF_THE_KILLED";

// In a process of its own; ends by the signal.
void editAndBeKilled()
{
    const FixedClock clock;
    auto book = Book::open(qEnvironmentVariable(kBook), clock);
    OHMWRIGHT_ASSERT_OK(book);
    Forecaster forecaster(**book);
    forecaster.setSamples(1'000'000);
    forecaster.want();
    OHMWRIGHT_ASSERT_OK((*book)->edit(QStringLiteral("Add Weld tray"), [&]() -> Outcome {
        Task task = namedTask(QStringLiteral("Weld tray"));
        task.key = QStringLiteral("weld-tray");
        task.workMinutes = 600;
        const auto made = (*book)->insert(task);
        return made ? Outcome() : Outcome(fail(made.error()));
    }));
    ASSERT_TRUE(QTest::qWaitFor([&] { return forecaster.progress().value_or(0) > 0; }, 20'000));
    (void)std::raise(SIGKILL);
}

TEST(KilledForecast, LosesNothing)
{
    if (qEnvironmentVariableIsSet(kBook)) {
        editAndBeKilled();
        return;
    }
    const TestFolder folder;
    const QString path = folder.filePath(QStringLiteral("van.ohmwright"));
    {
        TestBook book(path);
        Task goal = namedTask(QStringLiteral("Rolling"), true);
        book.add(goal);
    }
    QProcess killed;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QString::fromLatin1(kBook), path);
    killed.setProcessEnvironment(environment);
    killed.start(QCoreApplication::applicationFilePath(),
                 {QStringLiteral("--gtest_filter=KilledForecast.LosesNothing")});
    ASSERT_TRUE(killed.waitForFinished(60'000));
    ASSERT_EQ(killed.exitStatus(), QProcess::CrashExit) << killed.readAll().toStdString();

    const FixedClock clock;
    const auto book = Book::open(path, clock);
    OHMWRIGHT_ASSERT_OK(book);
    EXPECT_FALSE((*book)->isReadOnly());
    const Result<QStringList> wrong = (*book)->checkFile();
    OHMWRIGHT_ASSERT_OK(wrong);
    EXPECT_TRUE(wrong->isEmpty()) << wrong->join(u'\n').toStdString();
    EXPECT_NE((*book)->records().byKey<Task>(QStringLiteral("weld-tray")), nullptr);
    EXPECT_EQ((*book)->undoText(), QStringLiteral("Add Weld tray"));
    OHMWRIGHT_ASSERT_OK((*book)->undo());
}

} // namespace
} // namespace ohmwright::ui
