// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/listed_words.h"

#include "core/forecast/hours.h"
#include "core/parts/permits.h"
#include "core/quantity/dates.h"
#include "ui/build_order/task_texts.h"
#include "ui/cards/choice_words.h"
#include "ui/widgets/natural_order.h"

#include <QCoreApplication>
#include <QStringList>

namespace ohmwright::ui {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("ListedWords", text);
}

QString inWords(const QStringList &words)
{
    QStringList said = words;
    said.removeAll(QString());
    return said.join(tr(", "));
}

QString handsWords(int hands)
{
    return hands == 1 ? QString() : tr("%1 pairs of hands").arg(hands);
}

ListedWords wordsOf(const WorkingTime &time)
{
    return {tr("%1s").arg(forecast::dayName(time.weekday)),
            inWords({time.starts.isEmpty() ? QString() : tr("from %1").arg(time.starts),
                     showWorkTime(time.minutes), handsWords(time.hands), time.note})};
}

ListedWords wordsOf(const SpecialDay &day)
{
    const QString when = day.to && *day.to != day.from
                             ? tr("%1 to %2").arg(showDate(day.from), showDate(*day.to))
                             : showDate(day.from);
    return {when, day.minutes == 0 ? inWords({tr("nobody works"), day.note})
                                   : inWords({tr("%1 a day").arg(showWorkTime(day.minutes)),
                                              handsWords(day.hands), day.note})};
}

ListedWords wordsOf(const Records &records, const WorkEntry &entry)
{
    const Task *task = records.find(entry.task);
    return {tr("%1, %2").arg(showDate(entry.on), task ? task->title : tr("the build")),
            inWords({entry.minutes ? showWorkTime(*entry.minutes)
                                   : tr("under way since %1").arg(entry.started),
                     handsWords(entry.hands), entry.note})};
}

// Later days sort before earlier ones.
QString newestFirst(std::optional<QDate> day)
{
    constexpr qint64 kBeyond = 9'999'999; // Julian days
    return day ? QString::number(kBeyond - day->toJulianDay()).rightJustified(8, u'0')
               : QString(8, u'0');
}

} // namespace

std::optional<ListedWords> listedWords(const Records &records, const RecordKind &kind,
                                       std::int64_t id)
{
    if (kind.table() == RecordTraits<WorkingTime>::table) {
        if (const WorkingTime *time = records.find(Id<WorkingTime>(id)))
            return wordsOf(*time);
    } else if (kind.table() == RecordTraits<SpecialDay>::table) {
        if (const SpecialDay *day = records.find(Id<SpecialDay>(id)))
            return wordsOf(*day);
    } else if (kind.table() == RecordTraits<WorkEntry>::table) {
        if (const WorkEntry *entry = records.find(Id<WorkEntry>(id)))
            return wordsOf(records, *entry);
    } else if (kind.table() == RecordTraits<Choice>::table) {
        if (const Choice *choice = records.find(Id<Choice>(id)))
            return ListedWords{kind.name(records, id), choiceDetail(records, *choice)};
    }
    return std::nullopt;
}

QString lackingToday(const Records &records, const RecordKind &kind, std::int64_t id, QDate today)
{
    if (kind.table() != RecordTraits<WorkPermit>::table)
        return {};
    const WorkPermit *permit = records.find(Id<WorkPermit>(id));
    if (!permit || permit->closedOn)
        return {};
    const QStringList lacking = lackingOf(*permit, today);
    return lacking.isEmpty() ? QString() : tr("no leave to work today: %1").arg(inWords(lacking));
}

QString listedOrder(const Records &records, const RecordKind &kind, std::int64_t id,
                    const QString &name)
{
    if (kind.table() == RecordTraits<WorkingTime>::table) {
        if (const WorkingTime *time = records.find(Id<WorkingTime>(id)))
            return QString::number(static_cast<int>(time->weekday)) + time->starts;
    } else if (kind.table() == RecordTraits<SpecialDay>::table) {
        if (const SpecialDay *day = records.find(Id<SpecialDay>(id)))
            return printDate(day->from);
    } else if (kind.table() == RecordTraits<WorkEntry>::table) {
        if (const WorkEntry *entry = records.find(Id<WorkEntry>(id)))
            return newestFirst(entry->on);
    } else if (kind.table() == RecordTraits<Purchase>::table) {
        if (const Purchase *purchase = records.find(Id<Purchase>(id)))
            return newestFirst(purchase->orderedOn);
    } else if (kind.table() == RecordTraits<DayRate>::table) {
        if (const DayRate *rate = records.find(Id<DayRate>(id)))
            return QString(rate->currency.code() + newestFirst(rate->on));
    }
    return naturalKey(name);
}

} // namespace ohmwright::ui
