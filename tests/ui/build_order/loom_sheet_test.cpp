// SPDX-License-Identifier: GPL-3.0-or-later
// The chart on paper. qpdf, pdftotext, pdffonts and pdfinfo are the outside readers.
#include "core/forecast/loom_facts.h"
#include "core/interchange/interchange.h"
#include "core/plan/loom_facts.h"
#include "core/plan/plan_view.h"
#include "tests/core/plan/loom_networks.h"
#include "ui/build_order/loom_sheet.h"

#include <QDir>
#include <QFile>
#include <QImage>
#include <QPdfWriter>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#include <gmock/gmock.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <tuple>

namespace ohmwright::ui {

namespace {

using testing::HasSubstr;

class LoomSheetTest : public testing::Test
{
protected:
    [[nodiscard]] QString at(const char *name) const
    {
        return m_folder.filePath(QLatin1String(name));
    }
    // Readers that look for the drawing's typeface find it, whatever this machine has.
    static QProcessEnvironment withOurFonts()
    {
        static const QTemporaryDir folder;
        const QString path = folder.filePath(QStringLiteral("fonts.conf"));
        if (QFile file(path); !file.exists() && file.open(QIODevice::WriteOnly))
            file.write("<?xml version=\"1.0\"?><fontconfig><dir>" OHMWRIGHT_SOURCE_DIR
                       "/resources/fonts</dir><cachedir>" +
                       folder.path().toUtf8() + "</cachedir></fontconfig>");
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("FONTCONFIG_FILE"), path);
        return environment;
    }
    static std::string outputOf(const QString &program, const QStringList &words, int code = 0)
    {
        QProcess process;
        process.setProcessEnvironment(withOurFonts());
        process.start(program, words);
        EXPECT_TRUE(process.waitForFinished());
        EXPECT_EQ(process.exitCode(), code) << process.readAllStandardError().toStdString();
        return process.readAllStandardOutput().toStdString();
    }
    [[nodiscard]] LoomSheetOptions options(plan::LoomBy by = plan::LoomBy::Chain) const
    {
        LoomSheetOptions how;
        how.title = QStringLiteral("Grey van");
        how.today = QDate(2026, 11, 27);
        how.by = by;
        return how;
    }

    QTemporaryDir m_folder;
    plan::Network m_network = plan::vanNetwork();
    plan::LoomFacts m_facts = plan::inventedForecast(m_network);
};

TEST_F(LoomSheetTest, PdfIsSoundWithItsFontsAndWords)
{
    for (const plan::LoomBy by : {plan::LoomBy::Chain, plan::LoomBy::Date}) {
        const auto made = LoomSheet(m_network, m_facts, options(by)).write(at("c.pdf"));
        ASSERT_TRUE(made) << made.error().sentence.toStdString();
        EXPECT_EQ(made->pages, 1);
        outputOf("qpdf", {"--check", at("c.pdf")});
        const std::string text = outputOf("pdftotext", {"-layout", at("c.pdf"), "-"});
        EXPECT_THAT(text, HasSubstr("Build order: Grey van"));
        EXPECT_THAT(text, HasSubstr("27 Nov 2026"));
        EXPECT_THAT(text, HasSubstr("chain to the milestone"));
        const QStringList fonts =
            QString::fromStdString(outputOf("pdffonts", {at("c.pdf")})).split('\n').mid(2);
        int embedded = 0;
        for (const QString &line : fonts) {
            if (line.trimmed().isEmpty())
                continue;
            EXPECT_TRUE(line.contains("Inter")) << line.toStdString();
            // name, type, encoding, then: emb sub uni object ID
            static const QRegularExpression inside(QStringLiteral("\\s+yes +(yes|no) +yes +\\d"));
            EXPECT_TRUE(line.contains(inside)) << line.toStdString();
            ++embedded;
        }
        EXPECT_GT(embedded, 0);
        // Nothing in it is a picture.
        EXPECT_EQ(QString::fromStdString(outputOf("pdfimages", {"-list", at("c.pdf")}))
                      .trimmed()
                      .count('\n'),
                  1);
    }
}

TEST_F(LoomSheetTest, PaperIsTheOneAskedForOnItsSide)
{
    LoomSheetOptions how = options();
    double before = 0;
    for (const auto &[name, size] : {std::pair("A4", "842 x 595"),
                                     {"A3", "1191 x 842"},
                                     {"A2", "1684 x 1191"},
                                     {"A1", "2384 x 1684"}}) {
        how.paper = chartPaper(QLatin1String(name)).value();
        const auto made = LoomSheet(m_network, m_facts, how).write(at("c.pdf"));
        ASSERT_TRUE(made);
        EXPECT_THAT(outputOf("pdfinfo", {at("c.pdf")}), HasSubstr(size)) << name;
        EXPECT_GT(made->smallestText, before);
        before = made->smallestText;
    }
    EXPECT_FALSE(chartPaper("letter"));
    EXPECT_TRUE(chartPaper(" a3 "));
}

// The demo's open work by chain, on two sheets of A3, as the command makes it.
TEST_F(LoomSheetTest, OpenWorkOfTheDemoCanBeReadOnTwoSheetsOfA3)
{
    QFile file(QStringLiteral(OHMWRIGHT_SOURCE_DIR "/demo/build.json"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    int lastId = 0;
    const Result<Records> records = parse(file.readAll(), [&] { return ++lastId; });
    ASSERT_TRUE(records);
    const QDate today(2026, 11, 27);
    const plan::Network network = plan::networkOf(*records, today);
    plan::LoomFacts facts = plan::loomFactsOf(network, plan::nextMilestone(network));
    const forecast::WorkPlan work = forecast::workPlanOf(*records, today);
    facts.forecast = forecast::loomForecastOf(work, forecast::forecastOf(work), network);
    ASSERT_EQ(network.tasks.size(), 150U);
    LoomSheetOptions how = options();
    how.sheets = 2;
    how.risks = loomRisksOf(*records);
    const auto made = LoomSheet(network, facts, how).write(at("two.pdf"));
    ASSERT_TRUE(made);
    EXPECT_LE(made->pages, 2);
    EXPECT_GE(made->smallestText, kLegiblePoints);
    EXPECT_THAT(outputOf("pdfinfo", {at("two.pdf")}),
                HasSubstr("Pages:           " + std::to_string(made->pages)));
    // Drawn or counted, none is missing; below each task that is drawn stands its 80 % day.
    const auto done =
        std::count_if(network.tasks.begin(), network.tasks.end(),
                      [](const plan::Task &task) { return task.done && !task.aside; });
    EXPECT_EQ(made->leftOut, done);
    const QString text = QString::fromStdString(outputOf("pdftotext", {at("two.pdf"), "-"}));
    static const QRegularExpression ready(QStringLiteral("80\\s%:"));
    qsizetype open = 0;
    for (std::size_t task = 0; task < network.tasks.size(); ++task)
        open += !network.tasks[task].milestone && facts.forecast->of(task).known() ? 1 : 0;
    EXPECT_GT(open, 60);
    EXPECT_GE(text.count(ready), open);
    EXPECT_TRUE(text.contains(QStringLiteral("done and left out")));
    // What may fail is told, and nobody can point at what else hangs there.
    EXPECT_EQ(how.risks.size(), 11);
    EXPECT_EQ(text.count(QStringLiteral("may fail")), 11 + made->pages) << "and in each legend";
    EXPECT_GT(text.count(QStringLiteral("+ ")), 15);
    // By date there are more of them, and the letters a little smaller.
    how.by = plan::LoomBy::Date;
    EXPECT_GE(LoomSheet(network, facts, how).wouldMake(QPageSize::A3, 5).smallestText,
              0.95 * kLegiblePoints);
}

TEST_F(LoomSheetTest, SaysWhatPaperWouldDoAndDoesJustThat)
{
    LoomSheetOptions how = options(plan::LoomBy::Date);
    const LoomSheet sheet(m_network, m_facts, how);
    const LoomSheetMade said = sheet.wouldMake(QPageSize::A3, 1);
    const auto made = sheet.write(at("one.pdf"));
    ASSERT_TRUE(made);
    EXPECT_EQ(made->pages, said.pages);
    EXPECT_EQ(made->bands, said.bands);
    EXPECT_NEAR(made->smallestText, said.smallestText, 0.01);
    const std::optional<LoomSheetMade> legible = sheet.legibleOn(QPageSize::A2);
    ASSERT_TRUE(legible);
    EXPECT_GE(legible->smallestText, kLegiblePoints);
    EXPECT_GT(legible->pages, 1);
    how.done = LoomDone::Whole;
    const LoomSheetMade whole = LoomSheet(m_network, m_facts, how).wouldMake(QPageSize::A3, 1);
    EXPECT_EQ(whole.leftOut, 0);
    EXPECT_LE(whole.smallestText, said.smallestText + 0.01);
}

TEST_F(LoomSheetTest, AsManySheetsAsReadingTakesOnWhateverPaperTheDeviceHas)
{
    LoomSheetOptions how = options();
    how.sheets = kAsReadingTakes;
    const LoomSheet sheet(m_network, m_facts, how);
    for (const QPageSize::PageSizeId paper : {QPageSize::A3, QPageSize::A2}) {
        QPdfWriter printer(at("printed.pdf"));
        printer.setPageLayout(
            {QPageSize(paper), QPageLayout::Landscape, {28, 28, 28, 28}, QPageLayout::Point});
        const Result<LoomSheetMade> made = sheet.print(printer);
        ASSERT_TRUE(made) << made.error().sentence.toStdString();
        const std::optional<LoomSheetMade> legible = sheet.legibleOn(paper);
        ASSERT_TRUE(legible);
        EXPECT_EQ(made->pages, legible->pages);
        EXPECT_GE(made->smallestText, kLegiblePoints);
        EXPECT_THAT(outputOf("pdfinfo", {at("printed.pdf")}),
                    HasSubstr("Pages:           " + std::to_string(made->pages)));
    }
    // The file is the same.
    how.paper = QPageSize::A3;
    const auto written = LoomSheet(m_network, m_facts, how).write(at("w.pdf"));
    ASSERT_TRUE(written);
    EXPECT_EQ(written->pages, sheet.legibleOn(QPageSize::A3)->pages);
    // On paper too small for any number of sheets it says so.
    const LoomSheetMade small = sheet.wouldMake(QPageSize::A6, kAsReadingTakes);
    EXPECT_LT(small.smallestText, kLegiblePoints);
    EXPECT_LE(small.pages, kMostSheets);
    EXPECT_TRUE(chartMade(small).contains(QStringLiteral("hard to read")));
    EXPECT_FALSE(chartMade(*written).contains(QStringLiteral("hard to read")));
    QPdfWriter empty(at("empty.pdf"));
    EXPECT_FALSE(LoomSheet({}, {}, how).print(empty));
}

TEST_F(LoomSheetTest, TilesCanBeReadAndCoverTheWhole)
{
    LoomSheetOptions how = options();
    how.tiles = true;
    how.paper = QPageSize::A4;
    const auto made = LoomSheet(m_network, m_facts, how).write(at("t.pdf"));
    ASSERT_TRUE(made);
    EXPECT_GT(made->pages, 2);
    EXPECT_GT(made->smallestText, 5.5);
    EXPECT_THAT(outputOf("pdfinfo", {at("t.pdf")}),
                HasSubstr("Pages:           " + std::to_string(made->pages)));
    const std::string text = outputOf("pdftotext", {at("t.pdf"), "-"});
    EXPECT_THAT(text, HasSubstr("page 1: row 1, column 1"));
    // Each milestone is on one of them, by a word of its own.
    for (const plan::Task &task : m_network.tasks) {
        if (task.milestone) {
            EXPECT_THAT(text, HasSubstr(task.title.section(' ', 0, 0).toStdString()));
        }
    }
}

TEST_F(LoomSheetTest, SvgIsWellFormedAndHoldsNoPicture)
{
    ASSERT_TRUE(LoomSheet(m_network, m_facts, options(plan::LoomBy::Date)).write(at("c.svg")));
    QFile file(at("c.svg"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    QXmlStreamReader reader(&file);
    int texts = 0;
    while (!reader.atEnd()) {
        if (reader.readNext() == QXmlStreamReader::StartElement) {
            texts += reader.name() == QLatin1String("text") ? 1 : 0;
            EXPECT_NE(reader.name(), QLatin1String("image"));
        }
    }
    EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
    EXPECT_GT(texts, 100);
}

// rsvg-convert and pdftoppm are the outside readers; in the drawing nothing reaches into the
// margins, as it would if the bands were not cut.
TEST_F(LoomSheetTest, SvgOnPaperShowsWhatThePdfShows)
{
    const auto picture = [](const QString &path) {
        return QImage(path).convertToFormat(QImage::Format_Grayscale8);
    };
    for (const auto &[name, width, height] :
         {std::tuple("A4", 842, 595), {"A3", 1191, 842}, {"A1", 2384, 1684}}) {
        LoomSheetOptions how = options(plan::LoomBy::Date);
        how.paper = chartPaper(QLatin1String(name)).value();
        const LoomSheet sheet(m_network, m_facts, how);
        const auto drawn = sheet.write(at("c.svg"));
        const auto printed = sheet.write(at("c.pdf"));
        ASSERT_TRUE(drawn && printed);
        EXPECT_EQ(drawn->bands, printed->bands);
        EXPECT_DOUBLE_EQ(drawn->smallestText, printed->smallestText);
        outputOf("rsvg-convert", {"-d", "72", "-p", "72", at("c.svg"), "-o", at("drawn.png")});
        outputOf("pdftoppm", {"-r", "72", "-png", "-singlefile", at("c.pdf"), at("printed")});
        const QImage one = picture(at("drawn.png"));
        const QImage other = picture(at("printed.png"));
        EXPECT_NEAR(one.width(), width, 1) << name;
        EXPECT_NEAR(one.height(), height, 1) << name;
        for (int y = 0; y < one.height(); ++y) {
            EXPECT_EQ(qGray(one.pixel(10, y)), 255) << name << " at " << y;
            EXPECT_EQ(qGray(one.pixel(one.width() - 10, y)), 255) << name << " at " << y;
        }
        // Lines and letters are set apart by fractions of a pixel; seen from afar both are the
        // same picture.
        const auto fromAfar = [](const QImage &all) {
            return all.scaled(60, 42, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
        };
        const QImage a = fromAfar(one);
        const QImage b = fromAfar(other);
        int apart = 0;
        for (int y = 0; y < a.height(); ++y) {
            for (int x = 0; x < a.width(); ++x)
                apart = std::max(apart, std::abs(qGray(a.pixel(x, y)) - qGray(b.pixel(x, y))));
        }
        EXPECT_LT(apart, 60) << name;
    }
}

TEST_F(LoomSheetTest, SvgOfSeveralSheetsIsAFileForEach)
{
    LoomSheetOptions how = options();
    how.paper = QPageSize::A4;
    how.sheets = kAsReadingTakes;
    const auto made = LoomSheet(m_network, m_facts, how).write(at("order.svg"));
    ASSERT_TRUE(made);
    ASSERT_GT(made->pages, 1);
    ASSERT_EQ(made->files.size(), made->pages);
    EXPECT_EQ(made->files.first(), at("order-1.svg"));
    EXPECT_FALSE(QFile::exists(at("order.svg")));
    EXPECT_EQ(chartFiles(*made), at("order-1.svg") + " to " + made->files.last());
    std::map<QString, int> milestones;
    for (const QString &path : made->files) {
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        const QString text = QString::fromUtf8(file.readAll());
        EXPECT_TRUE(text.contains(QStringLiteral("width=\"842.00pt\" height=\"595.00pt\"")));
        EXPECT_TRUE(text.contains(
            QStringLiteral("sheet %1 of %2").arg(made->files.indexOf(path) + 1).arg(made->pages)));
        for (const plan::Task &task : m_network.tasks) {
            if (task.milestone && text.contains(task.title.section(' ', 0, 0)))
                ++milestones[task.title];
        }
    }
    for (const plan::Task &task : m_network.tasks) {
        if (task.milestone && !task.done) {
            EXPECT_GT(milestones[task.title], 0) << task.title.toStdString();
        }
    }
    // Nobody was asked about those; one asked for by its own name is written over.
    how.keepOthers = true;
    const auto refused = LoomSheet(m_network, m_facts, how).write(at("order.svg"));
    ASSERT_FALSE(refused);
    EXPECT_THAT(refused.error().sentence.toStdString(), HasSubstr("order-1.svg"));
    how.sheets = 1;
    EXPECT_TRUE(LoomSheet(m_network, m_facts, how).write(at("order-1.svg")));
    how.keepOthers = false;
    // Tiles are files as well; what cannot be written leaves no file at all.
    how.tiles = true;
    const auto tiles = LoomSheet(m_network, m_facts, how).write(at("tile.svg"));
    ASSERT_TRUE(tiles);
    EXPECT_EQ(tiles->files.size(), tiles->pages);
    ASSERT_TRUE(QDir(m_folder.path()).mkdir(QStringLiteral("no-2.svg")));
    EXPECT_FALSE(LoomSheet(m_network, m_facts, how).write(at("no.svg")));
    EXPECT_FALSE(QFile::exists(at("no-1.svg")));
}

// XML 1.0 forbids most control characters, and a text that was pasted may hold them.
TEST_F(LoomSheetTest, SvgTakesWhateverATextHolds)
{
    LoomSheetOptions how = options();
    how.title = QString::fromUtf8("Grey\x0bvan <&> \xf0\x9f\x9a\x90");
    m_network.tasks.front().title += QChar(0x1b);
    for (const bool onPaper : {false, true}) {
        how.paper = onPaper ? std::optional(QPageSize::A3) : std::nullopt;
        ASSERT_TRUE(LoomSheet(m_network, m_facts, how).write(at("odd.svg")));
        QFile file(at("odd.svg"));
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        QXmlStreamReader reader(&file);
        int texts = 0;
        while (!reader.atEnd())
            if (reader.readNext() == QXmlStreamReader::StartElement)
                texts += reader.name() == QLatin1String("text") ? 1 : 0;
        EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
        EXPECT_GT(texts, 100) << "no layer broke off";
    }
}

TEST_F(LoomSheetTest, NothingIsLeftToDrawWhereAllIsDone)
{
    for (plan::Task &task : m_network.tasks)
        task.done = true;
    LoomSheetOptions how = options();
    how.done = LoomDone::LeftOut;
    const auto made =
        LoomSheet(m_network, plan::loomFactsOf(m_network, std::nullopt), how).write(at("c.pdf"));
    ASSERT_FALSE(made);
    EXPECT_THAT(made.error().sentence.toStdString(), HasSubstr("Everything is done"));
    EXPECT_FALSE(QFile::exists(at("c.pdf")));
    how.done = LoomDone::Whole;
    EXPECT_TRUE(
        LoomSheet(m_network, plan::loomFactsOf(m_network, std::nullopt), how).write(at("c.pdf")));
}

TEST_F(LoomSheetTest, WhatCannotBeDrawnIsSaidAndLeavesTheFileAlone)
{
    QFile old(at("old.pdf"));
    ASSERT_TRUE(old.open(QIODevice::WriteOnly));
    old.write("mine");
    old.close();
    const auto contentOf = [&] {
        QFile file(at("old.pdf"));
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    };
    const auto lacking = LoomSheet(m_network, {}, options(plan::LoomBy::Date)).write(at("old.pdf"));
    ASSERT_FALSE(lacking);
    EXPECT_THAT(lacking.error().sentence.toStdString(), HasSubstr("forecast"));
    EXPECT_FALSE(LoomSheet({}, {}, options()).write(at("old.pdf")));
    EXPECT_FALSE(LoomSheet(m_network, m_facts, options()).write(at("c.png")));
    EXPECT_EQ(contentOf(), "mine");
    EXPECT_FALSE(LoomSheet(m_network, m_facts, options()).write(at("no/folder/c.pdf")));
}

} // namespace

} // namespace ohmwright::ui
