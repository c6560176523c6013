// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/figure_pieces.h"

#include "ui/sheet/picture.h"

#include <QPainter>
#include <QPen>

#include <algorithm>
#include <utility>

namespace ohmwright::sheet {

namespace {

// Enough for a good print; more only makes the file larger.
constexpr double kDotsPerInch = 220.0;
constexpr double kShortest = pt(20);

class PlatesPiece : public Piece
{
public:
    PlatesPiece(std::vector<Plate> plates, const ImageLoader &loader, TextStyle whenMissing)
        : m_plates(std::move(plates)), m_loader(loader), m_whenMissing(std::move(whenMissing))
    {
        for (const Plate &plate : m_plates)
            m_height = std::max(m_height, plate.captionAt.y() + plate.caption.height());
    }

    [[nodiscard]] double height() const override { return m_height; }

    // Between the lines of the longest caption; captions of a row have their lines level.
    [[nodiscard]] std::vector<double> cuts() const override
    {
        const auto longest = std::ranges::max_element(
            m_plates, {}, [](const Plate &plate) { return plate.caption.height(); });
        std::vector<double> result;
        for (const TextBlock::Line &line : longest->caption.lines()) {
            if (line.top > 0)
                result.push_back(longest->captionAt.y() + line.top);
        }
        return result;
    }

    void paint(PaintContext &context, QPointF origin, double from, double to) const override
    {
        for (const Plate &plate : m_plates) {
            if (from <= plate.frame.top())
                paintPlate(context.painter, plate, plate.frame.translated(origin));
            const double top = plate.captionAt.y();
            plate.caption.paint(context.painter, origin + plate.captionAt - QPointF(0, from),
                                from - top, to - top);
        }
    }

private:
    void paintPlate(QPainter &painter, const Plate &plate, const QRectF &frame) const
    {
        painter.fillRect(frame, ink::kTint);
        if (!paintPicture(painter, frame, imageBytes(plate.image, m_loader),
                          kDotsPerInch / kUnitsPerInch)) {
            TextBlock text;
            text.add(QStringLiteral("This picture could not be shown."), m_whenMissing);
            text.layOut(frame.width() - pt(16), Qt::AlignHCenter);
            const double top = std::max((frame.height() - text.height()) / 2, 0.0);
            text.paint(painter, frame.topLeft() + QPointF(pt(8), top), 0, frame.height());
        }
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(ink::kMute, pt(0.5), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        painter.drawRect(frame);
    }

    std::vector<Plate> m_plates;
    double m_height = 0;
    const ImageLoader &m_loader;
    TextStyle m_whenMissing;
};

double wantedHeight(const Figure &figure)
{
    return mm(figure.maxHeight.in(metres(0.001)));
}

QSizeF sizeOf(const Image &image, const ImageLoader &loader)
{
    if (image.width > 0 && image.height > 0)
        return {static_cast<double>(image.width), static_cast<double>(image.height)};
    return pictureSize(imageBytes(image, loader));
}

} // namespace

void FigurePieceMaker::add(const Figure &figure)
{
    // a small picture is not blown up beyond what a screen would show
    constexpr double kCoarsest = kUnitsPerInch / 96.0;
    const double tallest = std::clamp(wantedHeight(figure), kShortest, m_tallest);
    const QSizeF size = sizeOf(figure.image, m_loader);
    QSizeF shown(m_width * 0.6, std::min(pt(90), tallest));
    if (!size.isEmpty()) {
        shown = size.scaled(QSizeF(m_width, tallest), Qt::KeepAspectRatio);
        if (shown.width() > size.width() * kCoarsest)
            shown = size * kCoarsest;
    }
    std::vector<Plate> plates;
    plates.push_back(makePlate(figure, QRectF(QPointF(0, 0), shown), std::min(m_width, pt(430))));
    append(std::move(plates));
}

void FigurePieceMaker::add(const FigureRow &row)
{
    const auto columns = static_cast<std::size_t>(std::clamp(row.columns, 2, 3));
    const double gap = pt(14);
    const double width =
        (m_width - gap * static_cast<double>(columns - 1)) / static_cast<double>(columns);
    for (std::size_t first = 0; first < row.figures.size(); first += columns) {
        const std::size_t end = std::min(first + columns, row.figures.size());
        const std::vector<Figure> figures(row.figures.begin() + static_cast<std::ptrdiff_t>(first),
                                          row.figures.begin() + static_cast<std::ptrdiff_t>(end));
        addRow(figures, width, gap);
    }
}

void FigurePieceMaker::addRow(const std::vector<Figure> &figures, double width, double gap)
{
    constexpr double kLandscape = 4.0 / 3.0;
    constexpr double kUpright = 3.0 / 4.0;
    double wanted = kShortest;
    bool anyUpright = false;
    bool anyLandscape = false;
    double shapes = 0; // the pictures' widths together, at a height of 1
    std::vector<double> ratios;
    for (const Figure &figure : figures) {
        wanted = std::max(wanted, wantedHeight(figure));
        const QSizeF size = sizeOf(figure.image, m_loader);
        const double ratio = size.isEmpty() ? kLandscape : size.width() / size.height();
        (ratio < 1 ? anyUpright : anyLandscape) = true;
        ratios.push_back(std::clamp(ratio, 0.5, 2.5));
        shapes += ratios.back();
    }
    wanted = std::min(wanted, m_tallest);
    std::vector<Plate> plates;
    double x = 0;
    if (anyUpright && anyLandscape) {
        // Plates as wide as their pictures, as tall as fills the row.
        const auto count = static_cast<double>(figures.size());
        const double height = std::min(width * count / shapes, wanted);
        for (std::size_t i = 0; i < figures.size(); ++i) {
            const double own = height * ratios[i];
            plates.push_back(makePlate(figures[i], QRectF(x, 0, own, height), own));
            x += own + gap;
        }
    } else {
        // Plates of one size, in columns with the rows above and below.
        const double height = std::min(width / (anyUpright ? kUpright : kLandscape), wanted);
        for (const Figure &figure : figures) {
            plates.push_back(makePlate(figure, QRectF(x, 0, width, height), width));
            x += width + gap;
        }
    }
    append(std::move(plates));
}

Plate FigurePieceMaker::makePlate(const Figure &figure, const QRectF &frame, double captionWidth)
{
    Plate plate;
    plate.image = figure.image;
    plate.frame = frame;
    std::vector<StyledRun> caption{
        {QStringLiteral("Figure %1").arg(++m_number), m_style.label, std::nullopt}};
    if (!figure.caption.isEmpty()) {
        caption.push_back({QStringLiteral("   "), m_style.label, std::nullopt});
        caption.push_back({figure.caption, m_style.cell, std::nullopt});
    }
    plate.caption.add(caption);
    plate.caption.layOut(captionWidth);
    plate.captionAt = QPointF(frame.x(), frame.bottom() + pt(4));
    return plate;
}

void FigurePieceMaker::append(std::vector<Plate> plates)
{
    auto piece = std::make_shared<PlatesPiece>(std::move(plates), m_loader, m_style.cellQuiet);
    piece->flow.spaceBefore = pt(9);
    piece->flow.spaceAfter = pt(10);
    m_pieces.push_back(std::move(piece));
}

} // namespace ohmwright::sheet
