// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/given_table.h"

#include "ui/checks/check_words.h"
#include "ui/checks/formula_text.h"
#include "ui/widgets/figure_label.h"
#include "ui/widgets/problem_line.h"
#include "ui/widgets/state_mark.h"

#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

enum Column { Symbol, Name, Value, From };
constexpr int kValueSide = 8; // as ValueCell keeps, so that both kinds stand in line

QVBoxLayout *columnIn(QWidget &widget)
{
    auto *column = new QVBoxLayout(&widget);
    column->setContentsMargins(0, 3, 0, 3);
    column->setSpacing(2);
    return column;
}

} // namespace

GivenTable::GivenTable(const Theme &theme, const CheckView &view, const ValueCell::Save &save,
                       QWidget *parent)
    : RuledGrid(theme,
                {{QString(), 0}, {tr("Quantity"), 5}, {tr("Value"), 0, true}, {tr("From"), 4}},
                parent),
      m_theme(theme), m_room(theme.font(Lettering::Body))
{
    const Check &check = view.entry.check;
    for (const CheckInput &input : check.inputs)
        if (input.value)
            m_room.take(input.shown);
    QStringList named;
    for (const CheckInput &input : check.inputs) {
        addInput(input, view, save);
        named << input.origin.name;
    }
    // an unknown may stand for several inputs, and then for none of them by name
    for (const QString &name : check.unknowns)
        if (!named.contains(name))
            addUnknown(name, view);
}

void GivenTable::addInput(const CheckInput &input, const CheckView &view,
                          const ValueCell::Save &save)
{
    const int row = beginRow();
    auto *symbol = selectableWords(m_theme, symbolHtml(input.symbol));
    symbol->setTextFormat(Qt::RichText);
    symbol->setWordWrap(false);
    symbol->setContentsMargins(0, 3, 0, 0);
    grid().addWidget(symbol, row, Symbol, Qt::AlignTop);
    QWidget *name = makeName(input, view);
    grid().addWidget(name, row, Name, Qt::AlignTop);
    QWidget *value = makeValue(input, save);
    grid().addWidget(value, row, Value, Qt::AlignTop | Qt::AlignRight);
    const bool unknown =
        view.entry.check.unknowns.contains(input.origin.name) && input.shown.isEmpty();
    grid().addWidget(unknown ? makeFindOut(input.origin.name, view) : makeFrom(input, view), row,
                     From, unknown ? Qt::AlignTop | Qt::AlignLeft : Qt::Alignment(Qt::AlignTop));
    if (auto *cell = qobject_cast<ValueCell *>(value)) {
        auto *problem = new ProblemLine(m_theme);
        name->layout()->addWidget(problem);
        connect(cell, &ValueCell::problemChanged, problem, &ProblemLine::setProblem);
    }
}

void GivenTable::addUnknown(const QString &name, const CheckView &view)
{
    const int row = beginRow();
    auto *words = selectableWords(m_theme, name);
    words->setContentsMargins(0, 3, 0, 3);
    grid().addWidget(words, row, Name, Qt::AlignTop);
    auto *mark = new StateMark(m_theme, Mark::Unknown);
    mark->setWords(tr("not known"));
    grid().addWidget(mark, row, Value, Qt::AlignTop | Qt::AlignRight);
    grid().addWidget(makeFindOut(name, view), row, From, Qt::AlignTop | Qt::AlignLeft);
}

QWidget *GivenTable::makeName(const CheckInput &input, const CheckView &view)
{
    auto *box = new QWidget;
    QVBoxLayout *column = columnIn(*box);
    column->addWidget(selectableWords(m_theme, input.origin.name));
    if (!input.origin.path.isEmpty())
        column->addWidget(selectableWords(m_theme, input.origin.path, Lettering::Small, true));
    const auto tried =
        std::find_if(view.tried.begin(), view.tried.end(), [&](const ScratchChange &change) {
            return !change.field.isEmpty() && change.field == input.origin.field;
        });
    if (tried != view.tried.end())
        column->addWidget(selectableWords(m_theme,
                                          tried->before.isEmpty()
                                              ? tr("Tried; not known in the book")
                                              : tr("Tried; %1 in the book").arg(tried->before),
                                          Lettering::Small));
    return box;
}

QWidget *GivenTable::makeValue(const CheckInput &input, const ValueCell::Save &save)
{
    if (!input.origin.field.isEmpty()) {
        auto *cell = new ValueCell(m_theme, input, save);
        if (input.value)
            m_room.fit(cell);
        m_cells.push_back(cell);
        return cell;
    }
    if (input.value) {
        auto *figure = new FigureLabel(m_theme);
        figure->setFigure(input.shown);
        m_room.fit(figure);
        auto *box = new QWidget; // a figure's own margins would not move what it paints
        auto *column = columnIn(*box);
        column->setContentsMargins(kValueSide, 3, kValueSide, 3);
        column->addWidget(figure);
        return box;
    }
    if (input.shown.isEmpty()) {
        auto *mark = new StateMark(m_theme, Mark::Unknown);
        mark->setWords(tr("not known"));
        return mark;
    }
    auto *words = selectableWords(m_theme, input.shown);
    words->setAlignment(Qt::AlignRight | Qt::AlignTop);
    words->setContentsMargins(kValueSide, 3, kValueSide, 3);
    return words;
}

QWidget *GivenTable::makeFrom(const CheckInput &input, const CheckView &)
{
    auto *box = new QWidget;
    QVBoxLayout *column = columnIn(*box);
    const Origin &origin = input.origin;
    column->addWidget(selectableWords(m_theme, evidenceWord(origin.evidence)));
    if (!origin.source.isEmpty())
        column->addWidget(selectableWords(m_theme, origin.source, Lettering::Small, true));
    if (origin.stale)
        column->addWidget(
            selectableWords(m_theme, tr("Older than the rework of its part"), Lettering::Small));
    if (origin.clash)
        column->addWidget(selectableWords(
            m_theme,
            origin.safest ? tr("Other values are recorded; this is the safest")
                          : tr("Other values are recorded; this one is better founded"),
            Lettering::Small));
    return box;
}

QWidget *GivenTable::makeFindOut(const QString &name, const CheckView &view)
{
    if (view.beingFoundOut.contains(name)) {
        auto *words = selectableWords(m_theme, tr("A task finds it out"), Lettering::Body, true);
        words->setContentsMargins(0, 3, 0, 3);
        return words;
    }
    auto *button = new QPushButton(tr("Find out"));
    button->setAccessibleName(tr("Find out: %1").arg(name));
    button->setProperty("unknownName", name);
    button->setEnabled(!view.trying);
    button->setToolTip(view.trying ? tr("Keep or drop what is tried first")
                                   : tr("Makes a task that finds it out and holds up what "
                                        "depends on it"));
    button->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    connect(button, &QPushButton::clicked, this, [this, name] { emit findOutWanted(name); });
    m_findOut.push_back(button);
    return button;
}

ValueCell *GivenTable::cell(const QString &field) const
{
    const auto found = std::find_if(m_cells.begin(), m_cells.end(),
                                    [&](ValueCell *cell) { return cell->field() == field; });
    return found == m_cells.end() ? nullptr : *found;
}

QPushButton *GivenTable::findOutButton(const QString &unknownName) const
{
    const auto found =
        std::find_if(m_findOut.begin(), m_findOut.end(), [&](const QPushButton *button) {
            return button->property("unknownName").toString() == unknownName;
        });
    return found == m_findOut.end() ? nullptr : *found;
}

} // namespace ohmwright::ui
