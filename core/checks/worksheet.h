// SPDX-License-Identifier: GPL-3.0-or-later
// Worksheet: the paper on which a check is worked. Inputs are taken onto it, steps written down,
// results held against limits; finish() reads the verdict off it.
//
//     Worksheet sheet("precharge", tr("Precharge"), Protects::Electronics);
//     const Voltage full = sheet.take(inputs.packVoltage, u"U", u"V");
//     if (sheet.isIncomplete())
//         return sheet.finish(source);
//     sheet.step(tr("stored energy"), "E = ½·C·U²", worked, energy, u"J");
//     sheet.atMost(tr("time to 95 %"), time, inputs.longestTime, u"s");
#pragma once

#include "core/checks/given.h"

#include <QStringView>

#include <initializer_list>
#include <limits>

namespace ohmwright {

// Margins below this are tight. Common practice, no published source.
inline constexpr double kTightWithin = 0.10;

// What a limit would have to be for the value to turn a verdict: that which it just meets where it
// fails, that which leaves enough to spare where it is tight.
// Rounded up to the digits that are shown.
double limitThatTurnsSi(double si, Verdict verdict);
template <class Q>
Q limitThatTurns(Q value, Verdict verdict)
{
    return Q::fromSi(limitThatTurnsSi(value.si(), verdict));
}

// "453.6 V": to four significant digits, in the unit named by its symbol. A plain number has the
// empty unit; "%" takes 0.95 as 95 %.
QString showSi(double si, QStringView unit);
template <class Q>
QString show(Q quantity, QStringView unit)
{
    return showSi(quantity.si(), unit);
}
inline QString show(double number, QStringView unit)
{
    return showSi(number, unit);
}

// "seller's word", "assumption", …: how a verdict's line speaks of weak evidence.
QString spokenOf(Evidence evidence);
// Papers, plate and measurements carry a verdict; a word, hearsay and an assumption must be told.
bool isWeak(Evidence evidence);

class Worksheet
{
public:
    Worksheet(QString id, QString title, Protects protects);

    void about(QString subject) { m_check.subject = std::move(subject); }

    // An input that applies. Zero, and the sheet incomplete, when it is not known or outside
    // `least`..`most` (SI; what physics allows, not what is usual).
    template <class Q>
    Q take(const Given<Q> &input, QStringView symbol, QStringView unit,
           double least = -std::numeric_limits<double>::infinity(),
           double most = std::numeric_limits<double>::infinity())
    {
        return Q::fromSi(takeSi(siOf(input.value), input.origin, symbol, unit, least, most));
    }
    double take(const Given<double> &input, QStringView symbol, QStringView unit,
                double least = -std::numeric_limits<double>::infinity(),
                double most = std::numeric_limits<double>::infinity())
    {
        return takeSi(input.value, input.origin, symbol, unit, least, most);
    }
    // A choice (material, installation), told in words.
    void takeChoice(const Origin &origin, QString word);

    // Some input that applies is not known or was refused.
    [[nodiscard]] bool isIncomplete() const
    {
        return !m_check.unknowns.isEmpty() || !m_check.refusals.isEmpty();
    }
    // For what cannot be told by one input's range: "The bore is wider than the rim."
    void refuse(QString sentence) { m_check.refusals.append(std::move(sentence)); }
    // Computing cannot decide it, whatever the figures: unknown, with the reason.
    void doubt(QString sentence) { m_check.doubts.append(std::move(sentence)); }

    // A test nobody has done: its verdict line says that, and not what is missing one by one.
    void notMeasured() { m_notMeasured = true; }

    template <class Q>
    void step(QString what, QString formula, QString worked, Q result, QStringView unit)
    {
        stepText(std::move(what), std::move(formula), std::move(worked), show(result, unit));
    }
    void stepText(QString what, QString formula, QString worked, QString result);

    // What the next comparison rests on: Givens, Chosens, curves, origins, and several or optional
    // ones of these, or pointers to them; those
    // that move its result most first, for of equally weak ones the first is named. A comparison
    // without it rests on all that was taken so far.
    template <class... Input>
    void restsOn(const Input &...inputs)
    {
        Basis basis;
        (weigh(basis, inputs), ...);
        m_rests = std::move(basis);
    }

    // Holds the value to a limit that is itself an input (already taken) or computed.
    template <class Q>
    Verdict atMost(QString what, Q value, Q limit, QStringView unit, QString limitFrom)
    {
        return compare(std::move(what), siOf(value), siOf(limit), Tighter::Lower, unit,
                       std::move(limitFrom));
    }
    template <class Q>
    Verdict atLeast(QString what, Q value, Q limit, QStringView unit, QString limitFrom)
    {
        return compare(std::move(what), siOf(value), siOf(limit), Tighter::Higher, unit,
                       std::move(limitFrom));
    }
    // Of a reading that is uncertain by that share of it, each way: the worst it may stand for is
    // held to the limit. Tight, with nothing to spare, where only the bare reading keeps to it.
    template <class Q>
    Verdict readAtMost(QString what, Q reading, double uncertainty, Q limit, QStringView unit,
                       QString limitFrom)
    {
        return compare(std::move(what), siOf(reading), siOf(limit), Tighter::Lower, unit,
                       std::move(limitFrom), uncertainty);
    }
    template <class Q>
    Verdict readAtLeast(QString what, Q reading, double uncertainty, Q limit, QStringView unit,
                        QString limitFrom)
    {
        return compare(std::move(what), siOf(reading), siOf(limit), Tighter::Higher, unit,
                       std::move(limitFrom), uncertainty);
    }
    // Holds the value to a threshold: at most one that is tighter when lower, at least the others.
    template <class Q>
    Verdict within(const QString &what, Q value, const Threshold<Q> &threshold, QStringView unit)
    {
        if (threshold.isLoosened())
            loosen(siOf(value), siOf(threshold.published), threshold.tighter,
                   {threshold.name, show(threshold.published, unit),
                    show(threshold.inForce(), unit), threshold.source, threshold.reason});
        return compare(what, siOf(value), siOf(threshold.inForce()), threshold.tighter, unit,
                       threshold.own ? ownThreshold(threshold.reason) : threshold.source);
    }

    // What would mend the comparison just made: told only if that one keeps the check from what it
    // could be. Nothing after a comparison that was refused, or a step told instead of one.
    void mendedBy(QString sentence)
    {
        if (m_justCompared)
            m_mends.back() = std::move(sentence);
    }
    // What would turn the verdict whatever decides it. Left out of a check that holds.
    void turnedBy(QString sentence) { m_check.turnedBy.append(std::move(sentence)); }
    void plot(Plot drawn) { m_check.plots.push_back(std::move(drawn)); }
    void result(QString line) { m_check.result = std::move(line); }
    void caution(QString card) { m_check.caution = std::move(card); }
    void afterwards(QString sentence) { m_check.afterwards = std::move(sentence); }

    // The verdict: fails if a comparison fails; else unknown for an unknown, refused or doubted
    // input; else tight or holds. A sheet without any comparison is unknown. A failure rests on
    // what fails, whatever else is unknown; a check that is met on its narrowest comparison, and
    // weaker evidence of the others is told beside it, for it is met by all of them. The sheet is
    // empty after.
    Check finish(QString source);

private:
    template <class Q>
    static double siOf(Q quantity)
    {
        return quantity.si();
    }
    static double siOf(double number) { return number; }
    template <class Q>
    static std::optional<double> siOf(const std::optional<Q> &quantity)
    {
        return quantity ? std::optional(quantity->si()) : std::nullopt;
    }

    double takeSi(std::optional<double> si, const Origin &origin, QStringView symbol,
                  QStringView unit, double least, double most);
    // The weakest of some inputs, each once; the first weighed leads.
    struct Basis
    {
        std::optional<Evidence> weakest;
        std::vector<std::pair<QString, QString>> asWeak; // name and path of those as weak as that
        void weigh(Evidence evidence, const QString &name, const QString &path);
        void weigh(const Origin &origin) { weigh(origin.evidence, origin.name, origin.path); }
        void weigh(const Basis &other);
        [[nodiscard]] bool isWeak() const;
        [[nodiscard]] QString told() const; // "an assumption for speed of the motor and 2 more"
    };
    static void weigh(Basis &basis, const Origin &origin) { basis.weigh(origin); }
    template <class Input>
    static void weigh(Basis &basis, const Input &input)
    {
        if constexpr (requires { input.origin.name; })
            basis.weigh(input.origin);
        else if constexpr (requires { input.begin(); })
            for (const auto &one : input)
                weigh(basis, one);
        else if (input)
            weigh(basis, *input);
    }

    Verdict compare(QString what, double value, double limit, Tighter tighter, QStringView unit,
                    QString limitFrom, double uncertainty = 0);
    void loosen(double value, double published, Tighter tighter, Loosened told);
    static QString ownThreshold(const QString &reason);
    static QString firstOf(const QStringList &names);
    [[nodiscard]] QString verdictLine() const;

    // Indices of the comparisons.
    [[nodiscard]] std::vector<std::size_t> narrowestFirst() const;
    // What would turn it: first what would mend the comparisons that decide, in that order.
    [[nodiscard]] QStringList allTurnedBy(const std::vector<std::size_t> &order) const;

    Check m_check;
    Basis m_basis;                // of all inputs; of what decides in the end
    Basis m_elsewhere;            // of the other comparisons of a check that is met
    std::optional<Basis> m_rests; // of the next comparison
    std::vector<Basis> m_bases;   // of each comparison
    std::vector<QString> m_mends; // the same; empty for one of which none is told
    bool m_justCompared = false;
    bool m_notMeasured = false;
    std::optional<Verdict> m_published; // worst of what was held to loosened thresholds
};

} // namespace ohmwright
