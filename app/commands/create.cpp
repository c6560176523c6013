// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright create BOOK [--title TEXT] [--currency CODE]
#include "app/commands/commands.h"
#include "core/book/book.h"

#include <QCoreApplication>
#include <QFileInfo>

namespace ohmwright {

namespace {

class CreateCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(CreateCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("create"); }
    [[nodiscard]] QString summary() const override { return tr("Makes a new, empty book."); }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK"); }

    void describe(QCommandLineParser &parser) const override
    {
        parser.addOption(
            {QStringLiteral("title"), tr("The build's title; else the file's name."), tr("text")});
        parser.addOption({QStringLiteral("currency"),
                          tr("The book's currency, ISO 4217 code; else EUR."), tr("code"),
                          QStringLiteral("EUR")});
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 1)
            return refuse(io, tr("Say which book to create: ohmwright create BOOK."));
        const QString path = positional.front();
        const std::optional<Currency> currency =
            Currency::fromCode(options.value(QStringLiteral("currency")));
        if (!currency)
            return refuse(io, tr("“%1” is not an ISO 4217 currency code.")
                                  .arg(options.value(QStringLiteral("currency"))));
        QString title = options.value(QStringLiteral("title")).trimmed();
        if (title.isEmpty())
            title = QFileInfo(path).completeBaseName();
        const Result<std::unique_ptr<Book>> book = Book::create(path, title, *currency, io.clock);
        if (!book)
            return refuse(io, book.error());
        if (options.isSet(QStringLiteral("json")))
            printJson(io, {{QStringLiteral("book"), path}, {QStringLiteral("title"), title}});
        else
            io.out << tr("Created “%1” in %2.").arg(title, path) << Qt::endl;
        return kExitDone;
    }
};

} // namespace

std::unique_ptr<Command> makeCreateCommand()
{
    return std::make_unique<CreateCommand>();
}

} // namespace ohmwright
