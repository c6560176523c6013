// SPDX-License-Identifier: GPL-3.0-or-later
// Draws the pictures of the demo build and makes its JSON ready to load.
//
//     ohmwright_draw_pictures DEMO_DIR OUT_DIR
//
// Reads DEMO_DIR/build.json. Each attachment there that has a file stands for a drawing: file_name
// "motor.png" is DEMO_DIR/pictures/motor.svg. Writes them as PNG to OUT_DIR/build.attachments/,
// each named by its SHA-256, and OUT_DIR/build.json, which is DEMO_DIR/build.json with those names
// in the place of the zeros. The bytes of a PNG may differ from one machine to the next, so the
// names can only be told where it was drawn. Exits 0, or 2 with a sentence on stderr.
#include "core/quantity/result.h"

#include <QBuffer>
#include <QByteArray>
#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFontDatabase>
#include <QGuiApplication>
#include <QImage>
#include <QImageWriter>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QPainter>
#include <QSaveFile>
#include <QString>
#include <QStringList>
#include <QSvgRenderer>

#include "resources/resources.h"
#include <cstdio>

namespace {

using ohmwright::fail;
using ohmwright::Outcome;
using ohmwright::ProblemCode;
using ohmwright::Result;

// Pixels for one unit of a drawing: fine enough to be read when printed over half a page.
constexpr double kScale = 1.5;

QByteArray notYetKnown()
{
    return QByteArray(64, '0');
}

Result<QByteArray> readFile(const QString &path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return fail(ProblemCode::NotFound,
                    QStringLiteral("“%1” cannot be read: %2.").arg(path, file.errorString()));
    return file.readAll();
}

Outcome writeFile(const QString &path, const QByteArray &bytes)
{
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit())
        return fail(ProblemCode::Io,
                    QStringLiteral("“%1” cannot be written: %2.").arg(path, file.errorString()));
    return {};
}

Outcome makeFolder(const QString &path)
{
    if (QDir().mkpath(path))
        return {};
    return fail(ProblemCode::Io, QStringLiteral("The folder “%1” cannot be made.").arg(path));
}

// The drawings are lettered in the program's own font: the same look on every machine.
Outcome loadFonts()
{
    for (const char *weight : {"Regular", "Medium", "SemiBold", "Bold"}) {
        const QString path =
            QStringLiteral(":/ohmwright/fonts/Inter-%1.otf").arg(QLatin1String(weight));
        if (QFontDatabase::addApplicationFont(path) < 0)
            return fail(ProblemCode::NotFound, QStringLiteral("The font %1 is missing.").arg(path));
    }
    return {};
}

Result<QByteArray> draw(const QString &svgPath)
{
    const Result<QByteArray> svg = readFile(svgPath);
    if (!svg)
        return fail(svg.error());
    QSvgRenderer renderer;
    if (!renderer.load(*svg) || renderer.defaultSize().isEmpty())
        return fail(ProblemCode::BadInput,
                    QStringLiteral("“%1” is not a drawing with a size.").arg(svgPath));
    QImage image(renderer.defaultSize() * kScale, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    renderer.render(&painter);
    painter.end();

    QByteArray png;
    QBuffer buffer(&png);
    QImageWriter writer(&buffer, "png");
    if (!writer.write(image))
        return fail(
            ProblemCode::Io,
            QStringLiteral("“%1” cannot be drawn as PNG: %2.").arg(svgPath, writer.errorString()));
    return png;
}

// The file names of the attachments that stand for drawings, in their order.
Result<QStringList> drawingsIn(const QByteArray &json)
{
    QJsonParseError error{};
    const QJsonDocument document = QJsonDocument::fromJson(json, &error);
    if (error.error != QJsonParseError::NoError)
        return fail(ProblemCode::BadInput, QStringLiteral("The build is not JSON: %1 at byte %2.")
                                               .arg(error.errorString())
                                               .arg(error.offset));
    QStringList names;
    const QJsonArray attachments = document.object().value(QLatin1String("attachments")).toArray();
    for (const auto &attachment : attachments) {
        const QJsonObject object = attachment.toObject();
        const QString hash = object.value(QLatin1String("sha256")).toString();
        if (hash.toLatin1() != notYetKnown())
            continue;
        const QString name = object.value(QLatin1String("file_name")).toString();
        if (!name.endsWith(QLatin1String(".png")) || name.contains(u'/'))
            return fail(ProblemCode::BadInput,
                        QStringLiteral("The attachment “%1” names no drawing: “%2”.")
                            .arg(object.value(QLatin1String("key")).toString(), name));
        names << name;
    }
    return names;
}

// Replaced in the text itself, so that everything else stays as it was written.
Result<QByteArray> withNames(QByteArray json, const QList<QByteArray> &hashes)
{
    const QByteArray zeros = notYetKnown();
    if (json.count(zeros) != hashes.size())
        return fail(ProblemCode::BadInput,
                    QStringLiteral("Zeros stand somewhere else than in the attachments."));
    qsizetype at = 0;
    for (const QByteArray &hash : hashes) {
        at = json.indexOf(zeros, at);
        json.replace(at, zeros.size(), hash);
        at += zeros.size();
    }
    return json;
}

Outcome run(const QString &demoFolder, const QString &outFolder)
{
    if (Outcome done = loadFonts(); !done)
        return done;
    const Result<QByteArray> json = readFile(demoFolder + QLatin1String("/build.json"));
    if (!json)
        return fail(json.error());
    const Result<QStringList> names = drawingsIn(*json);
    if (!names)
        return fail(names.error());
    const QString attachments = outFolder + QLatin1String("/build.attachments");
    if (Outcome done = makeFolder(attachments); !done)
        return done;

    QList<QByteArray> hashes;
    for (const QString &name : *names) {
        const Result<QByteArray> png =
            draw(QStringLiteral("%1/pictures/%2.svg").arg(demoFolder, name.chopped(qsizetype{4})));
        if (!png)
            return fail(png.error());
        hashes << QCryptographicHash::hash(*png, QCryptographicHash::Sha256).toHex();
        const QString path = attachments + u'/' + QString::fromLatin1(hashes.back());
        if (Outcome done = writeFile(path, *png); !done)
            return done;
    }
    const Result<QByteArray> filled = withNames(*json, hashes);
    if (!filled)
        return fail(filled.error());
    // last, so that where it stands its pictures are
    return writeFile(outFolder + QLatin1String("/build.json"), *filled);
}

} // namespace

int main(int argc, char **argv)
{
    // no display is needed, and without one the default platform would abort
    qputenv("QT_QPA_PLATFORM", "offscreen");
    ohmwright::registerResources();
    const QGuiApplication app(argc, argv);
    const QStringList arguments = QGuiApplication::arguments();
    if (arguments.size() != 3) {
        std::fputs("Usage: ohmwright_draw_pictures DEMO_DIR OUT_DIR\n", stderr);
        return 2;
    }
    const Outcome done = run(arguments.at(1), arguments.at(2));
    if (!done) {
        std::fprintf(stderr, "%s\n", qUtf8Printable(done.error().sentence));
        return 2;
    }
    return 0;
}
