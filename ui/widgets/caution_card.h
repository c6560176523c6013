// SPDX-License-Identifier: GPL-3.0-or-later
// A caution where the danger is: a triangle, a title, plain lines. Double frame, as printed ones
// have; with an orange edge and the letters HV where the danger is high voltage.
#pragma once

#include <QFrame>
#include <QStringList>

class QToolButton;
class QVBoxLayout;

namespace ohmwright::ui {

class Theme;

class CautionCard : public QFrame
{
    Q_OBJECT

public:
    CautionCard(const Theme &theme, const QString &title, const QStringList &lines,
                QWidget *parent = nullptr);

    void setHighVoltage(bool highVoltage);
    void setLines(const QStringList &lines);
    // To its title and a button that unfolds it: where several stand before a form, the title of
    // each is in sight without hiding the form.
    void fold();
    [[nodiscard]] bool isFolded() const;

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    void showFolded(bool folded);

    const Theme &m_theme;
    QString m_title;
    QWidget *m_body;
    QVBoxLayout *m_lines;
    QWidget *m_tag;
    QToolButton *m_fold;
    bool m_highVoltage = false;
};

} // namespace ohmwright::ui
