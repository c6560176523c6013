// SPDX-License-Identifier: GPL-3.0-or-later
// Book: the one file that holds a whole build, and the one door through which it changes.
//
// Book::edit runs its work in one transaction: one undo step, one history row, one `changed`.
// Inside the work: may fail, touches only the book; after the commit: cannot fail, only caches and
// the signal.
//
//     book.edit(tr("Log a part"), [&]() -> Outcome {
//         const auto seller = book.insert(Seller{…});
//         if (!seller)
//             return fail(seller.error());   // nothing of this edit stays
//         …
//         return {};
//     });
#pragma once

#include "core/book/book_file.h"
#include "core/book/recorder.h"
#include "core/quantity/dates.h"
#include "core/quantity/result.h"
#include "core/records/records.h"

#include <QObject>
#include <QString>

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace ohmwright {

// What an edit, an undo or another window's edit changed. `everything`: read all anew.
struct Change
{
    bool everything = false;
    TouchedRows rows;
    [[nodiscard]] bool touches(const char *table) const
    {
        return everything || rows.contains(table);
    }
    // As if both had come at once.
    void add(const Change &later)
    {
        everything = everything || later.everything;
        for (const auto &[table, touched] : later.rows) {
            auto &mine = rows[table];
            mine.insert(mine.end(), touched.begin(), touched.end());
        }
    }
};

enum class StepState { Done, Undone, Overtaken, Kept };

struct Step
{
    std::int64_t number = 0;
    QDateTime madeAt; // UTC
    QString what;
    StepState state = StepState::Done;
};

class Book : public QObject
{
    Q_OBJECT

public:
    // A new book at `path` (which must not exist), or in memory when empty.
    static Result<std::unique_ptr<Book>> create(const QString &path, const QString &title,
                                                Currency currency, const Clock &clock);
    // NotABook, NewerBook, Damaged, Locked, NotFound… as a Problem, the file untouched. A book that
    // cannot be written (folder, file, or written by a newer version that we can still read) opens
    // for looking: isReadOnly(), and every edit says why.
    static Result<std::unique_ptr<Book>> open(const QString &path, const Clock &clock);
    ~Book() override;

    [[nodiscard]] const QString &path() const { return m_path; }
    [[nodiscard]] bool isReadOnly() const { return m_readOnly.has_value(); }
    [[nodiscard]] const Clock &clock() const { return m_clock; }
    // Current also inside an edit.
    [[nodiscard]] const Records &records() const { return m_records; }

    // An edit inside an edit is part of it; the outer one must pass its failure on. One that
    // changes nothing makes no step. Conflict, with the book brought up to date, if another window
    // changed it since this one looked.
    Outcome edit(const QString &what, const std::function<Outcome()> &work);

    // Only inside edit(). The record's own rules (rules.h) are checked first.
    template <class R>
    Result<Id<R>> insert(R row);
    template <class R>
    Outcome update(const R &row);
    template <class R>
    Outcome remove(Id<R> id);
    // Everything replaced by `records`, whose ids are kept; only inside edit().
    Outcome replaceAll(const Records &records);
    // Keeps bytes under their SHA-256 (returned, lower-case hex); allowed outside an edit, for they
    // are named by their content and nothing refers to them yet.
    Result<QString> keepBlob(const QByteArray &bytes);
    [[nodiscard]] Result<QByteArray> blob(const QString &sha256) const;

    [[nodiscard]] std::optional<QString> undoText() const { return m_undoText; }
    [[nodiscard]] std::optional<QString> redoText() const { return m_redoText; }
    Outcome undo();
    Outcome redo();
    // What was done so far stays as history and is no longer undone: of a book that begins with
    // what was loaded into it, whose first undo would empty it.
    Outcome settle();
    [[nodiscard]] Result<std::vector<Step>> history() const; // oldest first
    // Empty for a step that can no longer be undone: what it changed is not kept.
    [[nodiscard]] Result<TouchedRows> touchedBy(std::int64_t step) const;

    // Counts every edit ever made to this book; printed on the sheet.
    [[nodiscard]] Result<std::int64_t> revision() const;

    // Looks whether another window has changed the file and reads it anew if so. True if it had.
    Result<bool> refresh();

    // A whole, compact copy, synced; refuses to overwrite.
    Outcome saveCopy(const QString &path) const;
    // A copy in memory that can be undone as far as this one, but without the bytes of attachments:
    // to look back without touching this one.
    [[nodiscard]] Result<std::unique_ptr<Book>> copyInMemory() const;

    // SQLite's own integrity and reference checks, and every blob against its name. Sentences of
    // what is wrong; empty when all is well.
    [[nodiscard]] Result<QStringList> checkFile() const;

signals:
    void changed(const ohmwright::Change &change);

private:
    Book(QString path, std::unique_ptr<FileConnection> connection, const Clock &clock);
    Outcome start();
    Outcome loadAll();
    Outcome reload(const TouchedRows &rows);
    Outcome readSteps();
    Outcome checkUnchangedSince();
    Outcome storeStep(const QString &what, const QByteArray &changeset);
    Outcome travel(bool back);
    [[nodiscard]] Outcome refuseWrite() const;
    std::int64_t newId();
    template <class R>
    Outcome loadTable(Table<R> &table) const;

    QString m_path;
    std::unique_ptr<FileConnection> m_connection;
    const Clock &m_clock;
    std::optional<Problem> m_readOnly;
    Records m_records;
    bool m_editing = false;
    bool m_outOfStep = false; // memory may differ from the file: read anew before anything else
    std::int64_t m_lastId = 0;
    std::int64_t m_dataVersion = 0;
    std::optional<QString> m_undoText, m_redoText;
};

} // namespace ohmwright
