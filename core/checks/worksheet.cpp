// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/worksheet.h"

#include "core/checks/margin_words.h"
#include "core/quantity/invariant.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Worksheet", text);
}

// How little a figure from there can be leaned on; 0 carries a verdict.
int weakness(Evidence evidence)
{
    switch (evidence) {
    case Evidence::Datasheet:
    case Evidence::Nameplate:
    case Evidence::ServiceManual:
    case Evidence::Measured:
        return 0;
    case Evidence::Seller:
        return 1;
    case Evidence::Community:
        return 2;
    case Evidence::Assumed:
        return 3;
    }
    return 3;
}

// Of the limit, so that a doubling of both changes nothing; a limit of zero is met or missed whole.
double marginOf(double value, double limit, Tighter tighter)
{
    const double spare = tighter == Tighter::Lower ? limit - value : value - limit;
    if (limit == 0.0)
        return spare == 0.0 ? 0.0 : std::copysign(1.0, spare);
    return spare / std::abs(limit);
}

Verdict verdictOf(double margin)
{
    return margin < 0 ? Verdict::Fails : margin < kTightWithin ? Verdict::Tight : Verdict::Holds;
}

Unit unitCalled(QStringView symbol)
{
    const std::optional<Unit> known = symbol.isEmpty() ? Unit() : Unit::fromSymbol(symbol);
    require(known.has_value(), "a check shows its figures in units the program knows");
    return *known;
}

QString shownIn(Unit unit, double si)
{
    if (!std::isfinite(si))
        return tr("not a number");
    return showAmount(Amount::fromSi(si, unit), NumberStyle::pointDecimal(), 4);
}

} // namespace

QString showSi(double si, QStringView unit)
{
    return shownIn(unitCalled(unit), si);
}

double limitThatTurnsSi(double si, Verdict verdict)
{
    const double least = verdict == Verdict::Fails ? si : si / (1 - kTightWithin);
    if (!(least > 0) || !std::isfinite(least))
        return least;
    const double lastDigit = std::pow(10.0, std::floor(std::log10(least)) - 3);
    constexpr double kNoise = 1e-6; // of binary arithmetic, in last digits
    return std::ceil(least / lastDigit - kNoise) * lastDigit;
}

QString spokenOf(Evidence evidence)
{
    switch (evidence) {
    case Evidence::Seller:
        return tr("a seller's word");
    case Evidence::Community:
        return tr("hearsay");
    case Evidence::Assumed:
        return tr("an assumption");
    default:
        return wordOf(evidence);
    }
}

bool isWeak(Evidence evidence)
{
    return weakness(evidence) > 0;
}

Worksheet::Worksheet(QString id, QString title, Protects protects)
{
    m_check.id = std::move(id);
    m_check.title = std::move(title);
    m_check.protects = protects;
}

void Worksheet::Basis::weigh(Evidence evidence, const QString &name, const QString &path)
{
    if (!weakest || weakness(*weakest) < weakness(evidence)) {
        weakest = evidence;
        asWeak.clear();
    }
    const std::pair<QString, QString> input{name, path};
    if (*weakest == evidence && std::ranges::find(asWeak, input) == asWeak.end())
        asWeak.push_back(input);
}

void Worksheet::Basis::weigh(const Basis &other)
{
    for (const auto &[name, path] : other.asWeak)
        weigh(*other.weakest, name, path);
}

bool Worksheet::Basis::isWeak() const
{
    return weakest && ohmwright::isWeak(*weakest);
}

QString Worksheet::Basis::told() const
{
    const QString first = tr("%1 for %2").arg(spokenOf(*weakest), asWeak.front().first);
    return asWeak.size() > 1 ? tr("%1 and %2 more").arg(first).arg(asWeak.size() - 1) : first;
}

double Worksheet::takeSi(std::optional<double> si, const Origin &origin, QStringView symbol,
                         QStringView unit, double least, double most)
{
    CheckInput input;
    input.origin = origin;
    input.symbol = symbol.toString();
    if (!si) {
        m_check.unknowns.append(origin.name);
        m_check.inputs.push_back(std::move(input));
        return 0.0;
    }
    const Unit known = unitCalled(unit);
    input.shown = shownIn(known, *si);
    if (std::isfinite(*si))
        input.value = Amount::fromSi(*si, known);
    const bool possible = std::isfinite(*si) && *si >= least && *si <= most;
    if (!possible)
        refuse(tr("%1 cannot be %2.").arg(origin.name, input.shown));
    m_basis.weigh(origin);
    m_check.inputs.push_back(std::move(input));
    return possible ? *si : 0.0;
}

void Worksheet::takeChoice(const Origin &origin, QString word)
{
    CheckInput input;
    input.origin = origin;
    if (word.isEmpty())
        m_check.unknowns.append(origin.name);
    else
        m_basis.weigh(origin);
    input.shown = std::move(word);
    m_check.inputs.push_back(std::move(input));
}

void Worksheet::stepText(QString what, QString formula, QString worked, QString result)
{
    m_justCompared = false;
    m_check.steps.push_back(
        {std::move(what), std::move(formula), std::move(worked), std::move(result)});
}

Verdict Worksheet::compare(QString what, double value, double limit, Tighter tighter,
                           QStringView unit, QString limitFrom, double uncertainty)
{
    m_justCompared = false;
    std::optional<Basis> rests = std::exchange(m_rests, std::nullopt);
    if (!std::isfinite(value) || !std::isfinite(limit)) {
        // a figure was refused as zero, and something was divided by it
        refuse(tr("%1 cannot be worked out from these figures.").arg(what));
        return Verdict::Unknown;
    }
    Comparison c;
    c.what = std::move(what);
    const Unit known = unitCalled(unit);
    c.value = shownIn(known, value);
    c.relation = tighter == Tighter::Lower ? QStringLiteral("≤") : QStringLiteral("≥");
    c.limit = shownIn(known, limit);
    c.limitFrom = std::move(limitFrom);
    c.margin = marginOf(value, limit, tighter);
    if (uncertainty > 0)
        c.value += tr(" ± %1").arg(showSi(uncertainty, u"%"));
    if (c.margin >= 0 && uncertainty > 0) {
        // what the reading may stand for at worst; where only the bare one keeps to it, nothing is
        // to spare
        const double worst =
            value * (tighter == Tighter::Lower ? 1 + uncertainty : 1 - uncertainty);
        c.margin = std::max(0.0, marginOf(worst, limit, tighter));
    }
    c.verdict = verdictOf(c.margin);
    const Verdict verdict = c.verdict;
    m_check.comparisons.push_back(std::move(c));
    m_bases.push_back(rests ? std::move(*rests) : m_basis);
    m_mends.emplace_back();
    m_justCompared = true;
    return verdict;
}

void Worksheet::loosen(double value, double published, Tighter tighter, Loosened told)
{
    const Verdict verdict = verdictOf(marginOf(value, published, tighter));
    m_published = std::max(m_published.value_or(Verdict::Holds), verdict);
    const auto isTold = [&](const Loosened &one) {
        return one == told;
    };
    if (!std::ranges::any_of(m_check.loosened, isTold)) // two rows may be held to it
        m_check.loosened.push_back(std::move(told));
}

QString Worksheet::ownThreshold(const QString &reason)
{
    return reason.isEmpty() ? tr("own threshold") : QString(tr("own threshold: ") + reason);
}

// A sentence names a few; the list of unknowns has them all.
QString Worksheet::firstOf(const QStringList &names)
{
    constexpr qsizetype kMost = 3;
    if (names.size() <= kMost + 1)
        return names.join(QStringLiteral(", "));
    return tr("%1 and %2 more")
        .arg(names.first(kMost).join(QStringLiteral(", ")))
        .arg(names.size() - kMost);
}

QString Worksheet::verdictLine() const
{
    QString line;
    const double margin = m_check.margin.value_or(0);
    switch (m_check.verdict) {
    case Verdict::Holds:
        line = tr("Holds with %1").arg(marginWords(margin));
        break;
    case Verdict::Tight:
        line = tr("Tight: %1").arg(marginWords(margin));
        break;
    case Verdict::Fails:
        line = margin < -1 ? tr("Fails at %1").arg(marginWords(margin))
                           : tr("Fails by %1").arg(marginFigure(-margin));
        break;
    case Verdict::Unknown:
        line = !m_check.refusals.isEmpty() ? tr("Unknown: %1").arg(m_check.refusals.front())
               : m_notMeasured             ? tr("Unknown: not measured yet")
               : !m_check.unknowns.isEmpty()
                   ? tr("Unknown for want of %1").arg(firstOf(m_check.unknowns))
               : !m_check.doubts.isEmpty() ? tr("Unknown: %1").arg(m_check.doubts.front())
                                           : tr("Unknown: nothing to hold it against");
        break;
    }
    while (line.endsWith(QLatin1Char('.')))
        line.chop(1);
    // what is not known decides an unknown one, not what it would rest on
    if (m_check.verdict != Verdict::Unknown && m_basis.isWeak())
        line += tr(", resting on %1").arg(m_basis.told());
    if (m_elsewhere.isWeak())
        line += m_basis.isWeak() ? tr("; elsewhere on %1").arg(m_elsewhere.told())
                                 : tr("; elsewhere resting on %1").arg(m_elsewhere.told());
    return line + QLatin1Char('.');
}

std::vector<std::size_t> Worksheet::narrowestFirst() const
{
    std::vector<std::size_t> order(m_check.comparisons.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {},
                             [this](std::size_t one) { return m_check.comparisons[one].margin; });
    return order;
}

QStringList Worksheet::allTurnedBy(const std::vector<std::size_t> &order) const
{
    if (m_check.verdict == Verdict::Holds)
        return {}; // there is nothing to turn
    QStringList all;
    if (m_notMeasured && isIncomplete())
        all << tr("The test done, and what it reads recorded.");
    else if (m_check.verdict == Verdict::Unknown && !m_check.unknowns.isEmpty())
        all << tr("Finding out %1.").arg(firstOf(m_check.unknowns));
    // a tight one does not keep a failing check from anything
    const Verdict least = m_check.verdict == Verdict::Fails ? Verdict::Fails : Verdict::Tight;
    for (const std::size_t one : order)
        if (m_check.comparisons[one].verdict >= least && !m_mends[one].isEmpty())
            all << m_mends[one];
    all << m_check.turnedBy;
    all.removeDuplicates();
    return all;
}

Check Worksheet::finish(QString source)
{
    m_check.source = std::move(source);
    const bool open = isIncomplete() || !m_check.doubts.isEmpty() || m_check.comparisons.empty();
    const std::vector<std::size_t> order = narrowestFirst();
    // the narrowest has the worst verdict as well
    Verdict compared = Verdict::Holds;
    if (!order.empty()) {
        m_check.margin = m_check.comparisons[order.front()].margin;
        compared = m_check.comparisons[order.front()].verdict;
    }
    m_check.verdict = open ? std::max(compared, Verdict::Unknown) : compared;
    // an unknown one may rest on any of them yet
    if (m_check.verdict != Verdict::Unknown) {
        m_basis = {};
        for (const std::size_t one : order) {
            const bool decides = m_check.verdict == Verdict::Fails
                                     ? m_check.comparisons[one].verdict == Verdict::Fails
                                     : one == order.front();
            if (decides)
                m_basis.weigh(m_bases[one]);
            else if (m_check.verdict != Verdict::Fails)
                m_elsewhere.weigh(m_bases[one]);
        }
        if (m_basis.weakest && m_elsewhere.weakest &&
            weakness(*m_elsewhere.weakest) <= weakness(*m_basis.weakest))
            m_elsewhere = {}; // what decides stands for them
    }
    m_check.weakest = m_basis.weakest;
    if (!m_basis.asWeak.empty())
        m_check.weakestInput = m_basis.asWeak.front().first;
    if (m_published) // what is not loosened counts as it stands
        m_check.publishedVerdict = std::max(m_check.verdict, *m_published);
    m_check.turnedBy = allTurnedBy(order);
    m_check.sentence = verdictLine();
    return std::move(m_check);
}

} // namespace ohmwright
