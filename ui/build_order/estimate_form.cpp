// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/estimate_form.h"

#include "ui/build_order/task_texts.h"
#include "ui/shell/theme.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/pick_or_new.h"
#include "ui/widgets/section_title.h"

#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

const QString kLeastWork = QStringLiteral("least_work_minutes");
const QString kMostWork = QStringLiteral("most_work_minutes");
const QString kLeastWait = QStringLiteral("least_wait_days");
const QString kMostWait = QStringLiteral("most_wait_days");
const QString kTrade = QStringLiteral("trade");
const QString kHands = QStringLiteral("hands");
const QString kBay = QStringLiteral("bay");
const QString kOneSitting = QStringLiteral("one_sitting");
const QString kFail = QStringLiteral("fail_percent");
const QString kRedoFrom = QStringLiteral("redo_from");
const QString kOpens = QStringLiteral("opens");
const QString kBuys = QStringLiteral("buys");
const QString kAsks = QStringLiteral("asks");
const QString kOption = QStringLiteral("option");

constexpr auto kHalf = EntryForm::Width::Half;
constexpr int kNoTrade = -1;

Result<std::optional<int>> told(const Result<int> &read, const QString &typed, const QString &field)
{
    if (typed.isEmpty())
        return std::optional<int>();
    if (!read)
        return fail(read.error().code, read.error().sentence, read.error().whatToDo, field);
    return std::optional(*read);
}

Result<std::optional<int>> whole(const QString &typed, const QString &field, int least, int most)
{
    if (typed.isEmpty())
        return std::optional<int>();
    bool number = false;
    const int value = typed.toInt(&number);
    if (!number || value < least || value > most)
        return fail(ProblemCode::BadInput,
                    EstimateForm::tr("A whole number from %1 to %2.").arg(least).arg(most), {},
                    field);
    return std::optional(value);
}

// Nothing typed is none; a name that is not known is refused.
template <class R>
Result<std::optional<Id<R>>> picked(const Records &records, const PickOrNew &pick,
                                    const QString &field)
{
    if (pick.name().isEmpty())
        return std::optional<Id<R>>();
    const R *row = records.byKey<R>(pick.keyNow());
    if (!row)
        return fail(ProblemCode::BadInput,
                    EstimateForm::tr("There is no “%1” in the book.").arg(pick.name()), {}, field);
    return std::optional(row->id);
}

template <class R>
QString keyOf(const Records &records, const std::optional<Id<R>> &id)
{
    const R *row = records.find(id);
    return row ? row->key : QString();
}

} // namespace

EstimateForm::EstimateForm(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_heading(new SectionTitle(theme, tr("For the forecast"))),
      m_form(new EntryForm(theme, QString())), m_redoFrom(new PickOrNew(theme)),
      m_opens(new PickOrNew(theme)), m_buys(new PickOrNew(theme)), m_asks(new PickOrNew(theme)),
      m_option(new PickOrNew(theme))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(m_heading);
    column->addWidget(m_form);
    for (PickOrNew *pick : {m_redoFrom, m_opens, m_buys, m_asks, m_option})
        pick->setKnownOnly(true);
    m_form->addLine(kLeastWork, tr("Work at least"), kHalf);
    m_form->addLine(kMostWork, tr("Work at most"), kHalf);
    m_form->addLine(kLeastWait, tr("Waits at least"), kHalf);
    m_form->addLine(kMostWait, tr("Waits at most"), kHalf);
    std::vector<std::pair<int, QString>> trades{{kNoTrade, tr("not said")}};
    for (std::size_t i = 0; i < EnumWords<Trade>::words.size(); ++i)
        trades.emplace_back(static_cast<int>(i), wordOf(static_cast<Trade>(i)));
    m_form->addChoice(kTrade, tr("Kind of work"), trades, kHalf);
    m_form->addLine(kHands, tr("People at once"), kHalf);
    m_form->addLine(kBay, tr("Bay"), kHalf);
    m_form->addCheck(kOneSitting, tr("In one sitting"), kHalf);
    m_form->addLine(kFail, tr("May fail, percent"), kHalf);
    m_form->addEditor(kRedoFrom, tr("Then again from"), m_redoFrom, kHalf);
    m_form->addEditor(kOpens, tr("Opens the unit"), m_opens, kHalf);
    m_form->addEditor(kBuys, tr("Orders the part"), m_buys, kHalf);
    m_form->addEditor(kAsks, tr("Asks for the letter"), m_asks, kHalf);
    m_form->addEditor(kOption, tr("Only with the option"), m_option);
    m_form->setHint(kLeastWork, tr("if all goes well, e.g. 2 h"));
    m_form->setHint(kMostWork, tr("if it does not, e.g. 8 h"));
    m_form->setHint(kHands, tr("1 to 4; 1 if left empty"));
    m_form->setHint(kBay, tr("tasks of one bay take turns"));
    m_form->setHint(kFail, tr("of a test, 0 to 95"));
    m_form->setSavesItself(true);
    m_form->setSave([this] { return keep(); });
    connect(m_form, &EntryForm::saved, this, &EstimateForm::refresh);
}

void EstimateForm::setTask(Id<Task> task)
{
    if (m_task != task) {
        if (m_form->isTouched() && !m_form->save())
            emit notKept(tr("An estimate that was typed was not kept. %1").arg(m_form->problem()));
        m_form->forgetTouched();
        m_form->clearProblems();
    }
    m_task = task;
    refresh();
}

void EstimateForm::setKnown(const Task &task)
{
    const Records &records = m_book.records();
    std::vector<KnownName> tasks;
    std::vector<KnownName> parts;
    std::vector<KnownName> wanted;
    std::vector<KnownName> letters;
    std::vector<KnownName> options;
    for (const Task &other : records.all<Task>())
        if (other.id != task.id && !other.milestone)
            tasks.push_back({other.key, other.title, other.area});
    for (const Part &part : records.all<Part>()) {
        parts.push_back({part.key, part.name, wordOf(part.state)});
        if (part.state == PartState::Wanted || task.buys == part.id)
            wanted.push_back({part.key, part.name, wordOf(part.state)});
    }
    for (const Letter &letter : records.all<Letter>())
        if (letter.state != LetterState::Granted || task.asks == letter.id)
            letters.push_back({letter.key, letter.subject, wordOf(letter.state)});
    for (const ChoiceOption &option : records.all<ChoiceOption>()) {
        const Choice *choice = records.find(option.choice);
        options.push_back({option.key, option.name, choice ? choice->question : QString()});
    }
    m_form->setFieldVisible(kOption, !options.empty());
    m_redoFrom->setKnown(std::move(tasks));
    m_opens->setKnown(std::move(parts));
    m_buys->setKnown(std::move(wanted));
    m_asks->setKnown(std::move(letters));
    m_option->setKnown(std::move(options));
}

void EstimateForm::refresh()
{
    const Records &records = m_book.records();
    const Task *task = records.find(m_task);
    setVisible(task && !task->milestone);
    if (!task || m_form->isTouched())
        return;
    setKnown(*task);
    const auto work = [](const std::optional<int> &minutes) {
        return minutes ? showWorkTime(*minutes) : QString();
    };
    const auto wait = [](const std::optional<int> &days) {
        return days ? showWaitDays(*days) : QString();
    };
    const auto number = [](const std::optional<int> &value) {
        return value ? QString::number(*value) : QString();
    };
    m_form->setText(kLeastWork, work(task->leastWorkMinutes));
    m_form->setText(kMostWork, work(task->mostWorkMinutes));
    m_form->setText(kLeastWait, wait(task->leastWaitDays));
    m_form->setText(kMostWait, wait(task->mostWaitDays));
    m_form->setChoice(kTrade, task->trade ? static_cast<int>(*task->trade) : kNoTrade);
    m_form->setText(kHands, number(task->hands));
    m_form->setText(kBay, task->bay);
    m_form->setChecked(kOneSitting, task->oneSitting.value_or(false));
    m_form->setText(kFail, number(task->failPercent));
    m_redoFrom->setKey(keyOf(records, task->redoFrom));
    m_opens->setKey(keyOf(records, task->opens));
    m_buys->setKey(keyOf(records, task->buys));
    m_asks->setKey(keyOf(records, task->asks));
    m_option->setKey(keyOf(records, task->option));
}

Outcome EstimateForm::fillIn(Task &task) const
{
    const Records &records = m_book.records();
    const auto work = [&](const QString &field) {
        const QString typed = m_form->text(field);
        return told(readWorkMinutes(typed), typed, field);
    };
    const auto wait = [&](const QString &field) {
        const QString typed = m_form->text(field);
        return told(readWaitDays(typed), typed, field);
    };
    const auto leastWork = work(kLeastWork);
    const auto mostWork = work(kMostWork);
    const auto leastWait = wait(kLeastWait);
    const auto mostWait = wait(kMostWait);
    const auto hands = whole(m_form->text(kHands), kHands, 1, 4);
    const auto fails = whole(m_form->text(kFail), kFail, 0, 95);
    for (const auto *one : {&leastWork, &mostWork, &leastWait, &mostWait, &hands, &fails})
        if (!*one)
            return ohmwright::fail(one->error());
    const auto redo = picked<Task>(records, *m_redoFrom, kRedoFrom);
    const auto opens = picked<Part>(records, *m_opens, kOpens);
    const auto buys = picked<Part>(records, *m_buys, kBuys);
    const auto asks = picked<Letter>(records, *m_asks, kAsks);
    const auto option = picked<ChoiceOption>(records, *m_option, kOption);
    if (!redo)
        return ohmwright::fail(redo.error());
    if (!opens)
        return ohmwright::fail(opens.error());
    if (!buys)
        return ohmwright::fail(buys.error());
    if (!asks)
        return ohmwright::fail(asks.error());
    if (!option)
        return ohmwright::fail(option.error());
    const auto inOrder = [](const std::optional<int> &least, int likely,
                            const std::optional<int> &most, const QString &leastField,
                            const QString &mostField) -> Outcome {
        if (least && *least > likely)
            return ohmwright::fail(ProblemCode::BadInput, tr("That is more than the likely time."),
                                   {}, leastField);
        if (most && *most < likely)
            return ohmwright::fail(ProblemCode::BadInput, tr("That is less than the likely time."),
                                   {}, mostField);
        return {};
    };
    if (Outcome ordered = inOrder(*leastWork, task.workMinutes, *mostWork, kLeastWork, kMostWork);
        !ordered)
        return ordered;
    if (Outcome ordered = inOrder(*leastWait, task.waitDays, *mostWait, kLeastWait, kMostWait);
        !ordered)
        return ordered;
    task.leastWorkMinutes = *leastWork;
    task.mostWorkMinutes = *mostWork;
    task.leastWaitDays = *leastWait;
    task.mostWaitDays = *mostWait;
    const int trade = m_form->choice(kTrade);
    task.trade = trade == kNoTrade ? std::nullopt : std::optional(static_cast<Trade>(trade));
    task.hands = *hands;
    task.bay = m_form->text(kBay);
    if (m_form->isChecked(kOneSitting) != task.oneSitting.value_or(false))
        task.oneSitting = m_form->isChecked(kOneSitting) ? std::optional(true) : std::nullopt;
    task.failPercent = *fails;
    task.redoFrom = *redo;
    task.opens = *opens;
    task.buys = *buys;
    task.asks = *asks;
    task.option = *option;
    return {};
}

Outcome EstimateForm::keep()
{
    const Task *found = m_book.records().find(m_task);
    if (!found)
        return ohmwright::fail(ProblemCode::NotFound, tr("This task is no longer in the book."));
    Task task = *found;
    if (Outcome filled = fillIn(task); !filled)
        return filled;
    if (task == *found)
        return {};
    return m_book.edit(tr("Change “%1”").arg(task.title), [&] { return m_book.update(task); });
}

} // namespace ohmwright::ui
