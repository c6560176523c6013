// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/pdf_writer.h"

#include "core/sheet/save_file.h"
#include "ui/sheet/pdf_finish.h"
#include "ui/sheet/sheet_style.h"

#include <QFileInfo>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QTemporaryFile>

namespace ohmwright::sheet {

namespace {

enum class Painted { Whole, Stopped, Failed };

Painted paintPages(const PagedLayout &layout, QIODevice &device, const PdfOptions &options)
{
    QPdfWriter writer(&device);
    writer.setTitle(layout.document().title.simplified());
    writer.setCreator(QStringLiteral("Ohmwright"));
    writer.setResolution(static_cast<int>(kUnitsPerInch));
    writer.setPageLayout(QPageLayout(
        QPageSize(layout.pageSize(), QPageSize::Point, QString(), QPageSize::ExactMatch),
        QPageLayout::Portrait, QMarginsF()));
    QPainter painter;
    if (!painter.begin(&writer))
        return Painted::Failed;
    painter.scale(kUnitsPerPoint, kUnitsPerPoint);
    for (int page = 0; page < layout.pageCount(); ++page) {
        if (page > 0 && !writer.newPage())
            return Painted::Failed;
        layout.paintPage(painter, page);
        if (options.progress && !options.progress(page + 1, layout.pageCount()))
            return Painted::Stopped;
    }
    return painter.end() ? Painted::Whole : Painted::Failed;
}

} // namespace

Outcome writePdf(const PagedLayout &layout, const QString &path, const PdfOptions &options)
{
    WholeFile target(path);
    if (Outcome opened = target.open(); !opened)
        return opened;
    // Beside the target, so that one disk's room and rights decide for both.
    QTemporaryFile raw(QFileInfo(path).absolutePath() + QStringLiteral("/.ohmwright-XXXXXX.part"));
    const auto giveUp = [&](const Problem &problem) {
        target.file().cancelWriting();
        return fail(problem);
    };
    if (!raw.open())
        return giveUp(target.writeProblem(1));
    const Painted painted = paintPages(layout, raw, options);
    if (painted == Painted::Stopped) {
        return giveUp({ProblemCode::NotAllowed,
                       QStringLiteral("The work was stopped before the file was whole."),
                       QStringLiteral("Nothing was changed."),
                       {}});
    }
    const qint64 size = raw.size();
    if (painted == Painted::Failed || !raw.flush() || raw.error() != QFileDevice::NoError)
        return giveUp(target.writeProblem(size + 1));

    const auto sink = [&target](QByteArrayView bytes) {
        return target.file().write(bytes.data(), bytes.size()) == bytes.size();
    };
    if (!finishPdf(raw.fileName(), layout, options.madeAt, sink))
        return giveUp(target.writeProblem(size));
    return target.commit();
}

Outcome writePdf(const Document &document, const QString &path, const PdfOptions &options)
{
    return writePdf(PagedLayout(document, options.loader, options.pageSize), path, options);
}

} // namespace ohmwright::sheet
