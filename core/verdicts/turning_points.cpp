// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/turning_points.h"

#include "core/checks/worksheet.h"
#include "core/parts/figures.h"
#include "core/records/check_figures.h"
#include "core/verdicts/book_inputs.h"
#include "core/verdicts/judge_book.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

namespace ohmwright {

namespace {

using Way = TurningPoint::Way;
using Side = TurningPoint::Side;

// How a trial ended: values outside physics tell nothing of what lies before them.
enum class Trial { Turned, Same, Refused };

// Where a known value is tried, from near to far, as shares of it.
constexpr std::array kUpward{1.1, 1.25, 1.5, 2.0};
constexpr std::array kDownward{0.9, 0.8, 0.65, 0.5};
// Kelvin or degrees Celsius: a share of a temperature means nothing.
constexpr std::array kWarmer{5.0, 10.0, 20.0, 40.0};
// Halvings of the way between a value that does not turn it and one that does.
constexpr int kHalvings = 9;
constexpr double kLeastMagnitude = 1e-6;
constexpr double kMostMagnitude = 1e9;

// One input in one direction: the values to try, then the border between two of them.
struct Probe
{
    const CheckInput *input = nullptr;
    Unit unit;
    Way way = Way::Mended;
    std::vector<double> values; // in `unit`, outward from the present one; else ascending
    std::vector<Trial> ended;   // of the values tried so far
    bool known = true;
    bool isTried = false;               // that the book has the value shown at this address
    std::optional<double> same, turned; // the border lies between these
    int halved = 0;
    std::vector<double> rounded; // still to try, from the back: the nearest is last
};

std::optional<Measure> measureAt(const QString &address)
{
    const std::optional<InputAddress> at = parseInputAddress(address);
    if (!at)
        return std::nullopt;
    if (const auto *rating = std::get_if<RatingAddress>(&*at))
        return measureOf(rating->figure.quantity);
    if (const auto *figure = std::get_if<FigureAddress>(&*at))
        if (const FigureInfo *info = checkFigure(figure->figure))
            return info->measure;
    return std::nullopt;
}

std::vector<double> outward(double from, Unit unit, bool upward)
{
    std::vector<double> values;
    if (unit.measure() == Measure::Temperature) {
        for (const double kelvin : kWarmer)
            values.push_back(from + (upward ? kelvin : -kelvin));
        return values;
    }
    const bool larger = upward == (from > 0);
    for (const double share : larger ? kUpward : kDownward)
        values.push_back(from * share);
    return values;
}

std::vector<double> allMagnitudes(Unit unit)
{
    std::vector<double> values;
    if (unit.measure() == Measure::Temperature) {
        constexpr double kColdest = -60;
        constexpr double kHottest = 300;
        for (double celsius = kColdest; celsius <= kHottest; celsius += 20)
            values.push_back(celsius);
        return values;
    }
    for (double value = kLeastMagnitude; value <= kMostMagnitude; value *= std::sqrt(10.0))
        values.push_back(value);
    return values;
}

// Three significant digits, upward or downward.
double roundedTo3(double value, bool upward)
{
    if (value == 0)
        return 0;
    const double grain = std::pow(10.0, std::floor(std::log10(std::abs(value))) - 2);
    constexpr double kSlack = 1e-9; // 2.5 is not to become 2.51
    return grain *
           (upward ? std::ceil(value / grain - kSlack) : std::floor(value / grain + kSlack));
}

} // namespace

struct TurningSearch::State
{
    const Records *records = nullptr;
    QDate today;
    Check check;
    For what = For::Both;
    std::vector<Probe> probes; // the one at the back is being tried
    std::vector<TurningPoint> found;
    std::map<QString, bool> owns; // by address: whether the value shown lies there

    void addProbes();
    [[nodiscard]] std::optional<Check> judged(const Probe &probe, double value) const;
    void add(const CheckInput &input, Way way, bool upward);
    [[nodiscard]] Trial tried(const Probe &probe, double value, Verdict *became = nullptr) const;
    [[nodiscard]] bool isTurned(Way way, const Check &now) const;
    [[nodiscard]] bool isOwn(const Probe &probe);
    bool step(Probe &probe); // false when it is done with
    static bool findBorder(Probe &probe);
    static bool isOneSided(const Probe &probe);
    void keep(const Probe &probe, double value, Verdict verdict);
};

void TurningSearch::State::add(const CheckInput &input, Way way, bool upward)
{
    Probe probe;
    probe.input = &input;
    probe.way = way;
    probe.unit = input.value->unit();
    probe.values = outward(input.value->number(), probe.unit, upward);
    probe.same = input.value->number();
    probes.push_back(std::move(probe));
}

void TurningSearch::State::addProbes()
{
    std::set<QString> addresses;
    const bool oneUnknown = check.unknowns.size() == 1 && check.doubts.isEmpty();
    const bool canBeMended = check.refusals.isEmpty() &&
                             (check.verdict == Verdict::Fails || check.verdict == Verdict::Tight ||
                              (check.verdict == Verdict::Unknown && check.unknowns.isEmpty()));
    const bool canBeSpoilt =
        what == For::Both && (check.verdict == Verdict::Holds || check.verdict == Verdict::Tight);
    for (const CheckInput &input : check.inputs) {
        if (input.origin.field.isEmpty() || !addresses.insert(input.origin.field).second)
            continue;
        if (!input.value) {
            const std::optional<Measure> measure = measureAt(input.origin.field);
            if (check.verdict == Verdict::Unknown && oneUnknown && measure) {
                Probe probe;
                probe.input = &input;
                probe.known = false;
                probe.unit = *measure == Measure::Temperature ? *Unit::fromSymbol(u"°C")
                                                              : Unit::ofMeasure(*measure).front();
                probe.values = allMagnitudes(probe.unit);
                probes.push_back(std::move(probe));
            }
            continue;
        }
        if (input.value->number() == 0 && input.value->measure() != Measure::Temperature)
            continue;
        for (const bool upward : {true, false}) {
            if (canBeMended)
                add(input, Way::Mended, upward);
            if (canBeSpoilt && isWeak(input.origin.evidence))
                add(input, Way::Spoilt, upward);
        }
    }
}

bool TurningSearch::State::isTurned(Way way, const Check &now) const
{
    if (way == Way::Spoilt)
        return now.verdict == Verdict::Fails;
    if (now.unknowns.size() > check.unknowns.size() || now.doubts.size() > check.doubts.size())
        return false;
    switch (check.verdict) {
    case Verdict::Fails:
        return now.verdict != Verdict::Fails;
    case Verdict::Unknown:
        return now.verdict == Verdict::Holds || now.verdict == Verdict::Tight;
    case Verdict::Tight:
        return now.verdict == Verdict::Holds;
    case Verdict::Holds:
        break;
    }
    return false;
}

std::optional<Check> TurningSearch::State::judged(const Probe &probe, double value) const
{
    const Instead instead{probe.input->origin.field, Amount(value, probe.unit).si(), check.subject};
    for (Check &now : judgeBook(BookInputs(*records, today, instead), check.id.toStdString()))
        if (now.subject == check.subject && now.title == check.title)
            return std::move(now);
    return std::nullopt;
}

Trial TurningSearch::State::tried(const Probe &probe, double value, Verdict *became) const
{
    const std::optional<Check> now = judged(probe, value);
    if (!now || now->refusals.size() > check.refusals.size())
        return Trial::Refused;
    if (became)
        *became = now->verdict;
    return isTurned(probe.way, *now) ? Trial::Turned : Trial::Same;
}

// An input worked out from others leads to one of these, where its own value would mean something
// else: put there as it is shown, it has to be shown again and change nothing.
bool TurningSearch::State::isOwn(const Probe &probe)
{
    const auto [known, isNew] = owns.try_emplace(probe.input->origin.field, false);
    if (!isNew)
        return known->second;
    const std::optional<Check> now = judged(probe, *probe.same);
    if (!now || now->verdict != check.verdict)
        return false;
    const auto again = std::ranges::find_if(now->inputs, [&](const CheckInput &input) {
        return input.origin.field == probe.input->origin.field &&
               input.origin.name == probe.input->origin.name;
    });
    known->second = again != now->inputs.end() && again->shown == probe.input->shown;
    return known->second;
}

// Whether all that was tried beyond the border is turned as well: else "or less" would be untrue.
bool TurningSearch::State::isOneSided(const Probe &probe)
{
    const auto first = std::find(probe.ended.begin(), probe.ended.end(), Trial::Turned);
    return std::find(first, probe.ended.end(), Trial::Same) == probe.ended.end();
}

// From what was tried to the border between two neighbours. Of an unknown value only one with all
// above it, or all below it, turned: a window would need two borders.
bool TurningSearch::State::findBorder(Probe &probe)
{
    if (!probe.known && probe.ended.front() == Trial::Turned && !isOneSided(probe)) {
        std::reverse(probe.values.begin(), probe.values.end());
        std::reverse(probe.ended.begin(), probe.ended.end());
    }
    const auto first = std::find(probe.ended.begin(), probe.ended.end(), Trial::Turned);
    if (first == probe.ended.end() || !isOneSided(probe))
        return false;
    const auto at = first - probe.ended.begin();
    probe.turned = probe.values[static_cast<std::size_t>(at)];
    if (at > 0)
        probe.same = probe.values[static_cast<std::size_t>(at - 1)];
    return probe.same.has_value();
}

void TurningSearch::State::keep(const Probe &probe, double value, Verdict verdict)
{
    TurningPoint point;
    point.input = probe.input->origin.name;
    point.address = probe.input->origin.field;
    point.way = probe.way;
    point.side = *probe.turned > *probe.same ? Side::AtLeast : Side::AtMost;
    point.value = Amount(value, probe.unit);
    point.shown = showSi(point.value.si(), probe.unit.symbol());
    point.instead = probe.input->shown;
    point.verdict = verdict;
    found.push_back(std::move(point));
}

bool TurningSearch::State::step(Probe &probe)
{
    if (probe.known && !probe.isTried) {
        probe.isTried = true;
        return isOwn(probe);
    }
    if (probe.ended.size() < probe.values.size()) {
        probe.ended.push_back(tried(probe, probe.values[probe.ended.size()]));
        return probe.ended.size() < probe.values.size() || findBorder(probe);
    }
    if (probe.halved < kHalvings) {
        const double between = (*probe.same + *probe.turned) / 2;
        (tried(probe, between) == Trial::Turned ? probe.turned : probe.same) = between;
        if (++probe.halved == kHalvings) {
            const bool upward = *probe.turned > *probe.same;
            const double near = roundedTo3(*probe.turned, upward);
            const double nearer = roundedTo3(*probe.turned, !upward); // the halving ends beside it
            probe.rounded = {*probe.turned, near + (near - nearer), near, nearer};
        }
        return true;
    }
    Verdict became = Verdict::Holds;
    const double value = probe.rounded.back();
    probe.rounded.pop_back();
    if (tried(probe, value, &became) != Trial::Turned)
        return !probe.rounded.empty();
    keep(probe, value, became);
    return false;
}

TurningSearch::TurningSearch(const Records &records, QDate today, Check check, For what)
    : m_state(std::make_unique<State>())
{
    m_state->records = &records;
    m_state->today = today;
    m_state->check = std::move(check);
    m_state->what = what;
    m_state->addProbes();
}

TurningSearch::~TurningSearch() = default;
TurningSearch::TurningSearch(TurningSearch &&) noexcept = default;
TurningSearch &TurningSearch::operator=(TurningSearch &&) noexcept = default;

bool TurningSearch::step()
{
    std::vector<Probe> &probes = m_state->probes;
    if (!probes.empty() && !m_state->step(probes.back()))
        probes.pop_back();
    return !probes.empty();
}

std::vector<TurningPoint> TurningSearch::found() const
{
    // how far away it is; what is not known is as far as it gets
    const auto distance = [this](const TurningPoint &point) {
        for (const CheckInput &input : m_state->check.inputs)
            if (input.origin.field == point.address && input.value)
                return std::abs(point.value.si() / input.value->si() - 1);
        return 0.0;
    };
    std::vector<TurningPoint> nearest = m_state->found;
    std::stable_sort(nearest.begin(), nearest.end(),
                     [&](const TurningPoint &a, const TurningPoint &b) {
                         return std::pair(a.way, distance(a)) < std::pair(b.way, distance(b));
                     });
    std::set<std::pair<Way, QString>> told;
    std::erase_if(nearest, [&](const TurningPoint &point) {
        return !told.insert({point.way, point.address}).second;
    });
    for (const Way way : {Way::Mended, Way::Spoilt}) {
        std::size_t kept = 0;
        std::erase_if(
            nearest, [&](const TurningPoint &point) { return point.way == way && ++kept > kMost; });
    }
    return nearest;
}

std::vector<TurningPoint> turningPoints(const Records &records, QDate today, const Check &check,
                                        TurningSearch::For what)
{
    TurningSearch search(records, today, check, what);
    while (search.step()) {
    }
    return search.found();
}

} // namespace ohmwright
