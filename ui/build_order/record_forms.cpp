// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/record_forms.h"

#include "core/cards/record_kind.h"
#include "core/quantity/amount.h"
#include "ui/cards/card_cautions.h"
#include "ui/widgets/entry_form.h"

#include <QLineEdit>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

const QString kState = QStringLiteral("state");
const QString kAsked = QStringLiteral("asked_on");
const QString kAgain = QStringLiteral("ask_again_on");
const QString kAnswered = QStringLiteral("answered_on");
const QString kValid = QStringLiteral("valid_until");
const QString kReference = QStringLiteral("reference");
const QString kResult = QStringLiteral("result");
const QString kValue = QStringLiteral("value");
const QString kInstrument = QStringLiteral("instrument");
const QString kDoneBy = QStringLiteral("done_by");
const QString kDone = QStringLiteral("done_on");

template <WordedEnum E>
std::vector<std::pair<int, QString>> allWords()
{
    std::vector<std::pair<int, QString>> entries;
    for (std::size_t i = 0; i < EnumWords<E>::words.size(); ++i)
        entries.emplace_back(static_cast<int>(i), wordOf(static_cast<E>(i)));
    return entries;
}

EntryForm *onlyForm(QWidget *owner, const Theme &theme, const QString &button)
{
    auto *form = new EntryForm(theme, button);
    auto *column = new QVBoxLayout(owner);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(form);
    return form;
}

constexpr auto kHalf = EntryForm::Width::Half;

} // namespace

LetterForm::LetterForm(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_form(onlyForm(this, theme, tr("Keep the &letter")))
{
    m_form->addChoice(kState, tr("How it stands"), allWords<LetterState>(), kHalf);
    m_form->addLine(kReference, tr("Reference"), kHalf);
    m_form->addLine(kAsked, tr("Asked on"), kHalf);
    m_form->addLine(kAgain, tr("Ask again on"), kHalf);
    m_form->addLine(kAnswered, tr("Answered on"), kHalf);
    m_form->addLine(kValid, tr("Valid until"), kHalf);
    m_form->setHint(kAgain, tr("e.g. +2w"));
    m_form->setHint(kAsked, tr("e.g. today"));
    m_form->setSave([this] { return save(); });
}

void LetterForm::setLetter(Id<Letter> letter)
{
    if (m_letter != letter) {
        m_form->clearProblems();
        m_form->forgetTouched();
    }
    m_letter = letter;
    refresh();
}

void LetterForm::refresh()
{
    const Letter *letter = m_book.records().find(m_letter);
    if (!letter || m_form->isTouched())
        return;
    m_form->setChoice(kState, static_cast<int>(letter->state));
    m_form->setText(kReference, letter->reference);
    m_form->setDate(kAsked, letter->askedOn);
    m_form->setDate(kAgain, letter->askAgainOn);
    m_form->setDate(kAnswered, letter->answeredOn);
    m_form->setDate(kValid, letter->validUntil);
}

void LetterForm::begin()
{
    m_form->focusFirst();
}

Outcome LetterForm::save()
{
    const Letter *found = m_book.records().find(m_letter);
    if (!found)
        return fail(ProblemCode::NotFound, tr("This letter is no longer in the book."));
    Letter letter = *found;
    letter.state = static_cast<LetterState>(m_form->choice(kState));
    letter.reference = m_form->text(kReference);
    const QDate today = m_book.clock().today();
    struct Day
    {
        QString name;
        std::optional<QDate> *into;
    };
    for (const Day &day : {Day{kAsked, &letter.askedOn}, Day{kAgain, &letter.askAgainOn},
                           Day{kAnswered, &letter.answeredOn}, Day{kValid, &letter.validUntil}}) {
        const auto read = m_form->date(day.name, today);
        if (!read)
            return fail(read.error());
        *day.into = *read;
    }
    // a day it was asked says that it was asked
    if (letter.state == LetterState::ToAsk && letter.askedOn && !found->askedOn)
        letter.state = LetterState::Asked;
    const Outcome done =
        m_book.edit(tr("Letter “%1” is %2").arg(letter.subject, wordOf(letter.state)),
                    [&] { return m_book.update(letter); });
    if (!done)
        return done;
    m_form->forgetTouched();
    refresh();
    emit saved(tr("Letter “%1”: %2.").arg(letter.subject, wordOf(letter.state)));
    return {};
}

TestForm::TestForm(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_cautions(new CardCautions(theme)),
      m_form(onlyForm(this, theme, tr("Keep the &result")))
{
    static_cast<QVBoxLayout *>(layout())->insertWidget(0, m_cautions);
    m_form->addChoice(kResult, tr("Result"), allWords<TestResult>(), kHalf);
    m_form->addLine(kValue, tr("Measured"), kHalf);
    m_form->addLine(kInstrument, tr("With which instrument"));
    m_form->addLine(kDoneBy, tr("By whom"), kHalf);
    m_form->addLine(kDone, tr("On"), kHalf);
    m_form->setHint(kDone, tr("e.g. today"));
    m_form->setSave([this] { return save(); });
}

void TestForm::setTest(Id<TestRecord> test)
{
    if (m_test != test) {
        m_form->clearProblems();
        m_form->forgetTouched();
    }
    m_test = test;
    if (const TestRecord *record = m_book.records().find(test))
        m_cautions->show(RecordTraits<TestRecord>::table, wordOf(record->kind));
    refresh();
}

void TestForm::refresh()
{
    const TestRecord *test = m_book.records().find(m_test);
    if (!test || m_form->isTouched())
        return;
    m_form->setChoice(kResult, static_cast<int>(test->result));
    m_form->setText(kValue, test->value ? printAmount(*test->value) : QString());
    m_form->setText(kInstrument, test->instrument);
    m_form->setText(kDoneBy, test->doneBy);
    m_form->setDate(kDone, test->doneOn);
    m_form->setHint(kValue, test->limitText.isEmpty() ? tr("e.g. 250 kΩ")
                                                      : tr("limit: %1").arg(test->limitText));
}

void TestForm::begin()
{
    m_form->focusFirst();
}

Outcome TestForm::save()
{
    const TestRecord *found = m_book.records().find(m_test);
    if (!found)
        return fail(ProblemCode::NotFound, tr("This test is no longer in the book."));
    const auto day = m_form->date(kDone, m_book.clock().today());
    if (!day)
        return fail(day.error());
    if (*day && **day > m_book.clock().today())
        return fail(ProblemCode::BadInput,
                    tr("A result is recorded on the day of the test, not ahead."), {}, kDone);
    // by the same door as its card, so that what a passed test asks of others is asked here too
    const RecordKind &kind = *recordKind(RecordTraits<TestRecord>::table);
    FieldTexts typed{{kResult, wordOf(static_cast<TestResult>(m_form->choice(kResult)))}};
    for (const QString &line : {kValue, kInstrument, kDoneBy, kDone})
        typed[line] = m_form->text(line);
    const Result<std::int64_t> kept = kind.save(m_book, m_test.value(), typed, std::nullopt);
    if (!kept)
        return fail(kept.error());
    const TestRecord &test = *m_book.records().find(m_test);
    m_form->forgetTouched();
    refresh();
    emit saved(tr("Test “%1”: %2.").arg(test.name, wordOf(test.result)));
    return {};
}

} // namespace ohmwright::ui
