// SPDX-License-Identifier: GPL-3.0-or-later
// Engineering checks on the build sheet: all in one glance, and each one worked.
#include "core/checks/margin_words.h"
#include "core/checks/origin_words.h"
#include "core/sheet/alike_rows.h"
#include "core/sheet/sheet_sections.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <set>

namespace ohmwright::sections {

using namespace sheet;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

MarkKind kindOf(Verdict verdict)
{
    switch (verdict) {
    case Verdict::Holds:
        return MarkKind::Holds;
    case Verdict::Tight:
        return MarkKind::Tight;
    case Verdict::Unknown:
        return MarkKind::Unknown;
    case Verdict::Fails:
        return MarkKind::Fails;
    }
    return MarkKind::Unknown;
}

QString protecting(Protects protects)
{
    switch (protects) {
    case Protects::People:
        return tr("What protects people");
    case Protects::Pack:
        return tr("What protects the pack");
    case Protects::Electronics:
        return tr("What protects the electronics");
    case Protects::Driveline:
        return tr("What protects the driveline");
    case Protects::Chassis:
        return tr("What protects the chassis");
    }
    return {};
}

// A margin of what is known would read like a promise while something else is not.
QString marginOf(const Check &check)
{
    return check.margin && check.verdict != Verdict::Unknown ? marginFigure(*check.margin)
                                                             : QString();
}

// The verdict's word, and beside an own, looser threshold the published one's.
std::vector<Mark> marksOf(const Check &check)
{
    std::vector<Mark> marks{{kindOf(check.verdict)}};
    if (check.publishedVerdict)
        marks.emplace_back(
            kindOf(*check.publishedVerdict),
            tr("%1 by the published threshold").arg(wordOf(*check.publishedVerdict)));
    return marks;
}

void addOverview(std::span<const Check> checks, Blocks &to)
{
    sheet::Table table;
    table.columns = {{tr("check"), Align::Left, 4},
                     {tr("what was found"), Align::Left, 7},
                     {tr("margin"), Align::Right},
                     {tr("verdict")}};
    std::optional<Protects> group;
    for (const Check &check : checks) {
        if (check.protects != group) {
            group = check.protects;
            table.rows.push_back({{{protecting(check.protects)}}, RowKind::Group});
        }
        table.rows.push_back(
            {{{check.title}, {check.sentence}, {marginOf(check)}, {{}, {}, marksOf(check)}},
             RowKind::Plain});
    }
    to.emplace_back(std::move(table));
}

QString andAlike(int count, const QString &last)
{
    return tr("and %1 more alike, to “%2”").arg(count - 1).arg(last);
}

void addGiven(const Check &check, Blocks &to)
{
    if (check.inputs.empty())
        return;
    sheet::Table table;
    table.columns = {{{}, Align::Left, 0, true},
                     {tr("given"), Align::Left, 5},
                     {tr("value"), Align::Decimal},
                     {tr("evidence"), Align::Left, 5}};
    const auto keyOf = [](const CheckInput &input) {
        return QStringList{input.symbol, input.shown, withoutNumbers(input.origin.name),
                           withoutNumbers(input.origin.path), evidenceOf(input.origin)}
            .join(QChar(0x1F));
    };
    for (const auto &[first, last, count] : joinAlike(check.inputs, keyOf)) {
        const CheckInput &input = *first;
        const bool known = !input.shown.isEmpty();
        table.rows.push_back({{{input.symbol},
                               {input.origin.name,
                                count > 1 ? andAlike(count, last->origin.name) : input.origin.path},
                               {known ? input.shown : QString(),
                                {},
                                known ? std::vector<Mark>()
                                      : std::vector<Mark>{{MarkKind::Unknown, tr("not known")}}},
                               {known ? evidenceOf(input.origin) : QString()}},
                              RowKind::Plain});
    }
    to.emplace_back(std::move(table));
}

void addWorking(const Check &check, Blocks &to)
{
    if (!check.steps.empty()) {
        sheet::Table table;
        table.columns = {{tr("worked"), Align::Left, 4},
                         {tr("formula"), Align::Left, 4, true},
                         {tr("with these figures"), Align::Left, 5},
                         {tr("result"), Align::Right}};
        for (const CheckStep &step : check.steps)
            table.rows.push_back(
                {{{step.what}, {step.formula}, {step.worked}, {step.result}}, RowKind::Plain});
        to.emplace_back(std::move(table));
    }
    if (!check.comparisons.empty()) {
        sheet::Table table;
        table.columns = {
            {tr("held against"), Align::Left, 4}, {tr("found"), Align::Right},  {{}},
            {tr("limit"), Align::Left, 4},        {tr("margin"), Align::Right}, {tr("verdict")}};
        const auto keyOf = [](const Comparison &held) {
            return QStringList{withoutNumbers(held.what), held.value, held.relation, held.limit,
                               withoutNumbers(held.limitFrom)}
                .join(QChar(0x1F));
        };
        for (const auto &[first, last, count] : joinAlike(check.comparisons, keyOf))
            table.rows.push_back(
                {{{first->what, count > 1 ? andAlike(count, last->what) : QString()},
                  {first->value},
                  {first->relation},
                  {first->limit, first->limitFrom},
                  {marginFigure(first->margin)},
                  {{}, {}, {{kindOf(first->verdict)}}}},
                 RowKind::Plain});
        to.emplace_back(std::move(table));
    }
}

void addPlots(const Sources &from, const Check &check, Blocks &to)
{
    if (!from.plotPicture || check.plots.empty())
        return;
    for (const Plot &plot : check.plots) {
        sheet::Figure figure;
        figure.image.bytes = from.plotPicture(plot);
        figure.image.id = QStringLiteral("plot.svg");
        figure.caption = plot.title;
        figure.maxHeight = metres(0.085);
        to.emplace_back(std::move(figure));
    }
}

// What was said already of a check of the same kind is not said again.
class SaidBefore
{
public:
    [[nodiscard]] QStringList fresh(const Check &check, const QStringList &texts)
    {
        QStringList fresh;
        for (const QString &text : texts)
            if (!text.isEmpty() && !m_said.contains({check.id, text})) {
                m_said.insert({check.id, text});
                fresh << text;
            }
        return fresh;
    }

private:
    std::set<std::pair<QString, QString>> m_said;
};

void addLines(const Check &check, SaidBefore &said, Blocks &to)
{
    KeyValues own;
    for (const Loosened &one : check.loosened)
        own.rows.push_back({tr("Own threshold"),
                            tr("%1 instead of the published %2").arg(one.own, one.published),
                            tr("%1; because: %2").arg(one.source, one.reason)});
    if (!own.rows.empty())
        to.emplace_back(std::move(own));
    Paragraph lines;
    const auto add = [&](const QString &label, const QStringList &texts) {
        if (texts.isEmpty())
            return;
        lines.runs.push_back(
            {lines.runs.empty() ? label : QString(u'\n' + label), Emphasis::Muted, {}});
        lines.runs.push_back({QString(u' ' + texts.join(u' ')), Emphasis::None, {}});
    };
    add(tr("In doubt:"), check.doubts);
    add(tr("Refused:"), check.refusals);
    add(tr("What would turn it:"), said.fresh(check, check.turnedBy));
    add(tr("Afterwards:"), said.fresh(check, {check.afterwards}));
    add(tr("Source:"), said.fresh(check, {check.source}));
    if (!lines.runs.empty())
        to.emplace_back(std::move(lines));
}

} // namespace

void addChecks(const Sources &from, Blocks &to)
{
    if (from.checks.empty())
        return;
    to.emplace_back(Heading{1, tr("Engineering checks"), QStringLiteral("checks")});
    to.emplace_back(
        Paragraph{{{tr("Computed from what is recorded, with the evidence named beside "
                       "each figure. The working of each stands at the end of this sheet. "
                       "None of it replaces a measurement or a qualified person."),
                    Emphasis::None,
                    {}}}});
    addOverview(from.checks, to);
}

void addChecksWorked(const Sources &from, Blocks &to)
{
    if (from.checks.empty())
        return;
    to.emplace_back(Heading{1, tr("Checks, worked"), QStringLiteral("checks-worked")});
    to.emplace_back(Paragraph{
        {{tr("Source, what would turn a verdict and what to do afterwards are told where a kind of "
             "check comes first; rows that say the same of like parts are one."),
          Emphasis::Muted,
          {}}}});
    int number = 0;
    SaidBefore said;
    for (const Check &check : from.checks) {
        // nothing measured or computed yet: the overview says what is missing
        if (check.steps.empty() && check.comparisons.empty())
            continue;
        to.emplace_back(Heading{2, check.title, QStringLiteral("check-%1").arg(++number)});
        Paragraph verdict;
        for (const Mark &mark : marksOf(check))
            verdict.runs.push_back({QStringLiteral("  "), Emphasis::None, mark});
        verdict.runs.push_back({check.sentence, Emphasis::None, {}});
        to.emplace_back(std::move(verdict));
        addGiven(check, to);
        addWorking(check, to);
        addPlots(from, check, to);
        addLines(check, said, to);
    }
}

} // namespace ohmwright::sections
