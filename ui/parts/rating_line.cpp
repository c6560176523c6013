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

// The unit a bare number is taken in: the one the line names.
std::optional<Unit> usualUnit(RatedQuantity quantity)
{
    const auto units = Unit::ofMeasure(measureOf(quantity));
    return units.empty() ? std::nullopt : std::optional(units.front());
}

QString example(RatedQuantity quantity)
{
    const auto unit = usualUnit(quantity);
    return !unit || unit->symbol().isEmpty() ? RatingLine::tr("a number")
                                             : RatingLine::tr("in %1").arg(unit->symbol());
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
    auto *grid = m_grid = new QGridLayout(this);
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
    m_sourceRow = ++row;
    if (!m_given) {
        ++row;
        m_on = new QLineEdit;
        m_onField = new Field(theme, tr("Read or measured on"), m_on);
        m_on->setPlaceholderText(tr("today"));
        m_duration = new QLineEdit;
        m_durationField = new Field(theme, tr("For how long"), m_duration);
        m_durationField->setHint(tr("a peak lasts, e.g. 30 s"));
        grid->addWidget(m_onField, row, 0, Qt::AlignTop);
        grid->addWidget(m_durationField, row, 1, Qt::AlignTop);
        connect(m_sort, &QComboBox::currentIndexChanged, this, [this] { showHint(); });
    }
    connect(m_value, &QLineEdit::textEdited, this, [this] { m_valueField->setProblem({}); });
    showHint();
}

void RatingLine::askForSource(const Theme &theme)
{
    m_source = new QLineEdit;
    auto *field = new Field(theme, tr("Source"), m_source);
    field->setHint(tr("document and page, instrument, who said so"));
    m_grid->addWidget(field, m_sourceRow, 0, 1, 2);
    if (m_on)
        setTabOrder(m_evidence, m_source);
    const auto follow = [this, field] {
        field->setVisible(!m_value->text().trimmed().isEmpty());
    };
    connect(m_value, &QLineEdit::textChanged, field, follow);
    follow();
}

QString RatingLine::source() const
{
    return m_source ? m_source->text().trimmed() : QString();
}

void RatingLine::showHint()
{
    const FigureName name = figure();
    if (m_durationField)
        m_durationField->setVisible(name.basis == RatingBasis::Peak);
    if (m_given)
        m_valueField->setHint(tr("%1; empty stays an open question").arg(example(name.quantity)));
    else if (hasCurrentKind(name.quantity))
        m_valueField->setHint(tr("%1, with DC or AC; ? if not known").arg(example(name.quantity)));
    else
        m_valueField->setHint(tr("%1; ? if not known").arg(example(name.quantity)));
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
    if (isUnknown())
        return std::optional<Amount>();
    const Result<Amount> read = parseAmount(parts.amountText, pageStyle(), measureOf(name.quantity),
                                            usualUnit(name.quantity));
    if (!read)
        return refuse(read.error());
    return std::optional(*read);
}

bool RatingLine::isUnknown() const
{
    return splitCurrentKind(m_value->text().trimmed()).amountText.trimmed() == QLatin1String("?");
}

Outcome RatingLine::read(Rating &rating, QDate today)
{
    m_onField->setProblem({});
    m_durationField->setProblem({});
    const Result<std::optional<Amount>> typed = value();
    if (!typed)
        return fail(typed.error());
    const FigureName name = figure();
    rating.quantity = name.quantity;
    rating.kind = name.kind;
    rating.basis = name.basis;
    rating.current = name.current;
    rating.value = *typed;
    rating.evidence = evidence();
    rating.duration.reset();
    const auto refuse = [](Field &field, const Problem &problem) {
        field.setProblem(sentenceOf(problem));
        field.editor()->setFocus();
        return fail(problem);
    };
    if (const QString text = m_duration->text().trimmed();
        !text.isEmpty() && name.basis == RatingBasis::Peak) {
        const Result<Amount> duration = parseAmount(text, pageStyle(), Measure::Duration);
        if (!duration)
            return refuse(*m_durationField, duration.error());
        rating.duration = *duration;
    }
    // a new one is of today; one that had no date gets none by being changed
    rating.on = rating.id.isSet() ? std::nullopt : std::optional(today);
    if (const QString text = m_on->text().trimmed(); !text.isEmpty()) {
        const Result<QDate> on = parseDate(text, today);
        if (!on)
            return refuse(*m_onField, on.error());
        rating.on = *on;
    }
    return {};
}

void RatingLine::showRating(const Rating &rating)
{
    m_quantity->setCurrentIndex(m_quantity->findData(static_cast<int>(rating.quantity)));
    for (std::size_t i = 0; i < kSorts.size(); ++i)
        if (kSorts.at(i).kind == rating.kind && kSorts.at(i).basis == rating.basis)
            m_sort->setCurrentIndex(static_cast<int>(i));
    QString text = rating.value ? printAmount(*rating.value) : QString();
    if (rating.current && !text.isEmpty())
        text += u' ' + wordOf(*rating.current);
    m_value->setText(text);
    m_evidence->setCurrentIndex(m_evidence->findData(static_cast<int>(rating.evidence)));
    m_duration->setText(rating.duration ? printAmount(*rating.duration) : QString());
    m_on->setText(rating.on ? showDate(*rating.on) : QString());
    m_on->setPlaceholderText(tr("not dated"));
    showHint();
}

Evidence RatingLine::evidence() const
{
    return chosenWord<Evidence>(*m_evidence);
}

void RatingLine::clear()
{
    m_value->clear();
    m_valueField->setProblem({});
    if (m_source)
        m_source->clear();
    if (m_on) {
        m_on->clear();
        m_on->setPlaceholderText(tr("today"));
        m_onField->setProblem({});
        m_duration->clear();
        m_durationField->setProblem({});
    }
}

} // namespace ohmwright::ui
