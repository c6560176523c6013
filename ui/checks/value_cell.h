// SPDX-License-Identifier: GPL-3.0-or-later
// The value of an input, aligned with those above and below it. One that stands in the book can be
// edited where it stands: Enter, F2 or the pointer opens a line; Enter or leaving it takes what was
// typed, Escape leaves it as it was.
#pragma once

#include "core/checks/check.h"
#include "core/quantity/result.h"
#include "ui/widgets/figures.h"

#include <QAbstractButton>

#include <functional>
#include <optional>

class QLineEdit;

namespace ohmwright::ui {

class Theme;

// What was typed for an input, as it goes to the book: an amount keeps its number and unit, a bare
// number takes the unit shown; "DC" or "AC" behind it stays. A word for a choice, or for a value
// that was not known and so has no unit, stays as typed. BadInput for what is no such amount.
[[nodiscard]] Result<QString> readTyped(const CheckInput &input, const QString &typed);

class ValueCell : public QAbstractButton
{
    Q_OBJECT

public:
    using Save = std::function<Outcome(const QString &field, const QString &typed)>;

    ValueCell(const Theme &theme, const CheckInput &input, Save save, QWidget *parent = nullptr);

    // As of FigureLabel: the same for all of a column.
    void setDecimals(int digits);
    void setUnitRoom(const QString &widestUnit);
    [[nodiscard]] const QString &field() const { return m_input.origin.field; }
    [[nodiscard]] bool isEditing() const { return m_line != nullptr; }
    [[nodiscard]] QString typed() const;
    // What was typed is on its way into the book.
    [[nodiscard]] bool isTaking() const { return m_taking; }
    // With the value, all of it selected; or going on with what was typed.
    void startEditing(const std::optional<QString> &typed = std::nullopt);
    // Another cell goes on in its place: what is typed here is not taken any more.
    void letGo();
    // Shows a refusal that came before this cell was made.
    void showProblem(const QString &sentence);
    [[nodiscard]] QString problem() const { return m_problem; }

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void editingStarted();
    // Empty: nothing is wrong any more.
    void problemChanged(const QString &sentence);

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void mouseDoubleClickEvent(QMouseEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void paintEvent(QPaintEvent *event) override;

private:
    void take();
    void stopEditing();

    const Theme &m_theme;
    const CheckInput m_input;
    const Save m_save;
    QString m_problem;
    QLineEdit *m_line = nullptr;
    FigureText m_figure;
    QString m_widestUnit;
    int m_decimals = 0;
    bool m_taking = false;
};

} // namespace ohmwright::ui
