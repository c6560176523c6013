// SPDX-License-Identifier: GPL-3.0-or-later
// A small electric vehicle in memory: eight modules of twelve cells, inverter, charger, contactor
// box, and short ways to tell its figures. Every value is invented.
#pragma once

#include "core/verdicts/book_inputs.h"
#include "tests/support/test_book.h"

namespace ohmwright {

inline constexpr FigureName kDcLimit{RatedQuantity::Voltage, RatingKind::Limit,
                                     RatingBasis::Continuous, CurrentKind::Dc};
inline constexpr FigureName kDcCurrent{RatedQuantity::Current, RatingKind::Limit,
                                       RatingBasis::Continuous, CurrentKind::Dc};
inline constexpr FigureName kDcNominal{RatedQuantity::Voltage, RatingKind::Actual,
                                       RatingBasis::Nominal, CurrentKind::Dc};

inline FigureName actualOf(RatedQuantity quantity)
{
    return {quantity, RatingKind::Actual, RatingBasis::Nominal, std::nullopt};
}
inline FigureName limitOf(RatedQuantity quantity)
{
    return {quantity, RatingKind::Limit, RatingBasis::Continuous, std::nullopt};
}

class ElectricalBook : public testing::Test
{
protected:
    TestBook book; // before what is put into it

    Id<Circuit> circuit(const char *key, CircuitKind kind, CurrentKind current, const char *worst)
    {
        Circuit made;
        made.key = made.name = QString::fromLatin1(key);
        made.kind = kind;
        made.current = current;
        if (*worst)
            made.worstVoltage = amount(worst);
        return book.add(made);
    }
    Id<Part> part(const char *name, std::optional<PartRole> role = {},
                  std::optional<Id<Circuit>> on = {}, std::optional<Id<Branch>> in = {},
                  std::optional<Id<Part>> within = {}, PartKind kind = PartKind::Unit)
    {
        Part made = namedPart(QString::fromLatin1(name), PartState::InHand, kind);
        made.role = role;
        made.partOf = within;
        const Id<Part> id = book.add(made);
        if (on) {
            Connection connection;
            connection.part = id;
            connection.circuit = *on;
            connection.branch = in;
            book.add(connection);
        }
        return id;
    }
    void rate(Id<Part> part, const FigureName &name, const char *value,
              std::optional<Amount> duration = {})
    {
        Rating rating;
        rating.part = part;
        rating.quantity = name.quantity;
        rating.kind = name.kind;
        rating.basis = name.basis;
        rating.current = name.current;
        rating.duration = duration;
        rating.value = amount(value);
        rating.evidence = Evidence::Datasheet;
        book.add(rating);
    }
    template <class R>
    static CheckFigure figureNamed(const char *name, Id<R> of)
    {
        CheckFigure made;
        made.figure = QString::fromLatin1(name);
        made.evidence = Evidence::Datasheet;
        if constexpr (std::is_same_v<R, Circuit>)
            made.circuit = of;
        else if constexpr (std::is_same_v<R, Branch>)
            made.branch = of;
        else if constexpr (std::is_same_v<R, TestRecord>)
            made.test = of;
        else
            made.part = of;
        return made;
    }
    template <class R>
    void figure(const char *name, Id<R> of, const char *value)
    {
        CheckFigure made = figureNamed(name, of);
        made.value = amount(value);
        book.add(made);
    }
    template <class R>
    void word(const char *name, Id<R> of, const char *value)
    {
        CheckFigure made = figureNamed(name, of);
        made.word = QString::fromLatin1(value);
        book.add(made);
    }
    void forget(const char *name)
    {
        OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("forget"), [&]() -> Outcome {
            const std::vector<CheckFigure> all = book.records().all<CheckFigure>().rows();
            for (const CheckFigure &figure : all)
                if (figure.figure == QLatin1String(name))
                    if (const Outcome done = book->remove(figure.id); !done)
                        return done;
            return {};
        }));
    }
    void curve(CurveKind kind, Id<Part> part,
               std::initializer_list<std::pair<const char *, const char *>> points)
    {
        RatedCurve made;
        made.name = QStringLiteral("Curve");
        made.kind = kind;
        made.part = part;
        made.evidence = Evidence::Datasheet;
        const Id<RatedCurve> id = book.add(made);
        for (const auto &[along, up] : points) {
            CurvePoint point;
            point.curve = id;
            point.along = amount(along);
            point.up = amount(up);
            book.add(point);
        }
    }
    void loosen(const char *name, const char *value)
    {
        OwnThreshold own;
        own.name = QString::fromLatin1(name);
        own.value = amount(value);
        own.reason = QStringLiteral("tried");
        book.add(own);
    }
    const Records &records() const { return book.records(); }
    BookInputs inputs() const { return {records(), QDate(2026, 11, 20)}; }

    // Modules 1 to 8 in a tray on the circuit; the first has the figures of the cells.
    void addPack(Id<Circuit> traction)
    {
        tray = part("Tray", {}, traction);
        for (int i = 1; i <= 8; ++i) {
            const QByteArray name = "Module " + QByteArray::number(i);
            modules.push_back(part(name.constData(), {}, {}, {}, tray, PartKind::Module));
            const Id<Part> module = modules.back();
            rate(module, kDcNominal, "43.2 V");
            rate(module, kDcLimit, "600 V");
            rate(module, kDcCurrent, "150 A");
            rate(module, actualOf(RatedQuantity::Capacity), i == 3 ? "90 Ah" : "100 Ah");
            rate(module, actualOf(RatedQuantity::InternalResistance), i == 5 ? "6 mΩ" : "5 mΩ");
            rate(module, actualOf(RatedQuantity::CellsInSeries), "12");
        }
        rate(tray, kDcLimit, "600 V");
        figure("cell.full_voltage", modules.front(), "4.2 V");
        figure("cell.lowest_voltage", modules.front(), "3 V");
        figure("module.cells_in_parallel", modules.front(), "2");
    }

    Id<Part> tray;
    std::vector<Id<Part>> modules;
};

} // namespace ohmwright
