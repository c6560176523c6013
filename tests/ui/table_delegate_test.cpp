// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/driving.h"
#include "ui/widgets/drafted_table_delegate.h"

#include <QHeaderView>
#include <QImage>
#include <QStandardItemModel>
#include <QTableView>

#include <gtest/gtest.h>

using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class ADressedTable : public testing::Test
{
protected:
    ADressedTable() : model(2, 3), delegate(themed.theme)
    {
        model.setData(model.index(0, 0), "Inverter");
        view.setModel(&model);
        delegate.dress(view, true);
        view.resize(600, 200);
        showActive(view);
    }

    // The columns of pixels of a cell that hold anything but its ground.
    std::vector<int> inked(int row, int column)
    {
        const QRect cell = view.visualRect(model.index(row, column));
        const QImage picture = view.viewport()->grab(cell.adjusted(0, 0, 0, -1)).toImage();
        const QColor ground = picture.pixelColor(picture.width() - 2, 1);
        std::vector<int> columns;
        for (int x = 0; x < picture.width(); ++x) {
            for (int y = 0; y < picture.height(); ++y) {
                if (picture.pixelColor(x, y) != ground) {
                    columns.push_back(x);
                    break;
                }
            }
        }
        return columns;
    }

    Themed themed;
    QStandardItemModel model;
    DraftedTableDelegate delegate;
    QTableView view;
};

} // namespace

TEST_F(ADressedTable, hasOneRowHeightThatHoldsBothLines)
{
    const int lines = QFontMetrics(themed.theme.font(Lettering::Body)).height() +
                      QFontMetrics(themed.theme.font(Lettering::Small)).height();
    EXPECT_GE(view.rowHeight(0), lines + 8);
    EXPECT_EQ(view.rowHeight(0), view.rowHeight(1));
    EXPECT_EQ(view.verticalHeader()->sectionResizeMode(0), QHeaderView::Fixed);
}

TEST_F(ADressedTable, measuresEveryPieceOfACell)
{
    QStyleOptionViewItem option;
    option.initFrom(&view);
    const auto width = [&] {
        return delegate.sizeHint(option, model.index(0, 0)).width();
    };
    const int bare = width();
    model.setData(model.index(0, 0), QVariant::fromValue(Mark::Fitted), MarkRole);
    const int marked = width();
    EXPECT_GT(marked, bare);
    model.setData(model.index(0, 0), true, HighVoltageRole);
    const int tagged = width();
    EXPECT_GT(tagged, marked);
    model.setData(model.index(0, 0), "out of the blue hatchback, 61 000 km", SecondLineRole);
    EXPECT_GT(width(), tagged);
}

TEST_F(ADressedTable, writesTheMarksWordWhereThereIsNoOther)
{
    model.setData(model.index(0, 1), QVariant::fromValue(Mark::Fails), MarkRole);
    const auto columns = inked(0, 1);
    ASSERT_FALSE(columns.empty());
    EXPECT_GT(columns.back() - columns.front(), 16 + 20) << "a shape and a word behind it";
}

TEST_F(ADressedTable, standsFiguresOnTheirDecimalSign)
{
    delegate.setFigureColumn(2, 2, "kg");
    model.setData(model.index(0, 2), "1.25 kg", FigureRole);
    model.setData(model.index(1, 2), "1.5 V", FigureRole);
    ASSERT_FALSE(inked(0, 2).empty());
    EXPECT_EQ(inked(0, 2).front(), inked(1, 2).front());
}

TEST_F(ADressedTable, leavesWithTabInsteadOfWalkingThroughCells)
{
    EXPECT_FALSE(view.tabKeyNavigation());
}
