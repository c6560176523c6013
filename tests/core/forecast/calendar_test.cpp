// SPDX-License-Identifier: GPL-3.0-or-later
// The calendar file, read back by python3-icalendar, a parser of somebody else's (RFC 5545).
#include "core/forecast/calendar.h"
#include "tests/core/forecast/six_tasks.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>

namespace ohmwright::forecast {
namespace {

constexpr const char *kReader = R"(
import json, sys
from icalendar import Calendar
calendar = Calendar.from_ical(open(sys.argv[1], 'rb').read())
print(json.dumps({
    'version': str(calendar['VERSION']),
    'events': [{'uid': str(e['UID']), 'day': e['DTSTART'].dt.isoformat(),
                'title': str(e['SUMMARY']), 'note': str(e.get('DESCRIPTION', '')),
                'stamp': e['DTSTAMP'].dt.isoformat()} for e in calendar.walk('VEVENT')]}))
)";

QJsonObject readBack(const QByteArray &file)
{
    QTemporaryDir folder;
    QFile out(folder.filePath(QStringLiteral("days.ics")));
    EXPECT_TRUE(out.open(QIODevice::WriteOnly));
    out.write(file);
    out.close();
    QProcess python;
    python.start(QStringLiteral("/usr/bin/python3"),
                 {QStringLiteral("-c"), QString::fromLatin1(kReader), out.fileName()});
    EXPECT_TRUE(python.waitForFinished(60'000));
    EXPECT_EQ(python.exitCode(), 0) << python.readAllStandardError().toStdString();
    return QJsonDocument::fromJson(python.readAllStandardOutput()).object();
}

TEST(CalendarFile, isReadBackAsItWasWritten)
{
    const std::vector<CalendarDay> days{
        {QStringLiteral("milestone-rolling@ohmwright"), QDate(2026, 6, 30),
         QStringLiteral("Rolling (forecast, 80 %)"),
         QStringLiteral("Commas, semicolons; \\ and\nlines")},
        {QStringLiteral("return-pump@ohmwright"),
         QDate(2027, 2, 28),
         QString::fromUtf8("Last day of return: Kühlmittelpumpe für den Umrichter, eine lange "
                           "Zeile über fünfundsiebzig Oktette hinaus"),
         {}}};
    const QDateTime now(QDate(2026, 6, 15), QTime(9, 0), Qt::UTC);
    const QByteArray file = asICalendar(days, QStringLiteral("Test build"), now);
    for (const QByteArray &line : file.split('\n'))
        EXPECT_LE(line.size(), 76) << "folded, RFC 5545 3.1: " << line.toStdString();
    EXPECT_TRUE(file.contains("\r\n"));
    const QJsonObject read = readBack(file);
    EXPECT_EQ(read["version"].toString(), QStringLiteral("2.0"));
    const QJsonArray events = read["events"].toArray();
    ASSERT_EQ(events.size(), 2);
    for (std::size_t i = 0; i < days.size(); ++i) {
        const QJsonObject event = events[static_cast<qsizetype>(i)].toObject();
        EXPECT_EQ(event["uid"].toString(), days[i].uid);
        EXPECT_EQ(event["day"].toString(), days[i].day.toString(Qt::ISODate));
        EXPECT_EQ(event["title"].toString(), days[i].title);
        EXPECT_EQ(event["note"].toString(), days[i].note);
        EXPECT_TRUE(event["stamp"].toString().startsWith(QStringLiteral("2026-06-15T09:00:00")));
    }
}

TEST(CalendarFile, holdsMilestonesOrderByDaysDeliveriesAndWindows)
{
    SixTasks six;
    Part pump = namedPart(QStringLiteral("Pump"));
    pump.key = QStringLiteral("pump");
    pump.returnUntil = QDate(2026, 6, 20);
    pump.warrantyUntil = QDate(2027, 6, 20);
    six.book.add(pump);
    Seller seller;
    seller.name = QStringLiteral("Lathe and Son");
    Purchase purchase;
    purchase.seller = six.book.add(seller);
    purchase.orderedOn = QDate(2026, 6, 10);
    purchase.currency = euro();
    purchase.rate = Rate();
    purchase.freight = purchase.duty = purchase.tax = euros(0);
    purchase.promisedOn = QDate(2026, 6, 25);
    purchase.key = QStringLiteral("p-1");
    six.book.add(purchase);
    Letter letter; // the answer takes a day, and fitting is on Tuesday 30
    letter.key = QStringLiteral("road");
    letter.subject = QStringLiteral("Cover on the road");
    letter.answerDays = letter.leastAnswerDays = letter.mostAnswerDays = 1;
    TaskNeed need;
    need.task = six.fit;
    need.kind = NeedKind::Letter;
    need.letter = six.book.add(letter);
    six.book.add(need);
    const WorkPlan plan = workPlanOf(six.book.records(), QDate(2026, 6, 15));
    Settings settings;
    settings.samples = 100;
    const Simulation simulation(plan, settings);
    const std::vector<CalendarDay> days = calendarDays(six.book.records(), plan, simulation.run(),
                                                       orderByDays(plan, simulation, 80), 80);
    QStringList told;
    for (const CalendarDay &day : days)
        told << day.uid.section(u'@', 0, 0) + u' ' + day.day.toString(Qt::ISODate);
    EXPECT_EQ(told, (QStringList{QStringLiteral("order-by-coupling 2026-06-16"),
                                 QStringLiteral("return-pump 2026-06-20"),
                                 QStringLiteral("delivery-p-1 2026-06-25"),
                                 QStringLiteral("ask-by-road 2026-06-29"),
                                 QStringLiteral("milestone-rolling 2026-06-30"),
                                 QStringLiteral("warranty-pump 2027-06-20")}));
}

} // namespace
} // namespace ohmwright::forecast
