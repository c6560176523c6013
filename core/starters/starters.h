// SPDX-License-Identifier: GPL-3.0-or-later
// Starters: ready-made networks for the usual kinds of conversion. A builder picks one, answers six
// questions, and has a book with tasks, letters, tests, parts and budget lines that go together.
//
// They are data (resources/starters; the format is resources/schema/starter-1.schema.json). What
// they have in common stands in common.json; a starter's own file adds to it and changes it. All
// hours, days and sums in them are common practice, no published source.
//
//     const StarterAnswers answers = *readAnswers(*findStarter(u"gearbox"), {"charging=dc"});
//     Result<Records> records = starterRecords(u"gearbox", answers, {title, currency, today}, ids);
#pragma once

#include "core/interchange/interchange.h"
#include "core/quantity/money.h"
#include "core/quantity/result.h"
#include "core/records/records.h"

#include <QDate>
#include <QMap>
#include <QString>
#include <QStringList>

#include <vector>

namespace ohmwright {

struct StarterAnswer
{
    QString key;
    QString says;  // as the builder would say it
    QString means; // what it does to the book; may be empty
};

struct StarterQuestion
{
    QString key;
    QString asks;
    QString why;                        // what hangs on it; may be empty
    std::vector<StarterAnswer> answers; // at least two
    QString usual;                      // key of the answer taken when none is given
};

struct Starter
{
    QString name; // "gearbox"
    QString title, summary;
    QString suits;                          // which vehicle it is for, and its long wait
    std::vector<StarterQuestion> questions; // six, in the order to ask them
};

// Key of the question, key of the answer. What is missing is answered as usual.
using StarterAnswers = QMap<QString, QString>;

// In the order to offer them.
std::vector<Starter> starters();

// NotFound, with the names there are, for any other.
Result<Starter> findStarter(const QString &name);

// Each word is QUESTION=ANSWER. BadInput, with the choices there are, for an unknown question or
// answer, for a question answered twice, or a word without "=".
Result<StarterAnswers> readAnswers(const Starter &starter, const QStringList &words);

struct StarterBook
{
    QString title;
    Currency currency; // in any but the starter's own, allowances are zero and their notes say so
    QDate today;       // the first move of every part; milestones' wishes are reckoned from it
};

// The interchange document of such a book, before anything is read: for whoever wants it as JSON.
// NotFound or BadInput as above; BadInput with a JSON pointer into a starter's file if that is at
// fault.
Result<QByteArray> starterDocument(const QString &name, const StarterAnswers &answers,
                                   const StarterBook &book);

// The same as records: the document as the interchange reads it, so everything that it refuses is
// refused here, and each milestone with a date to wish for: the longer of its chain of waits, and
// eight tenths more, and of its work at the hours of the working times, and as much again. A rule
// of thumb, no published source, chosen so that forecasts of the starters with their usual answers
// keep the dates at 80 %.
Result<Records> starterRecords(const QString &name, const StarterAnswers &answers,
                               const StarterBook &book, const IdSource &nextId);

// A new book at `path`, or in memory when empty, filled from the starter in one edit that can be
// undone. Nothing is left at `path` when it fails.
Result<std::unique_ptr<Book>> createFromStarter(const QString &path, const QString &name,
                                                const StarterAnswers &answers, const QString &title,
                                                Currency currency, const Clock &clock);

} // namespace ohmwright
