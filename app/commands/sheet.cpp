// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright sheet BOOK --out FILE.pdf|.html [--working full|short]
#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/diagram/one_line.h"
#include "core/sheet/build_sheet.h"
#include "core/sheet/html_writer.h"
#include "core/verdicts/asked_by_checks.h"
#include "core/verdicts/judge_book.h"
#include "core/verdicts/turning_words.h"
#include "ui/checks/plot_files.h"
#include "ui/sheet/pdf_writer.h"
#include "ui/sheet/picture.h"

#include <QCoreApplication>

namespace ohmwright {

namespace {

class SheetCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(SheetCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("sheet"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("Writes the build sheet for the inspector.");
    }
    [[nodiscard]] QString arguments() const override
    {
        return QStringLiteral("BOOK --out FILE.pdf|.html [--working full|short]");
    }
    [[nodiscard]] bool draws() const override { return true; }

    void describe(QCommandLineParser &parser) const override
    {
        parser.addOption({QStringLiteral("out"),
                          tr("The file to write; its ending says what kind."), tr("file")});
        parser.addOption({QStringLiteral("working"),
                          tr("How the checks are worked at the end. short: what fails, is unknown "
                             "or tight first and in full, what holds tabled where several are "
                             "alike. full: each one in full. Neither leaves out a figure, its "
                             "evidence, a formula or a source."),
                          tr("full|short"), wordOf(Working::Short)});
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        const QString path = options.value(QStringLiteral("out"));
        if (positional.size() != 1 || path.isEmpty())
            return refuse(io,
                          tr("Say which book and where to: ohmwright sheet BOOK --out FILE.pdf."));
        const bool pdf = path.endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive);
        if (!pdf && !path.endsWith(QLatin1String(".html"), Qt::CaseInsensitive))
            return refuse(
                io, tr("The build sheet is written as .pdf or .html, not as “%1”.").arg(path));
        const QString word = options.value(QStringLiteral("working"));
        const std::optional<Working> working = fromWord<Working>(word);
        if (!working)
            return refuse(io, tr("Checks are worked full or short, not “%1”.").arg(word));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const Result<std::int64_t> revision = (*book)->revision();
        if (!revision)
            return refuse(io, revision.error());
        const Records &records = (*book)->records();
        std::vector<Check> checks = checksOf(**book, io.clock.today());
        std::vector<Question> asked = askedByChecks(records, checks);
        const sheet::Document document =
            buildSheet(records, {io.clock.today(), *revision, oneLineOf(records).svg, ui::plotSvg,
                                 std::move(checks), std::move(asked), *working});
        const sheet::ImageLoader loader = sheet::reducedPictures([&](const sheet::Image &image) {
            return image.bytes.isEmpty() ? (*book)->blob(image.id).value_or(QByteArray())
                                         : image.bytes;
        });
        Outcome written;
        if (pdf) {
            sheet::PdfOptions how;
            how.loader = loader;
            written = sheet::writePdf(document, path, how);
        } else {
            written = sheet::writeHtml(document, path, loader);
        }
        if (!written)
            return refuse(io, written.error());
        if (options.isSet(QStringLiteral("json")))
            printJson(io, {{QStringLiteral("file"), path},
                           {QStringLiteral("content_hash"), document.contentHash},
                           {QStringLiteral("revision"), static_cast<qint64>(*revision)}});
        else
            io.out << tr("Wrote %1, %2, content %3.")
                          .arg(path, document.revision, document.contentHash.left(16))
                   << Qt::endl;
        return kExitDone;
    }

private:
    static std::vector<Check> checksOf(const Book &book, QDate today)
    {
        std::vector<Check> checks = judgeBook(book.records(), today);
        sortByDanger(checks);
        return withMending(book.records(), today, std::move(checks));
    }
};

} // namespace

std::unique_ptr<Command> makeSheetCommand()
{
    return std::make_unique<SheetCommand>();
}

} // namespace ohmwright
