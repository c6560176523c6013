// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/record_pages.h"

#include "core/cards/record_kind.h"
#include "ui/cards/card_labels.h"
#include "ui/cards/choice_words.h"
#include "ui/cards/record_card.h"
#include "ui/cards/records_panel.h"
#include "ui/widgets/chip_row.h"

#include <QHBoxLayout>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <utility>

namespace ohmwright::ui {

namespace {

const QString kFirst = QStringLiteral("first");

// Takes what height there is: pages scroll inside, and a wish for more, passed on by the height
// that the switches need for their width, would make the window scroll the whole of it.
class Pages : public QStackedWidget
{
public:
    Pages() { setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored); }
    [[nodiscard]] bool hasHeightForWidth() const override { return false; }
};

} // namespace

RecordPages::RecordPages(Book &book, const Theme &theme, QWidget *first, const QString &firstName,
                         QStringList tables, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme), m_first(first), m_tables(std::move(tables)),
      m_switches(new ChipRow(theme, tr("What is shown"), ChipMode::One)), m_pages(new Pages)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    auto *top = new QHBoxLayout;
    top->setContentsMargins(20, 10, 20, 0);
    top->addWidget(m_switches);
    column->addLayout(top);
    column->addWidget(m_pages, 1);
    m_pages->addWidget(first);
    m_switches->addChip(kFirst, firstName, true);
    for (const QString &table : m_tables)
        m_switches->addChip(table, labelText(cardLabels(table.toStdString())->many));
    connect(m_switches, &ChipRow::changed, this, [this](const QStringList &on) {
        if (!on.isEmpty())
            turnTo(on.front());
    });
    connect(&book, &Book::changed, this, &RecordPages::count);
    count();
    setFocusProxy(first);
}

void RecordPages::count()
{
    for (const QString &table : m_tables) {
        const Records &records = m_book.records();
        // of choices what is still to decide
        m_switches->setCount(
            table, table == QLatin1String("choice")
                       ? openChoiceCount(records)
                       : static_cast<int>(recordKind(table.toStdString())->ids(records).size()));
    }
}

void RecordPages::turnTo(const QString &key)
{
    QWidget *page = key == kFirst            ? m_first
                    : m_others.contains(key) ? m_others.value(key)
                                             : &panel(key);
    m_pages->setCurrentWidget(page);
    setFocusProxy(page);
}

void RecordPages::addPage(const QString &key, const QString &name, QWidget *page)
{
    m_others.insert(key, page);
    m_pages->addWidget(page);
    m_switches->addChip(key, name);
}

void RecordPages::showFirst()
{
    m_switches->setOn(kFirst, true);
}

void RecordPages::showPage(const QString &key)
{
    m_switches->setOn(key, true);
}

RecordsPanel &RecordPages::showPanel(const QString &table)
{
    m_switches->setOn(table, true);
    return panel(table);
}

RecordsPanel &RecordPages::panel(const QString &table)
{
    if (RecordsPanel *there = m_panels.value(table))
        return *there;
    auto *made = new RecordsPanel(m_book, m_theme, *recordKind(table.toStdString()),
                                  RecordsPanel::Shape::Page);
    connect(made, &RecordsPanel::said, this, &RecordPages::said);
    m_panels.insert(table, made);
    m_pages->addWidget(made);
    emit madePanel(made);
    return *made;
}

bool RecordPages::showRecord(const QString &table, const QString &key)
{
    if (m_tables.contains(table)) {
        m_switches->setOn(table, true);
        return panel(table).showKey(key);
    }
    // one that is listed on the card of another
    const CardLabels *labels = cardLabels(table.toStdString());
    const RecordKind *found = recordKind(table.toStdString());
    const auto id = labels ? found->idOf(m_book.records(), key) : std::nullopt;
    if (!id)
        return false;
    const RecordKind &kind = *found;
    const Records &records = m_book.records();
    QString over;
    QString overKey;
    if (const auto holder = kind.holder(records, *id)) {
        over = QString::fromStdString(holder->table);
        overKey = recordKind(holder->table)->key(records, holder->id);
    } else if (!labels->within.empty()) {
        const QString within = QString::fromLatin1(labels->within.data(),
                                                   static_cast<qsizetype>(labels->within.size()));
        over = QString::fromStdString(kind.field(within)->refersTo);
        overKey = kind.texts(records, *id)->at(within);
    }
    if (!m_tables.contains(over) || !showRecord(over, overKey))
        return false;
    for (RecordsPanel *inner : panel(over).card().findChildren<RecordsPanel *>())
        if (inner->kind().table() == kind.table())
            return inner->showRecord(*id);
    return false;
}

} // namespace ohmwright::ui
