// SPDX-License-Identifier: GPL-3.0-or-later
// A chart that is dragged about paints only what comes into sight; the picture must be the one that
// painting everything gives.
#include "tests/core/plan/loom_networks.h"
#include "ui/build_order/loom_view.h"

#include <QApplication>
#include <QImage>
#include <QScrollBar>

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <tuple>

namespace ohmwright::ui {
namespace {

// A dashed outline that a clip cuts begins its dashes elsewhere. A strip of two hundred pixels
// painted wrongly would be tens of thousands.
constexpr int kDashes = 1500;

// Pixels that are not alike. A clip moves the edge of a shape by a 256th at most, which shows as a
// shade or two.
int differing(const QImage &left, const QImage &right)
{
    constexpr int kShades = 6;
    int count = 0;
    for (int y = 0; y < left.height(); ++y)
        for (int x = 0; x < left.width(); ++x) {
            const QColor a = left.pixelColor(x, y);
            const QColor b = right.pixelColor(x, y);
            if (std::max({std::abs(a.red() - b.red()), std::abs(a.green() - b.green()),
                          std::abs(a.blue() - b.blue())}) > kShades)
                ++count;
        }
    return count;
}

class LoomPan : public testing::TestWithParam<std::tuple<plan::LoomBy, double>>
{
protected:
    LoomPan()
    {
        const plan::Network network = plan::randomNetwork(5, 300, 9, 8);
        view.resize(900, 600);
        view.setNetwork(network, plan::inventedForecast(network));
        view.setBy(std::get<plan::LoomBy>(GetParam()));
        view.show();
        view.setZoom(std::get<double>(GetParam()));
        QApplication::processEvents();
    }

    QImage picture() { return view.viewport()->grab().toImage(); }
    QImage paintedAnew()
    {
        view.setColours(LoomColours::dark());
        view.setColours(LoomColours::light());
        return picture();
    }
    void goTo(int x, int y)
    {
        view.horizontalScrollBar()->setValue(x);
        view.verticalScrollBar()->setValue(y);
    }

    LoomView view;
};

TEST_P(LoomPan, ShowsWhatPaintingEverythingWould)
{
    goTo(view.horizontalScrollBar()->maximum() / 2, view.verticalScrollBar()->maximum() / 2);
    QImage last = picture();
    int moved = 0;
    for (const QPoint step : {QPoint(11, 3), QPoint(-40, 0), QPoint(0, 17), QPoint(230, -90),
                              QPoint(-5000, 2000), QPoint(1, 0)}) {
        goTo(view.horizontalScrollBar()->value() + step.x(),
             view.verticalScrollBar()->value() + step.y());
        const QImage dragged = picture();
        moved += dragged == last ? 0 : 1;
        last = dragged;
        const QPoint place(view.horizontalScrollBar()->value(), view.verticalScrollBar()->value());
        const QImage whole = paintedAnew();
        ASSERT_EQ(place,
                  QPoint(view.horizontalScrollBar()->value(), view.verticalScrollBar()->value()));
        EXPECT_LT(differing(dragged, whole), kDashes) << "after " << step.x() << ", " << step.y();
    }
    EXPECT_GT(moved, 0);
}

INSTANTIATE_TEST_SUITE_P(NearAndFar, LoomPan,
                         testing::Combine(testing::Values(plan::LoomBy::Chain, plan::LoomBy::Date),
                                          testing::Values(1.0, 0.6, 0.35)));

} // namespace
} // namespace ohmwright::ui
