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
const QString kCurve = QStringLiteral("curve");
const QString kDuration = QStringLiteral("duration");

QString joined(const QString &what, const RatingAddress &rating)
{
    const FigureName &figure = rating.figure;
    return QString(what + kApart + rating.part + kApart + wordOf(figure.quantity) + kApart +
                   wordOf(figure.kind) + kApart + wordOf(figure.basis) + kApart +
                   (figure.current ? wordOf(*figure.current) : QString()) + kApart +
                   (rating.duration ? printAmount(*rating.duration) : QString()));
}

} // namespace

// Joined by hand: each input of each check has one, and lists of words would be most of their cost.
QString print(const InputAddress &address)
{
    if (const auto *figure = std::get_if<FigureAddress>(&address))
        return QString(kFigure + kApart + figure->figure + kApart +
                       QString::fromStdString(figure->subject) + kApart + figure->key);
    if (const auto *rating = std::get_if<RatingAddress>(&address))
        return joined(kRating, *rating);
    if (const auto *duration = std::get_if<DurationAddress>(&address))
        return joined(kDuration, duration->peak);
    if (const auto *field = std::get_if<FieldAddress>(&address))
        return QString(kField + kApart + QString::fromStdString(field->table) + kApart +
                       field->key + kApart + field->field);
    const auto &curve = std::get<CurveAddress>(address);
    return QString(kCurve + kApart + curve.part + kApart + wordOf(curve.kind));
}

std::optional<InputAddress> parseInputAddress(const QString &text)
{
    const QStringList words = text.split(kApart);
    if (words.size() == 4 && words[0] == kFigure)
        return FigureAddress{words[1], words[2].toStdString(), words[3]};
    if (words.size() == 4 && words[0] == kField)
        return FieldAddress{words[1].toStdString(), words[2], words[3]};
    if (words.size() == 3 && words[0] == kCurve) {
        const auto kind = fromWord<CurveKind>(words[2]);
        return kind ? std::optional<InputAddress>(CurveAddress{words[1], *kind}) : std::nullopt;
    }
    if (words.size() != 7 || (words[0] != kRating && words[0] != kDuration))
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
    if (words[0] == kDuration)
        return DurationAddress{std::move(rating)};
    return rating;
}

} // namespace ohmwright
