// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/budget/budget_page.h"

#include "core/budget/budget_edits.h"
#include "core/budget/line_contents.h"
#include "ui/budget/account.h"
#include "ui/budget/entries_model.h"
#include "ui/budget/entry_panel.h"
#include "ui/budget/lines_model.h"
#include "ui/cards/record_pages.h"
#include "ui/shell/theme.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/money_bar.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QStackedWidget>
#include <QTableView>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

const NumberStyle kStyle = NumberStyle::pointDecimal();
const QString kName = QStringLiteral("name");
const QString kAllowance = QStringLiteral("allowance");
const QString kPercent = QStringLiteral("contingency");
const QString kAmount = QStringLiteral("amount");
const QString kOn = QStringLiteral("on");
constexpr int kMostGapsShown = 5;

} // namespace

void BudgetPage::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_stale)
        refresh();
}

void BudgetPage::bookChanged()
{
    m_stale = true;
    if (isVisible())
        refresh();
}

void BudgetPage::refresh()
{
    m_stale = false;
    m_budget = budgetOf(m_book.records(), m_book.clock().today());
    const bool empty = m_budget.lines.empty() && m_newLineBox->isHidden();
    m_stack->setCurrentIndex(empty ? 0 : 1);
    m_account->setBudget(m_budget, m_book.records().build().contingencyPercent);
    fillContingency();
    refreshLines();
    refreshEntries();
    refreshGaps();
    fillLineForm();
}

void BudgetPage::refreshLines()
{
    m_refreshing = true;
    const int before = m_linesView->currentIndex().row();
    m_lines->setLines(m_budget.lines);
    std::int64_t scale = 0;
    for (const LineSums &line : m_budget.lines)
        scale = std::max({scale, line.allowance.minor(),
                          line.spent.minor() + line.committed.minor() + line.toCome.minor()});
    for (int row = 0; row < m_lines->rowCount(); ++row) {
        const LineSums &line = *m_lines->line(row);
        const QModelIndex cell = m_lines->index(row, LinesModel::Bar);
        QWidget *room = m_linesView->indexWidget(cell);
        if (!room) {
            // the bar keeps its own height in the middle of the row
            room = new QWidget;
            auto *middle = new QHBoxLayout(room);
            middle->setContentsMargins(10, 0, 10, 0);
            middle->addWidget(new MoneyBar(m_theme));
            m_linesView->setIndexWidget(cell, room);
        }
        auto *bar = room->findChild<MoneyBar *>();
        bar->setShares({line.spent.minor(), line.committed.minor(), line.toCome.minor(),
                        line.allowance.minor()},
                       spokenLine(line), scale);
    }
    int row = m_shownLine ? m_lines->rowOf(*m_shownLine) : 0;
    if (row < 0)
        row = std::clamp(before, 0, std::max(0, m_lines->rowCount() - 1));
    if (m_lines->rowCount() > 0) {
        m_linesView->setCurrentIndex(m_lines->index(row, LinesModel::Name));
        m_shownLine = m_lines->line(row)->line;
    } else {
        m_shownLine.reset();
    }
    m_linesHeading->setRemark(tr("in %1").arg(m_budget.currency.code()));
    m_refreshing = false;
}

void BudgetPage::refreshEntries()
{
    m_refreshing = true;
    const LineEntry *was = m_entries->entry(m_entriesView->currentIndex().row());
    const std::optional<LineEntry> chosen = was ? std::optional(*was) : std::nullopt;
    std::vector<LineEntry> entries;
    if (m_shownLine)
        entries = contentsOf(m_book.records(), *m_shownLine, m_book.clock().today());
    const int scrolled = m_entriesView->verticalScrollBar()->value();
    m_entries->setEntries(m_book.records(), std::move(entries));
    shareOutWidth();
    const int row = chosen ? m_entries->rowOf(*chosen) : -1;
    if (row >= 0) {
        m_entriesView->setCurrentIndex(m_entries->index(row, EntriesModel::What));
        m_entriesView->verticalScrollBar()->setValue(scrolled);
    }
    const LineSums *line = m_lines->line(m_linesView->currentIndex().row());
    m_entriesHeading->setText(line ? line->name : tr("What it is made of"));
    m_entriesView->setVisible(m_entries->rowCount() > 0);
    m_noEntries->setVisible(m_entries->rowCount() == 0);
    m_refreshing = false;
    chooseEntry();
}

void BudgetPage::refreshGaps()
{
    const auto count = static_cast<int>(m_budget.gaps.size());
    m_gapsHeading->setVisible(count > 0);
    m_gaps->setVisible(count > 0);
    if (m_gapsShown == m_budget.gaps)
        return; // most edits leave them, and there may be thousands
    m_gapsShown = m_budget.gaps;
    m_gaps->clear();
    m_gaps->addItems(m_budget.gaps);
    m_gapsHeading->setRemark(count == 1 ? tr("1 thing") : tr("%1 things").arg(count));
    if (count == 0)
        return;
    m_gaps->setCurrentRow(0);
    m_gaps->setFixedHeight(std::min(count, kMostGapsShown) *
                               (2 * m_gaps->fontMetrics().lineSpacing() + 10) +
                           2 * m_gaps->frameWidth());
}

void BudgetPage::chooseLine()
{
    if (m_refreshing)
        return;
    const LineSums *line = m_lines->line(m_linesView->currentIndex().row());
    m_shownLine = line ? std::optional(line->line) : std::nullopt;
    m_entriesView->setCurrentIndex({});
    refreshEntries();
    m_line->forgetTouched();
    m_line->clearProblems();
    fillLineForm();
}

void BudgetPage::chooseEntry()
{
    if (m_refreshing)
        return;
    const LineEntry *entry = m_entries->entry(m_entriesView->currentIndex().row());
    m_entryPanel->setEntry(entry ? std::optional(*entry) : std::nullopt);
}

Id<BudgetLine> BudgetPage::chosenLine() const
{
    return m_shownLine.value_or(Id<BudgetLine>());
}

void BudgetPage::showLine(const QString &key)
{
    m_pages->showFirst();
    if (m_stale)
        refresh();
    const BudgetLine *line = m_book.records().byKey<BudgetLine>(key);
    const int row = line ? m_lines->rowOf(line->id) : -1;
    if (row >= 0)
        m_linesView->setCurrentIndex(m_lines->index(row, LinesModel::Name));
}

bool BudgetPage::showRecord(const QString &table, const QString &key)
{
    return m_pages->showRecord(table, key);
}

void BudgetPage::fillLineForm()
{
    const BudgetLine *line = m_book.records().find(chosenLine());
    m_lineHeading->setVisible(line);
    m_line->setVisible(line);
    m_removeLine->setVisible(line);
    if (!line || m_line->isTouched())
        return;
    m_line->setText(kName, line->name);
    m_line->setText(kAllowance, printMoneyNumber(line->allowance));
    m_line->setHint(kAllowance, tr("in %1").arg(m_budget.currency.code()));
}

void BudgetPage::fillContingency()
{
    if (!m_contingency->isTouched())
        m_contingency->setText(kPercent,
                               QString::number(m_book.records().build().contingencyPercent));
}

void BudgetPage::beginLine()
{
    m_newLineBox->show();
    m_stack->setCurrentIndex(1);
    m_side->verticalScrollBar()->setValue(0);
    m_newLine->focusFirst();
}

Result<Money> BudgetPage::allowanceTyped(const EntryForm &form) const
{
    const Currency own = m_book.records().build().currency;
    const QString typed = form.text(kAllowance);
    if (typed.isEmpty())
        return Money::zero(own);
    const Result<Money> money = parseMoney(typed, kStyle, own);
    if (!money)
        return fail(money.error().code, money.error().sentence, money.error().whatToDo, kAllowance);
    return money;
}

Outcome BudgetPage::keepLine()
{
    const Result<Money> allowance = allowanceTyped(*m_line);
    if (!allowance)
        return fail(allowance.error());
    return changeLine(m_book, chosenLine(), m_line->text(kName), *allowance);
}

Outcome BudgetPage::makeLine()
{
    const Result<Money> allowance = allowanceTyped(*m_newLine);
    if (!allowance)
        return fail(allowance.error());
    const QString name = m_newLine->text(kName);
    const Result<Id<BudgetLine>> made = addLine(m_book, name, *allowance);
    if (!made)
        return fail(made.error());
    m_newLine->setText(kName, {});
    m_newLine->setText(kAllowance, {});
    m_newLineBox->hide();
    m_shownLine = *made;
    refresh();
    m_linesView->setFocus();
    emit said(tr("Budget line “%1” is in the book.").arg(name), Tone::Told);
    return {};
}

Outcome BudgetPage::keepContingency()
{
    QString typed = m_contingency->text(kPercent);
    typed.remove(u'%');
    const Result<double> percent = parseNumber(typed.trimmed(), kStyle);
    const bool whole =
        percent && *percent >= 0 && *percent <= 100 && *percent == static_cast<int>(*percent);
    if (!whole)
        return fail(ProblemCode::BadInput,
                    tr("The contingency is a whole percentage between 0 and 100."), {}, kPercent);
    return setContingency(m_book, static_cast<int>(*percent));
}

Outcome BudgetPage::makeGotBack()
{
    const QDate today = m_book.clock().today();
    NewGotBack back;
    back.name = m_gotBack->text(kName);
    if (m_book.records().find(chosenLine()))
        back.line = chosenLine();
    const Result<Money> amount =
        parseMoney(m_gotBack->text(kAmount), kStyle, m_book.records().build().currency);
    if (!amount)
        return fail(amount.error().code, amount.error().sentence, amount.error().whatToDo, kAmount);
    back.amount = *amount;
    const auto day = m_gotBack->date(kOn, today);
    if (!day)
        return fail(day.error());
    // a day ahead is one it is hoped for; a day gone by is the one it came
    (*day && **day <= today ? back.receivedOn : back.expectedOn) = *day;
    const Result<Id<GotBack>> made = addGotBack(m_book, back);
    if (!made)
        return fail(made.error());
    for (const QString &name : {kName, kAmount, kOn})
        m_gotBack->setText(name, {});
    emit said(back.receivedOn ? tr("“%1” came back.").arg(back.name)
                              : tr("“%1” is expected back.").arg(back.name),
              Tone::Told);
    return {};
}

void BudgetPage::removeChosenLine()
{
    const BudgetLine *line = m_book.records().find(chosenLine());
    if (!line)
        return;
    const QString name = line->name;
    const Outcome removed = removeLine(m_book, line->id);
    if (removed)
        emit said(tr("Budget line “%1” is removed. Undo brings it back.").arg(name), Tone::Told);
    else
        m_line->showProblem(
            {removed.error().code, removed.error().sentence, removed.error().whatToDo, QString()});
}

// The names are what one looks for: columns in which nothing stands give way to them, and where
// there is little room the bar and the price in the seller's currency as well.
void BudgetPage::shareOutWidth()
{
    constexpr int kRoomForAll = 900;
    const bool narrow = width() < kRoomForAll;
    m_linesView->setColumnHidden(LinesModel::Bar, narrow);
    m_linesView->horizontalHeader()->setSectionResizeMode(
        LinesModel::Name, narrow ? QHeaderView::Stretch : QHeaderView::Interactive);
    if (narrow != m_narrow && !narrow)
        m_linesView->setColumnWidth(LinesModel::Name,
                                    QFontMetrics(m_theme.font(Lettering::Body)).averageCharWidth() *
                                        kNameLetters);
    m_narrow = narrow;
    for (const int column : {EntriesModel::Shared, EntriesModel::Core}) {
        bool empty = true;
        for (int row = 0; empty && row < m_entries->rowCount(); ++row)
            empty = m_entries->index(row, column).data().toString().isEmpty();
        m_entriesView->setColumnHidden(column, empty);
    }
    m_entriesView->setColumnHidden(EntriesModel::Price, narrow);
}

void BudgetPage::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    shareOutWidth();
}

} // namespace ohmwright::ui
