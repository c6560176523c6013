// SPDX-License-Identifier: GPL-3.0-or-later
// The one-line diagram of the traction circuit, drawn from the book and kept current, as wide as
// the window; below it what the book leaves open.
#pragma once

#include "core/book/book.h"
#include "core/diagram/one_line.h"
#include "ui/shell/message_strip.h"

#include <QWidget>

class QLabel;
class QPushButton;
class QScrollArea;

namespace ohmwright::ui {

class Outside;
class SectionTitle;
class Theme;

class OneLineView : public QWidget
{
    Q_OBJECT

public:
    OneLineView(Book &book, const Theme &theme, Outside &outside, QWidget *parent = nullptr);

    [[nodiscard]] const OneLine &line() const { return m_line; }

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);

protected:
    void showEvent(QShowEvent *event) override;
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    void bookChanged();
    void refresh();
    void save();

    Book &m_book;
    const Theme &m_theme;
    Outside &m_outside;
    OneLine m_line;
    bool m_behind = true;
    SectionTitle *m_title;
    QPushButton *m_save;
    QWidget *m_canvas;
    QScrollArea *m_scroll;
    QLabel *m_open;
};

} // namespace ohmwright::ui
