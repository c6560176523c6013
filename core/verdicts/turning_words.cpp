// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdicts/turning_words.h"

#include <QCoreApplication>

#include <functional>
#include <utility>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("TurningWords", text);
}

using Way = TurningPoint::Way;
using Side = TurningPoint::Side;

QString oneOf(const TurningPoint &point)
{
    const QString border =
        point.side == Side::AtLeast ? tr("%1, %2 or more") : tr("%1, %2 or less");
    const QString told = border.arg(point.input, point.shown);
    return point.instead.isEmpty() ? told : tr("%1 instead of %2").arg(told, point.instead);
}

QString headOfMended(Verdict before, bool several)
{
    if (before == Verdict::Fails)
        return several ? tr("Any one of these alone, and it would not fail:")
                       : tr("This alone, and it would not fail:");
    return several ? tr("Any one of these alone, and it would hold:")
                   : tr("This alone, and it would hold:");
}

} // namespace

std::vector<ToldTurning> told(const std::vector<TurningPoint> &points, Verdict before)
{
    ToldTurning mended;
    ToldTurning spoilt{
        Way::Spoilt, tr("It would fail if what is only said or assumed came to:"), {}};
    for (const TurningPoint &point : points)
        (point.way == Way::Mended ? mended : spoilt).lines << oneOf(point);
    mended.head = headOfMended(before, mended.lines.size() > 1);
    std::vector<ToldTurning> all;
    for (ToldTurning &one : {std::ref(mended), std::ref(spoilt)})
        if (!one.lines.isEmpty())
            all.push_back(std::move(one));
    return all;
}

namespace {

Check withSentences(Check check, const std::vector<TurningPoint> &points)
{
    for (const ToldTurning &one : told(points, check.verdict)) {
        const QString sentence = one.head + u' ' + one.lines.join(tr("; ")) + u'.';
        if (one.way == Way::Mended)
            check.turnedBy.prepend(sentence);
        else
            check.turnedBy.append(sentence);
    }
    return check;
}

} // namespace

Check withTurningPoints(const Records &records, QDate today, Check check)
{
    const std::vector<TurningPoint> points = turningPoints(records, today, check);
    return withSentences(std::move(check), points);
}

MendingSearch::MendingSearch(const Records &records, QDate today, std::vector<Check> checks)
    : m_records(&records), m_today(today), m_checks(std::move(checks))
{
    begin();
}

void MendingSearch::begin()
{
    while (m_at < m_checks.size() && m_checks[m_at].verdict == Verdict::Holds)
        ++m_at;
    if (m_at < m_checks.size())
        m_search.emplace(*m_records, m_today, m_checks[m_at], TurningSearch::For::Mending);
}

bool MendingSearch::step()
{
    if (!m_search)
        return false;
    if (m_search->step())
        return true;
    m_checks[m_at] = withSentences(std::move(m_checks[m_at]), m_search->found());
    m_search.reset();
    ++m_at;
    begin();
    return m_search.has_value();
}

std::vector<Check> withMending(const Records &records, QDate today, std::vector<Check> checks)
{
    MendingSearch search(records, today, std::move(checks));
    while (search.step()) {
    }
    return search.take();
}

} // namespace ohmwright
