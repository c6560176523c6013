// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/card_stack.h"

#include "core/cards/record_kind.h"
#include "ui/cards/record_card.h"
#include "ui/cards/records_panel.h"

#include <QScrollArea>
#include <QTableView>
#include <QVBoxLayout>

namespace ohmwright::ui {

CardStack::CardStack(Book &book, const Theme &theme, QWidget *parent)
    : QStackedWidget(parent), m_book(book), m_theme(theme)
{}

void CardStack::turnTo(const QString &table)
{
    m_table = table;
    if (!m_pages.contains(table))
        m_pages.insert(table, make(table));
    setCurrentWidget(m_pages.value(table));
}

QWidget *CardStack::make(const QString &table)
{
    const RecordKind &kind = *recordKind(table.toStdString());
    if (!kind.isSingle()) {
        auto *panel = new RecordsPanel(m_book, m_theme, kind, RecordsPanel::Shape::Column);
        connect(panel, &RecordsPanel::said, this, &CardStack::said);
        m_panels.insert(table, panel);
        m_cards.insert(table, &panel->card());
        addWidget(panel);
        emit madePanel(panel);
        return panel;
    }
    auto *holder = new QWidget;
    auto *column = new QVBoxLayout(holder);
    column->setContentsMargins(0, 0, 14, 12);
    auto *card = new RecordCard(m_book, m_theme, kind);
    column->addWidget(card);
    column->addStretch(1);
    card->showRecord(kind.ids(m_book.records()).front());
    connect(card, &RecordCard::said, this, &CardStack::said);
    connect(card, &RecordCard::left, this, &CardStack::left);
    connect(&m_book, &Book::changed, card, &RecordCard::bookChanged);
    m_cards.insert(table, card);
    auto *scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(holder);
    addWidget(scroll);
    return scroll;
}

bool CardStack::showKey(const QString &table, const QString &key)
{
    turnTo(table);
    RecordsPanel *panel = m_panels.value(table);
    return panel && panel->showKey(key);
}

void CardStack::focusCard()
{
    if (RecordsPanel *panel = m_panels.value(m_table))
        panel->setFocus(Qt::OtherFocusReason);
    else if (RecordCard *card = m_cards.value(m_table))
        card->focusFirst();
}

} // namespace ohmwright::ui
