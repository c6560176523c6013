// SPDX-License-Identifier: GPL-3.0-or-later
// The Bench: where one stands on opening the book. What can be done now, what holds up the next
// milestone, what runs out soon, what must be ordered, what is left to spend, what was done last.
#pragma once

#include "core/book/book.h"

#include <QScrollArea>
#include <QTimer>

class QLabel;
class QVBoxLayout;

namespace ohmwright::ui {

class Theme;

class BenchPage : public QScrollArea
{
    Q_OBJECT

public:
    BenchPage(Book &book, const Theme &theme, QWidget *parent = nullptr);

signals:
    void taskWanted(const QString &key);
    void partWanted(const QString &key);
    void pageWanted(const QString &key);
    void logWanted();

protected:
    void showEvent(QShowEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    void rebuild();

    Book &m_book;
    const Theme &m_theme;
    QTimer m_soon;
    bool m_stale = true;
    bool m_wide = true; // two columns
};

} // namespace ohmwright::ui
