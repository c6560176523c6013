// SPDX-License-Identifier: GPL-3.0-or-later
// What was changed in the book, from what to what and when: of the whole book, or of one record.
// A window of its own, so that it can lie beside the page it speaks of; it follows the book.
#pragma once

#include "core/cards/history.h"

#include <QTimer>
#include <QWidget>

#include <optional>

class QLabel;
class QPushButton;
class QTableView;

namespace ohmwright::ui {

class HistoryModel;
class SectionTitle;
class Theme;

class HistoryWindow : public QWidget
{
    Q_OBJECT

public:
    HistoryWindow(Book &book, const Theme &theme, QWidget *parent = nullptr);

    void showWhole();
    void showOf(const RecordRef &record);
    [[nodiscard]] QTableView &table() { return *m_view; }
    [[nodiscard]] QString detail() const;

protected:
    void keyPressEvent(QKeyEvent *event) override;
    void showEvent(QShowEvent *event) override;
    void hideEvent(QHideEvent *event) override;

private:
    void come();
    void read();
    void showDetail();

    Book &m_book;
    std::optional<RecordRef> m_of;
    HistoryModel *m_model;
    SectionTitle *m_title;
    QPushButton *m_whole;
    QTableView *m_view;
    QLabel *m_edit;
    QLabel *m_detail;
    QTimer m_soon;
    bool m_behind = true;
};

} // namespace ohmwright::ui
