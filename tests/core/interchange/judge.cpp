// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/interchange/judge.h"

#include <QFile>
#include <QProcess>
#include <QTemporaryDir>

namespace ohmwright {

QString committedSchemaPath()
{
    return QStringLiteral(OHMWRIGHT_SOURCE_DIR "/resources/schema/ohmwright-1.schema.json");
}

std::optional<std::vector<bool>> judge(const std::vector<std::string> &documents,
                                       std::string &trouble)
{
    const QTemporaryDir folder;
    QFile file(folder.filePath(QStringLiteral("documents")));
    if (!file.open(QIODevice::WriteOnly)) {
        trouble = "no temporary file";
        return std::nullopt;
    }
    for (const std::string &document : documents)
        file.write((document + '\n').c_str());
    file.close();
    QProcess process;
    // not any python3 on the path: Debian's own sees Debian's modules
    process.start(QStringLiteral("/usr/bin/python3"),
                  {QStringLiteral(OHMWRIGHT_SOURCE_DIR "/tests/core/interchange/validate.py"),
                   committedSchemaPath(), file.fileName()});
    constexpr int kPatience = 300'000; // ms
    process.waitForFinished(kPatience);
    if (process.exitStatus() != QProcess::NormalExit || process.exitCode() != 0) {
        trouble =
            "is python3-jsonschema installed? " + process.readAllStandardError().toStdString();
        return std::nullopt;
    }
    std::vector<bool> verdicts;
    for (const QByteArray &line : process.readAllStandardOutput().split('\n'))
        if (!line.isEmpty())
            verdicts.push_back(line == "valid");
    return verdicts;
}

} // namespace ohmwright
