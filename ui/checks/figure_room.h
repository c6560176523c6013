// SPDX-License-Identifier: GPL-3.0-or-later
// The room the figures of one column take, so that they stand under each other.
#pragma once

#include "ui/widgets/figures.h"

#include <QFont>
#include <QFontMetricsF>
#include <QString>

#include <algorithm>

namespace ohmwright::ui {

// One room for all units; and one for decimals where all have the same unit: a decimal sign of
// volts under one of ohms would only tear number and unit apart.
class FigureRoom
{
public:
    explicit FigureRoom(const QFont &font) : m_metrics(font) {}

    void take(const QString &shown)
    {
        const FigureText figure = splitFigure(shown);
        m_decimals = std::max(m_decimals, fractionDigits(figure));
        m_mixed = m_mixed || (m_taken > 0 && figure.unit != m_unit);
        if (m_metrics.horizontalAdvance(figure.unit) > m_metrics.horizontalAdvance(m_unit))
            m_unit = figure.unit;
        ++m_taken;
    }
    [[nodiscard]] int decimals() const { return m_mixed ? 0 : m_decimals; }
    [[nodiscard]] const QString &widestUnit() const { return m_unit; }

    // Gives a FigureLabel, or whatever else is set in such columns, its room.
    template <class Label>
    Label *fit(Label *label) const
    {
        label->setDecimals(decimals());
        label->setUnitRoom(widestUnit());
        return label;
    }

private:
    QFontMetricsF m_metrics;
    int m_decimals = 0;
    int m_taken = 0;
    bool m_mixed = false;
    QString m_unit;
};

} // namespace ohmwright::ui
