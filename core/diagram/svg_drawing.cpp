// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diagram/svg_drawing.h"

namespace ohmwright {

namespace {

// Half a unit is finer than any line is drawn.
QString number(double value)
{
    return QString::number(value, 'f', 1);
}

QString stroke(const QString &colour, double width)
{
    return QStringLiteral(" stroke=\"%1\" stroke-width=\"%2\"").arg(colour, number(width));
}

} // namespace

void SvgDrawing::line(double x1, double y1, double x2, double y2, const QString &colour,
                      double width, bool dashed)
{
    m_body += QStringLiteral("<line x1=\"%1\" y1=\"%2\" x2=\"%3\" y2=\"%4\"")
                  .arg(number(x1), number(y1), number(x2), number(y2)) +
              stroke(colour, width) +
              (dashed ? QStringLiteral(" stroke-dasharray=\"6 4\"/>\n") : QStringLiteral("/>\n"));
}

void SvgDrawing::polyline(const std::vector<std::pair<double, double>> &points,
                          const QString &colour, double width)
{
    QString list;
    for (const auto &[x, y] : points)
        list += number(x) + u',' + number(y) + u' ';
    m_body += QStringLiteral("<polyline fill=\"none\" points=\"%1\"").arg(list.trimmed()) +
              stroke(colour, width) + QStringLiteral("/>\n");
}

void SvgDrawing::box(double x, double y, double w, double h, const QString &colour, double width)
{
    m_body += QStringLiteral("<rect x=\"%1\" y=\"%2\" width=\"%3\" height=\"%4\" fill=\"%5\"")
                  .arg(number(x), number(y), number(w), number(h), m_ground) +
              stroke(colour, width) + QStringLiteral("/>\n");
}

void SvgDrawing::circle(double x, double y, double radius, const QString &colour, double width)
{
    m_body += QStringLiteral("<circle cx=\"%1\" cy=\"%2\" r=\"%3\" fill=\"%4\"")
                  .arg(number(x), number(y), number(radius), m_ground) +
              stroke(colour, width) + QStringLiteral("/>\n");
}

void SvgDrawing::dot(double x, double y, double radius, const QString &colour)
{
    m_body += QStringLiteral("<circle cx=\"%1\" cy=\"%2\" r=\"%3\" fill=\"%4\"/>\n")
                  .arg(number(x), number(y), number(radius), colour);
}

void SvgDrawing::text(double x, double y, const QString &words, const QString &colour, double size,
                      Anchor anchor, bool strong)
{
    const char *const anchors[] = {"start", "middle", "end"};
    m_body += QStringLiteral("<text x=\"%1\" y=\"%2\" fill=\"%3\" font-size=\"%4\" "
                             "font-family=\"Inter\" text-anchor=\"%5\"%6>")
                  .arg(number(x), number(y), colour, number(size),
                       QString::fromLatin1(anchors[static_cast<int>(anchor)]),
                       strong ? QStringLiteral(" font-weight=\"600\"") : QString()) +
              words.toHtmlEscaped() + QStringLiteral("</text>\n");
}

QByteArray SvgDrawing::svg(int width, int height, const QString &title) const
{
    const QString head =
        QStringLiteral("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%1\" height=\"%2\" "
                       "viewBox=\"0 0 %1 %2\">\n<title>%3</title>\n"
                       "<rect x=\"0\" y=\"0\" width=\"%1\" height=\"%2\" fill=\"%4\"/>\n")
            .arg(width)
            .arg(height)
            .arg(title.toHtmlEscaped(), m_ground);
    return (head + m_body + QStringLiteral("</svg>\n")).toUtf8();
}

} // namespace ohmwright
