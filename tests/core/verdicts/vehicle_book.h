// SPDX-License-Identifier: GPL-3.0-or-later
// A book in memory with short ways to put in what the vehicle's checks read, and to ask for them.
#pragma once

#include "core/records/check_figures.h"
#include "core/verdicts/input_address.h"
#include "core/verdicts/judge_book.h"
#include "tests/support/test_book.h"

#include <cmath>
#include <vector>

namespace ohmwright {

class VehicleBook
{
public:
    TestBook book;

    Id<Part> part(const char *name, std::optional<PartRole> role = {},
                  std::optional<Id<Part>> within = {}, PartKind kind = PartKind::Unit)
    {
        Part made = namedPart(QString::fromUtf8(name), PartState::InHand, kind);
        made.role = role;
        made.partOf = within;
        return book.add(made);
    }
    void rating(Id<Part> part, RatedQuantity quantity, RatingKind kind, RatingBasis basis,
                const char *value, std::optional<CurrentKind> current = {})
    {
        Rating made;
        made.part = part;
        made.quantity = quantity;
        made.kind = kind;
        made.basis = basis;
        made.current = current;
        made.value = amount(value);
        made.evidence = Evidence::Datasheet;
        book.add(made);
    }
    void actual(Id<Part> part, RatedQuantity quantity, const char *value)
    {
        rating(part, quantity, RatingKind::Actual, RatingBasis::Nominal, value);
    }
    // Of the vehicle; a word where the figure is a choice.
    Id<CheckFigure> figure(const char *name, const char *value) { return add(made(name, value)); }
    Id<CheckFigure> figure(const char *name, const char *value, Id<Part> part)
    {
        CheckFigure figure = made(name, value);
        figure.part = part;
        return add(figure);
    }
    Id<CheckFigure> figure(const char *name, const char *value, Id<TestRecord> test)
    {
        CheckFigure figure = made(name, value);
        figure.test = test;
        return add(figure);
    }
    void remove(Id<CheckFigure> figure)
    {
        OHMWRIGHT_ASSERT_OK(
            book->edit(QStringLiteral("remove"), [&] { return book->remove(figure); }));
    }
    void mass(const char *name, MassDirection direction, const char *mass, const char *place,
              const char *height = nullptr)
    {
        MassEntry entry;
        entry.name = QString::fromUtf8(name);
        entry.direction = direction;
        entry.mass = amount(mass);
        entry.behindFrontAxle = amount(place);
        if (height)
            entry.height = amount(height);
        entry.evidence = Evidence::Measured;
        book.add(entry);
    }
    void threshold(const char *name, const char *value)
    {
        OwnThreshold own;
        own.name = QString::fromUtf8(name);
        own.value = amount(value);
        own.reason = QStringLiteral("asked of us by the inspector");
        book.add(own);
    }
    template <class Change>
    void vehicle(Change change)
    {
        OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("vehicle"), [&] {
            Vehicle vehicle = book.records().vehicle();
            change(vehicle);
            return book->update(vehicle);
        }));
    }

    [[nodiscard]] std::vector<Check> judged(std::string_view check) const
    {
        return judgeBook(book.records(), book.clock.today(), check);
    }
    // The one there is.
    [[nodiscard]] Check only(std::string_view check) const
    {
        const std::vector<Check> checks = judged(check);
        EXPECT_EQ(checks.size(), 1U) << check;
        return checks.size() == 1 ? checks.front() : Check();
    }

private:
    static CheckFigure made(const char *name, const char *value)
    {
        CheckFigure figure;
        figure.figure = QString::fromUtf8(name);
        const FigureInfo *info = checkFigure(figure.figure);
        EXPECT_NE(info, nullptr) << name;
        if (info && info->measure)
            figure.value = amount(value);
        else
            figure.word = QString::fromUtf8(value);
        figure.evidence = Evidence::Measured;
        return figure;
    }
    Id<CheckFigure> add(const CheckFigure &figure) { return book.add(figure); }
};

// A small van as it came.
inline void putVan(VehicleBook &van)
{
    van.vehicle([](Vehicle &v) {
        v.wheelbase = amount("2.5 m");
        v.frontLeft = amount("320 kg");
        v.frontRight = amount("330 kg");
        v.rearLeft = amount("240 kg");
        v.rearRight = amount("250 kg");
        v.frontAxlePlate = amount("800 kg");
        v.rearAxlePlate = amount("900 kg");
        v.grossMassPlate = amount("1650 kg");
        v.tyreSize = QStringLiteral("165/70 R14C 89/87R");
    });
}

// And what came out of it, went in, and is carried: 1420 kg as driven.
inline void putMasses(VehicleBook &van)
{
    putVan(van);
    van.mass("engine", MassDirection::Out, "150 kg", "-0.2 m", "0.5 m");
    van.mass("battery", MassDirection::In, "280 kg", "1.4 m", "0.35 m");
    van.mass("people", MassDirection::Load, "150 kg", "1.2 m", "0.8 m");
}

// Told the same: verdict, margin, every comparison.
inline void expectSame(const Check &judged, const Check &byHand)
{
    EXPECT_EQ(judged.verdict, byHand.verdict) << judged.sentence.toStdString();
    ASSERT_EQ(judged.margin.has_value(), byHand.margin.has_value());
    if (judged.margin) {
        EXPECT_NEAR(*judged.margin, *byHand.margin, 1e-9 * std::abs(*byHand.margin) + 1e-12);
    }
    EXPECT_EQ(judged.result, byHand.result);
    ASSERT_EQ(judged.comparisons.size(), byHand.comparisons.size());
    for (std::size_t i = 0; i < judged.comparisons.size(); ++i) {
        EXPECT_EQ(judged.comparisons[i].what, byHand.comparisons[i].what);
        EXPECT_EQ(judged.comparisons[i].value, byHand.comparisons[i].value);
        EXPECT_EQ(judged.comparisons[i].limit, byHand.comparisons[i].limit);
    }
}

// Unknown for that input, and it says under which address it can be filled in.
inline void expectUnknown(const Check &check, const char *name)
{
    const QString asked = QString::fromUtf8(name);
    EXPECT_EQ(check.verdict, Verdict::Unknown) << check.sentence.toStdString();
    EXPECT_TRUE(check.unknowns.contains(asked)) << check.unknowns.join(u", ").toStdString();
    bool found = false;
    for (const CheckInput &input : check.inputs)
        if (input.origin.name == asked && input.shown.isEmpty()) {
            found = true;
            EXPECT_TRUE(parseInputAddress(input.origin.field)) << input.origin.field.toStdString();
        }
    EXPECT_TRUE(found);
}

// Under a loosened threshold the published one's verdict is told beside.
inline void expectLoosened(const Check &check, Verdict own, Verdict published)
{
    EXPECT_EQ(check.verdict, own) << check.sentence.toStdString();
    ASSERT_TRUE(check.publishedVerdict);
    EXPECT_EQ(*check.publishedVerdict, published);
    EXPECT_EQ(check.loosened.size(), 1);
}

} // namespace ohmwright
