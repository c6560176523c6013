// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/input_address.h"

#include <QStringList>

namespace ohmwright {

namespace {

// keys, words and table names never hold it
constexpr QChar kApart = u'|';

const QString kFigure = QStringLiteral("figure");
const QString kRating = QStringLiteral("rating");
const QString kField = QStringLiteral("field");

} // namespace

QString print(const InputAddress &address)
{
    QStringList words;
    if (const auto *figure = std::get_if<FigureAddress>(&address))
        words = {kFigure, figure->figure, QString::fromStdString(figure->subject), figure->key};
    else if (const auto *rating = std::get_if<RatingAddress>(&address))
        words = {kRating,
                 rating->part,
                 wordOf(rating->figure.quantity),
                 wordOf(rating->figure.kind),
                 wordOf(rating->figure.basis),
                 rating->figure.current ? wordOf(*rating->figure.current) : QString(),
                 rating->duration ? printAmount(*rating->duration) : QString()};
    else if (const auto *field = std::get_if<FieldAddress>(&address))
        words = {kField, QString::fromStdString(field->table), field->key, field->field};
    return words.join(kApart);
}

std::optional<InputAddress> parseInputAddress(const QString &text)
{
    const QStringList words = text.split(kApart);
    if (words.size() == 4 && words[0] == kFigure)
        return FigureAddress{words[1], words[2].toStdString(), words[3]};
    if (words.size() == 4 && words[0] == kField)
        return FieldAddress{words[1].toStdString(), words[2], words[3]};
    if (words.size() != 7 || words[0] != kRating)
        return std::nullopt;
    const auto quantity = fromWord<RatedQuantity>(words[2]);
    const auto kind = fromWord<RatingKind>(words[3]);
    const auto basis = fromWord<RatingBasis>(words[4]);
    const auto current = fromWord<CurrentKind>(words[5]);
    if (!quantity || !kind || !basis || (!current && !words[5].isEmpty()))
        return std::nullopt;
    RatingAddress rating{words[1], {*quantity, *kind, *basis, current}, {}};
    if (!words[6].isEmpty()) {
        const Result<Amount> duration =
            parseAmount(words[6], NumberStyle::pointDecimal(), Measure::Duration);
        if (!duration)
            return std::nullopt;
        rating.duration = *duration;
    }
    return rating;
}

} // namespace ohmwright
