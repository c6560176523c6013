// SPDX-License-Identifier: GPL-3.0-or-later
// A starter's document as records, with dates to wish for, and as a new book.
#include "core/plan/plan_view.h"
#include "core/starters/starters.h"

#include <QCoreApplication>
#include <QFile>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Starters", text);
}

// Days from today to a milestone: see starterRecords().
int daysToWish(const Records &records, const plan::Network &network, std::size_t milestone)
{
    const plan::HoldUps holdUps = plan::holdUps(network, milestone);
    const std::vector<Task> &tasks = records.all<Task>().rows();
    long long minutes = 0;
    for (const std::size_t task : holdUps.chain)
        minutes += tasks[task].workMinutes;
    const long long perWeek = 60LL * records.build().hoursPerWeek;
    const long long byWork = (minutes * 7 + perWeek - 1) / perWeek;
    return static_cast<int>(std::max(holdUps.chainDays * 18LL, byWork * 20) / 10);
}

void wishForDates(Records &records, QDate today)
{
    const plan::Network network = plan::networkOf(records, today);
    if (!plan::findLoop(network).empty())
        return; // told by the interchange before we come here
    std::vector<Task> tasks = records.all<Task>().rows();
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        if (!tasks[i].milestone)
            continue;
        tasks[i].targetOn = today.addDays(daysToWish(records, network, i));
        const QString wish =
            tr("The date is what the hours and waits of the starter come to at %1 hours a week, "
               "with room for what goes wrong: a wish until you set your own.")
                .arg(records.build().hoursPerWeek);
        tasks[i].note = QStringList{tasks[i].note, wish}.join(u' ').trimmed();
    }
    records.all<Task>().assign(std::move(tasks));
}

} // namespace

Result<Records> starterRecords(const QString &name, const StarterAnswers &answers,
                               const StarterBook &book, const IdSource &nextId)
{
    const Result<QByteArray> document = starterDocument(name, answers, book);
    if (!document)
        return fail(document.error());
    Result<Records> records = parse(*document, nextId);
    if (records)
        wishForDates(*records, book.today);
    return records;
}

Result<std::unique_ptr<Book>> createFromStarter(const QString &path, const QString &name,
                                                const StarterAnswers &answers, const QString &title,
                                                Currency currency, const Clock &clock)
{
    const Result<Records> records =
        starterRecords(name, answers, {title, currency, clock.today()}, idsBefore(clock.nowUtc()));
    if (!records)
        return fail(records.error());
    Result<std::unique_ptr<Book>> book = Book::create(path, title, currency, clock);
    if (!book)
        return book;
    const QString what = tr("Begin from the starter “%1”").arg(findStarter(name)->title);
    Outcome filled = (*book)->edit(what, [&] { return (*book)->replaceAll(*records); });
    if (filled)
        filled = (*book)->settle(); // an undo must not leave an empty book
    if (filled)
        return book;
    book->reset();
    if (!path.isEmpty())
        QFile::remove(path);
    return fail(filled.error());
}

} // namespace ohmwright
