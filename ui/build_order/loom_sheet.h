// SPDX-License-Identifier: GPL-3.0-or-later
// The build-order chart on paper: PDF or SVG on A4 to A1, or a printer; ink on white, with title,
// today and legend. All lines and letters, no pixels.
//
// The chart is folded into bands one below the other, on one sheet or as many as are allowed, so
// that its letters get as large as they can (core/plan/loom_fold.h); each band repeats the names
// of the branches that run into it. What is done is told in short where that helps much. Or tiled
// over pages, at a size that can be read, to be glued together.
#pragma once

#include "core/plan/loom.h"
#include "core/plan/loom_fold.h"
#include "core/plan/loom_open.h"
#include "core/quantity/result.h"
#include "ui/build_order/loom_legend.h"
#include "ui/build_order/loom_painter.h"
#include "ui/build_order/loom_risks.h"

#include <QCoreApplication>
#include <QDate>
#include <QPageLayout>
#include <QPageSize>
#include <QRectF>
#include <QSizeF>
#include <QString>
#include <QStringList>

#include <array>
#include <optional>
#include <vector>

class QPagedPaintDevice;
class QPainter;

namespace ohmwright::ui {

class LoomPages;
class SvgPages;

// What is done can be left out, and is then only counted in the title; Auto does that where the
// letters get larger by a sixth or more, and never in tiles and without paper, where there is
// room. Runs that
// branches share (LoomOptions::shareRuns) are taken on the same condition.
enum class LoomDone { Auto, Whole, LeftOut };

inline constexpr int kMostSheets = 9;
// The fewest sheets whose letters are legible (kLegiblePoints); where no number makes them so, as
// many as still make them larger.
inline constexpr int kAsReadingTakes = 0;

struct LoomSheetOptions
{
    QString title; // of the build
    QDate today;   // of printing
    plan::LoomBy by = plan::LoomBy::Chain;
    // On its side. Without: A3 as PDF; as SVG one picture, as large as it comes out.
    std::optional<QPageSize::PageSizeId> paper;
    int sheets = 1;  // folded on as many at most, 1 to kMostSheets, or kAsReadingTakes
    LoomRisks risks; // what may fail
    LoomDone done = LoomDone::Auto;
    bool tiles = false;      // `sheets` is not looked at
    bool keepOthers = false; // fail rather than write over a file that `path` does not name
    const plan::Loom *like = nullptr; // branches as they lie there; read during the call
};

struct LoomSheetMade
{
    int pages = 1;
    int bands = 1;
    int leftOut = 0;         // tasks and milestones done that are not drawn
    double smallestText = 0; // height of the smallest letters, points
    QStringList files;       // that were written: one, or of SVG one for each sheet
};

// Letters that are read from an arm's length without effort, points: footnotes of books are so
// large. Common practice, no published source.
inline constexpr double kLegiblePoints = 6;

class LoomSheet
{
    Q_DECLARE_TR_FUNCTIONS(LoomSheet)

public:
    // Needs a QGuiApplication and registerResources().
    LoomSheet(const plan::Network &network, const plan::LoomFacts &facts,
              const LoomSheetOptions &options);

    // By the ending: .pdf or .svg; BadInput for any other. An SVG has no pages, so of several
    // sheets each is a file, with its number before the ending. By date without a forecast, or if
    // there is nothing to draw: NotAllowed, saying so. On failure older files are left as they
    // were; only if the disk gives up while files take their names some are new, which is told.
    [[nodiscard]] Result<LoomSheetMade> write(const QString &path) const;
    // On the device's own page, whatever its size.
    [[nodiscard]] Result<LoomSheetMade> print(QPagedPaintDevice &device) const;
    // What write() would make on so much of this paper, without making it.
    [[nodiscard]] LoomSheetMade wouldMake(QPageSize::PageSizeId paper, int sheets) const;
    // The same for the fewest sheets, up to `most`, whose letters are legible; none if even those
    // are too small.
    [[nodiscard]] std::optional<LoomSheetMade> legibleOn(QPageSize::PageSizeId paper,
                                                         int most = kMostSheets) const;

private:
    struct Picture
    {
        const plan::Network *network = nullptr;
        const plan::Loom *loom = nullptr;
        int leftOut = 0;
        plan::LoomFoldMemory *memory = nullptr;
    };
    struct Folded
    {
        Picture picture;
        plan::LoomFold fold;
        double head = 0; // height of title and legend, points
    };

    [[nodiscard]] Outcome check() const;
    [[nodiscard]] QString title() const;
    [[nodiscard]] Result<LoomSheetMade> writePdf(const QString &path) const;
    [[nodiscard]] Result<LoomSheetMade> writeSvg(const QString &path) const;
    // False if there was a sheet that could not be begun; the same below.
    [[nodiscard]] bool paintOn(LoomPages &pages, LoomSheetMade &made) const;
    [[nodiscard]] std::vector<Picture> pictures() const;
    [[nodiscard]] Picture forUncut() const;
    [[nodiscard]] Folded folded(QSizeF room, int sheets) const;
    [[nodiscard]] Folded foldedOf(const Picture &picture, QSizeF room, int sheets) const;
    [[nodiscard]] LoomSheetMade madeOf(const Folded &folded) const;
    [[nodiscard]] static QPageLayout layout(QPageSize::PageSizeId paper);
    [[nodiscard]] LoomLegend legendOf(const Picture &picture, bool cut) const;
    [[nodiscard]] double headHeight(const LoomLegend &legend, double width) const;
    void paintHead(QPainter &painter, const LoomLegend &legend, double width,
                   const QStringList &remarks) const;
    [[nodiscard]] bool paintFolded(LoomPages &pages, LoomSheetMade &made) const;
    [[nodiscard]] bool paintTiles(LoomPages &pages, LoomSheetMade &made) const;
    void paintUncut(SvgPages &pages, const Picture &picture, const LoomLegend &legend,
                    LoomSheetMade &made) const;
    void paintBand(LoomPages &pages, const Picture &picture, const plan::LoomBand &band) const;
    void paintPart(QPainter &painter, const Picture &picture, const QRectF &part) const;
    [[nodiscard]] std::vector<QRectF> tilesOf(const Picture &picture, QSizeF tile) const;
    [[nodiscard]] QRectF extent(const Picture &picture) const;

    const plan::Network &m_network;
    const plan::LoomFacts &m_facts;
    LoomSheetOptions m_options;
    QString m_family;
    LoomPainter m_painter;
    plan::LoomOpen m_open;
    // Whole and without what is done; with a line for each branch, and with runs that branches
    // share.
    plan::Loom m_loom, m_packed, m_openLoom, m_openPacked;
    mutable std::array<plan::LoomFoldMemory, 4> m_memory; // of each of them
};

// "3 sheets, letters 6.1 pt"; of one sheet its letters alone; letters that are not legible are said
// to be so.
QString chartMade(const LoomSheetMade &made);

// "van-order.pdf"; of several "van-order-1.svg to van-order-3.svg".
QString chartFiles(const LoomSheetMade &made);

// "letters 4.1 pt"
QString chartLetters(const LoomSheetMade &made);

// "A4", … "A1", letters' case ignored; BadInput for any other.
Result<QPageSize::PageSizeId> chartPaper(const QString &name);

} // namespace ohmwright::ui
