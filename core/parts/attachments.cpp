// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/attachments.h"

#include "core/parts/keys.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QMimeDatabase>
#include <QUrl>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Attachments", text);
}

tl::unexpected<Problem> bad(const char *where, const QString &sentence, const QString &whatToDo)
{
    return fail(ProblemCode::BadInput, sentence, whatToDo, QString::fromLatin1(where));
}

} // namespace

Result<std::vector<NewFile>> readFiles(const QStringList &paths)
{
    std::vector<NewFile> files;
    for (const QString &path : paths) {
        QFile file(path);
        if (!file.open(QIODevice::ReadOnly))
            return fail(ProblemCode::Io,
                        tr("%1 cannot be read: %2.").arg(path, file.errorString()));
        NewFile one{file.readAll(), QFileInfo(path).fileName(), {}};
        one.mediaType = QMimeDatabase().mimeTypeForFileNameAndData(path, one.bytes).name();
        files.push_back(std::move(one));
    }
    return files;
}

Outcome addFiles(Book &book, const std::vector<NewFile> &files, const Attachment &like)
{
    if (files.empty())
        return {};
    const QString called = like.title.isEmpty() ? files.front().fileName : like.title;
    return book.edit(tr("Add photos and papers, “%1”").arg(called), [&]() -> Outcome {
        for (const NewFile &file : files) {
            const Result<QString> sha = book.keepBlob(file.bytes);
            if (!sha)
                return fail(sha.error());
            Attachment row = like;
            const bool photo = file.mediaType.startsWith(QLatin1String("image/"));
            row.kind = photo ? AttachmentKind::Photo : AttachmentKind::Document;
            if (row.title.isEmpty())
                row.title = QFileInfo(file.fileName).completeBaseName();
            row.key = freshKey<Attachment>(
                book.records(), QString(row.title + u' ' + (photo ? tr("photo") : tr("paper"))));
            row.fileName = file.fileName;
            row.mediaType = file.mediaType;
            row.sha256 = *sha;
            if (const auto made = book.insert(row); !made)
                return fail(made.error());
        }
        return {};
    });
}

Outcome addLink(Book &book, const QString &url, const QString &title, std::optional<QDate> readOn,
                const Attachment &like)
{
    const QUrl address(url.trimmed(), QUrl::StrictMode);
    const bool web =
        address.isValid() && !address.host().isEmpty() &&
        (address.scheme() == QLatin1String("https") || address.scheme() == QLatin1String("http"));
    if (!web)
        return bad("url", tr("This is not the address of a page."),
                   tr("Paste it whole, with https:// in front."));
    if (!readOn)
        return bad("read_on", tr("Say on which day it was read."),
                   tr("A page may say something else tomorrow."));
    if (*readOn > book.clock().today())
        return bad("read_on", tr("It cannot have been read on a day to come."), {});
    Attachment row = like;
    row.kind = AttachmentKind::Link;
    row.url = url.trimmed();
    row.readOn = readOn;
    row.title = title.trimmed().isEmpty() ? row.url : title.trimmed();
    return book.edit(tr("Add the link “%1”").arg(row.title), [&]() -> Outcome {
        row.key = freshKey<Attachment>(book.records(), row.title);
        const auto made = book.insert(row);
        return made ? Outcome() : Outcome(fail(made.error()));
    });
}

} // namespace ohmwright
