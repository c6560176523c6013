// SPDX-License-Identifier: GPL-3.0-or-later
// The chosen entry of a budget line and what can be recorded about it: a payment, a core returned,
// money received, or on to the part.
#pragma once

#include "core/book/book.h"
#include "core/budget/line_contents.h"

#include <QWidget>

#include <optional>

class QLabel;
class QPushButton;

namespace ohmwright::ui {

class EntryForm;
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

private:
    void showPayments();
    Outcome pay();
    Outcome coreBack();
    Outcome received();

    Book &m_book;
    std::optional<LineEntry> m_entry;
    SectionTitle *m_heading;
    QLabel *m_words;
    EntryForm *m_pay;
    EntryForm *m_core;
    EntryForm *m_received;
    QPushButton *m_part;
};

} // namespace ohmwright::ui
