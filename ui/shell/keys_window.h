// SPDX-License-Identifier: GPL-3.0-or-later
// All keys the window answers to, by where they work. A window of its own, to lie beside the work.
#pragma once

#include <QWidget>

class QTableView;

namespace ohmwright::ui {

class Theme;

class KeysWindow : public QWidget
{
    Q_OBJECT

public:
    KeysWindow(const Theme &theme, QWidget *parent);

    // The one beside `window`, made when first asked for.
    static void showBeside(QWidget &window, const Theme &theme);
    [[nodiscard]] QTableView &table() { return *m_view; }

protected:
    void keyPressEvent(QKeyEvent *event) override;

private:
    QTableView *m_view;
};

} // namespace ohmwright::ui
