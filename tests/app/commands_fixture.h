// SPDX-License-Identifier: GPL-3.0-or-later
// Runs a headless command as a script would, on a book in a folder of its own.
#pragma once

#include "app/command.h"
#include "tests/support/test_book.h"

#include <QDir>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QTemporaryDir>

#include <gmock/gmock.h>

namespace ohmwright {

using testing::HasSubstr;

class CommandsTest : public testing::Test
{
protected:
    int run(const QStringList &words)
    {
        out.clear();
        err.clear();
        QTextStream outStream(&out);
        QTextStream errStream(&err);
        const int code = runCommand(allCommands(), words, {outStream, errStream, clock});
        outStream.flush();
        errStream.flush();
        return code;
    }
    QString at(const char *name) const { return m_folder.filePath(QLatin1String(name)); }
    QString book() const { return at("van.ohmwright"); }
    QJsonObject json() const { return QJsonDocument::fromJson(out.toUtf8()).object(); }
    static QByteArray contentOf(const QString &path)
    {
        QFile file(path);
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }

    void TearDown() override { kShellCheck.takeAll(m_folder.path()); }

    FixedClock clock;
    QString out, err;

private:
    QTemporaryDir m_folder;
};

} // namespace ohmwright
