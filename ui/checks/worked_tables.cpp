// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/worked_tables.h"

#include "ui/checks/check_words.h"
#include "ui/checks/figure_room.h"
#include "ui/checks/formula_text.h"
#include "ui/checks/ruled_grid.h"
#include "ui/widgets/figure_label.h"
#include "ui/widgets/state_mark.h"

#include <QCoreApplication>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kMarkDrop = 2; // a mark keeps this much above its word

QString tr(const char *text)
{
    return QCoreApplication::translate("ohmwright::ui::WorkedTables", text);
}

QLabel *workedText(const Theme &theme, const WorkedLine &line)
{
    auto *label =
        selectableWords(theme, line.right, line.isResult ? Lettering::Strong : Lettering::Body,
                        !line.isResult && !line.isFormula);
    if (line.isFormula) {
        label->setTextFormat(Qt::RichText);
        label->setText(formulaHtml(line.right));
    }
    return label;
}

FigureLabel *figure(const Theme &theme, const FigureRoom &room, const QString &shown)
{
    auto *label = new FigureLabel(theme);
    label->setFigure(shown);
    return room.fit(label);
}

// As tall as a mark with its word, so that a row of them stands on one line.
FigureLabel *besideMark(FigureLabel *label, const StateMark &mark)
{
    label->setFixedHeight(mark.sizeHint().height());
    return label;
}

} // namespace

QWidget *makeWorked(const Theme &theme, const std::vector<CheckStep> &steps)
{
    enum Column { What, Left, Sign, Right };
    auto *table =
        new RuledGrid(theme, {{tr("Step"), 4}, {QString()}, {QString()}, {tr("Working"), 6}});
    QGridLayout &grid = table->grid();
    for (const CheckStep &step : steps) {
        const int first = table->beginRow();
        int row = first;
        bool isFirst = true;
        for (const WorkedLine &line : workedLines(step)) {
            if (!isFirst)
                row = table->addLine();
            isFirst = false;
            if (!line.left.isEmpty()) {
                auto *left = selectableWords(theme, symbolHtml(line.left));
                left->setTextFormat(Qt::RichText);
                left->setWordWrap(false);
                grid.addWidget(left, row, Left, Qt::AlignRight | Qt::AlignTop);
            }
            if (!line.sign.isEmpty())
                grid.addWidget(selectableWords(theme, line.sign), row, Sign,
                               Qt::AlignHCenter | Qt::AlignTop);
            grid.addWidget(workedText(theme, line), row, Right);
        }
        auto *what = selectableWords(theme, step.what);
        grid.addWidget(what, first, What, row - first + 1, 1, Qt::AlignTop);
    }
    return table;
}

QWidget *makeHeldAgainst(const Theme &theme, const std::vector<Comparison> &comparisons)
{
    enum Column { What, Value, Relation, Limit, MarginColumn, VerdictColumn };
    auto *table = new RuledGrid(theme, {{tr("Result"), 1},
                                        {tr("Value"), 0, true},
                                        {QString()},
                                        {tr("Limit"), 0, true},
                                        {tr("Margin"), 0, true},
                                        {tr("Verdict")}});
    QGridLayout &grid = table->grid();
    FigureRoom values(theme.font(Lettering::Body));
    FigureRoom limits(theme.font(Lettering::Body));
    FigureRoom margins(theme.font(Lettering::Body));
    for (const Comparison &c : comparisons) {
        values.take(c.value);
        limits.take(c.limit);
        margins.take(marginFigure(c.margin));
    }
    for (const Comparison &c : comparisons) {
        const int row = table->beginRow();
        auto *mark = new StateMark(theme, markOf(c.verdict));
        auto *what = new QWidget;
        auto *column = new QVBoxLayout(what);
        column->setContentsMargins(0, kMarkDrop, 0, kMarkDrop);
        column->setSpacing(2);
        column->addWidget(selectableWords(theme, c.what));
        if (!c.limitFrom.isEmpty())
            column->addWidget(
                selectableWords(theme, tr("Limit: %1").arg(c.limitFrom), Lettering::Small, true));
        grid.addWidget(what, row, What, Qt::AlignTop);
        grid.addWidget(besideMark(figure(theme, values, c.value), *mark), row, Value, Qt::AlignTop);
        auto *relation = selectableWords(theme, c.relation);
        relation->setContentsMargins(0, kMarkDrop, 0, 0);
        grid.addWidget(relation, row, Relation, Qt::AlignTop);
        grid.addWidget(besideMark(figure(theme, limits, c.limit), *mark), row, Limit, Qt::AlignTop);
        FigureLabel *margin = besideMark(figure(theme, margins, marginFigure(c.margin)), *mark);
        margin->setAccessibleName(marginWords(c.margin));
        grid.addWidget(margin, row, MarginColumn, Qt::AlignTop);
        grid.addWidget(mark, row, VerdictColumn, Qt::AlignTop);
    }
    return table;
}

QWidget *makeLoosened(const Theme &theme, const Check &check)
{
    auto *box = new QWidget;
    auto *column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    if (check.publishedVerdict) {
        auto *both = new QHBoxLayout;
        both->setSpacing(28);
        const auto add = [&](const QString &said, Verdict verdict) {
            auto *mark = new StateMark(theme, markOf(verdict));
            mark->setWords(said.arg(verdictWord(verdict)));
            both->addWidget(mark);
        };
        add(tr("by the own threshold: %1"), check.verdict);
        add(tr("as published: %1"), *check.publishedVerdict);
        both->addStretch(1);
        column->addLayout(both);
    }
    auto *table = new RuledGrid(theme, {{tr("Published"), 0, true},
                                        {tr("Own"), 0, true},
                                        {tr("Why, and what it departs from"), 1}});
    FigureRoom figures(theme.font(Lettering::Body));
    for (const Loosened &loose : check.loosened) {
        figures.take(loose.published);
        figures.take(loose.own);
    }
    for (const Loosened &loose : check.loosened) {
        const int row = table->beginRow();
        table->grid().addWidget(figure(theme, figures, loose.published), row, 0, Qt::AlignTop);
        table->grid().addWidget(figure(theme, figures, loose.own), row, 1, Qt::AlignTop);
        auto *why = new QWidget;
        auto *lines = new QVBoxLayout(why);
        lines->setContentsMargins(0, 0, 0, 0);
        lines->setSpacing(2);
        lines->addWidget(selectableWords(theme, loose.reason.isEmpty() ? tr("No reason is given.")
                                                                       : loose.reason));
        lines->addWidget(selectableWords(theme, loose.source, Lettering::Small, true));
        table->grid().addWidget(why, row, 2, Qt::AlignTop);
    }
    column->addWidget(table);
    return box;
}

} // namespace ohmwright::ui
