// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright verify BOOK
#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/parts/consistency.h"

#include <QCoreApplication>
#include <QJsonArray>

namespace ohmwright {

namespace {

class VerifyCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(VerifyCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("verify"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("Checks the file, its references, its attachments and its rules. Exit 1 if "
                  "anything is wrong.");
    }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK"); }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 1)
            return refuse(io, tr("Say which book: ohmwright verify BOOK."));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const Result<QStringList> file = (*book)->checkFile();
        if (!file)
            return refuse(io, file.error());
        QStringList wrong = *file;
        for (const Inconsistency &found : findInconsistencies((*book)->records()))
            wrong << found.sentence;
        if (options.isSet(QStringLiteral("json"))) {
            printJson(io, {{QStringLiteral("sound"), wrong.isEmpty()},
                           {QStringLiteral("wrong"), QJsonArray::fromStringList(wrong)}});
        } else if (wrong.isEmpty()) {
            io.out << tr("The book is sound.") << Qt::endl;
        } else {
            for (const QString &sentence : wrong)
                io.out << sentence << '\n';
            io.out.flush();
        }
        return wrong.isEmpty() ? kExitDone : kExitBadNews;
    }
};

} // namespace

std::unique_ptr<Command> makeVerifyCommand()
{
    return std::make_unique<VerifyCommand>();
}

} // namespace ohmwright
