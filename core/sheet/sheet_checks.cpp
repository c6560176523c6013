// SPDX-License-Identifier: GPL-3.0-or-later
// Engineering checks on the build sheet, all in one glance. They are worked in sheet_workings.cpp.
#include "core/sheet/check_words.h"
#include "core/sheet/sheet_sections.h"

#include <QCoreApplication>

namespace ohmwright::sections {

using namespace sheet;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
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

} // namespace ohmwright::sections
