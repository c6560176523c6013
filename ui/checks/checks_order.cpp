// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/checks_order.h"

#include <QHash>

#include <algorithm>
#include <limits>
#include <tuple>
#include <utility>

namespace ohmwright::ui {

namespace {

std::size_t at(Verdict verdict)
{
    return static_cast<std::size_t>(verdict);
}

int rankOf(Verdict verdict)
{
    return static_cast<int>(std::find(kWorstFirst.begin(), kWorstFirst.end(), verdict) -
                            kWorstFirst.begin());
}

// Letters without their accents, in one case: "Précharge" is found by "precharge".
QString folded(const QString &text)
{
    QString bare;
    for (const QChar c : text.normalized(QString::NormalizationForm_D))
        if (c.category() != QChar::Mark_NonSpacing)
            bare += c;
    return bare.toCaseFolded();
}

QString haystackOf(const CheckEntry &entry)
{
    const Check &check = entry.check;
    return folded(QString(check.title + u'\n' + entry.subject + u'\n' + check.sentence + u'\n' +
                          check.result + u'\n' + verdictWord(check.verdict) + u'\n' +
                          protectedName(check.protects) + u'\n' +
                          check.unknowns.join(QLatin1Char('\n'))));
}

bool holdsAll(const QString &haystack, const QStringList &words)
{
    return std::all_of(words.begin(), words.end(),
                       [&](const QString &word) { return haystack.contains(word); });
}

bool worse(const CheckEntry &a, const CheckEntry &b)
{
    const auto order = [](const CheckEntry &e) {
        const Check &check = e.check;
        // an unknown one may have a margin so far; without any it comes last of its kind
        return std::make_tuple(check.protects, rankOf(check.verdict),
                               check.margin.value_or(std::numeric_limits<double>::infinity()));
    };
    if (order(a) != order(b))
        return order(a) < order(b);
    const int byTitle = QString::localeAwareCompare(a.check.title, b.check.title);
    return byTitle != 0 ? byTitle < 0 : QString::localeAwareCompare(a.subject, b.subject) < 0;
}

// Two checks may share everything a key is made of: then they are counted.
std::vector<QString> keysOf(const std::vector<Check> &checks)
{
    QHash<QString, int> seen;
    std::vector<QString> keys;
    keys.reserve(checks.size());
    for (const Check &check : checks) {
        const QString key = checkKey(check);
        const int before = seen[key]++;
        keys.push_back(before == 0 ? key : QString(key + QChar(0x1F) + QString::number(before)));
    }
    return keys;
}

} // namespace

std::vector<CheckEntry> entriesOf(std::vector<Check> checks, const ChecksSource &source,
                                  const std::vector<Check> *inBook)
{
    QHash<QString, Verdict> before;
    if (inBook) {
        const std::vector<QString> keys = keysOf(*inBook);
        for (std::size_t i = 0; i < keys.size(); ++i)
            before.insert(keys[i], (*inBook)[i].verdict);
    }
    std::vector<QString> keys = keysOf(checks);
    std::vector<CheckEntry> entries;
    entries.reserve(checks.size());
    for (std::size_t i = 0; i < checks.size(); ++i) {
        CheckEntry entry;
        entry.key = std::move(keys[i]);
        entry.subject = source.subjectName(checks[i]);
        entry.check = std::move(checks[i]);
        if (inBook) {
            const auto was = before.constFind(entry.key);
            entry.isNew = was == before.constEnd();
            if (!entry.isNew && *was != entry.check.verdict)
                entry.before = *was;
        }
        entry.haystack = haystackOf(entry);
        entries.push_back(std::move(entry));
    }
    return entries;
}

ArrangedChecks arrange(const std::vector<CheckEntry> &entries, const CheckFilter &filter)
{
    const QStringList words =
        folded(filter.text).split(QLatin1Char(' '), Qt::SkipEmptyParts, Qt::CaseSensitive);
    ArrangedChecks found;
    std::vector<int> shown;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const CheckEntry &entry = entries[i];
        if (!words.isEmpty() && !holdsAll(entry.haystack, words))
            continue;
        const bool turned = entry.before.has_value() || entry.isNew;
        ++found.perVerdict[at(entry.check.verdict)];
        found.turned += turned ? 1 : 0;
        const bool asked =
            filter.verdicts.empty() || filter.verdicts.count(entry.check.verdict) > 0;
        if (asked && (turned || !filter.turnedOnly))
            shown.push_back(static_cast<int>(i));
    }
    const auto entryAt = [&](int i) -> const CheckEntry & {
        return entries[static_cast<std::size_t>(i)];
    };
    std::sort(shown.begin(), shown.end(), [&](int a, int b) {
        if (worse(entryAt(a), entryAt(b)))
            return true;
        return !worse(entryAt(b), entryAt(a)) && a < b;
    });
    std::size_t heading = 0;
    for (const int i : shown) {
        const Check &check = entryAt(i).check;
        if (found.rows.empty() || found.rows.back().group != check.protects) {
            heading = found.rows.size();
            found.rows.push_back({-1, check.protects, {}});
        }
        ++found.rows[heading].counts[at(check.verdict)];
        found.rows.push_back({i, check.protects, {}});
    }
    found.shown = static_cast<int>(shown.size());
    return found;
}

} // namespace ohmwright::ui
