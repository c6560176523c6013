// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright calendar BOOK --out FILE.ics
#include "core/forecast/calendar.h"

#include "app/commands/commands.h"
#include "core/book/book.h"

#include <QCoreApplication>
#include <QSaveFile>

namespace ohmwright {

namespace {

class CalendarCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(CalendarCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("calendar"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("Milestones, days to order and to ask by, deliveries and the last days of return "
                  "and warranty as an iCalendar file.");
    }
    [[nodiscard]] QString arguments() const override
    {
        return QStringLiteral("BOOK --out FILE.ics");
    }

    void describe(QCommandLineParser &parser) const override
    {
        parser.addOption({QStringLiteral("out"), tr("Where to write it."), tr("file")});
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        const QString out = options.value(QStringLiteral("out"));
        if (positional.size() != 1 || out.isEmpty())
            return refuse(io, tr("Say which book and where to: ohmwright calendar BOOK --out "
                                 "FILE.ics."));
        if (!out.endsWith(QLatin1String(".ics"), Qt::CaseInsensitive))
            return refuse(io, tr("“%1” does not end in .ics, as calendars do.").arg(out));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const Records &records = (*book)->records();
        const forecast::WorkPlan plan = forecast::workPlanOf(records, io.clock.today());
        const int confidence = records.build().confidencePercent.value_or(80);
        const forecast::Simulation simulation(plan, {});
        const auto days =
            forecast::calendarDays(records, plan, simulation.run(),
                                   forecast::orderByDays(plan, simulation, confidence), confidence);
        if (days.empty())
            return refuse(io, tr("There is no day to write yet: no milestone, order, delivery, "
                                 "return or warranty."));
        QSaveFile file(out);
        const QByteArray bytes =
            forecast::asICalendar(days, records.build().title, io.clock.nowUtc());
        if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit())
            return refuse(io, tr("“%1” cannot be written: %2.").arg(out, file.errorString()));
        io.out << tr("%1 days written to %2.").arg(days.size()).arg(out) << Qt::endl;
        return kExitDone;
    }
};

} // namespace

std::unique_ptr<Command> makeCalendarCommand()
{
    return std::make_unique<CalendarCommand>();
}

} // namespace ohmwright
