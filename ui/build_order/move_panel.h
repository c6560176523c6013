// SPDX-License-Identifier: GPL-3.0-or-later
// The chosen move: what, why, by when, for which tasks, and the one thing to do about it here.
#pragma once

#include "core/book/book.h"
#include "core/plan/network.h"

#include <QWidget>

#include <optional>

class QLabel;
class QPushButton;

namespace ohmwright::ui {

class LetterForm;
class ProblemLine;
class SectionTitle;
class TestForm;
class Theme;

class MovePanel : public QWidget
{
    Q_OBJECT

public:
    MovePanel(Book &book, const Theme &theme, QWidget *parent = nullptr);

    // `network` is the one the move's tasks are indices of.
    void setMove(const plan::Network &network, const plan::Move &move);
    // Does what can be done at once, or goes to where it is filled in.
    void act();

signals:
    void done(const QString &sentence);
    void partWanted(const QString &key);
    void openingWanted(const QString &key); // of that part
    void recordWanted(const QString &table, const QString &key);

private:
    Book &m_book;
    std::optional<plan::Move> m_move;
    SectionTitle *m_heading;
    QLabel *m_why;
    QLabel *m_for;
    LetterForm *m_letter;
    TestForm *m_test;
    ProblemLine *m_problem;
    QPushButton *m_act;
};

} // namespace ohmwright::ui
