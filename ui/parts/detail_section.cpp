// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/detail_section.h"

#include "ui/widgets/field.h"
#include "ui/widgets/section_title.h"

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

namespace ohmwright::ui {

QLabel *makeWords(const Theme &theme, const QString &text, Lettering lettering, bool mute)
{
    auto *label = new QLabel(text);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setFont(theme.font(lettering));
    if (mute)
        label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

void emptyLayout(QLayout &layout)
{
    while (QLayoutItem *item = layout.takeAt(0)) {
        if (QWidget *widget = item->widget()) {
            widget->hide();
            widget->deleteLater();
        } else if (QLayout *inner = item->layout()) {
            emptyLayout(*inner);
        }
        delete item;
    }
}

DetailSection::DetailSection(const DetailGround &ground, const QString &title, QWidget *parent)
    : QWidget(parent), m_ground(ground), m_column(new QVBoxLayout(this)),
      m_title(new SectionTitle(ground.theme, title))
{
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(8);
    m_column->addWidget(m_title);
}

void DetailSection::read(const Part &part)
{
    const bool another = part.id != m_part;
    m_part = part.id;
    fill(part, another);
}

QVBoxLayout *DetailSection::addList(int spacing)
{
    auto *holder = new QWidget;
    auto *list = new QVBoxLayout(holder);
    list->setContentsMargins(0, 0, 0, 0);
    list->setSpacing(spacing);
    m_column->addWidget(holder);
    return list;
}

bool DetailSection::editPart(const QString &what, const std::function<Outcome(Part &)> &change,
                             Field *field)
{
    const Part *now = partNow();
    if (!now)
        return false;
    Part edited = *now;
    return tell(book().edit(what,
                            [&]() -> Outcome {
                                if (Outcome changed = change(edited); !changed)
                                    return changed;
                                return book().update(edited);
                            }),
                field);
}

bool DetailSection::tell(const Outcome &outcome, Field *field)
{
    if (field)
        field->setProblem(outcome ? QString() : sentenceOf(outcome.error()));
    else if (!outcome)
        emit said(sentenceOf(outcome.error()), Tone::Problem);
    return outcome.has_value();
}

FieldsSection::FieldsSection(const DetailGround &ground, const QString &title,
                             std::vector<PartField> fields, QWidget *parent)
    : DetailSection(ground, title, parent)
{
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(12);
    grid->setVerticalSpacing(8);
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    column().addLayout(grid);
    for (PartField &field : fields) {
        const std::size_t index = m_lines.size();
        QLineEdit *edit = nullptr;
        if (field.known) {
            auto *pick = new PickOrNew(theme());
            connect(pick, &PickOrNew::chosen, this, [this, index] { commit(index); });
            connect(pick, &PickOrNew::newName, this, [this, index] { commit(index); });
            connect(pick, &PickOrNew::emptied, this, [this, index] { commit(index); });
            edit = pick;
        } else {
            edit = new QLineEdit;
            connect(edit, &QLineEdit::editingFinished, this, [this, index] { commit(index); });
        }
        auto *widget = new Field(theme(), field.label, edit);
        widget->setHint(field.hint);
        grid->addWidget(widget, static_cast<int>(index / 2), static_cast<int>(index % 2),
                        Qt::AlignTop);
        m_lines.push_back({std::move(field), widget, edit, {}});
    }
}

void FieldsSection::fill(const Part &part, bool another)
{
    for (Line &line : m_lines) {
        if (auto *pick = qobject_cast<PickOrNew *>(line.edit))
            pick->setKnown(line.field.known(records()));
        const QString now = line.field.read(records(), part);
        // what is being typed, or was refused, is not overwritten by an edit made elsewhere
        if (!another && now == line.shown && (line.widget->hasProblem() || line.edit->hasFocus()))
            continue;
        line.shown = now;
        line.widget->setProblem({});
        if (auto *pick = qobject_cast<PickOrNew *>(line.edit))
            pick->setKey(now);
        else if (line.edit->text() != now) {
            line.edit->setText(now);
            line.edit->setCursorPosition(0);
        }
    }
}

void FieldsSection::commit(std::size_t index)
{
    Line &line = m_lines[index];
    auto *pick = qobject_cast<PickOrNew *>(line.edit);
    const Typed typed{line.edit->text().trimmed(), pick ? pick->key() : QString()};
    const QString &value = pick && !typed.key.isEmpty() ? typed.key : typed.text;
    if (value == line.shown) {
        line.widget->setProblem({});
        return;
    }
    const Part *now = partNow();
    if (!now)
        return;
    const bool done = editPart(
        tr("%1 of %2").arg(line.field.label, now->name),
        [&](Part &part) { return line.field.write(book(), part, typed); }, line.widget);
    if (!done)
        return;
    // shown as the book has it now: "+90d" became a date
    if (const Part *after = partNow()) {
        line.shown = line.field.read(records(), *after);
        if (pick)
            pick->setKey(line.shown);
        else
            line.edit->setText(line.shown);
    }
}

} // namespace ohmwright::ui
