// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/build_sheet.h"

#include "core/parts/questions.h"
#include "core/quantity/dates.h"
#include "core/sheet/content_hash.h"
#include "core/sheet/sheet_sections.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

sheet::KeyValue checksRow(const sections::Sources &from)
{
    using namespace sheet;
    const auto with = [&](Verdict verdict) {
        return static_cast<int>(
            std::count_if(from.checks.begin(), from.checks.end(),
                          [&](const Check &c) { return c.verdict == verdict; }));
    };
    std::vector<Mark> marks;
    if (const int fails = with(Verdict::Fails))
        marks.emplace_back(MarkKind::Fails, fails == 1 ? tr("1 fails") : tr("%1 fail").arg(fails));
    if (const int unknown = with(Verdict::Unknown))
        marks.emplace_back(MarkKind::Unknown, tr("%1 unknown").arg(unknown));
    if (marks.empty())
        marks.emplace_back(MarkKind::Holds, tr("all hold"));
    return {tr("Checks"),
            tr("%1 of %2 hold, %3 of these tightly")
                .arg(with(Verdict::Holds) + with(Verdict::Tight))
                .arg(from.checks.size())
                .arg(with(Verdict::Tight)),
            {},
            marks};
}

// First page: what this is, for whom, and in one glance how far it has come.
void addFront(const sections::Sources &from, sections::Blocks &to)
{
    using namespace sheet;
    const Records &records = from.records;
    const Build &build = records.build();
    KeyValues facts;
    facts.rows.push_back({tr("Build"), build.title, {}, {}});
    if (!build.place.isEmpty())
        facts.rows.push_back(
            {tr("For inspection in"), build.place, tr("whose law and licensed people decide"), {}});
    const auto count = [](auto predicate, const auto &table) {
        return static_cast<int>(std::count_if(table.begin(), table.end(), predicate));
    };
    const int testsPassed =
        count([](const TestRecord &t) { return t.result == TestResult::Passed; },
              records.all<TestRecord>());
    const int testsFailed =
        count([](const TestRecord &t) { return t.result == TestResult::Failed; },
              records.all<TestRecord>());
    const int tests = static_cast<int>(records.all<TestRecord>().size());
    const int granted = count([](const Letter &l) { return l.state == LetterState::Granted; },
                              records.all<Letter>());
    const int letters = static_cast<int>(records.all<Letter>().size());
    const int questions = static_cast<int>(from.questions.size());
    const bool figures = records.all<Rating>().size() > 0;
    const int tasksDone =
        count([](const Task &t) { return t.state == TaskState::Done; }, records.all<Task>());
    const std::size_t tasks = records.all<Task>().size();
    facts.rows.push_back(
        {tr("Work"),
         tasks == 0 ? tr("no task recorded") : tr("%1 of %2 tasks done").arg(tasksDone).arg(tasks),
         {},
         {}});
    facts.rows.push_back(
        {tr("Approvals"),
         letters == 0 ? QString() : tr("%1 of %2 granted").arg(granted).arg(letters),
         {},
         {letters == 0         ? Mark{MarkKind::Unknown, tr("none recorded")}
          : granted == letters ? Mark{MarkKind::Holds, tr("all in hand")}
                               : Mark{MarkKind::Unknown, tr("%1 open").arg(letters - granted)}}});
    facts.rows.push_back(
        {tr("Tests"),
         tests == 0 ? QString() : tr("%1 of %2 passed").arg(testsPassed).arg(tests),
         {},
         {tests == 0    ? Mark{MarkKind::Unknown, tr("none recorded")}
          : testsFailed ? Mark{MarkKind::Fails, tr("%1 failed").arg(testsFailed)}
          : testsPassed == tests
              ? Mark{MarkKind::Holds, tr("all passed")}
              : Mark{MarkKind::Unknown, tr("%1 open").arg(tests - testsPassed)}}});
    facts.rows.push_back({tr("Figures"),
                          questions ? tr("%1 asked for and not known").arg(questions)
                          : figures ? tr("all that are asked for are recorded")
                                    : QString(),
                          {},
                          {questions ? Mark{MarkKind::Unknown, tr("open points")}
                           : figures ? Mark{MarkKind::Holds, tr("recorded")}
                                     : Mark{MarkKind::Unknown, tr("none recorded")}}});
    if (!from.checks.empty())
        facts.rows.push_back(checksRow(from));
    to.push_back(std::move(facts));
    to.push_back(Paragraph{{{tr("This sheet states what its builder recorded, with the evidence "
                                "for each figure. It does not "
                                "say that anything is safe: that is for the law of the place and "
                                "its licensed people to judge."),
                             Emphasis::None,
                             {}}}});
    to.push_back(Contents{1});
}

void addOneLine(const QByteArray &svg, sections::Blocks &to)
{
    using namespace sheet;
    if (svg.isEmpty())
        return;
    to.push_back(Heading{1, tr("One-line diagram"), QStringLiteral("one-line")});
    sheet::Figure figure;
    figure.image.bytes = svg;
    figure.image.id = QStringLiteral("one-line.svg");
    figure.caption = tr("Traction circuit, one line for both poles, drawn from this book. "
                        "Symbols after IEC 60617.");
    to.push_back(std::move(figure));
}

} // namespace

sheet::Document buildSheet(const Records &records, const SheetOptions &options)
{
    const AssemblyTree tree(records);
    const sections::Sources from{
        records,        tree,
        options.today,  options.plotPicture,
        options.checks, joined(records, openQuestions(records), options.askedByChecks),
        options.working};
    sheet::Document document;
    document.title = tr("Build sheet");
    const Vehicle &v = records.vehicle();
    document.subtitle = QStringList{v.make, v.model, v.registration}.join(u' ').simplified();
    if (document.subtitle.isEmpty())
        document.subtitle = records.build().title;
    document.revision = tr("Revision %1, %2").arg(options.revision).arg(showDate(options.today));
    document.footer =
        tr("Computed from what was recorded; measure, and let licensed people judge.");
    sections::Blocks &blocks = document.blocks;
    addFront(from, blocks);
    sections::addCautions(blocks);
    sections::addVehicle(from, blocks);
    sections::addLostFunctions(from, blocks);
    sections::addDonors(from, blocks);
    sections::addComponents(from, blocks);
    sections::addCircuits(from, blocks);
    addOneLine(options.oneLine, blocks);
    sections::addConductors(from, blocks);
    sections::addWires(from, blocks);
    sections::addInterfaces(from, blocks);
    sections::addMasses(from, blocks);
    sections::addChecks(from, blocks);
    sections::addSafetySystems(from, blocks);
    sections::addTests(from, blocks);
    sections::addPermits(from, blocks);
    sections::addApprovals(from, blocks);
    sections::addPhotos(from, blocks);
    sections::addDocuments(from, blocks);
    sections::addOpenPoints(from, blocks);
    sections::addSignatures(blocks);
    sections::addChecksWorked(from, blocks);
    document.contentHash = sheet::contentHash(document);
    return document;
}

} // namespace ohmwright
