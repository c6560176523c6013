// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/rating_schedule.h"

#include "core/checks/margin_words.h"
#include "core/checks/origin_words.h"
#include "core/sheet/check_words.h"
#include "core/sheet/held_limits.h"

#include <QCoreApplication>
#include <QHash>

#include <algorithm>
#include <map>

namespace ohmwright::sections {

using namespace sheet;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

// What one check says of parts: a line for those with the same limits from the same sources.
struct RatedParts
{
    QStringList names;
    QString place;
    std::map<QString, const HeldLimit *> byAspect;
};

class Schedule
{
public:
    Schedule(const std::vector<const Check *> &checks, SaidBefore &said)
        : m_checks(checks), m_said(said)
    {
        for (const Check *check : checks) {
            m_limits.push_back(heldLimits(*check));
            for (const HeldLimit &one : m_limits.back())
                if (!m_aspects.contains(one.aspect))
                    m_aspects << one.aspect;
        }
        std::sort(m_aspects.begin(), m_aspects.end());
        for (const QString &aspect : m_aspects)
            m_usual << usualFigure(aspect);
    }

    void addTo(Blocks &to)
    {
        addHead(to);
        sheet::Table table;
        table.columns.push_back({tr("part"), Align::Left, 5});
        for (const QString &aspect : m_aspects) {
            table.columns.push_back({aspect.isEmpty() ? tr("limit") : aspect, Align::Decimal});
            table.columns.push_back({tr("margin"), Align::Right});
        }
        table.columns.push_back({tr("evidence of the limit"), Align::Left, 6});
        table.columns.push_back({tr("verdict")});
        for (std::size_t i = 0; i < m_checks.size(); ++i)
            addCheck(*m_checks[i], m_limits[i], table);
        to.emplace_back(std::move(table));
        addFoot(to);
    }

private:
    QString usualFigure(const QString &aspect) const
    {
        QHash<QString, int> counts;
        QString usual;
        for (const auto &limits : m_limits)
            for (const HeldLimit &one : limits)
                if (one.aspect == aspect && ++counts[one.figure] > counts.value(usual))
                    usual = one.figure;
        return usual;
    }

    // The formula, and what holds for all.
    void addHead(Blocks &to)
    {
        QStringList formulas;
        for (const Check *check : m_checks)
            for (const CheckStep &step : check->steps)
                if (!formulas.contains(step.formula))
                    formulas << step.formula;
        Paragraph head;
        head.runs.push_back({tr("For each part %1. What passes stands at the head of each, the "
                                "limit with the part: its %2, unless told otherwise. ")
                                 .arg(formulas.join(tr(", ")), m_usual.join(tr(" and "))),
                             Emphasis::None,
                             {}});
        const QStringList source = m_said.fresh(*m_checks.front(), {m_checks.front()->source});
        if (!source.isEmpty()) {
            head.runs.push_back({tr("Source:"), Emphasis::Muted, {}});
            head.runs.push_back({QString(u' ' + source.join(u' ')), Emphasis::None, {}});
        }
        to.emplace_back(std::move(head));
    }

    void addFoot(Blocks &to)
    {
        Paragraph foot;
        const auto add = [&foot](const QString &label, const QString &text) {
            foot.runs.push_back(
                {foot.runs.empty() ? label : QString(u'\n' + label), Emphasis::Muted, {}});
            foot.runs.push_back({QString(u' ' + text), Emphasis::None, {}});
        };
        for (std::size_t i = 0; i < m_checks.size(); ++i) {
            const Check &check = *m_checks[i];
            if (check.verdict == Verdict::Holds && !check.publishedVerdict)
                continue;
            QString turned = m_said.fresh(check, check.turnedBy).join(u' ');
            for (const HeldLimit &one : m_limits[i])
                if (!one.path.isEmpty())
                    turned.replace(one.path, partOf(one.path));
            if (!turned.isEmpty())
                add(tr("What would turn “%1”:").arg(subjectOf(check)), turned);
        }
        const QStringList afterwards =
            m_said.fresh(*m_checks.front(), {m_checks.front()->afterwards});
        if (!afterwards.isEmpty())
            add(tr("Afterwards:"), afterwards.join(u' '));
        if (!foot.runs.empty())
            to.emplace_back(std::move(foot));
    }

    // What its title names, in quotation marks or behind a colon.
    static QString subjectOf(const Check &check)
    {
        const auto opens = check.title.indexOf(u'“');
        const auto closes = check.title.lastIndexOf(u'”');
        if (opens >= 0 && closes > opens)
            return check.title.mid(opens + 1, closes - opens - 1);
        const QString sign = QStringLiteral(": ");
        const auto at = check.title.indexOf(sign);
        return at < 0 ? check.title : check.title.mid(at + sign.size());
    }

    void addCheck(const Check &check, const std::vector<HeldLimit> &limits,
                  sheet::Table &table) const
    {
        const std::set<const CheckInput *> told = toldAsLimits(check, limits);
        QStringList given;
        std::vector<const CheckInput *> unknown;
        for (const CheckInput &input : check.inputs) {
            if (told.contains(&input))
                continue;
            if (input.shown.isEmpty()) {
                unknown.push_back(&input);
                continue;
            }
            const QString name =
                QString(input.origin.name).remove(tr(" of %1").arg(subjectOf(check)));
            const QString place = besideName(input.origin.name, input.origin.path);
            given << tr("%1 %2 %3 (%4)")
                         .arg(place.isEmpty() ? name : tr("%1 %2").arg(name, place), input.symbol,
                              input.shown, evidenceOf(input.origin));
        }
        QString note = given.join(tr("; "));
        if (check.verdict != Verdict::Holds || check.publishedVerdict)
            note = check.sentence + u'\n' + note;
        table.rows.push_back({{Cell{subjectOf(check), note, marksOf(check)}}, RowKind::Group});
        for (const CheckInput *input : unknown)
            table.rows.push_back(unknownRow(*input));
        for (const RatedParts &parts : rated(limits))
            table.rows.push_back(rowOf(parts, limits));
    }

    Row unknownRow(const CheckInput &input) const
    {
        Row row{{Cell{input.origin.name, besideName(input.origin.name, input.origin.path)}}};
        row.cells.resize(2 * static_cast<std::size_t>(m_aspects.size()) + 2);
        row.cells.push_back(Cell{{}, {}, {{MarkKind::Unknown, tr("not known")}}});
        return row;
    }

    std::vector<RatedParts> rated(const std::vector<HeldLimit> &limits) const
    {
        std::vector<QString> paths;
        std::map<QString, RatedParts> byPath;
        for (const HeldLimit &one : limits) {
            if (!byPath.contains(one.path))
                paths.push_back(one.path);
            byPath[one.path].byAspect[one.aspect] = &one;
        }
        std::vector<RatedParts> rows;
        std::map<QString, std::size_t> places;
        for (const QString &path : paths) {
            RatedParts &parts = byPath[path];
            parts.place = placeOf(path);
            QStringList key{parts.place};
            for (const auto &[aspect, one] : parts.byAspect)
                key << aspect << one->held->value << one->held->limit << one->holdsFor << one->from;
            const auto [place, fresh] = places.emplace(key.join(QChar(0x1F)), rows.size());
            if (fresh)
                rows.push_back(parts);
            rows[place->second].names << partOf(path);
        }
        return rows;
    }

    Row rowOf(const RatedParts &parts, const std::vector<HeldLimit> &limits) const
    {
        Row row{{Cell{listed(parts.names), parts.place}}};
        Verdict worst = Verdict::Holds;
        QStringList sources, evidence;
        for (qsizetype i = 0; i < m_aspects.size(); ++i) {
            const auto found = parts.byAspect.find(m_aspects[i]);
            if (found == parts.byAspect.end()) {
                row.cells.resize(row.cells.size() + 2);
                continue;
            }
            const HeldLimit &one = *found->second;
            // the value is the branch's, unless one part has its own
            const bool own = one.held->value != valueOf(m_aspects[i], limits);
            row.cells.emplace_back(
                own ? tr("%1 %2 %3").arg(one.held->value, one.held->relation, one.held->limit)
                    : one.held->limit,
                one.holdsFor);
            row.cells.emplace_back(marginFigure(one.held->margin));
            worst = std::max(worst, one.held->verdict);
            const bool usual = one.figure == m_usual[i] ||
                               (one.holdsFor == tr("continuous") && m_usual.contains(one.figure));
            const QString from = usual ? one.from : tr("%1: %2").arg(one.figure, one.from);
            evidence << tr("%1: %2").arg(m_aspects[i], from);
            if (!sources.contains(from))
                sources << from;
        }
        row.cells.emplace_back(QString(),
                               sources.size() == 1 ? sources.front() : evidence.join(u'\n'));
        row.cells.push_back(Cell{{}, {}, {{kindOf(worst)}}});
        return row;
    }

    static QString valueOf(const QString &aspect, const std::vector<HeldLimit> &limits)
    {
        for (const HeldLimit &one : limits)
            if (one.aspect == aspect)
                return one.held->value;
        return {};
    }

    const std::vector<const Check *> &m_checks;
    SaidBefore &m_said;
    std::vector<std::vector<HeldLimit>> m_limits; // by check
    QStringList m_aspects;
    QStringList m_usual; // figure, by aspect
};

} // namespace

bool isOfRatings(const Check &check)
{
    const std::vector<HeldLimit> limits = heldLimits(check);
    return !limits.empty() && check.plots.empty() && check.loosened.empty() &&
           check.doubts.isEmpty() && check.refusals.isEmpty() &&
           std::all_of(limits.begin(), limits.end(),
                       [](const HeldLimit &one) { return !one.path.isEmpty(); }) &&
           std::all_of(check.steps.begin(), check.steps.end(),
                       [&limits](const CheckStep &step) { return onlyNamesAPart(step, limits); });
}

void addRatingSchedule(const std::vector<const Check *> &checks, SaidBefore &said, Blocks &to)
{
    Schedule(checks, said).addTo(to);
}

} // namespace ohmwright::sections
