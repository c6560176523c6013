// SPDX-License-Identifier: GPL-3.0-or-later
// Parts of one type on the build sheet: told together, and nothing of the evidence lost.
#include "core/sheet/build_sheet.h"
#include "core/sheet/document.h"
#include "tests/support/test_book.h"

#include <QStringList>

#include <variant>

namespace ohmwright {
namespace {

class SheetTypes : public testing::Test
{
protected:
    SheetTypes()
    {
        PartType type;
        type.make = QStringLiteral("Odavan");
        type.partNumber = QStringLiteral("MB-1202");
        type.name = QStringLiteral("Module");
        type.kind = PartKind::Module;
        m_type = book.add(type);
        rate({}, m_type, RatedQuantity::Voltage, RatingKind::Limit, "600 V", Evidence::Datasheet,
             "leaflet p. 1");
        rate({}, m_type, RatedQuantity::Capacity, RatingKind::Actual, "104 Ah", Evidence::Datasheet,
             "leaflet p. 2");
        Donor donor;
        donor.make = QStringLiteral("Odavan");
        donor.model = QStringLiteral("Murre");
        m_donor = book.add(donor);
    }

    Id<Part> module(const char *name, const char *serial, PartState state = PartState::Tested)
    {
        Part part = namedPart(QString::fromUtf8(name), state, PartKind::Module);
        part.type = m_type;
        part.donor = m_donor;
        part.serial = QString::fromUtf8(serial);
        return book.add(part);
    }

    void rate(Id<Part> part, Id<PartType> type, RatedQuantity quantity, RatingKind kind,
              const char *value, Evidence evidence, const char *source, const char *note = "")
    {
        Rating rating;
        rating.part = part;
        rating.type = type;
        rating.quantity = quantity;
        rating.kind = kind;
        rating.basis = kind == RatingKind::Limit ? RatingBasis::Continuous : RatingBasis::Nominal;
        if (*value)
            rating.value = amount(value);
        rating.evidence = evidence;
        rating.source = QString::fromUtf8(source);
        rating.on = QDate(2026, 3, 28);
        rating.note = QString::fromUtf8(note);
        book.add(rating);
    }

    void measured(Id<Part> part, const char *value, const char *source)
    {
        rate(part, {}, RatedQuantity::Capacity, RatingKind::Actual, value, Evidence::Measured,
             source);
    }

    // Every cell of the components section, a cell a line.
    QStringList told() const
    {
        const sheet::Document document =
            buildSheet(book.records(), {book.clock.today(), 1, {}, {}, {}});
        QStringList lines;
        bool inside = false;
        for (const sheet::Block &block : document.blocks) {
            if (const auto *heading = std::get_if<sheet::Heading>(&block);
                heading && heading->level == 1)
                inside = heading->anchor == QLatin1String("components");
            const auto *table = std::get_if<sheet::Table>(&block);
            if (!inside || !table)
                continue;
            lines << table->caption;
            for (const sheet::Row &row : table->rows)
                for (const sheet::Cell &cell : row.cells) {
                    QString line;
                    for (const sheet::Mark &mark : cell.marks)
                        line += sheet::wordOf(mark) + u' ';
                    lines << QString(line + cell.text + u'\n' + cell.evidence);
                }
        }
        // a value and its unit are held together by other spaces than those typed here
        for (QString &line : lines)
            line.replace(QChar(0x202F), u' ').replace(QChar(0x00A0), u' ');
        return lines;
    }

    static int countOf(const QStringList &lines, const char *text)
    {
        return static_cast<int>(lines.filter(QString::fromUtf8(text)).size());
    }

    TestBook book;
    Id<PartType> m_type;
    Id<Donor> m_donor;
};

TEST_F(SheetTypes, aTypesRatingsStandOnceHoweverManyPartsThereAre)
{
    for (const char *serial : {"S-1", "S-2", "S-3"})
        module(serial, serial);
    const QStringList lines = told();
    EXPECT_EQ(countOf(lines, "leaflet p. 1"), 1);
    EXPECT_EQ(countOf(lines, "leaflet p. 2"), 1);
    EXPECT_EQ(countOf(lines, "holds for each of the 3 below"), 1);
}

TEST_F(SheetTypes, aPartsLineTellsStateSerialAndDonor)
{
    module("Module 1", "S-1");
    module("Module 2", "S-2", PartState::Quarantined);
    const QStringList lines = told();
    EXPECT_EQ(countOf(lines, "Module 1\ntested, serial S-1, from Odavan Murre"), 1);
    EXPECT_EQ(countOf(lines, "Module 2\nquarantined, serial S-2, from Odavan Murre"), 1);
}

TEST_F(SheetTypes, whatMostPartsRestOnIsToldOnceAndWhatDiffersOnItsLine)
{
    for (const char *serial : {"S-1", "S-2", "S-3"})
        measured(module(serial, serial), "95 Ah", "full to empty at 35 A");
    measured(module("S-4", "S-4"), "81 Ah", "by the workshop");
    const QStringList lines = told();
    EXPECT_EQ(countOf(lines, "95 Ah"), 3);
    EXPECT_EQ(countOf(lines, "full to empty at 35 A"), 1);
    EXPECT_EQ(countOf(lines, "81 Ah\nmeasured, by the workshop"), 1);
}

TEST_F(SheetTypes, noRatingOfAGroupedPartIsLeftOut)
{
    const Id<Part> one = module("Module 1", "S-1");
    const Id<Part> two = module("Module 2", "S-2");
    measured(one, "95.8 Ah", "first cycle");
    rate(one, {}, RatedQuantity::Capacity, RatingKind::Actual, "98 Ah", Evidence::Seller,
         "said on the phone");
    rate(two, {}, RatedQuantity::Capacity, RatingKind::Actual, "", Evidence::Assumed, "the yard",
         "nobody will test it");
    const QString all = told().join(u'\n');
    for (const char *expected : {"95.8 Ah", "first cycle", "98 Ah", "said on the phone", "the yard",
                                 "nobody will test it", "104 Ah"})
        EXPECT_TRUE(all.contains(QString::fromUtf8(expected))) << expected;
}

TEST_F(SheetTypes, aReworkedPartIsToldWholeSinceNothingOfItsTypeMayStillHold)
{
    module("Module 1", "S-1");
    module("Module 2", "S-2");
    Part part = *book.records().find(module("Module 3", "S-3"));
    for (const RatedQuantity quantity :
         {RatedQuantity::Mass, RatedQuantity::Length, RatedQuantity::Width})
        rate({}, m_type, quantity, RatingKind::Actual,
             quantity == RatedQuantity::Mass ? "27 kg" : "200 mm", Evidence::Datasheet, "leaflet");
    part.reworkedOn = QDate(2026, 5, 1);
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("rework"), [&] { return book->update(part); }));
    const QStringList lines = told();
    EXPECT_EQ(countOf(lines, "holds for each of the 2 below"), 1);
    EXPECT_EQ(countOf(lines, "Module 3 — tested"), 1);
    EXPECT_EQ(countOf(lines, "stale datasheet"), 5);
}

TEST_F(SheetTypes, anAssemblySaysWhatOfItIsToldWithItsType)
{
    const Id<Part> pack = book.add(namedPart(QStringLiteral("Pack")));
    for (const char *serial : {"S-1", "S-2"}) {
        Part part = *book.records().find(module(serial, serial));
        part.partOf = pack;
        OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("put"), [&] { return book->update(part); }));
    }
    const QStringList lines = told();
    EXPECT_EQ(countOf(lines, "also holds 2 × Odavan MB-1202, told with their type"), 1);
    EXPECT_EQ(countOf(lines, "In Pack"), 1);
}

TEST_F(SheetTypes, aSinglePartKeepsItsOwnRows)
{
    measured(module("Module 1", "S-1"), "95 Ah", "first cycle");
    const QStringList lines = told();
    EXPECT_EQ(countOf(lines, "holds for each"), 0);
    EXPECT_EQ(countOf(lines, "Module 1 — tested"), 1);
    EXPECT_EQ(countOf(lines, "clash measured, first cycle, 28 Mar 2026"), 1);
    EXPECT_EQ(countOf(lines, "Also recorded: 104 Ah (datasheet, leaflet p. 2, 28 Mar 2026)"), 1);
}

TEST_F(SheetTypes, aClashOfAPartsOwnWithItsTypeIsMarkedInItsLine)
{
    measured(module("Module 1", "S-1"), "95 Ah", "first cycle");
    module("Module 2", "S-2");
    const QStringList lines = told();
    EXPECT_EQ(countOf(lines, "clash 95 Ah"), 1);
    EXPECT_EQ(countOf(lines, "as the type"), 1);
}

} // namespace
} // namespace ohmwright
