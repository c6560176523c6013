// SPDX-License-Identifier: GPL-3.0-or-later
// A letter and a test, as far as the build order asks: when it was asked and what came of it.
#pragma once

#include "core/book/book.h"

#include <QWidget>

namespace ohmwright::ui {

class CardCautions;
class EntryForm;
class Theme;

class LetterForm : public QWidget
{
    Q_OBJECT

public:
    LetterForm(Book &book, const Theme &theme, QWidget *parent = nullptr);

    void setLetter(Id<Letter> letter);
    void refresh(); // what was typed and not saved stays
    void begin();

signals:
    void saved(const QString &sentence);

private:
    Outcome save();

    Book &m_book;
    Id<Letter> m_letter;
    EntryForm *m_form;
};

// For tests without steps; a guided one is recorded on its card, step by step. Its cautions stand
// before the first field.
class TestForm : public QWidget
{
    Q_OBJECT

public:
    TestForm(Book &book, const Theme &theme, QWidget *parent = nullptr);

    void setTest(Id<TestRecord> test);
    void refresh();
    void begin();

signals:
    void saved(const QString &sentence);

private:
    Outcome save();

    Book &m_book;
    Id<TestRecord> m_test;
    CardCautions *m_cautions;
    EntryForm *m_form;
};

} // namespace ohmwright::ui
