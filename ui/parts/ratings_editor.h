// SPDX-License-Identifier: GPL-3.0-or-later
// The ratings of a part or of a type: every figure with the value in force and why, settling, a new
// rating, and changing one that is there. A part shows its type's too, to be changed on the type.
#pragma once

#include "core/book/book.h"
#include "core/parts/figures.h"
#include "ui/shell/message_strip.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QPushButton;
class QVBoxLayout;

namespace ohmwright::ui {

class Field;
class RatingLine;
class Theme;

class RatingsEditor : public QWidget
{
    Q_OBJECT

public:
    RatingsEditor(Book &book, const Theme &theme, QWidget *parent = nullptr);

    void showPart(Id<Part> part);
    void showType(Id<PartType> type);

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);

private:
    void fill(bool another);
    void showFigure(const Figure &figure);
    QWidget *ratingRow(const Rating &rating, bool inForce, bool several);
    void beginSettling(Id<Rating> rating);
    void settle();
    void beginChange(Id<Rating> rating);
    void endChange();
    void keep();
    void tell(const Outcome &outcome);

    Book &m_book;
    const Theme &m_theme;
    Id<Part> m_part; // one of the two is set
    Id<PartType> m_type;
    QVBoxLayout *m_list;
    Id<Rating> m_settling;
    QWidget *m_settleForm;
    QLabel *m_settleWords;
    QLineEdit *m_reason;
    Field *m_reasonField;
    Id<Rating> m_changing;
    QLabel *m_heading;
    RatingLine *m_line;
    QLineEdit *m_source;
    QPushButton *m_keep;
    QPushButton *m_leave;
};

} // namespace ohmwright::ui
