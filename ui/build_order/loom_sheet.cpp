// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/build_order/loom_sheet.h"

#include "core/sheet/save_file.h"
#include "ui/build_order/loom_dress.h"
#include "ui/build_order/loom_pages.h"
#include "ui/build_order/loom_sheet_sizes.h"
#include "ui/sheet/sheet_fonts.h"

#include <QBuffer>
#include <QDir>
#include <QFile>
#include <QMarginsF>
#include <QPdfWriter>

#include <algorithm>
#include <utility>

namespace ohmwright::ui {

namespace {

constexpr double kMargin = 28; // points
// Of an SVG that has no paper: title and legend need it, points.
constexpr double kLeastWidth = 675;
// What has few tasks need not fill a large sheet with huge letters.
constexpr double kMostScale = kFullSize * 1.6;
// The sixth that must be gained by breaking branches, or leaving out what is done; and letters
// that need not be any larger, points.
constexpr double kHelpsMuch = 7.0 / 6;
constexpr double kLargeEnough = 7;
// One more sheet must make the letters so much larger, else it only makes gaps.
constexpr double kWorthASheet = 1.03;
constexpr int kResolution = 1200;

// An SVG has no pages: of several sheets each is a file, "order-1.svg", "order-2.svg" …
QStringList filesOf(const QString &path, std::size_t sheets)
{
    if (sheets == 1)
        return {path};
    const qsizetype dot = path.lastIndexOf(QLatin1Char('.'));
    QStringList files;
    for (std::size_t sheet = 1; sheet <= sheets; ++sheet)
        files += path.left(dot) + QLatin1Char('-') + QString::number(sheet) + path.mid(dot);
    return files;
}

} // namespace

LoomSheet::LoomSheet(const plan::Network &network, const plan::LoomFacts &facts,
                     const LoomSheetOptions &options)
    : m_network(network), m_facts(facts), m_options(options),
      m_family(sheet::loadSheetFonts().text), m_painter(LoomPainter::forPaper(m_family))
{
    m_options.sheets = std::clamp(m_options.sheets, kAsReadingTakes, kMostSheets);
    plan::LoomOptions how;
    how.by = options.by;
    how.like = options.like;
    const auto laidOut = [&](const plan::Network &of, const plan::LoomFacts &known) {
        const plan::LoomMetrics metrics = m_painter.metrics();
        plan::Loom loom = plan::layOutLoom(of, known, metrics, how);
        dressLoom(loom, of, known, metrics, {&m_options.risks, true});
        return loom;
    };
    m_loom = laidOut(network, facts);
    m_options.like = nullptr;
    m_open = plan::leaveOutDone(network, facts);
    how.like = &m_loom;
    m_openLoom = laidOut(m_open.network, m_open.facts);
    how.shareRuns = true;
    m_packed = laidOut(network, facts);
    m_openPacked = laidOut(m_open.network, m_open.facts);
}

Outcome LoomSheet::check() const
{
    if (m_network.tasks.empty())
        return fail(ProblemCode::NotAllowed, tr("There are no tasks to draw yet."));
    if (m_options.by == plan::LoomBy::Date && !m_facts.forecast)
        return fail(ProblemCode::NotAllowed,
                    tr("By date the chart needs the forecast, and there is none."));
    if (m_options.done == LoomDone::LeftOut && m_open.network.tasks.empty())
        return fail(ProblemCode::NotAllowed,
                    tr("Everything is done: without what is done there is nothing to draw."));
    return {};
}

// From what one would rather see to what takes less room.
std::vector<LoomSheet::Picture> LoomSheet::pictures() const
{
    const bool some = m_open.leftOut > 0;
    std::vector<Picture> all;
    if (m_options.done != LoomDone::LeftOut || !some)
        all = {{&m_network, &m_loom, 0, &m_memory[0]}, {&m_network, &m_packed, 0, &m_memory[1]}};
    if (m_options.done != LoomDone::Whole && some)
        all.insert(all.end(), {{&m_open.network, &m_openLoom, m_open.leftOut, &m_memory[2]},
                               {&m_open.network, &m_openPacked, m_open.leftOut, &m_memory[3]}});
    return all;
}

LoomSheet::Picture LoomSheet::forUncut() const
{
    return pictures().front();
}

QRectF LoomSheet::extent(const Picture &picture) const
{
    return m_painter.extent(*picture.loom, 1);
}

LoomLegend LoomSheet::legendOf(const Picture &picture, bool cut) const
{
    LoomLegend legend(m_painter, *picture.network, *picture.loom);
    if (cut)
        legend.addCuts();
    if (picture.leftOut > 0)
        legend.addLeftOut(m_open.areas);
    return legend;
}

// Title, what it shows and when, and the legend; points at the size of A3.
double LoomSheet::headHeight(const LoomLegend &legend, double width) const
{
    return 34 + legend.paint(nullptr, {}, width / kFullSize) * kFullSize + 8;
}

LoomSheet::Folded LoomSheet::foldedOf(const Picture &picture, QSizeF room, int sheets) const
{
    const double head = headScale(room);
    Folded result;
    result.picture = picture;
    // Cut or not, the head has the same height: the legend of cuts is a short one.
    result.head = headHeight(legendOf(picture, true), room.width() / head) * head;
    plan::LoomPaper paper;
    paper.room = QSizeF(room.width(), room.height() - result.head);
    paper.mostScale = kMostScale;
    paper.between = kBetweenBands;
    for (int most = 1; most <= sheets; ++most) {
        paper.sheets = static_cast<std::size_t>(most);
        plan::LoomFold fold = plan::foldLoom(*picture.loom, paper, picture.memory);
        if (most == 1 || fold.scale > result.fold.scale * kWorthASheet)
            result.fold = std::move(fold);
    }
    for (plan::LoomBand &band : result.fold.bands) {
        // A bar is told with its task; rows of the next band lie at other heights.
        for (plan::LoomTask &task : band.loom.tasks) {
            const double x = task.body.center().x();
            if (!band.loom.rules.empty() && (x < band.left || x > band.right))
                task.whisker = QRectF();
        }
    }
    return result;
}

LoomSheet::Folded LoomSheet::folded(QSizeF room, int sheets) const
{
    if (sheets == kAsReadingTakes) {
        Folded best = folded(room, 1);
        for (int most = 2; most <= kMostSheets; ++most) {
            if (madeOf(best).smallestText >= kLegiblePoints)
                break;
            Folded more = folded(room, most);
            if (madeOf(more).smallestText >= kLegiblePoints ||
                more.fold.scale > best.fold.scale * kWorthASheet)
                best = std::move(more);
        }
        return best;
    }
    std::vector<Folded> all;
    double best = 0;
    for (const Picture &picture : pictures()) {
        all.push_back(foldedOf(picture, room, sheets));
        best = std::max(best, all.back().fold.scale);
    }
    const double legible = kLegiblePoints / m_painter.smallestText();
    double enough = best / kHelpsMuch;
    if (best >= legible) // then what is drawn is to be
        enough = std::max(enough, legible);
    enough = std::min(enough, kLargeEnough / m_painter.smallestText());
    std::erase_if(all, [&](const Folded &one) { return one.fold.scale < enough; });
    // Sheets that would be filled by a third are not worth what they show more.
    return *std::min_element(all.begin(), all.end(), [](const Folded &left, const Folded &right) {
        return left.fold.sheets < right.fold.sheets;
    });
}

LoomSheetMade LoomSheet::madeOf(const Folded &folded) const
{
    return {static_cast<int>(folded.fold.sheets),
            static_cast<int>(folded.fold.bands.size()),
            folded.picture.leftOut,
            m_painter.smallestText() * folded.fold.scale,
            {}};
}

QPageLayout LoomSheet::layout(QPageSize::PageSizeId paper)
{
    return {QPageSize(paper), QPageLayout::Landscape, QMarginsF(kMargin, kMargin, kMargin, kMargin),
            QPageLayout::Point};
}

LoomSheetMade LoomSheet::wouldMake(QPageSize::PageSizeId paper, int sheets) const
{
    return madeOf(folded(layout(paper).paintRect(QPageLayout::Point).size(),
                         std::clamp(sheets, kAsReadingTakes, kMostSheets)));
}

std::optional<LoomSheetMade> LoomSheet::legibleOn(QPageSize::PageSizeId paper, int most) const
{
    for (int sheets = 1; sheets <= most; ++sheets) {
        const LoomSheetMade made = wouldMake(paper, sheets);
        if (made.smallestText >= kLegiblePoints)
            return made;
    }
    return std::nullopt;
}

bool LoomSheet::paintOn(LoomPages &pages, LoomSheetMade &made) const
{
    return m_options.tiles ? paintTiles(pages, made) : paintFolded(pages, made);
}

QString LoomSheet::title() const
{
    return m_options.title.isEmpty() ? tr("Build order")
                                     : tr("Build order: %1").arg(m_options.title.simplified());
}

Result<LoomSheetMade> LoomSheet::writePdf(const QString &path) const
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    LoomSheetMade made;
    {
        QPdfWriter writer(&buffer);
        writer.setTitle(title());
        writer.setCreator(QStringLiteral("Ohmwright"));
        writer.setResolution(kResolution);
        writer.setPageLayout(layout(m_options.paper.value_or(QPageSize::A3)));
        DevicePages pages(writer);
        if (!paintOn(pages, made) || !pages.end())
            return fail(ProblemCode::Io, tr("The chart could not be drawn."));
    }
    if (Outcome saved = sheet::saveFile(path, bytes); !saved)
        return fail(saved.error());
    made.files = {path};
    return made;
}

Result<LoomSheetMade> LoomSheet::writeSvg(const QString &path) const
{
    LoomSheetMade made;
    std::vector<QByteArray> drawings;
    if (m_options.paper) {
        SvgPages pages(layout(*m_options.paper).fullRect(QPageLayout::Point).size(), kMargin,
                       m_family);
        if (!paintOn(pages, made))
            return fail(ProblemCode::Io, tr("The chart could not be drawn."));
        drawings = pages.documents(title());
    } else {
        const Picture picture = forUncut();
        const LoomLegend legend = legendOf(picture, false);
        const QSizeF all = extent(picture).size() * kFullSize;
        const double width = std::max(all.width(), kLeastWidth);
        SvgPages pages(
            {width + 2 * kMargin, all.height() + headHeight(legend, width) + 2 * kMargin}, kMargin,
            m_family);
        if (!pages.begin())
            return fail(ProblemCode::Io, tr("The chart could not be drawn."));
        paintUncut(pages, picture, legend, made);
        drawings = pages.documents(title());
    }
    made.files = filesOf(path, drawings.size());
    // That one of them may be written over was not asked.
    if (m_options.keepOthers && made.files.size() > 1)
        for (const QString &file : made.files)
            if (QFile::exists(file))
                return fail(ProblemCode::NotAllowed,
                            tr("Of %1 sheets each is a file, and there is a %2 already.")
                                .arg(made.files.size())
                                .arg(QDir::toNativeSeparators(file)),
                            tr("Choose another name, or move it away."));
    if (Outcome saved = sheet::saveFiles(made.files, drawings); !saved)
        return fail(saved.error());
    return made;
}

Result<LoomSheetMade> LoomSheet::write(const QString &path) const
{
    if (Outcome fine = check(); !fine)
        return fail(fine.error());
    if (path.endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive))
        return writePdf(path);
    if (path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive))
        return writeSvg(path);
    return fail(ProblemCode::BadInput,
                tr("The chart is written as .pdf or .svg, not as “%1”.").arg(path));
}

Result<LoomSheetMade> LoomSheet::print(QPagedPaintDevice &device) const
{
    if (Outcome fine = check(); !fine)
        return fail(fine.error());
    LoomSheetMade made;
    DevicePages pages(device);
    if (!paintOn(pages, made) || !pages.end())
        return fail(ProblemCode::Io, tr("The printer did not take the chart."));
    return made;
}

QString chartMade(const LoomSheetMade &made)
{
    const QString letters = made.smallestText >= kLegiblePoints
                                ? chartLetters(made)
                                : LoomSheet::tr("%1, hard to read on a wall: take larger paper")
                                      .arg(chartLetters(made));
    return made.pages == 1 ? letters : LoomSheet::tr("%1 sheets, %2").arg(made.pages).arg(letters);
}

QString chartFiles(const LoomSheetMade &made)
{
    return made.files.size() < 2
               ? made.files.value(0)
               : LoomSheet::tr("%1 to %2").arg(made.files.first(), made.files.last());
}

QString chartLetters(const LoomSheetMade &made)
{
    return LoomSheet::tr("letters %1\u00A0pt").arg(made.smallestText, 0, 'f', 1);
}

Result<QPageSize::PageSizeId> chartPaper(const QString &name)
{
    const QString wanted = name.trimmed().toUpper();
    for (const auto &[known, paper] :
         {std::pair("A4", QPageSize::A4), std::pair("A3", QPageSize::A3),
          std::pair("A2", QPageSize::A2), std::pair("A1", QPageSize::A1)}) {
        if (wanted == QLatin1String(known))
            return paper;
    }
    return fail(ProblemCode::BadInput,
                LoomSheet::tr("The paper is A4, A3, A2 or A1, not “%1”.").arg(name));
}

} // namespace ohmwright::ui
