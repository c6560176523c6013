// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/parts_list.h"

#include "ui/parts/part_words.h"
#include "ui/parts/parts_model.h"
#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/chip_row.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/least_rows.h"
#include "ui/widgets/section_title.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QResizeEvent>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <array>
#include <utility>

namespace ohmwright::ui {

namespace {

constexpr int kLeastWidth = 370;
// Filter and choices in one row.
constexpr int kOneRowFrom = 540;

QComboBox *choice(const QString &label, QHBoxLayout &row)
{
    auto *combo = new QComboBox;
    auto *words = new QLabel(label);
    words->setBuddy(combo);
    row.addWidget(words);
    row.addWidget(combo);
    return combo;
}

} // namespace

PartsList::PartsList(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_index(book.records(), book.clock().today())
{
    build();
    arrange();
}

void PartsList::build()
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(20, 14, 12, 12);
    column->setSpacing(10);

    m_title = new SectionTitle(m_theme, tr("Parts"), TitleLevel::Page);
    auto *log = new QPushButton(tr("&Log a part"));
    makePrimary(*log);
    log->setToolTip(tr("Ctrl+L"));
    m_title->addAtEnd(log);
    connect(log, &QPushButton::clicked, this, &PartsList::logWanted);
    column->addWidget(m_title);

    m_text = new QLineEdit;
    m_text->setPlaceholderText(tr("Name, serial, donor, seller, place, note"));
    m_text->setAccessibleName(tr("Filter the parts"));
    m_text->setClearButtonEnabled(true);
    m_text->installEventFilter(this);
    m_filters = new QBoxLayout(QBoxLayout::LeftToRight);
    m_filters->setSpacing(10);
    m_filters->addWidget(m_text, 1);
    auto *choices = new QHBoxLayout;
    choices->setSpacing(10);
    m_kind = choice(tr("K&ind"), *choices);
    m_kind->addItem(tr("any"), -1);
    addWords<PartKind>(*m_kind);
    m_grouping = choice(tr("&Group by"), *choices);
    m_grouping->addItem(tr("nothing"));
    m_grouping->addItem(tr("state"));
    m_grouping->addItem(tr("assembly"));
    choices->addStretch(1);
    m_filters->addLayout(choices);
    column->addLayout(m_filters);
    // stated, or the layout would never let it become narrow enough for two rows
    setMinimumWidth(kLeastWidth);
    m_states = new ChipRow(m_theme, tr("State"));
    for (std::size_t i = 0; i < EnumWords<PartState>::words.size(); ++i) {
        const QString word = wordOf(static_cast<PartState>(i));
        m_states->addChip(word, word);
    }
    column->addWidget(m_states);

    buildTable();
    m_none = new EmptyPage(
        m_theme, QStringLiteral("parts"), tr("No parts yet"),
        tr("Everything bought, salvaged or still wanted goes here, with where it came from, what "
           "it cost on your bench and what it is rated for."),
        tr("Log the first part"));
    m_nothing =
        new EmptyPage(m_theme, QStringLiteral("find"), tr("No part fits"),
                      tr("None of the parts in the book fits the filter."), tr("Show all parts"));
    m_stack = new QStackedWidget;
    m_stack->addWidget(m_table);
    m_stack->addWidget(m_none);
    m_stack->addWidget(m_nothing);
    column->addWidget(m_stack, 1);

    connect(m_text, &QLineEdit::textChanged, this, &PartsList::readFilter);
    connect(m_kind, &QComboBox::currentIndexChanged, this, &PartsList::readFilter);
    connect(m_grouping, &QComboBox::currentIndexChanged, this, &PartsList::readFilter);
    connect(m_states, &ChipRow::changed, this, &PartsList::readFilter);
    connect(m_none, &EmptyPage::started, this, &PartsList::logWanted);
    connect(m_nothing, &EmptyPage::started, this, [this] {
        m_text->clear();
        m_kind->setCurrentIndex(0);
        for (const QString &key : m_states->keysOn())
            m_states->setOn(key, false);
        m_table->setFocus();
    });
}

void PartsList::buildTable()
{
    m_model = new PartsModel(m_book.records(), m_index, m_theme, this);
    m_delegate = new DraftedTableDelegate(m_theme, this);
    m_table = new QTableView;
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Parts"));
    // “Battery module 1” to 9 differ at their ends
    m_table->setTextElideMode(Qt::ElideMiddle);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_delegate->dress(*m_table, true);
    keepLeastRows(*m_table, 5);
    const Currency own = m_book.records().build().currency;
    m_delegate->setFigureColumn(static_cast<int>(PartColumn::Cost), own.digits());
    QHeaderView *header = m_table->horizontalHeader();
    header->setSectionsClickable(true);
    header->setSortIndicatorShown(true);
    header->setSortIndicator(static_cast<int>(PartColumn::Name), Qt::AscendingOrder);
    header->setStretchLastSection(false);
    header->setSectionResizeMode(QHeaderView::Interactive);
    header->setSectionResizeMode(static_cast<int>(PartColumn::Name), QHeaderView::Stretch);
    m_table->viewport()->installEventFilter(this);
    connect(header, &QHeaderView::sectionClicked, this, &PartsList::sortBy);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &PartsList::rowMoved);
}

// The name takes what the others leave, and is what the list is read for. Beside the detail there
// is no room for all columns: then the model tells in second lines what they would. Widths a person
// has set stay until the table changes over.
void PartsList::shareOutWidth()
{
    const QFontMetrics metrics(m_theme.font(Lettering::Body));
    const auto roomFor = [&](const QString &text) {
        constexpr int kSides = 24;
        return metrics.horizontalAdvance(text) + kSides;
    };
    constexpr int kRoomForAll = 112; // characters
    // for a name of thirty characters beside what is left
    constexpr int kRoomForDeadline = 84;
    constexpr int kRoomForCost = 54;
    const int characters = m_table->viewport()->width() / metrics.averageCharWidth();
    const PartsRoom room = characters >= kRoomForAll        ? PartsRoom::Wide
                           : characters >= kRoomForDeadline ? PartsRoom::Narrow
                           : characters >= kRoomForCost     ? PartsRoom::Less
                                                            : PartsRoom::Least;
    if (m_room == room)
        return;
    m_room = room;
    const bool narrow = room != PartsRoom::Wide;
    constexpr int kMark = 23;
    const QFontMetrics heads(m_table->horizontalHeader()->font());
    const auto headOf = [&](PartColumn column) {
        constexpr int kSides = 22;
        return heads.horizontalAdvance(
                   m_model->headerData(static_cast<int>(column), Qt::Horizontal, Qt::DisplayRole)
                       .toString()) +
               kSides;
    };
    const QString sum = QStringLiteral("12 345.00");
    const QString day = QStringLiteral("28 May 2026");
    const int air = narrow ? 0 : 40;
    const std::array<std::pair<PartColumn, int>, kPartColumns - 1> widths{
        {{PartColumn::State, roomFor(wordOf(PartState::Quarantined)) + kMark + air / 4},
         {PartColumn::Assembly, metrics.averageCharWidth() * 19},
         {PartColumn::HighVoltage, headOf(PartColumn::HighVoltage) + air / 4},
         {PartColumn::Cost, std::max(roomFor(sum), headOf(PartColumn::Cost)) + air / 2},
         {PartColumn::Questions, headOf(PartColumn::Questions) + air / 4},
         {PartColumn::Deadline, roomFor(day) + air},
         {PartColumn::Place, metrics.averageCharWidth() * 19}}};
    for (const auto &[column, width] : widths)
        m_table->setColumnWidth(static_cast<int>(column), width);
    for (const PartColumn column :
         {PartColumn::Assembly, PartColumn::HighVoltage, PartColumn::Place})
        m_table->setColumnHidden(static_cast<int>(column), narrow);
    for (const PartColumn column : {PartColumn::Questions, PartColumn::Deadline})
        m_table->setColumnHidden(static_cast<int>(column), room >= PartsRoom::Less);
    m_table->setColumnHidden(static_cast<int>(PartColumn::Cost), room == PartsRoom::Least);
    m_model->setRoom(room);
}

void PartsList::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    m_filters->setDirection(width() < kOneRowFrom ? QBoxLayout::TopToBottom
                                                  : QBoxLayout::LeftToRight);
}

// Down from the filter goes to the table, as the eye does.
bool PartsList::eventFilter(QObject *watched, QEvent *event)
{
    if (watched == m_text && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent *>(event)->key();
        if (key == Qt::Key_Down || key == Qt::Key_Return || key == Qt::Key_Enter) {
            if (m_stack->currentWidget() == m_table) {
                m_table->setFocus(Qt::TabFocusReason);
                if (!m_chosen.isSet() || m_model->rowOf(m_chosen) < 0)
                    for (int row = 0; row < m_model->rowCount(); ++row)
                        if (!m_model->isHeading(row)) {
                            m_table->selectRow(row);
                            break;
                        }
            }
            return true;
        }
        if (key == Qt::Key_Escape && !m_text->text().isEmpty()) {
            m_text->clear();
            return true;
        }
    }
    if (m_table && watched == m_table->viewport() && event->type() == QEvent::Resize) {
        shareOutWidth();
        // a message below must not cover the part it tells of
        const auto *resize = static_cast<QResizeEvent *>(event);
        const QRect chosen = m_table->visualRect(m_table->currentIndex());
        if (chosen.top() < resize->oldSize().height() && chosen.bottom() >= resize->size().height())
            m_table->scrollTo(m_table->currentIndex());
    }
    return QWidget::eventFilter(watched, event);
}

void PartsList::readFilter()
{
    m_filter.text = m_text->text();
    m_filter.states.clear();
    for (const QString &key : m_states->keysOn())
        m_filter.states.insert(*fromWord<PartState>(key));
    const int kind = m_kind->currentData().toInt();
    m_filter.kind = kind < 0 ? std::nullopt : std::optional(static_cast<PartKind>(kind));
    m_filter.grouping = static_cast<PartGrouping>(m_grouping->currentIndex());
    arrange();
}

void PartsList::sortBy(int column)
{
    const auto chosen = static_cast<PartColumn>(column);
    m_filter.descending = chosen == m_filter.sortBy && !m_filter.descending;
    m_filter.sortBy = chosen;
    m_table->horizontalHeader()->setSortIndicator(column, m_filter.descending ? Qt::DescendingOrder
                                                                              : Qt::AscendingOrder);
    arrange();
}

void PartsList::arrange()
{
    Arrangement found = m_index.arrange(m_filter);
    for (std::size_t i = 0; i < found.perState.size(); ++i)
        m_states->setCount(wordOf(static_cast<PartState>(i)), found.perState[i]);
    const auto all = static_cast<int>(m_book.records().all<Part>().size());
    m_title->setRemark(found.parts == all ? tr("%1").arg(all)
                                          : tr("%1 of %2").arg(found.parts).arg(all));
    m_stack->setCurrentWidget(all == 0           ? static_cast<QWidget *>(m_none)
                              : found.parts == 0 ? static_cast<QWidget *>(m_nothing)
                                                 : m_table);
    m_arranging = true;
    m_table->clearSpans();
    m_model->show(std::move(found.rows));
    spanHeadings();
    const int row = m_model->rowOf(m_chosen);
    if (row >= 0) {
        const QModelIndex at = m_model->index(row, 0);
        if (m_table->currentIndex().row() != row ||
            !m_table->selectionModel()->isRowSelected(row)) {
            m_table->selectionModel()->setCurrentIndex(at, QItemSelectionModel::ClearAndSelect |
                                                               QItemSelectionModel::Rows);
            m_table->scrollTo(at);
        }
    } else {
        m_table->selectionModel()->clear();
    }
    m_arranging = false;
}

void PartsList::spanHeadings()
{
    if (m_filter.grouping == PartGrouping::None)
        return;
    for (int row = 0; row < m_model->rowCount(); ++row)
        if (m_model->isHeading(row))
            m_table->setSpan(row, 0, 1, kPartColumns);
}

void PartsList::rowMoved()
{
    if (m_arranging)
        return;
    const Id<Part> part = m_model->partAt(m_table->currentIndex().row());
    if (!part.isSet() || part == m_chosen)
        return;
    m_chosen = part;
    emit partChosen(part);
}

void PartsList::choose(Id<Part> part)
{
    if (part.isSet() && m_model->rowOf(part) < 0 && m_book.records().find(part)) {
        m_text->clear();
        m_kind->setCurrentIndex(0);
        for (const QString &key : m_states->keysOn())
            m_states->setOn(key, false);
    }
    if (part == m_chosen)
        return;
    m_chosen = part;
    arrange();
    emit partChosen(part);
}

void PartsList::setAskedByChecks(std::vector<Question> questions)
{
    m_index.setAskedByChecks(std::move(questions));
    arrange();
    m_model->contentChanged();
}

void PartsList::bookChanged(const Change &change)
{
    m_index.update(change, m_book.clock().today());
    if (m_chosen.isSet() && !m_book.records().find(m_chosen)) {
        m_chosen = {};
        emit partChosen(m_chosen);
    }
    arrange();
    m_model->contentChanged();
}

} // namespace ohmwright::ui
