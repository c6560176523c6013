// SPDX-License-Identifier: GPL-3.0-or-later
// The interchange as files: the document, and the attachments in a folder beside it.
#include "core/interchange/interchange.h"
#include "core/interchange/parsed.h"

#include <QCoreApplication>
#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRandomGenerator>
#include <QRegularExpression>
#include <QSaveFile>
#include <QStorageInfo>

#include <memory>
#include <optional>
#include <set>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Interchange", text);
}

QString shaOf(const QByteArray &bytes)
{
    return QString::fromLatin1(QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex());
}

// A write that stops half way does not always say why: the room left tells.
Problem cannotWrite(const QFileDevice &file, qint64 size)
{
    const QStorageInfo disk(QFileInfo(file.fileName()).absolutePath());
    const bool full = file.error() != QFileDevice::OpenError &&
                      file.error() != QFileDevice::PermissionsError && disk.isValid() &&
                      disk.bytesAvailable() < size;
    if (full || file.error() == QFileDevice::ResourceError)
        return {ProblemCode::DiskFull,
                tr("The disk is full, so “%1” was not written.").arg(file.fileName()),
                tr("Make room and do it again."),
                {}};
    return {ProblemCode::ReadOnly,
            tr("“%1” cannot be written: %2.").arg(file.fileName(), file.errorString()),
            tr("Choose a folder you may write to."),
            {}};
}

Result<QByteArray> readFile(const QString &path)
{
    if (!QFileInfo::exists(path))
        return fail(ProblemCode::NotFound, tr("There is no file “%1”.").arg(path));
    QFile file(path);
    // a folder or a device could go on for ever
    if (!QFileInfo(path).isFile() || !file.open(QIODevice::ReadOnly))
        return fail(ProblemCode::Io, tr("“%1” cannot be read.").arg(path),
                    tr("Check that it is a file you may read."));
    QByteArray bytes = file.readAll();
    if (file.error() != QFileDevice::NoError)
        return fail(ProblemCode::Io, tr("“%1” cannot be read: %2.").arg(path, file.errorString()));
    return bytes;
}

Outcome writeFile(const QString &path, const QByteArray &bytes)
{
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit())
        return fail(cannotWrite(file, bytes.size()));
    return {};
}

// Whether what stands there is a document of ours, told from its beginning.
bool isOurDocument(const QString &path)
{
    static const QRegularExpression kHead(
        QStringLiteral("\\A\\s*\\{\\s*\"format\"\\s*:\\s*\"ohmwright\""));
    QFile file(path);
    return QFileInfo(path).isFile() && file.open(QIODevice::ReadOnly) &&
           kHead.match(QString::fromUtf8(file.read(200))).hasMatch();
}

// The files of attachments being written; takes back what it wrote unless told to keep it.
class AttachmentWriter
{
public:
    AttachmentWriter(const Book &book, QString folder) : m_book(book), m_folder(std::move(folder))
    {}
    ~AttachmentWriter()
    {
        if (m_keep)
            return;
        for (const QString &path : m_written)
            QFile::remove(path);
        if (m_madeFolder)
            QDir().rmdir(m_folder);
    }
    AttachmentWriter(const AttachmentWriter &) = delete;
    AttachmentWriter &operator=(const AttachmentWriter &) = delete;

    // Everything that would be in the way, before anything is written.
    Outcome look()
    {
        const QFileInfo folder(m_folder);
        for (const Attachment &a : m_book.records().all<Attachment>())
            if (!a.sha256.isEmpty())
                m_names.insert(a.sha256);
        if (!m_names.empty() && folder.exists() && !folder.isDir())
            return fail(
                ProblemCode::NotAllowed,
                tr("“%1” is in the way: the attachments need a folder of that name.").arg(m_folder),
                tr("Move it, or choose another name."));
        for (auto it = m_names.begin(); it != m_names.end();) {
            const QString path = pathOf(*it);
            if (!QFileInfo::exists(path)) {
                ++it;
                continue;
            }
            const Result<QByteArray> there = readFile(path);
            if (!there)
                return fail(there.error());
            if (shaOf(*there) != *it)
                return fail(ProblemCode::NotAllowed,
                            tr("Another file “%1” is in the way of an attachment.").arg(path),
                            tr("Move it, or choose another name."));
            it = m_names.erase(it);
        }
        return {};
    }

    Outcome write()
    {
        if (m_names.empty())
            return {};
        if (!QFileInfo::exists(m_folder)) {
            if (!QDir().mkdir(m_folder))
                return fail(ProblemCode::ReadOnly,
                            tr("The folder “%1” cannot be made.").arg(m_folder),
                            tr("Choose a folder you may write to."));
            m_madeFolder = true;
        }
        for (const QString &name : m_names) {
            const Result<QByteArray> bytes = m_book.blob(name);
            if (!bytes)
                return fail(bytes.error());
            if (shaOf(*bytes) != name)
                return fail(ProblemCode::Damaged,
                            tr("The attachment %1 is not what it was when it was added.").arg(name),
                            tr("Work on from your latest copy."));
            if (Outcome done = writeFile(pathOf(name), *bytes); !done)
                return done;
            m_written << pathOf(name);
        }
        return {};
    }

    void keep() { m_keep = true; }

private:
    [[nodiscard]] QString pathOf(const QString &name) const { return m_folder + u'/' + name; }

    const Book &m_book;
    QString m_folder;
    std::set<QString> m_names; // still to be written
    QStringList m_written;
    bool m_madeFolder = false;
    bool m_keep = false;
};

// Inside an edit, before its records: what fails here has touched nothing yet.
Outcome keepAttachments(Book &book, const Parsed &parsed, const QString &folder)
{
    std::set<QString> kept;
    for (qsizetype i = 0; i < parsed.attachmentKeys.size(); ++i) {
        const Attachment &a = *parsed.records.byKey<Attachment>(parsed.attachmentKeys[i]);
        if (a.sha256.isEmpty() || !kept.insert(a.sha256).second)
            continue;
        const auto refuse = [&](ProblemCode code, const QString &sentence) {
            return fail(code, sentence, tr("Nothing was loaded."),
                        QStringLiteral("/attachments/%1/sha256").arg(i));
        };
        const QString path = folder + u'/' + a.sha256;
        if (!QFileInfo::exists(path))
            return refuse(ProblemCode::NotFound,
                          tr("The file of the attachment “%1” is not at “%2”.").arg(a.key, path));
        const Result<QByteArray> bytes = readFile(path);
        if (!bytes)
            return refuse(bytes.error().code, bytes.error().sentence);
        if (shaOf(*bytes) != a.sha256)
            return refuse(ProblemCode::Damaged,
                          tr("The file of the attachment “%1” at “%2” is not what its name says.")
                              .arg(a.key, path));
        if (const Result<QString> done = book.keepBlob(*bytes); !done)
            return fail(done.error());
    }
    return {};
}

} // namespace

IdSource idsBefore(const QDateTime &now)
{
    // as Book::newId: milliseconds above, chance below
    constexpr std::int64_t kSecond = 1000;
    constexpr int kWithin = 1 << 20;
    std::int64_t last = (now.toMSecsSinceEpoch() - kSecond) * kWithin;
    last += QRandomGenerator::global()->bounded(kWithin);
    return [last]() mutable {
        // on average 250 apart: four million of them fill the second
        last += 1 + QRandomGenerator::global()->bounded(499);
        return last;
    };
}

QString attachmentFolder(const QString &path)
{
    const QString ending = QStringLiteral(".json");
    const bool named = path.endsWith(ending, Qt::CaseInsensitive);
    return (named ? path.chopped(ending.size()) : path) + QStringLiteral(".attachments");
}

Outcome dumpFile(const Book &book, const QString &path)
{
    if (QFileInfo::exists(path) && !isOurDocument(path))
        return fail(ProblemCode::NotAllowed,
                    tr("There is already another kind of file “%1”.").arg(path),
                    tr("Choose another name."));
    AttachmentWriter attachments(book, attachmentFolder(path));
    if (Outcome free = attachments.look(); !free)
        return free;
    if (Outcome done = attachments.write(); !done)
        return done;
    if (Outcome done = writeFile(path, dump(book.records())); !done)
        return done;
    attachments.keep();
    return {};
}

Outcome loadFile(Book &book, const QString &path)
{
    const Result<QByteArray> bytes = readFile(path);
    if (!bytes)
        return fail(bytes.error());
    const Result<Parsed> parsed = parseForFiles(*bytes, idsBefore(book.clock().nowUtc()));
    if (!parsed)
        return fail(parsed.error());
    const QString what = tr("Load %1").arg(QFileInfo(path).fileName());
    return book.edit(what, [&]() -> Outcome {
        if (Outcome kept = keepAttachments(book, *parsed, attachmentFolder(path)); !kept)
            return kept;
        return book.replaceAll(parsed->records);
    });
}

} // namespace ohmwright
