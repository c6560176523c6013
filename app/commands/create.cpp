// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright create BOOK [--title TEXT] [--currency CODE] [--starter NAME [--answer
// QUESTION=ANSWER]…] ohmwright create --starters
#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/starters/starters.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <QJsonArray>

namespace ohmwright {

namespace {

QJsonObject jsonOf(const Starter &starter)
{
    QJsonArray questions;
    for (const StarterQuestion &question : starter.questions) {
        QJsonArray answers;
        for (const StarterAnswer &answer : question.answers)
            answers.append(QJsonObject{{QStringLiteral("answer"), answer.key},
                                       {QStringLiteral("says"), answer.says},
                                       {QStringLiteral("means"), answer.means}});
        questions.append(QJsonObject{{QStringLiteral("question"), question.key},
                                     {QStringLiteral("asks"), question.asks},
                                     {QStringLiteral("why"), question.why},
                                     {QStringLiteral("usual"), question.usual},
                                     {QStringLiteral("answers"), answers}});
    }
    return {{QStringLiteral("starter"), starter.name},
            {QStringLiteral("title"), starter.title},
            {QStringLiteral("summary"), starter.summary},
            {QStringLiteral("suits"), starter.suits},
            {QStringLiteral("questions"), questions}};
}

class CreateCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(CreateCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("create"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("Makes a new book: an empty one, or one begun from a starter.");
    }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK"); }

    void describe(QCommandLineParser &parser) const override
    {
        parser.addOption(
            {QStringLiteral("title"), tr("The build's title; else the file's name."), tr("text")});
        parser.addOption({QStringLiteral("currency"),
                          tr("The book's currency, ISO 4217 code; else EUR."), tr("code"),
                          QStringLiteral("EUR")});
        parser.addOption({QStringLiteral("starter"),
                          tr("Begins with the tasks, letters, tests and parts of a starter."),
                          tr("name")});
        parser.addOption({QStringLiteral("answer"),
                          tr("Answers one of the starter's questions; may be given for each. What "
                             "is not answered is taken as usual."),
                          tr("question=answer")});
        parser.addOption({QStringLiteral("starters"),
                          tr("Lists the starters, their questions and answers; makes nothing.")});
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (options.isSet(QStringLiteral("starters")))
            return list(options, positional, io);
        if (positional.size() != 1)
            return refuse(io, tr("Say which book to create: ohmwright create BOOK."));
        const QString &path = positional.front();
        const std::optional<Currency> currency =
            Currency::fromCode(options.value(QStringLiteral("currency")));
        if (!currency)
            return refuse(io, tr("“%1” is not an ISO 4217 currency code.")
                                  .arg(options.value(QStringLiteral("currency"))));
        QString title = options.value(QStringLiteral("title")).trimmed();
        if (title.isEmpty())
            title = QFileInfo(path).completeBaseName();
        const QString name = options.value(QStringLiteral("starter"));
        const QStringList words = options.values(QStringLiteral("answer"));
        if (!options.isSet(QStringLiteral("starter"))) {
            if (!words.isEmpty())
                return refuse(io, tr("An --answer answers a question of a starter: name one with "
                                     "--starter, of these: %1.")
                                      .arg(names()));
            const Result<std::unique_ptr<Book>> book =
                Book::create(path, title, *currency, io.clock);
            return book ? told(options, io, **book, {}) : refuse(io, book.error());
        }
        const Result<Starter> starter = findStarter(name);
        if (!starter)
            return refuse(io, starter.error());
        const Result<StarterAnswers> answers = readAnswers(*starter, words);
        if (!answers)
            return refuse(io, answers.error());
        const Result<std::unique_ptr<Book>> book =
            createFromStarter(path, name, *answers, title, *currency, io.clock);
        return book ? told(options, io, **book, name) : refuse(io, book.error());
    }

private:
    static QString names()
    {
        QStringList all;
        for (const Starter &starter : starters())
            all << starter.name;
        return all.join(QStringLiteral(", "));
    }

    static int told(const QCommandLineParser &options, const CommandIo &io, const Book &book,
                    const QString &starter)
    {
        const Records &records = book.records();
        const auto tasks = static_cast<qint64>(records.all<Task>().size());
        const QString title = records.build().title;
        if (options.isSet(QStringLiteral("json"))) {
            QJsonObject object{{QStringLiteral("book"), book.path()},
                               {QStringLiteral("title"), title}};
            if (!starter.isEmpty()) {
                object.insert(QStringLiteral("starter"), starter);
                object.insert(QStringLiteral("tasks"), tasks);
            }
            printJson(io, object);
        } else if (starter.isEmpty()) {
            io.out << tr("Created “%1” in %2.").arg(title, book.path()) << Qt::endl;
        } else {
            io.out << tr("Created “%1” in %2 from the starter “%3”: %4 tasks and milestones.")
                          .arg(title, book.path(), starter)
                          .arg(tasks)
                   << Qt::endl;
        }
        return kExitDone;
    }

    static int list(const QCommandLineParser &options, const QStringList &positional,
                    const CommandIo &io)
    {
        if (!positional.isEmpty() || options.isSet(QStringLiteral("starter")))
            return refuse(io, tr("--starters only lists them, and takes no book."));
        if (options.isSet(QStringLiteral("json"))) {
            QJsonArray all;
            for (const Starter &starter : starters())
                all.append(jsonOf(starter));
            printJson(io, {{QStringLiteral("starters"), all}});
            return kExitDone;
        }
        for (const Starter &starter : starters()) {
            io.out << starter.name << ": " << starter.title << '\n'
                   << starter.summary << ' ' << starter.suits << '\n';
            for (const StarterQuestion &question : starter.questions) {
                io.out << "  " << question.key << ": " << question.asks << '\n';
                for (const StarterAnswer &answer : question.answers)
                    io.out << "    " << question.key << '=' << answer.key << ": " << answer.says
                           << (answer.key == question.usual ? tr(" (usual)") : QString()) << '\n';
            }
            io.out << Qt::endl;
        }
        return kExitDone;
    }
};

} // namespace

std::unique_ptr<Command> makeCreateCommand()
{
    return std::make_unique<CreateCommand>();
}

} // namespace ohmwright
