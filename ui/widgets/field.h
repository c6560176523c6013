// SPDX-License-Identifier: GPL-3.0-or-later
// A line of a form: label above, editor, and below it a hint or what is wrong, right where it is.
//
// The label is the editor's buddy and its name to a screen reader; hint and problem are its
// description. The field owns the editor.
#pragma once

#include <QWidget>

class QLabel;

namespace ohmwright::ui {

class Theme;

class Field : public QWidget
{
    Q_OBJECT

public:
    // `label` may hold a mnemonic: "&Price".
    Field(const Theme &theme, const QString &label, QWidget *editor, QWidget *parent = nullptr);

    [[nodiscard]] QWidget *editor() const { return m_editor; }
    // Shown while nothing is wrong: "e.g. 403 V DC". Empty for none.
    void setHint(const QString &hint);
    // One plain sentence; marks the editor and replaces the hint. Empty when all is well.
    void setProblem(const QString &sentence);
    [[nodiscard]] bool hasProblem() const { return !m_problem.isEmpty(); }
    [[nodiscard]] QString message() const;
    // Keeps the line below free even when there is nothing to say, so that fields side by side and
    // what stands below do not jump.
    void keepMessageLine(bool keep);

private:
    void showMessage();

    const Theme &m_theme;
    QLabel *m_label;
    QWidget *m_editor;
    QWidget *m_messageRow;
    QWidget *m_shape;
    QLabel *m_message;
    QString m_hint;
    QString m_problem;
    bool m_keepLine = false;
};

} // namespace ohmwright::ui
