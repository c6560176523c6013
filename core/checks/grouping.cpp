// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/grouping.h"

#include "core/checks/robust_statistics.h"
#include "core/checks/worksheet.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmwright {

namespace {

constexpr double kWeek = 7 * 86400;
constexpr double kMostCount = 100'000; // modules, groups, cells: beyond it is a slip of the pen

QString tr(const char *text)
{
    return QCoreApplication::translate("Grouping", text);
}

bool isWhole(double number)
{
    return number == std::floor(number);
}

bool isPositive(const std::optional<double> &number)
{
    return number && std::isfinite(*number) && *number > 0;
}

template <class Q>
std::optional<double> siOf(const Given<Q> &given)
{
    return given.value ? std::optional(given.value->si()) : std::nullopt;
}

bool isGroupable(const GroupingInputs &in)
{
    const auto isCount = [](const Given<double> &count) {
        return isPositive(count.value) && isWhole(*count.value) && *count.value <= kMostCount;
    };
    return !in.modules.empty() && isCount(in.groupsInSeries) && isCount(in.modulesInGroup) &&
           isCount(in.cellsInModule) && isPositive(siOf(in.rest)) &&
           std::all_of(in.modules.begin(), in.modules.end(), [](const MeasuredModule &m) {
               const auto lost = siOf(m.lost);
               return isPositive(siOf(m.capacity)) && isPositive(siOf(m.resistance)) && lost &&
                      std::isfinite(*lost) && *lost >= 0;
           });
}

// Figures of all modules side by side.
struct Columns
{
    std::vector<double> capacity, resistance, lostInWeek; // Ah·s, Ω, V a cell
};

Columns columnsOf(const GroupingInputs &in)
{
    Columns columns;
    const double perWeek = kWeek / in.rest.value->si() / *in.cellsInModule.value;
    for (const MeasuredModule &module : in.modules) {
        columns.capacity.push_back(module.capacity.value->si());
        columns.resistance.push_back(module.resistance.value->si());
        columns.lostInWeek.push_back(module.lost.value->si() * perWeek);
    }
    return columns;
}

QString standsOutReason(const GroupingInputs &in, std::size_t i, const Columns &columns,
                        const Columns &scores)
{
    const auto isOutlier = [&in](double value, double score, double median) {
        return std::abs(score) > in.standsOut.inForce() &&
               std::abs(value - median) > in.offMedian.inForce() * median;
    };
    const QString text = tr("%1 %2 stands out from the median %3 by %4 (score %5).");
    const double capacity = columns.capacity[i], capacities = medianOf(columns.capacity);
    if (isOutlier(capacity, scores.capacity[i], capacities))
        return text.arg(tr("Its capacity of"), showSi(capacity, u"Ah"), showSi(capacities, u"Ah"),
                        showSi(capacity / capacities - 1, u"%"), showSi(scores.capacity[i], u""));
    const double ohm = columns.resistance[i], ohms = medianOf(columns.resistance);
    if (isOutlier(ohm, scores.resistance[i], ohms))
        return text.arg(tr("Its resistance of"), showSi(ohm, u"mΩ"), showSi(ohms, u"mΩ"),
                        showSi(ohm / ohms - 1, u"%"), showSi(scores.resistance[i], u""));
    return {};
}

std::vector<SetAside> setAside(const GroupingInputs &in, const Columns &columns,
                               const Columns &scores)
{
    std::vector<SetAside> out;
    const double mostLost = in.lostInWeek.inForce().si();
    // standing out counts only where what is lost can be told from the meter's last digit
    constexpr double kReadable = 0.1;
    for (std::size_t i = 0; i < in.modules.size(); ++i) {
        const double lost = columns.lostInWeek[i];
        QString reason = standsOutReason(in, i, columns, scores);
        if (lost > mostLost) {
            reason = tr("It loses %1 a cell in a week, more than %2.")
                         .arg(showSi(lost, u"mV"), showSi(mostLost, u"mV"));
        } else if (reason.isEmpty() && scores.lostInWeek[i] > in.standsOut.inForce() &&
                   lost - medianOf(columns.lostInWeek) > kReadable * mostLost) {
            reason = tr("It loses %1 a cell in a week where half the others lose at most %2.")
                         .arg(showSi(lost, u"mV"), showSi(medianOf(columns.lostInWeek), u"mV"));
        }
        if (!reason.isEmpty())
            out.push_back({i, reason});
    }
    return out;
}

// The modules to use: of those not set aside, the ones nearest to the rest.
std::vector<std::size_t> nearest(const std::vector<SetAside> &out, const Columns &scores,
                                 std::size_t wanted, std::vector<std::size_t> &spare)
{
    std::vector<std::size_t> left;
    for (std::size_t i = 0; i < scores.capacity.size(); ++i) {
        if (std::none_of(out.begin(), out.end(), [i](const SetAside &s) { return s.module == i; }))
            left.push_back(i);
    }
    if (left.size() < wanted)
        return {};
    const auto off = [&scores](std::size_t i) {
        return std::max(std::abs(scores.capacity[i]), std::abs(scores.resistance[i]));
    };
    std::stable_sort(left.begin(), left.end(),
                     [&off](std::size_t a, std::size_t b) { return off(a) < off(b); });
    const auto end = left.begin() + static_cast<std::ptrdiff_t>(wanted);
    spare.assign(end, left.end());
    left.erase(end, left.end());
    std::sort(left.begin(), left.end());
    std::sort(spare.begin(), spare.end());
    return left;
}

struct GroupSums
{
    std::vector<double> capacity, resistance; // of each group
    double worstShare = 1;                    // the most a module carries, of its share by capacity
    [[nodiscard]] static double spread(const std::vector<double> &values)
    {
        const auto ends = std::minmax_element(values.begin(), values.end());
        double sum = 0;
        for (const double value : values)
            sum += value;
        return (*ends.second - *ends.first) / (sum / static_cast<double>(values.size()));
    }
};

GroupSums sumsOf(const Groups &groups, const Columns &columns)
{
    GroupSums sums;
    for (const auto &group : groups) {
        double capacity = 0, conductance = 0;
        for (const std::size_t i : group) {
            capacity += columns.capacity[i];
            conductance += 1 / columns.resistance[i];
        }
        sums.capacity.push_back(capacity);
        sums.resistance.push_back(1 / conductance);
        for (const std::size_t i : group) {
            const double share = 1 / columns.resistance[i] / conductance;
            sums.worstShare = std::max(sums.worstShare, share / (columns.capacity[i] / capacity));
        }
    }
    return sums;
}

void takeModules(Worksheet &sheet, const GroupingInputs &in)
{
    constexpr double kLeast = std::numeric_limits<double>::min(); // more than nothing
    for (const MeasuredModule &module : in.modules) {
        sheet.take(module.capacity, u"Q", u"Ah", kLeast);
        sheet.take(module.resistance, u"R", u"mΩ", kLeast);
        sheet.take(module.lost, u"ΔU", u"mV", 0);
    }
}

double takeCount(Worksheet &sheet, const Given<double> &count, QStringView symbol)
{
    const double number = sheet.take(count, symbol, u"", 1, kMostCount);
    if (!isWhole(number))
        sheet.refuse(tr("%1 is a whole number.").arg(count.origin.name));
    return number;
}

void tellGroups(Worksheet &sheet, const GroupingInputs &in, const ModuleGrouping &made,
                const GroupSums &sums)
{
    Plot bars{tr("Capacity of each group"), tr("group"), {}, tr("capacity"),
              QStringLiteral("Ah"),         {},          {}};
    PlotSeries series{tr("capacity"), {}, true};
    for (std::size_t g = 0; g < made.groups.size(); ++g) {
        QStringList names;
        for (const std::size_t i : made.groups[g])
            names.append(in.modules[i].name);
        sheet.stepText(tr("group %1").arg(g + 1), QStringLiteral("Q = ΣQᵢ, R = 1/Σ(1/Rᵢ)"),
                       names.join(QStringLiteral(" ∥ ")),
                       QString(showSi(sums.capacity[g], u"Ah") + QStringLiteral(", ") +
                               showSi(sums.resistance[g], u"mΩ")));
        bars.barNames.append(QString::number(g + 1));
        series.points.emplace_back(static_cast<double>(g + 1), sums.capacity[g] / 3600);
    }
    bars.series.push_back(std::move(series));
    sheet.plot(std::move(bars));
}

void tellBound(Worksheet &sheet, const GroupingInputs &in, const ModuleGrouping &made,
               const GroupSums &sums, const Columns &columns)
{
    const QString how =
        made.proven ? tr("proven: no split comes nearer") : tr("no split comes below the bound");
    sheet.stepText(tr("distance from the bound"), QStringLiteral("w·ΔQ/Q̄ + (1 − w)·ΔG/Ḡ"),
                   tr("%1 found, bound %2, w = %3; %4")
                       .arg(showSi(made.cost, u"%"), showSi(made.bound, u"%"),
                            showSi(in.weightOfCapacity.value.value_or(0), u""), how),
                   showSi(std::max(0.0, made.cost - made.bound), u"%"));
    std::vector<double> used;
    for (const auto &group : made.groups) {
        for (const std::size_t i : group)
            used.push_back(columns.capacity[i]);
    }
    const double best = bestSmallestSum(used, made.groups.front().size());
    const double weakest = *std::min_element(sums.capacity.begin(), sums.capacity.end());
    sheet.stepText(tr("weakest group"), QStringLiteral("Qₘᵢₙ"),
                   tr("at best %1, from the mean and the smallest module").arg(showSi(best, u"Ah")),
                   showSi(weakest, u"Ah"));
    sheet.stepText(tr("current of a module, of its share by capacity"),
                   QStringLiteral("(Gᵢ/ΣG)/(Qᵢ/ΣQ)"), tr("the most within any group"),
                   showSi(sums.worstShare, u""));
}

void tellJoining(Worksheet &sheet, const Given<Voltage> &difference, const Columns &columns)
{
    const Voltage u = sheet.take(difference, u"ΔU", u"mV", 0);
    if (sheet.isIncomplete())
        return;
    std::vector<double> sorted = columns.resistance;
    std::sort(sorted.begin(), sorted.end());
    const Resistance loop = ohms(sorted.size() < 2 ? sorted[0] : sorted[0] + sorted[1]);
    sheet.step(tr("current at the moment two are joined"), QStringLiteral("I = ΔU/(R₁ + R₂)"),
               QString(show(u, u"mV") + QStringLiteral(" / ") + show(loop, u"mΩ")), u / loop, u"A");
}

} // namespace

ModuleGrouping groupModules(const GroupingInputs &in)
{
    ModuleGrouping made;
    if (!isGroupable(in))
        return made;
    const Columns columns = columnsOf(in);
    const Columns scores{modifiedZScores(columns.capacity), modifiedZScores(columns.resistance),
                         modifiedZScores(columns.lostInWeek)};
    made.setAside = setAside(in, columns, scores);
    const auto size = static_cast<std::size_t>(*in.modulesInGroup.value);
    const std::size_t wanted = size * static_cast<std::size_t>(*in.groupsInSeries.value);
    const std::vector<std::size_t> used = nearest(made.setAside, scores, wanted, made.spare);
    if (used.empty())
        return made;

    std::vector<PairOfValues> items;
    items.reserve(used.size());
    for (const std::size_t i : used)
        items.push_back({columns.capacity[i], 1 / columns.resistance[i]});
    const BalancedGroups split =
        groupEvenly(items, size, std::clamp(in.weightOfCapacity.value.value_or(0.5), 0.0, 1.0));
    for (const auto &group : split.groups) {
        made.groups.emplace_back();
        for (const std::size_t item : group)
            made.groups.back().push_back(used[item]);
    }
    made.cost = split.cost;
    made.bound = split.bound;
    made.proven = split.proven;
    return made;
}

Check judgeGrouping(const GroupingInputs &in)
{
    Worksheet sheet(QStringLiteral("grouping"), tr("Modules into parallel groups"), Protects::Pack);
    sheet.about(in.pack);
    sheet.caution(QStringLiteral("battery"));
    sheet.afterwards(
        tr("Then bring the modules of each group to one voltage, through a resistor or a "
           "current-limited supply, and measure between every two before they are joined: joined "
           "as they are, the fuller one empties itself into the other."));
    const QString source =
        tr("Balanced differencing (Karmarkar and Karp 1982; Michiels and others 2003), exchanges, "
           "branch and bound for small sets; outliers by Iglewicz and Hoaglin 1993");

    const double groups = takeCount(sheet, in.groupsInSeries, u"m");
    const double size = takeCount(sheet, in.modulesInGroup, u"k");
    sheet.take(in.weightOfCapacity, u"w", u"%", 0, 1);
    const auto have = static_cast<double>(in.modules.size());
    // too few stays too few, whatever is not known about them
    const bool tooFew = !sheet.isIncomplete() && have < groups * size;
    takeCount(sheet, in.cellsInModule, u"n");
    const Duration rest = sheet.take(in.rest, u"t", u"d", 1);
    takeModules(sheet, in);
    if (sheet.isIncomplete() || tooFew) {
        if (tooFew)
            sheet.atLeast(tr("modules at hand"), have, groups * size, u"", tr("the layout"));
        sheet.turnedBy(tr("More modules of the same type, or a smaller layout."));
        return sheet.finish(source);
    }

    const ModuleGrouping made = groupModules(in);
    for (const SetAside &out : made.setAside)
        sheet.stepText(tr("set aside: %1").arg(in.modules[out.module].name), {}, out.reason, {});
    for (const std::size_t i : made.spare)
        sheet.stepText(tr("spare: %1").arg(in.modules[i].name), {},
                       tr("Not needed; of the good ones it is among the farthest from the rest."),
                       {});
    sheet.within(tr("rest between the two readings"), rest, in.leastRest, u"d");
    sheet.turnedBy(tr("A longer rest before the second reading of voltage."));
    if (made.groups.empty()) {
        sheet.atLeast(tr("modules left after setting aside"),
                      have - static_cast<double>(made.setAside.size()), groups * size, u"",
                      tr("the layout"));
        sheet.turnedBy(tr("More modules of the same type, or a smaller layout."));
        return sheet.finish(source);
    }

    const Columns columns = columnsOf(in);
    const GroupSums sums = sumsOf(made.groups, columns);
    tellGroups(sheet, in, made, sums);
    tellBound(sheet, in, made, sums, columns);
    if (in.differenceBeforeJoining)
        tellJoining(sheet, *in.differenceBeforeJoining, columns);
    const double capacities = GroupSums::spread(sums.capacity);
    const double resistances = GroupSums::spread(sums.resistance);
    sheet.within(tr("capacity, smallest to largest group"), capacities, in.capacitySpread, u"%");
    sheet.within(tr("resistance, smallest to largest group"), resistances, in.resistanceSpread,
                 u"%");
    sheet.turnedBy(tr("More modules to choose from, or a larger group: differences even out."));
    sheet.result(tr("%1 groups of %2, capacity within %3, resistance within %4; %5 set aside, %6 "
                    "spare")
                     .arg(showSi(groups, u""), showSi(size, u""), showSi(capacities, u"%"),
                          showSi(resistances, u"%"), QString::number(made.setAside.size()),
                          QString::number(made.spare.size())));
    return sheet.finish(source);
}

} // namespace ohmwright
