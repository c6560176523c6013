// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/need_form.h"

#include "core/parts/keys.h"
#include "core/plan/plan_edits.h"
#include "core/quantity/amount.h"
#include "core/quantity/money.h"
#include "ui/widgets/entry_form.h"
#include "ui/widgets/pick_or_new.h"

#include <QComboBox>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

const QString kKind = QStringLiteral("kind");
const QString kWhat = QStringLiteral("what");
const QString kState = QStringLiteral("state");
const QString kQuantity = QStringLiteral("quantity");
const QString kBasis = QStringLiteral("basis");
const QString kAmount = QStringLiteral("amount");
const QString kMoney = QStringLiteral("money");
const QString kEachTime = QStringLiteral("each_time");

constexpr int kAnyBasis = -1;

template <WordedEnum E>
std::vector<std::pair<int, QString>> words(std::initializer_list<E> values)
{
    std::vector<std::pair<int, QString>> entries;
    for (const E value : values)
        entries.emplace_back(static_cast<int>(value), wordOf(value));
    return entries;
}

std::vector<std::pair<int, QString>> quantities()
{
    std::vector<std::pair<int, QString>> entries;
    for (std::size_t i = 0; i < EnumWords<RatedQuantity>::words.size(); ++i)
        entries.emplace_back(static_cast<int>(i), wordOf(static_cast<RatedQuantity>(i)));
    return entries;
}

bool namesPart(NeedKind kind)
{
    return kind == NeedKind::Part || kind == NeedKind::Figure || kind == NeedKind::Tool ||
           kind == NeedKind::Consumable;
}

bool canBeUsedUp(NeedKind kind)
{
    return kind == NeedKind::Part || kind == NeedKind::Service || kind == NeedKind::Letter;
}

tl::unexpected<Problem> bad(const QString &where, const QString &sentence,
                            const QString &whatToDo = {})
{
    return fail(ProblemCode::BadInput, sentence, whatToDo, where);
}

} // namespace

NeedForm::NeedForm(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme),
      m_form(new EntryForm(theme, tr("Add this &need"))), m_what(new PickOrNew(theme))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_form);
    using Kind = NeedKind;
    auto *kinds = m_form->addChoice(kKind, tr("It also needs a"),
                                    {{static_cast<int>(Kind::Task), tr("task done before")},
                                     {static_cast<int>(Kind::Part), tr("part")},
                                     {static_cast<int>(Kind::Figure), tr("figure known")},
                                     {static_cast<int>(Kind::Tool), tr("tool")},
                                     {static_cast<int>(Kind::Consumable), tr("consumable")},
                                     {static_cast<int>(Kind::Money), tr("sum of money")},
                                     {static_cast<int>(Kind::Service), tr("service")},
                                     {static_cast<int>(Kind::Test), tr("test passed")},
                                     {static_cast<int>(Kind::Letter), tr("letter or approval")},
                                     {static_cast<int>(Kind::Person), tr("second person")},
                                     {static_cast<int>(Kind::Permit), tr("work permit")},
                                     {static_cast<int>(Kind::Interface), tr("unit that talks")}},
                                    EntryForm::Width::Half);
    m_form->addEditor(kWhat, tr("Which"), m_what, EntryForm::Width::Half);
    m_form->addChoice(
        kState, tr("At least"),
        words({PartState::Ordered, PartState::InHand, PartState::Tested, PartState::Fitted}),
        EntryForm::Width::Half);
    m_form->addChoice(kQuantity, tr("Its"), quantities(), EntryForm::Width::Half);
    std::vector<std::pair<int, QString>> bases{{kAnyBasis, tr("any")}};
    for (auto &entry : words({RatingBasis::Continuous, RatingBasis::Peak, RatingBasis::Least,
                              RatingBasis::Nominal}))
        bases.push_back(std::move(entry));
    m_form->addChoice(kBasis, tr("Which figure of it"), bases, EntryForm::Width::Half);
    m_form->addLine(kAmount, tr("How much"), EntryForm::Width::Half);
    m_form->addLine(kMoney, tr("Sum"), EntryForm::Width::Half);
    m_form->addCheck(kEachTime, tr("Used up by each attempt: needed anew if the test fails"));
    m_form->setHint(kAmount, tr("e.g. 2 m"));
    m_form->setHint(kMoney, tr("a condition, in no sum of costs; a fee is logged as a service"));
    m_form->setSave([this] { return add(); });
    connect(m_form, &EntryForm::saved, this, [this] {
        clear();
        emit added();
    });
    connect(kinds, &QComboBox::currentIndexChanged, this, [this] { showKind(); });
    clear();
    showKind();
}

NeedKind NeedForm::kind() const
{
    return static_cast<NeedKind>(m_form->choice(kKind));
}

void NeedForm::setTask(Id<Task> task)
{
    if (m_task == task)
        return;
    m_task = task;
    m_form->clearProblems();
    clear();
    offer();
}

void NeedForm::refresh()
{
    offer();
}

void NeedForm::begin()
{
    m_form->focusFirst();
}

void NeedForm::clear()
{
    m_what->setKey({});
    m_form->setText(kAmount, {});
    m_form->setText(kMoney, {});
    m_form->setChecked(kEachTime, false);
    m_form->setChoice(kState, static_cast<int>(PartState::InHand));
}

void NeedForm::showKind()
{
    const NeedKind now = kind();
    m_form->clearProblems();
    m_form->setFieldVisible(kState, now == NeedKind::Part || now == NeedKind::Tool);
    m_form->setFieldVisible(kQuantity, now == NeedKind::Figure);
    m_form->setFieldVisible(kBasis, now == NeedKind::Figure);
    m_form->setFieldVisible(kAmount, now == NeedKind::Consumable);
    m_form->setFieldVisible(kMoney, now == NeedKind::Money);
    m_form->setFieldVisible(kEachTime, canBeUsedUp(now));
    m_what->setKey({});
    offer();
}

void NeedForm::offer()
{
    const Records &records = m_book.records();
    std::vector<KnownName> known;
    const NeedKind now = kind();
    if (now == NeedKind::Task) {
        for (const Task &task : records.all<Task>())
            if (task.id != m_task)
                known.push_back({task.key, task.title, task.area});
    } else if (now == NeedKind::Test) {
        for (const TestRecord &test : records.all<TestRecord>())
            known.push_back({test.key, test.name, wordOf(test.result)});
    } else if (now == NeedKind::Letter) {
        for (const Letter &letter : records.all<Letter>())
            known.push_back({letter.key, letter.subject, letter.toWhom});
    } else if (now == NeedKind::Permit) {
        for (const WorkPermit &permit : records.all<WorkPermit>())
            known.push_back({permit.key, permit.name, permit.workedBy});
    } else if (now == NeedKind::Interface) {
        for (const Interface &interface : records.all<Interface>())
            known.push_back({interface.key, interface.name, wordOf(interface.state)});
    } else if (namesPart(now) || now == NeedKind::Service) {
        for (const Part &part : records.all<Part>()) {
            const bool fits = (now == NeedKind::Tool && part.kind == PartKind::Tool) ||
                              (now == NeedKind::Consumable && part.kind == PartKind::Consumable) ||
                              (now == NeedKind::Service && part.kind == PartKind::Service) ||
                              now == NeedKind::Part || now == NeedKind::Figure;
            if (fits)
                known.push_back({part.key, part.name, wordOf(part.state)});
        }
    }
    std::stable_sort(known.begin(), known.end(), [](const KnownName &a, const KnownName &b) {
        return a.name.compare(b.name, Qt::CaseInsensitive) < 0;
    });
    m_what->setKnown(std::move(known));
}

Outcome NeedForm::fillIn(TaskNeed &need) const
{
    const Records &records = m_book.records();
    if (canBeUsedUp(need.kind) && m_form->isChecked(kEachTime))
        need.eachTime = true;
    const QString key = m_what->key();
    if (m_what->name().isEmpty())
        return bad(kWhat, tr("Say which one."));
    if (namesPart(need.kind)) {
        const Part *part = records.byKey<Part>(key);
        if (!part)
            return bad(kWhat, tr("There is no part “%1” in the book.").arg(m_what->name()),
                       tr("Log it as wanted first."));
        need.part = part->id;
    }
    const NumberStyle style = NumberStyle::pointDecimal();
    switch (need.kind) {
    case NeedKind::Task: {
        const Task *before = records.byKey<Task>(key);
        if (!before)
            return bad(kWhat, tr("There is no task “%1” in the book.").arg(m_what->name()),
                       tr("Add it first."));
        need.after = before->id;
        return {};
    }
    case NeedKind::Part:
    case NeedKind::Tool:
        need.state = static_cast<PartState>(m_form->choice(kState));
        return {};
    case NeedKind::Figure:
        need.quantity = static_cast<RatedQuantity>(m_form->choice(kQuantity));
        if (const int basis = m_form->choice(kBasis); basis != kAnyBasis)
            need.basis = static_cast<RatingBasis>(basis);
        return {};
    case NeedKind::Consumable: {
        const Result<Amount> amount = parseAmount(m_form->text(kAmount), style);
        if (!amount)
            return bad(kAmount, amount.error().sentence, amount.error().whatToDo);
        need.amount = *amount;
        return {};
    }
    case NeedKind::Money: {
        const Result<Money> money =
            parseMoney(m_form->text(kMoney), style, records.build().currency);
        if (!money)
            return bad(kMoney, money.error().sentence, money.error().whatToDo);
        need.money = *money;
        need.what = m_what->name();
        return {};
    }
    case NeedKind::Service:
        if (const Part *part = records.byKey<Part>(key))
            need.part = part->id;
        else
            need.what = m_what->name();
        return {};
    case NeedKind::Test:
        if (const TestRecord *test = records.byKey<TestRecord>(key))
            need.test = test->id;
        return {};
    case NeedKind::Letter:
        if (const Letter *letter = records.byKey<Letter>(key))
            need.letter = letter->id;
        return {};
    case NeedKind::Interface: {
        const Interface *interface = records.byKey<Interface>(key);
        if (!interface)
            return bad(kWhat, tr("There is no interface “%1” in the book.").arg(m_what->name()),
                       tr("Add its card on the Parts page first."));
        need.interface = interface->id;
        return {};
    }
    case NeedKind::Permit:
        if (const WorkPermit *permit = records.byKey<WorkPermit>(key))
            need.permit = permit->id;
        else
            need.what = m_what->name();
        return {};
    case NeedKind::Person:
        need.what = m_what->name();
        return {};
    }
    return {};
}

Outcome NeedForm::add()
{
    TaskNeed need;
    need.task = m_task;
    need.kind = kind();
    if (Outcome filled = fillIn(need); !filled)
        return filled;
    const bool fresh = (need.kind == NeedKind::Test && !need.test) ||
                       (need.kind == NeedKind::Letter && !need.letter);
    if (fresh)
        return addWithRecord(need);
    const Result<Id<TaskNeed>> made = addNeed(m_book, need);
    return made ? Outcome() : Outcome(fail(made.error()));
}

// The test or letter and the need for it in one edit.
Outcome NeedForm::addWithRecord(TaskNeed need)
{
    const QString name = m_what->name();
    return m_book.edit(tr("“%1” is needed").arg(name), [&]() -> Outcome {
        if (need.kind == NeedKind::Test) {
            TestRecord test;
            test.name = name;
            test.key = freshKey<TestRecord>(m_book.records(), name);
            const auto id = m_book.insert(test);
            if (!id)
                return fail(id.error());
            need.test = *id;
        } else {
            Letter letter;
            letter.subject = name;
            letter.key = freshKey<Letter>(m_book.records(), name);
            const auto id = m_book.insert(letter);
            if (!id)
                return fail(id.error());
            need.letter = *id;
        }
        const auto others = m_book.records().of<TaskNeed>(need.task);
        need.position = others.empty() ? 0 : others.back().position + 1;
        const auto id = m_book.insert(need);
        return id ? Outcome() : Outcome(fail(id.error()));
    });
}

} // namespace ohmwright::ui
