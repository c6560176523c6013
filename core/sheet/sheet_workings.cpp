// SPDX-License-Identifier: GPL-3.0-or-later
// The checks worked, at the end of the build sheet: what fails, is unknown or tight first and in
// full, then what holds, tabled where several are alike. Or each one in full, in the order of the
// overview.
#include "core/checks/origin_words.h"
#include "core/sheet/check_schedule.h"
#include "core/sheet/check_words.h"
#include "core/sheet/given_rows.h"
#include "core/sheet/rating_schedule.h"
#include "core/sheet/sheet_sections.h"
#include "core/sheet/worked_check.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright::sections {

using namespace sheet;

namespace {

// Two are read as quickly one after the other as in a schedule.
constexpr std::size_t kFewestInSchedule = 3;

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

using Kind = std::vector<const Check *>; // checks of one id

QString nameOfKind(const Check &check)
{
    if (check.id == QStringLiteral("branch_ratings"))
        return tr("Current ratings on the branches");
    if (check.id == QStringLiteral("circuit_ratings"))
        return tr("Voltage ratings on the circuits");
    if (check.id == QStringLiteral("conductor"))
        return tr("Conductors");
    if (check.id == QStringLiteral("fuse"))
        return tr("Fuses");
    return {};
}

Paragraph muted(const QString &text)
{
    return Paragraph{{{text, Emphasis::Muted, {}}}};
}

class Workings
{
public:
    Workings(const Sources &from, Blocks &to) : m_from(from), m_to(to) {}

    void addAll()
    {
        m_to.emplace_back(Heading{1, tr("Checks, worked"), QStringLiteral("checks-worked")});
        m_to.emplace_back(
            muted(tr("Source and what to do afterwards are told where a kind of check comes first; "
                     "rows that say the same of like parts are one. A check of which nothing "
                     "could be worked yet stands in the overview alone.")));
        for (const Check &check : m_from.checks)
            if (isWorked(check)) {
                addHeading(2, check.title);
                addWorked(m_from, check, Working::Full, {}, m_said, m_to);
            }
    }

    void addFolded()
    {
        const std::vector<Kind> open = kinds([](const Check &c) { return !isSettled(c); });
        const std::vector<Kind> settled = kinds([](const Check &c) { return isSettled(c); });
        if (!open.empty()) {
            m_to.emplace_back(Heading{1, tr("Checks worked: what fails, is unknown or tight"),
                                      QStringLiteral("checks-worked")});
            m_to.emplace_back(
                muted(tr("Each in full. A limit is told where a result is held against it, with "
                         "its evidence, and not again among what is given. Source and what to do "
                         "afterwards are told where a kind of check comes first. A check of which "
                         "nothing could be worked yet stands in the overview alone.")));
        }
        for (const Kind &kind : open)
            addOpen(kind);
        if (!settled.empty()) {
            m_to.emplace_back(Heading{1, tr("Checks worked: what holds"),
                                      QStringLiteral("checks-worked-holding")});
            m_to.emplace_back(muted(tr("Several of a kind share a schedule: its formulas once, "
                                       "then a row for each with its figures.")));
        }
        for (const Kind &kind : settled)
            addSettled(kind);
    }

private:
    // Nothing measured or computed yet: the overview says what is missing.
    static bool isWorked(const Check &check)
    {
        return !check.steps.empty() || !check.comparisons.empty();
    }
    static bool isSettled(const Check &check)
    {
        return check.verdict == Verdict::Holds && !check.publishedVerdict;
    }

    // By id, the kind with the worst check first; in the order of the overview otherwise.
    template <class Wanted>
    [[nodiscard]] std::vector<Kind> kinds(Wanted wanted) const
    {
        std::vector<Kind> kinds;
        for (const Check &check : m_from.checks) {
            if (!isWorked(check) || !wanted(check))
                continue;
            const auto kind = std::find_if(kinds.begin(), kinds.end(), [&check](const Kind &one) {
                return one.front()->id == check.id;
            });
            if (kind == kinds.end())
                kinds.push_back({&check});
            else
                kind->push_back(&check);
        }
        const auto worstFirst = [](const Check *a, const Check *b) {
            return a->verdict > b->verdict;
        };
        for (Kind &kind : kinds)
            std::stable_sort(kind.begin(), kind.end(), worstFirst);
        std::stable_sort(kinds.begin(), kinds.end(), [&](const Kind &a, const Kind &b) {
            return worstFirst(a.front(), b.front());
        });
        return kinds;
    }

    void addHeading(int level, const QString &text)
    {
        m_to.emplace_back(Heading{level, text, QStringLiteral("check-%1").arg(++m_number)});
    }

    bool addAsRatings(const Kind &kind)
    {
        if (!std::all_of(kind.begin(), kind.end(),
                         [](const Check *check) { return isOfRatings(*check); }))
            return false;
        const QString name = nameOfKind(*kind.front());
        addHeading(2, name.isEmpty() || kind.size() == 1 ? kind.front()->title : name);
        addRatingSchedule(kind, m_said, m_to);
        return true;
    }

    void addOpen(const Kind &kind)
    {
        if (!addAsRatings(kind))
            addInFull(kind);
    }

    void addSettled(const Kind &kind)
    {
        if (addAsRatings(kind))
            return;
        const bool scheduled = kind.size() >= kFewestInSchedule &&
                               std::all_of(kind.begin(), kind.end(), [](const Check *check) {
                                   return fitsASchedule(*check);
                               });
        if (!scheduled) {
            addInFull(kind);
            return;
        }
        const QString name = nameOfKind(*kind.front());
        addHeading(2, name.isEmpty() ? kind.front()->title : name);
        addCheckSchedule(kind, m_said, m_to);
    }

    void addInFull(const Kind &kind)
    {
        const QString name = nameOfKind(*kind.front());
        const bool together = kind.size() > 1 && !name.isEmpty();
        std::vector<const CheckInput *> common;
        if (together) {
            addHeading(2, name);
            common = givenToAll(kind);
            addGivenRows(common, tr("given, the same for each"), {}, m_to);
        }
        for (const Check *check : kind) {
            addHeading(together ? 3 : 2, check->title);
            std::set<const CheckInput *> leaveOut;
            for (const CheckInput &input : check->inputs)
                if (std::any_of(common.begin(), common.end(), [&input](const CheckInput *one) {
                        return saysTheSame(*one, input);
                    }))
                    leaveOut.insert(&input);
            addWorked(m_from, *check, Working::Short, leaveOut, m_said, m_to);
        }
    }

    // Whatever figure of the book it is.
    static bool saysTheSame(const CheckInput &a, const CheckInput &b)
    {
        return a.symbol == b.symbol && a.shown == b.shown && a.origin.name == b.origin.name &&
               a.origin.path == b.origin.path && evidenceOf(a.origin) == evidenceOf(b.origin);
    }

    // Known, and no limit of any of them: that is told where a result is held against it.
    static std::vector<const CheckInput *> givenToAll(const Kind &kind)
    {
        std::vector<const CheckInput *> common;
        const Check &first = *kind.front();
        const std::set<const CheckInput *> told = toldAsLimits(first, heldLimits(first));
        for (const CheckInput &input : first.inputs) {
            const bool inAll = std::all_of(kind.begin(), kind.end(), [&input](const Check *check) {
                return std::any_of(
                    check->inputs.begin(), check->inputs.end(),
                    [&input](const CheckInput &one) { return saysTheSame(one, input); });
            });
            const bool twice =
                std::any_of(common.begin(), common.end(),
                            [&](const CheckInput *one) { return saysTheSame(*one, input); });
            if (inAll && !twice && !told.contains(&input) && !input.shown.isEmpty())
                common.push_back(&input);
        }
        return common;
    }

    const Sources &m_from;
    Blocks &m_to;
    SaidBefore m_said;
    int m_number = 0;
};

} // namespace

void addChecksWorked(const Sources &from, Blocks &to)
{
    Workings workings(from, to);
    if (from.working == Working::Full) {
        if (!from.checks.empty())
            workings.addAll();
        return;
    }
    workings.addFolded();
}

} // namespace ohmwright::sections
