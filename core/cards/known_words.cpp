// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cards/known_words.h"

#include "core/records/check_figures.h"
#include "core/records/records.h"
#include "core/records/thresholds.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("KnownWords", text);
}

QString nameOf(std::string_view name)
{
    return QString::fromLatin1(name.data(), static_cast<qsizetype>(name.size()));
}

QString ofWhat(FigureOf of)
{
    switch (of) {
    case FigureOf::Vehicle:
        return tr("of the vehicle");
    case FigureOf::Circuit:
        return tr("of a circuit");
    case FigureOf::Branch:
        return tr("of a branch");
    case FigureOf::Part:
        return tr("of a part or a type");
    case FigureOf::Test:
        return tr("read in a test");
    }
    return {};
}

std::vector<KnownWord> figures()
{
    std::vector<KnownWord> words;
    words.reserve(checkFigures().size());
    for (const FigureInfo &figure : checkFigures())
        words.push_back({nameOf(figure.name), labelOf(figure), ofWhat(figure.of)});
    return words;
}

std::vector<KnownWord> thresholds()
{
    std::vector<KnownWord> words;
    words.reserve(knownThresholds().size());
    for (const ThresholdInfo &threshold : knownThresholds()) {
        const QString unit = Unit::ofMeasure(threshold.measure).front().symbol();
        words.push_back({nameOf(threshold.name), labelOf(threshold),
                         unit.isEmpty() ? QString() : tr("in %1").arg(unit)});
    }
    return words;
}

} // namespace

std::vector<KnownWord> knownWords(std::string_view table, std::string_view field)
{
    if (table == RecordTraits<CheckFigure>::table && field == "figure")
        return figures();
    if (table == RecordTraits<OwnThreshold>::table && field == "name")
        return thresholds();
    return {};
}

} // namespace ohmwright
