// SPDX-License-Identifier: GPL-3.0-or-later
// A page and, behind quiet switches on top of it, the records that go with it: each kind as a list
// with its cards, made when it is first turned to.
#pragma once

#include "core/book/book.h"
#include "ui/shell/message_strip.h"

#include <QHash>
#include <QStringList>
#include <QWidget>

class QStackedWidget;

namespace ohmwright::ui {

class ChipRow;
class RecordsPanel;
class Theme;

class RecordPages : public QWidget
{
    Q_OBJECT

public:
    // `first` is the page itself, called `firstName` on its switch.
    RecordPages(Book &book, const Theme &theme, QWidget *first, const QString &firstName,
                QStringList tables, QWidget *parent = nullptr);

    // A page that is neither the first nor a table, behind the switches there are so far.
    void addPage(const QString &key, const QString &name, QWidget *page);
    void showFirst();
    // One that was added by addPage().
    void showPage(const QString &key);
    // By table; of a branch its circuit with it. False for a record that stands elsewhere or is not
    // there, and when what was typed in a card before was refused.
    bool showRecord(const QString &table, const QString &key);
    // Turns to it.
    RecordsPanel &showPanel(const QString &table);
    // Makes it if need be.
    RecordsPanel &panel(const QString &table);
    [[nodiscard]] ChipRow &switches() { return *m_switches; }

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);
    void madePanel(ohmwright::ui::RecordsPanel *panel); // to add to it

private:
    void turnTo(const QString &key);
    void count();

    Book &m_book;
    const Theme &m_theme;
    QWidget *m_first;
    QStringList m_tables;
    ChipRow *m_switches;
    QStackedWidget *m_pages;
    QHash<QString, RecordsPanel *> m_panels;
    QHash<QString, QWidget *> m_others;
};

} // namespace ohmwright::ui
