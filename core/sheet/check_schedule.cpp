// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/check_schedule.h"

#include "core/checks/margin_words.h"
#include "core/checks/origin_words.h"
#include "core/sheet/check_words.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QSet>

#include <algorithm>
#include <map>

namespace ohmwright::sections {

using namespace sheet;

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

// More columns than that beside the names are cramped on paper.
constexpr std::size_t kMostColumns = 7;

enum class Told { Given, Worked, Held };

struct Entry
{
    QString text;   // the figure
    QString ground; // evidence, formula, or where the limit comes from
    QString note;   // what else was put into it
    QString margin; // of a comparison
    std::optional<Mark> mark;
    bool operator==(const Entry &other) const
    {
        return text == other.text && ground == other.ground && note == other.note &&
               margin == other.margin;
    }
};

struct Figures
{
    Told told = Told::Given;
    QString symbol;
    QString what;
    std::map<std::size_t, Entry> entries; // by check
};

QSet<QString> numbersOf(const QString &text)
{
    static const QRegularExpression kNumber(QStringLiteral("\\d[\\d.,\\x{202F}]*"));
    QSet<QString> numbers;
    for (auto it = kNumber.globalMatch(text); it.hasNext();)
        numbers.insert(it.next().captured());
    return numbers;
}

// "I_z" of "I_z = I·f₁·f₂"; empty where a formula has no such side.
QString leftSideOf(const QString &formula)
{
    static const QRegularExpression kLeft(QStringLiteral("^(\\S{1,5}) = "));
    const QRegularExpressionMatch match = kLeft.match(formula);
    return match.hasMatch() ? match.captured(1) : QString();
}

class Schedule
{
public:
    Schedule(const std::vector<const Check *> &checks, SaidBefore &said)
        : m_checks(checks), m_said(said)
    {
        nameChecks();
        for (std::size_t i = 0; i < checks.size(); ++i)
            take(i);
        for (const Figures &one : m_figures)
            if (!isSameForAll(one))
                m_own.push_back(&one);
    }

    void addTo(Blocks &to)
    {
        addHead(to);
        addRows(Told::Given, tr("Given"), to);
        addRows(Told::Worked, tr("Worked"), to);
        addRows(Told::Held, tr("Held against"), to);
        addGrounds(to);
        Paragraph lines;
        for (const Check *check : m_checks) {
            addLine(tr("Afterwards:"), m_said.fresh(*check, {check->afterwards}), lines);
            addLine(tr("Source:"), m_said.fresh(*check, {check->source}), lines);
        }
        if (!lines.runs.empty())
            to.emplace_back(std::move(lines));
    }

private:
    // What titles differ by: "Coolant pump" of "Conductor: Coolant pump".
    void nameChecks()
    {
        QString shared = m_checks.front()->title;
        for (const Check *check : m_checks)
            while (!check->title.startsWith(shared))
                shared.chop(1);
        shared.truncate(shared.lastIndexOf(u' ') + 1);
        for (const Check *check : m_checks)
            m_names << check->title.mid(shared.size());
    }

    Figures &figures(Told told, const QString &symbol, const QString &what, std::size_t of)
    {
        // the same figure a second time in one check is another one
        const auto free = [&](const Figures &one) {
            return one.told == told && one.symbol == symbol && !one.entries.contains(of);
        };
        auto found = std::find_if(m_figures.begin(), m_figures.end(), [&](const Figures &one) {
            return free(one) && one.what == what;
        });
        // one symbol in the formula, another figure to put into it: "nominal voltage of 12 V"
        if (found == m_figures.end() && told == Told::Given && !symbol.isEmpty())
            found = std::find_if(m_figures.begin(), m_figures.end(), free);
        if (found != m_figures.end())
            return *found;
        return m_figures.emplace_back(Figures{told, symbol, what, {}});
    }

    void take(std::size_t i)
    {
        const Check &check = *m_checks[i];
        const QString ofIt = tr(" of %1").arg(m_names[static_cast<qsizetype>(i)]);
        QSet<QString> shown;
        for (const CheckInput &input : check.inputs) {
            shown.unite(numbersOf(input.shown));
            QString what = input.origin.name;
            what.remove(ofIt);
            const QString beside = besideName(input.origin.name, input.origin.path);
            Figures &one = figures(Told::Given, input.symbol, what, i);
            const QString evidence = evidenceOf(input.origin);
            one.entries[i] = Entry{input.shown,
                                   one.what == what ? evidence : tr("%1: %2").arg(what, evidence),
                                   beside,
                                   {},
                                   {}};
        }
        for (const CheckStep &step : check.steps)
            shown.unite(numbersOf(step.result));
        for (const CheckStep &step : check.steps) {
            const bool told = shown.contains(numbersOf(step.worked));
            figures(Told::Worked, leftSideOf(step.formula), step.what, i).entries[i] =
                Entry{step.result, step.formula, told ? QString() : step.worked, {}, {}};
        }
        for (const Comparison &held : check.comparisons)
            figures(Told::Held, {}, held.what, i).entries[i] =
                Entry{tr("%1 %2 %3").arg(held.value, held.relation, held.limit),
                      held.limitFrom,
                      {},
                      marginFigure(held.margin),
                      Mark{kindOf(held.verdict)}};
    }

    [[nodiscard]] bool isSameForAll(const Figures &one) const
    {
        return one.told != Told::Held && one.entries.size() == m_checks.size() &&
               std::all_of(one.entries.begin(), one.entries.end(), [&one](const auto &entry) {
                   return entry.second == one.entries.begin()->second;
               });
    }

    // What all entries rest on, or nothing.
    static QString commonGround(const Figures &one)
    {
        const QString ground = one.entries.begin()->second.ground;
        const bool common =
            std::all_of(one.entries.begin(), one.entries.end(),
                        [&ground](const auto &entry) { return entry.second.ground == ground; });
        return common ? ground : QString();
    }

    void addHead(Blocks &to)
    {
        sheet::Table table;
        table.columns = {{{}, Align::Left, 0, true},
                         {tr("figure"), Align::Left, 4},
                         {tr("formula"), Align::Left, 4, true},
                         {tr("the same for all"), Align::Decimal},
                         {tr("evidence, limit from"), Align::Left, 5}};
        for (const Figures &one : m_figures) {
            const bool same = isSameForAll(one);
            const Entry &first = one.entries.begin()->second;
            const QString ground = commonGround(one);
            const QString told = ground.isEmpty() ? tr("in the rows, by number") : ground;
            const bool worked = one.told == Told::Worked;
            const QString formula = worked ? told : QString();
            table.rows.push_back({{{one.symbol},
                                   {one.what, same ? first.note : QString()},
                                   {formula},
                                   {same ? first.text : QString()},
                                   {worked ? QString() : told}},
                                  RowKind::Plain});
        }
        to.emplace_back(std::move(table));
    }

    // "[3]"
    QString numberOf(const QString &ground)
    {
        auto at = m_grounds.indexOf(ground);
        if (at < 0) {
            at = m_grounds.size();
            m_grounds << ground;
        }
        return tr("[%1]").arg(at + 1);
    }

    void addRows(Told told, const QString &caption, Blocks &to)
    {
        std::vector<const Figures *> columns;
        for (const Figures *one : m_own)
            if (one->told == told)
                columns.push_back(one);
        const std::size_t most = told == Told::Held ? kMostColumns / 2 : kMostColumns;
        const std::size_t tables = std::max<std::size_t>((columns.size() + most - 1) / most, 1);
        const std::size_t each = (columns.size() + tables - 1) / tables;
        for (std::size_t first = 0; first < columns.size(); first += each) {
            const std::size_t end = std::min(first + each, columns.size());
            addTable(caption,
                     {columns.begin() + static_cast<std::ptrdiff_t>(first),
                      columns.begin() + static_cast<std::ptrdiff_t>(end)},
                     told, to);
        }
    }

    void addTable(const QString &caption, const std::vector<const Figures *> &columns, Told told,
                  Blocks &to)
    {
        sheet::Table table;
        table.columns.push_back({caption, Align::Left, 4});
        for (const Figures *one : columns) {
            const bool text =
                std::any_of(one->entries.begin(), one->entries.end(), [](const auto &entry) {
                    return !entry.second.text.isEmpty() && !entry.second.text.at(0).isDigit();
                });
            const QString header = one->symbol.isEmpty() ? one->what : one->symbol;
            const Align align = told == Told::Held ? Align::Right
                                : text             ? Align::Left
                                                   : Align::Decimal;
            table.columns.push_back({header, align, 0, false, !one->symbol.isEmpty()});
            if (told == Told::Held)
                table.columns.push_back({tr("margin"), Align::Right});
        }
        if (told == Told::Held)
            table.columns.push_back({tr("verdict")});
        for (std::size_t i = 0; i < m_checks.size(); ++i) {
            Row row{{Cell{m_names[static_cast<qsizetype>(i)]}}};
            for (const Figures *one : columns) {
                const auto entry = one->entries.find(i);
                row.cells.push_back(entry == one->entries.end() ? Cell{}
                                                                : cellOf(*one, entry->second));
                if (told == Told::Held)
                    row.cells.emplace_back(entry == one->entries.end() ? QString()
                                                                       : entry->second.margin);
            }
            if (told == Told::Held)
                row.cells.push_back(Cell{{}, {}, marksOf(*m_checks[i])});
            table.rows.push_back(std::move(row));
        }
        to.emplace_back(std::move(table));
    }

    Cell cellOf(const Figures &one, const Entry &entry)
    {
        if (entry.text.isEmpty())
            return Cell{{}, {}, {{MarkKind::Unknown, tr("not known")}}};
        QString text = entry.text;
        if (!entry.note.isEmpty())
            text += QChar(QChar::Nbsp) + numberOf(entry.note);
        if (commonGround(one).isEmpty() && !entry.ground.isEmpty())
            text += QChar(QChar::Nbsp) + numberOf(entry.ground);
        return Cell{text};
    }

    void addGrounds(Blocks &to)
    {
        if (m_grounds.isEmpty())
            return;
        // two abreast: most are short
        sheet::Table list;
        list.columns = {{{}, Align::Right},
                        {tr("by number"), Align::Left, 1},
                        {{}, Align::Right},
                        {{}, Align::Left, 1}};
        const qsizetype half = (m_grounds.size() + 1) / 2;
        for (qsizetype i = 0; i < half; ++i) {
            Row row;
            for (qsizetype at = i; at < m_grounds.size(); at += half) {
                row.cells.emplace_back(QString(), tr("[%1]").arg(at + 1));
                row.cells.emplace_back(QString(), m_grounds[at]);
            }
            list.rows.push_back(std::move(row));
        }
        to.emplace_back(std::move(list));
    }

    static void addLine(const QString &label, const QStringList &texts, Paragraph &lines)
    {
        if (texts.isEmpty())
            return;
        lines.runs.push_back(
            {lines.runs.empty() ? label : QString(u'\n' + label), Emphasis::Muted, {}});
        lines.runs.push_back({QString(u' ' + texts.join(u' ')), Emphasis::None, {}});
    }

    const std::vector<const Check *> &m_checks;
    SaidBefore &m_said;
    QStringList m_names; // by check
    std::vector<Figures> m_figures;
    std::vector<const Figures *> m_own; // with a column
    QStringList m_grounds;
};

} // namespace

bool fitsASchedule(const Check &check)
{
    return check.verdict == Verdict::Holds && !check.publishedVerdict && check.plots.empty() &&
           check.loosened.empty() && check.doubts.isEmpty() && check.refusals.isEmpty() &&
           !check.comparisons.empty();
}

void addCheckSchedule(const std::vector<const Check *> &checks, SaidBefore &said, Blocks &to)
{
    Schedule(checks, said).addTo(to);
}

} // namespace ohmwright::sections
