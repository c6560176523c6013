// SPDX-License-Identifier: GPL-3.0-or-later
// A place that shows one kind of record at a time: a list with its cards, or the one card of a
// record that is there exactly once. Each is made when it is first turned to.
#pragma once

#include "core/book/book.h"
#include "ui/shell/message_strip.h"

#include <QHash>
#include <QStackedWidget>

namespace ohmwright::ui {

class RecordCard;
class RecordsPanel;
class Theme;

class CardStack : public QStackedWidget
{
    Q_OBJECT

public:
    CardStack(Book &book, const Theme &theme, QWidget *parent = nullptr);

    void turnTo(const QString &table);
    [[nodiscard]] QString table() const { return m_table; } // empty before the first
    // Null for a single record, or before it was turned to.
    [[nodiscard]] RecordsPanel *panel(const QString &table) const { return m_panels.value(table); }
    // Of a single record, or the one its panel shows. Null before it was turned to.
    [[nodiscard]] RecordCard *card(const QString &table) const { return m_cards.value(table); }
    bool showKey(const QString &table, const QString &key);
    void focusCard();

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);
    void madePanel(ohmwright::ui::RecordsPanel *panel); // to add to it
    void left();                                        // Escape in a single card

private:
    QWidget *make(const QString &table);

    Book &m_book;
    const Theme &m_theme;
    QString m_table;
    QHash<QString, QWidget *> m_pages;
    QHash<QString, RecordsPanel *> m_panels;
    QHash<QString, RecordCard *> m_cards;
};

} // namespace ohmwright::ui
