// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_pages.h"

#include "core/sheet/plain_text.h"
#include "ui/build_order/loom_colours.h"

#include <QBuffer>
#include <QPageLayout>
#include <QPagedPaintDevice>
#include <QSvgGenerator>
#include <QXmlStreamReader>
#include <QXmlStreamWriter>

#include <utility>

namespace ohmwright::ui {

namespace {

constexpr double kPointsPerInch = 72;

} // namespace

bool DevicePages::begin()
{
    if (m_painter.isActive())
        return m_device.newPage();
    if (!m_painter.begin(&m_device))
        return false;
    m_painter.scale(m_device.logicalDpiX() / kPointsPerInch,
                    m_device.logicalDpiY() / kPointsPerInch);
    return true;
}

void DevicePages::paintCut(const QRectF &cut, const Draw &draw)
{
    m_painter.save();
    m_painter.setClipRect(cut, Qt::IntersectClip);
    draw(m_painter);
    m_painter.restore();
}

QSizeF DevicePages::room() const
{
    return m_device.pageLayout().paintRect(QPageLayout::Point).size();
}

bool DevicePages::end()
{
    return m_painter.end();
}

// What one generator draws. Without a cut it is the sheet's own.
struct SvgPages::Layer
{
    explicit Layer(QSizeF size)
    {
        generator.setOutputDevice(&buffer);
        // Points all along: lengths and letters are written as they come.
        generator.setResolution(static_cast<int>(kPointsPerInch));
        generator.setViewBox(QRectF(QPointF(0, 0), size));
        generator.setSize(size.toSize());
        painter.begin(&generator);
    }
    Layer(const Layer &) = delete;
    Layer &operator=(const Layer &) = delete;

    QBuffer buffer; // before what writes into it
    QSvgGenerator generator;
    QPainter painter;
    QRectF cut;
};

struct SvgPages::Sheet
{
    std::vector<std::unique_ptr<Layer>> layers; // the first is not cut
};

SvgPages::SvgPages(QSizeF sheet, double margin, QString family)
    : m_sheet(sheet), m_margin(margin), m_family(std::move(family))
{}

SvgPages::~SvgPages() = default;

QPainter &SvgPages::painter()
{
    return m_sheets.back()->layers.front()->painter;
}

bool SvgPages::begin()
{
    if (!m_sheets.empty())
        painter().end(); // the generator writes nothing before
    m_sheets.push_back(std::make_unique<Sheet>());
    m_sheets.back()->layers.push_back(std::make_unique<Layer>(m_sheet));
    painter().translate(m_margin, m_margin);
    return painter().isActive();
}

void SvgPages::paintCut(const QRectF &cut, const Draw &draw)
{
    auto layer = std::make_unique<Layer>(m_sheet);
    layer->cut = painter().worldTransform().mapRect(cut);
    layer->painter.setWorldTransform(painter().worldTransform());
    draw(layer->painter);
    layer->painter.end();
    m_sheets.back()->layers.push_back(std::move(layer));
}

QSizeF SvgPages::room() const
{
    return {m_sheet.width() - 2 * m_margin, m_sheet.height() - 2 * m_margin};
}

std::vector<QByteArray> SvgPages::documents(const QString &title)
{
    if (!m_sheets.empty())
        painter().end();
    std::vector<QByteArray> all;
    for (const std::unique_ptr<Sheet> &sheet : m_sheets) {
        const QString named =
            m_sheets.size() == 1
                ? title
                : QStringLiteral("%1 (%2/%3)").arg(title).arg(all.size() + 1).arg(m_sheets.size());
        all.push_back(documentOf(*sheet, named));
    }
    return all;
}

namespace {

// What the generator drew, without the document around it.
void writeDrawing(QXmlStreamWriter &writer, const QByteArray &drawing)
{
    QXmlStreamReader reader(sheet::cleaned(QString::fromUtf8(drawing)));
    int depth = 0; // of groups
    while (!reader.atEnd()) {
        reader.readNext();
        if (reader.isStartElement()) {
            const bool drawn = depth > 0 || reader.name() == QLatin1String("g");
            if (!drawn)
                continue;
            ++depth;
            writer.writeStartElement(reader.name().toString());
            writer.writeAttributes(reader.attributes());
        } else if (reader.isEndElement() && depth > 0) {
            --depth;
            writer.writeEndElement();
        } else if (reader.isCharacters() && depth > 0 && !reader.isWhitespace()) {
            writer.writeCharacters(reader.text().toString());
        }
    }
}

QString lengthOf(double points)
{
    return QString::number(points, 'f', 2);
}

} // namespace

QByteArray SvgPages::documentOf(const Sheet &sheet, const QString &title) const
{
    QByteArray bytes;
    QXmlStreamWriter writer(&bytes);
    writer.setAutoFormatting(true);
    writer.setAutoFormattingIndent(0);
    writer.writeStartDocument();
    writer.writeStartElement(QStringLiteral("svg"));
    writer.writeDefaultNamespace(QStringLiteral("http://www.w3.org/2000/svg"));
    writer.writeAttribute(QStringLiteral("version"), QStringLiteral("1.1"));
    const QString width = lengthOf(m_sheet.width());
    const QString height = lengthOf(m_sheet.height());
    writer.writeAttribute(QStringLiteral("width"), width + QStringLiteral("pt"));
    writer.writeAttribute(QStringLiteral("height"), height + QStringLiteral("pt"));
    writer.writeAttribute(QStringLiteral("viewBox"),
                          QStringLiteral("0 0 %1 %2").arg(width, height));
    writer.writeTextElement(QStringLiteral("title"), sheet::cleaned(title));
    writer.writeTextElement(QStringLiteral("desc"), sheet::cleaned(m_description));
    const auto rectangle = [&](const QRectF &place) {
        writer.writeEmptyElement(QStringLiteral("rect"));
        writer.writeAttribute(QStringLiteral("x"), lengthOf(place.x()));
        writer.writeAttribute(QStringLiteral("y"), lengthOf(place.y()));
        writer.writeAttribute(QStringLiteral("width"), lengthOf(place.width()));
        writer.writeAttribute(QStringLiteral("height"), lengthOf(place.height()));
    };
    for (std::size_t at = 0; at < sheet.layers.size(); ++at) {
        const Layer &layer = *sheet.layers[at];
        const QString name = QStringLiteral("cut%1").arg(at);
        if (at == 0) {
            rectangle(QRectF(QPointF(0, 0), m_sheet));
            writer.writeAttribute(QStringLiteral("fill"), LoomColours::print().paper.name());
        } else {
            writer.writeStartElement(QStringLiteral("clipPath"));
            writer.writeAttribute(QStringLiteral("id"), name);
            rectangle(layer.cut);
            writer.writeEndElement();
        }
        writer.writeStartElement(QStringLiteral("g"));
        if (at > 0)
            writer.writeAttribute(QStringLiteral("clip-path"),
                                  QStringLiteral("url(#%1)").arg(name));
        writeDrawing(writer, layer.buffer.data());
        writer.writeEndElement();
    }
    writer.writeEndElement();
    writer.writeEndDocument();
    // The family is made by the program and known to nobody else.
    const QByteArray own = QByteArrayLiteral("font-family=\"") + m_family.toUtf8() + '"';
    bytes.replace(own, QByteArrayLiteral("font-family=\"Inter, Helvetica, Arial, sans-serif\""));
    return bytes;
}

} // namespace ohmwright::ui
