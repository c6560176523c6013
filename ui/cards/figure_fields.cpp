// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/figure_fields.h"

#include "core/records/check_figures.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/pick_or_new.h"

#include <QCoreApplication>

#include <array>

namespace ohmwright::ui {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("FigureFields", text);
}

struct OwnerField
{
    const char *field;
    FigureOf of;
};

constexpr std::array kOwners{OwnerField{"circuit", FigureOf::Circuit},
                             OwnerField{"branch", FigureOf::Branch},
                             OwnerField{"part", FigureOf::Part}, OwnerField{"type", FigureOf::Part},
                             OwnerField{"test", FigureOf::Test}};
constexpr std::array kSuited{"value", "word", "circuit", "branch", "part", "type", "test"};

QString valueHint(const FigureInfo &figure)
{
    const QString unit = Unit::ofMeasure(*figure.measure).front().symbol();
    return unit.isEmpty() ? tr("a bare number; empty: looked for, not known")
                          : tr("in %1; empty: looked for, not known").arg(unit);
}

} // namespace

void FigureFields::suit(const QString &figure)
{
    m_figure = figure;
    const FigureInfo *info = checkFigure(figure);
    std::vector<KnownName> words;
    if (info && info->measure) {
        m_form.setHint(QStringLiteral("value"), valueHint(*info));
    } else if (info) {
        for (const QString &word : wordsOf(*info))
            words.push_back({word, word, {}});
        m_form.setHint(QStringLiteral("word"), wordsOf(*info).join(tr(", ")));
    }
    m_word.setKnown(std::move(words));
    for (const char *field : kSuited)
        m_form.setFieldVisible(QString::fromLatin1(field), takes(QString::fromLatin1(field)));
}

bool FigureFields::takes(const QString &field) const
{
    const FigureInfo *info = checkFigure(m_figure);
    if (field == QLatin1String("value"))
        return !info || info->measure;
    if (field == QLatin1String("word"))
        return info && !info->measure;
    for (const OwnerField &owner : kOwners)
        if (field == QLatin1String(owner.field))
            return !info || info->of == owner.of;
    return true;
}

} // namespace ohmwright::ui
