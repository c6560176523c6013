// SPDX-License-Identifier: GPL-3.0-or-later
// What a person calls a record: its name, title or subject; of the others, what tells them apart.
#pragma once

#include "core/parts/figures.h"
#include "core/quantity/dates.h"
#include "core/records/check_figures.h"
#include "core/records/records.h"
#include "core/records/thresholds.h"

#include <QStringList>

namespace ohmwright {

// "Make Model 2018", as far as known.
template <class V>
QString vehicleName(const V &vehicle)
{
    QStringList words{vehicle.make, vehicle.model,
                      vehicle.year ? QString::number(*vehicle.year) : QString()};
    words.removeAll(QString());
    return words.join(u' ');
}

template <class R>
QString recordName(const Records &records, const R &row)
{
    const auto nameIn = [&](const auto &id) {
        const auto *found = records.find(id);
        return found ? recordName(records, *found) : QString();
    };
    if constexpr (std::is_same_v<R, OwnThreshold>) {
        const ThresholdInfo *threshold = knownThreshold(row.name);
        return threshold ? labelOf(*threshold) : row.name;
    } else if constexpr (requires { row.name; })
        return row.name;
    else if constexpr (requires { row.title; })
        return row.title;
    else if constexpr (requires { row.subject; })
        return row.subject;
    else if constexpr (requires { row.model; })
        return vehicleName(row);
    else if constexpr (std::is_same_v<R, Purchase>)
        return QString(nameIn(row.seller) + QStringLiteral(", ") + showDate(row.orderedOn));
    else if constexpr (std::is_same_v<R, Payment>)
        return QString(printMoney(row.amount) + QStringLiteral(", ") + showDate(row.on));
    else if constexpr (std::is_same_v<R, DayRate>)
        return QString(row.currency.code() + QStringLiteral(", ") + showDate(row.on));
    else if constexpr (std::is_same_v<R, Rating>)
        return describe(figureOf(row));
    else if constexpr (std::is_same_v<R, CheckFigure>) {
        const FigureInfo *figure = checkFigure(row.figure);
        return figure ? labelOf(*figure) : row.figure;
    } else if constexpr (std::is_same_v<R, CurvePoint>)
        return printAmount(row.along);
    else if constexpr (std::is_same_v<R, InterfacePin>)
        return row.pin;
    else if constexpr (std::is_same_v<R, PartMove>)
        return wordOf(row.to);
    else if constexpr (std::is_same_v<R, Connection>)
        return nameIn(row.circuit);
    else if constexpr (std::is_same_v<R, TaskNeed>)
        return wordOf(row.kind);
    else if constexpr (std::is_same_v<R, WorkingTime>)
        return wordOf(row.weekday);
    else if constexpr (std::is_same_v<R, SpecialDay>)
        return showDate(row.from);
    else if constexpr (std::is_same_v<R, WorkEntry>) {
        const QString task = nameIn(row.task);
        return QString(showDate(row.on) + (task.isEmpty() ? task : QString(u", " + task)));
    } else if constexpr (std::is_same_v<R, Choice>)
        return row.question;
    else
        return row.key;
}

} // namespace ohmwright
