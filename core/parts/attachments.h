// SPDX-License-Identifier: GPL-3.0-or-later
// Photos and papers into the book, and links with the day they were read.
#pragma once

#include "core/book/book.h"

#include <QByteArray>
#include <QString>
#include <QStringList>

#include <vector>

namespace ohmwright {

struct NewFile
{
    QByteArray bytes;
    QString fileName, mediaType;
};

// From the disk, with their media types; Io for the first that cannot be read.
Result<std::vector<NewFile>> readFiles(const QStringList &paths);

// In one edit. `like` says what they belong to, and their title; without one each is called by its
// file. Pictures become photos, all else documents.
Outcome addFiles(Book &book, const std::vector<NewFile> &files, const Attachment &like);

// `url` is a web address ("https://…"); `title` may be empty. Problems at "url", "read_on".
Outcome addLink(Book &book, const QString &url, const QString &title, std::optional<QDate> readOn,
                const Attachment &like);

} // namespace ohmwright
