// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/content_hash.h"

#include <QCryptographicHash>
#include <QSet>

#include <gtest/gtest.h>

#include <functional>

namespace ohmwright::sheet {

namespace {

Document small()
{
    Document d;
    d.title = "Sheet";
    d.subtitle = "Van";
    d.blocks = {
        Heading{1, "Pack", "pack"},
        Paragraph{{{"cells", Emphasis::Strong, Mark{MarkKind::Holds, {}}}}},
        List{ListKind::TickBoxes, {{"look", "closely", {}}}},
        KeyValues{{{"Mass", "985 kg", "weighed", {}, Emphasis::None}}},
        Table{"T", {{"A", Align::Decimal, 1}}, {{{{"1.5 V", "plate", {}, Emphasis::None}}}}, "-"},
        Figure{{"", "bytes", 0, 0}, "plate", "alt", metres(0.1)},
        FigureRow{{Figure{{"id", {}, 0, 0}, "a", {}, metres(0.1)}}, 2},
        Caution{"Live", {"wait"}, true},
        Signatures{{{"Builder", "built", "M"}}},
        PageBreak{},
        Contents{2},
    };
    return d;
}

template <class T>
T &block(Document &document)
{
    for (Block &each : document.blocks) {
        if (auto *found = std::get_if<T>(&each))
            return *found;
    }
    throw std::logic_error("no such block");
}

} // namespace

TEST(ContentHash, TheSameContentsHaveTheSameHash)
{
    EXPECT_EQ(contentHash(small()), contentHash(small()));
    EXPECT_EQ(contentHash(small()).size(), 64);
}

TEST(ContentHash, WhatTellsOfThePrintingDoesNotCount)
{
    Document printedLater = small();
    printedLater.revision = "Revision 9, 1 Jan 2031";
    printedLater.footer = "printed by M";
    printedLater.contentHash = "0123";
    EXPECT_EQ(contentHash(printedLater), contentHash(small()));
}

TEST(ContentHash, EveryChangeOfContentChangesIt)
{
    const std::vector<std::function<void(Document &)>> changes{
        [](Document &d) { d.title += "x"; },
        [](Document &d) { d.subtitle += "x"; },
        [](Document &d) { d.language = "de"; },
        [](Document &d) { d.blocks.pop_back(); },
        [](Document &d) { std::swap(d.blocks[0], d.blocks[1]); },
        [](Document &d) { d.blocks.push_back(PageBreak{}); },
        [](Document &d) { block<Heading>(d).level = 2; },
        [](Document &d) { block<Heading>(d).text = "pack"; },
        [](Document &d) { block<Heading>(d).anchor = "other"; },
        [](Document &d) { block<Paragraph>(d).runs[0].text = "cell"; },
        [](Document &d) { block<Paragraph>(d).runs[0].emphasis = Emphasis::None; },
        [](Document &d) { block<Paragraph>(d).runs[0].mark.reset(); },
        [](Document &d) { block<Paragraph>(d).runs[0].mark->word = "met"; },
        [](Document &d) { block<List>(d).kind = ListKind::Bullets; },
        [](Document &d) { block<List>(d).items[0].note = ""; },
        [](Document &d) { block<KeyValues>(d).rows[0].value = "986 kg"; },
        [](Document &d) { block<KeyValues>(d).rows[0].emphasis = Emphasis::Exact; },
        [](Document &d) { block<Table>(d).caption = ""; },
        [](Document &d) { block<Table>(d).columns[0].align = Align::Right; },
        [](Document &d) { block<Table>(d).rows[0].cells[0].evidence = "measured"; },
        [](Document &d) { block<Table>(d).rows[0].kind = RowKind::Total; },
        [](Document &d) {
            block<Table>(d).rows[0].cells[0].marks = {{MarkKind::Fails, {}}};
        },
        [](Document &d) { block<Table>(d).whenEmpty = "none"; },
        [](Document &d) { block<Figure>(d).image.bytes = "Bytes"; },
        [](Document &d) { block<Figure>(d).caption = ""; },
        [](Document &d) { block<FigureRow>(d).figures[0].image.id = "id2"; },
        [](Document &d) { block<FigureRow>(d).columns = 3; },
        [](Document &d) { block<Caution>(d).highVoltage = false; },
        [](Document &d) { block<Caution>(d).lines.push_back(""); },
        [](Document &d) { block<Signatures>(d).lines[0].name = ""; },
        [](Document &d) { block<Contents>(d).depth = 1; },
    };
    QSet<QString> hashes{contentHash(small())};
    for (std::size_t i = 0; i < changes.size(); ++i) {
        Document changed = small();
        changes[i](changed);
        const QString hash = contentHash(changed);
        EXPECT_FALSE(hashes.contains(hash)) << "change " << i;
        hashes.insert(hash);
    }
}

TEST(ContentHash, TextCannotMoveFromOneFieldToItsNeighbour)
{
    Document one;
    one.title = "ab";
    one.subtitle = "c";
    Document other;
    other.title = "a";
    other.subtitle = "bc";
    EXPECT_NE(contentHash(one), contentHash(other));
}

TEST(ContentHash, APictureCountsByItsShaWhetherLoadedOrNot)
{
    const QByteArray bytes("any bytes");
    Document loaded;
    loaded.blocks = {Figure{{"", bytes, 0, 0}, "c", {}, metres(0.1)}};
    Document byId;
    byId.blocks = {
        Figure{{QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex(), {}, 640, 480},
               "c",
               {},
               metres(0.1)}};
    EXPECT_EQ(contentHash(loaded), contentHash(byId));
}

// The canonical form as content_hash.cpp describes it, written out by hand.
TEST(ContentHash, IsTheShaOfTheCanonicalForm)
{
    Document d;
    d.title = "T";
    d.blocks = {Heading{2, "Ω", ""}, PageBreak{}};
    const QByteArray form("17;ohmwright sheet 1"
                          "1;T"
                          "0;"
                          "2;en"
                          "2;"
                          "7;heading"
                          "2;"
                          "2;\xce\xa9"
                          "0;"
                          "10;page break");
    EXPECT_EQ(contentHash(d).toLatin1(),
              QCryptographicHash::hash(form, QCryptographicHash::Sha256).toHex());
}

TEST(ContentHash, ShortHashIsTheFirstSixteenDigitsInFours)
{
    EXPECT_EQ(shortHash("3f9a12bc77d0e41b99887766"), "3f9a 12bc 77d0 e41b");
    EXPECT_EQ(shortHash("3f9a1"), "3f9a 1");
    EXPECT_EQ(shortHash(""), "");
}

TEST(Document, AMarkIsToldByItsWordOrItsKinds)
{
    EXPECT_EQ(wordOf({MarkKind::Holds, {}}), "holds");
    EXPECT_EQ(wordOf({MarkKind::Tight, {}}), "tight");
    EXPECT_EQ(wordOf({MarkKind::Fails, {}}), "fails");
    EXPECT_EQ(wordOf({MarkKind::Unknown, {}}), "unknown");
    EXPECT_EQ(wordOf({MarkKind::Unknown, "3 open"}), "3 open");
    EXPECT_EQ(wordOf({MarkKind::HighVoltage, "anything"}), "HV");
}

TEST(Document, ATableGetsAColumnForEveryCell)
{
    const Table table = withEveryColumn({"",
                                         {{"A", Align::Left, 0}},
                                         {{{{"1"}, {"2"}, {"3"}}, RowKind::Plain},
                                          {{{"group"}}, RowKind::Group},
                                          {{}, RowKind::Plain}},
                                         ""});
    EXPECT_EQ(table.columns.size(), 3U);
    EXPECT_EQ(table.rows[0].cells.size(), 3U);
    EXPECT_EQ(table.rows[1].cells.size(), 1U);
    EXPECT_EQ(table.rows[2].cells.size(), 3U);
}

} // namespace ohmwright::sheet
