// SPDX-License-Identifier: GPL-3.0-or-later
// The chosen entry of a budget line and what can be recorded about it: a payment, a core returned,
// money received, another budget line, or on to the part and to its card.
#pragma once

#include "core/book/book.h"
#include "core/budget/line_contents.h"
#include "core/cards/record_kind.h"

#include <QWidget>

#include <optional>

class QLabel;
class QPushButton;

namespace ohmwright::ui {

class EntryForm;
class PickOrNew;
class SectionTitle;
class Theme;

class EntryPanel : public QWidget
{
    Q_OBJECT

public:
    EntryPanel(Book &book, const Theme &theme, QWidget *parent = nullptr);

    void setEntry(const std::optional<LineEntry> &entry);
    // Into the form that fits the entry, or to its part.
    void act();

signals:
    void done(const QString &sentence);
    void partWanted(const QString &key);
    void recordWanted(const QString &table, const QString &key); // its card

private:
    void showPayments();
    Outcome pay();
    Outcome coreBack();
    Outcome received();
    Outcome move();
    void openCard();
    void showMove();
    // What the entry is, as a record that has a budget line: item, wanted part, money got back.
    [[nodiscard]] RecordRef standing() const;

    Book &m_book;
    std::optional<LineEntry> m_entry;
    SectionTitle *m_heading;
    QLabel *m_words;
    EntryForm *m_pay;
    EntryForm *m_core;
    EntryForm *m_received;
    EntryForm *m_move;
    PickOrNew *m_line;
    QPushButton *m_card;
    QPushButton *m_part;
};

} // namespace ohmwright::ui
