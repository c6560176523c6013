// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright undo BOOK, ohmwright redo BOOK
#include "app/commands/commands.h"
#include "core/book/book.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

class TravelCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(TravelCommand)

public:
    explicit TravelCommand(bool back) : m_back(back) {}

    [[nodiscard]] QString name() const override
    {
        return m_back ? QStringLiteral("undo") : QStringLiteral("redo");
    }
    [[nodiscard]] QString summary() const override
    {
        return m_back ? tr("Takes back the last edit.")
                      : tr("Does again what was taken back last.");
    }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK"); }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 1)
            return refuse(io, tr("Name one book and nothing more: ohmwright %1 BOOK.").arg(name()));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const QString what =
            (m_back ? (*book)->undoText() : (*book)->redoText()).value_or(QString());
        if (const Outcome done = m_back ? (*book)->undo() : (*book)->redo(); !done)
            return refuse(io, done.error());
        if (options.isSet(QStringLiteral("json")))
            printJson(io, {{m_back ? QStringLiteral("undone") : QStringLiteral("redone"), what}});
        else
            io.out << (m_back ? tr("Taken back: %1").arg(what) : tr("Done again: %1").arg(what))
                   << Qt::endl;
        return kExitDone;
    }

private:
    bool m_back;
};

} // namespace

std::unique_ptr<Command> makeUndoCommand()
{
    return std::make_unique<TravelCommand>(true);
}

std::unique_ptr<Command> makeRedoCommand()
{
    return std::make_unique<TravelCommand>(false);
}

} // namespace ohmwright
