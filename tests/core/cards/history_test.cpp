// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cards/history.h"
#include "core/parts/rating_edits.h"
#include "tests/support/test_book.h"

#include <gmock/gmock.h>

#include <random>

namespace ohmwright {
namespace {

QString u(const char *text)
{
    return QString::fromUtf8(text);
}

class HistoryTest : public testing::Test
{
protected:
    std::vector<StepChange> all()
    {
        std::vector<StepChange> steps;
        Result<History> history = History::of(*book);
        EXPECT_TRUE(history.has_value());
        while (history) {
            Result<std::optional<StepChange>> step = history->next();
            EXPECT_TRUE(step.has_value()) << (step ? "" : step.error().sentence.toStdString());
            if (!step || !*step)
                break;
            steps.push_back(std::move(**step));
        }
        return steps;
    }
    // The part's voltage limit, as a card would save it.
    Id<Rating> rate(Id<Part> part, const char *volts, Evidence evidence,
                    std::optional<Id<Rating>> old = {})
    {
        Rating rating = old ? *book.records().find(*old) : Rating{};
        rating.part = part;
        rating.current = CurrentKind::Dc;
        rating.value = amount(volts);
        rating.evidence = evidence;
        const Result<Id<Rating>> saved = saveRating(*book, rating);
        EXPECT_TRUE(saved.has_value());
        return saved.value_or(Id<Rating>());
    }

    TestBook book;
};

TEST_F(HistoryTest, TellsWhichRatingChangedFromWhatToWhat)
{
    const Id<Part> heater = book.add(namedPart(u("Heater")));
    const Id<Rating> rating = rate(heater, "480 V", Evidence::Seller);
    rate(heater, "400 V", Evidence::Nameplate, rating);

    const std::vector<StepChange> steps = all();
    ASSERT_EQ(steps.size(), 3U);
    ASSERT_EQ(steps[0].records.size(), 1U);
    const RecordChange &change = steps[0].records[0];
    EXPECT_EQ(change.change, RowChange::Changed);
    EXPECT_EQ(change.record.table, "rating");
    EXPECT_EQ(change.holder->name, u("Heater"));
    EXPECT_TRUE(change.concerns("part", heater.value()));
    QStringList lines;
    for (const FieldChange &field : change.fields)
        lines << told(field, field.field);
    EXPECT_EQ(lines, (QStringList{u("value: 480 V → 400 V"), u("evidence: seller → nameplate")}))
        << lines.join(u'|').toStdString();
    EXPECT_EQ(steps[1].records[0].change, RowChange::Added);
    EXPECT_EQ(steps[0].step.number, steps[1].step.number + 1) << "newest first";
}

TEST_F(HistoryTest, LeavesTheBookAlone)
{
    const Id<Part> heater = book.add(namedPart(u("Heater")));
    rate(heater, "480 V", Evidence::Seller);
    const std::vector<Rating> before = book.records().all<Rating>().rows();
    const auto undo = book->undoText();
    ASSERT_FALSE(all().empty());
    EXPECT_EQ(book.records().all<Rating>().rows(), before);
    EXPECT_EQ(book.records().all<Part>().size(), 1U);
    EXPECT_EQ(book->undoText(), undo);
    EXPECT_EQ(book->history()->size(), 2U);
}

TEST_F(HistoryTest, WhatWasTakenOutIsToldByItsNameAndWhatItWas)
{
    const Id<Part> heater = book.add(namedPart(u("Heater")));
    OHMWRIGHT_ASSERT_OK(removeRating(*book, rate(heater, "480 V", Evidence::Seller)));
    const RecordChange change = all().front().records.front();
    EXPECT_EQ(change.change, RowChange::Removed);
    EXPECT_THAT(told(change, true).toStdString(), testing::HasSubstr("of “Heater” taken out"));
    const auto value =
        std::find_if(change.fields.begin(), change.fields.end(),
                     [](const FieldChange &field) { return field.field == u("value"); });
    ASSERT_NE(value, change.fields.end());
    EXPECT_EQ(value->before, u("480 V"));
    EXPECT_TRUE(value->after.isEmpty());
}

TEST_F(HistoryTest, WhatIsReferredToIsCalledByItsName)
{
    const RecordKind &donors = *recordKind("donor");
    OHMWRIGHT_ASSERT_OK(recordKind("seller")->save(*book, {}, {{u("name"), u("North Yard")}}));
    OHMWRIGHT_ASSERT_OK(
        donors.save(*book, {}, {{u("make"), u("Calder")}, {u("seller"), u("north-yard")}}));
    const std::vector<StepChange> steps = all();
    const auto &fields = steps.front().records.front().fields;
    EXPECT_TRUE(std::any_of(fields.begin(), fields.end(), [](const FieldChange &field) {
        return field.field == u("seller") && field.after == u("North Yard");
    }));
}

TEST_F(HistoryTest, WhatWasTakenBackIsToldAsThatAndChangesNothing)
{
    book.add(namedPart(u("Heater")));
    book.add(namedPart(u("Motor")));
    OHMWRIGHT_ASSERT_OK(book->undo());
    std::vector<StepChange> steps = all();
    ASSERT_EQ(steps.size(), 2U);
    EXPECT_EQ(steps[0].step.state, StepState::Undone);
    EXPECT_TRUE(steps[0].records.empty());
    EXPECT_EQ(steps[1].records.front().record.name, u("Heater"));
    book.add(namedPart(u("Inverter")));
    steps = all();
    ASSERT_EQ(steps.size(), 3U);
    EXPECT_EQ(steps[1].step.state, StepState::Overtaken);
}

TEST_F(HistoryTest, OfAPartTellsItsRatingsAndLeavesOutTheRest)
{
    const Id<Part> heater = book.add(namedPart(u("Heater")));
    const Id<Part> motor = book.add(namedPart(u("Motor")));
    rate(heater, "480 V", Evidence::Seller);
    rate(motor, "380 V", Evidence::Seller);
    const auto steps = historyOf(*book, "part", heater.value());
    OHMWRIGHT_ASSERT_OK(steps);
    ASSERT_EQ(steps->size(), 2U);
    EXPECT_EQ((*steps)[0].records.front().record.table, "rating");
}

TEST_F(HistoryTest, OfWhatWasLoadedKeepsOnlyTheSentence)
{
    book.add(namedPart(u("Heater")));
    OHMWRIGHT_ASSERT_OK(book->settle());
    const std::vector<StepChange> steps = all();
    ASSERT_EQ(steps.size(), 1U);
    EXPECT_TRUE(steps[0].records.empty());
    EXPECT_EQ(steps[0].step.state, StepState::Kept);
}

// Whatever order a seller's fields were typed in, the steps told lead from the first to the last.
TEST_F(HistoryTest, StepsJoinWithoutAGap)
{
    const RecordKind &sellers = *recordKind("seller");
    const auto id = sellers.save(*book, {}, {{u("name"), u("Yard")}});
    OHMWRIGHT_ASSERT_OK(id);
    std::mt19937 chance(11);
    const QStringList fields{u("place"), u("note"), u("name")};
    for (int i = 0; i < 60; ++i) {
        const QString &field = fields[static_cast<qsizetype>(chance() % 3)];
        const auto pick = chance() % 4;
        const QString text =
            pick == 0 && field != u("name") ? QString() : u("text %1").arg(chance() % 5);
        OHMWRIGHT_ASSERT_OK(sellers.save(*book, *id, {{field, text}}));
        if (chance() % 5 == 0) {
            OHMWRIGHT_ASSERT_OK(book->undo());
        }
    }
    FieldTexts now = *sellers.texts(book.records(), *id);
    for (const StepChange &step : all())
        for (const RecordChange &record : step.records)
            for (const FieldChange &field : record.fields) {
                EXPECT_EQ(now[field.field], field.after) << field.field.toStdString();
                now[field.field] = field.before;
            }
    for (const auto &[field, text] : now)
        EXPECT_TRUE(text.isEmpty()) << field.toStdString() << ": " << text.toStdString();
}

TEST_F(HistoryTest, AKeyOfSeveralThingsAsksWhich)
{
    Part part = namedPart(u("Heater"));
    part.key = u("heater");
    book.add(part);
    Task task = namedTask(u("Fit the heater"));
    task.key = u("heater");
    book.add(task);
    const auto both = recordNamed(book.records(), u("heater"));
    ASSERT_FALSE(both.has_value());
    EXPECT_THAT(both.error().whatToDo.toStdString(), testing::HasSubstr("task:heater"));
    EXPECT_EQ(recordNamed(book.records(), u("task:heater"))->name, u("Fit the heater"));
    PartType type;
    type.name = u("Heater 5 kW");
    type.key = u("heater");
    book.add(type);
    EXPECT_EQ(recordNamed(book.records(), u("type:heater"))->name, u("Heater 5 kW"));
    EXPECT_FALSE(recordNamed(book.records(), u("nothing")).has_value());
}

} // namespace
} // namespace ohmwright
