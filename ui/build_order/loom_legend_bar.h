// SPDX-License-Identifier: GPL-3.0-or-later
// The strip above the chart that holds its legend and what to press just now.
#pragma once

#include "ui/build_order/loom_legend.h"

#include <QString>
#include <QWidget>

#include <optional>

namespace ohmwright::ui {

class LoomLegendBar : public QWidget
{
    Q_OBJECT

public:
    explicit LoomLegendBar(QWidget *parent);

    void setLegend(const LoomLegend &legend, const LoomColours &colours, const QString &family);
    // 1: for a font of 13 pixels.
    void setScale(double scale);
    // Takes the legend's place while it is not empty: "Link from Build pack: choose …".
    void setHint(const QString &hint);

    // For its width now: as many lines as the legend takes there.
    [[nodiscard]] int heightFor(int width) const;
    // Of so many lines.
    [[nodiscard]] int heightOf(int lines) const;
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    std::optional<LoomLegend> m_legend;
    LoomColours m_colours;
    QString m_family;
    QString m_hint;
    double m_scale = 1;
};

} // namespace ohmwright::ui
