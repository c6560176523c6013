// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/parts_page.h"

#include "ui/cards/record_card.h"
#include "ui/cards/record_pages.h"
#include "ui/cards/records_panel.h"
#include "ui/parts/log_sheet.h"
#include "ui/parts/part_detail.h"
#include "ui/parts/parts_list.h"
#include "ui/parts/ratings_editor.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QShortcut>
#include <QSplitter>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

#include <utility>

namespace ohmwright::ui {

PartsPage::PartsPage(Book &book, const Theme &theme, Outside &outside, QWidget *parent)
    : QWidget(parent), m_book(book), m_splitter(new QSplitter(Qt::Horizontal)),
      m_side(new QStackedWidget), m_list(new PartsList(book, theme)),
      m_detail(new PartDetail({book, theme, outside})), m_sheet(new LogSheet(book, theme, outside))
{
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    m_pages = new RecordPages(book, theme, m_splitter, tr("Parts"),
                              {QStringLiteral("part_type"), QStringLiteral("donor"),
                               QStringLiteral("seller"), QStringLiteral("circuit"),
                               QStringLiteral("interface"), QStringLiteral("wire")});
    row->addWidget(m_pages);
    connect(m_pages, &RecordPages::said, this, &PartsPage::said);
    connect(m_pages, &RecordPages::madePanel, this, [this, &theme](RecordsPanel *panel) {
        if (panel->kind().table() != "part_type")
            return;
        auto *section = new QWidget;
        auto *inside = new QVBoxLayout(section);
        inside->setContentsMargins(0, 0, 0, 0);
        inside->addWidget(new SectionTitle(theme, tr("Ratings")));
        auto *ratings = new RatingsEditor(m_book, theme);
        inside->addWidget(ratings);
        connect(ratings, &RatingsEditor::said, this, &PartsPage::said);
        panel->card().addSection(
            section, [ratings](std::int64_t id) { ratings->showType(Id<PartType>(id)); });
    });
    m_side->addWidget(m_detail);
    m_side->addWidget(m_sheet);
    // two fields side by side, or a rating with its buttons: less would cut them off
    m_side->setMinimumWidth(440);
    m_splitter->addWidget(m_list);
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
