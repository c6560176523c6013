// SPDX-License-Identifier: GPL-3.0-or-later
// The mark of high voltage: the letters HV in an orange outline. Nothing else may be orange.
#pragma once

#include <QLabel>
#include <QSizeF>

class QFont;
class QPainter;
class QRectF;

namespace ohmwright::ui {

class Theme;
struct Tokens;

// For delegates and charts: how large the tag is, and the tag into `rect`.
[[nodiscard]] QSizeF highVoltageTagSize(const QFont &font);
void paintHighVoltageTag(QPainter &painter, const QRectF &rect, const QFont &font,
                         const Tokens &tokens);

class HvTag : public QLabel
{
    Q_OBJECT

public:
    explicit HvTag(const Theme &theme, QWidget *parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    const Theme &m_theme;
};

} // namespace ohmwright::ui
