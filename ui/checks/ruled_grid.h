// SPDX-License-Identifier: GPL-3.0-or-later
// A table among other text: small column heads over a firm line, hairlines between the rows. Its
// cells are widgets, so that text wraps, can be selected, and a value can be edited where it
// stands.
#pragma once

#include "ui/shell/theme.h"

#include <QWidget>

#include <vector>

class QGridLayout;
class QLabel;

namespace ohmwright::ui {

struct RuledColumn
{
    QString head;
    int stretch = 0;
    bool right = false; // figures: head at the right end
};

class RuledGrid : public QWidget
{
    Q_OBJECT

public:
    RuledGrid(const Theme &theme, const std::vector<RuledColumn> &columns,
              QWidget *parent = nullptr);

    [[nodiscard]] QGridLayout &grid() { return *m_grid; }
    // Rules off what was begun before; what is put into the row it returns, and into further rows,
    // belongs together.
    int beginRow();
    int addLine(); // another grid row within the row begun

private:
    void addRule(bool firm);

    const Theme &m_theme;
    QGridLayout *m_grid;
    int m_columns;
    int m_next = 1;
};

// Words that wrap and can be selected by the pointer.
[[nodiscard]] QLabel *selectableWords(const Theme &theme, const QString &text,
                                      Lettering lettering = Lettering::Body, bool mute = false);

} // namespace ohmwright::ui
