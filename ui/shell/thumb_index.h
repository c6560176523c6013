// SPDX-License-Identifier: GPL-3.0-or-later
// The tabs cut into the right edge of the book, each leaf standing out a little further than the
// one above it. The open leaf's tab is one piece with the page.
//
// A tab bar as to keyboard, pointer and screen reader; only its shape is its own. Up, Down, Home
// and End turn pages; Left and Enter go into the page. Each leaf shows its number, which with Ctrl
// or Alt turns to it (the shell window makes those shortcuts).
#pragma once

#include <QTabBar>

#include <vector>

class QPainterPath;

namespace ohmwright::ui {

class Theme;

class ThumbIndex : public QTabBar
{
    Q_OBJECT

public:
    explicit ThumbIndex(const Theme &theme, QWidget *parent = nullptr);

    // `icon` is a name of widgets/icons.h. Returns the leaf's index.
    int addLeaf(const QString &name, const QString &icon);
    // A small figure below the name, with a word or two: "4 open". `spoken` is read after the name:
    // "4 open questions". Empty removes both.
    void setBadge(int index, const QString &words, const QString &spoken);
    // For a narrow window: names in small letters below the icons, no badges but for screen
    // readers.
    void setCompact(bool compact);
    [[nodiscard]] bool isCompact() const { return m_compact; }

signals:
    // Into the page.
    void leafEntered();

protected:
    QSize tabSizeHint(int index) const override;
    QSize minimumTabSizeHint(int index) const override;
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void leaveEvent(QEvent *event) override;

private:
    struct Leaf
    {
        QString icon;
        QString badge;
    };

    [[nodiscard]] double edgeOf(int index) const; // how far leaf `index` stands out
    [[nodiscard]] QPainterPath tabPath(int index) const;
    void paintLeaf(QPainter &painter, int index) const;
    void paintWords(QPainter &painter, int index) const;

    const Theme &m_theme;
    std::vector<Leaf> m_leaves;
    bool m_compact = false;
    int m_under = -1; // leaf under the pointer
};

} // namespace ohmwright::ui
