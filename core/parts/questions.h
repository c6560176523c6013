// SPDX-License-Identifier: GPL-3.0-or-later
// Open questions: figures that something asks for and that are not known. And only those: an
// unknown figure nobody asks for is no question.
//
// Who asks: a circuit asks each part on it what voltage it withstands, and, where the branch's
// current is known, what current; the build sheet asks the mass of what is connected; a task asks
// for the figures it needs. What a check asks for is found out by working it (core/verdicts), and
// joined to these.
#pragma once

#include "core/book/book.h"
#include "core/parts/figures.h"

#include <QStringList>

#include <vector>

namespace ohmwright {

struct Question
{
    Id<Part> part;
    FigureName figure;
    QStringList askedBy;         // "circuit Traction", "task Build pack", "the build sheet"
    std::vector<Id<Task>> tasks; // open tasks that need it
    QString note;                // what was said when it was looked for in vain
    bool operator==(const Question &) const = default;
};

// By part key, then figure.
std::vector<Question> openQuestions(const Records &records);
// Only those of one part; cheaper.
std::vector<Question> openQuestions(const Records &records, Id<Part> part);
// Both lists as one: a figure asked for in both is one question with all who ask. Of `others`,
// which may be of a moment ago, only what is still not known of a part still in the build.
std::vector<Question> joined(const Records &records, std::vector<Question> questions,
                             std::vector<Question> others);
// What a part on these circuits will be asked, known or not; for the log-a-part sheet.
std::vector<FigureName> figuresAskedOn(const Circuit &circuit);

// One edit: a find-out task, and every open task that needs the part or the figure waits on it; a
// direct need for the figure is replaced by that wait. Returns the new task.
Result<Id<Task>> makeFindOutTask(Book &book, const Question &question);
// Its title: “Find out: what”.
QString findOutTitle(const QString &what);
QString findOutTitle(const Records &records, const Question &question);
// The open task of that title; null for none.
const Task *findOutTask(const Records &records, const QString &title);
// The same for a figure that is no rating: “Find out: what”, asked by what is told. Open tasks that
// need the part wait on it. One that is on the build order already, and open, is given back.
Result<Id<Task>> makeFindOutTask(Book &book, const QString &what, const QString &askedBy,
                                 std::optional<Id<Part>> part);

} // namespace ohmwright
