// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/picture.h"

#include "ui/sheet/sheet_fonts.h"

#include <QBuffer>
#include <QImageReader>
#include <QImageWriter>
#include <QPainter>
#include <QRegularExpression>
#include <QSet>
#include <QSvgRenderer>
#include <QTransform>

#include <algorithm>
#include <cmath>
#include <utility>

namespace ohmwright::sheet {

namespace {

bool looksLikeSvg(const QByteArray &bytes)
{
    const QByteArray start = bytes.left(1024).trimmed();
    return start.startsWith('<') && start.contains("<svg");
}

// QtSvg would follow a link to any file of this computer; entities could hide one.
bool refersElsewhere(const QByteArray &svg)
{
    const QByteArray lower = svg.toLower();
    return lower.contains("<image") || lower.contains("<!entity") ||
           lower.contains("<!doctype html") || lower.contains("<foreignobject") ||
           lower.contains("url(http") || lower.contains("url(file") || lower.contains(":image");
}

bool turned(const QImageReader &reader)
{
    return (reader.transformation() & QImageIOHandler::TransformationRotate90) != 0;
}

// At most `wanted`, in upright pixels; decodes no more than it must.
QImage readUpright(const QByteArray &bytes, QSize wanted, QByteArray *format = nullptr)
{
    QByteArray source = bytes;
    QBuffer buffer(&source);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer);
    reader.setAutoTransform(true);
    if (format)
        *format = reader.format();
    const QSize stored = reader.size();
    if (stored.isValid()) {
        const QSize limit = turned(reader) ? wanted.transposed() : wanted;
        const QSize scaled = stored.scaled(limit, Qt::KeepAspectRatio).expandedTo(QSize(1, 1));
        if (scaled.width() < stored.width())
            reader.setScaledSize(scaled);
    }
    QImage image = reader.read();
    if (image.isNull())
        return image;
    if (image.width() > wanted.width() || image.height() > wanted.height())
        image = image.scaled(wanted, Qt::KeepAspectRatio, Qt::SmoothTransformation);
    return image;
}

// Paper has no transparency. A fresh picture also carries none of the file's texts along.
QImage onPaper(const QImage &image)
{
    QImage flat(image.size(), QImage::Format_RGB32);
    flat.fill(Qt::white);
    QPainter painter(&flat);
    painter.drawImage(0, 0, image);
    return flat;
}

// Drawings have few colours, and JPEG would smear their edges.
bool isDrawing(const QImage &image)
{
    constexpr int kColours = 256;
    constexpr int kSamplesAcross = 200;
    const int step = std::max(1, std::max(image.width(), image.height()) / kSamplesAcross);
    QSet<QRgb> colours;
    for (int y = 0; y < image.height(); y += step) {
        for (int x = 0; x < image.width(); x += step) {
            colours.insert(image.pixel(x, y));
            if (colours.size() > kColours)
                return false;
        }
    }
    return true;
}

QByteArray reduced(const QByteArray &bytes, int longestSide)
{
    constexpr int kQuality = 85;
    if (looksLikeSvg(bytes))
        return bytes;
    QByteArray sourceFormat;
    const QImage image = readUpright(bytes, QSize(longestSide, longestSide), &sourceFormat);
    if (image.isNull())
        return {};
    const bool photo = sourceFormat == "jpeg" || !isDrawing(image);
    QByteArray result;
    QBuffer buffer(&result);
    buffer.open(QIODevice::WriteOnly);
    QImageWriter writer(&buffer, photo ? "jpeg" : "png");
    if (photo)
        writer.setQuality(kQuality);
    return writer.write(onPaper(image)) ? result : QByteArray();
}

// Our own drawings name the family as others know it; on paper it goes by the name it is loaded by.
QByteArray inOurLetters(const QByteArray &svg)
{
    static const QRegularExpression family(QStringLiteral("font-family=\"Inter[^\"]*\""));
    if (!svg.contains("font-family=\"Inter"))
        return svg;
    return QString::fromUtf8(svg)
        .replace(family, QStringLiteral("font-family=\"%1\"").arg(loadSheetFonts().text))
        .toUtf8();
}

} // namespace

QSize pictureSize(const QByteArray &bytes)
{
    if (looksLikeSvg(bytes)) {
        if (refersElsewhere(bytes))
            return {};
        const QSvgRenderer svg(bytes);
        if (!svg.isValid())
            return {};
        const QSize box = svg.viewBox().size();
        return box.isEmpty() ? svg.defaultSize() : box;
    }
    QByteArray source = bytes;
    QBuffer buffer(&source);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer);
    QSize size = reader.size();
    if (size.isValid() && turned(reader))
        size.transpose();
    if (!size.isValid())
        size = reader.read().size(); // some kinds tell their size only when read
    return size.isEmpty() ? QSize() : size;
}

bool paintPicture(QPainter &painter, const QRectF &target, const QByteArray &bytes,
                  double dotsPerUnit)
{
    if (looksLikeSvg(bytes)) {
        const QSize size = pictureSize(bytes);
        if (size.isEmpty())
            return false;
        QSvgRenderer svg(inOurLetters(bytes));
        const QSizeF fitted = QSizeF(size).scaled(target.size(), Qt::KeepAspectRatio);
        QRectF place(QPointF(), fitted);
        place.moveCenter(target.center());
        svg.render(&painter, place);
        return true;
    }
    const QTransform device = painter.deviceTransform();
    const double deviceScale = std::hypot(device.m11(), device.m12());
    const double scale = std::min(dotsPerUnit, std::max(deviceScale, 1e-6));
    const QSize wanted(std::max(1, static_cast<int>(std::ceil(target.width() * scale))),
                       std::max(1, static_cast<int>(std::ceil(target.height() * scale))));
    const QImage image = readUpright(bytes, wanted);
    if (image.isNull())
        return false;
    const QImage flat = onPaper(image);
    const QSizeF fitted = QSizeF(flat.size()).scaled(target.size(), Qt::KeepAspectRatio);
    QRectF place(QPointF(), fitted);
    place.moveCenter(target.center());
    painter.save();
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setRenderHint(QPainter::LosslessImageRendering, isDrawing(flat));
    painter.drawImage(place, flat);
    painter.restore();
    return true;
}

ImageLoader reducedPictures(ImageLoader inner, int longestSide)
{
    return [inner = std::move(inner), longestSide](const Image &image) {
        return reduced(imageBytes(image, inner), longestSide);
    };
}

} // namespace ohmwright::sheet
