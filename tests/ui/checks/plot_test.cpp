// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/checks/sample_checks.h"
#include "tests/ui/driving.h"
#include "ui/checks/plot_axis.h"
#include "ui/checks/plot_files.h"
#include "ui/checks/plot_scene.h"
#include "ui/checks/plot_strokes.h"
#include "ui/checks/plot_view.h"
#include "ui/shell/outside.h"

#include <QAbstractAxis>
#include <QChart>
#include <QContextMenuEvent>
#include <QFile>
#include <QImage>
#include <QMenu>
#include <QPainter>
#include <QPrinter>
#include <QProcess>
#include <QRegularExpression>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QToolButton>
#include <QTransform>
#include <QXmlStreamReader>

#include <gtest/gtest.h>

#include <limits>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class SavingOutside : public Outside
{
public:
    QStringList chooseFiles(QWidget *, const QString &, const QString &) override { return {}; }
    QString chooseSaveFile(QWidget *, const QString &, const QString &suggestion,
                           const QString &) override
    {
        suggested = suggestion;
        return answer;
    }
    void openFile(const QString &) override {}
    void openAddress(const QUrl &) override {}
    QString answer, suggested;
};

Plot plotOf(const char *id)
{
    for (const Check &check : samples::vanChecks(samples::vanFigures()))
        if (check.id == QLatin1String(id) && !check.plots.empty())
            return check.plots.front();
    ADD_FAILURE() << "no plot of " << id;
    return {};
}

const char *const kPlotted[] = {"drive", "pack", "axle_loads", "grouping", "range"};

} // namespace

TEST(PlotAxis, StandsOnRoundNumbersAndHoldsAllValues)
{
    EXPECT_EQ(axisMarks(0, 8234), (AxisMarks{0, 10000, 2000, 0}));
    EXPECT_EQ(axisMarks(331, 441), (AxisMarks{320, 460, 20, 0}));
    for (const auto &[least, most] : {std::pair(0.0, 0.037), std::pair(-3.0, 12.5),
                                      std::pair(331.2, 441.7), std::pair(1e5, 9e6)}) {
        const AxisMarks marks = axisMarks(least, most);
        EXPECT_LE(marks.least, least);
        EXPECT_GE(marks.most, most);
        EXPECT_GE(marks.count(), 3);
        EXPECT_LE(marks.count(), 10);
    }
}

TEST(PlotAxis, BeginsAtZeroForBarsAndWhereItIsNear)
{
    EXPECT_EQ(axisMarks(300, 310, 5, true).least, 0);
    EXPECT_EQ(axisMarks(10, 100).least, 0);
    EXPECT_GT(axisMarks(300, 310).least, 0);
}

TEST(PlotAxis, TakesWhatIsNotANumberForNothing)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(axisMarks(nan, 1), AxisMarks());
    EXPECT_GT(axisMarks(5, 5).most, 5);
    EXPECT_LT(axisMarks(5, 5).least, 5);
}

TEST(PlotAxis, NamesQuantityAndUnit)
{
    EXPECT_EQ(axisTitle(QStringLiteral("speed"), QStringLiteral("km/h")),
              QStringLiteral("speed in km/h"));
    EXPECT_EQ(axisTitle(QStringLiteral("group"), QString()), QStringLiteral("group"));
}

TEST(APlot, HasItsAxesNamedWithUnits)
{
    const Themed themed;
    for (const char *id : kPlotted) {
        const Plot plot = plotOf(id);
        PlotScene scene(plot, printLook());
        scene.layOut({480, 300});
        QStringList named;
        for (const QAbstractAxis *axis : scene.chart().axes())
            named << axis->titleText();
        EXPECT_TRUE(named.contains(axisTitle(plot.yName, plot.yUnit))) << id;
        EXPECT_TRUE(named.contains(axisTitle(plot.xName, plot.xUnit))) << id;
    }
}

TEST(APlot, TellsNeighbouringLinesApartWithoutColour)
{
    const PlotLook look = printLook();
    for (std::size_t i = 0; i < 12; ++i)
        for (std::size_t k = 0; k < i; ++k)
            EXPECT_FALSE(markerOf(i) == markerOf(k) &&
                         strokeOf(i, look).dashPattern() == strokeOf(k, look).dashPattern())
                << i << ' ' << k;
}

TEST(APlot, LeavesNothingOfItsRectangleUnusedAndDrawsNothingOutside)
{
    const Themed themed;
    for (const char *id : kPlotted) {
        QImage page(1200, 900, QImage::Format_RGB32);
        page.fill(Qt::white);
        QPainter painter(&page);
        const QRect room(150, 150, 900, 600);
        paintPlot(painter, room, plotOf(id), 2);
        painter.end();
        int inside = 0;
        int outside = 0;
        for (int y = 0; y < page.height(); ++y)
            for (int x = 0; x < page.width(); ++x)
                if (page.pixel(x, y) != qRgb(255, 255, 255))
                    ++(room.contains(x, y) ? inside : outside);
        EXPECT_GT(inside, 2000) << id;
        EXPECT_EQ(outside, 0) << id;
    }
}

TEST(APlot, IsSpokenWithWhatItShowsAndItsRanges)
{
    const QString spoken = spokenPlot(plotOf("pack"));
    EXPECT_TRUE(spoken.contains("voltage"));
    EXPECT_TRUE(spoken.contains("kWh"));
    EXPECT_TRUE(spoken.contains("open circuit"));
    EXPECT_TRUE(spokenPlot(plotOf("axle_loads")).contains("front axle, rear axle"));
    EXPECT_TRUE(spokenPlot({QStringLiteral("Bare"), {}, {}, {}, {}, {}, {}}).contains("nothing"));
}

// pdftotext of poppler-utils reads the PDF: letters stay letters.
TEST(APlot, IsSavedAsPdfAndSvg)
{
    const Themed themed;
    const QTemporaryDir folder;
    const Plot plot = plotOf("drive");
    const QString pdf = folder.filePath(QStringLiteral("a.pdf"));
    ASSERT_TRUE(savePlot(plot, pdf));
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"), {pdf, QStringLiteral("-")});
    ASSERT_TRUE(reader.waitForFinished());
    const QString words = QString::fromUtf8(reader.readAllStandardOutput());
    EXPECT_TRUE(words.contains("road speed in km/h"));
    EXPECT_TRUE(words.contains("2nd gear"));
    EXPECT_TRUE(words.contains(plot.title));
    const QString svg = folder.filePath(QStringLiteral("a.svg"));
    ASSERT_TRUE(savePlot(plot, svg));
    QFile file(svg);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray drawn = file.readAll();
    EXPECT_TRUE(drawn.contains("<svg"));
    EXPECT_TRUE(drawn.contains("road speed in km/h"));
    EXPECT_TRUE(drawn.contains("font-family=\"Inter, sans-serif\""));
    EXPECT_FALSE(savePlot(plot, folder.filePath(QStringLiteral("none/a.pdf"))));
}

// An SVG is not clipped: whatever is drawn must lie in it by itself, the hatching of bars too.
TEST(APlot, DrawsNothingOutsideItsSvg)
{
    const Themed themed;
    for (const char *id : kPlotted) {
        QXmlStreamReader svg(plotSvg(plotOf(id)));
        QRectF box;
        std::vector<QTransform> moved{QTransform()};
        int lines = 0;
        while (!svg.atEnd()) {
            const auto token = svg.readNext();
            if (token == QXmlStreamReader::EndElement)
                moved.pop_back();
            if (token != QXmlStreamReader::StartElement)
                continue;
            const auto numbers = [&](const char *name) {
                static const QRegularExpression kNot(QStringLiteral("[^0-9.eE+-]+"));
                QList<double> read;
                for (const QString &word : svg.attributes()
                                               .value(QLatin1String(name))
                                               .toString()
                                               .split(kNot, Qt::SkipEmptyParts))
                    read << word.toDouble();
                return read;
            };
            QTransform here = moved.back();
            if (const QList<double> m = numbers("transform"); m.size() == 6)
                here = QTransform(m[0], m[1], m[2], m[3], m[4], m[5]) * here;
            moved.push_back(here);
            if (const QList<double> view = numbers("viewBox"); view.size() == 4)
                box = QRectF(view[0], view[1], view[2], view[3]);
            const QList<double> points = numbers("points");
            for (qsizetype i = 0; i + 1 < points.size(); i += 2, ++lines)
                EXPECT_TRUE(box.adjusted(-1, -1, 1, 1)
                                .contains(here.map(QPointF(points[i], points[i + 1]))))
                    << id << ": " << points[i] << ", " << points[i + 1];
        }
        EXPECT_GT(lines, 0) << id;
        EXPECT_FALSE(svg.hasError());
    }
}

TEST(APlot, IsPrintedOnAPageOfItsOwn)
{
    const Themed themed;
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("printed.pdf"));
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(path);
    printPlot(plotOf("axle_loads"), printer);
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"), {path, QStringLiteral("-")});
    ASSERT_TRUE(reader.waitForFinished());
    const QString words = QString::fromUtf8(reader.readAllStandardOutput());
    EXPECT_TRUE(words.contains("Axle loads before and after"));
    EXPECT_TRUE(words.contains("after, laden"));
}

TEST(ThePlotView, SavesByItsMenuAndSaysSo)
{
    const Themed themed;
    const QTemporaryDir folder;
    SavingOutside outside;
    outside.answer = folder.filePath(QStringLiteral("plot.svg"));
    PlotView view(plotOf("drive"), themed.theme, outside);
    view.resize(700, 380);
    showActive(view);
    const QSignalSpy said(&view, &PlotView::said);
    auto *menu = view.findChild<QMenu *>();
    QContextMenuEvent asked(QContextMenuEvent::Mouse, QPoint(200, 200),
                            view.mapToGlobal(QPoint(200, 200)));
    QApplication::sendEvent(&view, &asked);
    EXPECT_TRUE(menu->isVisible());
    QTest::keyClick(menu, Qt::Key_S);
    EXPECT_TRUE(QFile::exists(outside.answer));
    EXPECT_EQ(outside.suggested, QStringLiteral("Effort against road load by gear.pdf"));
    ASSERT_EQ(said.count(), 1);
    EXPECT_FALSE(said.at(0).at(1).toBool());
    outside.answer = folder.filePath(QStringLiteral("none/plot.pdf"));
    view.save();
    ASSERT_EQ(said.count(), 2);
    EXPECT_TRUE(said.at(1).at(1).toBool());
}

TEST(ThePlotView, IsNamedAndDescribedAndReachedByTab)
{
    const Themed themed;
    SavingOutside outside;
    PlotView view(plotOf("axle_loads"), themed.theme, outside);
    showActive(view);
    EXPECT_EQ(spoken(&view), QStringLiteral("Axle loads before and after"));
    EXPECT_TRUE(spoken(&view, QAccessible::Description).contains("kg"));
    auto *button = view.findChild<QToolButton *>();
    EXPECT_TRUE(button->focusPolicy() & Qt::TabFocus);
    EXPECT_TRUE(spoken(button).contains("Axle loads"));
}
