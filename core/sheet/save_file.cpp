// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/save_file.h"

#include <QDir>
#include <QFileInfo>
#include <QStorageInfo>

#include <memory>

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
    return saveFiles({path}, {bytes});
}

Outcome saveFiles(const QStringList &paths, const std::vector<QByteArray> &bytes)
{
    std::vector<std::unique_ptr<WholeFile>> files;
    for (std::size_t at = 0; at < bytes.size(); ++at) {
        files.push_back(std::make_unique<WholeFile>(paths[static_cast<qsizetype>(at)]));
        WholeFile &whole = *files.back();
        if (Outcome opened = whole.open(); !opened)
            return opened;
        if (whole.file().write(bytes[at]) != bytes[at].size() || !whole.file().flush())
            return fail(whole.writeProblem(bytes[at].size()));
    }
    for (std::size_t at = 0; at < files.size(); ++at) {
        const Outcome saved = files[at]->commit();
        if (saved)
            continue;
        Problem problem = saved.error();
        if (at > 0)
            problem.whatToDo = QStringLiteral("Check the disk. %1 of %2 files are new, up to %3.")
                                   .arg(at)
                                   .arg(files.size())
                                   .arg(shown(paths[static_cast<qsizetype>(at) - 1]));
        return tl::unexpected(problem);
    }
    return {};
}

} // namespace ohmwright::sheet
