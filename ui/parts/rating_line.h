// SPDX-License-Identifier: GPL-3.0-or-later
// One rating to type in: what is rated, its value, where that is known from. The name of the figure
// is either given (a question a circuit asks) or chosen; a chosen one also has the day it was read
// or measured, and a peak how long it may last. Its source is asked for where nothing beside it
// does.
#pragma once

#include "core/parts/figures.h"
#include "core/quantity/result.h"

#include <QDate>
#include <QWidget>

#include <optional>

class QComboBox;
class QGridLayout;
class QLineEdit;

namespace ohmwright::ui {

class Field;
class Theme;

class RatingLine : public QWidget
{
    Q_OBJECT

public:
    RatingLine(const Theme &theme, const FigureName &figure, QWidget *parent = nullptr);
    explicit RatingLine(const Theme &theme, QWidget *parent = nullptr);

    // The figure as it is meant: of a chosen one, "DC" or "AC" behind the value says which.
    [[nodiscard]] FigureName figure() const;
    // None when the value is left empty or is asked to stay open. A bare number has the unit the
    // line names. A Problem is also shown at the value.
    [[nodiscard]] Result<std::optional<Amount>> value();
    // A question mark was typed: not known, and to be kept as that.
    [[nodiscard]] bool isUnknown() const;
    [[nodiscard]] Evidence evidence() const;
    [[nodiscard]] Field &valueField() { return *m_valueField; }
    // Of a chosen figure: everything typed, into `rating`. A Problem is also shown at its field.
    Outcome read(Rating &rating, QDate today);
    // Another line for the source, there as soon as a value is: an open question has none.
    void askForSource(const Theme &theme);
    [[nodiscard]] QString source() const; // empty where it is not asked for
    void showRating(const Rating &rating);
    void clear();

private:
    void build(const Theme &theme);
    void showHint();

    std::optional<FigureName> m_given;
    QGridLayout *m_grid = nullptr;
    int m_sourceRow = 0;
    QComboBox *m_quantity = nullptr;
    QComboBox *m_sort = nullptr;
    QLineEdit *m_value = nullptr;
    QComboBox *m_evidence = nullptr;
    Field *m_valueField = nullptr;
    QLineEdit *m_duration = nullptr;
    Field *m_durationField = nullptr;
    QLineEdit *m_source = nullptr;
    QLineEdit *m_on = nullptr;
    Field *m_onField = nullptr;
};

} // namespace ohmwright::ui
