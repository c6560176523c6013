// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/loom_text.h"

#include "core/plan/network.h"

#include <algorithm>

namespace ohmwright::plan {

namespace {

// What the need is about; a need without a subject's name falls back to its key.
QString subjectOf(const LeafNeed &need)
{
    if (!need.subjectName.isEmpty())
        return need.subjectName;
    return need.subject.isEmpty() ? need.key : need.subject;
}

} // namespace

LoomState loomState(const Network &network, std::size_t task)
{
    const Task &own = network.tasks[task];
    if (own.aside)
        return LoomState::SetAside;
    if (own.done)
        return LoomState::Done;
    if (own.started)
        return LoomState::UnderWay;
    return canStart(network, task) ? LoomState::CanStart : LoomState::Waits;
}

QString loomNeed(const LeafNeed &need)
{
    return QStringLiteral("%1 %2").arg(needKindName(need.kind), subjectOf(need));
}

QStringList loomWaits(const Network &network, std::size_t task)
{
    QStringList waits;
    const Task &own = network.tasks[task];
    for (const std::size_t before : own.after) {
        if (!network.tasks[before].done)
            waits.append(QStringLiteral("task %1").arg(network.tasks[before].title));
    }
    for (const LeafNeed &need : own.needs) {
        if (!need.met)
            waits.append(loomNeed(need));
    }
    return waits;
}

} // namespace ohmwright::plan

namespace ohmwright::plan::loom {

namespace {

// Without a font: what a plain sans serif at these sizes comes to, on average.
double estimate(LoomText kind, const QString &text)
{
    const auto letters = static_cast<double>(text.size());
    switch (kind) {
    case LoomText::Title:
        return letters * 6.0;
    case LoomText::Missing:
        return letters * 5.3;
    case LoomText::Sleeve:
        return letters * 5.8;
    case LoomText::Milestone:
        return letters * 7.0;
    case LoomText::Date:
        return letters * 5.6;
    }
    return letters * 6.0;
}

} // namespace

Words::Words(const LoomMetrics &metrics, LoomText kind) : m_metrics(metrics), m_kind(kind) {}

double Words::measured(const QString &text)
{
    const auto at = m_known.constFind(text);
    if (at != m_known.constEnd())
        return *at;
    const double width =
        m_metrics.textWidth ? m_metrics.textWidth(m_kind, text) : estimate(m_kind, text);
    m_known.insert(text, width);
    return width;
}

double Words::width(const QString &line)
{
    double sum = 0;
    const QStringList words = line.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    for (const QString &word : words)
        sum += measured(word);
    if (words.size() > 1)
        sum += measured(QStringLiteral(" ")) * static_cast<double>(words.size() - 1);
    return sum;
}

QString Words::elided(const QString &text, double width)
{
    const QString dots = QStringLiteral("…");
    QString kept = text;
    while (!kept.isEmpty() && this->width(kept + dots) > width) {
        kept.chop(1);
        // Never half of a character that takes two code units.
        if (!kept.isEmpty() && kept.back().isHighSurrogate())
            kept.chop(1);
    }
    return kept.trimmed() + dots;
}

Words::Broken Words::broken(const QString &text, double width, int most)
{
    Broken result;
    QStringList words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    while (!words.isEmpty()) {
        QString line;
        while (!words.isEmpty()) {
            const QString longer =
                line.isEmpty() ? words.front() : line + QLatin1Char(' ') + words.front();
            if (this->width(longer) > width)
                break;
            line = longer;
            words.removeFirst();
        }
        const bool lastLine = result.lines.size() + 1 >= most;
        if (!words.isEmpty() && (lastLine || line.isEmpty())) {
            // A single word wider than the line is cut wherever it stands.
            const QString rest = lastLine ? words.join(QLatin1Char(' ')) : words.takeFirst();
            line = elided(line.isEmpty() ? rest : line + QLatin1Char(' ') + rest, width);
            result.cut = true;
        }
        result.width = std::max(result.width, this->width(line));
        result.lines.append(line);
        if (lastLine)
            break;
    }
    return result;
}

Words::Broken Words::uncut(const QString &text)
{
    Broken whole;
    whole.lines.append(text);
    whole.width = width(text);
    return whole;
}

double Words::narrowest(const QString &text, int most)
{
    const QStringList words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    double least = width(text);
    if (most < 2)
        return least;
    for (qsizetype split = 1; split < words.size(); ++split) {
        const double first = width(words.mid(0, split).join(QLatin1Char(' ')));
        const double second = width(words.mid(split).join(QLatin1Char(' ')));
        least = std::min(least, std::max(first, second));
    }
    return least;
}

Missing missing(const Task &task)
{
    Missing result;
    if (task.aside) {
        result.any = true;
        result.aside = true;
        result.what = QStringLiteral("set aside");
        return result;
    }
    int more = -1;
    for (std::size_t at = 0; at < task.needs.size(); ++at) {
        const LeafNeed &need = task.needs[at];
        if (need.met || task.done)
            continue;
        ++more;
        if (!result.any || need.daysToMeet > task.needs[result.need].daysToMeet)
            result.need = at;
        result.any = true;
    }
    if (!result.any)
        return result;
    const LeafNeed &need = task.needs[result.need];
    result.question = need.kind == NeedKind::Figure;
    result.what = result.question
                      ? QStringLiteral("? %1").arg(subjectOf(need))
                      : QStringLiteral("%1: %2").arg(needKindName(need.kind), subjectOf(need));
    result.why = need.reason;
    if (more > 0)
        result.what += QChar(QChar::Nbsp) + QStringLiteral("+%1").arg(more);
    return result;
}

} // namespace ohmwright::plan::loom
