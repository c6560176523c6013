// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/icons.h"

#include "ui/shell/theme.h"

#include <QByteArray>
#include <QColor>
#include <QFile>
#include <QIconEngine>
#include <QPainter>
#include <QPixmap>
#include <QSvgRenderer>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

QString pathOf(const QString &name)
{
    return QStringLiteral(":/ohmwright/icons/%1.svg").arg(name);
}

QByteArray drawingOf(const QString &name)
{
    QFile file(pathOf(name));
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

void paintDrawing(QPainter &painter, const QRectF &rect, QByteArray drawing, const QColor &colour)
{
    drawing.replace("currentColor", colour.name().toLatin1());
    QSvgRenderer renderer(drawing);
    renderer.setAspectRatioMode(Qt::KeepAspectRatio);
    renderer.render(&painter, rect);
}

// Holds the drawing, not a picture: the colour is asked for each time it is painted.
class InkEngine : public QIconEngine
{
public:
    InkEngine(const Theme &theme, QByteArray drawing)
        : m_theme(&theme), m_drawing(std::move(drawing))
    {}

    void paint(QPainter *painter, const QRect &rect, QIcon::Mode mode, QIcon::State) override
    {
        const Tokens &tokens = m_theme->tokens();
        const QColor colour =
            mode == QIcon::Disabled ? mix(tokens.paper, tokens.mute, 0.6) : tokens.ink;
        paintDrawing(*painter, rect, m_drawing, colour);
    }

    QPixmap pixmap(const QSize &size, QIcon::Mode mode, QIcon::State state) override
    {
        QPixmap pixmap(size);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        paint(&painter, QRect(QPoint(0, 0), size), mode, state);
        return pixmap;
    }

    [[nodiscard]] QIconEngine *clone() const override { return new InkEngine(*m_theme, m_drawing); }

private:
    const Theme *m_theme;
    QByteArray m_drawing;
};

} // namespace

bool hasIcon(const QString &name)
{
    return QFile::exists(pathOf(name));
}

QIcon themedIcon(const Theme &theme, const QString &name)
{
    Q_ASSERT_X(hasIcon(name), "themedIcon", qPrintable(name));
    QByteArray drawing = drawingOf(name);
    if (drawing.isEmpty())
        return {};
    return QIcon(new InkEngine(theme, std::move(drawing)));
}

void paintIcon(QPainter &painter, const QRectF &rect, const QString &name, const QColor &colour)
{
    Q_ASSERT_X(hasIcon(name), "paintIcon", qPrintable(name));
    QByteArray drawing = drawingOf(name);
    // drawn large, the same pen would be a brush
    if (std::min(rect.width(), rect.height()) > 40)
        drawing.replace("stroke-width=\"1.5\"", "stroke-width=\"0.8\"");
    paintDrawing(painter, rect, std::move(drawing), colour);
}

} // namespace ohmwright::ui
