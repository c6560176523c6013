// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/entry_form.h"

#include "ui/shell/theme.h"
#include "ui/widgets/field.h"
#include "ui/widgets/pick_or_new.h"
#include "ui/widgets/problem_line.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTextDocument>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

QString told(const Problem &problem)
{
    return problem.whatToDo.isEmpty() ? problem.sentence
                                      : problem.sentence + u' ' + problem.whatToDo;
}

EntryForm::EntryForm(const Theme &theme, const QString &buttonText, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_grid(new QGridLayout), m_general(new ProblemLine(theme))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    m_grid->setHorizontalSpacing(12);
    m_grid->setVerticalSpacing(8);
    m_grid->setColumnStretch(0, 1);
    m_grid->setColumnStretch(1, 1);
    column->addLayout(m_grid);
    column->addWidget(m_general);
    if (!buttonText.isEmpty()) {
        m_button = new QPushButton(buttonText);
        column->addWidget(m_button, 0, Qt::AlignLeft);
        connect(m_button, &QPushButton::clicked, this, &EntryForm::save);
    }
}

void EntryForm::place(Entry entry)
{
    m_entries.push_back(std::move(entry));
    layOut();
    if (m_button && m_entries.back().editor)
        setTabOrder(m_entries.back().editor, m_button);
}

void EntryForm::layOut()
{
    for (const Entry &entry : m_entries)
        m_grid->removeWidget(entry.shown);
    int row = 0;
    int at = 0;
    for (const Entry &entry : m_entries) {
        if (!entry.offered)
            continue;
        if (entry.width == Width::Full && at == 1) {
            ++row;
            at = 0;
        }
        const bool full = entry.width == Width::Full;
        m_grid->addWidget(entry.shown, row, at, 1, full ? 2 : 1,
                          entry.field ? Qt::AlignTop : Qt::AlignVCenter);
        if (full || at == 1) {
            ++row;
            at = 0;
        } else {
            at = 1;
        }
    }
}

void EntryForm::addEditor(const QString &name, const QString &label, QWidget *editor, Width width)
{
    auto *shown = new Field(m_theme, label, editor, this);
    if (auto *line = qobject_cast<QLineEdit *>(editor)) {
        connect(line, &QLineEdit::returnPressed, this, [this] {
            if (!m_savesItself)
                save();
        });
        connect(line, &QLineEdit::editingFinished, this, &EntryForm::itself);
    }
    // what is picked from its list does not count as typed
    if (auto *pick = qobject_cast<PickOrNew *>(editor)) {
        const auto picked = [this] {
            if (m_savesItself)
                save();
        };
        connect(pick, &PickOrNew::chosen, this, picked);
        connect(pick, &PickOrNew::newName, this, picked);
        connect(pick, &PickOrNew::emptied, this, picked);
    }
    place({name, editor, shown, shown, width, true});
}

QLineEdit *EntryForm::addLine(const QString &name, const QString &label, Width width)
{
    auto *line = new QLineEdit;
    addEditor(name, label, line, width);
    // what is wrong with it stands no longer than what was typed
    connect(line, &QLineEdit::textEdited, this, [this, name] {
        if (Field *shown = field(name))
            shown->setProblem({});
    });
    return line;
}

QComboBox *EntryForm::addChoice(const QString &name, const QString &label,
                                const std::vector<std::pair<int, QString>> &entries, Width width)
{
    auto *combo = new QComboBox;
    for (const auto &[value, text] : entries)
        combo->addItem(text, value);
    connect(combo, &QComboBox::activated, this, [this] {
        if (m_savesItself)
            save();
    });
    addEditor(name, label, combo, width);
    return combo;
}

QCheckBox *EntryForm::addCheck(const QString &name, const QString &text, Width width)
{
    auto *check = new QCheckBox(text, this);
    connect(check, &QCheckBox::clicked, this, [this] {
        if (m_savesItself)
            save();
    });
    place({name, check, nullptr, check, width, true});
    return check;
}

QPlainTextEdit *EntryForm::addNote(const QString &name, const QString &label)
{
    constexpr int kLines = 4;
    auto *note = new QPlainTextEdit;
    note->setTabChangesFocus(true);
    note->setFixedHeight(kLines * note->fontMetrics().lineSpacing() + 16);
    note->installEventFilter(this);
    addEditor(name, label, note);
    return note;
}

void EntryForm::addHeading(const QString &text)
{
    auto *words = new QLabel(text, this);
    words->setTextFormat(Qt::PlainText);
    words->setFont(m_theme.font(Lettering::Strong));
    words->setContentsMargins(0, m_entries.empty() ? 0 : 8, 0, 0);
    place({{}, nullptr, nullptr, words, Width::Full, true});
}

// A longer text keeps Enter for itself; with Ctrl it saves as in a line.
bool EntryForm::eventFilter(QObject *watched, QEvent *event)
{
    if (event->type() == QEvent::KeyPress) {
        const auto *key = static_cast<QKeyEvent *>(event);
        if ((key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) &&
            key->modifiers().testFlag(Qt::ControlModifier)) {
            save();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void EntryForm::setSave(std::function<Outcome()> save)
{
    m_save = std::move(save);
}

void EntryForm::itself()
{
    if (m_savesItself && !m_saving && isTouched())
        save();
}

bool EntryForm::save()
{
    if (!m_save || m_saving)
        return false;
    m_saving = true;
    clearProblems();
    const Outcome done = m_save();
    if (done)
        forgetTouched();
    else
        showProblem(done.error());
    m_saving = false;
    if (done)
        emit saved();
    return done.has_value();
}

const EntryForm::Entry *EntryForm::find(const QString &name) const
{
    const auto found = std::find_if(m_entries.begin(), m_entries.end(),
                                    [&](const Entry &entry) { return entry.name == name; });
    return found == m_entries.end() ? nullptr : &*found;
}

QWidget *EntryForm::editor(const QString &name) const
{
    const Entry *entry = find(name);
    Q_ASSERT(entry);
    return entry->editor;
}

Field *EntryForm::field(const QString &name) const
{
    const Entry *entry = find(name);
    return entry ? entry->field : nullptr;
}

QString EntryForm::text(const QString &name) const
{
    if (const auto *note = qobject_cast<QPlainTextEdit *>(editor(name)))
        return note->toPlainText().trimmed();
    return qobject_cast<QLineEdit *>(editor(name))->text().trimmed();
}

void EntryForm::setText(const QString &name, const QString &text)
{
    if (auto *note = qobject_cast<QPlainTextEdit *>(editor(name))) {
        if (note->toPlainText() != text)
            note->setPlainText(text);
        note->document()->setModified(false);
        return;
    }
    auto *line = qobject_cast<QLineEdit *>(editor(name));
    if (line->text() != text) {
        line->setText(text);
        line->setCursorPosition(0);
    }
    line->setModified(false);
}

int EntryForm::choice(const QString &name) const
{
    return qobject_cast<QComboBox *>(editor(name))->currentData().toInt();
}

void EntryForm::setChoice(const QString &name, int value)
{
    auto *combo = qobject_cast<QComboBox *>(editor(name));
    combo->setCurrentIndex(std::max(0, combo->findData(value)));
}

bool EntryForm::isChecked(const QString &name) const
{
    return qobject_cast<QCheckBox *>(editor(name))->isChecked();
}

void EntryForm::setChecked(const QString &name, bool checked)
{
    qobject_cast<QCheckBox *>(editor(name))->setChecked(checked);
}

Result<std::optional<QDate>> EntryForm::date(const QString &name, QDate today) const
{
    const QString typed = text(name);
    if (typed.isEmpty())
        return std::optional<QDate>();
    const Result<QDate> read = parseDate(typed, today);
    if (!read)
        return fail(read.error().code, read.error().sentence, read.error().whatToDo, name);
    return std::optional<QDate>(*read);
}

void EntryForm::setDate(const QString &name, std::optional<QDate> date)
{
    setText(name, date ? showDate(*date) : QString());
}

void EntryForm::setFieldVisible(const QString &name, bool visible)
{
    for (Entry &entry : m_entries) {
        if (entry.name != name || entry.offered == visible)
            continue;
        entry.offered = visible;
        entry.shown->setVisible(visible);
        layOut();
    }
}

void EntryForm::setHint(const QString &name, const QString &hint)
{
    if (Field *shown = field(name))
        shown->setHint(hint);
}

void EntryForm::showProblem(const Problem &problem)
{
    const Entry *entry = find(problem.where);
    if (entry && entry->field && entry->offered) {
        entry->field->setProblem(told(problem));
        if (!m_savesItself)
            entry->editor->setFocus();
        return;
    }
    static_cast<ProblemLine *>(m_general)->setProblem(told(problem));
}

void EntryForm::clearProblems()
{
    for (const Entry &entry : m_entries)
        if (entry.field)
            entry.field->setProblem({});
    static_cast<ProblemLine *>(m_general)->setProblem({});
}

QString EntryForm::problem() const
{
    for (const Entry &entry : m_entries)
        if (entry.field && entry.field->hasProblem())
            return entry.field->message();
    return static_cast<ProblemLine *>(m_general)->problem();
}

bool EntryForm::isTouched() const
{
    return std::any_of(m_entries.begin(), m_entries.end(), [](const Entry &entry) {
        if (const auto *note = qobject_cast<QPlainTextEdit *>(entry.editor))
            return note->document()->isModified();
        const auto *line = qobject_cast<QLineEdit *>(entry.editor);
        return line && line->isModified();
    });
}

void EntryForm::forgetTouched()
{
    for (const Entry &entry : m_entries) {
        if (auto *note = qobject_cast<QPlainTextEdit *>(entry.editor))
            note->document()->setModified(false);
        else if (auto *line = qobject_cast<QLineEdit *>(entry.editor))
            line->setModified(false);
    }
}

void EntryForm::focusFirst()
{
    for (const Entry &entry : m_entries) {
        if (!entry.offered || !entry.editor)
            continue;
        entry.editor->setFocus(Qt::TabFocusReason); // what stands there is chosen, to type over
        return;
    }
}

} // namespace ohmwright::ui
