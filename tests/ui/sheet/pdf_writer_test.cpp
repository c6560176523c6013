// SPDX-License-Identifier: GPL-3.0-or-later
// What other programs find in the PDF: qpdf and poppler's tools.
#include "core/sheet/content_hash.h"
#include "tests/ui/sheet/pdf_test.h"
#include "tests/ui/sheet/sample_document.h"
#include "ui/sheet/pdf_writer.h"

#include <QFile>
#include <QImage>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QRegularExpression>
#include <QSet>

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <map>

namespace ohmwright::sheet {

namespace {

QString simplified(const QString &text)
{
    return QString(text).replace(QChar(QChar::Nbsp), ' ').simplified();
}

void addWords(QSet<QString> &words, const QString &text)
{
    for (const QString &word : simplified(text).split(' ', Qt::SkipEmptyParts))
        words.insert(word);
}

// Every word the sample says.
QSet<QString> wordsOf(const Document &d)
{
    QSet<QString> words;
    for (const QString &text :
         {d.title, d.subtitle, d.revision, d.footer, shortHash(d.contentHash)})
        addWords(words, text);
    const auto addMarks = [&words](const std::vector<Mark> &marks) {
        for (const Mark &mark : marks)
            addWords(words, wordOf(mark));
    };
    for (const Block &block : d.blocks) {
        if (const auto *heading = std::get_if<Heading>(&block)) {
            addWords(words, heading->text);
        } else if (const auto *paragraph = std::get_if<Paragraph>(&block)) {
            for (const Run &each : paragraph->runs)
                addWords(words, each.text);
        } else if (const auto *list = std::get_if<List>(&block)) {
            for (const ListItem &item : list->items) {
                addWords(words, item.text + ' ' + item.note);
                addMarks(item.marks);
            }
        } else if (const auto *facts = std::get_if<KeyValues>(&block)) {
            for (const KeyValue &row : facts->rows) {
                addWords(words, row.label + ' ' + row.value + ' ' + row.note);
                addMarks(row.marks);
            }
        } else if (const auto *table = std::get_if<Table>(&block)) {
            addWords(words, table->caption);
            for (const Column &column : table->columns)
                addWords(words, column.header);
            for (const Row &row : table->rows) {
                for (const Cell &cell : row.cells) {
                    addWords(words, cell.text + ' ' + cell.evidence);
                    addMarks(cell.marks);
                }
            }
        } else if (const auto *caution = std::get_if<Caution>(&block)) {
            addWords(words, caution->title);
            for (const QString &line : caution->lines)
                addWords(words, line);
        } else if (const auto *figures = std::get_if<FigureRow>(&block)) {
            for (const Figure &figure : figures->figures)
                addWords(words, figure.caption);
        } else if (const auto *signatures = std::get_if<Signatures>(&block)) {
            for (const SignatureLine &line : signatures->lines)
                addWords(words, line.role + ' ' + line.statement + ' ' + line.name);
        }
    }
    return words;
}

using PdfWriterTest = PdfTest;

} // namespace

TEST_F(PdfWriterTest, IsAValidFileOfTheRightSizeWithItsTitle)
{
    const QString path = write(withLongTable());
    const ToolRun check = runTool("qpdf", {"--check", path});
    EXPECT_EQ(check.exitCode, 0) << check.output.toStdString();

    const QString info = runTool("pdfinfo", {path}).output;
    EXPECT_TRUE(info.contains(QRegularExpression("Title: +Build sheet: Norrel Kurier 1300\n")));
    EXPECT_TRUE(info.contains(QRegularExpression("Creator: +Ohmwright\n")));
    const auto size =
        QRegularExpression("Page size: +([0-9.]+) x ([0-9.]+) pts \\(A4\\)").match(info);
    ASSERT_TRUE(size.hasMatch()) << info.toStdString();
    // ISO 216: A4 is 210 mm by 297 mm
    EXPECT_NEAR(size.captured(1).toDouble(), 595.276, 0.01);
    EXPECT_NEAR(size.captured(2).toDouble(), 841.890, 0.01);
}

TEST_F(PdfWriterTest, EveryFontIsEmbeddedAndCanBeReadBack)
{
    const QStringList lines =
        runTool("pdffonts", {write(withLongTable())}).output.split('\n', Qt::SkipEmptyParts);
    ASSERT_GT(lines.size(), 2);
    for (qsizetype i = 2; i < lines.size(); ++i) {
        EXPECT_TRUE(lines[i].contains(QRegularExpression("Identity-H +yes +(yes|no) +yes")))
            << lines[i].toStdString();
        EXPECT_TRUE(lines[i].contains("Inter")) << "a system's font slipped in";
    }
}

TEST_F(PdfWriterTest, EveryWordCanBeFound)
{
    const Document d = withLongTable();
    const QString text = simplified(runTool("pdftotext", {write(d), "-"}).output);
    QSet<QString> found;
    addWords(found, text);
    for (const QString &word : wordsOf(d))
        EXPECT_TRUE(found.contains(word)) << word.toStdString();
    const int pages = PagedLayout(d).pageCount();
    for (int page = 1; page <= pages; ++page) {
        const QString number = QStringLiteral("page %1 of %2").arg(page).arg(pages);
        EXPECT_EQ(text.count(number), 1) << number.toStdString();
    }
    EXPECT_TRUE(text.contains("nameplate, read 3 Mar 2026"));
    EXPECT_TRUE(text.contains("NK13-0O1I-7781220")) << "the exact font reads back as typed";
}

TEST_F(PdfWriterTest, TextComesInReadingOrder)
{
    const QString text =
        simplified(runTool("pdftotext", {"-raw", write(sampleDocument()), "-"}).output);
    qsizetype at = 0;
    for (const char *next : {"Light van, petrol to electric",
                             "High voltage, also after switching off",
                             "Make and model",
                             "Norrel Kurier 1300 panel van",
                             "weighbridge ticket",
                             "Orva Lumen hybrid",
                             "page 1 of",
                             "Traction system",
                             "Inverter, from donor 1",
                             "Power stage",
                             "DC link voltage",
                             "450 V",
                             "nameplate, read 3 Mar 2026",
                             "403.2 V",
                             "holds",
                             "Cabin heater, from donor 2",
                             "Masses",
                             "148.5 kg",
                             "Figure 1",
                             "Figure 8",
                             "Open points",
                             "unknown Heat carried by",
                             "Builder",
                             "M. EXEMPEL",
                             "Inspector"}) {
        const qsizetype found = text.indexOf(next, at);
        EXPECT_GE(found, 0) << next;
        at = std::max(at, found);
    }
}

TEST_F(PdfWriterTest, ATableRepeatsItsHeaderAndSplitsNoRow)
{
    Document d;
    d.title = "Wires";
    d.blocks = {longTable(200)};
    const QString path = write(d);
    const int pages = PagedLayout(d).pageCount();
    ASSERT_GT(pages, 3);
    QSet<int> rows;
    for (int page = 1; page <= pages; ++page) {
        const QString number = QString::number(page);
        const QString text =
            runTool("pdftotext", {"-layout", "-f", number, "-l", number, path, "-"}).output;
        EXPECT_TRUE(text.contains(QRegularExpression("Wire +Route +Length +Colour"))) << page;
        const QRegularExpression row(
            "W(\\d+) +cavity (\\d+) to cavity \\d+ +[0-9.]+ m +\\w+\n( +traced on)?");
        auto matches = row.globalMatch(text);
        while (matches.hasNext()) {
            const auto match = matches.next();
            const int wire = match.captured(1).toInt();
            EXPECT_EQ(match.captured(2).toInt(), wire);
            EXPECT_EQ(!match.captured(3).isEmpty(), wire % 5 == 0) << "evidence stays with its row";
            rows.insert(wire);
        }
        if (page > 1) {
            EXPECT_TRUE(text.contains("Wire list, continued"));
        }
    }
    EXPECT_EQ(rows.size(), 200);
}

TEST_F(PdfWriterTest, DecimalsStandInLine)
{
    Document d;
    Table table;
    table.columns = {{"Value", Align::Decimal, 0}, {"Note", Align::Left, 1}};
    for (const char *value : {"1.25", "22.75", "333.50", "4.5", "12", "7.125"})
        table.rows.push_back({{{value}, {"note"}}});
    d.blocks = {table};
    const QString boxes = runTool("pdftotext", {"-bbox", write(d), "-"}).output;
    std::map<QString, double> rightEdge;
    auto words = QRegularExpression("xMax=\"([0-9.]+)\"[^>]*>([0-9.]+)</word>").globalMatch(boxes);
    while (words.hasNext()) {
        const auto word = words.next();
        rightEdge[word.captured(2)] = word.captured(1).toDouble();
    }
    ASSERT_TRUE(rightEdge.contains("333.50"));
    EXPECT_NEAR(rightEdge["1.25"], rightEdge["333.50"], 0.05);
    EXPECT_NEAR(rightEdge["22.75"], rightEdge["333.50"], 0.05);
    // one figure more or less behind the sign is one figure's width
    const double figure = rightEdge["7.125"] - rightEdge["1.25"];
    EXPECT_GT(figure, 3);
    EXPECT_NEAR(rightEdge["1.25"] - rightEdge["4.5"], figure, 0.05);
    EXPECT_LT(rightEdge["12"], rightEdge["4.5"] - figure);
}

TEST_F(PdfWriterTest, TheOutlineHasEveryHeadingAtItsLevelAndPlace)
{
    const Document d = withLongTable();
    const QString path = write(d);
    const PagedLayout layout(d);
    const auto json = QJsonDocument::fromJson(
        runTool("qpdf", {"--json=2", "--json-key=outlines", path}).output.toUtf8());
    struct Found
    {
        int level;
        QString title;
        int page;
        double top;
    };
    std::vector<Found> found;
    const std::function<void(const QJsonArray &, int)> collect = [&](const QJsonArray &entries,
                                                                     int level) {
        for (const auto &value : entries) {
            const QJsonObject entry = value.toObject();
            const QString title = entry["title"].toString();
            found.push_back({level, title, entry["destpageposfrom1"].toInt(),
                             entry["dest"].toArray()[3].toDouble()});
            collect(entry["kids"].toArray(), level + 1);
        }
    };
    collect(json.object()["outlines"].toArray(), 1);
    ASSERT_EQ(found.size(), layout.bookmarks().size());
    for (std::size_t i = 0; i < found.size(); ++i) {
        const PagedLayout::Bookmark &bookmark = layout.bookmarks()[i];
        EXPECT_EQ(found[i].title, bookmark.text);
        EXPECT_EQ(found[i].page, bookmark.page + 1);
        EXPECT_NEAR(841.89 - found[i].top, bookmark.top, 10) << bookmark.text.toStdString();
        const QString number = QString::number(found[i].page);
        EXPECT_TRUE(runTool("pdftotext", {"-f", number, "-l", number, path, "-"})
                        .output.contains(bookmark.text));
    }
    EXPECT_EQ(found[0].level, 1);
    EXPECT_EQ(found[1].level, 2);
    // a level 3 heading under a level 1 heading hangs directly under it
    EXPECT_EQ(found[9].title, "To be looked at on the day");
    EXPECT_EQ(found[9].level, 2);
}

TEST_F(PdfWriterTest, TheCatalogueTellsLanguageTitleAndLinks)
{
    Document d = sampleDocument();
    d.language = "en-GB";
    const QString qdf =
        runTool("qpdf", {"--qdf", "--object-streams=disable", write(d), "-"}).output;
    EXPECT_TRUE(qdf.contains("/Lang (en-GB)"));
    EXPECT_TRUE(qdf.contains("/DisplayDocTitle true"));
    EXPECT_TRUE(qdf.contains("/PageMode /UseOutlines"));
    EXPECT_EQ(qdf.count("/Subtype /Link"), 10);
}

TEST_F(PdfWriterTest, TitlesInAnyScriptAreKept)
{
    Document d;
    d.title = QString::fromUtf8("Prüfblatt Ω (1) \\ Переоборудование");
    d.blocks = {Heading{1, QString::fromUtf8("Batterie ≥ 60 V (Übersicht)"), {}}};
    const QString path = write(d);
    EXPECT_TRUE(runTool("pdfinfo", {path}).output.contains(d.title));
    EXPECT_TRUE(runTool("qpdf", {"--json=2", "--json-key=outlines", path})
                    .output.contains(QString::fromUtf8("Batterie ≥ 60 V (Übersicht)")));
}

TEST_F(PdfWriterTest, ThePreviewPaintsThePagesOfTheFile)
{
    const Document d = sampleDocument();
    const QString path = write(d);
    const PagedLayout layout(d);
    runTool("pdftoppm", {"-r", "108", "-png", path, m_folder.filePath("page")});
    for (int page = 0; page < layout.pageCount(); ++page) {
        const QString rendered = m_folder.filePath(QStringLiteral("page-%1.png").arg(page + 1));
        // small, so that places count and not how each program smooths its edges
        const QSize small(210, 297);
        const auto shrunk = [small](const QImage &image) {
            return image.scaled(small, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
        };
        const QImage preview = shrunk(renderPage(layout, page, 108));
        const QImage file = shrunk(QImage(rendered));
        ASSERT_FALSE(file.isNull());
        double difference = 0;
        for (int y = 0; y < small.height(); ++y) {
            for (int x = 0; x < small.width(); ++x)
                difference += std::abs(qGray(preview.pixel(x, y)) - qGray(file.pixel(x, y)));
        }
        EXPECT_LT(difference / (small.width() * small.height()), 3) << "page " << page;
    }
}

TEST_F(PdfWriterTest, PhotosAreReducedToWhatPrintNeeds)
{
    Document d;
    Figure large;
    large.image.bytes = photo({4000, 3000}, 1);
    FigureRow row;
    row.figures = {large, large};
    d.blocks = {row};
    const QString path = write(d);
    EXPECT_LT(QFile(path).size(), large.image.bytes.size());
    const QString images = runTool("pdfimages", {"-list", path}).output;
    const auto image =
        QRegularExpression("image +(\\d+) +(\\d+) +rgb +3 +8 +jpeg .* (\\d+) +(\\d+) +\\S+ +\\S+\n")
            .match(images);
    ASSERT_TRUE(image.hasMatch()) << images.toStdString();
    EXPECT_NEAR(image.captured(3).toInt(), 220, 5);
}

TEST_F(PdfWriterTest, LetterPaperIsPossible)
{
    PdfOptions options;
    options.pageSize = QPageSize::Letter;
    const QString info = runTool("pdfinfo", {write(sampleDocument(), options)}).output;
    EXPECT_TRUE(info.contains("(letter)")) << info.toStdString();
}

} // namespace ohmwright::sheet
