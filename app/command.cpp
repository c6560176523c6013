// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command.h"

#include "core/book/book.h"

#include <QCoreApplication>
#include <QJsonDocument>

#include <algorithm>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Commands", text);
}

void printHelp(const Commands &commands, QTextStream &out)
{
    out << tr("ohmwright              opens the window") << '\n'
        << tr("ohmwright BOOK         opens the window on a book") << "\n\n";
    std::vector<QStringList> rows;
    for (const auto &command : commands)
        rows.push_back(
            {QStringLiteral("ohmwright %1 %2").arg(command->name(), command->arguments()),
             command->summary()});
    out << columns(rows) << '\n'
        << tr("Each command prints plain text, or JSON with --json. Exit code 0: done; 1: done, "
              "and "
              "the answer is bad news; 2: bad use or bad input, the book untouched.")
        << '\n';
}

} // namespace

int refuse(const CommandIo &io, const Problem &problem)
{
    io.err << "ohmwright: ";
    if (!problem.where.isEmpty())
        io.err << problem.where << ": ";
    io.err << problem.sentence;
    if (!problem.whatToDo.isEmpty())
        io.err << ' ' << problem.whatToDo;
    io.err << Qt::endl;
    return kExitBadUse;
}

int refuse(const CommandIo &io, const QString &sentence)
{
    return refuse(io, Problem{ProblemCode::BadInput, sentence, {}, {}});
}

Result<std::unique_ptr<Book>> openBook(const QString &path, const Clock &clock)
{
    return Book::open(path, clock);
}

void printJson(const CommandIo &io, const QJsonObject &object)
{
    io.out << QString::fromUtf8(QJsonDocument(object).toJson(QJsonDocument::Indented));
}

QString columns(const std::vector<QStringList> &rows, const std::vector<int> &right)
{
    std::vector<qsizetype> widths;
    for (const QStringList &row : rows) {
        widths.resize(std::max(widths.size(), static_cast<std::size_t>(row.size())));
        for (qsizetype i = 0; i < row.size(); ++i)
            widths[static_cast<std::size_t>(i)] =
                std::max(widths[static_cast<std::size_t>(i)], row[i].size());
    }
    QString text;
    for (const QStringList &row : rows) {
        QString line;
        for (qsizetype i = 0; i < row.size(); ++i) {
            const bool flushRight =
                std::find(right.begin(), right.end(), static_cast<int>(i)) != right.end();
            const qsizetype width = widths[static_cast<std::size_t>(i)];
            if (i > 0)
                line += QStringLiteral("  ");
            line += flushRight ? row[i].rightJustified(width) : row[i].leftJustified(width);
        }
        while (line.endsWith(u' '))
            line.chop(1);
        text += line + u'\n';
    }
    return text;
}

int runCommand(const Commands &commands, const QStringList &words, CommandIo io)
{
    const QString name = words.value(0);
    if (name == QLatin1String("help") || name == QLatin1String("--help") ||
        name == QLatin1String("-h")) {
        printHelp(commands, io.out);
        return kExitDone;
    }
    if (name == QLatin1String("--version")) {
        io.out << "ohmwright " << QCoreApplication::applicationVersion() << Qt::endl;
        return kExitDone;
    }
    const auto it = std::find_if(commands.begin(), commands.end(),
                                 [&](const auto &c) { return c->name() == name; });
    if (it == commands.end())
        return refuse(io, tr("There is no command “%1”. `ohmwright help` lists them.").arg(name));
    const Command &command = **it;
    QCommandLineParser parser;
    parser.setApplicationDescription(command.summary());
    parser.addOption({QStringLiteral("json"), tr("Print JSON for programs.")});
    parser.addOption({{QStringLiteral("h"), QStringLiteral("help")}, tr("Print this help.")});
    command.describe(parser);
    // the parser takes the first word for the program's name, which here is the command's
    if (!parser.parse(words))
        return refuse(io,
                      parser.errorText().trimmed() + tr(" See `ohmwright %1 --help`.").arg(name));
    if (parser.isSet(QStringLiteral("help"))) {
        io.out << tr("Usage: ohmwright %1 %2").arg(name, command.arguments()) << '\n'
               << command.summary() << "\n\n";
        std::vector<QStringList> rows;
        const QString help = parser.helpText();
        io.out << help.mid(help.indexOf(QLatin1String("Options:")));
        return kExitDone;
    }
    return command.run(parser, parser.positionalArguments(), io);
}

} // namespace ohmwright
