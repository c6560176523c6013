// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of the checks as the house draws them, and headings with the count of each verdict at the
// right end, by shape, number and word.
#pragma once

#include "ui/widgets/drafted_table_delegate.h"

namespace ohmwright::ui {

class ChecksDelegate : public DraftedTableDelegate
{
    Q_OBJECT

public:
    explicit ChecksDelegate(const Theme &theme, QObject *parent = nullptr);

    void paint(QPainter *painter, const QStyleOptionViewItem &option,
               const QModelIndex &index) const override;

private:
    const Theme &m_theme;
};

} // namespace ohmwright::ui
