// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/attachment_opener.h"

#include "ui/shell/outside.h"

#include <QCoreApplication>
#include <QFile>
#include <QMimeDatabase>
#include <QTemporaryDir>
#include <QUrl>

namespace ohmwright::ui {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("AttachmentOpener", text);
}

} // namespace

AttachmentOpener::AttachmentOpener(Book &book, Outside &outside) : m_book(book), m_outside(outside)
{}

AttachmentOpener::~AttachmentOpener() = default;

Outcome AttachmentOpener::open(Id<Attachment> id)
{
    const Attachment *attachment = m_book.records().find(id);
    if (!attachment)
        return fail(ProblemCode::NotFound, tr("That photo or paper is not in the book any more."));
    if (attachment->sha256.isEmpty()) {
        const QUrl address = QUrl::fromUserInput(attachment->url.trimmed());
        // a book from elsewhere may hold anything: only pages are opened, never files or programs
        if (!address.isValid() || (address.scheme() != QLatin1String("http") &&
                                   address.scheme() != QLatin1String("https")))
            return fail(ProblemCode::BadInput,
                        tr("“%1” is not the address of a page.").arg(attachment->url),
                        tr("An address starts with https:// or http://."));
        m_outside.openAddress(address);
        return {};
    }
    const Result<QByteArray> bytes = m_book.blob(attachment->sha256);
    if (!bytes)
        return fail(bytes.error());
    if (!m_folder)
        m_folder = std::make_unique<QTemporaryDir>();
    // the book's own name for it: a file name from elsewhere could lead out of the folder
    const QString suffix = QMimeDatabase().mimeTypeForName(attachment->mediaType).preferredSuffix();
    const QString path = m_folder->filePath(attachment->sha256.left(16) + u'.' + suffix);
    if (!QFile::exists(path)) {
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly) || file.write(*bytes) != bytes->size())
            return fail(
                ProblemCode::Io,
                tr("It cannot be laid out for another program: %1.").arg(file.errorString()));
        file.close();
        // what is written into the copy would be lost without a word
        file.setPermissions(QFileDevice::ReadOwner);
    }
    m_outside.openFile(path);
    return {};
}

} // namespace ohmwright::ui
