// SPDX-License-Identifier: GPL-3.0-or-later
// Lines, boxes and words collected as SVG 1.1, in what Qt and browsers alike draw: no styles, no
// scripts, one font by name.
#pragma once

#include <QByteArray>
#include <QString>

#include <utility>
#include <vector>

namespace ohmwright {

enum class Anchor { Start, Middle, End };

class SvgDrawing
{
public:
    explicit SvgDrawing(QString ground) : m_ground(std::move(ground)) {}

    void line(double x1, double y1, double x2, double y2, const QString &colour, double width = 2,
              bool dashed = false);
    void polyline(const std::vector<std::pair<double, double>> &points, const QString &colour,
                  double width = 2);
    // Filled with the ground, so that a line behind it does not show through.
    void box(double x, double y, double w, double h, const QString &colour, double width = 1.5);
    void circle(double x, double y, double radius, const QString &colour, double width = 1.5);
    void dot(double x, double y, double radius, const QString &colour);
    void text(double x, double y, const QString &words, const QString &colour, double size = 13,
              Anchor anchor = Anchor::Start, bool strong = false);

    [[nodiscard]] QByteArray svg(int width, int height, const QString &title) const;

private:
    QString m_ground;
    QString m_body;
};

} // namespace ohmwright
