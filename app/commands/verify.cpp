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
                  "anything is wrong with the book, 2 if there is no book to look at.");
    }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK"); }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 1)
            return refuse(io, tr("Name one book and nothing more: ohmwright verify BOOK."));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book && book.error().code != ProblemCode::Damaged)
            return refuse(io, book.error());
        const Result<QStringList> found = book ? wrongIn(**book) : fail(book.error());
        if (!found && found.error().code != ProblemCode::Damaged)
            return refuse(io, found.error());
        const QStringList wrong = found ? *found : QStringList{found.error().sentence};
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

private:
    static Result<QStringList> wrongIn(const Book &book)
    {
        Result<QStringList> wrong = book.checkFile();
        if (wrong)
            for (const Inconsistency &found : findInconsistencies(book.records()))
                *wrong << found.sentence;
        return wrong;
    }
};

} // namespace

std::unique_ptr<Command> makeVerifyCommand()
{
    return std::make_unique<VerifyCommand>();
}

} // namespace ohmwright
