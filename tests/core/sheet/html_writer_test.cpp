// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/content_hash.h"
#include "core/sheet/html_writer.h"

#include <QFile>
#include <QSet>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

namespace ohmwright::sheet {

namespace {

struct Element
{
    QString name;
    std::map<QString, QString> attributes;
    QString text; // with all that is inside
};

// All elements in document order; an empty list if the markup is not well-formed XML.
std::vector<Element> parse(const QByteArray &html)
{
    QXmlStreamReader reader(html);
    std::vector<Element> elements;
    std::vector<std::size_t> open;
    while (!reader.atEnd()) {
        switch (reader.readNext()) {
        case QXmlStreamReader::StartElement: {
            Element element{reader.name().toString(), {}, {}};
            for (const QXmlStreamAttribute &attribute : reader.attributes())
                element.attributes[attribute.name().toString()] = attribute.value().toString();
            open.push_back(elements.size());
            elements.push_back(element);
            break;
        }
        case QXmlStreamReader::Characters:
            for (const std::size_t index : open)
                elements[index].text += reader.text();
            break;
        case QXmlStreamReader::EndElement:
            open.pop_back();
            break;
        default:
            break;
        }
    }
    EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
    return reader.hasError() ? std::vector<Element>() : elements;
}

std::vector<Element> named(const std::vector<Element> &elements, const QString &name)
{
    std::vector<Element> result;
    std::ranges::copy_if(elements, std::back_inserter(result),
                         [&name](const Element &element) { return element.name == name; });
    return result;
}

QString attribute(const Element &element, const QString &name)
{
    const auto found = element.attributes.find(name);
    return found == element.attributes.end() ? QString() : found->second;
}

bool hasText(const std::vector<Element> &elements, const QString &name, const QString &text)
{
    return std::ranges::any_of(elements, [&](const Element &element) {
        return element.name == name && element.text == text;
    });
}

Document everyBlockSaying(const QString &text)
{
    const std::vector<Mark> marks{{MarkKind::Fails, text}, {MarkKind::HighVoltage, {}}};
    Document d;
    d.title = text;
    d.subtitle = text;
    d.revision = text;
    d.footer = text;
    d.contentHash = text;
    d.blocks = {
        Contents{3},
        Heading{1, text, text},
        Heading{2, text, text},
        Heading{3, text, {}},
        Paragraph{{{text, Emphasis::None, {}},
                   {text, Emphasis::Strong, marks[0]},
                   {text, Emphasis::Muted, {}},
                   {text, Emphasis::Exact, {}}}},
        List{ListKind::Bullets, {{text, text, marks}}},
        List{ListKind::Numbers, {{text, text, marks}}},
        List{ListKind::TickBoxes, {{text, text, marks}}},
        KeyValues{{{text, text, text, marks, Emphasis::Exact}}},
        Table{text,
              {{text, Align::Left, 1}, {text, Align::Right, 1}, {text, Align::Decimal, 1}},
              {{{{text, text, marks, Emphasis::None}}, RowKind::Group},
               {{{text, text, marks, Emphasis::None}, {text}, {"1.5" + text, text, marks, {}}},
                RowKind::Plain},
               {{{text}}, RowKind::Total}},
              text},
        Table{text, {{text, Align::Left, 0}}, {}, text},
        Figure{{"", QByteArray("\x89PNG\r\n\x1a\n", 8), 4, 3}, text, text, metres(0.1)},
        FigureRow{{Figure{{text, {}, 0, 0}, text, {}, metres(0.1)}}, 3},
        Caution{text, {text, text}, true},
        Signatures{{{text, text, text}}},
        PageBreak{},
    };
    return d;
}

const char *const kHostile =
    "</style></title><script>alert(1)</script> \" onload=\"x\" ' &amp; &lt; ]]> <!-- -- > "
    "javascript:x ${} \\";

} // namespace

TEST(HtmlWriter, IsWellFormedAndCarriesEveryBlock)
{
    const auto elements = parse(toHtml(everyBlockSaying("plain words")));
    ASSERT_FALSE(elements.empty());
    EXPECT_EQ(named(elements, "h1").size(), 1U);
    EXPECT_EQ(named(elements, "h2").size(), 1U);
    EXPECT_EQ(named(elements, "h3").size(), 1U);
    EXPECT_EQ(named(elements, "h4").size(), 1U);
    EXPECT_EQ(named(elements, "table").size(), 2U);
    EXPECT_EQ(named(elements, "caption").size(), 2U);
    EXPECT_EQ(named(elements, "figure").size(), 2U);
    EXPECT_EQ(named(elements, "figcaption").size(), 2U);
    EXPECT_EQ(named(elements, "img").size(), 1U);
    EXPECT_EQ(named(elements, "nav").size(), 1U);
    EXPECT_TRUE(hasText(elements, "title", "plain words"));
    EXPECT_TRUE(hasText(elements, "dt", "Signature"));
    EXPECT_EQ(attribute(elements.front(), "lang"), "en");
}

TEST(HtmlWriter, HostileTextStaysText)
{
    const QString hostile = QString::fromUtf8(kHostile);
    const QByteArray html = toHtml(everyBlockSaying(hostile));
    const auto elements = parse(html);
    ASSERT_FALSE(elements.empty());
    EXPECT_TRUE(named(elements, "script").empty());
    EXPECT_EQ(named(elements, "style").size(), 1U);
    for (const Element &element : elements) {
        for (const auto &[name, value] : element.attributes)
            EXPECT_FALSE(name.startsWith("on")) << element.name.toStdString();
    }
    EXPECT_FALSE(html.contains("<script"));
    EXPECT_TRUE(hasText(elements, "h2", hostile));
    EXPECT_TRUE(hasText(elements, "strong", hostile));
    EXPECT_TRUE(hasText(elements, "dd", hostile));
    // as many elements as with harmless words: nothing in the text became one
    EXPECT_EQ(elements.size(), parse(toHtml(everyBlockSaying("plain"))).size());
}

TEST(HtmlWriter, TextThatNoXmlCanCarryDoesNotBreakIt)
{
    QString odd = QStringLiteral("a\u0001\u000b\ufffe");
    odd += QChar(0);
    odd += QChar(0xd83d);
    odd += QStringLiteral("\r\nb\u2028c");
    EXPECT_FALSE(parse(toHtml(everyBlockSaying(odd))).empty());
}

TEST(HtmlWriter, LineFeedsBecomeBreaks)
{
    Document d;
    d.blocks = {Paragraph{{{"one\ntwo", Emphasis::None, {}}}}};
    EXPECT_TRUE(toHtml(d).contains("<p>one<br/>two</p>"));
}

TEST(HtmlWriter, IdsAreUniqueAndEveryLinkHasItsTarget)
{
    Document d = everyBlockSaying("same");
    d.blocks.push_back(Heading{1, "mark", "mark-holds"});
    d.blocks.push_back(Heading{1, "spaces", "two  words\there"});
    const auto elements = parse(toHtml(d));
    QSet<QString> ids;
    for (const Element &element : elements) {
        const QString id = attribute(element, "id");
        if (id.isEmpty())
            continue;
        EXPECT_FALSE(ids.contains(id)) << id.toStdString();
        EXPECT_FALSE(id.contains(' ') || id.contains('\t'));
        ids.insert(id);
    }
    for (const Element &element : elements) {
        const QString link = attribute(element, "href");
        if (!link.isEmpty()) {
            ASSERT_TRUE(link.startsWith('#')) << "nothing is fetched from elsewhere";
            EXPECT_TRUE(ids.contains(link.mid(1))) << link.toStdString();
        }
    }
}

// WCAG 2.2, 1.3.1 with technique H63 (scope) and 1.1.1 with H37 (alt).
TEST(HtmlWriter, HeaderCellsHaveAScopeAndPicturesAnAlternative)
{
    const auto elements = parse(toHtml(everyBlockSaying("words")));
    const auto headers = named(elements, "th");
    EXPECT_FALSE(headers.empty());
    for (const Element &header : headers) {
        const QString scope = attribute(header, "scope");
        EXPECT_TRUE(scope == "col" || scope == "row" || scope == "rowgroup");
    }
    for (const Element &image : named(elements, "img"))
        EXPECT_EQ(attribute(image, "alt"), "words");
}

TEST(HtmlWriter, MarksAreToldByShapeAndWord)
{
    Document d;
    d.blocks = {Paragraph{{{"", Emphasis::None, Mark{MarkKind::Holds, {}}},
                           {"", Emphasis::None, Mark{MarkKind::Tight, {}}},
                           {"", Emphasis::None, Mark{MarkKind::Fails, {}}},
                           {"", Emphasis::None, Mark{MarkKind::Unknown, {}}},
                           {"", Emphasis::None, Mark{MarkKind::HighVoltage, {}}}}}};
    const QByteArray html = toHtml(d);
    for (const char *kind : {"holds", "tight", "fails", "unknown"}) {
        const QByteArray mark = QByteArray("<use href=\"#mark-") + kind + "\"/></svg>" + kind;
        EXPECT_TRUE(html.contains(mark)) << kind;
    }
    EXPECT_TRUE(html.contains(">HV</abbr>"));
}

TEST(HtmlWriter, DecimalsAreSetInTwoHalvesThatReadAsOneFigure)
{
    Document d;
    d.blocks = {Table{
        "", {{"V", Align::Decimal, 0}}, {{{{"403.25 V"}}}, {{{"12 V"}}}, {{{"unknown"}}}}, ""}};
    const auto elements = parse(toHtml(d));
    EXPECT_TRUE(hasText(elements, "th", "403.25 V"));
    EXPECT_TRUE(hasText(elements, "th", "unknown"));
    QSet<QString> widths;
    for (const Element &span : named(elements, "span")) {
        if (attribute(span, "class") == "fraction")
            widths.insert(attribute(span, "style"));
    }
    EXPECT_EQ(widths.size(), 1);
}

TEST(HtmlWriter, PicturesAreInsideTheFileOrTheirLackIsTold)
{
    Document d;
    d.blocks = {Figure{{"a", {}, 0, 0}, "jpeg", {}, metres(0.1)},
                Figure{{"b", {}, 0, 0}, "gone", {}, metres(0.1)},
                Figure{{"c", {}, 0, 0}, "not a picture", {}, metres(0.1)}};
    const QByteArray html = toHtml(d, [](const Image &image) {
        if (image.id == "a")
            return QByteArray("\xff\xd8\xff\xe0 and so on");
        return image.id == "c" ? QByteArray("%PDF-1.7") : QByteArray();
    });
    EXPECT_TRUE(html.contains("src=\"data:image/jpeg;base64,/9j/4CBhbmQgc28gb24=\""));
    EXPECT_TRUE(html.contains("could not be found"));
    EXPECT_TRUE(html.contains("cannot be shown here"));
    EXPECT_TRUE(html.contains("Figure 3"));
}

TEST(HtmlWriter, AnEmptyDocumentIsStillAFile)
{
    EXPECT_FALSE(parse(toHtml(Document())).empty());
}

TEST(HtmlWriter, AnEmptyTableSaysSo)
{
    Document d;
    d.blocks = {Table{"Fuses", {{"A", Align::Left, 0}}, {}, {}}};
    EXPECT_TRUE(hasText(parse(toHtml(d)), "td", "None recorded."));
}

TEST(HtmlWriter, TheSameDocumentGivesTheSameBytes)
{
    EXPECT_EQ(toHtml(everyBlockSaying("x")), toHtml(everyBlockSaying("x")));
}

TEST(HtmlWriter, WritesAWholeFileOrNone)
{
    const QTemporaryDir folder;
    const Document d = everyBlockSaying("x");
    ASSERT_TRUE(writeHtml(d, folder.filePath("sheet.html")).has_value());
    QFile file(folder.filePath("sheet.html"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), toHtml(d));
    EXPECT_FALSE(writeHtml(d, folder.filePath("none/sheet.html")).has_value());
}

} // namespace ohmwright::sheet
