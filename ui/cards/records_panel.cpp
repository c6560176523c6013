// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/records_panel.h"

#include "ui/cards/card_labels.h"
#include "ui/cards/record_card.h"
#include "ui/cards/record_list.h"
#include "ui/shell/theme.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/least_rows.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kNestedRows = 6;
constexpr int kListWidth = 330;
constexpr int kLeastCard = 180; // pixels; below that the page scrolls

} // namespace

RecordsPanel::RecordsPanel(Book &book, const Theme &theme, const RecordKind &kind, Shape shape,
                           QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_kind(kind), m_shape(shape)
{
    build();
    arrange();
    connect(&book, &Book::changed, this, &RecordsPanel::bookChanged);
    setFocusProxy(m_view);
    refresh();
}

void RecordsPanel::build()
{
    const CardLabels &labels = *cardLabels(m_kind.table());
    const bool nested = m_shape == Shape::Nested;
    m_title = new SectionTitle(m_theme, labelText(labels.many),
                               m_shape == Shape::Page ? TitleLevel::Page : TitleLevel::Section);
    m_add = new QPushButton(labelText(labels.add));
    m_add->setToolTip(tr("Insert"));
    m_title->addAtEnd(m_add);
    connect(m_add, &QPushButton::clicked, this, &RecordsPanel::beginNew);

    m_find = new QLineEdit;
    m_find->setPlaceholderText(tr("Find in these"));
    m_find->setAccessibleName(tr("Find in %1").arg(labelText(labels.many)));
    m_find->setClearButtonEnabled(true);
    if (nested)
        m_find->hide(); // to show it would open a window of its own: it has no place yet
    m_find->installEventFilter(this);
    connect(m_find, &QLineEdit::textChanged, this, &RecordsPanel::refresh);

    m_list = new RecordList(m_kind, this);
    m_view = new QTableView;
    m_view->setModel(m_list);
    m_view->setAccessibleName(labelText(labels.many));
    m_view->setSelectionMode(QAbstractItemView::SingleSelection);
    auto *delegate = new DraftedTableDelegate(m_theme, this);
    delegate->dress(*m_view, true);
    m_view->horizontalHeader()->hide();
    m_view->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    m_view->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_view->installEventFilter(this);
    connect(m_view->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &RecordsPanel::rowMoved);

    if (m_shape == Shape::Page) {
        auto *page =
            new EmptyPage(m_theme, QString::fromLatin1(labels.icon), labelText(labels.many),
                          labelText(labels.teach), labelText(labels.add));
        connect(page, &EmptyPage::started, this, &RecordsPanel::beginNew);
        m_teach = page;
    } else {
        auto *words = new QLabel(labelText(labels.teach));
        words->setTextFormat(Qt::PlainText);
        words->setWordWrap(true);
        words->setForegroundRole(QPalette::PlaceholderText);
        words->setAlignment(Qt::AlignTop | Qt::AlignLeft);
        m_teach = words;
    }
    m_stack = new QStackedWidget;
    m_stack->addWidget(m_view);
    m_stack->addWidget(m_teach);

    m_card = new RecordCard(m_book, m_theme, m_kind);
    connect(m_card, &RecordCard::said, this, &RecordsPanel::said);
    connect(m_card, &RecordCard::saved, this, [this](qint64 id) {
        refresh();
        choose(id);
    });
    connect(m_card, &RecordCard::removed, this, [this] {
        refresh();
        choose(m_list->firstFrom(m_view->currentIndex().row()));
        focusList();
    });
    connect(m_card, &RecordCard::left, this, &RecordsPanel::focusList);
    connect(m_card, &RecordCard::abandoned, this, [this] {
        m_card->showRecord(m_list->idAt(m_view->currentIndex().row()));
        focusList();
    });
}

void RecordsPanel::arrange()
{
    auto *left = new QVBoxLayout;
    left->setSpacing(10);
    left->addWidget(m_title);
    left->addWidget(m_find);
    left->addWidget(m_stack, m_shape == Shape::Nested ? 0 : 1);
    if (m_shape == Shape::Nested) {
        auto *column = new QVBoxLayout(this);
        column->setContentsMargins(0, 0, 0, 0);
        column->setSpacing(10);
        column->addLayout(left);
        // stands in a little, as what belongs to the row above it
        auto *inset = new QVBoxLayout;
        inset->setContentsMargins(16, 0, 0, 0);
        inset->addWidget(m_card);
        column->addLayout(inset);
        return;
    }
    auto *holder = new QWidget;
    auto *inside = new QVBoxLayout(holder);
    inside->setContentsMargins(m_shape == Shape::Page ? 16 : 0, 14, 20, 20);
    inside->addWidget(m_card);
    inside->addStretch(1);
    m_scroll = new QScrollArea;
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setWidget(holder);
    if (m_shape == Shape::Page) {
        auto *row = new QHBoxLayout(this);
        row->setContentsMargins(0, 0, 0, 0);
        left->setContentsMargins(20, 14, 12, 12);
        row->addLayout(left, 2);
        row->addWidget(m_scroll, 3);
        m_view->setMinimumWidth(kListWidth);
    } else {
        auto *column = new QVBoxLayout(this);
        column->setContentsMargins(0, 0, 0, 0);
        column->addLayout(left, 2);
        column->addWidget(m_scroll, 3);
        if (m_shape != Shape::Nested) {
            keepLeastRows(*m_view, 3);
            m_scroll->setMinimumHeight(kLeastCard);
        }
    }
}

void RecordsPanel::addButton(QPushButton *button)
{
    m_title->addAtEnd(button);
}

void RecordsPanel::setHolder(const RecordRef &holder, const QString &within)
{
    const bool another = !m_holder || m_holder->id != holder.id || m_holder->table != holder.table;
    m_holder = holder;
    m_within = within;
    if (another)
        m_card->showRecord(0);
    refresh();
}

void RecordsPanel::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_stale)
        refresh();
}

void RecordsPanel::bookChanged()
{
    m_stale = true;
    if (isVisible())
        refresh();
}

void RecordsPanel::refresh()
{
    m_stale = false;
    m_refreshing = true;
    const std::int64_t chosen = m_card->record();
    m_list->read(m_book.records(), {m_find->text(), m_holder, m_within, m_book.clock().today()});
    m_stack->setCurrentWidget(m_list->outOf() == 0 ? m_teach : m_view);
    const int count = m_list->recordCount();
    m_title->setRemark(count == m_list->outOf() ? (count == 0 ? QString() : QString::number(count))
                                                : tr("%1 of %2").arg(count).arg(m_list->outOf()));
    if (const int row = m_list->rowOf(chosen); row >= 0)
        m_view->selectRow(row);
    else
        m_view->clearSelection();
    m_refreshing = false;
    m_card->bookChanged();
    if (m_shape == Shape::Nested)
        fitHeight();
    else if (!m_card->isNew() && m_card->record() == 0 && count > 0)
        choose(m_list->firstFrom(0)); // something to read from the start
}

void RecordsPanel::fitHeight()
{
    const int rows = std::clamp(m_list->rowCount(), 1, kNestedRows);
    const int height =
        m_list->outOf() == 0
            ? m_teach->heightForWidth(std::max(300, m_stack->width()))
            : rows * m_view->verticalHeader()->defaultSectionSize() + 2 * m_view->frameWidth() + 2;
    m_stack->setFixedHeight(height);
}

bool RecordsPanel::showRecord(std::int64_t id)
{
    if (!m_kind.has(m_book.records(), id))
        return false;
    if (m_card->record() == id && !m_card->isNew())
        return true;
    if (!m_card->settle())
        return false;
    if (m_list->rowOf(id) < 0)
        m_find->clear();
    refresh();
    choose(id);
    return true;
}

bool RecordsPanel::showKey(const QString &key)
{
    const auto id = m_kind.idOf(m_book.records(), key);
    return id && showRecord(*id);
}

void RecordsPanel::choose(std::int64_t id)
{
    m_refreshing = true;
    if (const int row = m_list->rowOf(id); row >= 0) {
        m_view->selectRow(row);
        m_view->scrollTo(m_list->index(row, 0));
    }
    m_refreshing = false;
    if (m_card->record() != id)
        m_card->showRecord(id);
    if (m_scroll)
        m_scroll->verticalScrollBar()->setValue(0);
}

void RecordsPanel::rowMoved()
{
    if (m_refreshing)
        return;
    const std::int64_t id = m_list->idAt(m_view->currentIndex().row());
    if (id == 0 || id == m_card->record())
        return;
    if (m_card->settle()) {
        choose(id);
        return;
    }
    // refused: the card keeps what was typed, and the list stays with it
    m_refreshing = true;
    if (const int row = m_list->rowOf(m_card->record()); row >= 0)
        m_view->selectRow(row);
    else
        m_view->selectionModel()->clear();
    m_refreshing = false;
}

void RecordsPanel::beginNew()
{
    if (!m_card->settle())
        return;
    m_refreshing = true;
    m_view->selectionModel()->clear();
    m_refreshing = false;
    FieldTexts known;
    std::optional<RecordRef> in;
    if (m_holder && m_within.isEmpty())
        in = m_holder;
    else if (m_holder)
        known[m_within] = recordKind(m_holder->table)->key(m_book.records(), m_holder->id);
    m_card->beginNew(known, in);
    if (m_scroll)
        m_scroll->verticalScrollBar()->setValue(0);
}

void RecordsPanel::focusList()
{
    if (m_stack->currentWidget() == m_view) {
        m_view->setFocus(Qt::OtherFocusReason);
        if (!m_view->currentIndex().isValid() && m_list->rowCount() > 0)
            m_view->selectRow(
                std::max(m_list->rowOf(m_list->firstFrom(0)), m_list->rowOf(m_card->record())));
    } else {
        m_add->setFocus(Qt::OtherFocusReason);
    }
}

// From wherever in it the focus is: nothing in it takes Insert for itself.
void RecordsPanel::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Insert)
        beginNew();
    else
        QWidget::keyPressEvent(event);
}

bool RecordsPanel::eventFilter(QObject *watched, QEvent *event)
{
    if (event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent *>(event)->key();
    const bool enter = key == Qt::Key_Return || key == Qt::Key_Enter;
    if (watched == m_find) {
        if (key == Qt::Key_Down || enter) {
            focusList();
            return true;
        }
        if (key == Qt::Key_Escape && !m_find->text().isEmpty()) {
            m_find->clear();
            return true;
        }
    } else if (enter && m_card->record() != 0) {
        m_card->focusFirst();
        return true;
    } else if (key == Qt::Key_Delete && m_card->record() != 0) {
        m_card->remove();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace ohmwright::ui
