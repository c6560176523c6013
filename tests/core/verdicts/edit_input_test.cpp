// SPDX-License-Identifier: GPL-3.0-or-later
// Inputs of checks changed in place, wherever in the book they lie, and find-out tasks from them.
#include "core/verdicts/book_inputs.h"
#include "core/verdicts/edit_input.h"
#include "tests/support/test_book.h"

#include <gtest/gtest.h>

namespace ohmwright {
namespace {

class EditInput : public testing::Test
{
protected:
    EditInput()
    {
        Part part = namedPart(QStringLiteral("Main contactor"));
        part.key = QStringLiteral("contactor");
        contactor = book.add(part);
    }

    const CheckFigure *figure(const char *name) const
    {
        for (const CheckFigure &one : book.records().all<CheckFigure>())
            if (one.figure == QLatin1String(name))
                return &one;
        return nullptr;
    }

    static QString drag()
    {
        return print(FigureAddress{QStringLiteral("vehicle.drag_coefficient"), {}, {}});
    }

    const FigureName limit{RatedQuantity::Voltage, RatingKind::Limit, RatingBasis::Continuous,
                           CurrentKind::Dc};
    TestBook book;
    Id<Part> contactor;
};

TEST_F(EditInput, AddressesReadBackAsTheyWerePrinted)
{
    const InputAddress addresses[] = {
        FigureAddress{QStringLiteral("vehicle.drag_coefficient"), {}, {}},
        FigureAddress{QStringLiteral("precharge.time"), "circuit", QStringLiteral("traction")},
        RatingAddress{QStringLiteral("contactor"), limit, {}},
        RatingAddress{QStringLiteral("contactor"),
                      {RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, {}},
                      amount("10 s")},
        FieldAddress{"vehicle", {}, QStringLiteral("wheelbase")}};
    for (const InputAddress &address : addresses)
        EXPECT_EQ(parseInputAddress(print(address)), address);
    for (const char *text : {"", "figure", "rating|a|b|c|d|e|f", "field|x"})
        EXPECT_FALSE(parseInputAddress(QString::fromLatin1(text)));
}

TEST_F(EditInput, AFigureIsMadeChangedAndTakenBack)
{
    OHMWRIGHT_ASSERT_OK(editInput(*book, drag(), QStringLiteral("0.36, community, forum list")));
    ASSERT_TRUE(figure("vehicle.drag_coefficient"));
    EXPECT_EQ(figure("vehicle.drag_coefficient")->evidence, Evidence::Community);
    EXPECT_EQ(figure("vehicle.drag_coefficient")->source, QStringLiteral("forum list"));
    OHMWRIGHT_ASSERT_OK(editInput(*book, drag(), QStringLiteral("0.38")));
    EXPECT_EQ(book.records().all<CheckFigure>().size(), 1U);
    EXPECT_EQ(figure("vehicle.drag_coefficient")->value, amount("0.38"));
    EXPECT_EQ(figure("vehicle.drag_coefficient")->evidence, Evidence::Assumed)
        << "nobody said where it came from";
    OHMWRIGHT_ASSERT_OK(book->undo());
    EXPECT_EQ(figure("vehicle.drag_coefficient")->value, amount("0.36"));
}

TEST_F(EditInput, AnEmptyLineSaysThatItIsNotKnown)
{
    OHMWRIGHT_ASSERT_OK(editInput(*book, drag(), QStringLiteral("0.36")));
    OHMWRIGHT_ASSERT_OK(editInput(*book, drag(), {}));
    EXPECT_FALSE(figure("vehicle.drag_coefficient")->value);
    const BookInputs inputs(book.records(), book.clock.today());
    EXPECT_FALSE(inputs.figure<double>("vehicle.drag_coefficient").value);
    EXPECT_TRUE(inputs.has("vehicle.drag_coefficient"));
}

TEST_F(EditInput, ACommaInTheNumberIsNoSource)
{
    const QString area = print(FigureAddress{QStringLiteral("vehicle.frontal_area"), {}, {}});
    OHMWRIGHT_ASSERT_OK(editInput(*book, area, QStringLiteral("2,6 m2, measured, from a photo")));
    EXPECT_EQ(figure("vehicle.frontal_area")->value, amount("2.6 m2"));
    EXPECT_EQ(figure("vehicle.frontal_area")->source, QStringLiteral("from a photo"));
}

TEST_F(EditInput, WhatCannotBeReadChangesNothing)
{
    const Outcome refused = editInput(*book, drag(), QStringLiteral("35 kg"));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ProblemCode::BadInput);
    EXPECT_FALSE(figure("vehicle.drag_coefficient"));
    EXPECT_FALSE(editInput(*book, QStringLiteral("nonsense"), QStringLiteral("1")));
}

TEST_F(EditInput, ARatingTypedHereIsThePartsOwn)
{
    PartType type;
    type.name = QStringLiteral("Contactor type");
    const Id<PartType> typeId = book.add(type);
    Rating ofType;
    ofType.type = typeId;
    ofType.current = CurrentKind::Dc;
    ofType.value = amount("450 V");
    ofType.evidence = Evidence::Datasheet;
    book.add(ofType);
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("type"), [&]() -> Outcome {
        Part part = *book.records().find(contactor);
        part.type = typeId;
        return book->update(part);
    }));
    const QString address = print(RatingAddress{QStringLiteral("contactor"), limit, {}});
    OHMWRIGHT_ASSERT_OK(editInput(*book, address, QStringLiteral("400 V, nameplate")));
    const Figure figure = figureFor(book.records(), *book.records().find(contactor), limit);
    EXPECT_EQ(figure.value(), amount("400 V"));
    EXPECT_EQ(book.records().of<Rating>(typeId).size(), 1U) << "the type's stays as it is";
    OHMWRIGHT_ASSERT_OK(editInput(*book, address, QStringLiteral("420 V, nameplate")));
    EXPECT_EQ(book.records().of<Rating>(contactor).size(), 1U);
}

TEST_F(EditInput, AFieldOfAnotherRecordKeepsItsOwnRules)
{
    const QString wheelbase = print(FieldAddress{"vehicle", {}, QStringLiteral("wheelbase")});
    OHMWRIGHT_ASSERT_OK(editInput(*book, wheelbase, QStringLiteral("2690 mm")));
    EXPECT_EQ(book.records().vehicle().wheelbase, amount("2690 mm"));
    EXPECT_FALSE(editInput(*book, wheelbase, QStringLiteral("-3 m")));
    EXPECT_EQ(book.records().vehicle().wheelbase, amount("2690 mm"));
}

TEST_F(EditInput, AnUnknownFigureOfAPartHoldsUpWhatNeedsThePart)
{
    const Id<Task> fit = book.add(namedTask(QStringLiteral("Fit the contactor")));
    TaskNeed need;
    need.task = fit;
    need.kind = NeedKind::Part;
    need.part = contactor;
    book.add(need);
    Check check;
    check.title = QStringLiteral("Precharge");
    CheckInput input;
    input.origin.name = QStringLiteral("pulse energy");
    input.origin.field = print(FigureAddress{QStringLiteral("precharge.pulse_energy"), "part",
                                             QStringLiteral("contactor")});
    check.inputs.push_back(input);
    const Result<Id<Task>> made = findOut(*book, check, QStringLiteral("pulse energy"));
    OHMWRIGHT_ASSERT_OK(made);
    const auto needs = book.records().of<TaskNeed>(fit);
    EXPECT_TRUE(std::any_of(needs.begin(), needs.end(),
                            [&](const TaskNeed &one) { return one.after == *made; }));
    const Result<Id<Task>> again = findOut(*book, check, QStringLiteral("pulse energy"));
    OHMWRIGHT_ASSERT_OK(again);
    EXPECT_EQ(*again, *made) << "one task is enough";
}

} // namespace
} // namespace ohmwright
