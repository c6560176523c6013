// SPDX-License-Identifier: GPL-3.0-or-later
// One record as a card: its form, what it holds as lists of their own, save and remove.
//
// Enter saves. Going on to another record saves what was typed first; what is refused stays, with
// why at its field. Removing asks nothing: undo brings it back.
#pragma once

#include "core/book/book.h"
#include "core/cards/record_kind.h"
#include "ui/shell/message_strip.h"

#include <QWidget>

#include <functional>
#include <vector>

class QHBoxLayout;
class QPushButton;
class QVBoxLayout;

namespace ohmwright::ui {

class CardCautions;
class CardForm;
class RecordsPanel;
class SectionTitle;
class ProblemLine;
class Theme;

class RecordCard : public QWidget
{
    Q_OBJECT

public:
    // `kind` has its labels (card_labels.h), else asserted.
    RecordCard(Book &book, const Theme &theme, const RecordKind &kind, QWidget *parent = nullptr);

    // 0: nothing to show, and the card is hidden. Whatever was typed before is dropped: settle()
    // first.
    void showRecord(std::int64_t id);
    // An empty one, with what is known of it beforehand; the first line has the focus.
    void beginNew(const FieldTexts &known = {}, const std::optional<RecordRef> &in = {});
    // Saves what was typed. False, with the problem shown, if it was refused.
    bool settle();
    bool save();
    void discard();
    void remove();
    void bookChanged();

    [[nodiscard]] std::int64_t record() const { return m_record; }
    [[nodiscard]] bool isNew() const { return m_new; }
    [[nodiscard]] CardForm &form() { return *m_form; }
    void focusFirst();

    // Below the form of a record that is there; `read` is told which.
    void addSection(QWidget *section, std::function<void(std::int64_t)> read);
    // Above the form, below the cautions.
    void addOnTop(QWidget *section, std::function<void(std::int64_t)> read);
    // Beside the save button.
    void addButton(QPushButton *button);

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);
    void saved(qint64 id);
    void removed();
    void left();      // Escape
    void abandoned(); // a new one after all not wanted

protected:
    void keyPressEvent(QKeyEvent *event) override;

private:
    struct Section
    {
        QWidget *widget;
        std::function<void(std::int64_t)> read;
    };

    void addNested();
    void follow(QWidget *section, std::function<void(std::int64_t)> read);
    void showState();
    void showSections();
    Outcome keep();

    Book &m_book;
    const Theme &m_theme;
    const RecordKind &m_kind;
    std::int64_t m_record = 0;
    bool m_new = false;
    FieldTexts m_known; // of a new one, not shown in the form or not typed there
    std::optional<RecordRef> m_in;
    SectionTitle *m_title;
    CardCautions *m_cautions;
    ProblemLine *m_lacking; // of a work permit
    CardForm *m_form;
    QPushButton *m_save;
    QPushButton *m_discard;
    QPushButton *m_remove;
    QHBoxLayout *m_buttons;
    QVBoxLayout *m_column;
    std::vector<Section> m_sections;
};

} // namespace ohmwright::ui
