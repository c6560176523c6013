// SPDX-License-Identifier: GPL-3.0-or-later
// A headless command: one file each, run with streams so that tests can call it directly.
//
// Exit codes: 0 done; 1 done, and the answer is bad news; 2 bad use or bad input, a sentence on
// err, the book untouched.
#pragma once

#include "core/quantity/dates.h"
#include "core/quantity/result.h"

#include <QCommandLineParser>
#include <QJsonObject>
#include <QString>
#include <QStringList>
#include <QTextStream>

#include <functional>
#include <memory>
#include <vector>

namespace ohmwright {

class Book;

inline constexpr int kExitDone = 0;
inline constexpr int kExitBadNews = 1;
inline constexpr int kExitBadUse = 2;

struct CommandIo
{
    QTextStream &out;
    QTextStream &err;
    const Clock &clock;
};

class Command
{
public:
    virtual ~Command() = default;
    [[nodiscard]] virtual QString name() const = 0;
    [[nodiscard]] virtual QString summary() const = 0;
    // What stands after the name: "BOOK [FILE.json]".
    [[nodiscard]] virtual QString arguments() const = 0;
    [[nodiscard]] virtual bool draws() const { return false; } // needs fonts
    // Options beyond --json and --help.
    virtual void describe(QCommandLineParser &) const {}
    // `positional` are the words after the name.
    virtual int run(const QCommandLineParser &options, const QStringList &positional,
                    CommandIo io) const = 0;
};

using Commands = std::vector<std::unique_ptr<Command>>;
Commands allCommands();

// `words`: the command's name and what follows it. Prints help on --help; 2 for an unknown command.
int runCommand(const Commands &commands, const QStringList &words, CommandIo io);

// Shared by the commands -----------------------------------------------------------------------

// The Problem's sentence, and what to do, on err.
int refuse(const CommandIo &io, const Problem &problem);
int refuse(const CommandIo &io, const QString &sentence);
Result<std::unique_ptr<Book>> openBook(const QString &path, const Clock &clock);
void printJson(const CommandIo &io, const QJsonObject &object);

// Columns padded to their widest cell, two spaces between; `right` columns flush right.
QString columns(const std::vector<QStringList> &rows, const std::vector<int> &right = {});

} // namespace ohmwright
