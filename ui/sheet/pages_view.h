// SPDX-License-Identifier: GPL-3.0-or-later
// The pages of a layout on screen, one below the other, as they will be printed. Paints only those
// in sight.
#pragma once

#include <QAbstractScrollArea>
#include <QCache>
#include <QPixmap>

#include <memory>

namespace ohmwright::sheet {
class PagedLayout;
}

namespace ohmwright::ui {

class Theme;

class PagesView : public QAbstractScrollArea
{
    Q_OBJECT

public:
    explicit PagesView(const Theme &theme, QWidget *parent = nullptr);

    // Keeps the place one was reading, as far as it still exists.
    void setLayout(std::shared_ptr<const sheet::PagedLayout> layout);
    void showPlace(int page, double top); // points from the page's top
    // 1 is 100 %: a point on paper is a point on the screen.
    void setZoom(double zoom);
    [[nodiscard]] double zoom() const { return m_zoom; }

signals:
    void zoomChanged(double zoom);

protected:
    void paintEvent(QPaintEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void wheelEvent(QWheelEvent *event) override;

private:
    [[nodiscard]] double scale() const; // pixels per point
    [[nodiscard]] double pageStep() const;
    void updateScrollBars();
    void fitWidth();
    void changeZoom(double zoom);
    // Painted once for a zoom and kept: pictures on a page are decoded each time it is painted.
    const QPixmap &pagePicture(int page);

    const Theme &m_theme;
    std::shared_ptr<const sheet::PagedLayout> m_layout;
    QCache<int, QPixmap> m_kept;
    double m_zoom = 1.0;
    bool m_zoomChosen = false; // until a person zooms, the page's width fits the view
};

} // namespace ohmwright::ui
