// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/card_form.h"

#include "ui/cards/record_list.h"
#include "ui/shell/theme.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/field.h"
#include "ui/widgets/pick_or_new.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

constexpr int kNoChoice = -1;
constexpr std::string_view kFigures = RecordTraits<CheckFigure>::table;
const QString kFigure = QStringLiteral("figure");
const QString kWord = QStringLiteral("word"); // of a figure, which says what it may be

EntryForm::Width widthOf(FieldPlace place)
{
    return place == FieldPlace::Half || place == FieldPlace::Fixed ? EntryForm::Width::Half
                                                                   : EntryForm::Width::Full;
}

std::vector<KnownName> namesOf(const std::vector<KnownWord> &known)
{
    std::vector<KnownName> names;
    names.reserve(known.size());
    for (const KnownWord &word : known)
        names.push_back({word.stored, word.spoken, word.about});
    return names;
}

// What the program does not know, of a book from elsewhere, stays as it is stored.
void showPicked(PickOrNew &pick, const QString &text)
{
    pick.setKey(text);
    if (pick.key() != text)
        pick.setNewName(text);
}

} // namespace

CardForm::CardForm(const Theme &theme, const RecordKind &kind, const CardLabels &labels,
                   QWidget *parent)
    : QWidget(parent), m_theme(theme), m_kind(kind), m_labels(labels),
      m_form(new EntryForm(theme, {}))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_form);
    for (const FieldLabel &label : labels.fields) {
        const FieldFacts *facts = kind.field(
            QString::fromLatin1(label.field.data(), static_cast<qsizetype>(label.field.size())));
        if (!facts || label.place == FieldPlace::Hidden)
            continue;
        if (*label.group)
            m_form->addHeading(labelText(label.group));
        add(*facts, label);
        m_shown.push_back(facts);
    }
    if (kind.table() == kFigures) {
        m_figure.emplace(*m_form, *pickOf(*kind.field(kWord)));
        connect(pickOf(*kind.field(kFigure)), &QLineEdit::textChanged, this, &CardForm::suitFigure);
    }
}

PickOrNew *CardForm::pickOf(const FieldFacts &facts) const
{
    return qobject_cast<PickOrNew *>(m_form->editor(facts.name));
}

void CardForm::suitFigure()
{
    if (m_figure)
        m_figure->suit(pickOf(*m_kind.field(kFigure))->keyNow());
}

void CardForm::add(const FieldFacts &facts, const FieldLabel &label)
{
    const QString words = labelText(label.label);
    const EntryForm::Width width = widthOf(label.place);
    const bool isWordOfFigure = m_kind.table() == kFigures && facts.name == kWord;
    if (facts.form == FieldForm::YesNo) {
        connect(m_form->addCheck(facts.name, words, width), &QCheckBox::toggled, this,
                &CardForm::edited);
        return;
    }
    if (facts.form == FieldForm::Choice) {
        std::vector<std::pair<int, QString>> entries;
        if (!facts.required)
            entries.emplace_back(kNoChoice, tr("not said"));
        for (int i = 0; i < facts.words.size(); ++i)
            entries.emplace_back(i, facts.words.at(i));
        connect(m_form->addChoice(facts.name, words, entries, width),
                &QComboBox::currentIndexChanged, this, &CardForm::edited);
    } else if (facts.form == FieldForm::Reference || !facts.known.empty() || isWordOfFigure) {
        auto *pick = new PickOrNew(m_theme);
        pick->setKnownOnly(!facts.makesNew);
        m_form->addEditor(facts.name, words, pick, width);
        if (facts.form == FieldForm::Reference)
            m_picks.emplace_back(pick, &facts);
        else
            pick->setKnown(namesOf(facts.known));
        connect(pick, &QLineEdit::textChanged, this, &CardForm::edited);
    } else if (label.place == FieldPlace::Note) {
        connect(m_form->addNote(facts.name, words), &QPlainTextEdit::textChanged, this,
                &CardForm::edited);
    } else {
        QLineEdit *line = m_form->addLine(facts.name, words, width);
        line->setReadOnly(label.place == FieldPlace::Fixed);
        if (facts.form == FieldForm::Date)
            line->setPlaceholderText(tr("1 Mar 2026, today, +2w"));
        connect(line, &QLineEdit::textChanged, this, &CardForm::edited);
    }
    m_form->setHint(facts.name, hintFor(facts, label));
}

QString CardForm::hintFor(const FieldFacts &facts, const FieldLabel &label) const
{
    if (*label.hint)
        return labelText(label.hint);
    if (facts.form == FieldForm::Whole && facts.bounds.least && facts.bounds.most)
        return tr("%1 to %2").arg(*facts.bounds.least).arg(*facts.bounds.most);
    if (facts.form == FieldForm::Amount && facts.bounds.measure)
        return tr("in %1").arg(Unit::ofMeasure(*facts.bounds.measure).front().symbol());
    return {};
}

QString CardForm::shown(const QString &field) const
{
    for (const FieldFacts *facts : m_shown)
        if (facts->name == field)
            return textOf(*facts);
    return {};
}

QString CardForm::textOf(const FieldFacts &facts) const
{
    if (facts.form == FieldForm::YesNo)
        return m_form->isChecked(facts.name) ? QStringLiteral("yes") : QStringLiteral("no");
    if (facts.form == FieldForm::Choice) {
        const int choice = m_form->choice(facts.name);
        return choice == kNoChoice ? QString() : facts.words.at(choice);
    }
    if (m_figure && !m_figure->takes(facts.name))
        return {};
    if (const PickOrNew *pick = pickOf(facts)) {
        if (pick->name().isEmpty())
            return {};
        if (const QString key = pick->keyNow(); !key.isEmpty())
            return key;
        return facts.makesNew ? QString(u'+' + pick->name()) : pick->name();
    }
    return m_form->text(facts.name);
}

void CardForm::show(const FieldFacts &facts, const QString &text)
{
    if (facts.form == FieldForm::YesNo)
        m_form->setChecked(facts.name, text == QLatin1String("yes"));
    else if (facts.form == FieldForm::Choice)
        m_form->setChoice(facts.name, static_cast<int>(facts.words.indexOf(text)));
    else if (PickOrNew *pick = pickOf(facts))
        showPicked(*pick, text);
    else
        m_form->setText(facts.name, text);
}

void CardForm::setKnown(const Records &records)
{
    for (const auto &[pick, facts] : m_picks)
        pick->setKnown(knownOf(records, *recordKind(facts->refersTo)));
}

void CardForm::begin(const Records &records, const FieldTexts &texts)
{
    m_inBook = texts;
    setKnown(records);
    for (const FieldFacts *facts : m_shown)
        show(*facts, texts.at(facts->name));
    m_form->clearProblems();
    m_form->forgetTouched();
}

void CardForm::refresh(const Records &records, const FieldTexts &texts)
{
    setKnown(records);
    for (const FieldFacts *facts : m_shown) {
        const QString &before = m_inBook[facts->name];
        const bool typed = textOf(*facts) != before;
        if (!typed && texts.at(facts->name) != before)
            show(*facts, texts.at(facts->name));
        if (!typed)
            m_inBook[facts->name] = texts.at(facts->name);
    }
}

FieldTexts CardForm::changed() const
{
    FieldTexts found;
    for (const FieldFacts *facts : m_shown) {
        const QString now = textOf(*facts);
        const auto before = m_inBook.find(facts->name);
        if (before != m_inBook.end() && now != before->second.trimmed())
            found[facts->name] = now;
    }
    return found;
}

Problem CardForm::inWords(Problem problem) const
{
    // the rules name a field as the field list does; a person reads its label
    const FieldLabel *label = fieldLabel(m_labels, problem.where);
    if (label && problem.sentence.startsWith(problem.where + u' '))
        problem.sentence = labelText(label->label) + problem.sentence.mid(problem.where.size());
    return problem;
}

} // namespace ohmwright::ui
