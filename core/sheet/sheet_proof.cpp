// SPDX-License-Identifier: GPL-3.0-or-later
// Tests, approvals, photos, papers, open points, cautions, signatures.
#include "core/parts/cautions.h"
#include "core/parts/life.h"
#include "core/parts/permits.h"
#include "core/parts/questions.h"
#include "core/quantity/dates.h"
#include "core/sheet/check_words.h"
#include "core/sheet/sheet_sections.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <optional>
#include <vector>

namespace ohmwright::sections {

using namespace sheet;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

Mark markOfTest(TestResult result)
{
    switch (result) {
    case TestResult::Passed:
        return {MarkKind::Holds, tr("passed")};
    case TestResult::Failed:
        return {MarkKind::Fails, tr("failed")};
    case TestResult::Open:
        return {MarkKind::Unknown, tr("open")};
    }
    return {};
}

Mark markOfLetter(const Letter &letter, QDate today)
{
    if (letter.state == LetterState::Granted && letter.validUntil && *letter.validUntil < today)
        return {MarkKind::Fails, tr("ran out")};
    switch (letter.state) {
    case LetterState::Granted:
        return {MarkKind::Holds, tr("granted")};
    case LetterState::Refused:
        return {MarkKind::Fails, tr("refused")};
    case LetterState::Asked:
        return {MarkKind::Unknown, tr("asked")};
    case LetterState::ToAsk:
        return {MarkKind::Unknown, tr("not asked")};
    }
    return {};
}

QString subjectOf(const Records &records, const Attachment &a)
{
    if (a.ofVehicle)
        return tr("vehicle");
    if (const Part *part = records.find(a.part))
        return part->name;
    if (const PartType *type = records.find(a.type))
        return type->name;
    if (const Donor *donor = records.find(a.donor))
        return donor->make + u' ' + donor->model;
    if (const Task *task = records.find(a.task))
        return task->title;
    if (const TestRecord *test = records.find(a.test))
        return test->name;
    if (const Letter *letter = records.find(a.letter))
        return letter->subject;
    if (const Purchase *purchase = records.find(a.purchase))
        return tr("order %1")
            .arg(purchase->reference.isEmpty() ? purchase->key : purchase->reference);
    return tr("the build");
}

void addList(Blocks &to, const QString &heading, std::vector<ListItem> items)
{
    if (items.empty())
        return;
    to.push_back(Heading{2, heading, {}});
    to.push_back(List{ListKind::TickBoxes, std::move(items)});
}

// Points of one part that are open for the same reason stand together.
class Gathered
{
public:
    void add(const QString &part, const QString &point, const QString &why,
             const std::optional<Mark> &mark = {})
    {
        const auto same = std::find_if(m_points.begin(), m_points.end(), [&](const Points &p) {
            return p.part == part && p.why == why &&
                   (mark ? mark->word : QString()) == (p.mark ? p.mark->word : QString());
        });
        if (same != m_points.end())
            same->points << point;
        else
            m_points.push_back({part, {point}, why, mark});
    }

    [[nodiscard]] std::vector<ListItem> items() const
    {
        std::vector<ListItem> items;
        for (const Points &p : m_points) {
            ListItem item{tr("%1: %2").arg(p.part, p.points.join(tr(", "))), p.why, {}};
            if (p.mark)
                item.marks.push_back(*p.mark);
            items.push_back(std::move(item));
        }
        return items;
    }

private:
    struct Points
    {
        QString part;
        QStringList points;
        QString why;
        std::optional<Mark> mark;
    };
    std::vector<Points> m_points;
};

} // namespace

void addTests(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Test records"), QStringLiteral("tests")});
    sheet::Table table;
    table.columns = {{tr("test"), Align::Left, 4},
                     {tr("limit"), Align::Left, 5},
                     {tr("value"), Align::Right},
                     {tr("instrument, by whom, when"), Align::Left, 6},
                     {tr("result")}};
    for (const TestRecord &t : from.records.all<TestRecord>()) {
        QStringList how;
        for (const QString &word : {t.instrument, t.doneBy, textOf(t.doneOn)})
            if (!word.isEmpty())
                how << word;
        const Part *part = from.records.find(t.part);
        QString limit = t.limit ? textOf(t.limit) : QString();
        table.rows.push_back(
            {{Cell{t.name,
                   QStringList{wordOf(t.kind), part ? part->name : QString()}.join(
                       part ? tr(", ") : QString()),
                   {}},
              Cell{limit.isEmpty() ? t.limitText : limit,
                   limit.isEmpty() ? QString() : t.limitText,
                   {}},
              Cell{t.value ? textOf(t.value) : QString(), {}, {}},
              Cell{how.join(tr(", ")), QStringList{t.method, t.note}.join(u' ').trimmed(), {}},
              Cell{{}, {}, {markOfTest(t.result)}}},
             RowKind::Plain});
    }
    to.push_back(std::move(table));
}

void addApprovals(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Approvals and letters"), QStringLiteral("approvals")});
    sheet::Table table;
    table.columns = {{tr("subject"), Align::Left, 6},
                     {tr("to whom"), Align::Left, 4},
                     {tr("asked")},
                     {tr("answered")},
                     {tr("reference")},
                     {tr("state")}};
    for (const Letter &l : from.records.all<Letter>()) {
        const QString until =
            l.validUntil ? tr("valid to %1").arg(showDate(*l.validUntil)) : QString();
        table.rows.push_back(
            {{Cell{l.subject, l.note, {}}, Cell{l.toWhom, wordOf(l.kind), {}},
              Cell{textOf(l.askedOn), {}, {}}, Cell{textOf(l.answeredOn), until, {}},
              Cell{l.reference, {}, {}}, Cell{{}, {}, {markOfLetter(l, from.today)}}},
             RowKind::Plain});
    }
    to.push_back(std::move(table));
}

void addPhotos(const Sources &from, Blocks &to)
{
    FigureRow row;
    for (const Attachment &a : from.records.all<Attachment>()) {
        if (!a.onSheet || a.sha256.isEmpty() || !a.mediaType.startsWith(QLatin1String("image/")))
            continue;
        sheet::Figure figure;
        figure.image.id = a.sha256;
        figure.caption = a.title.isEmpty() ? subjectOf(from.records, a) : a.title;
        if (a.takenOn)
            figure.caption += tr(", %1").arg(showDate(*a.takenOn));
        row.figures.push_back(std::move(figure));
    }
    to.push_back(Heading{1, tr("Photographs"), QStringLiteral("photographs")});
    if (row.figures.empty()) {
        to.push_back(Paragraph{{{tr("None chosen for the sheet."), Emphasis::Muted, {}}}});
    } else {
        // two beside each other are seen best; of many, three keep them to a page or two
        constexpr std::size_t kMostInTwos = 6;
        row.columns = row.figures.size() > kMostInTwos ? 3 : 2;
        to.push_back(std::move(row));
    }
}

void addDocuments(const Sources &from, Blocks &to)
{
    to.push_back(Heading{1, tr("Papers and links kept in the book"), QStringLiteral("papers")});
    sheet::Table table;
    table.columns = {{tr("title"), Align::Left, 5},
                     {tr("of"), Align::Left, 4},
                     {tr("kind"), Align::Left, 2},
                     {tr("file or address"), Align::Left, 5}};
    for (const Attachment &a : from.records.all<Attachment>()) {
        if (a.kind == AttachmentKind::Photo)
            continue;
        const QString where = a.kind == AttachmentKind::Link ? a.url : a.fileName;
        const QString detail =
            a.kind == AttachmentKind::Link
                ? (a.readOn ? tr("read %1").arg(showDate(*a.readOn)) : tr("day read not recorded"))
                : tr("SHA-256 %1…").arg(a.sha256.left(16));
        table.rows.push_back({{Cell{a.title, a.note, {}}, Cell{subjectOf(from.records, a), {}, {}},
                               Cell{wordOf(a.kind), {}, {}}, Cell{where, detail, {}}},
                              RowKind::Plain});
    }
    to.push_back(std::move(table));
}

void addOpenPoints(const Sources &from, Blocks &to)
{
    const Records &records = from.records;
    to.push_back(Heading{1, tr("Open points"), QStringLiteral("open-points")});
    to.push_back(
        Paragraph{{{tr("What is not known, not settled or not done on the day of printing."),
                    Emphasis::Muted,
                    {}}}});
    const std::size_t before = to.size();

    Gathered unknown;
    for (const Question &q : from.questions)
        unknown.add(from.tree.path(q.part).join(tr(" › ")), describe(q.figure),
                    tr("asked by %1").arg(q.askedBy.join(tr(", "))) +
                        (q.note.isEmpty() ? QString() : tr("; %1").arg(q.note)));
    addList(to, tr("Figures asked for and not known"), unknown.items());

    Gathered weak;
    std::vector<ListItem> quarantined;
    for (const Part &part : records.all<Part>()) {
        if (part.state == PartState::Quarantined)
            quarantined.push_back({part.name, part.note, {}});
        if (!isComponent(part))
            continue;
        for (const ohmwright::Figure &figure : figuresOf(records, part)) {
            const Mark mark = markOf(figure);
            if (figure.inForce && mark.kind != MarkKind::Holds)
                weak.add(from.tree.path(part.id).join(tr(" › ")),
                         tr("%1 %2").arg(describe(figure.name), textOf(figure.value())),
                         whyInForce(figure), mark);
        }
    }
    addList(to, tr("Figures that clash, are stale or rest on hearsay"), weak.items());

    std::vector<ListItem> tests;
    for (const TestRecord &t : records.all<TestRecord>())
        if (t.result != TestResult::Passed)
            tests.push_back({t.name, t.note, {markOfTest(t.result)}});
    addList(to, tr("Tests not passed"), std::move(tests));

    std::vector<ListItem> letters;
    for (const Letter &l : records.all<Letter>())
        if (const Mark mark = markOfLetter(l, from.today); mark.kind != MarkKind::Holds)
            letters.push_back({l.subject, l.toWhom, {mark}});
    addList(to, tr("Approvals not in hand"), std::move(letters));

    std::vector<ListItem> checks;
    for (const Verdict verdict : {Verdict::Fails, Verdict::Unknown})
        for (const Check &check : from.checks)
            if (check.verdict == verdict)
                checks.push_back({check.title, check.sentence, {{kindOf(verdict)}}});
    addList(to, tr("Checks that fail or cannot be decided"), std::move(checks));

    std::vector<ListItem> systems;
    for (const SafetySystem &system : records.all<SafetySystem>())
        if (system.state != SafetyState::Proven)
            systems.push_back(
                {system.name, system.place, {{MarkKind::Unknown, wordOf(system.state)}}});
    addList(to, tr("Safety systems not proven"), std::move(systems));

    std::vector<ListItem> permits;
    for (const WorkPermit &permit : records.all<WorkPermit>())
        if (const QStringList lacking = lackingOf(permit, from.today);
            !permit.closedOn && !lacking.isEmpty())
            permits.push_back(
                {permit.name, lacking.join(tr(", ")), {{MarkKind::Unknown, tr("does not hold")}}});
    addList(to, tr("Work permits that do not hold"), std::move(permits));

    std::vector<ListItem> lost;
    for (const LostFunction &l : records.all<LostFunction>())
        if (!l.settled)
            lost.push_back({l.name, l.replacedBy, {}});
    addList(to, tr("Functions of the engine not yet replaced"), std::move(lost));
    addList(to, tr("Parts in quarantine"), std::move(quarantined));

    std::size_t open = 0;
    std::vector<ListItem> milestones;
    for (const Task &task : records.all<Task>()) {
        if (task.state == TaskState::Done)
            continue;
        if (task.milestone)
            milestones.push_back(
                {task.title, textOf(task.fixedOn ? task.fixedOn : task.targetOn), {}});
        else
            ++open;
    }
    addList(to, tr("Milestones not reached (%1 tasks open)").arg(open), std::move(milestones));
    if (to.size() == before)
        to.push_back(Paragraph{{{tr("None recorded."), Emphasis::None, {}}}});
}

void addCautions(Blocks &to)
{
    to.push_back(Heading{1, tr("Cautions"), QStringLiteral("cautions")});
    for (const CautionText &card : allCautions()) {
        Caution caution;
        caution.title = card.title;
        caution.highVoltage = card.highVoltage;
        caution.lines.assign(card.lines.begin(), card.lines.end());
        to.push_back(std::move(caution));
    }
}

void addSignatures(Blocks &to)
{
    to.push_back(Heading{1, tr("Signatures"), QStringLiteral("signatures")});
    Signatures signatures;
    signatures.lines.push_back(
        {tr("Builder"),
         tr("What stands here is what I recorded; what I do not know I have left open."),
         {}});
    signatures.lines.push_back(
        {tr("Second person at the tests"), tr("I was present at the tests marked as such."), {}});
    signatures.lines.push_back(
        {tr("Inspector or engineer"), tr("Seen on the day and to the extent noted beside."), {}});
    to.push_back(std::move(signatures));
}

} // namespace ohmwright::sections
