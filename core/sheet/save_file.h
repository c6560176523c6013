// SPDX-License-Identifier: GPL-3.0-or-later
// Whole files, or none: what is written goes beside the target and takes its name when complete.
#pragma once

#include "core/quantity/result.h"

#include <QByteArray>
#include <QSaveFile>
#include <QString>
#include <QStringList>

#include <vector>

namespace ohmwright::sheet {

// Writes `bytes` to `path`. On failure an older file there is left as it was.
Outcome saveFile(const QString &path, const QByteArray &bytes);

// The same for several files, as many bytes as paths: all are complete on the disk before the first
// takes its name. If one then cannot take it, those before have, and the problem says which.
Outcome saveFiles(const QStringList &paths, const std::vector<QByteArray> &bytes);

// The same in steps, for writers that do not hold the whole file at once:
// open, file().write as often as needed, commit. Without commit nothing happens.
class WholeFile
{
public:
    explicit WholeFile(const QString &path);

    [[nodiscard]] Outcome open();
    [[nodiscard]] QSaveFile &file() { return m_file; }
    [[nodiscard]] Outcome commit();
    // What to tell when a write failed. `wanted`: how many bytes were to be written in all.
    [[nodiscard]] Problem writeProblem(qint64 wanted) const;

private:
    QString m_path;
    QSaveFile m_file;
};

} // namespace ohmwright::sheet
