// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/sheet/sample_document.h"
#include "ui/sheet/picture.h"

#include <QBuffer>
#include <QImage>
#include <QImageReader>
#include <QImageWriter>
#include <QPainter>

#include <gtest/gtest.h>

namespace ohmwright::sheet {

namespace {

// Left half red, right half blue; stored turned, as a camera held upright would.
QByteArray turnedPhoto()
{
    QImage image(80, 60, QImage::Format_RGB32);
    image.fill(Qt::blue);
    QPainter(&image).fillRect(0, 0, 40, 60, Qt::red);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QImageWriter writer(&buffer, "jpeg");
    writer.setTransformation(QImageIOHandler::TransformationRotate90);
    EXPECT_TRUE(writer.write(image));
    return bytes;
}

// A photo with a segment as cameras write it (Exif 2.3: APP1, "Exif", two zeros), saying where.
QByteArray photoWithPlace()
{
    QByteArray bytes = photo({64, 48}, 1);
    const QByteArray body = QByteArray("Exif\0\0MM\0*GPSLatitude 52.5 home", 30);
    QByteArray segment("\xff\xe1", 2);
    const auto size = static_cast<unsigned>(body.size() + 2);
    segment += static_cast<char>(size >> 8);
    segment += static_cast<char>(size & 0xff);
    return bytes.insert(2, segment + body);
}

QImage drawn(const QByteArray &bytes, QSize size)
{
    QImage paper(size, QImage::Format_RGB32);
    paper.fill(Qt::white);
    QPainter painter(&paper);
    EXPECT_TRUE(paintPicture(painter, paper.rect(), bytes, 1.0));
    return paper;
}

} // namespace

TEST(Picture, APhotoTakenUprightIsShownUpright)
{
    const QByteArray bytes = turnedPhoto();
    EXPECT_EQ(pictureSize(bytes), QSize(60, 80));
    const QImage paper = drawn(bytes, {60, 80});
    EXPECT_GT(qRed(paper.pixel(30, 10)), 200);
    EXPECT_GT(qBlue(paper.pixel(30, 70)), 200);
}

TEST(Picture, KeepsItsShapeInAnyPlace)
{
    const QImage paper = drawn(photo({100, 100}, 3), {300, 100});
    EXPECT_EQ(paper.pixel(50, 50), qRgb(255, 255, 255));
    EXPECT_NE(paper.pixel(150, 90), qRgb(255, 255, 255));
    EXPECT_EQ(paper.pixel(250, 50), qRgb(255, 255, 255));
}

TEST(Picture, WhatIsNoPictureIsToldApart)
{
    QImage paper(10, 10, QImage::Format_RGB32);
    QPainter painter(&paper);
    const QByteArray cutShort = photo({64, 48}, 1).left(40);
    for (const QByteArray &bytes :
         {QByteArray(), QByteArray("text"), QByteArray("<svg"), cutShort}) {
        EXPECT_FALSE(pictureSize(bytes).isValid());
        EXPECT_FALSE(paintPicture(painter, paper.rect(), bytes, 1.0));
    }
}

TEST(Picture, ADrawingInSvgIsShown)
{
    const QByteArray svg(R"(<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"
        viewBox="0 0 40 20"><rect width="40" height="20" fill="#0000ff"/></svg>)");
    EXPECT_EQ(pictureSize(svg), QSize(40, 20));
    EXPECT_EQ(drawn(svg, {40, 20}).pixel(20, 10), qRgb(0, 0, 255));
}

TEST(Picture, AnSvgThatReachesForOtherFilesIsNotShown)
{
    EXPECT_FALSE(pictureSize(R"(<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">
        <image href="/etc/hostname" width="9" height="9"/></svg>)")
                     .isValid());
    EXPECT_FALSE(pictureSize(R"(<!DOCTYPE svg [<!ENTITY a "b">]><svg viewBox="0 0 9 9">&a;</svg>)")
                     .isValid());
}

TEST(Picture, AReducedPhotoTellsNoPlaceAndIsNoLargerThanAsked)
{
    const QByteArray bytes = photoWithPlace();
    ASSERT_TRUE(bytes.contains("GPSLatitude"));
    ASSERT_TRUE(pictureSize(bytes).isValid());
    const QByteArray small = reducedPictures({}, 32)({"", bytes, 0, 0});
    EXPECT_EQ(pictureSize(small), QSize(32, 24));
    EXPECT_FALSE(small.contains("GPSLatitude"));
    EXPECT_FALSE(small.contains("Exif"));
    EXPECT_TRUE(small.startsWith("\xff\xd8\xff"));
}

TEST(Picture, AReducedPhotoIsTurnedForGood)
{
    const QByteArray small = reducedPictures({}, 40)({"", turnedPhoto(), 0, 0});
    EXPECT_EQ(pictureSize(small), QSize(30, 40));
}

TEST(Picture, ASmallPictureIsNotBlownUp)
{
    EXPECT_EQ(pictureSize(reducedPictures({}, 1600)({"", photo({64, 48}, 2), 0, 0})),
              QSize(64, 48));
}

TEST(Picture, DrawingsStayWithoutLoss)
{
    QImage drawing(60, 40, QImage::Format_RGB32);
    drawing.fill(Qt::white);
    QPainter(&drawing).drawLine(0, 0, 59, 39);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    drawing.save(&buffer, "png");
    const QByteArray reduced = reducedPictures({})({"", bytes, 0, 0});
    EXPECT_EQ(QImage::fromData(reduced).convertToFormat(QImage::Format_RGB32), drawing);
}

TEST(Picture, TheInnerLoaderIsAsked)
{
    const ImageLoader loader = reducedPictures([](const Image &image) {
        return image.id == "a" ? photo({8, 8}, 1) : QByteArray();
    });
    EXPECT_FALSE(loader({"a", {}, 0, 0}).isEmpty());
    EXPECT_TRUE(loader({"b", {}, 0, 0}).isEmpty());
}

} // namespace ohmwright::sheet
