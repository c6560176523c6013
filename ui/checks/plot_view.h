// SPDX-License-Identifier: GPL-3.0-or-later
// A plot on the page, with a button and a menu to save it or print it. Told in words to a screen
// reader.
#pragma once

#include "core/checks/check.h"
#include "core/quantity/result.h"

#include <QWidget>

#include <memory>

class QGraphicsView;
class QMenu;
class QToolButton;

namespace ohmwright::ui {

class Outside;
class PlotScene;
class Theme;

class PlotView : public QWidget
{
    Q_OBJECT

public:
    PlotView(Plot plot, const Theme &theme, Outside &outside, QWidget *parent = nullptr);
    ~PlotView() override;

    [[nodiscard]] const Plot &plot() const { return m_plot; }
    [[nodiscard]] PlotScene &scene() { return *m_scene; }
    // Asks for a name and writes there.
    void save();
    // Opens the printing dialog over the window; the page goes on meanwhile.
    void print();

signals:
    // What was done, or what went wrong.
    void said(const QString &sentence, bool problem);

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;
    void contextMenuEvent(QContextMenuEvent *event) override;

private:
    void dress();
    void layOut();

    const Plot m_plot;
    const Theme &m_theme;
    Outside &m_outside;
    QGraphicsView *m_view;
    QToolButton *m_button;
    QMenu *m_menu;
    std::unique_ptr<PlotScene> m_scene;
};

} // namespace ohmwright::ui
