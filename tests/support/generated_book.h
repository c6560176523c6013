// SPDX-License-Identifier: GPL-3.0-or-later
// Books made by chance, for property tests and benchmarks: valid in every rule, covering every kind
// of record, and otherwise as odd as a book may be.
//
//     const GeneratedBook generated = generateBook(seed);
//     book->edit("Fill", [&] { return fill(*book, generated); });
//
// The same seed and size give the same book on every machine.
#pragma once

#include "core/book/book.h"
#include "core/quantity/result.h"
#include "core/records/records.h"

#include <QByteArray>
#include <QString>

#include <cstdint>
#include <map>

namespace ohmwright {

// How many of each; the owned ones come along by chance.
struct BookSize
{
    int sellers = 4, donors = 3, types = 4, circuits = 3, branches = 4, lines = 4, dayRates = 4;
    int purchases = 4, parts = 14, lostFunctions = 3, gotBack = 3, tasks = 14, letters = 4;
    int tests = 4, masses = 4;
    int figures = 12, curves = 3, interfaces = 3, wires = 4, safetySystems = 4, permits = 4;
    int attachments = 8;
    int workingTimes = 3, choices = 3, workEntries = 6;

    static BookSize tiny(); // one or two of each
    static BookSize small() { return {}; }
    static BookSize usual(); // 300 parts, 150 tasks, 500 photos
    static BookSize large(); // 20,000 parts, 2,000 tasks
};

enum class Texts {
    Plain,   // words
    Hostile, // control characters, quotes, scripts of every direction, what breaks a careless
             // writer
};

struct GeneratedBook
{
    Records records;                     // ids set, rising in an order that is not the keys'
    std::map<QString, QByteArray> blobs; // of the attachments, by SHA-256
};

GeneratedBook generateBook(std::uint32_t seed, const BookSize &size = {},
                           Texts texts = Texts::Hostile);

// Inside an edit: everything replaced by the generated book.
Outcome fill(Book &book, const GeneratedBook &generated);

// The same records with ids counted from 1 in key order, and positions from 0: two books that say
// the same become equal.
Records withPlainIds(const Records &records);

} // namespace ohmwright
