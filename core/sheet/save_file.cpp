// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/save_file.h"

#include <QDir>
#include <QFileInfo>
#include <QStorageInfo>

namespace ohmwright::sheet {

namespace {

QString shown(const QString &path)
{
    return QDir::toNativeSeparators(path);
}

} // namespace

WholeFile::WholeFile(const QString &path) : m_path(path), m_file(path)
{
    // Without this a folder that takes no new files would be written to in place.
    m_file.setDirectWriteFallback(false);
}

Outcome WholeFile::open()
{
    const QFileInfo target(m_path);
    const QString folder = target.absolutePath();
    if (m_path.isEmpty()) {
        return fail(ProblemCode::BadInput, QStringLiteral("No file name was given."),
                    QStringLiteral("Name the file to write."));
    }
    if (target.isDir()) {
        return fail(ProblemCode::BadInput,
                    QStringLiteral("%1 is a folder, not a file.").arg(shown(m_path)),
                    QStringLiteral("Give the file a name inside it."));
    }
    if (!QFileInfo(folder).isDir()) {
        return fail(ProblemCode::NotFound,
                    QStringLiteral("There is no folder %1.").arg(shown(folder)),
                    QStringLiteral("Make the folder, or choose another."));
    }
    if (!m_file.open(QIODevice::WriteOnly)) {
        const QStorageInfo storage(folder);
        const bool mayWrite = !storage.isReadOnly() && QFileInfo(folder).isWritable();
        if (mayWrite && storage.bytesAvailable() == 0)
            return fail(writeProblem(1));
        return fail(ProblemCode::ReadOnly,
                    QStringLiteral("%1 cannot be written.").arg(shown(m_path)),
                    QStringLiteral("Choose a folder you may write to, or change its permissions."));
    }
    return {};
}

Outcome WholeFile::commit()
{
    const qint64 wanted = m_file.size();
    if (!m_file.commit())
        return fail(writeProblem(wanted));
    return {};
}

Problem WholeFile::writeProblem(qint64 wanted) const
{
    // Qt keeps no code for a full disk, so the disk is asked.
    const QStorageInfo storage(QFileInfo(m_path).absolutePath());
    if (storage.isValid() && storage.bytesAvailable() < wanted) {
        return {ProblemCode::DiskFull,
                QStringLiteral("There is no room left on the disk for %1.").arg(shown(m_path)),
                QStringLiteral("Free some space, or choose another disk. Nothing was changed."),
                {}};
    }
    return {ProblemCode::Io,
            QStringLiteral("%1 could not be written.").arg(shown(m_path)),
            QStringLiteral("Check the disk, or choose another folder. Nothing was changed."),
            {}};
}

Outcome saveFile(const QString &path, const QByteArray &bytes)
{
    WholeFile whole(path);
    if (Outcome opened = whole.open(); !opened)
        return opened;
    if (whole.file().write(bytes) != bytes.size()) {
        whole.file().cancelWriting();
        return fail(whole.writeProblem(bytes.size()));
    }
    return whole.commit();
}

} // namespace ohmwright::sheet
