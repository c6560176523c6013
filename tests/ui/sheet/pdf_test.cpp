// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/sheet/pdf_test.h"

#include "core/sheet/content_hash.h"
#include "tests/ui/sheet/sample_document.h"

#include <QDir>
#include <QFile>
#include <QProcess>

namespace ohmwright::sheet {

ToolRun runTool(const QString &program, const QStringList &arguments)
{
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished(60000))
        << program.toStdString() << " is needed: install qpdf and poppler-utils";
    return {process.exitCode(), QString::fromUtf8(process.readAllStandardOutput())};
}

QByteArray contentsOf(const QString &path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

QString PdfTest::write(const Document &document, const PdfOptions &options)
{
    const QString path = m_folder.filePath("sheet.pdf");
    const Outcome done = writePdf(document, path, options);
    EXPECT_TRUE(done.has_value()) << (done ? "" : done.error().sentence.toStdString());
    return path;
}

QStringList PdfTest::filesInFolder() const
{
    return QDir(m_folder.path()).entryList(QDir::Files | QDir::Hidden);
}

Document withLongTable()
{
    Document d = sampleDocument();
    d.blocks.push_back(Heading{1, "Wires", "wires"});
    d.blocks.push_back(longTable(200));
    d.contentHash = contentHash(d);
    return d;
}

} // namespace ohmwright::sheet
