// SPDX-License-Identifier: GPL-3.0-or-later
// The interchange: everything a book says as one JSON document that another program, or a person
// with an editor, can read and write; attachments lie as files in a folder beside it.
//
//     {"format": "ohmwright", "version": 1, "build": {…}, "vehicle": {…}, "sellers": [{…}, …], …}
//
// Members are the field lists (core/records), by their names and in their order. Records that have
// a key stand in arrays in key order and are referred to by key; owned records stand in an array
// within their owner, and their order is their position. What is not known is left out. Quantities
// are "403 V", money "12.50 EUR", dates "2026-03-01". resources/schema/ohmwright-1.schema.json
// says all of it for other programs (schema.h).
//
// What is read is the same build that was written, but for three things that are not part of it:
// ids are given anew, positions are closed up, and undo steps and history stay behind.
//
// Anything that is wrong is one Problem with one sentence, and nothing is loaded. `where` is a JSON
// pointer to the value at fault, or to the object that lacks it; it is empty when the bytes are not
// a JSON document at all, the sentence then has line and column. Codes: BadInput; NotFound for a
// reference to a key that is not there; Conflict for a key given twice; NotAllowed for records
// that do not go together (core/parts/consistency.h); NewerBook for a version above ours.
#pragma once

#include "core/book/book.h"
#include "core/quantity/result.h"
#include "core/records/records.h"

#include <QByteArray>
#include <QDateTime>
#include <QString>

#include <cstdint>
#include <functional>

namespace ohmwright {

inline constexpr int kInterchangeVersion = 1;

// Gives a new id each time it is called: never 0, never one given before.
using IdSource = std::function<std::int64_t()>;

// Ids like a book's own, rising with time, with chance in them; from the second before `now`, so
// that they cannot meet the ids which a book gives from `now` on. Good for four million.
IdSource idsBefore(const QDateTime &now);

// Works for every book that opens, also for one whose records do not go together (a fault, or an
// older program's leniency): it is the way to rescue it. Such a document is not read back as it is:
// parse names the record at fault, and it can be corrected there.
// UTF-8, indented, ends with a newline; the same records give the same bytes. References must be
// whole, as a book keeps them (asserted).
QByteArray dump(const Records &records);

// All that can be told from the document alone is checked: each record (rules.h), references, and
// the records together. Whether attachments are there is loadFile's.
Result<Records> parse(const QByteArray &json, const IdSource &nextId);

// Where the attachments of a document stand: "van.json" -> "van.attachments".
QString attachmentFolder(const QString &path);

// Writes the document, and the attachments it names as files named by their SHA-256. A document of
// ours that stands at `path` is replaced; any other file there, or one of an attachment's name with
// other bytes, is NotAllowed and nothing is written. The document comes last, so where it stands,
// its attachments are.
Outcome dumpFile(const Book &book, const QString &path);

// Replaces everything in the book by the document at `path`, in one edit that can be undone. Each
// attachment's file must be there and be what its name says.
Outcome loadFile(Book &book, const QString &path);

} // namespace ohmwright
