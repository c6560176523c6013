// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/held_limits.h"

#include "core/checks/origin_words.h"
#include "core/sheet/check_words.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>

namespace ohmwright::sections {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("BuildSheet", text);
}

// What a comparison says of a part beside its path: "peak" of "Contactor box: peak".
std::optional<QString> aspectOf(const QString &what, const QString &path)
{
    if (path.isEmpty() || !what.startsWith(path))
        return std::nullopt;
    const QString rest = what.mid(path.size());
    if (rest.isEmpty())
        return QString();
    const QString sign = QStringLiteral(": ");
    return rest.startsWith(sign) ? std::optional(rest.mid(sign.size())) : std::nullopt;
}

bool isNamedBy(const QString &limitFrom, const QString &name)
{
    return !name.isEmpty() &&
           (limitFrom == name || limitFrom.startsWith(QString(name + QStringLiteral(": "))));
}

const CheckInput *durationAfter(const Check &check, std::size_t at, const QString &suffix)
{
    if (at + 1 >= check.inputs.size())
        return nullptr;
    const CheckInput &next = check.inputs[at + 1];
    const bool same = next.origin.path == check.inputs[at].origin.path && !next.shown.isEmpty();
    return same && suffix == tr("for %1").arg(next.shown) ? &next : nullptr;
}

// The limit of a part: the rating that tells the same value, and if it is one for a while, for as
// long.
bool findOfPart(const Check &check, HeldLimit &found)
{
    const Comparison &held = *found.held;
    for (std::size_t i = 0; i < check.inputs.size(); ++i) {
        const CheckInput &input = check.inputs[i];
        const std::optional<QString> aspect = aspectOf(held.what, input.origin.path);
        const auto told = held.limitFrom.lastIndexOf(input.origin.path);
        if (!aspect || input.shown != held.limit || told < 0)
            continue;
        QString suffix = held.limitFrom.mid(told + input.origin.path.size());
        if (suffix.startsWith(QStringLiteral(", ")))
            suffix = suffix.mid(2);
        const CheckInput *duration = durationAfter(check, i, suffix);
        const bool better = !found.limit || (duration && !found.duration);
        if (!better)
            continue;
        found.limit = &input;
        found.duration = duration;
        found.path = input.origin.path;
        found.aspect = *aspect;
        found.holdsFor = suffix == *aspect ? QString() : suffix;
    }
    if (!found.limit)
        return false;
    found.from = evidenceOf(found.limit->origin);
    found.figure = found.limit->origin.name;
    found.figure.remove(tr(" of %1").arg(partOf(found.path)));
    if (found.duration && !found.limit->origin.source.startsWith(found.duration->origin.source))
        found.from += tr("; %1: %2").arg(found.holdsFor, evidenceOf(found.duration->origin));
    return true;
}

void findNamed(const Check &check, HeldLimit &found)
{
    const Comparison &held = *found.held;
    found.from = held.limitFrom;
    const auto input =
        std::find_if(check.inputs.begin(), check.inputs.end(), [&held](const CheckInput &one) {
            return one.shown == held.limit && isNamedBy(held.limitFrom, one.origin.name);
        });
    if (input == check.inputs.end())
        return;
    found.limit = &*input;
    found.from = tr("%1: %2").arg(input->origin.name, evidenceOf(input->origin));
}

bool isUsed(const QString &symbol, const Check &check)
{
    if (symbol.isEmpty())
        return false;
    const QRegularExpression alone(QStringLiteral("(?<![\\p{L}\\p{M}_])%1(?![\\p{L}\\p{M}\\p{N}_])")
                                       .arg(QRegularExpression::escape(symbol)),
                                   QRegularExpression::UseUnicodePropertiesOption);
    return std::any_of(check.steps.begin(), check.steps.end(),
                       [&alone](const CheckStep &step) { return step.formula.contains(alone); });
}

} // namespace

std::vector<HeldLimit> heldLimits(const Check &check)
{
    std::vector<HeldLimit> limits;
    for (const Comparison &held : check.comparisons) {
        HeldLimit found;
        found.held = &held;
        if (!findOfPart(check, found))
            findNamed(check, found);
        limits.push_back(std::move(found));
    }
    return limits;
}

std::set<const CheckInput *> toldAsLimits(const Check &check, const std::vector<HeldLimit> &limits)
{
    std::set<const CheckInput *> told;
    for (const HeldLimit &one : limits) {
        if (!one.limit || (one.path.isEmpty() && isUsed(one.limit->symbol, check)))
            continue;
        told.insert(one.limit);
        if (one.duration)
            told.insert(one.duration);
    }
    return told;
}

bool onlyNamesAPart(const CheckStep &step, const std::vector<HeldLimit> &limits)
{
    return std::any_of(limits.begin(), limits.end(), [&step](const HeldLimit &one) {
        return !one.path.isEmpty() && one.path == step.result;
    });
}

} // namespace ohmwright::sections
