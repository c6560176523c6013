// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright dump BOOK [FILE.json]
#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/interchange/interchange.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

class DumpCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(DumpCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("dump"); }
    [[nodiscard]] QString summary() const override
    {
        return tr(
            "Writes the whole book as interchange JSON, attachments in a folder beside it; without "
            "a file, the JSON alone on standard output.");
    }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK [FILE.json]"); }

    int run(const QCommandLineParser &, const QStringList &positional, CommandIo io) const override
    {
        if (positional.isEmpty() || positional.size() > 2)
            return refuse(io, tr("Say which book: ohmwright dump BOOK [FILE.json]."));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        if (positional.size() == 1) {
            io.out << QString::fromUtf8(dump((*book)->records()));
            return kExitDone;
        }
        if (Outcome written = dumpFile(**book, positional[1]); !written)
            return refuse(io, written.error());
        io.out << tr("Wrote %1.").arg(positional[1]) << Qt::endl;
        return kExitDone;
    }
};

} // namespace

std::unique_ptr<Command> makeDumpCommand()
{
    return std::make_unique<DumpCommand>();
}

} // namespace ohmwright
