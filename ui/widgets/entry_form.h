// SPDX-License-Identifier: GPL-3.0-or-later
// A small form that stands on the page: fields in one or two columns, one button, and what is wrong
// shown at the field it concerns.
//
//     auto *form = new EntryForm(theme, tr("&Add payment"));
//     form->addLine("amount", tr("Am&ount"), Width::Half);
//     form->setSave([=] { return addPayment(book, …form->text("amount")…); });
//
// Enter in a line (Ctrl+Enter in a longer text), or the button, saves. A Problem whose `where` is
// the name of a field is shown there, any other below them all; what was typed stays until it could
// be taken.
#pragma once

#include "core/quantity/dates.h"
#include "core/quantity/result.h"

#include <QWidget>

#include <functional>
#include <optional>
#include <vector>

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace ohmwright::ui {

class Field;
class Theme;

class EntryForm : public QWidget
{
    Q_OBJECT

public:
    enum class Width { Half, Full };

    // `buttonText` may hold a mnemonic; without a text there is no button.
    EntryForm(const Theme &theme, const QString &buttonText, QWidget *parent = nullptr);

    QLineEdit *addLine(const QString &name, const QString &label, Width width = Width::Full);
    // Entries as (data, text).
    QComboBox *addChoice(const QString &name, const QString &label,
                         const std::vector<std::pair<int, QString>> &entries,
                         Width width = Width::Full);
    QCheckBox *addCheck(const QString &name, const QString &text, Width width = Width::Full);
    // A text of several lines; Tab leaves it.
    QPlainTextEdit *addNote(const QString &name, const QString &label);
    // Words over the fields that follow, for as long as one of them is shown.
    void addHeading(const QString &text);
    // The form owns `editor`. Lines among such editors save on Enter too.
    void addEditor(const QString &name, const QString &label, QWidget *editor,
                   Width width = Width::Full);

    void setSave(std::function<Outcome()> save);
    // Saves whenever a line is left, a choice or a check is changed.
    void setSavesItself(bool itself) { m_savesItself = itself; }
    // False, with the problem shown, if it could not be saved.
    bool save();

    // Of a line or a longer text.
    [[nodiscard]] QString text(const QString &name) const; // trimmed
    void setText(const QString &name, const QString &text);
    [[nodiscard]] int choice(const QString &name) const;
    void setChoice(const QString &name, int value);
    [[nodiscard]] bool isChecked(const QString &name) const;
    void setChecked(const QString &name, bool checked);
    // Nothing for an empty line; a Problem at that field for what is no date.
    [[nodiscard]] Result<std::optional<QDate>> date(const QString &name, QDate today) const;
    void setDate(const QString &name, std::optional<QDate> date);

    [[nodiscard]] QWidget *editor(const QString &name) const;
    [[nodiscard]] Field *field(const QString &name) const;
    void setFieldVisible(const QString &name, bool visible);
    void setHint(const QString &name, const QString &hint);
    [[nodiscard]] QPushButton *button() const { return m_button; }

    void showProblem(const Problem &problem);
    void clearProblems();
    // What is shown as wrong, wherever it stands; empty when nothing is.
    [[nodiscard]] QString problem() const;
    // True while a line or a longer text holds something typed that was not saved.
    [[nodiscard]] bool isTouched() const;
    void forgetTouched();
    void focusFirst();

signals:
    void saved();

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    struct Entry
    {
        QString name;
        QWidget *editor;
        Field *field; // null for a check
        QWidget *shown;
        Width width;
        bool offered;
    };

    void place(Entry entry);
    void layOut();
    void itself();
    [[nodiscard]] const Entry *find(const QString &name) const;

    const Theme &m_theme;
    QGridLayout *m_grid;
    QWidget *m_general; // a Field without a label would leave a gap above the sentence
    QPushButton *m_button = nullptr;
    std::vector<Entry> m_entries;
    std::function<Outcome()> m_save;
    bool m_savesItself = false;
    bool m_saving = false;
};

// Sentence and what to do about it, as one text.
[[nodiscard]] QString told(const Problem &problem);

} // namespace ohmwright::ui
