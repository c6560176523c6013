// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/worked_check.h"

#include "core/checks/margin_words.h"
#include "core/sheet/alike_rows.h"
#include "core/sheet/check_words.h"
#include "core/sheet/given_rows.h"

#include <QCoreApplication>
#include <QHash>

namespace ohmwright::sections {

using namespace sheet;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

void addSteps(const Check &check, const std::vector<HeldLimit> &limits, Blocks &to)
{
    sheet::Table table;
    table.columns = {{tr("worked"), Align::Left, 4},
                     {tr("formula"), Align::Left, 4, true},
                     {tr("with these figures"), Align::Left, 5},
                     {tr("result"), Align::Right}};
    for (const CheckStep &step : check.steps)
        if (!onlyNamesAPart(step, limits))
            table.rows.push_back(
                {{{step.what}, {step.formula}, {step.worked}, {step.result}}, RowKind::Plain});
    if (!table.rows.empty())
        to.emplace_back(std::move(table));
}

// The figure that most limits of parts are, told once for all.
QString usualFigure(const std::vector<HeldLimit> &limits)
{
    QHash<QString, int> counts;
    QString usual;
    for (const HeldLimit &one : limits)
        if (!one.path.isEmpty() && ++counts[one.figure] > counts.value(usual))
            usual = one.figure;
    return usual;
}

Row heldRow(const HeldLimit &one, const QString &usual)
{
    const Comparison &held = *one.held;
    QString from = one.from;
    if (!one.holdsFor.isEmpty())
        from = tr("%1; %2").arg(one.holdsFor, from);
    if (!one.path.isEmpty() && one.figure != usual)
        from = tr("%1: %2").arg(one.figure, from);
    return {{{one.path.isEmpty() ? held.what : partOf(one.path),
              QStringList{one.aspect, placeOf(one.path)}.join(u' ').trimmed()},
             {held.value},
             {held.relation},
             {held.limit, from},
             {marginFigure(held.margin)},
             {{}, {}, {{kindOf(held.verdict)}}}},
            RowKind::Plain};
}

// Rows of one key say the same of like things.
QString keyOf(const HeldLimit &one, const Row &row)
{
    QStringList key{withoutNumbers(one.path.isEmpty() ? row.cells.front().text : QString()),
                    row.cells.front().evidence, one.held->relation};
    for (const Cell &cell : row.cells)
        if (&cell != &row.cells.front())
            key << cell.text
                << (one.path.isEmpty() ? withoutNumbers(cell.evidence) : cell.evidence);
    return key.join(QChar(0x1F));
}

// A row for a comparison, and one for all parts of a place that have the same limit from the same
// source.
void addHeld(const std::vector<HeldLimit> &limits, Blocks &to)
{
    if (limits.empty())
        return;
    constexpr int kFewestAlike = 3; // of what is no part, as in what is given
    const QString usual = usualFigure(limits);
    sheet::Table table;
    table.columns = {{tr("held against"), Align::Left, 4},
                     {tr("found"), Align::Right},
                     {{}},
                     {usual.isEmpty() ? tr("limit") : tr("limit: %1").arg(usual), Align::Left, 6},
                     {tr("margin"), Align::Right},
                     {tr("verdict")}};
    QHash<QString, int> counts;
    for (const HeldLimit &one : limits)
        ++counts[keyOf(one, heldRow(one, usual))];
    QHash<QString, std::size_t> places;
    std::vector<QStringList> names; // by row
    for (const HeldLimit &one : limits) {
        Row row = heldRow(one, usual);
        const QString key = keyOf(one, row);
        const auto place = places.constFind(key);
        const bool joined = !one.path.isEmpty() || counts[key] >= kFewestAlike;
        if (place != places.constEnd() && joined) {
            names[*place] << row.cells.front().text;
            continue;
        }
        places.insert(key, table.rows.size());
        names.push_back({row.cells.front().text});
        table.rows.push_back(std::move(row));
    }
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        Cell &what = table.rows[i].cells.front();
        if (usual.isEmpty() && names[i].size() > 1)
            what.evidence = andAlike(names[i]);
        else
            what.text = listed(names[i]);
    }
    to.emplace_back(std::move(table));
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
        figure.maxHeight = metres(0.07);
        to.emplace_back(std::move(figure));
    }
}

} // namespace

QStringList SaidBefore::fresh(const Check &check, const QStringList &texts)
{
    QStringList fresh;
    for (const QString &text : texts)
        if (!text.isEmpty() && m_said.insert({check.id, text}).second)
            fresh << text;
    return fresh;
}

void addVerdict(const Check &check, Blocks &to)
{
    Paragraph verdict;
    for (const Mark &mark : marksOf(check))
        verdict.runs.push_back({QStringLiteral("  "), Emphasis::None, mark});
    verdict.runs.push_back({check.sentence, Emphasis::None, {}});
    to.emplace_back(std::move(verdict));
}

void addLines(const Check &check, Working working, SaidBefore &said, Blocks &to)
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
    if (working == Working::Full || check.verdict != Verdict::Holds || check.publishedVerdict)
        add(tr("What would turn it:"), said.fresh(check, check.turnedBy));
    add(tr("Afterwards:"), said.fresh(check, {check.afterwards}));
    add(tr("Source:"), said.fresh(check, {check.source}));
    if (!lines.runs.empty())
        to.emplace_back(std::move(lines));
}

void addWorked(const Sources &from, const Check &check, Working working,
               const std::set<const CheckInput *> &leaveOut, SaidBefore &said, Blocks &to)
{
    addVerdict(check, to);
    const std::vector<HeldLimit> limits = heldLimits(check);
    const bool full = working == Working::Full;
    const std::set<const CheckInput *> told =
        full ? std::set<const CheckInput *>() : toldAsLimits(check, limits);
    Inputs given;
    for (const CheckInput &input : check.inputs)
        if (!told.contains(&input) && !leaveOut.contains(&input))
            given.push_back(&input);
    if (full)
        addGivenRows(given, tr("given"), {}, to);
    else
        addGivenFolded(given, tr("given"), check.title, to);
    addSteps(check, full ? std::vector<HeldLimit>() : limits, to);
    addHeld(limits, to);
    addLines(check, working, said, to);
    addPlots(from, check, to);
}

} // namespace ohmwright::sections
