// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/sheet_types.h"

#include "core/parts/voltage_class.h"
#include "core/sheet/sheet_figures.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>
#include <set>

namespace ohmwright::sections {

using sheet::Align;
using sheet::Cell;
using sheet::Emphasis;
using sheet::Mark;
using sheet::MarkKind;
using sheet::Row;
using sheet::RowKind;

namespace {

// Beside the part's name and its remarks no more columns can be read on upright paper.
constexpr std::size_t kMostColumns = 4;

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

// The type's ratings do not tell the whole of it.
bool isOwn(const Figure &figure)
{
    return figure.stale || std::any_of(figure.all.begin(), figure.all.end(),
                                       [](const Rating *r) { return r->part.isSet(); });
}

std::vector<FigureName> ownFigures(const Records &records, const Part &part)
{
    std::vector<FigureName> names;
    for (const Figure &figure : figuresOf(records, part))
        if (isOwn(figure))
            names.push_back(figure.name);
    return names;
}

// Of the figures that parts of one type have of their own, those that most of them have.
std::vector<FigureName> columnsFor(const std::vector<std::vector<FigureName>> &own)
{
    std::map<FigureName, std::size_t> counts;
    for (const std::vector<FigureName> &names : own)
        for (const FigureName &name : names)
            ++counts[name];
    std::vector<std::pair<FigureName, std::size_t>> ranked(counts.begin(), counts.end());
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const auto &a, const auto &b) { return a.second > b.second; });
    ranked.resize(std::min(ranked.size(), kMostColumns));
    std::vector<FigureName> columns;
    for (const auto &[name, count] : ranked)
        columns.push_back(name);
    std::sort(columns.begin(), columns.end());
    return columns;
}

std::optional<TypeGroup> groupOf(const Sources &from, const PartType &type,
                                 const std::vector<const Part *> &parts)
{
    std::vector<std::vector<FigureName>> own;
    for (const Part *part : parts)
        own.push_back(ownFigures(from.records, *part));
    const std::vector<FigureName> columns = columnsFor(own);
    TypeGroup group;
    group.type = &type;
    std::set<FigureName> used;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (!std::includes(columns.begin(), columns.end(), own[i].begin(), own[i].end()))
            continue;
        group.parts.push_back(parts[i]);
        used.insert(own[i].begin(), own[i].end());
    }
    if (group.parts.size() < 2)
        return std::nullopt;
    group.columns.assign(used.begin(), used.end());
    return group;
}

// Evidence and remarks of a figure that is the part's own.
QString groundsOf(const Figure &figure, const std::vector<const Rating *> &ofType)
{
    QStringList grounds{sourceText(figure), remarkText(figure, ofType)};
    grounds.removeAll(QString());
    return grounds.join(u'\n');
}

// What most parts' figures in a column rest on, so that it need not be told in each cell.
QString commonGrounds(const Records &records, const TypeGroup &group, const FigureName &name,
                      const std::vector<const Rating *> &ofType)
{
    std::map<QString, int> counts;
    for (const Part *part : group.parts) {
        const Figure figure = figureFor(records, *part, name);
        if (isOwn(figure) && figure.inForce && figure.inForce->part.isSet())
            ++counts[groundsOf(figure, ofType)];
    }
    const auto most = std::max_element(counts.begin(), counts.end(),
                                       [](auto &a, auto &b) { return a.second < b.second; });
    return most != counts.end() && most->second > 1 ? most->first : QString();
}

Cell ownCell(const Records &records, const Part &part, const FigureName &name,
             const std::vector<const Rating *> &ofType, const QString &common)
{
    const Figure figure = figureFor(records, part, name);
    if (figure.all.empty())
        return Cell{tr("not known"), {}, {Mark{MarkKind::Unknown, tr("unknown")}}};
    if (!isOwn(figure))
        return Cell{tr("as the type"), {}, {}, Emphasis::Muted};
    QString grounds = groundsOf(figure, ofType);
    if (!common.isEmpty() && grounds.startsWith(common))
        grounds = grounds.mid(common.size()).trimmed();
    Cell cell{valueText(figure), grounds, {}};
    if (const Mark mark = markOf(figure); mark.kind != MarkKind::Holds)
        cell.marks.push_back(mark);
    return cell;
}

// Beside the name: what is asked of the part and neither its type nor it answers, what was done.
Cell nameCell(const Sources &from, const Part &part, const std::vector<Question> &questions)
{
    QStringList words{wordOf(part.state)};
    if (!part.serial.isEmpty())
        words << tr("serial %1").arg(part.serial);
    if (const Donor *donor = from.records.find(part.donor))
        words << tr("from %1").arg(QStringList{donor->make, donor->model}.join(u' '));
    QStringList lines{words.join(tr(", "))};
    Cell cell{part.name, {}, {}};
    if (isVoltageClassB(from.records, part))
        cell.marks.push_back({MarkKind::HighVoltage, {}});
    bool open = false;
    for (const Question &q : questions) {
        if (q.part != part.id || !figureFor(from.records, part, q.figure).all.empty())
            continue;
        open = true;
        lines << tr("%1 not known, asked by %2").arg(describe(q.figure), q.askedBy.join(tr(", ")));
    }
    if (open)
        cell.marks.push_back({MarkKind::Unknown, tr("open")});
    lines << remarksOf(part);
    cell.evidence = lines.join(u'\n');
    return cell;
}

sheet::Table tableOfParts(const Sources &from, const TypeGroup &group,
                          const std::vector<Question> &questions)
{
    const Records &records = from.records;
    sheet::Table table;
    table.columns.push_back({tr("part"), Align::Left, 5});
    Row common{{Cell{tr("evidence, unless told otherwise"), {}, {}, Emphasis::Muted}}};
    bool anyCommon = false;
    std::vector<std::vector<const Rating *>> ofType;
    for (const FigureName &name : group.columns) {
        ofType.push_back(figureFor(records, *group.type, name).all);
        table.columns.push_back({describe(name), Align::Left, 3});
        common.cells.push_back(Cell{{}, commonGrounds(records, group, name, ofType.back()), {}});
        anyCommon = anyCommon || !common.cells.back().evidence.isEmpty();
    }
    if (anyCommon)
        table.rows.push_back(common);
    QStringList assembly;
    for (const Part *part : group.parts) {
        QStringList path = from.tree.path(part->id);
        path.removeLast();
        if (path != assembly) {
            assembly = path;
            table.rows.push_back({{Cell{path.isEmpty() ? tr("In no assembly")
                                                       : tr("In %1").arg(path.join(tr(" › ")))}},
                                  RowKind::Group});
        }
        Row row{{nameCell(from, *part, questions)}};
        for (std::size_t i = 0; i < group.columns.size(); ++i)
            row.cells.push_back(
                ownCell(records, *part, group.columns[i], ofType[i], common.cells[i + 1].evidence));
        table.rows.push_back(std::move(row));
    }
    return table;
}

sheet::Table tableOfType(const Records &records, const PartType &type)
{
    std::set<FigureName> names;
    for (const Rating &rating : records.of<Rating>(type.id))
        names.insert(figureOf(rating));
    sheet::Table table;
    table.columns = {
        {tr("figure")}, {tr("value"), Align::Decimal}, {tr("evidence"), Align::Left, 1}};
    for (const FigureName &name : names)
        table.rows.push_back(rowOf(figureFor(records, type, name)));
    table.whenEmpty = tr("Nothing recorded for the type itself.");
    return table;
}

} // namespace

std::vector<TypeGroup> groupByType(const Sources &from, const std::vector<const Part *> &parts)
{
    std::vector<const PartType *> types; // in the order they are met
    std::map<Id<PartType>, std::vector<const Part *>> byType;
    for (const Part *part : parts) {
        const PartType *type = from.records.find(part->type);
        if (!type || !from.tree.within(part->id).empty())
            continue;
        std::vector<const Part *> &same = byType[type->id];
        if (same.empty())
            types.push_back(type);
        same.push_back(part);
    }
    std::vector<TypeGroup> groups;
    for (const PartType *type : types)
        if (byType[type->id].size() > 1)
            if (auto group = groupOf(from, *type, byType[type->id]))
                groups.push_back(std::move(*group));
    return groups;
}

void addTypeGroup(const Sources &from, const TypeGroup &group,
                  const std::vector<Question> &questions, Blocks &to)
{
    sheet::Table ofType = tableOfType(from.records, *group.type);
    ofType.caption = tr("%1, %2: holds for each of the %3 below")
                         .arg(nameOf(*group.type), group.type->name)
                         .arg(group.parts.size());
    if (nameOf(*group.type).isEmpty())
        ofType.caption =
            tr("%1: holds for each of the %2 below").arg(group.type->name).arg(group.parts.size());
    to.push_back(std::move(ofType));
    to.push_back(tableOfParts(from, group, questions));
}

} // namespace ohmwright::sections
