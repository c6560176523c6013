// SPDX-License-Identifier: GPL-3.0-or-later
// Where photos come in: dropped, pasted, or chosen with the button. Keeps nothing: it says what
// came, and shows the small pictures it is given back.
//
// Ctrl+V and Shift+Insert work while it or its button has the focus; paste() is for a sheet that
// takes Ctrl+V anywhere. Choosing files is the owner's to ask, as it opens a dialog.
#pragma once

#include <QImage>
#include <QStringList>
#include <QWidget>

#include <vector>

class QLabel;
class QMimeData;
class QPushButton;

namespace ohmwright::ui {

class Theme;

class DropArea : public QWidget
{
    Q_OBJECT

public:
    explicit DropArea(const Theme &theme, QWidget *parent = nullptr);

    // False if the clipboard holds neither a picture nor files.
    bool paste();
    // Small pictures of what was taken so far; the words follow their number.
    void setPictures(const std::vector<QImage> &pictures);
    [[nodiscard]] QPushButton *button() const { return m_button; }

    [[nodiscard]] QSize sizeHint() const override { return {320, 92}; }

signals:
    void filesCame(const QStringList &paths); // local files that exist, of any type
    void pictureCame(const QImage &picture);  // pixels without a file, from a clipboard
    void chooseWanted();
    // Nothing usable was pasted or dropped: a sentence to show.
    void refused(const QString &sentence);

protected:
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void dragEnterEvent(QDragEnterEvent *event) override;
    void dragLeaveEvent(QDragLeaveEvent *event) override;
    void dropEvent(QDropEvent *event) override;

private:
    bool takeFrom(const QMimeData *mime);

    const Theme &m_theme;
    QLabel *m_words;
    QPushButton *m_button;
    std::vector<QImage> m_pictures;
    bool m_over = false;
};

} // namespace ohmwright::ui
