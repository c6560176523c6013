// SPDX-License-Identifier: GPL-3.0-or-later
// The sheet to begin a book on: which starter, or none, and the starter's six questions with their
// usual answers set. Up and Down pick the starter, Tab goes on to the questions, Enter makes the
// book from wherever one is, Escape leaves it.
//
// It makes nothing itself: whoever shows it asks where the book shall lie and does.
#pragma once

#include "core/quantity/money.h"
#include "core/starters/starters.h"

#include <QWidget>

#include <optional>
#include <vector>

class QBoxLayout;
class QComboBox;
class QLabel;
class QLineEdit;
class QRadioButton;
class QStackedWidget;

namespace ohmwright::ui {

class Field;
class ProblemLine;
class Theme;

class StartSheet : public QWidget
{
    Q_OBJECT

public:
    explicit StartSheet(const Theme &theme, QWidget *parent = nullptr);

    // As on the first day: the first starter, the usual answers, the focus on the starters.
    void begin();
    // Name of the picked starter; empty for an empty book.
    [[nodiscard]] QString starter() const;
    // To all of the picked starter's questions.
    [[nodiscard]] StarterAnswers answers() const;
    // What the book counts in; none, with the problem shown, if what is typed is no currency.
    [[nodiscard]] std::optional<Currency> currency();
    // Why the book could not be made; empty takes it away.
    void setProblem(const QString &sentence);

signals:
    void wanted(); // the book, as picked
    void closed(); // the person thought better of it

protected:
    void keyPressEvent(QKeyEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    struct Asked
    {
        StarterQuestion question;
        QComboBox *choice = nullptr;
        Field *field = nullptr;
    };
    struct Offered
    {
        Starter starter; // without a name: the empty book
        QRadioButton *button = nullptr;
        std::vector<Asked> asked;
    };

    QWidget *makeOffers();
    QWidget *makeQuestions(Offered &offered);
    void pick(std::size_t index);
    [[nodiscard]] const Offered &picked() const;

    const Theme &m_theme;
    QBoxLayout *m_halves;
    QWidget *m_offers;
    QStackedWidget *m_questions;
    QLineEdit *m_currency;
    ProblemLine *m_problem;
    std::vector<Offered> m_offered;
};

} // namespace ohmwright::ui
