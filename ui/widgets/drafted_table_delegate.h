// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of a table: a quieter second line under the first, numbers on their decimal sign, states as
// shape and word, the HV tag.
//
// The model says what a cell holds by role; every role is optional and they combine:
//
//     case SecondLineRole:  return tr("from a 2017 hatchback, 48 000 km");
//     case FigureRole:      return showMoney(part.landed, style);       // instead of DisplayRole
//     case MarkRole:        return QVariant::fromValue(Mark::Fitted);   // DisplayRole follows it,
//     case HighVoltageRole: return true;                                // else the mark's word
//
// For a screen reader the model also answers Qt::AccessibleTextRole with all of that in words; a
// cell that has only DisplayRole need not.
#pragma once

#include "ui/widgets/marks.h"

#include <QMap>
#include <QMetaType>
#include <QStyledItemDelegate>

class QTableView;

namespace ohmwright::ui {

class Theme;

enum DraftedRole {
    SecondLineRole = Qt::UserRole + 1000,
    FigureRole,
    MarkRole,
    HighVoltageRole,
};

class DraftedTableDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    explicit DraftedTableDelegate(const Theme &theme, QObject *parent = nullptr);

    // Room for that many decimals, and for the widest unit by an example, in one column. The
    // model's header for it should answer Qt::TextAlignmentRole with right, as the figures stand.
    void setFigureColumn(int column, int decimals, const QString &widestUnit = {});

    // Sets `view` up for such rows: this delegate, one fixed row height (two lines if asked),
    // whole rows selected, no grid, header left. Rows are never measured one by one.
    void dress(QTableView &view, bool twoLines);

    void paint(QPainter *painter, const QStyleOptionViewItem &option,
               const QModelIndex &index) const override;
    QSize sizeHint(const QStyleOptionViewItem &option, const QModelIndex &index) const override;

private:
    struct FigureColumn
    {
        int decimals = 0;
        QString widestUnit;
    };

    void paintWords(QPainter &painter, QRect rect, const QStyleOptionViewItem &option,
                    const QModelIndex &index) const;

    const Theme &m_theme;
    QMap<int, FigureColumn> m_figureColumns;
};

} // namespace ohmwright::ui

Q_DECLARE_METATYPE(ohmwright::ui::Mark)
