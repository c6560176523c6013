// SPDX-License-Identifier: GPL-3.0-or-later
// A list that hangs below a line one types in, and never takes the focus from it.
//
// It lies over the same window, so typing goes on; the line's owner forwards the arrow keys. It
// goes away by itself when the line loses focus, hides or moves.
#pragma once

#include <QListView>
#include <QString>

#include <memory>
#include <vector>

class QLineEdit;

namespace ohmwright::ui {

class Theme;
class OverlayModel;

struct OverlayRow
{
    QString text;
    QString detail;       // quieter, at the right end
    QString icon;         // name of icons.h; empty for none
    bool heading = false; // divides; cannot be picked
    bool quiet = false;   // "Nothing found": cannot be picked either

    [[nodiscard]] bool pickable() const { return !heading && !quiet; }
};

class OverlayList : public QListView
{
    Q_OBJECT

public:
    // `name` is what a screen reader calls the list.
    OverlayList(const Theme &theme, QLineEdit &line, const QString &name);
    ~OverlayList() override;

    // `current` is the row to highlight: -1 for none.
    void showRows(std::vector<OverlayRow> rows, int current);
    void close();
    [[nodiscard]] bool isOpen() const { return isVisible(); }
    [[nodiscard]] int currentRow() const;
    [[nodiscard]] const std::vector<OverlayRow> &rows() const;
    // Up, Down, Page Up, Page Down: highlights, round the ends. False for any other key.
    bool step(int key);

signals:
    void picked(int row);      // by the pointer
    void highlighted(int row); // by keys

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    void place();
    void follow(QWidget *window);

    QLineEdit &m_line;
    std::unique_ptr<OverlayModel> m_model;
    QWidget *m_window = nullptr;
};

} // namespace ohmwright::ui
