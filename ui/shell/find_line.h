// SPDX-License-Identifier: GPL-3.0-or-later
// The line on top that finds anything in the book. Answers hang below it under their headings;
// arrows choose, Enter goes there, Escape goes back to where one was.
#pragma once

#include "ui/shell/find_source.h"

#include <QLineEdit>
#include <QPointer>
#include <QTimer>

#include <vector>

namespace ohmwright::ui {

class OverlayList;
class Theme;

class FindLine : public QLineEdit
{
    Q_OBJECT

public:
    explicit FindLine(const Theme &theme, QWidget *parent = nullptr);
    ~FindLine() override;

    // May be null (nothing is found then); must outlive the line or be taken back with null.
    void setSource(FindSource *source);
    // Takes the focus and remembers who had it.
    void begin();

signals:
    void hitChosen(const ohmwright::ui::FindHit &hit);

protected:
    void keyPressEvent(QKeyEvent *event) override;
    bool event(QEvent *event) override;
    void focusInEvent(QFocusEvent *event) override;
    void paintEvent(QPaintEvent *event) override;

private:
    void look();
    void choose(int row);
    void leave();
    void describe(int row);

    const Theme &m_theme;
    QPointer<OverlayList> m_list; // while open the window's child
    FindSource *m_source = nullptr;
    std::vector<FindHit> m_hits;
    std::vector<int> m_hitOfRow; // -1 for headings
    QTimer m_pause;              // since the last key
    QPointer<QWidget> m_cameFrom;
};

} // namespace ohmwright::ui
