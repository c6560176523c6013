// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/least_rows.h"

#include <QHeaderView>
#include <QScrollArea>
#include <QTableView>

namespace ohmwright::ui {

void keepLeastRows(QTableView &view, int rows)
{
    const int head =
        view.horizontalHeader()->isHidden() ? 0 : view.horizontalHeader()->sizeHint().height();
    view.setMinimumHeight(head + rows * view.verticalHeader()->defaultSectionSize() +
                          2 * view.frameWidth());
}

QScrollArea *scrolledWhenLow(QWidget *content)
{
    auto *area = new QScrollArea;
    area->setFrameShape(QFrame::NoFrame);
    area->setFocusPolicy(Qt::NoFocus);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setWidgetResizable(true);
    area->setMinimumWidth(content->minimumWidth());
    area->setWidget(content);
    return area;
}

} // namespace ohmwright::ui
