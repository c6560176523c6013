// SPDX-License-Identifier: GPL-3.0-or-later
// The options of one choice side by side: what is still to do and to pay with each, how the checks
// come out, when the last milestone is reached, the day to begin by; and a button to take one.
//
// Stands above the form on the choice's card. Dates and checks come from the forecast; until it is
// there this says so.
#pragma once

#include "core/book/book.h"
#include "ui/shell/message_strip.h"

#include <QWidget>

class QGridLayout;
class QLabel;
class QLineEdit;
class QPushButton;
class QVBoxLayout;

namespace ohmwright::ui {

class Forecaster;
class SectionTitle;
class Theme;

class ChoiceOptions : public QWidget
{
    Q_OBJECT

public:
    ChoiceOptions(Book &book, Forecaster &forecaster, const Theme &theme,
                  QWidget *parent = nullptr);

    void showChoice(std::int64_t id);

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);
    void decided(); // what had the focus is gone

protected:
    void showEvent(QShowEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    struct Told; // one option, as it is shown
    [[nodiscard]] std::vector<Told> told(const Choice &choice) const;
    void refresh();
    void lay(const std::vector<Told> &options);
    void askWhy(Id<ChoiceOption> option);
    void decide();
    void leaveOpen();

    Book &m_book;
    Forecaster &m_forecaster;
    const Theme &m_theme;
    Id<Choice> m_choice;
    Id<ChoiceOption> m_taking; // the reason is being asked for
    QStringList m_shown;       // all that stands in the grid
    SectionTitle *m_title;
    QLabel *m_sentence;
    QVBoxLayout *m_place;
    QWidget *m_grid = nullptr;
    QWidget *m_why;
    QLabel *m_whyLabel;
    QLineEdit *m_because;
    QLabel *m_problem;
};

} // namespace ohmwright::ui
