// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/parts_page.h"

#include "core/cards/record_kind.h"
#include "ui/cards/card_labels.h"
#include "ui/cards/record_card.h"
#include "ui/cards/records_panel.h"
#include "ui/parts/log_sheet.h"
#include "ui/parts/part_detail.h"
#include "ui/parts/parts_list.h"
#include "ui/widgets/chip_row.h"

#include <QHBoxLayout>
#include <QShortcut>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace ohmwright::ui {

namespace {

const QString kParts = QStringLiteral("part");
constexpr std::array kTables{"part_type", "donor", "seller", "circuit"};

} // namespace

PartsPage::PartsPage(Book &book, const Theme &theme, Outside &outside, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_outside(outside),
      m_switches(new ChipRow(theme, tr("What is shown"), ChipMode::One)),
      m_pages(new QStackedWidget), m_splitter(new QSplitter(Qt::Horizontal)),
      m_side(new QStackedWidget), m_list(new PartsList(book, theme)),
      m_detail(new PartDetail({book, theme, outside})), m_sheet(new LogSheet(book, theme, outside))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    auto *top = new QHBoxLayout;
    top->setContentsMargins(20, 10, 20, 0);
    top->addWidget(m_switches);
    column->addLayout(top);
    column->addWidget(m_pages, 1);
    m_pages->addWidget(m_splitter);
    m_switches->addChip(kParts, tr("Parts"), true);
    for (const char *table : kTables)
        m_switches->addChip(QString::fromLatin1(table), labelText(cardLabels(table)->many));
    connect(m_switches, &ChipRow::changed, this, [this](const QStringList &on) {
        if (!on.isEmpty())
            turnTo(on.front());
    });
    count();
    m_side->addWidget(m_detail);
    m_side->addWidget(m_sheet);
    m_side->setMinimumWidth(380);
    m_splitter->addWidget(m_list);
    m_splitter->addWidget(m_side);
    m_splitter->setChildrenCollapsible(false);
    m_splitter->setStretchFactor(0, 3);
    m_splitter->setStretchFactor(1, 2);
    // five moves side by side, or a rating with its button: less would cut them off
    m_side->setMinimumWidth(510);
    m_splitter->setSizes({600, 515});

    m_logKey = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_L), this);
    m_logKey->setContext(Qt::WidgetWithChildrenShortcut);
    connect(m_logKey, &QShortcut::activated, this, &PartsPage::openLogSheet);
    connect(m_list, &PartsList::logWanted, this, &PartsPage::openLogSheet);
    connect(m_list, &PartsList::partChosen, m_detail, &PartDetail::showPart);
    connect(m_detail, &PartDetail::partWanted, m_list, &PartsList::choose);
    connect(m_detail, &PartDetail::said, this, &PartsPage::said);
    connect(m_detail, &PartDetail::taskWanted, this, &PartsPage::taskWanted);
    connect(m_sheet, &LogSheet::closed, this, &PartsPage::closeLogSheet);
    connect(m_sheet, &LogSheet::logged, this, [this](Id<Part> part) {
        m_list->choose(part);
        if (const Part *made = m_book.records().find(part))
            emit said(tr("Logged %1.").arg(made->name), Tone::Told);
    });
    connect(&book, &Book::changed, this, [this](const Change &change) {
        m_list->bookChanged(change);
        m_detail->bookChanged();
        count();
    });
    setFocusProxy(&m_list->table());
    // something to read from the start
    if (m_book.records().all<Part>().size() > 0)
        showPart(m_book.records().all<Part>().rows().front().key);
}

void PartsPage::turnTo(const QString &table)
{
    if (table == kParts) {
        m_pages->setCurrentWidget(m_splitter);
        setFocusProxy(&m_list->table());
        return;
    }
    RecordsPanel &records = panel(table);
    m_pages->setCurrentWidget(&records);
    setFocusProxy(&records);
}

RecordsPanel &PartsPage::panel(const QString &table)
{
    if (RecordsPanel *there = m_panels.value(table))
        return *there;
    auto *made = new RecordsPanel(m_book, m_theme, *recordKind(table.toStdString()),
                                  RecordsPanel::Shape::Page);
    connect(made, &RecordsPanel::said, this, &PartsPage::said);
    m_panels.insert(table, made);
    m_pages->addWidget(made);
    return *made;
}

void PartsPage::count()
{
    const Records &records = m_book.records();
    m_switches->setCount(kParts, static_cast<int>(records.all<Part>().size()));
    for (const char *table : kTables)
        m_switches->setCount(QString::fromLatin1(table),
                             static_cast<int>(recordKind(table)->ids(records).size()));
}

bool PartsPage::showRecord(const QString &table, const QString &key)
{
    if (table == QLatin1String("branch")) {
        const Branch *branch = m_book.records().byKey<Branch>(key);
        const Circuit *circuit = branch ? m_book.records().find(branch->circuit) : nullptr;
        return circuit && showRecord(QStringLiteral("circuit"), circuit->key);
    }
    if (std::find(kTables.begin(), kTables.end(), table) == kTables.end())
        return false;
    m_switches->setOn(table, true);
    return panel(table).showKey(key);
}

void PartsPage::leaveLogKeyToWindow()
{
    m_logKey->setEnabled(false);
}

void PartsPage::showPart(const QString &key)
{
    const Part *part = m_book.records().byKey<Part>(key);
    if (!part)
        return;
    m_switches->setOn(kParts, true);
    closeLogSheet();
    m_list->choose(part->id);
}

void PartsPage::openLogSheet()
{
    m_switches->setOn(kParts, true);
    m_side->setCurrentWidget(m_sheet);
    m_sheet->begin();
}

void PartsPage::closeLogSheet()
{
    if (m_side->currentWidget() != m_sheet)
        return;
    m_side->setCurrentWidget(m_detail);
    m_list->table().setFocus(Qt::OtherFocusReason);
}

} // namespace ohmwright::ui
