// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/checks_list.h"

#include "ui/checks/checks_delegate.h"
#include "ui/checks/checks_model.h"
#include "ui/shell/theme.h"
#include "ui/widgets/chip_row.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/section_title.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QScopedValueRollback>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

const QString kTurned = QStringLiteral("turned");

} // namespace

ChecksList::ChecksList(const Theme &theme, QWidget *parent) : QWidget(parent), m_theme(theme)
{
    build();
    rearrange();
}

void ChecksList::build()
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(20, 14, 12, 12);
    column->setSpacing(10);
    m_title = new SectionTitle(m_theme, tr("Checks"), TitleLevel::Page);
    column->addWidget(m_title);

    m_text = new QLineEdit;
    m_text->setPlaceholderText(tr("Check, circuit, part, what is not known"));
    m_text->setAccessibleName(tr("Filter the checks"));
    m_text->setClearButtonEnabled(true);
    m_text->installEventFilter(this);
    column->addWidget(m_text);

    m_verdicts = new ChipRow(m_theme, tr("Verdict"));
    for (const Verdict verdict : kWorstFirst)
        m_verdicts->addChip(wordOf(verdict), verdictWord(verdict));
    column->addWidget(m_verdicts);
    m_turned = new ChipRow(m_theme, tr("Tried changes"));
    m_turned->addChip(kTurned, tr("turned by what is tried"));
    m_turned->hide();
    column->addWidget(m_turned);

    buildTable();
    m_none = new EmptyPage(
        m_theme, QStringLiteral("checks"), tr("Nothing to check yet"),
        tr("As soon as circuits, their parts and the vehicle's figures are in the book, each check "
           "stands here with its verdict, worked out as an engineer would write it."),
        QString());
    m_nothing = new EmptyPage(m_theme, QStringLiteral("find"), tr("No check fits"),
                              tr("None of the checks fits the filter."), tr("Show all checks"));
    m_stack = new QStackedWidget;
    m_stack->addWidget(m_table);
    m_stack->addWidget(m_none);
    m_stack->addWidget(m_nothing);
    column->addWidget(m_stack, 1);

    connect(m_text, &QLineEdit::textChanged, this, &ChecksList::readFilter);
    connect(m_verdicts, &ChipRow::changed, this, &ChecksList::readFilter);
    connect(m_turned, &ChipRow::changed, this, &ChecksList::readFilter);
    connect(m_nothing, &EmptyPage::started, this, [this] {
        clearFilter();
        toTable();
    });
}

void ChecksList::buildTable()
{
    m_model = new ChecksModel(this);
    m_delegate = new ChecksDelegate(m_theme, this);
    m_table = new QTableView;
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Checks"));
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_delegate->dress(*m_table, true);
    QHeaderView *header = m_table->horizontalHeader();
    header->setStretchLastSection(false);
    header->setSectionResizeMode(ChecksModel::What, QHeaderView::Stretch);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &ChecksList::rowMoved);
    connect(m_table, &QTableView::activated, this, &ChecksList::opened);
    m_table->viewport()->installEventFilter(this);
    shareOutWidth();
}

// The check's name takes what the verdict leaves, whose column is as wide as what stands in it at
// that moment: what turned, and what was loosened, needs more.
void ChecksList::shareOutWidth()
{
    constexpr int kMarkAndSides = 45;
    constexpr int kSides = 26;
    const QFontMetrics body(m_theme.font(Lettering::Body));
    const QFontMetrics small(m_theme.font(Lettering::Small));
    int words = body.horizontalAdvance(verdictWord(Verdict::Unknown)) + kMarkAndSides;
    for (int row = 0; row < m_model->rowCount(); ++row) {
        const CheckEntry *entry = m_model->entryAt(row);
        if (!entry)
            continue;
        const QModelIndex verdict = m_model->index(row, ChecksModel::VerdictColumn);
        words =
            std::max({words, body.horizontalAdvance(verdict.data().toString()) + kMarkAndSides,
                      small.horizontalAdvance(verdict.data(SecondLineRole).toString()) + kSides});
    }
    m_table->setColumnWidth(ChecksModel::VerdictColumn, words);
}

void ChecksList::addAtEnd(QWidget *widget)
{
    m_title->addAtEnd(widget);
}

void ChecksList::setEntries(std::vector<CheckEntry> entries, bool trying)
{
    m_entries = std::move(entries);
    if (m_trying != trying) {
        m_trying = trying;
        m_turned->setVisible(trying);
        m_turned->setOn(kTurned, false);
    }
    rearrange();
}

void ChecksList::readFilter()
{
    m_filter.text = m_text->text();
    m_filter.verdicts.clear();
    for (const QString &key : m_verdicts->keysOn())
        m_filter.verdicts.insert(*fromWord<Verdict>(key));
    m_filter.turnedOnly = m_turned->isOn(kTurned);
    rearrange();
}

void ChecksList::clearFilter()
{
    m_text->clear();
    for (const QString &key : m_verdicts->keysOn())
        m_verdicts->setOn(key, false);
    m_turned->setOn(kTurned, false);
}

void ChecksList::rearrange()
{
    ArrangedChecks found = arrange(m_entries, m_filter);
    for (const Verdict verdict : kWorstFirst)
        m_verdicts->setCount(wordOf(verdict), found.perVerdict[static_cast<std::size_t>(verdict)]);
    m_turned->setCount(kTurned, found.turned);
    const auto all = static_cast<int>(m_entries.size());
    m_title->setRemark(found.shown == all ? QString::number(all)
                                          : tr("%1 of %2").arg(found.shown).arg(all));
    m_stack->setCurrentWidget(all == 0           ? static_cast<QWidget *>(m_none)
                              : found.shown == 0 ? static_cast<QWidget *>(m_nothing)
                                                 : m_table);
    {
        const QScopedValueRollback arranging(m_arranging, true);
        m_table->clearSpans();
        m_model->show(m_entries, std::move(found.rows));
        for (int row = 0; row < m_model->rowCount(); ++row)
            if (m_model->isHeading(row))
                m_table->setSpan(row, 0, 1, ChecksModel::ColumnCount);
        shareOutWidth();
        restoreCurrent();
    }
    // something to read from the start, and after the chosen one is gone
    const bool gone = std::none_of(m_entries.begin(), m_entries.end(),
                                   [&](const CheckEntry &e) { return e.key == m_chosen; });
    if (!gone)
        return;
    m_chosen.clear();
    // what fails, wherever its group stands
    for (int row = 0; row < m_model->rowCount(); ++row) {
        const CheckEntry *entry = m_model->entryAt(row);
        if (!entry)
            continue;
        const bool fails = entry->check.verdict == Verdict::Fails;
        if (m_chosen.isEmpty() || fails)
            m_chosen = entry->key;
        if (fails)
            break;
    }
    const QScopedValueRollback arranging(m_arranging, true);
    restoreCurrent();
    emit checkChosen();
}

void ChecksList::restoreCurrent()
{
    const int row = m_model->rowOf(m_chosen);
    if (row < 0) {
        m_table->selectionModel()->clear();
        return;
    }
    const QModelIndex at = m_model->index(row, 0);
    if (m_table->currentIndex().row() == row && m_table->selectionModel()->isRowSelected(row))
        return;
    m_table->selectionModel()->setCurrentIndex(at, QItemSelectionModel::ClearAndSelect |
                                                       QItemSelectionModel::Rows);
    m_table->scrollTo(at);
}

void ChecksList::rowMoved()
{
    if (m_arranging)
        return;
    const CheckEntry *entry = m_model->entryAt(m_table->currentIndex().row());
    if (!entry || entry->key == m_chosen)
        return;
    m_chosen = entry->key;
    // with the first of all its group's heading comes into view
    if (m_table->currentIndex().row() == 1)
        m_table->scrollToTop();
    emit checkChosen();
}

void ChecksList::choose(const QString &key)
{
    const bool known = std::any_of(m_entries.begin(), m_entries.end(),
                                   [&](const CheckEntry &entry) { return entry.key == key; });
    if (!known)
        return;
    if (m_model->rowOf(key) < 0)
        clearFilter();
    const bool another = key != m_chosen;
    m_chosen = key;
    const QScopedValueRollback arranging(m_arranging, true);
    restoreCurrent();
    if (another)
        emit checkChosen();
}

const CheckEntry *ChecksList::chosen() const
{
    const auto found = std::find_if(m_entries.begin(), m_entries.end(),
                                    [&](const CheckEntry &e) { return e.key == m_chosen; });
    return found == m_entries.end() ? nullptr : &*found;
}

// Down from the filter goes to the table, as the eye does.
void ChecksList::toTable()
{
    if (m_stack->currentWidget() != m_table)
        return;
    m_table->setFocus(Qt::TabFocusReason);
    if (m_model->rowOf(m_chosen) >= 0)
        return;
    for (int row = 0; row < m_model->rowCount(); ++row)
        if (!m_model->isHeading(row)) {
            m_table->selectRow(row);
            return;
        }
}

bool ChecksList::eventFilter(QObject *watched, QEvent *event)
{
    if (watched == m_text && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent *>(event)->key();
        if (key == Qt::Key_Down || key == Qt::Key_Return || key == Qt::Key_Enter) {
            toTable();
            return true;
        }
        if (key == Qt::Key_Escape && !m_text->text().isEmpty()) {
            m_text->clear();
            return true;
        }
    }
    if (m_table && watched == m_table->viewport() && event->type() == QEvent::Resize)
        shareOutWidth();
    return QWidget::eventFilter(watched, event);
}

} // namespace ohmwright::ui
