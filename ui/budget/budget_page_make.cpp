// SPDX-License-Identifier: GPL-3.0-or-later
// How the page is put together; what it does is in budget_page.cpp.
#include "ui/budget/account.h"
#include "ui/budget/budget_page.h"
#include "ui/budget/entries_model.h"
#include "ui/budget/entry_panel.h"
#include "ui/budget/lines_model.h"
#include "ui/cards/record_pages.h"
#include "ui/cards/records_panel.h"
#include "ui/shell/theme.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/least_rows.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

constexpr auto kHalf = EntryForm::Width::Half;

QWidget *boxed(QSplitter &splitter, std::initializer_list<QWidget *> widgets)
{
    auto *box = new QWidget;
    auto *column = new QVBoxLayout(box);
    column->setContentsMargins(0, 6, 0, 0);
    column->setSpacing(6);
    for (QWidget *widget : widgets)
        column->addWidget(widget, qobject_cast<QTableView *>(widget) ? 1 : 0);
    column->addStretch(0);
    splitter.addWidget(box);
    return box;
}

} // namespace

BudgetPage::BudgetPage(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_stack(new QStackedWidget),
      m_empty(new EmptyPage(theme, QStringLiteral("budget"), tr("No budget yet"),
                            tr("Here stands what is spent, committed, still to come and got back, "
                               "against what you allow yourself. Start with a line such as "
                               "“Battery” and the most it may cost."),
                            tr("Add the &first line"))),
      m_account(new Account(theme)), m_linesHeading(new SectionTitle(theme, tr("Lines"))),
      m_linesView(new QTableView), m_lines(new LinesModel(this)),
      m_entriesHeading(new SectionTitle(theme, tr("What it is made of"))),
      m_entriesView(new QTableView), m_entries(new EntriesModel(this)), m_noEntries(new QLabel),
      m_side(new QScrollArea), m_entryPanel(new EntryPanel(book, theme)),
      m_lineHeading(new SectionTitle(theme, tr("This line"))),
      m_line(new EntryForm(theme, QString())), m_removeLine(new QPushButton(tr("Remove"))),
      m_newLineBox(new QWidget), m_newLine(new EntryForm(theme, tr("Add &it"))),
      m_contingency(new EntryForm(theme, QString())),
      m_gotBack(new EntryForm(theme, tr("&Record it"))),
      m_gapsHeading(new SectionTitle(theme, tr("Not counted"))), m_gaps(new QListWidget)
{
    auto *page = new QWidget;
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(24, 18, 20, 14);
    column->setSpacing(12);
    column->addWidget(m_account);
    makeTables();
    makeForms();
    // the sums need the whole width; what a line is made of shares its own with what to do about it
    auto *rows = new QSplitter(Qt::Vertical);
    rows->setChildrenCollapsible(false);
    boxed(*rows, {m_linesHeading, m_linesView});
    auto *split = new QSplitter(Qt::Horizontal);
    split->setChildrenCollapsible(false);
    split->setHandleWidth(17);
    boxed(*split, {m_entriesHeading, m_entriesView, m_noEntries});
    split->addWidget(makeSide());
    split->setStretchFactor(0, 1);
    split->setStretchFactor(1, 0);
    rows->addWidget(split);
    rows->setStretchFactor(0, 4);
    rows->setStretchFactor(1, 7);
    rows->setSizes({300, 330});
    column->addWidget(rows, 1);

    auto *all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    m_pages = new RecordPages(
        book, theme, m_stack, tr("Lines"),
        {QStringLiteral("purchase"), QStringLiteral("got_back"), QStringLiteral("day_rate")});
    all->addWidget(m_pages);
    connect(m_pages, &RecordPages::said, this, &BudgetPage::said);
    m_stack->addWidget(m_empty);
    m_stack->addWidget(scrolledWhenLow(page));
    connect(m_empty, &EmptyPage::started, this, &BudgetPage::beginLine);
    connect(&book, &Book::changed, this, &BudgetPage::bookChanged);
}

void BudgetPage::makeTables()
{
    const int digits = m_book.records().build().currency.digits();
    const QFontMetrics metrics(m_theme.font(Lettering::Body));
    const int figure = metrics.horizontalAdvance(QStringLiteral("-00 000.00")) + 26;
    auto *lines = new DraftedTableDelegate(m_theme, this);
    m_linesView->setModel(m_lines);
    for (int column = LinesModel::Allowance; column < LinesModel::ColumnCount; ++column)
        lines->setFigureColumn(column, digits);
    lines->dress(*m_linesView, true);
    keepLeastRows(*m_linesView, 3);
    m_linesView->setSelectionMode(QAbstractItemView::SingleSelection);
    m_linesView->setAccessibleName(tr("Budget lines"));
    m_linesView->horizontalHeader()->setStretchLastSection(false);
    m_linesView->horizontalHeader()->setSectionResizeMode(LinesModel::Bar, QHeaderView::Stretch);
    m_linesView->setColumnWidth(LinesModel::Name, metrics.averageCharWidth() * kNameLetters);
    for (int column = LinesModel::Allowance; column < LinesModel::ColumnCount; ++column)
        m_linesView->setColumnWidth(column, figure);
    connect(m_linesView->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this] { chooseLine(); });
    connect(m_linesView, &QTableView::activated, this, [this] {
        if (m_entries->rowCount() > 0)
            m_entriesView->setFocus();
    });

    auto *entries = new DraftedTableDelegate(m_theme, this);
    m_entriesView->setModel(m_entries);
    entries->setFigureColumn(EntriesModel::Price, digits, QStringLiteral("GBP"));
    for (int column = EntriesModel::Shared; column <= EntriesModel::InBook; ++column)
        entries->setFigureColumn(column, digits);
    entries->dress(*m_entriesView, true);
    keepLeastRows(*m_entriesView, 3);
    m_entriesView->setSelectionMode(QAbstractItemView::SingleSelection);
    m_entriesView->setAccessibleName(tr("What the line is made of"));
    m_entriesView->horizontalHeader()->setStretchLastSection(false);
    m_entriesView->horizontalHeader()->setSectionResizeMode(EntriesModel::What,
                                                            QHeaderView::Stretch);
    m_entriesView->setColumnWidth(EntriesModel::Price,
                                  figure + metrics.horizontalAdvance(QStringLiteral("GBP")) + 4);
    m_entriesView->setColumnWidth(EntriesModel::Shared, figure);
    m_entriesView->setColumnWidth(EntriesModel::Core, figure - 14);
    m_entriesView->setColumnWidth(EntriesModel::InBook, figure);
    m_entriesView->setColumnWidth(EntriesModel::Standing,
                                  metrics.horizontalAdvance(tr("0 000.00 to pay")) + 24);
    m_noEntries->setText(tr("Nothing stands on this line yet."));
    m_noEntries->setForegroundRole(QPalette::PlaceholderText);
    connect(m_entriesView->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this] { chooseEntry(); });
    connect(m_entriesView, &QTableView::activated, this, [this] { m_entryPanel->act(); });
}

void BudgetPage::makeForms()
{
    const QString name = QStringLiteral("name");
    const QString allowance = QStringLiteral("allowance");
    m_line->addLine(name, tr("Name"), kHalf);
    m_line->addLine(allowance, tr("Allowance"), kHalf);
    m_line->setSavesItself(true);
    m_line->setSave([this] { return keepLine(); });
    connect(m_line, &EntryForm::saved, this, &BudgetPage::fillLineForm);
    m_removeLine->setAccessibleName(tr("Remove this budget line"));
    connect(m_removeLine, &QPushButton::clicked, this, &BudgetPage::removeChosenLine);

    m_newLine->addLine(name, tr("Name"), kHalf);
    m_newLine->addLine(allowance, tr("Allowance"), kHalf);
    m_newLine->setSave([this] { return makeLine(); });
    auto *box = new QVBoxLayout(m_newLineBox);
    box->setContentsMargins(0, 0, 0, 0);
    box->addWidget(new SectionTitle(m_theme, tr("New line")));
    box->addWidget(m_newLine);
    m_newLineBox->hide();
    auto *leave = new QShortcut(Qt::Key_Escape, m_newLineBox);
    leave->setContext(Qt::WidgetWithChildrenShortcut);
    connect(leave, &QShortcut::activated, this, [this] {
        m_newLineBox->hide();
        m_newLine->clearProblems();
        refresh();
        m_linesView->setFocus();
    });

    m_contingency->addLine(QStringLiteral("contingency"), tr("Contingency"), kHalf);
    m_contingency->setHint(QStringLiteral("contingency"), tr("percent of the allowances"));
    m_contingency->setSavesItself(true);
    m_contingency->setSave([this] { return keepContingency(); });
    connect(m_contingency, &EntryForm::saved, this, &BudgetPage::fillContingency);

    m_gotBack->addLine(name, tr("What for"));
    m_gotBack->addLine(QStringLiteral("amount"), tr("Amount"), kHalf);
    m_gotBack->addLine(QStringLiteral("on"), tr("On"), kHalf);
    m_gotBack->setHint(QStringLiteral("on"), tr("ahead: expected"));
    m_gotBack->setSave([this] { return makeGotBack(); });
}

QWidget *BudgetPage::makeSide()
{
    auto *content = new QWidget;
    auto *column = new QVBoxLayout(content);
    column->setContentsMargins(0, 6, 8, 8);
    column->setSpacing(8);
    const auto space = [&] {
        column->addSpacing(10);
    };
    auto *add = new QPushButton(tr("&Add a line"));
    m_linesHeading->addAtEnd(add);
    connect(add, &QPushButton::clicked, this, &BudgetPage::beginLine);
    column->addWidget(m_newLineBox);
    column->addWidget(m_entryPanel);
    space();
    column->addWidget(m_lineHeading);
    column->addWidget(m_line);
    column->addWidget(m_removeLine, 0, Qt::AlignLeft);
    space();
    column->addWidget(new SectionTitle(m_theme, tr("Money that comes back")));
    column->addWidget(m_gotBack);
    space();
    m_gaps->setWordWrap(true);
    m_gaps->setAccessibleName(tr("What could not be counted"));
    column->addWidget(m_gapsHeading);
    column->addWidget(m_gaps);
    space();
    column->addWidget(new SectionTitle(m_theme, tr("The whole budget")));
    column->addWidget(m_contingency);
    column->addStretch(1);
    m_side->setWidget(content);
    m_side->setWidgetResizable(true);
    m_side->setFrameShape(QFrame::NoFrame);
    m_side->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_side->setFocusPolicy(Qt::NoFocus);
    m_side->setMinimumWidth(QFontMetrics(m_theme.font(Lettering::Body)).averageCharWidth() * 36);
    const auto say = [this](const QString &sentence) {
        emit said(sentence, Tone::Told);
    };
    connect(m_entryPanel, &EntryPanel::done, this, say);
    connect(m_entryPanel, &EntryPanel::partWanted, this, &BudgetPage::partWanted);
    connect(m_entryPanel, &EntryPanel::recordWanted, this, &BudgetPage::showRecord);
    auto *purchase = new QPushButton(tr("New purchase"));
    m_entriesHeading->addAtEnd(purchase);
    connect(purchase, &QPushButton::clicked, this,
            [this] { m_pages->showPanel(QStringLiteral("purchase")).beginNew(); });
    return m_side;
}

} // namespace ohmwright::ui
