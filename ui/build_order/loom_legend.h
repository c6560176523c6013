// SPDX-License-Identifier: GPL-3.0-or-later
// Says how to read the loom: only what this loom shows, on as many lines as it takes.
#pragma once

#include "core/plan/loom.h"
#include "ui/build_order/loom_painter.h"

#include <QCoreApplication>
#include <QPointF>
#include <QRectF>
#include <QString>

#include <utility>
#include <vector>

class QPainter;

namespace ohmwright::ui {

class LoomLegend
{
    Q_DECLARE_TR_FUNCTIONS(LoomLegend)

public:
    static constexpr double kLine = 22; // height of one, units

    LoomLegend(const LoomPainter &painter, const plan::Network &network, const plan::Loom &loom);

    // Of a loom cut into bands: also what the numbers at the cuts are.
    void addCuts();
    // And what is left out of it since it is done: area and how many.
    void addLeftOut(const std::vector<std::pair<QString, int>> &areas);

    // Signs and words from `topLeft` on, on as many lines as it takes. Returns the height it took;
    // with a null painter it only measures.
    double paint(QPainter *painter, QPointF topLeft, double width) const;

    // The same in words: "solid: done · firm outline: can start now · …".
    [[nodiscard]] QString text() const;

private:
    enum class Sign {
        Done,
        CanStart,
        UnderWay,
        Waits,
        MetTask,
        MetNeed,
        Aside,
        Driving,
        Ready,
        Plan,
        Again,
        Slack,
        Today,
        HighVoltage,
        None
    };
    struct Item
    {
        Sign sign;
        QString words;       // beside the sign
        QString spoken;      // where no sign can be shown
        bool goesOn = false; // with the one before it
    };

    [[nodiscard]] double widthOf(const Item &item) const;
    void paintItem(QPainter &painter, const Item &item, QPointF topLeft) const;
    void paintSign(QPainter &painter, Sign sign, QPointF at) const;
    void paintFlag(QPainter &painter, const QRectF &box) const;

    QString m_family;
    LoomColours m_colours;
    std::vector<Item> m_items;
};

} // namespace ohmwright::ui
