// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright history BOOK [KEY]
#include "core/cards/history.h"

#include "app/commands/commands.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <limits>

namespace ohmwright {

namespace {

constexpr int kToldAtOnce = 20;

class HistoryCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(HistoryCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("history"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("What was changed, from what to what, when; newest first. With a key, what was "
                  "done to that record and what it holds.");
    }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK [KEY]"); }
    void describe(QCommandLineParser &parser) const override
    {
        parser.addOption({QStringLiteral("last"),
                          tr("How many edits to tell, all with 0; %1 else.").arg(kToldAtOnce),
                          QStringLiteral("number"), QString::number(kToldAtOnce)});
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.isEmpty() || positional.size() > 2)
            return refuse(io, tr("Say which book, and at most one key: ohmwright history BOOK "
                                 "[KEY]."));
        bool isNumber = false;
        const int last = options.value(QStringLiteral("last")).toInt(&isNumber);
        if (!isNumber || last < 0)
            return refuse(
                io, tr("“%1” is no number of edits.").arg(options.value(QStringLiteral("last"))));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const std::size_t most =
            last > 0 ? static_cast<std::size_t>(last) : std::numeric_limits<std::size_t>::max();
        Result<Told> told =
            positional.size() == 2 ? of(**book, positional[1], most) : whole(**book, most);
        if (!told)
            return refuse(io, told.error());
        if (options.isSet(QStringLiteral("json")))
            printJson(io, asJson(*told));
        else
            printText(*told, positional.size() == 1, io.out);
        return kExitDone;
    }

private:
    struct Told
    {
        std::vector<StepChange> steps;
        std::size_t older = 0;
    };

    static Result<Told> whole(const Book &book, std::size_t most)
    {
        Result<History> history = History::of(book);
        if (!history)
            return fail(history.error());
        Told told;
        while (told.steps.size() < most) {
            Result<std::optional<StepChange>> step = history->next();
            if (!step)
                return fail(step.error());
            if (!*step)
                break;
            told.steps.push_back(std::move(**step));
        }
        told.older = history->left();
        return told;
    }

    static Result<Told> of(const Book &book, const QString &key, std::size_t most)
    {
        const Result<RecordRef> record = recordNamed(book.records(), key);
        if (!record)
            return fail(record.error());
        Result<std::vector<StepChange>> steps = historyOf(book, record->table, record->id);
        if (!steps)
            return fail(steps.error());
        Told told{std::move(*steps), 0};
        if (told.steps.size() > most) {
            told.older = told.steps.size() - most;
            told.steps.resize(most);
        }
        return told;
    }

    static QString whenOf(const Step &step)
    {
        const QDateTime local = step.madeAt.toLocalTime();
        return QString(showDate(local.date()) + local.toString(QStringLiteral(" HH:mm")));
    }

    static void printText(const Told &told, bool withHolder, QTextStream &out)
    {
        if (told.steps.empty())
            out << tr("Nothing was changed since the book began.") << '\n';
        for (const StepChange &step : told.steps) {
            out << tr("%1  %2").arg(whenOf(step.step), step.step.what)
                << stateInWords(step.step.state) << '\n';
            for (const QString &line : ohmwright::told(step, withHolder, labelOf))
                out << "    " << line << '\n';
        }
        if (told.older > 0)
            out << tr("And %1 older; --last 0 tells them all.").arg(told.older) << '\n';
        out.flush();
    }

    static QString labelOf(const std::string &, const QString &field)
    {
        return QString(field).replace(u'_', u' ');
    }

    static QString stateInWords(StepState state)
    {
        switch (state) {
        case StepState::Undone:
            return tr(" (taken back)");
        case StepState::Overtaken:
            return tr(" (taken back, then overtaken)");
        case StepState::Kept:
        case StepState::Done:
            break;
        }
        return {};
    }

    static QJsonObject asJson(const Told &told)
    {
        QJsonArray steps;
        for (const StepChange &step : told.steps) {
            QJsonArray records;
            for (const RecordChange &record : step.records)
                records << asJson(record);
            steps << QJsonObject{{QStringLiteral("number"), qint64{step.step.number}},
                                 {QStringLiteral("at"), step.step.madeAt.toString(Qt::ISODate)},
                                 {QStringLiteral("what"), step.step.what},
                                 {QStringLiteral("stands"), stands(step.step.state)},
                                 {QStringLiteral("records"), records}};
        }
        return {{QStringLiteral("edits"), steps},
                {QStringLiteral("older"), static_cast<qint64>(told.older)}};
    }

    static bool stands(StepState state)
    {
        return state == StepState::Done || state == StepState::Kept;
    }

    static QJsonObject asJson(const RecordChange &record)
    {
        static const std::map<RowChange, QString> kWords{
            {RowChange::Added, QStringLiteral("added")},
            {RowChange::Changed, QStringLiteral("changed")},
            {RowChange::Removed, QStringLiteral("removed")}};
        QJsonObject fields;
        for (const FieldChange &field : record.fields)
            fields.insert(field.field, QJsonObject{{QStringLiteral("before"), field.before},
                                                   {QStringLiteral("after"), field.after}});
        QJsonObject made{{QStringLiteral("table"), QString::fromStdString(record.record.table)},
                         {QStringLiteral("name"), record.record.name},
                         {QStringLiteral("change"), kWords.at(record.change)},
                         {QStringLiteral("fields"), fields}};
        if (record.holder)
            made.insert(QStringLiteral("of"), record.holder->name);
        return made;
    }
};

} // namespace

std::unique_ptr<Command> makeHistoryCommand()
{
    return std::make_unique<HistoryCommand>();
}

} // namespace ohmwright
