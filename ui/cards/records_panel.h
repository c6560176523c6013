// SPDX-License-Identifier: GPL-3.0-or-later
// The records of one kind: a list to find one in, and the chosen one's card.
//
// Keys in the list: Insert for a new one, Enter into the card, Delete to remove; Escape in the card
// goes back to the list. Leaving a card saves what was typed there.
#pragma once

#include "core/book/book.h"
#include "core/cards/record_kind.h"
#include "ui/shell/message_strip.h"

#include <QWidget>

class QLineEdit;
class QPushButton;
class QScrollArea;
class QStackedWidget;
class QTableView;

namespace ohmwright::ui {

class EmptyPage;
class RecordCard;
class RecordList;
class SectionTitle;
class Theme;

class RecordsPanel : public QWidget
{
    Q_OBJECT

public:
    enum class Shape {
        Page,   // list at the left, card at the right, each as high as there is room
        Column, // list above the card, for a narrow place
        Nested, // within another card: a short list, the card below it
    };

    RecordsPanel(Book &book, const Theme &theme, const RecordKind &kind, Shape shape,
                 QWidget *parent = nullptr);

    // Only those of one record, and new ones into it. `within` is the field that names it, empty
    // for records it owns.
    void setHolder(const RecordRef &holder, const QString &within);
    // False if there is no such record, or if what was typed in the card before was refused.
    bool showRecord(std::int64_t id);
    bool showKey(const QString &key);
    void beginNew();
    // At the right end of the heading.
    void addButton(QPushButton *button);

    [[nodiscard]] RecordCard &card() { return *m_card; }
    [[nodiscard]] QTableView &list() { return *m_view; }
    [[nodiscard]] const RecordKind &kind() const { return m_kind; }

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);

protected:
    void showEvent(QShowEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    void build();
    void arrange();
    void bookChanged();
    void refresh();
    void choose(std::int64_t id);
    void rowMoved();
    void focusList();
    void fitHeight();

    Book &m_book;
    const Theme &m_theme;
    const RecordKind &m_kind;
    Shape m_shape;
    std::optional<RecordRef> m_holder;
    QString m_within;
    bool m_stale = true;
    bool m_refreshing = false;

    SectionTitle *m_title = nullptr;
    QPushButton *m_add = nullptr;
    QLineEdit *m_find = nullptr;
    QStackedWidget *m_stack = nullptr; // the list, or what goes here
    QTableView *m_view = nullptr;
    QWidget *m_teach = nullptr;
    RecordList *m_list = nullptr;
    RecordCard *m_card = nullptr;
    QScrollArea *m_scroll = nullptr;
};

} // namespace ohmwright::ui
