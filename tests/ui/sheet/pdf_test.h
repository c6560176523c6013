// SPDX-License-Identifier: GPL-3.0-or-later
// A folder to write PDFs into, and other programs to look at them with.
#pragma once

#include "ui/sheet/pdf_writer.h"

#include <QByteArray>
#include <QString>
#include <QStringList>
#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace ohmwright::sheet {

struct ToolRun
{
    int exitCode = -1;
    QString output;
};

// qpdf's and poppler's tools. Fails the test when the program is not there.
ToolRun runTool(const QString &program, const QStringList &arguments);

QByteArray contentsOf(const QString &path);

class PdfTest : public testing::Test
{
protected:
    QString write(const Document &document, const PdfOptions &options = {});
    [[nodiscard]] QStringList filesInFolder() const;
    QTemporaryDir m_folder;
};

// The sample and a table of 200 rows.
Document withLongTable();

} // namespace ohmwright::sheet
