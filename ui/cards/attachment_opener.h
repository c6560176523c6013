// SPDX-License-Identifier: GPL-3.0-or-later
// Opens photos, papers and links of a book in whatever program the desktop has for them.
#pragma once

#include "core/book/book.h"

#include <memory>

class QTemporaryDir;

namespace ohmwright::ui {

class Outside;

class AttachmentOpener
{
public:
    AttachmentOpener(Book &book, Outside &outside);
    ~AttachmentOpener();
    AttachmentOpener(const AttachmentOpener &) = delete;
    AttachmentOpener &operator=(const AttachmentOpener &) = delete;

    // A file goes out as a copy, which may not be written to and lives as long as this opener.
    // NotFound if there is none; BadInput if the link is no address of a page; the book's problem
    // if the file cannot be read from it, Io if it cannot be laid out.
    Outcome open(Id<Attachment> id);

private:
    Book &m_book;
    Outside &m_outside;
    std::unique_ptr<QTemporaryDir> m_folder;
};

} // namespace ohmwright::ui
