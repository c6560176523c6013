// SPDX-License-Identifier: GPL-3.0-or-later
// State and moves, open questions, circuits.
#include "core/parts/life.h"
#include "ui/parts/part_sections.h"
#include "ui/widgets/chip_row.h"
#include "ui/widgets/field.h"
#include "ui/widgets/section_title.h"
#include "ui/widgets/state_mark.h"
#include "ui/widgets/wrap_layout.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace ohmwright::ui {

LifeSection::LifeSection(const DetailGround &given) : DetailSection(given, tr("State"))
{
    auto *buttons = new QWidget;
    m_buttons = new WrapLayout(buttons, 4);
    column().addWidget(buttons);
    auto *row = new QHBoxLayout;
    row->setSpacing(12);
    m_note = new QLineEdit;
    m_noteField = new Field(theme(), tr("Note to the move"), m_note);
    m_on = new QLineEdit;
    m_onField = new Field(theme(), tr("Day of the move"), m_on);
    m_onField->setHint(tr("empty: today"));
    row->addWidget(m_noteField, 2, Qt::AlignTop);
    row->addWidget(m_onField, 1, Qt::AlignTop);
    column().addLayout(row);
    m_moves = addList(2);
}

void LifeSection::fill(const Part &part, bool another)
{
    if (another) {
        m_note->clear();
        m_on->clear();
        m_noteField->setProblem({});
        m_onField->setProblem({});
    }
    title().setRemark(wordOf(part.state));
    emptyLayout(*m_buttons);
    const std::vector<PartState> next = movesFrom(part.kind, part.state);
    for (const PartState to : next) {
        auto *button = new QPushButton(wordOf(to));
        button->setAccessibleName(tr("%1 becomes %2").arg(part.name, wordOf(to)));
        connect(button, &QPushButton::clicked, this, [this, to] { move(to); });
        m_buttons->addWidget(button);
    }
    if (next.empty())
        m_buttons->addWidget(
            makeWords(theme(), tr("It has left the build for good."), Lettering::Body, true));
    m_noteField->setVisible(!next.empty());
    m_onField->setVisible(!next.empty());
    emptyLayout(*m_moves);
    const auto moves = records().of<PartMove>(part.id);
    for (auto step = moves.rbegin(); step != moves.rend(); ++step) {
        QString words = tr("%1  %2").arg(showDate(step->on), wordOf(step->to));
        if (!step->note.isEmpty())
            words += tr(": %1").arg(step->note);
        m_moves->addWidget(makeWords(theme(), words, Lettering::Small, true));
    }
}

void LifeSection::move(PartState to)
{
    m_noteField->setProblem({});
    m_onField->setProblem({});
    const QDate today = book().clock().today();
    QDate on = today;
    if (!m_on->text().trimmed().isEmpty()) {
        const Result<QDate> read = parseDate(m_on->text(), today);
        if (!read) {
            m_onField->setProblem(sentenceOf(read.error()));
            m_on->setFocus();
            return;
        }
        on = *read;
    }
    const Outcome done = movePart(book(), part(), to, on, m_note->text().trimmed());
    const bool day = !done && done.error().where == QLatin1String("moved_on");
    if (!tell(done, day ? m_onField : m_noteField))
        return;
    m_note->clear();
    m_on->clear();
    if (const Part *now = partNow())
        emit said(tr("%1 is %2.").arg(now->name, wordOf(now->state)), Tone::Told);
}

QuestionsSection::QuestionsSection(const DetailGround &given)
    : DetailSection(given, tr("Open questions"))
{
    m_list = addList(10);
}

void QuestionsSection::setAskedByChecks(std::vector<Question> questions)
{
    m_askedByChecks = std::move(questions);
}

void QuestionsSection::fill(const Part &part, bool)
{
    emptyLayout(*m_list);
    std::vector<Question> ofChecks;
    std::copy_if(m_askedByChecks.begin(), m_askedByChecks.end(), std::back_inserter(ofChecks),
                 [&](const Question &question) { return question.part == part.id; });
    const std::vector<Question> questions =
        joined(records(), openQuestions(records(), part.id), std::move(ofChecks));
    setVisible(!questions.empty());
    title().setRemark(questions.empty() ? QString() : QString::number(questions.size()));
    for (const Question &question : questions) {
        auto *row = new QHBoxLayout;
        row->setSpacing(12);
        auto *words = new QVBoxLayout;
        words->setSpacing(1);
        words->addWidget(makeWords(theme(), describe(question.figure)));
        QString asked = tr("asked by %1").arg(question.askedBy.join(tr(", ")));
        if (!question.note.isEmpty())
            asked += tr("; %1").arg(question.note);
        words->addWidget(makeWords(theme(), asked, Lettering::Small, true));
        row->addLayout(words, 1);
        const QString title = findOutTitle(records(), question);
        if (const Task *open = findOutTask(records(), title)) {
            auto *show = new QPushButton(tr("Show its task"));
            show->setAccessibleName(tr("Show the task “%1”").arg(title));
            connect(show, &QPushButton::clicked, this,
                    [this, key = open->key] { emit taskWanted(key); });
            row->addWidget(show, 0, Qt::AlignTop);
            m_list->addLayout(row);
            continue;
        }
        auto *button = new QPushButton(tr("Make find-out task"));
        button->setAccessibleName(tr("Make a task to find out: %1").arg(describe(question.figure)));
        connect(button, &QPushButton::clicked, this, [this, question] {
            const Result<Id<Task>> made = makeFindOutTask(book(), question);
            if (!made) {
                emit said(sentenceOf(made.error()), Tone::Problem);
                return;
            }
            if (const Task *task = records().find(*made)) {
                emit said(tr("Added the task “%1”.").arg(task->title), Tone::Told);
                emit taskWanted(task->key);
            }
        });
        row->addWidget(button, 0, Qt::AlignTop);
        m_list->addLayout(row);
    }
}

CircuitsSection::CircuitsSection(const DetailGround &given)
    : DetailSection(given, tr("Connected to"))
{
    m_none = makeWords(theme(), tr("The book has no circuits yet."), Lettering::Small, true);
    column().addWidget(m_none);
    m_branches = addList();
}

void CircuitsSection::fill(const Part &part, bool)
{
    QStringList keys;
    for (const Circuit &circuit : records().all<Circuit>())
        keys << circuit.key + u'\n' + circuit.name;
    m_none->setVisible(keys.isEmpty());
    m_reading = true;
    if (keys != m_offered) {
        m_offered = keys;
        if (m_chips) {
            m_chips->hide();
            m_chips->deleteLater();
        }
        m_chips = new ChipRow(theme(), tr("Circuits"));
        for (const Circuit &circuit : records().all<Circuit>())
            m_chips->addChip(circuit.key, circuit.name);
        column().insertWidget(column().count() - 1, m_chips); // above the branches
        connect(m_chips, &ChipRow::changed, this, &CircuitsSection::connectTo);
    }
    for (const Circuit &circuit : records().all<Circuit>()) {
        const auto connections = records().of<Connection>(part.id);
        const bool on = std::any_of(connections.begin(), connections.end(),
                                    [&](const auto &c) { return c.circuit == circuit.id; });
        if (m_chips->isOn(circuit.key) != on)
            m_chips->setOn(circuit.key, on);
    }
    m_reading = false;
    fillBranches();
}

void CircuitsSection::fillBranches()
{
    emptyLayout(*m_branches);
    for (const Connection &connection : records().of<Connection>(part())) {
        const Circuit *circuit = records().find(connection.circuit);
        std::vector<const Branch *> branches;
        for (const Branch &branch : records().all<Branch>())
            if (branch.circuit == connection.circuit)
                branches.push_back(&branch);
        if (!circuit || branches.empty())
            continue;
        auto *choice = new QComboBox;
        // a long name must not widen the whole detail
        choice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        choice->setMinimumContentsLength(12);
        choice->addItem(tr("not said"));
        for (const Branch *branch : branches) {
            choice->addItem(branch->name);
            if (connection.branch == branch->id)
                choice->setCurrentIndex(choice->count() - 1);
        }
        std::vector<Id<Branch>> ids{Id<Branch>()};
        for (const Branch *branch : branches)
            ids.push_back(branch->id);
        const Id<Connection> id = connection.id;
        connect(choice, &QComboBox::activated, this,
                [this, id, ids](int index) { sitIn(id, ids.at(static_cast<std::size_t>(index))); });
        m_branches->addWidget(new Field(theme(), tr("Branch of %1").arg(circuit->name), choice));
    }
}

void CircuitsSection::sitIn(Id<Connection> id, Id<Branch> branch)
{
    const Connection *found = records().find(id);
    const Part *now = partNow();
    if (!found || !now)
        return;
    Connection connection = *found;
    connection.branch = branch.isSet() ? std::optional(branch) : std::nullopt;
    const Branch *named = records().find(connection.branch);
    const QString what = named ? tr("%1 sits in %2").arg(now->name, named->name)
                               : tr("%1 sits in no branch said").arg(now->name);
    tell(book().edit(what, [&] { return book().update(connection); }));
}

void CircuitsSection::connectTo(const QStringList &keys)
{
    const Part *now = partNow();
    if (m_reading || !now)
        return;
    tell(book().edit(tr("Connect %1").arg(now->name), [&]() -> Outcome {
        const auto span = records().of<Connection>(part());
        const std::vector<Connection> before(span.begin(), span.end());
        int position = before.empty() ? 0 : before.back().position + 1;
        for (const Connection &connection : before) {
            const Circuit *circuit = records().find(connection.circuit);
            if (!circuit || !keys.contains(circuit->key))
                if (Outcome removed = book().remove(connection.id); !removed)
                    return removed;
        }
        for (const QString &key : keys) {
            const Circuit *circuit = records().byKey<Circuit>(key);
            if (!circuit || std::any_of(before.begin(), before.end(), [&](const Connection &c) {
                    return c.circuit == circuit->id;
                }))
                continue;
            Connection connection;
            connection.part = part();
            connection.circuit = circuit->id;
            connection.position = position++;
            if (const auto made = book().insert(connection); !made)
                return fail(made.error());
        }
        return {};
    }));
}

} // namespace ohmwright::ui
