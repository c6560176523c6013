// SPDX-License-Identifier: GPL-3.0-or-later
// What a check was given: symbol, name with the path to it, value, and where it is from. What is
// not known says so and has a button that makes the task to find it out.
#pragma once

#include "ui/checks/check_view.h"
#include "ui/checks/figure_room.h"
#include "ui/checks/ruled_grid.h"
#include "ui/checks/value_cell.h"

class QPushButton;

namespace ohmwright::ui {

class GivenTable : public RuledGrid
{
    Q_OBJECT

public:
    GivenTable(const Theme &theme, const CheckView &view, const ValueCell::Save &save,
               QWidget *parent = nullptr);

    // Null where no input of that field can be edited.
    [[nodiscard]] ValueCell *cell(const QString &field) const;
    [[nodiscard]] const std::vector<ValueCell *> &cells() const { return m_cells; }
    [[nodiscard]] QPushButton *findOutButton(const QString &unknownName) const;

signals:
    void findOutWanted(const QString &unknownName);

private:
    void addInput(const CheckInput &input, const CheckView &view, const ValueCell::Save &save);
    void addUnknown(const QString &name, const CheckView &view);
    QWidget *makeName(const CheckInput &input, const CheckView &view);
    QWidget *makeValue(const CheckInput &input, const ValueCell::Save &save);
    QWidget *makeFrom(const CheckInput &input, const CheckView &view);
    QWidget *makeFindOut(const QString &name, const CheckView &view);

    const Theme &m_theme;
    FigureRoom m_room;
    std::vector<ValueCell *> m_cells;
    std::vector<QPushButton *> m_findOut;
};

} // namespace ohmwright::ui
