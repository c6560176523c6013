// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/records/check_figures.h"

#include <QCoreApplication>
#include <QHash>

#include <array>

namespace ohmwright {

namespace {

#define NUMBER(name, of, measure, label)                                                           \
    FigureInfo{name, FigureOf::of, Measure::measure, "", QT_TRANSLATE_NOOP("CheckFigures", label)},
#define CHOICE(name, of, words, label)                                                             \
    FigureInfo{name, FigureOf::of, std::nullopt, words, QT_TRANSLATE_NOOP("CheckFigures", label)},

constexpr std::array kFigures{
#include "core/records/check_figures_electrical.inc"
#include "core/records/check_figures_vehicle.inc"
};

#undef NUMBER
#undef CHOICE

QString text(std::string_view latin)
{
    return QString::fromUtf8(latin.data(), static_cast<qsizetype>(latin.size()));
}

} // namespace

std::span<const FigureInfo> checkFigures()
{
    return kFigures;
}

const FigureInfo *checkFigure(QStringView name)
{
    static const QHash<QString, const FigureInfo *> byName = [] {
        QHash<QString, const FigureInfo *> index;
        for (const FigureInfo &figure : kFigures)
            index.insert(text(figure.name), &figure);
        return index;
    }();
    return byName.value(name.toString());
}

QString labelOf(const FigureInfo &figure)
{
    return QCoreApplication::translate("CheckFigures", figure.label);
}

QStringList wordsOf(const FigureInfo &figure)
{
    return figure.words.empty() ? QStringList() : text(figure.words).split(u'|');
}

} // namespace ohmwright
