// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/parts_page.h"

#include "ui/cards/record_card.h"
#include "ui/cards/record_pages.h"
#include "ui/cards/records_panel.h"
#include "ui/parts/compare_page.h"
#include "ui/parts/log_sheet.h"
#include "ui/parts/part_detail.h"
#include "ui/parts/parts_list.h"
#include "ui/parts/ratings_editor.h"
#include "ui/widgets/least_rows.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QShortcut>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

#include <utility>

namespace ohmwright::ui {

namespace {

const QString kComparison = QStringLiteral("comparison");

} // namespace

PartsPage::PartsPage(Book &book, const Theme &theme, Outside &outside, QWidget *parent)
    : QWidget(parent), m_book(book), m_splitter(new QSplitter(Qt::Horizontal)),
      m_side(new QStackedWidget), m_list(new PartsList(book, theme)),
      m_detail(new PartDetail({book, theme, outside})), m_sheet(new LogSheet(book, theme, outside)),
      m_comparison(new ComparePage(book, theme))
{
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    m_pages = new RecordPages(book, theme, m_splitter, tr("Parts"),
                              {QStringLiteral("part_type"), QStringLiteral("donor"),
                               QStringLiteral("seller"), QStringLiteral("circuit"),
                               QStringLiteral("interface"), QStringLiteral("wire")});
    row->addWidget(m_pages);
    m_pages->addPage(kComparison, tr("Compare"), m_comparison);
    connect(m_comparison, &ComparePage::unitWanted, this, &PartsPage::showUnit);
    connect(m_comparison, &ComparePage::left, this, &PartsPage::leaveComparison);
    connect(m_pages, &RecordPages::said, this, &PartsPage::said);
    connect(m_pages, &RecordPages::madePanel, this, [this, &theme](RecordsPanel *panel) {
        if (panel->kind().table() == "part_type")
            addToTypes(panel->card(), theme);
    });
    m_side->addWidget(m_detail);
    m_side->addWidget(m_sheet);
    // two fields side by side, or a rating with its buttons: less would cut them off
    m_side->setMinimumWidth(440);
    m_splitter->addWidget(scrolledWhenLow(m_list));
    m_splitter->addWidget(m_side);
    m_splitter->setChildrenCollapsible(false);
    m_splitter->setStretchFactor(0, 3);
    m_splitter->setStretchFactor(1, 2);
    m_splitter->setSizes({565, 550});

    m_logKey = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_L), this);
    m_logKey->setContext(Qt::WidgetWithChildrenShortcut);
    connect(m_logKey, &QShortcut::activated, this, &PartsPage::openLogSheet);
    connect(m_list, &PartsList::logWanted, this, &PartsPage::openLogSheet);
    connect(m_list, &PartsList::partChosen, m_detail, &PartDetail::showPart);
    connect(m_detail, &PartDetail::partWanted, m_list, &PartsList::choose);
    connect(m_detail, &PartDetail::said, this, &PartsPage::said);
    connect(m_detail, &PartDetail::historyWanted, this, &PartsPage::historyWanted);
    connect(m_detail, &PartDetail::compareWanted, this, &PartsPage::compare);
    connect(m_detail, &PartDetail::taskWanted, this, &PartsPage::taskWanted);
    connect(m_sheet, &LogSheet::closed, this, &PartsPage::closeLogSheet);
    connect(m_sheet, &LogSheet::logged, this, [this](Id<Part> part) {
        m_list->choose(part);
        if (const Part *made = m_book.records().find(part))
            emit said(tr("Logged %1.").arg(made->name), Tone::Told);
    });
    connect(&book, &Book::changed, this, [this](const Change &change) {
        m_missed.add(change);
        m_behind = true;
        if (isVisible())
            catchUp();
    });
    setFocusProxy(&m_list->table());
    // something to read from the start
    if (m_book.records().all<Part>().size() > 0)
        showPart(m_book.records().all<Part>().rows().front().key);
}

// A type's card has its ratings, and compares it with another.
void PartsPage::addToTypes(RecordCard &card, const Theme &theme)
{
    auto *section = new QWidget;
    auto *inside = new QVBoxLayout(section);
    inside->setContentsMargins(0, 0, 0, 0);
    inside->addWidget(new SectionTitle(theme, tr("Ratings")));
    auto *ratings = new RatingsEditor(m_book, theme);
    inside->addWidget(ratings);
    connect(ratings, &RatingsEditor::said, this, &PartsPage::said);
    auto *comparing = new QPushButton(tr("Compare with…"));
    comparing->setToolTip(tr("Side by side with another type or part"));
    card.addButton(comparing);
    connect(comparing, &QPushButton::clicked, this, [this, &card] {
        if (card.settle() && card.record() != 0)
            compare(Id<PartType>(card.record()));
    });
    card.addSection(section, [this, ratings, comparing](std::int64_t id) {
        ratings->showType(Id<PartType>(id));
        if (const PartType *type = m_book.records().find(Id<PartType>(id)))
            comparing->setAccessibleName(tr("Compare %1 with…").arg(type->name));
    });
}

void PartsPage::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    catchUp();
}

void PartsPage::catchUp()
{
    if (!m_behind)
        return;
    const Change missed = std::exchange(m_missed, {});
    m_behind = false;
    m_list->bookChanged(missed);
    m_detail->bookChanged();
}

bool PartsPage::showRecord(const QString &table, const QString &key)
{
    return m_pages->showRecord(table, key);
}

void PartsPage::leaveLogKeyToWindow()
{
    m_logKey->setEnabled(false);
}

void PartsPage::setAskedByChecks(const std::vector<Question> &questions)
{
    m_list->setAskedByChecks(questions);
    m_detail->setAskedByChecks(questions);
}

void PartsPage::showOpening(const QString &key)
{
    showPart(key);
    m_detail->beginOpening();
}

void PartsPage::showPart(const QString &key)
{
    const Part *part = m_book.records().byKey<Part>(key);
    if (!part)
        return;
    catchUp();
    m_pages->showFirst();
    closeLogSheet();
    m_list->choose(part->id);
}

void PartsPage::compare(ComparedId unit)
{
    std::vector<ComparedId> units{unit};
    if (const auto *id = std::get_if<Id<Part>>(&unit))
        if (const Part *part = m_book.records().find(*id); part && part->replacedBy)
            units.emplace_back(*part->replacedBy);
    m_comparedFrom = unit;
    m_pages->showPage(kComparison);
    m_comparison->begin(std::move(units));
}

void PartsPage::showUnit(ComparedId unit)
{
    const Records &records = m_book.records();
    if (const auto *id = std::get_if<Id<PartType>>(&unit)) {
        if (const PartType *type = records.find(*id))
            showRecord(QStringLiteral("part_type"), type->key);
    } else if (const Part *part = records.find(std::get<Id<Part>>(unit))) {
        showPart(part->key);
    }
}

void PartsPage::leaveComparison()
{
    if (m_comparedFrom)
        showUnit(*m_comparedFrom);
    else
        m_pages->showFirst();
    m_pages->setFocus(Qt::OtherFocusReason);
}

void PartsPage::openLogSheet()
{
    m_pages->showFirst();
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
