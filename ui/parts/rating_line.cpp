// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/rating_line.h"

#include "ui/parts/part_words.h"
#include "ui/widgets/field.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>

namespace ohmwright::ui {

namespace {

// Limit or actual value, and of limits which, in one choice.
struct Sort
{
    const char *words;
    RatingKind kind;
    RatingBasis basis;
};
constexpr std::array<Sort, 4> kSorts{{
    {QT_TRANSLATE_NOOP("ohmwright::ui::RatingLine", "limit"), RatingKind::Limit,
     RatingBasis::Continuous},
    {QT_TRANSLATE_NOOP("ohmwright::ui::RatingLine", "peak limit"), RatingKind::Limit,
     RatingBasis::Peak},
    {QT_TRANSLATE_NOOP("ohmwright::ui::RatingLine", "lowest"), RatingKind::Limit,
     RatingBasis::Least},
    {QT_TRANSLATE_NOOP("ohmwright::ui::RatingLine", "actual"), RatingKind::Actual,
     RatingBasis::Nominal},
}};

QString example(RatedQuantity quantity)
{
    const auto units = Unit::ofMeasure(measureOf(quantity));
    const QString unit = units.empty() ? QString() : units.front().symbol();
    return unit.isEmpty() ? RatingLine::tr("a number") : RatingLine::tr("in %1").arg(unit);
}

bool hasCurrentKind(RatedQuantity quantity)
{
    return quantity == RatedQuantity::Voltage || quantity == RatedQuantity::Current ||
           quantity == RatedQuantity::BreakingCapacity;
}

} // namespace

RatingLine::RatingLine(const Theme &theme, const FigureName &figure, QWidget *parent)
    : QWidget(parent), m_given(figure)
{
    build(theme);
}

RatingLine::RatingLine(const Theme &theme, QWidget *parent) : QWidget(parent)
{
    build(theme);
}

void RatingLine::build(const Theme &theme)
{
    auto *grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(12);
    grid->setVerticalSpacing(8);
    m_value = new QLineEdit;
    m_evidence = new QComboBox;
    addWords<Evidence>(*m_evidence);
    m_evidence->setCurrentIndex(static_cast<int>(Evidence::Nameplate));
    int row = 0;
    if (m_given) {
        m_valueField = new Field(theme, describe(*m_given), m_value);
    } else {
        m_quantity = new QComboBox;
        addWords<RatedQuantity>(*m_quantity);
        m_sort = new QComboBox;
        for (const Sort &sort : kSorts)
            m_sort->addItem(tr(sort.words));
        m_valueField = new Field(theme, tr("Value"), m_value);
        grid->addWidget(new Field(theme, tr("Rated quantity"), m_quantity), row, 0);
        grid->addWidget(new Field(theme, tr("Limit or actual value"), m_sort), row, 1);
        ++row;
        connect(m_quantity, &QComboBox::currentIndexChanged, this, [this] { showHint(); });
    }
    auto *evidence = new Field(theme, tr("Evidence"), m_evidence);
    grid->addWidget(m_valueField, row, 0, Qt::AlignTop);
    grid->addWidget(evidence, row, 1, Qt::AlignTop);
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    connect(m_value, &QLineEdit::textEdited, this, [this] { m_valueField->setProblem({}); });
    showHint();
}

void RatingLine::showHint()
{
    const FigureName name = figure();
    if (m_given)
        m_valueField->setHint(tr("%1; empty stays an open question").arg(example(name.quantity)));
    else if (hasCurrentKind(name.quantity))
        m_valueField->setHint(tr("%1, with DC or AC").arg(example(name.quantity)));
    else
        m_valueField->setHint(example(name.quantity));
}

FigureName RatingLine::figure() const
{
    if (m_given)
        return *m_given;
    FigureName name;
    const Sort &sort = kSorts.at(static_cast<std::size_t>(std::max(m_sort->currentIndex(), 0)));
    name.quantity = chosenWord<RatedQuantity>(*m_quantity);
    name.kind = sort.kind;
    name.basis = sort.basis;
    name.current = splitCurrentKind(m_value->text()).kind;
    return name;
}

Result<std::optional<Amount>> RatingLine::value()
{
    m_valueField->setProblem({});
    const QString typed = m_value->text().trimmed();
    if (typed.isEmpty())
        return std::optional<Amount>();
    const auto refuse = [this](Problem problem) {
        m_valueField->setProblem(sentenceOf(problem));
        return fail(std::move(problem));
    };
    const AmountWithKind parts = splitCurrentKind(typed);
    const FigureName name = figure();
    if (m_given && parts.kind && m_given->current && *parts.kind != *m_given->current)
        return refuse({ProblemCode::BadInput,
                       tr("The circuit asks for %1, and this is %2: one says nothing of the other.")
                           .arg(wordOf(*m_given->current), wordOf(*parts.kind)),
                       tr("Leave it empty here and add it as a rating of its own."),
                       {}});
    if (parts.kind && !hasCurrentKind(name.quantity))
        return refuse({ProblemCode::BadInput,
                       tr("A %1 is neither DC nor AC.").arg(wordOf(name.quantity)),
                       {},
                       {}});
    const Result<Amount> read =
        parseAmount(parts.amountText, pageStyle(), measureOf(name.quantity));
    if (!read)
        return refuse(read.error());
    return std::optional(*read);
}

Evidence RatingLine::evidence() const
{
    return chosenWord<Evidence>(*m_evidence);
}

void RatingLine::clear()
{
    m_value->clear();
    m_valueField->setProblem({});
}

} // namespace ohmwright::ui
