// SPDX-License-Identifier: GPL-3.0-or-later
// One number with its unit, right-aligned on the decimal sign, all digits equally wide.
//
// In a column give every label the same decimals and unit width, and the signs stand under each
// other.
#pragma once

#include "ui/shell/theme.h"
#include "ui/widgets/figures.h"

#include <QLabel>

namespace ohmwright::ui {

class FigureLabel : public QLabel
{
    Q_OBJECT

public:
    explicit FigureLabel(const Theme &theme, QWidget *parent = nullptr);

    // As printed by core/quantity: "1 250.00 EUR", "403 V", "unknown".
    void setFigure(const QString &text);
    [[nodiscard]] QString figure() const { return text(); }
    // Room for that many decimals, also when this number has fewer.
    void setDecimals(int digits);
    // Room for the widest unit of the column, by an example of it.
    void setUnitRoom(const QString &widestUnit);
    void setLettering(Lettering lettering);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    const Theme &m_theme;
    FigureText m_figure;
    QString m_widestUnit;
    int m_decimals = 0;
};

} // namespace ohmwright::ui
