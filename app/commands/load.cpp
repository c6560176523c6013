// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright load BOOK FILE.json
#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/interchange/interchange.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>

namespace ohmwright {

namespace {

class LoadCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(LoadCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("load"); }
    [[nodiscard]] QString summary() const override
    {
        return tr(
            "Fills a book from interchange JSON; makes the book if there is none. What it held is "
            "replaced, and undo brings it back.");
    }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK FILE.json"); }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 2)
            return refuse(io, tr("Say which book and which file: ohmwright load BOOK FILE.json."));
        const QString &path = positional[0];
        const bool isNew = !QFileInfo::exists(path);
        Result<std::unique_ptr<Book>> book =
            isNew ? Book::create(path, QFileInfo(path).completeBaseName(), Currency(), io.clock)
                  : openBook(path, io.clock);
        if (!book)
            return refuse(io, book.error());
        if (Outcome loaded = loadFile(**book, positional[1]); !loaded) {
            book->reset();
            if (isNew)
                QFile::remove(path);
            return refuse(io, loaded.error());
        }
        if (isNew)
            if (Outcome settled = (*book)->settle(); !settled)
                return refuse(io, settled.error());
        const Records &records = (*book)->records();
        const auto count = [](std::size_t n) {
            return static_cast<qint64>(n);
        };
        if (options.isSet(QStringLiteral("json"))) {
            printJson(io, {{QStringLiteral("book"), path},
                           {QStringLiteral("parts"), count(records.all<Part>().size())},
                           {QStringLiteral("ratings"), count(records.all<Rating>().size())},
                           {QStringLiteral("tasks"), count(records.all<Task>().size())}});
        } else {
            io.out << tr("Loaded “%1”: %2 parts, %3 ratings, %4 tasks.")
                          .arg(records.build().title)
                          .arg(records.all<Part>().size())
                          .arg(records.all<Rating>().size())
                          .arg(records.all<Task>().size())
                   << Qt::endl;
        }
        return kExitDone;
    }
};

} // namespace

std::unique_ptr<Command> makeLoadCommand()
{
    return std::make_unique<LoadCommand>();
}

} // namespace ohmwright
