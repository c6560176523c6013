// SPDX-License-Identifier: GPL-3.0-or-later
// Paints a loom: on the screen, on paper, in a picture. What it shows depends on the scale, so that
// text is dropped before it becomes illegible while branches and milestones keep their names.
#pragma once

#include "core/plan/loom.h"
#include "ui/build_order/loom_colours.h"

#include <QFont>
#include <QPainterPath>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <QStringList>

#include <cstddef>
#include <optional>
#include <vector>

class QPainter;

namespace ohmwright::ui {

// What the person has pointed at; all empty for paper.
struct LoomMarks
{
    std::optional<std::size_t> task, wire;       // selected
    std::optional<std::size_t> hover;            // task under the pointer
    std::vector<bool> lit;                       // per task; empty: all. The rest is dimmed
    std::optional<std::size_t> linkFrom, linkTo; // while a link is drawn
    std::optional<QPointF> linkEnd;              // where its loose end is, scene
    bool focus = true;                           // the selection ring is strong
    std::optional<double> slideFrom;             // names of branches keep right of this x, scene
    std::optional<double> slideTop;              // the dates of the axis keep below this y, scene
};

// The name of a milestone too far away to be read as laid out.
struct LoomName
{
    std::size_t task = 0;
    QRectF box; // scene
    QStringList lines;
};

class LoomPainter
{
public:
    // `family`: the font to write in; sizes are the loom's own. What keeps its size at every zoom
    // is `letters` times as large as beside an interface font of 13 pixels.
    LoomPainter(const QString &family, const LoomColours &colours, double letters = 1);

    // Widths as this painter writes. Valid as long as the painter is.
    [[nodiscard]] plan::LoomMetrics metrics() const;
    // For paper: ink on white, small letters nearly as large as the others, and less air between
    // things.
    static LoomPainter forPaper(const QString &family);
    // The smallest letters it writes, scene units.
    [[nodiscard]] int smallestText() const { return m_small; }
    [[nodiscard]] const LoomColours &colours() const { return m_colours; }
    [[nodiscard]] const QString &family() const { return m_family; }

    // The painter's coordinates are the scene's; `scale` is how many pixels a scene unit takes
    // (100 % on a screen and on paper: 1). Only what touches `exposed` is painted. No ground, no
    // rings.
    void paint(QPainter &painter, const plan::Network &network, const plan::Loom &loom,
               const LoomMarks &marks, const QRectF &exposed, double scale) const;

    // The two halves of it, for a view that is dragged about: what goes with the scene, so that
    // what stays in sight need not be painted again; and over it what slides along the view's edge.
    void paintScene(QPainter &painter, const plan::Network &network, const plan::Loom &loom,
                    const LoomMarks &marks, const std::vector<LoomName> &names,
                    const QRectF &exposed, double scale) const;
    void paintLabels(QPainter &painter, const plan::Network &network, const plan::Loom &loom,
                     const LoomMarks &marks, const QRectF &exposed, double scale) const;

    // Where the names of milestones hide least at this scale, in letters that stay legible however
    // far away; none where all is written as laid out.
    [[nodiscard]] std::vector<LoomName> placeNames(const plan::Network &network,
                                                   const plan::Loom &loom, double scale) const;

    // Where a loom is cut at x = `cut` and goes on: the names of the branches that do, on their
    // runs, in a margin of kNameMargin left of the cut.
    void paintNames(QPainter &painter, const plan::Network &network, const plan::Loom &loom,
                    double cut) const;
    static constexpr double kNameMargin = 154; // scene units
    // The numbers of the wires that are cut there, from 1 on, at these heights; `before`: left of
    // the cut, where they come from the band before, else right of it.
    void paintNumbers(QPainter &painter, const std::vector<double> &heights, double cut,
                      bool before) const;

    // What follows the pointer and the keys: rings, and the loose end of a new link.
    void paintMarks(QPainter &painter, const plan::Loom &loom, const LoomMarks &marks,
                    double scale) const;

    // Housings and what drives the date, for a small map; same coordinates.
    void paintOutline(QPainter &painter, const plan::Network &network, const plan::Loom &loom,
                      double scale) const;

    // All it paints at this scale: names that keep their size stick out of the loom's bounds.
    [[nodiscard]] QRectF extent(const plan::Loom &loom, double scale) const;

    // Where the axis's dates are written: of one size at every zoom, above all sleeves, and not
    // above `slideTop`. Null by chain. Scene units.
    [[nodiscard]] QRectF axisBand(const plan::Loom &loom, double scale,
                                  std::optional<double> slideTop = std::nullopt) const;

    struct Sleeve
    {
        std::size_t branch = 0;
        QRectF box; // scene
    };
    // Where the names of branches stand: one size for all, none over another; slid along to
    // `edge` where there is one.
    [[nodiscard]] std::vector<Sleeve> sleeves(const plan::Loom &loom, double scale,
                                              std::optional<double> edge) const;

    // A loop of wire kept in hand, for float; `share` from 0 to 1: the more, the longer.
    [[nodiscard]] static QPainterPath slackPath(const QRectF &box, double share);
    // An arrow that turns round and goes back, for what may have to be done again.
    [[nodiscard]] static QPainterPath againPath(const QRectF &box);

    // What a wire can touch, scene units.
    [[nodiscard]] static QRectF reach(const plan::LoomWire &wire);
    // A wire's line, for hit tests.
    [[nodiscard]] static QPainterPath wirePath(const plan::LoomWire &wire);

private:
    struct Canvas;

    enum class Layer { Beneath, Above }; // the trunks

    void paintBundles(Canvas &canvas) const;
    void paintTrunks(Canvas &canvas) const;
    void paintWires(Canvas &canvas, Layer layer) const;
    void paintWire(Canvas &canvas, std::size_t index, bool halo) const;
    void paintTies(Canvas &canvas) const;
    void paintSleeves(Canvas &canvas) const;
    void paintSleeve(Canvas &canvas, const plan::LoomBranch &branch, const QRectF &box) const;
    void paintFlag(Canvas &canvas, const plan::LoomTask &task) const;
    void paintHousing(Canvas &canvas, const plan::LoomTask &task) const;
    void paintPlate(Canvas &canvas, const plan::LoomTask &task) const;
    void paintCavities(Canvas &canvas, const plan::LoomTask &task) const;
    void paintTitle(Canvas &canvas, const plan::LoomTask &task) const;
    void paintMissing(Canvas &canvas, const plan::LoomTask &task) const;
    void paintStrip(Canvas &canvas, const plan::LoomTask &task) const;
    void paintRisk(Canvas &canvas, const plan::LoomTask &task) const;
    void paintBars(Canvas &canvas) const;
    void paintRules(Canvas &canvas) const;
    void paintAxis(Canvas &canvas) const;
    void paintWeeks(QPainter &painter, const plan::Loom &loom, double left, double grown,
                    double width) const;
    void paintFarNames(Canvas &canvas, const std::vector<LoomName> &names) const;
    [[nodiscard]] QFont farNameFont(double scale) const;
    void paintHighVoltage(Canvas &canvas, const plan::LoomTask &task) const;
    [[nodiscard]] static std::vector<Sleeve> sleevesOf(const plan::Loom &loom, double grown,
                                                       std::optional<double> edge);
    [[nodiscard]] QFont font(plan::LoomText kind) const;

    QString m_family;
    LoomColours m_colours;
    double m_letters = 1;
    int m_small = 11;
    bool m_paper = false;
};

} // namespace ohmwright::ui
