// SPDX-License-Identifier: GPL-3.0-or-later
// A caution where the danger is: a triangle, a title, plain lines. Double frame, as printed ones
// have; with an orange edge and the letters HV where the danger is high voltage.
#pragma once

#include <QFrame>
#include <QStringList>

class QLabel;
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

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    const Theme &m_theme;
    QVBoxLayout *m_lines;
    QWidget *m_tag;
    bool m_highVoltage = false;
};

} // namespace ohmwright::ui
