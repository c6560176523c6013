// SPDX-License-Identifier: GPL-3.0-or-later
// What is written for paper: the build sheet and the chart.
#include "core/plan/plan_edits.h"
#include "tests/app/commands_fixture.h"

namespace ohmwright {
namespace {

TEST_F(CommandsTest, SheetWritesPdfAndHtml)
{
    ASSERT_EQ(run({"create", book(), "--title", "Green van"}), 0);
    ASSERT_EQ(run({"log-part", book(), "--name", "Motor", "--rating", "torque=250 N·m,nameplate"}),
              0)
        << err.toStdString();
    ASSERT_EQ(run({"sheet", book(), "--out", at("s.pdf")}), 0) << err.toStdString();
    QProcess check;
    check.start(QStringLiteral("qpdf"), {QStringLiteral("--check"), at("s.pdf")});
    ASSERT_TRUE(check.waitForFinished());
    EXPECT_EQ(check.exitCode(), 0) << check.readAll().toStdString();
    QProcess text;
    text.start(QStringLiteral("pdftotext"), {at("s.pdf"), QStringLiteral("-")});
    ASSERT_TRUE(text.waitForFinished());
    EXPECT_THAT(text.readAllStandardOutput().toStdString(), HasSubstr("Green van"));
    ASSERT_EQ(run({"sheet", book(), "--out", at("s.html"), "--json"}), 0);
    EXPECT_THAT(contentOf(at("s.html")).toStdString(), HasSubstr("Green van"));
    EXPECT_EQ(run({"sheet", book(), "--out", at("no/such/folder/s.pdf")}), 2);
    EXPECT_EQ(run({"sheet", book(), "--out", at("f.html"), "--working", "full"}), 0);
    EXPECT_EQ(run({"sheet", book(), "--out", at("l.html"), "--working", "long"}), 2);
    EXPECT_TRUE(err.contains("full or short"));
    EXPECT_FALSE(QFile::exists(at("l.html")));
}

TEST_F(CommandsTest, ChartWritesPdfAndSvg)
{
    ASSERT_EQ(run({"create", book(), "--title", "Green van"}), 0);
    EXPECT_EQ(run({"chart", book(), "--out", at("c.pdf")}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("no tasks"));
    {
        const auto opened = Book::open(book(), clock);
        ASSERT_TRUE(opened);
        NewTask work;
        work.title = QStringLiteral("Engine out");
        work.area = QStringLiteral("motor");
        ASSERT_TRUE(addTask(**opened, work));
        NewTask goal;
        goal.title = QStringLiteral("Rolling");
        goal.milestone = true;
        ASSERT_TRUE(addTask(**opened, goal));
    }
    ASSERT_EQ(run({"chart", book(), "--out", at("c.pdf"), "--paper", "A4", "--by", "date"}), 0)
        << err.toStdString();
    EXPECT_THAT(out.toStdString(), HasSubstr(": letters "));
    QProcess check;
    check.start(QStringLiteral("qpdf"), {QStringLiteral("--check"), at("c.pdf")});
    ASSERT_TRUE(check.waitForFinished());
    EXPECT_EQ(check.exitCode(), 0) << check.readAll().toStdString();
    ASSERT_EQ(run({"chart", book(), "--out", at("c.svg"), "--json"}), 0) << err.toStdString();
    EXPECT_EQ(json().value("pages").toInt(), 1);
    EXPECT_THAT(contentOf(at("c.svg")).toStdString(), HasSubstr("Green van"));
    ASSERT_EQ(run({"chart", book(), "--out", at("p.svg"), "--paper", "A3"}), 0);
    EXPECT_THAT(contentOf(at("p.svg")).toStdString(), HasSubstr("width=\"1191.00pt\""));
    EXPECT_EQ(run({"chart", book()}), 2);
    EXPECT_EQ(run({"chart", book(), "--out", at("c.png")}), 2);
    EXPECT_EQ(run({"chart", book(), "--out", at("d.pdf"), "--paper", "A9"}), 2);
    EXPECT_EQ(run({"chart", book(), "--out", at("d.pdf"), "--by", "colour"}), 2);
    EXPECT_EQ(run({"chart", book(), "--out", at("d.pdf"), "--sheets", "0"}), 2);
    EXPECT_EQ(run({"chart", book(), "--out", at("d.pdf"), "--sheets", "two"}), 2);
    EXPECT_EQ(run({"chart", book(), "--out", at("d.pdf"), "--done", "gone"}), 2);
    EXPECT_EQ(run({"chart", book(), "--out", at("d.svg"), "--sheets", "2"}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("--paper"));
    EXPECT_EQ(run({"chart", book(), "--out", at("d.svg"), "--tiles"}), 2);
    EXPECT_FALSE(QFile::exists(at("d.svg")));
    EXPECT_FALSE(QFile::exists(at("d.pdf")));
}

TEST_F(CommandsTest, ChartTakesAsManySheetsAsReadingTakesUnlessTold)
{
    ASSERT_EQ(run({"create", book()}), 0);
    {
        const auto opened = Book::open(book(), clock);
        ASSERT_TRUE(opened);
        NewTask work;
        for (int at = 0; at < 260; ++at) {
            work.title = QStringLiteral("Bracket of the %1th kind").arg(at);
            work.area = QStringLiteral("area %1").arg(at % 7);
            const Result<Id<Task>> made = addTask(**opened, work);
            ASSERT_TRUE(made);
            if (at % 7 == 6)
                work.after = *made;
        }
    }
    const QStringList words{"chart", book(), "--out", at("c.pdf"), "--paper", "A4", "--json"};
    ASSERT_EQ(run(words), 0) << err.toStdString();
    EXPECT_GT(json().value("pages").toInt(), 1);
    EXPECT_GE(json().value("smallest_text_points").toDouble(), 6);
    ASSERT_EQ(run(words + QStringList{"--sheets", "1"}), 0) << err.toStdString();
    EXPECT_EQ(json().value("pages").toInt(), 1);
    EXPECT_EQ(json().value("files").toArray().size(), 1);
    EXPECT_LT(json().value("smallest_text_points").toDouble(), 6);
}

// The sqlite3 shell is the outside reader: integrity, references, our application id.

} // namespace
} // namespace ohmwright
