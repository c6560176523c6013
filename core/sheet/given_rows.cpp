// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/given_rows.h"

#include "core/checks/origin_words.h"
#include "core/sheet/alike_rows.h"
#include "core/sheet/check_words.h"
#include "core/sheet/repeated_inputs.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

namespace ohmwright::sections {

using namespace sheet;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

Cell valueOf(const CheckInput *input)
{
    if (!input)
        return {};
    if (input->shown.isEmpty())
        return Cell{{}, {}, {{MarkKind::Unknown, tr("not known")}}};
    return Cell{input->shown};
}

// "measured, tape" if that holds for all of them, else "m: measured, scale; x, z: assumed".
QString evidenceOfAll(const RepeatedInputs &same, const std::vector<const CheckInput *> &row)
{
    QStringList evidence;
    std::vector<QStringList> symbols;
    for (std::size_t i = 0; i < row.size(); ++i) {
        if (!row[i] || row[i]->shown.isEmpty())
            continue;
        const QString from = evidenceOf(row[i]->origin);
        const auto at = evidence.indexOf(from);
        if (at < 0) {
            evidence << from;
            symbols.push_back({same.columns[i].symbol});
        } else {
            symbols[static_cast<std::size_t>(at)] << same.columns[i].symbol;
        }
    }
    if (evidence.size() < 2)
        return evidence.join(QString());
    for (qsizetype i = 0; i < evidence.size(); ++i)
        evidence[i] =
            tr("%1: %2").arg(symbols[static_cast<std::size_t>(i)].join(tr(", ")), evidence[i]);
    return evidence.join(tr("; "));
}

// "mass" of "mass of Coupling blank" under the title "Rotating part: Coupling blank".
QString withoutTitle(const QString &name, const QString &title)
{
    const QString of = tr(" of ");
    for (auto at = name.indexOf(of); at > 0; at = name.indexOf(of, at + 1))
        if (title.endsWith(name.mid(at + of.size())))
            return name.left(at);
    return name;
}

void addRepeated(const RepeatedInputs &same, const QString &what, Blocks &to)
{
    sheet::Table table;
    QStringList symbols;
    table.columns.push_back({what, Align::Left, 5});
    for (const RepeatedInputs::Column &column : same.columns) {
        symbols << tr("%1 %2").arg(column.symbol, column.what);
        table.columns.push_back({column.symbol, Align::Decimal, 0, false, true});
    }
    table.columns.push_back({tr("evidence"), Align::Left, 5});
    table.columns.front().header = tr("%1: %2").arg(what, symbols.join(tr("; ")));
    for (const RepeatedInputs::Item &item : same.items) {
        Row row{{Cell{item.name, item.place}}};
        for (const CheckInput *input : item.inputs)
            row.cells.push_back(valueOf(input));
        row.cells.emplace_back(QString(), evidenceOfAll(same, item.inputs));
        table.rows.push_back(std::move(row));
    }
    to.emplace_back(std::move(table));
}

} // namespace

void addGivenRows(const Inputs &inputs, const QString &what, const QString &title, Blocks &to)
{
    if (inputs.empty())
        return;
    sheet::Table table;
    table.columns = {{{}, Align::Left, 0, true},
                     {what, Align::Left, 5},
                     {tr("value"), Align::Decimal},
                     {tr("evidence"), Align::Left, 6}};
    const auto keyOf = [](const CheckInput *input) {
        return QStringList{input->symbol, input->shown, withoutNumbers(input->origin.name),
                           withoutNumbers(input->origin.path), evidenceOf(input->origin)}
            .join(QChar(0x1F));
    };
    for (const auto &[first, last, count] : joinAlike(inputs, keyOf)) {
        const Origin &origin = (*first)->origin;
        const bool known = !(*first)->shown.isEmpty();
        const QString beside =
            count > 1 ? tr("and %1 more alike, to “%2”").arg(count - 1).arg((*last)->origin.name)
                      : besideName(origin.name, origin.path);
        table.rows.push_back({{{(*first)->symbol},
                               {count > 1 ? origin.name : withoutTitle(origin.name, title), beside},
                               valueOf(*first),
                               {QString(), known ? evidenceOf(origin) : origin.source}},
                              RowKind::Plain});
    }
    to.emplace_back(std::move(table));
}

void addGivenFolded(const Inputs &inputs, const QString &what, const QString &title, Blocks &to)
{
    Inputs single;
    for (std::size_t i = 0; i < inputs.size();) {
        const RepeatedInputs same = repeatedFrom(inputs, i);
        if (same.items.empty()) {
            single.push_back(inputs[i++]);
            continue;
        }
        addGivenRows(std::exchange(single, {}), what, title, to);
        addRepeated(same, what, to);
        i += same.count;
    }
    addGivenRows(single, what, title, to);
}

} // namespace ohmwright::sections
